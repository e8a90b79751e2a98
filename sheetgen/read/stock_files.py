"""The files of projects/stock: an item in trouble is withheld by itself, and the others of its file are used."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from sheetgen.base.trouble import Troubles
from sheetgen.facts.cautions import CAUTIONS, SOURCE
from sheetgen.model.project import Caution, Stock
from sheetgen.model.stock import StockFile
from sheetgen.read.bounds import OF_STOCK, bounded
from sheetgen.read.files import file_words, once_a_line
from sheetgen.read.forms import form
from sheetgen.read.stock import StockReader
from sheetgen.read.yaml_words import Mapping

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from sheetgen.base.place import Place, Word
    from sheetgen.read.shops import Shops


class Head(NamedTuple):
    """A group of a file, or an item of a group."""

    group: Word
    item: Word | None = None

    @property
    def at(self) -> tuple[int, int]:
        """Its line and column."""
        place = (self.item or self.group).place
        return place.line, place.column


def read_stock(projects: Path, currency: str, shops: Shops, troubles: Troubles) -> Stock:
    """Every item and caution of a library's stock."""
    usual = {
        key: Caution(key, *one[:4], SOURCE, one.wear, one.signs, one.short, one.at_action)
        for key, one in CAUTIONS.items()
    }
    stock = Stock(cautions=usual)
    reader = StockReader(stock, currency, shops, troubles)
    if not (projects / "stock").is_dir():
        told = "projects has no folder 'stock', where clays, wires, stones and tools are read from"
        troubles.add(told, None, "make projects/stock and put the studio's stock there", "warning")
    for path in sorted((projects / "stock").glob("*.y*ml")):
        own = Troubles()
        name = f"projects/stock/{path.name}"
        found = file_words(path, name, own)
        if found is None or not bounded(found, OF_STOCK, own) or not _add(found, reader, own):
            stock.unread.append(name)
        troubles.extend(own)
    reader.finish()
    return stock


def _add(found: Mapping, reader: StockReader, troubles: Troubles) -> bool:
    """Put what is well of a file into stock, and withhold the rest; False where some of it has no name to go by."""
    with once_a_line(troubles) as more:
        file = form(StockFile, found, more)
    if file is not None and not troubles.errors:
        reader.add(file)
        return True
    amiss, whole = _amiss(found, troubles)
    for head, place in amiss.items():
        if head.item is not None:
            reader.withhold(head.group, head.item, place, found[head.group][head.item])
    sound = Mapping(
        (group, _without(group, items, amiss)) for group, items in found.items() if Head(group) not in amiss
    )
    sound.place = found.place
    file = form(StockFile, sound, Troubles())
    if file is not None:
        reader.add(file)
    return whole and file is not None


def _without(group: Word, items: Mapping, amiss: dict[Head, Place]) -> Mapping:
    kept = Mapping((key, value) for key, value in items.items() if Head(group, key) not in amiss)
    kept.place = items.place
    return kept


def _amiss(found: Mapping, troubles: Troubles) -> tuple[dict[Head, Place], bool]:
    """The groups and items between whose lines a fault stands, and of a group all its items, each with its fault.

    And whether each fault has its item: of a group that is written twice, nobody knows what the second one holds.
    """
    heads = sorted(_heads(found), key=lambda head: head.at)
    amiss: dict[Head, Place] = {}
    whole = True
    for trouble in troubles.errors:
        place = trouble.place
        if place is None:
            continue
        twice = _twice(place, heads)
        head = twice or next((one for one in reversed(heads) if one.at <= (place.line, place.column)), None)
        if head is None or (twice is not None and twice.item is None):
            whole = False
            continue
        for one in [one for one in heads if one.group is head.group] if head.item is None else [head]:
            amiss.setdefault(one, place)
    return amiss, whole


def _heads(found: Mapping) -> Iterator[Head]:
    for group, items in found.items():
        yield Head(group)
        for item in items if isinstance(items, Mapping) else ():
            yield Head(group, item)


def _twice(place: Place, heads: list[Head]) -> Head | None:
    """What is written a second time at a place, in the column where it stands first."""
    text = place.source.line(place.line)[place.column - 1 :][: place.width].strip("'\"")
    for head in heads:
        name = head.item or head.group
        if name == text and head.at[1] == place.column and head.at[0] < place.line:
            return head
    return None
