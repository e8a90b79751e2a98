"""The pick list for a theme: by station what is fetched, how it is given out, and what goes into each kind of bag."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sheetgen.base.exact import plain
from sheetgen.base.material import Adhesive, Bead, Clay, Stone
from sheetgen.base.printed import whole
from sheetgen.base.spelling import begun, counted, told_apart
from sheetgen.kits.apart import by_itself
from sheetgen.kits.closed import closed
from sheetgen.kits.kit_lines import BOXED, place_of
from sheetgen.kits.lists import PAPER, by_station, sheets_of
from sheetgen.kits.tags import tag_of, tags
from sheetgen.kits.told import amount, bare_length, sides
from sheetgen.model.lists_view import PickItem, PickLine, Station

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping
    from fractions import Fraction

    from sheetgen.base.material import Item
    from sheetgen.base.rounding import Rounder
    from sheetgen.base.supply import Pack
    from sheetgen.kits.bought import Got
    from sheetgen.kits.run_lists import Lists
    from sheetgen.kits.tags import Tagged
    from sheetgen.kits.taken import Held, Kits, Taken

CUT = {"cut", "blanks"}
GIVES = {"g": "weigh each", "mL": "measure each out", "piece": "count each out"}
STACKED = "Lies in the stack, order by order; its sheets are counted with the check list."
HANDLED = "Comes cut from the cutting table; the letter is its tag."


def stations(lists: Lists, rounder: Rounder) -> Iterator[Station]:
    """Each station with its items; the sheets of the kits come last."""
    got = {id(one.taken): one for one in lists.got}
    at_each = by_station(one.taken for one in lists.got)
    close, marks = closed(at_each), tags(lists.cuttings)
    for name, each in at_each.items():
        tray = any(isinstance(one.item, Stone | Bead) for one in each)
        short = told_apart([one.item.name for one in each])
        items = (_item(got[id(one)], own, close, marks, rounder) for one, own in zip(each, short, strict=True))
        yield Station(name, tray, tuple(items))
    fetch = STACKED if lists.checked else ""
    sheets = tuple(_sheet(sheet, kits, fetch) for sheet, kits in sheets_of(lists.run).items())
    if sheets:
        yield Station(PAPER, tray=False, items=sheets)


def _item(got: Got, short: str, close: Mapping[int, str], marks: Mapping[Tagged, str], rounder: Rounder) -> PickItem:
    taken = got.taken
    lines = tuple(
        replace(_line(taken, held, close.get(id(held), ""), rounder), tag=tag_of(taken.item, held, marks))
        for held in taken.held
    )
    return PickItem(taken.item.name, short, _fetch(got, rounder), _together(taken, rounder), lines)


def _together(taken: Taken, rounder: Rounder) -> str:
    if taken.way in CUT:
        return counted(plain(sum(_pieces(held) for held in taken.held)), "piece")
    if taken.pack is not None:
        return counted(plain(taken.need / taken.pack.holds), "pack")
    return amount(taken.need, taken.item.unit, rounder)


def _pieces(held: Held) -> Fraction | int:
    """Pieces in all bags: of a roll or sheet they are counted, of wire each bag has one."""
    return held.together if held.sides is not None else held.kits.bags


def _line(taken: Taken, held: Held, close: str, rounder: Rounder) -> PickLine:
    each, together = amount(held.each, taken.item.unit, rounder), amount(held.together, taken.item.unit, rounder)
    if held.sides is not None:
        each = f"{plain(held.each)} of {sides(held.sides, rounder)}"
    if taken.way in CUT:
        together = counted(plain(_pieces(held)), "piece")
    if taken.pack is not None:
        size = amount(taken.pack.holds, taken.item.unit, rounder)
        each = f"{counted(plain(held.each / taken.pack.holds), 'pack')} of {size}"
        together = counted(plain(held.together / taken.pack.holds), "pack")
    where = place_of(held.kits, taken.item)
    bags = _many(held.kits.bags, ("kit" if where == BOXED else "bag") if held.kits.posted else "set")
    alone = held.kits.alone
    return PickLine(
        held.kits.told.removesuffix(alone).removesuffix(", "), whole(alone or where), bags, each,
        _working(taken, held, rounder), together, close,
    )  # fmt: skip


def _working(taken: Taken, held: Held, rounder: Rounder) -> str:
    """What is taken and what is to spare; nothing where nothing is."""
    if not held.spare or not held.why:
        return ""
    net, spare = (
        bare_length(one, rounder) if taken.item.unit == "mm" else plain(one, rounder.point)
        for one in (held.each - held.spare, held.spare)
    )
    return f"{net} + {spare}: {held.why}"


def _fetch(got: Got, rounder: Rounder) -> str:
    taken = got.taken
    if taken.way in CUT:
        return HANDLED if not got.why else f"{HANDLED[:-1]}; {got.why}."
    said = begun(_from_where(got, rounder))
    if taken.item.supply.post and any(held.kits.posted for held in taken.held):
        said = f"Ask the carrier first whether it takes it. {said}"
    if taken.way == "pot":
        return f"{said} One pot, for {counted(taken.bags, 'set')}.{_unmixed(taken.item)}{_over(got, rounder)}"
    if taken.pack is not None:
        return f"{said} Sealed: leave each pack shut."
    return f"{said} {begun(_gives(taken.item))}."


def _gives(item: Item) -> str:
    """How a bag's part is taken off, and into what: what would leak or dust is shut up by itself."""
    gives = GIVES.get(item.unit, "measure each off")
    if isinstance(item, Clay):
        return f"{gives}, and wrap it at once"
    if not by_itself(item) or item.unit == "piece":
        return gives
    shut = f"{gives} into a pot that shuts tight"
    if isinstance(item, Adhesive) and item.mixed:
        return f"{shut}, so much of its parts A and B together, 1 : {item.part_b:g}, each into its own, marked"
    return shut


