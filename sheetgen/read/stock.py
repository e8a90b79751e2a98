"""Stock files to one stock: every item once, and a source asked for wherever data is a maker's word."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any

from sheetgen.base.spelling import suggest
from sheetgen.facts.bench import BEARS
from sheetgen.facts.cautions import CAUTIONS, LADDER
from sheetgen.facts.signs import SIGNS
from sheetgen.model.project import Caution, KnownFault, Stock
from sheetgen.model.stock import SOURCED, StockFile, WrittenClay, WrittenFault, WrittenItem
from sheetgen.read.bench_words import unsourced
from sheetgen.read.items import ItemMaker
from sheetgen.read.yaml_words import Mapping

if TYPE_CHECKING:
    from sheetgen.base.place import Place, Word
    from sheetgen.base.trouble import Troubles
    from sheetgen.read.shops import Shops
    from sheetgen.read.yaml_words import Words

GROUPS = (
    "clays", "wires", "sheets", "metals", "stones", "beads", "fibres", "findings", "adhesives", "consumables", "tools",
)  # fmt: skip


TOLD = ("at the bench", "at the action")  # where a caution stands in full
SHORTEST = 34  # letters of a reminder beside a title


class StockReader:
    """Makes items of one file after another and puts them into one stock."""

    def __init__(self, stock: Stock, currency: str, shops: Shops, troubles: Troubles) -> None:
        self.stock, self.troubles = stock, troubles
        self.maker = ItemMaker(currency, shops, troubles)
        self.cautions_named: list[tuple[Word, Word]] = []
        self.first: dict[str, Place] = {}
        self.first_caution: dict[str, Place] = {}
        self.lost: dict[str, Place] = {}  # cautions in trouble themselves

    def add(self, file: StockFile) -> None:
        """Every item of a file; one that is wrong is left out, with its troubles."""
        for group in GROUPS:
            for key, written in getattr(file, group).items():
                self._item(group, key, written)
        for key, caution in file.cautions.items():
            self._caution(key, caution)
        for key, fault in file.faults.items():
            self._fault(key, fault)

    def _fault(self, key: Word, written: WrittenFault) -> None:
        if str(key) in self.stock.faults:
            self.troubles.add(f"the fault '{key}' is written twice", key.place, "keep one")
        for said in (written.seen, written.why, written.mend):
            if not any(map(str.isalnum, said)):
                self.troubles.add("a fault has words, and here are none", said.place, "fill it in")
        self.stock.faults[str(key)] = KnownFault(str(key), str(written.seen), str(written.why), str(written.mend))

    def finish(self) -> None:
        """Cautions that items name must be known, in whatever file they stand."""
        for key, name in self.cautions_named:
            if place := self.lost.get(str(name)):
                self.stock.items.pop(str(key), None)
                self.stock.withheld[str(key)] = place
            elif name not in self.stock.cautions:
                self.troubles.add(f"the caution '{name}' is not known", name.place, suggest(name, self.stock.cautions))
                self.stock.items.pop(str(key), None)
                self.stock.withheld[str(key)] = name.place

    def withhold(self, group: Word, key: Word, place: Place, written: Words) -> None:
        """An item or a caution whose fields are amiss at a place is there, and is not used."""
        if group == "cautions":
            self.lost[str(key)] = place
        elif self._first(key):
            self.stock.withheld[str(key)] = place
            kind = next((v for k, v in written.items() if k == "kind"), "") if isinstance(written, Mapping) else ""
            self.stock.lacking |= {str(kind): str(key)} if kind and isinstance(kind, str) else {}

    def _first(self, key: Word) -> bool:
        """Whether an item has a name of its own; one that is there twice is not used at all."""
        if key not in self.first:
            self.first[str(key)] = key.place
            return True
        self.troubles.add(f"'{key}' is in stock twice; first at {self.first[key]}", key.place, "give one another name")
        self.stock.items.pop(str(key), None)
        self.stock.withheld[str(key)] = key.place
        return False

    def _item(self, group: str, key: Word, written: WrittenItem) -> None:
        if not self._first(key):
            return
        if not re.fullmatch(r"[a-z0-9]+([-.][a-z0-9]+)*", key):
            helped = "small letters, digits, points and hyphens, such as silver-low-fire"
            self.troubles.add(f"'{key}' cannot be the name of an item", key.place, helped)
            self.stock.withheld[str(key)] = key.place
            return
        before = len(self.troubles.errors)
        for data in SOURCED.get(group, ()):
            given = getattr(written, data.replace(" ", "_"), None) or data == "shrinkage"
            given = given or (data == "firing" and getattr(written, "programs", None))
            if given and not self._sourced(written, data):
                self.troubles.add(
                    f"'{key}' does not say where its {data} comes from", key.place, f"add it to sources: {data}: …"
                )
        for name in unsourced(written):
            where, told = (
                getattr(written, name).place,
                f"'{key}' does not say where it comes from that it bears {BEARS[name]}",
            )
            self.troubles.add(told, where, f"add it to sources: {name}: …")
        item = self.maker.make(group, key, written)
        self.cautions_named += [(key, caution) for caution in written.cautions]
        if item is not None and len(self.troubles.errors) == before:
            self.stock.items[str(key)] = item
        else:
            new = [trouble.place for trouble in self.troubles.errors[before:] if trouble.place]
            self.stock.withheld[str(key)] = new[0] if new else key.place
            kind = getattr(written, "kind", None)
            self.stock.lacking |= {str(kind): str(key)} if kind else {}

    @staticmethod
    def _sourced(written: WrittenItem, data: str) -> bool:
        if data == "shrinkage" and isinstance(written, WrittenClay):
            by = [*written.programs.values()] or [written]
            apart = {"drying shrinkage", "firing shrinkage"} <= {str(k) for k in written.sources}
            if all(one.test_strips for one in by) or (apart and not any(one.shrinkage for one in by)):
                return True
        return any(k in {data, "all"} for k in written.sources)

    def _caution(self, key: Word, written: Any) -> None:  # noqa: ANN401
        before = len(self.troubles.errors)
        if key in CAUTIONS:
            told = f"the caution '{key}' is built in, and nobody may write it otherwise"
            self.troubles.add(told, key.place, "give your own another name, and name it where it belongs")
        elif (first := self.first_caution.setdefault(str(key), key.place)) is not key.place:
            self.troubles.add(f"the caution '{key}' is written twice; first at {first}", key.place, "keep one")
        if written.word not in LADDER:
            self.troubles.add(f"'{written.word}' is no signal word", written.word.place, ", ".join(LADDER))
        if written.told is not None and written.told not in TOLD:
            self.troubles.add(f"a caution cannot be told '{written.told}'", written.told.place, ", ".join(TOLD))
        if written.short is not None and len(written.short) > SHORTEST:
            helped = f"five words, at most {SHORTEST} letters: it stands beside a title"
            self.troubles.add(f"a reminder of {len(written.short)} letters is too long", written.short.place, helped)
        said_short = [] if written.short is None else [written.short]
        for said in (key, written.hazard, written.consequence, written.avoid, *said_short, *written.wear):
            if not any(map(str.isalnum, said)):
                self.troubles.add("a caution has words, and here are none", said.place, "fill it in")
        for sign in written.signs:
            if sign not in SIGNS:
                self.troubles.add(f"'{sign}' is no sign that is drawn", sign.place, suggest(sign, SIGNS))
        if len(self.troubles.errors) > before:
            if key not in self.stock.cautions:
                self.lost[str(key)] = key.place
            return
        self.stock.cautions[str(key)] = Caution(
            str(key), str(written.word), str(written.hazard), str(written.consequence), str(written.avoid),
            str(written.source or ""), tuple(map(str, written.wear)), tuple(map(str, written.signs)),
            str(written.short or written.hazard.rstrip(".")), written.told == TOLD[1],
        )  # fmt: skip
