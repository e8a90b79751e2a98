"""Items of stock, each made from its words: measures read, ranges kept, what cannot be refused at its place."""

from __future__ import annotations

from decimal import Decimal
from typing import TYPE_CHECKING, Any

from sheetgen.base.dimension import AREA, COUNT, DENSITY, LENGTH, MASS, MONEY, RATE, TEMPERATURE, TIME, VOLUME
from sheetgen.base.material import (
    TOOL_KINDS,
    Adhesive,
    Bead,
    Clay,
    Fibre,
    Finding,
    Item,
    Phase,
    Sheet,
    Stone,
    Tool,
    Wire,
)
from sheetgen.base.place import Word
from sheetgen.base.spelling import suggest
from sheetgen.base.spread import GRAIN, Spread
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.shrinkage import relative_density
from sheetgen.read.measured import cooled, shrunk
from sheetgen.read.measures import Measures

if TYPE_CHECKING:
    from sheetgen.base.dimension import Dimension
    from sheetgen.base.trouble import Troubles
    from sheetgen.model import stock as forms

PACK_UNITS = {AREA: "mm²", MASS: "g", LENGTH: "mm", VOLUME: "mL", COUNT: "piece"}
SLOWEST = 1 / 6  # °C/min, which is 10 °C/h: no kiln program is slower
USUAL_UNITS = {"clays": "g", "wires": "mm", "fibres": "mm", "sheets": "mm²", "adhesives": "mL"}
PER_CM3 = 1000
HEAVIEST = 0.0226  # g/mm³: osmium, the densest metal (periodictable 2.1.0)


