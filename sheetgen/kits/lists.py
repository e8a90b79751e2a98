"""The lists pick and left, as a spreadsheet takes them, and how a pick list is parted among the stations."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from decimal import Decimal
from fractions import Fraction
from typing import TYPE_CHECKING

from sheetgen.base.exact import plain
from sheetgen.base.material import Bead, Clay, Fibre, Stone, Wire
from sheetgen.base.material import Sheet as SheetMetal
from sheetgen.base.spelling import begun, counted, in_turn
from sheetgen.kits.tags import tag_of
from sheetgen.model.sheets import Sheet

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Mapping, Sequence

    from sheetgen.base.exact import Exact
    from sheetgen.base.material import Item
    from sheetgen.kits.bought import Got
    from sheetgen.kits.tags import Tagged
    from sheetgen.kits.taken import Kits, Taken
    from sheetgen.model.sheets import Cell

STATIONS: tuple[tuple[str, tuple[type[Item], ...]], ...] = (
    ("clay", (Clay,)),
    ("wire", (Wire, SheetMetal, Fibre)),
    ("stones", (Stone, Bead)),
)
REST = "findings"
"""Where everything else is picked."""
PAPER = "paper"
"""Where the sheets of the kits are picked."""
PICK = (
    "station", "item", "name", "colour", "design", "version", "choices", "bags", "in one bag", "of it spare", "unit",
    "together", "tag",
)  # fmt: skip
LEFT = ("item", "unit", "before", "bought", "used", "after", "ends")
PLACES = 4  # decimals of an amount that no decimal writes
DOT = " · "


def number(amount: Exact) -> int | Decimal:
    """An amount as a cell holds it: whole numbers whole."""
    exact = Fraction(amount)
    return int(exact) if exact.denominator == 1 else Decimal(plain(exact, places=PLACES).replace("−", "-"))


def station(item: Item) -> str:
    """Where a person stands who picks it."""
    return next((name for name, kinds in STATIONS if isinstance(item, kinds)), REST)


def in_order(taken: Iterable[Taken]) -> list[Taken]:
    """The order of every list: station by station, and in each by name, so that a metal's wires lie together."""
    places = [*(name for name, _ in STATIONS), REST]
    return sorted(taken, key=lambda one: (places.index(station(one.item)), in_turn(one.item.name)))


def by_station(taken: Iterable[Taken]) -> dict[str, list[Taken]]:
    """What is picked at each station, in the order of a person's way; what is used as needed is in no bag."""
    found: dict[str, list[Taken]] = {name: [] for name in (*(name for name, _ in STATIONS), REST)}
    for one in taken:
        if one.held or one.way == "pot":
            found[station(one.item)].append(one)
    return {name: each for name, each in found.items() if each}


def sheets_of(run: Iterable[Kits]) -> dict[str, list[Kits]]:
    """Each sheet that is picked, with the kits in which it lies; at a table it bears no colourway."""
    printed: dict[tuple[str, str], Kits] = {}
    for kits in run:
        one = kits if kits.posted else replace(kits, colourway=None)
        had = printed.get((one.design, one.told))
        printed[one.design, one.told] = replace(one, bags=had.bags + one.bags) if had else one
    found: dict[str, list[Kits]] = {}
    for kits in printed.values():
        for sheet in kits.sheets:
            found.setdefault(sheet, []).append(kits)
    return found


def pick(taken: Sequence[Taken], run: Sequence[Kits] = (), marks: Mapping[Tagged, str] | None = None) -> Sheet:
    """By station: what goes into each kind of bag, of a pot the whole; at last the sheets that lie in the kits.

    What comes from the cutting table has its tag, by `marks`.
    """
    rows: list[tuple[Cell, ...]] = []
    for at, each in by_station(taken).items():
        for one in each:
            item = (at, one.item.id, one.item.name)
            if one.way == "pot":
                spare = number(one.need - (one.need if one.used is None else one.used))
                unit, need = one.item.unit, number(one.need)
                rows.append((*item, None, None, None, None, one.bags, None, spare, unit, need, None))
            rows += [
                (
                    *item, _mix(held.kits, one.item), *_kind(held.kits), held.kits.bags, number(held.each),
                    number(held.spare), held.unit, number(held.together), tag_of(one.item, held, marks or {}) or None,
                )
                for held in one.held
            ]  # fmt: skip
    rows += [
        (PAPER, sheet, begun(sheet), None, *_kind(kits), kits.bags, 1, 0, "piece", kits.bags, None)
        for sheet, each in sheets_of(run).items()
        for kits in each
    ]
    return Sheet("pick", PICK, tuple(rows))


def _kind(kits: Kits) -> tuple[str, str, str | None]:
    """Design, what the version is called, and all that makes these kits unlike others of it."""
    return kits.design, kits.called, kits.unlike or None


def _mix(kits: Kits, item: Item) -> str | None:
    """The colourway that an item is a colour of."""
    way = kits.colourway
    return way.name if way and any(one.id == item.id for one in way.items) else None


def begun_sheets(one: Got, told: Callable[[Sequence[Fraction]], str]) -> str:
    """What lies there besides: a sheet that is cut into counts as used, and of each the largest piece is left.

    It is the piece that the cutting table names; `told` says its sides.
    """
    if not one.sheets:
        return ""
    rests = Counter(told(sheet.rest) for sheet in one.sheets if sheet.rest)
    each = DOT.join(said if n == 1 else f"{n} of {said}" for said, n in rests.items()) or "offcuts alone"
    return f"and, not counted, {each}, of {counted(len(one.sheets), 'sheet')}"


def left(got: Iterable[Got]) -> Sheet:
    """The drawer as it should look afterwards, with what comes back; of what cannot be reckoned only what was there."""
    return Sheet("left", LEFT, tuple(_left(one) for one in got))


def _sides(each: Sequence[Fraction]) -> str:
    return f"{' × '.join(map(plain, each))} mm"


def _left(one: Got) -> tuple[Cell, ...]:
    head = (one.taken.item.id, one.unit, number(one.have))
    if one.why:
        return *head, None, None, None, None
    over = f"; with offcuts {plain(one.needed - one.taken.need)} {one.unit}" if one.sheets else ""
    ends = begun_sheets(one, _sides) + over or DOT.join(map(plain, one.ends)) or None
    return *head, number(one.bought), number(one.used - one.back), number(one.left + one.back), ends
