"""Items of stock, each made from its words: measures read, ranges kept, what cannot be refused at its place."""

from __future__ import annotations

from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING, Any

from sheetgen.base.dimension import COUNT, DENSITY, LENGTH, TEMPERATURE, TIME, VOLUME
from sheetgen.base.exact import exact
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
from sheetgen.base.supply import Pack
from sheetgen.base.trouble import Troubles
from sheetgen.facts.findings import FORMS
from sheetgen.model import stock as forms
from sheetgen.read.bench_words import at_the_bench
from sheetgen.read.clays import HEAVIEST, PER_CM3, ClayMaker
from sheetgen.read.packs import Counting, unit_of
from sheetgen.read.supply import supply
from sheetgen.read.tools import tool

if TYPE_CHECKING:
    from sheetgen.base.place import Word
    from sheetgen.read.shops import Shops

WIDEST = 2000  # mm: no roll is wider


class ItemMaker(ClayMaker):
    """Makes items, noting troubles; None for one that is wrong. `shops` is None where the studio's are in trouble."""

    def __init__(self, currency: str, shops: Shops, troubles: Troubles) -> None:
        super().__init__(currency, troubles)
        self.shops = shops

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
        counting = self._counting(written, group)
        allowance = self.number(written.allowance, COUNT, least=0, most=1, name="an allowance")
        return {
            "id": str(key),
            "name": str(written.name),
            "unit": counting.unit,
            "supply": supply(written, counting, self.shops, self.measures),
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

    def _counting(self, written: forms.WrittenItem, group: str) -> Counting:
        """The unit that an item is counted in, and what else its own data can turn into that."""
        words = [row.holds for row in written.packs] or [word for word in (written.pack, *written.have) if word]
        unit = unit_of(group, words, self.currency)
        quiet = ClayMaker(self.currency, Troubles())
        if isinstance(written, forms.WrittenClay):
            heavy = quiet.number(written.wet_density, DENSITY)
            return Counting(unit, ((VOLUME, heavy * PER_CM3),) if heavy else ())
        if isinstance(written, forms.WrittenSheet):
            long, wide = quiet.number(written.long, LENGTH), quiet.number(written.wide, LENGTH)
            return Counting(unit, ((COUNT, long * wide),) if long and wide else ())
        if (
            isinstance(written, forms.WrittenConsumable)
            and not words
            and (written.bulk_density or "carbon" in written.acts_as)
        ):  # what fills a box is not counted in pieces
            return Counting("g" if written.bulk_density else "mL")
        return Counting(unit)

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
            one = exact(long * wide)
            sold = common["supply"]
            if not sold.packs:
                common = common | {"supply": replace(sold, packs=(Pack(one),))}
            words = [row.holds for row in written.packs] or ([written.pack] if written.pack else [])
            for pack, word in zip(sold.packs, words, strict=False):
                if pack.holds < one:
                    helped = f"{long * wide:g} mm², or take the pack out"
                    self.troubles.add("a pack cannot be smaller than the sheet in it", word.place, helped)
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
        mixed = written.part_b is not None
        return Adhesive(**common, cure=cure, pot_life=life, mixed=mixed, **told) if cure else None

    def _consumable(self, key: Word, written: forms.WrittenConsumable, common: dict[str, Any]) -> Consumable:
        flows = self.number(written.flows_at, TEMPERATURE, above=20, most=1300, name="where a solder flows")
        if flows is None and "solder" in written.acts_as:
            self.troubles.add("a solder does not say where it flows", key.place, "flows at: 720 °C, from its maker")
        across = self.number(written.across, LENGTH, above=0, most=WIDEST, name="the width across")
        bulk = self.number(written.bulk_density, DENSITY, above=0, most=HEAVIEST, name="bulk density")
        return Consumable(**common, flows_at=flows, across=across, bulk_density=bulk * PER_CM3 if bulk else None)