class ItemMaker:
    """Makes items, noting troubles; None for one that is wrong."""

    def __init__(self, currency: str, troubles: Troubles) -> None:
        self.troubles, self.currency = troubles, currency
        self.measures = Measures(currency, troubles)

    def make(self, group: str, key: Word, written: forms.WrittenItem) -> Item | None:
        """An item of a group of a stock file."""
        common = self.common(key, written, group)
        makers: dict[str, Any] = {
            "clays": self._clay, "wires": self._wire, "sheets": self._sheet, "stones": self._stone,
            "beads": self._bead, "fibres": self._fibre, "findings": self._finding,
            "adhesives": self._adhesive, "tools": self._tool,
        }  # fmt: skip
        made: Item | None = makers[group](key, written, common) if group in makers else Item(**common)
        return made

    def common(self, key: Word, written: forms.WrittenItem, group: str) -> dict[str, Any]:
        """What every item has."""
        usual = USUAL_UNITS.get(group, "piece")
        unit, pack = usual, None
        if written.pack is not None:
            found = self.measures.quantity(written.pack)
            if found and found.dimension not in PACK_UNITS:
                self.troubles.add(f"a pack cannot be {found.dimension}", written.pack.place, "25 g, 10 m, 5 mL or 12")
            elif found:
                unit, pack = PACK_UNITS[found.dimension], found.value.usual / (1000 if found.dimension == VOLUME else 1)
                if found.value.usual <= 0:
                    self.troubles.add("a pack holds something", written.pack.place, "more than nothing")
        price = None
        if written.price is not None:
            found = self.measures.quantity(written.price)
            if found and (found.dimension != MONEY or found.value.usual < 0):
                self.troubles.add("a price is an amount of money", written.price.place, f"12.50 {self.currency}")
            elif found:
                price = Decimal(str(round(found.value.usual, 4)))
        allowance = self._number(written.allowance, COUNT, least=0, most=1, name="an allowance")
        return {
            "id": str(key),
            "name": str(written.name),
            "unit": unit,
            "pack": pack,
            "price": price,
            "allowance": allowance or 0.0,
            "cautions": tuple(map(str, written.cautions)),
            "kiln": self._yes_no(written.kiln, "kiln", otherwise=True),
            "note": str(written.note or ""),
            "sources": tuple((str(k), str(v)) for k, v in written.sources.items()),
            "place": key.place,
        }

    def _number(self, word: Word | None, wanted: Dimension, **bounds: Any) -> float | None:  # noqa: ANN401
        if word is None:
            return None
        found = self.measures.spread(word, wanted, **bounds)
        return found.usual if found else None

    def _yes_no(self, word: Word | None, name: str, *, otherwise: bool) -> bool:
        if word is None:
            return otherwise
        if word not in {"yes", "no"}:
            self.troubles.add(f"'{name}' is yes or no, not '{word}'", word.place, "write yes or no")
        return word == "yes"

    def _clay(self, key: Word, written: forms.WrittenClay, common: dict[str, Any]) -> Clay | None:
        if written.test_strips:
            s: Spread | None = shrunk(written.test_strips, self.measures)
        elif written.shrinkage is None:
            self.troubles.add(f"'{key}' has neither shrinkage nor test strips", key.place, "shrinkage: 8-10 %")
            return None
        else:
            s = self._shrinkage(written.shrinkage, "shrinkage")
        thick = (
            self._shrinkage(written.thickness_shrinkage, "thickness shrinkage") if written.thickness_shrinkage else s
        )
        density = self._number(written.wet_density, DENSITY, above=0, most=0.02, name="wet density")
        share = self._number(written.metal_share, COUNT, above=0, most=1, name="metal share")
        solid = self._number(written.solid_density, DENSITY, above=0, most=HEAVIEST, name="solid density")
        drying = self.measures.spread(written.drying, TIME, above=0, name="drying") if written.drying else None
        at = self._number(written.drying_thickness, LENGTH, above=0, name="drying thickness")
        torch = self._yes_no(written.torch, "torch", otherwise=False)
        firing = [self._phase(p) for p in written.firing]
        self._below_melting(written)
        if s is None or thick is None or density is None or share is None:
            return None
        density, solid = density * PER_CM3, solid * PER_CM3 if solid else None
        if solid and not self._possible(key, written, s, thick, density, share, solid):
            return None
        return Clay(
            **common,
            shrinkage=s,
            thickness_shrinkage=thick,
            density=density,
            metal_share=share,
            solid_density=solid,
            drying=drying,
            drying_thickness=at,
            torch=torch,
            firing=tuple(p for p in firing if p),
            tested=bool(written.test_strips),
        )

    def _below_melting(self, written: forms.WrittenClay) -> None:
        """No phase so hot that the piece is a puddle."""
        melts = self._number(written.melting, TEMPERATURE, above=20, most=1300, name="melting")
        for phase in written.firing if melts else ():
            to = self._number(phase.to, TEMPERATURE)
            if melts and to and to >= melts:
                message = f"the clay is fired at {phase.to}, and its metal melts at {written.melting}"
                self.troubles.add(message, phase.to.place, "look at the maker's firing again")

    def _possible(  # noqa: PLR0913, PLR0917 - what the balance of mass weighs against each other
        self,
        key: Word,
        written: forms.WrittenClay,
        s: Spread,
        thick: Spread,
        density: float,
        share: float,
        solid: float,
    ) -> bool:
        """Whether the clay's data leave less than solid metal: nothing fires denser than it can be."""
        said = ""
        try:
            most = relative_density.pure(density, share, s.low, thick.low, solid)
            said = f"it would fire to {most * 100:.0f} % of solid metal" if most > 1 else ""
        except CannotBe as fault:
            said = fault.message
        if said:
            helped = "check shrinkage, wet density and metal share against each other"
            self.troubles.add(f"the data of '{key}' cannot be: {said}", written.wet_density.place, helped)
        return not said

    def _shrinkage(self, written: Word | forms.WrittenSpread, name: str) -> Spread | None:
        if isinstance(written, Word):
            return self.measures.spread(written, COUNT, least=0, most=0.6, name=name)
        ends = [
            self._number(word, COUNT, least=0, most=0.6, name=name)
            for word in (written.usual, written.low, written.high)
        ]
        usual, low, high = ends
        if usual is None or low is None or high is None:
            return None
        if not low <= usual <= high:
            self.troubles.add(
                f"the {name} is upside down", written.usual.place, "low, usual, high, from small to large"
            )
            return None
        return Spread(usual, low, high)

    def _phase(self, written: forms.WrittenPhase) -> Phase | None:
        to = self._number(written.to, TEMPERATURE, above=20, most=1300, name="a firing temperature")
        hold = self.measures.spread(written.hold, TIME, least=0, most=1440, name="a hold")
        rate = self.measures.spread(written.rate, RATE, least=SLOWEST, name="a heating rate") if written.rate else None
        cool = self._number(written.cool_below, TEMPERATURE, above=0, most=1300, name="cool below")
        if to is None or hold is None:
            return None
        if cool is not None and to is not None and cool >= to:
            where = written.cool_below.place if written.cool_below else None
            self.troubles.add(
                "a kiln cannot cool below a temperature that is above its own", where, f"less than {to:g} °C"
            )
            return None
        return Phase(to=to, hold=hold, rate=rate, bed=str(written.bed or "open shelf"), cool_below=cool)

    def _wire(self, _key: Word, written: forms.WrittenWire, common: dict[str, Any]) -> Wire | None:
        thickness = self._number(written.thickness, LENGTH, above=0, most=12, name="a wire's thickness")
        density = self._number(written.density, DENSITY, above=0, most=HEAVIEST, name="density")
        if thickness is None or density is None:
            return None
        return Wire(**common, thickness=thickness, density=density * PER_CM3)

    def _sheet(self, _key: Word, written: forms.WrittenSheet, common: dict[str, Any]) -> Sheet | None:
        thickness = self._number(written.thickness, LENGTH, above=0, most=12, name="a sheet's thickness")
        density = self._number(written.density, DENSITY, above=0, most=HEAVIEST, name="density")
        long = self._number(written.long, LENGTH, above=0, name="how long a sheet is sold")
        wide = self._number(written.wide, LENGTH, above=0, name="how wide a sheet is sold")
        if (written.long is None) != (written.wide is None):
            given = written.long or written.wide
            where = given.place if given else None
            self.troubles.add("a sheet as it is sold has two sides", where, "give long and wide")
            return None
        if thickness is None or density is None:
            return None
        if long and wide:
            if common["pack"] is None:
                common = common | {"pack": long * wide}
            elif common["pack"] < long * wide - GRAIN:
                where = written.pack.place if written.pack else None
                helped = f"{long * wide:g} mm², or take the pack out"
                self.troubles.add("a pack cannot be smaller than the sheet in it", where, helped)
        return Sheet(**common, thickness=thickness, density=density * PER_CM3, long=long, wide=wide)

    def _stone(self, _key: Word, written: forms.WrittenStone, common: dict[str, Any]) -> Stone | None:
        size, width, height = (
            self.measures.spread(word, LENGTH, above=0, most=60, name=f"a stone's {name}") if word else None
            for name, word in (("size", written.size), ("width", written.width), ("height", written.height))
        )
        density = self._number(written.density, DENSITY, above=0, most=HEAVIEST, name="density")
        if size is None:
            return None
        return Stone(**common, size=size, width=width, height=height, density=density * PER_CM3 if density else None)

    def _bead(self, _key: Word, written: forms.WrittenBead, common: dict[str, Any]) -> Bead | None:
        size = self.measures.spread(written.size, LENGTH, above=0, most=80, name="a bead's size")
        long = self.measures.spread(written.length, LENGTH, above=0, name="a bead's length") if written.length else size
        hole = self._number(written.hole, LENGTH, above=0, name="a bead's hole")
        if size is None or long is None:
            return None
        if hole is not None and hole >= size.low:
            self.troubles.add("a bead's hole is as wide as the bead", (written.hole or written.size).place, "less")
        return Bead(**common, size=size, length=long, hole=hole)

    def _fibre(self, _key: Word, written: forms.WrittenFibre, common: dict[str, Any]) -> Fibre | None:
        thickness = self._number(written.thickness, LENGTH, above=0, most=30, name="thickness")
        width = self._number(written.width, LENGTH, above=0, most=500, name="width")
        return Fibre(**common, thickness=thickness, width=width) if thickness else None

    def _finding(self, _key: Word, written: forms.WrittenFinding, common: dict[str, Any]) -> Finding:
        inside = self._number(written.inside, LENGTH, above=0, name="inside")
        long = self._number(written.length, LENGTH, above=0, name="length")
        depth = self._number(written.depth, LENGTH, above=0, name="depth")
        return Finding(**common, inside=inside, length=long, depth=depth)

    def _adhesive(self, _key: Word, written: forms.WrittenAdhesive, common: dict[str, Any]) -> Adhesive | None:
        cure = self.measures.spread(written.cure, TIME, above=0, name="curing")
        life = self.measures.spread(written.pot_life, TIME, above=0, name="pot life") if written.pot_life else None
        given = {
            "pot_temperature": self._number(written.pot_temperature, TEMPERATURE, most=60, name="pot temperature"),
            "part_b": self._number(written.part_b, COUNT, above=0, most=20, name="part b, for one of part a,"),
            "density": self._number(written.density, DENSITY, above=0, most=HEAVIEST, name="density"),
            "least": self._number(written.least, VOLUME, above=0, name="the least mix"),
        }
        scale = {"density": PER_CM3, "least": 1 / PER_CM3}
        told: dict[str, Any] = {name: value * scale.get(name, 1) for name, value in given.items() if value is not None}
        return Adhesive(**common | {"kiln": False}, cure=cure, pot_life=life, **told) if cure else None

    def _tool(self, key: Word, written: forms.WrittenTool, common: dict[str, Any]) -> Tool:
        sizes = [self._number(word, LENGTH, above=0, name="a size") for word in written.sizes]
        if written.sizes and not written.kind:
            self.troubles.add(f"'{key}' has sizes and no kind", key.place, "kind: former, drill, rod, …")
        if written.kind is not None and written.kind not in TOOL_KINDS:
            message = f"'{written.kind}' is not a kind of tool that sizes are chosen from"
            near = suggest(written.kind, TOOL_KINDS)
            self.troubles.add(message, written.kind.place, f"{near}; a tool of another kind needs none")
        rate = (
            self.measures.spread(written.full_rate, RATE, least=SLOWEST, name="full rate")
            if written.full_rate
            else None
        )
        cooling = cooled(written.cooling, self.measures) if written.cooling else None
        return Tool(
            **common, kind=str(written.kind or ""), sizes=tuple(sorted(s for s in sizes if s)),
            full_rate=rate, cooling=cooling,
        )  # fmt: skip