def _unmixed(item: Item) -> str:
    """Of an adhesive of two parts how they are dealt out."""
    if not isinstance(item, Adhesive) or not item.mixed:
        return ""
    return f" It is of both parts together, A and B 1 : {item.part_b:g}: leave them unmixed, each in its own."


def _over(got: Got, rounder: Rounder) -> str:
    """What of a pot comes back."""
    return f" {amount(got.back, got.unit, rounder)} should come back." if got.back else ""


def _from_where(got: Got, rounder: Rounder) -> str:
    """What comes out of the drawer, and which packs are opened."""
    if got.why:
        return f"From what is not reckoned: {got.why}."
    need, unit = got.taken.need, got.taken.item.unit
    there = min(need, got.have)
    new = " and ".join(_packs(pack, many, unit, rounder) for pack, many in got.packs)
    if got.taken.pack is not None and (over := got.bought - (need - there)):  # the least that is sold is more
        new = f"{plain((got.bought - over) / got.taken.pack.holds)} of {new}"
    if not new:
        return "all from the drawer."
    return f"{amount(there, unit, rounder)} from the drawer, the rest from {new}." if there else f"from {new}."


def _packs(pack: Pack, many: int, unit: str, rounder: Rounder) -> str:
    return f"{counted(many, 'new pack')} of {amount(pack.holds, unit, rounder)}"


def _sheet(sheet: str, kits: list[Kits], fetch: str) -> PickItem:
    lines = tuple(
        PickLine(
            f"{one.told}, {one.worked.revised(one.version)}",
            "",
            _many(one.bags, "kit" if one.posted else "set"),
            "1",
            "",
            f"{one.bags}",
        )
        for one in kits
    )
    return PickItem(begun(sheet), begun(sheet), fetch, f"{sum(one.bags for one in kits)}", lines)


def _many(many: int, noun: str) -> str:
    return whole(counted(many, noun))
