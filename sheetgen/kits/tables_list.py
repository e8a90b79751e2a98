"""The tables of a class as a spreadsheet takes them: a row for each thing at each place, on each table, by the kiln."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from sheetgen.base.spelling import begun
from sheetgen.kits.at_tables import SPARE, Thing
from sheetgen.kits.lists import DOT, number
from sheetgen.kits.poured import colours_of
from sheetgen.model.sheets import Sheet
from sheetgen.model.worn import worn

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from sheetgen.kits.at_tables import Laid, Table
    from sheetgen.kits.colours import Allotted
    from sheetgen.kits.taken import Kits
    from sheetgen.model.sheets import Cell

TABLES = (
    "table", "who", "design", "version", "choices", "colourway", "lies", "item", "name", "size", "amount",
    "of it spare", "unit",
)  # fmt: skip
TEACHERS = "teacher"
NOBODYS: tuple[Cell, ...] = (None,) * 5
AS_NEEDED = "as needed"


def tables_list(laid: Laid) -> Sheet:
    """All of it: whoever's it is, where it lies, how much; `size` of a tool in mm."""
    rows: list[tuple[Cell, ...]] = []
    for table in laid.tables:
        rows += _of(table, table.name or None)
    rows += _of(laid.teacher, TEACHERS)
    rows += [(None, *NOBODYS, "by itself", *row) for row in _rows(laid.stations)]
    rows += [(None, *NOBODYS, "by the kiln", *row) for row in (*_rows(laid.kiln), *_rows(laid.kiln_tools, ""))]
    return Sheet("tables", TABLES, tuple(rows))


def _of(table: Table, name: str | None) -> Iterator[tuple[Cell, ...]]:
    for place in table.places:
        for who in place.names:
            own = (name, who, *_kind(place.kits), "at the place")
            yield from ((*own, *row) for row in (*_rows(place.things), *_rows(place.tools)))
            yield from ((*own, *_sheet(one)) for one in place.kits.sheets)
            if who != SPARE:
                yield from ((*own, None, wear, None, 1, None, "piece") for wear in worn(place.kits.version))
    for pupil, clay, colours in zip(table.pupils, table.clay, table.colours, strict=bool(table.pupils)):
        his = (name, pupil.name, *_kind(pupil.kits), "of what is on the table")
        yield from ((*his, *row) for row in _rows((*clay, *_stones(pupil.kits, colours))))
    yield from ((name, *NOBODYS, "on the table", *row) for row in _rows((*table.shared, *table.tools)))


def _stones(kits: Kits, colours: Allotted) -> Iterator[Thing]:
    items = colours_of(kits)
    yield from (Thing(items[name], Fraction(many)) for name, many in colours)


def _kind(kits: Kits) -> tuple[Cell, ...]:
    way = kits.colourway.name if kits.colourway else None
    return kits.design, kits.called, kits.chosen or None, way


def _sheet(name: str) -> tuple[Cell, ...]:
    return name, begun(name), None, 1, None, "piece"


def _rows(things: Iterable[Thing], unsaid: str = AS_NEEDED) -> Iterator[tuple[Cell, ...]]:
    for one in things:
        size = DOT.join(f"{size:.6g}" for size in one.sizes) or None
        much = number(one.much) if one.much is not None else None
        spare = number(one.spare) if one.spare else None
        unit = one.unit if one.much is not None else unsaid or None
        yield one.item.id, one.item.name, size, much, spare, unit
