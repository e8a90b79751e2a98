"""Items of stock, each made from its words: measures read, ranges kept, what cannot be refused at its place."""

from __future__ import annotations

from decimal import Decimal
from functools import partial
from typing import TYPE_CHECKING, Any

from sheetgen.base.dimension import AREA, COUNT, DENSITY, LENGTH, MASS, MONEY, TEMPERATURE, TIME, VOLUME
from sheetgen.base.interval import GRAIN
from sheetgen.base.material import (
    Adhesive,
    Bead,
    Consumable,
    Fibre,
    Finding,
    Item,
    Metal,
    Sheet,
    Stone,
    Wire,
)
from sheetgen.base.spelling import suggest
from sheetgen.facts.findings import FORMS
from sheetgen.read.bench_words import at_the_bench
from sheetgen.read.clays import HEAVIEST, PER_CM3, ClayMaker
from sheetgen.read.tools import tool

if TYPE_CHECKING:
    from sheetgen.base.place import Word
    from sheetgen.model import stock as forms

PACK_UNITS = {AREA: "mm²", MASS: "g", LENGTH: "mm", VOLUME: "mL", COUNT: "piece"}
USUAL_UNITS = {"clays": "g", "wires": "mm", "fibres": "mm", "sheets": "mm²", "metals": "g", "adhesives": "mL"}


class ItemMaker(ClayMaker):
    """Makes items, noting troubles; None for one that is wrong."""

    def make(self, group: str, key: Word, written: forms.WrittenItem) -> Item | None:
        """An item of a group of a stock file."""
        common = self.common(key, written, group)
        makers: dict[str, Any] = {
            "clays": self.clay, "wires": self._wire, "sheets": self._sheet, "metals": self._metal,
            "stones": self._stone, "beads": self._bead, "fibres": self._fibre, "findings": self._finding,
            "adhesives": self._adhesive, "consumables": self._consumable, "tools": partial(tool, self),
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
            elif found and found.unit != ((self.currency, 1),):
                told = f"a price is in the studio's currency, and '{written.price}' is not"
                self.troubles.add(told, written.price.place, f"12.50 {self.currency}")
            elif found:
                price = Decimal(str(round(found.value.usual, 4)))
        allowance = self.number(written.allowance, COUNT, least=0, most=1, name="an allowance")
        return {
            "id": str(key),
            "name": str(written.name),
            "unit": unit,
            "pack": pack,
            "price": price,
            "allowance": allowance or 0.0,
            "cautions": tuple(map(str, written.cautions)),
            **at_the_bench(written, self.measures),
            "note": str(written.note or ""),
            "at_the_bench": str(written.at_the_bench or ""),
            "ahead": str(written.ahead.do) if written.ahead else "",
            "ahead_by": self._before(written.ahead),
            "ahead_with": tuple(written.ahead.with_) if written.ahead else (),
            "sources": tuple((str(k), str(v)) for k, v in written.sources.items()),
            "place": key.place,
        }

    def _before(self, ahead: forms.WrittenAhead | None) -> float:
        if ahead is None or ahead.before is None:
            return 0.0
        return self.number(ahead.before, TIME, least=0, name="how long before") or 0.0

    def _wire(self, _key: Word, written: forms.WrittenWire, common: dict[str, Any]) -> Wire | None:
        thickness = self.number(written.thickness, LENGTH, above=0, most=12, name="a wire's thickness")
        density = self.number(written.density, DENSITY, above=0, most=HEAVIEST, name="density")
        if thickness is None or density is None:
            return None
        return Wire(**common, thickness=thickness, density=density * PER_CM3)

    def _sheet(self, _key: Word, written: forms.WrittenSheet, common: dict[str, Any]) -> Sheet | None:
        thickness = self.number(written.thickness, LENGTH, above=0, most=12, name="a sheet's thickness")
        density = self.number(written.density, DENSITY, above=0, most=HEAVIEST, name="density")
        long = self.number(written.long, LENGTH, above=0, name="how long a sheet is sold")
        wide = self.number(written.wide, LENGTH, above=0, name="how wide a sheet is sold")
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

    def _metal(self, _key: Word, written: forms.WrittenMetal, common: dict[str, Any]) -> Metal | None:
        density = self.number(written.density, DENSITY, above=0, most=HEAVIEST, name="density")
        return Metal(**common, density=density * PER_CM3) if density else None

    def _stone(self, _key: Word, written: forms.WrittenStone, common: dict[str, Any]) -> Stone | None:
        size, width, height = (
            self.measures.interval(word, LENGTH, above=0, most=60, name=f"a stone's {name}") if word else None
            for name, word in (("size", written.size), ("width", written.width), ("height", written.height))
        )
        density = self.number(written.density, DENSITY, above=0, most=HEAVIEST, name="density")
        if size is None:
            return None
        return Stone(**common, size=size, width=width, height=height, density=density * PER_CM3 if density else None)

    def _bead(self, _key: Word, written: forms.WrittenBead, common: dict[str, Any]) -> Bead | None:
        size = self.measures.interval(written.size, LENGTH, above=0, most=80, name="a bead's size")
        long = (
            self.measures.interval(written.length, LENGTH, above=0, name="a bead's length") if written.length else size
        )
        hole = self.number(written.hole, LENGTH, above=0, name="a bead's hole")
        if size is None or long is None:
            return None
        if hole is not None and hole >= size.low:
            self.troubles.add("a bead's hole is as wide as the bead", (written.hole or written.size).place, "less")
        return Bead(**common, size=size, length=long, hole=hole)

    def _fibre(self, _key: Word, written: forms.WrittenFibre, common: dict[str, Any]) -> Fibre | None:
        thickness = self.number(written.thickness, LENGTH, above=0, most=30, name="thickness")
        width = self.number(written.width, LENGTH, above=0, most=500, name="width")
        return Fibre(**common, thickness=thickness, width=width) if thickness else None

    def _finding(self, _key: Word, written: forms.WrittenFinding, common: dict[str, Any]) -> Finding:
        inside = self.number(written.inside, LENGTH, above=0, name="inside")
        long = self.number(written.length, LENGTH, above=0, name="length")
        depth = self.number(written.depth, LENGTH, above=0, name="depth")
        width = self.number(written.width, LENGTH, above=0, name="width")
        wire = self.number(written.wire, LENGTH, above=0, most=12, name="wire")
        form = written.drawn_as
        if form is not None and form not in FORMS:
            self.troubles.add(f"a finding is not drawn as '{form}'", form.place, suggest(form, FORMS))
        return Finding(**common, form=str(form or ""), inside=inside, length=long, depth=depth, width=width, wire=wire)

    def _adhesive(self, _key: Word, written: forms.WrittenAdhesive, common: dict[str, Any]) -> Adhesive | None:
        cure = self.measures.interval(written.cure, TIME, above=0, name="curing")
        life = self.measures.interval(written.pot_life, TIME, above=0, name="pot life") if written.pot_life else None
        given = {
            "pot_temperature": self.number(written.pot_temperature, TEMPERATURE, most=60, name="pot temperature"),
            "part_b": self.number(written.part_b, COUNT, above=0, most=20, name="part b, for one of part a,"),
            "density": self.number(written.density, DENSITY, above=0, most=HEAVIEST, name="density"),
            "density_b": self.number(written.density_b, DENSITY, above=0, most=HEAVIEST, name="density of part b"),
            "least": self.number(written.least, VOLUME, above=0, name="the least mix"),
        }
        scale = {"density": PER_CM3, "density_b": PER_CM3, "least": 1 / PER_CM3}
        told: dict[str, Any] = {name: value * scale.get(name, 1) for name, value in given.items() if value is not None}
        return Adhesive(**common, cure=cure, pot_life=life, **told) if cure else None

    def _consumable(self, key: Word, written: forms.WrittenConsumable, common: dict[str, Any]) -> Consumable:
        flows = self.number(written.flows_at, TEMPERATURE, above=20, most=1300, name="where a solder flows")
        if flows is None and "solder" in written.acts_as:
            self.troubles.add("a solder does not say where it flows", key.place, "flows at: 720 °C, from its maker")
        across = self.number(written.across, LENGTH, above=0, most=100, name="the width across")
        bulk = self.number(written.bulk_density, DENSITY, above=0, most=HEAVIEST, name="bulk density")
        if written.pack is None and (bulk or "carbon" in common["acts_as"]):
            common = common | {"unit": "g" if bulk else "mL"}  # what fills a box is not counted in pieces
        return Consumable(**common, flows_at=flows, across=across, bulk_density=bulk * PER_CM3 if bulk else None)
