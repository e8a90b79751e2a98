"""The cutting list for a theme: of each item its tags, then every length with its pieces, longest first."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.exact import exact
from sheetgen.base.material import Consumable
from sheetgen.base.printed import whole
from sheetgen.base.spelling import counted, told_apart
from sheetgen.kits.lists import DOT
from sheetgen.kits.tags import tags
from sheetgen.kits.told import bare_length, length, sides
from sheetgen.model.cut_bar import CutBar
from sheetgen.model.lists_view import Bundle, CutItem, CutLine, CutPieces

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence
    from fractions import Fraction

    from sheetgen.base.rounding import Rounder
    from sheetgen.kits.cut_list import Cutting, Opened
    from sheetgen.kits.lying import Lying, Spread
    from sheetgen.kits.taken import Bundle as Cut
    from sheetgen.model.view import Html

WRITTEN_OUT = 3  # pieces alike, up to which each is written by itself
HELD = 24  # letters: what is no longer stands on one line
TALLIED = 12  # lengths cut alike, up to which each has a box a piece; of more each has one box
NAMES = {"end": "kept end", "spool": "spool", "sheet": "sheet"}


def cut_items(cuttings: Sequence[Cutting], bars: Sequence[Sequence[Html]], rounder: Rounder) -> Iterator[CutItem]:
    """Each item that is cut; `bars` are drawn of its ways."""
    short, every = told_apart([one.got.taken.item.name for one in cuttings]), tags(cuttings)
    for one, own, drawn in zip(cuttings, short, bars, strict=True):
        marks = {b.bundle: every[one.got.taken.item.id, b.bundle] for b in one.bundles}
        bundles = tuple(Bundle(marks[b.bundle], sides(b.sides, rounder), b.many, _held(b.whose)) for b in one.bundles)
        lines = (_line(one, way, bar, marks, rounder) for way, bar in zip(one.ways, drawn, strict=True))
        strips = any(held.sides for held in one.got.taken.held) and one.got.taken.way == "cut"
        yield CutItem(one.got.taken.item.name, own, _says(one, rounder), strips, bundles, tuple(lines))


def _held(whose: str) -> str:
    """Whose pieces are, each short part of it on one line."""
    return ", ".join(whole(part) if len(part) <= HELD else part for part in whose.split(", "))


def _says(one: Cutting, rounder: Rounder) -> str:
    got, cut = one.got, one.got.taken.item.supply.saw_cut
    if got.why:
        return f"From which lengths is not reckoned: {got.why}."
    opened = [(way.source, way.sides, way.times) for way in one.ways]
    each: dict[tuple[str, tuple[Fraction, ...]], int] = {}
    for source, long, times in opened:
        each[source, long] = each.get((source, long), 0) + times
    told = [f"{counted(n, NAMES[source])} of {sides(long, rounder)}" for (source, long), n in each.items()]
    said = f"Open {' and '.join(told)}."
    if got.plan and got.plan.untouched:
        said += f" Leave {DOT.join(length(end, rounder) for end in got.plan.untouched)} whole."
    if any(held.sides for held in got.taken.held) and got.plan:
        said += " Cut each strip across the whole roll, then into the pieces named beside it; the rest of it is scrap."
    return f"{said} Each cut takes {length(cut, rounder)}: that is reckoned in." if cut else said


def _line(
    one: Cutting,
    way: Opened,
    bar: Html,
    marks: Mapping[Cut, str],
    rounder: Rounder,
) -> CutLine:
    pieces = [(_bare(p.sides, rounder), marks[p.bundle], p.many) for p in way.pieces]
    if way.spread:
        said = "; ".join(_lie(way.spread, marks, rounder))
    else:
        said = DOT.join(
            DOT.join([whole(f"{size} {mark}")] * n) if n <= WRITTEN_OUT else whole(f"{n} × {size} {mark}")
            for size, mark, n in pieces
        )
    if way.first is None:
        return CutLine(counted(way.times, "piece"), said, "", bar, ("",), _times(pieces, way.times))
    name = NAMES[way.source]
    told = _source(one, way, rounder), said, _left(one, way, rounder), bar
    if way.times > TALLIED:
        return CutLine(*told, (f"a box a {name}",), (CutPieces("", "", way.times),))
    each = range(way.first, way.first + way.times)
    return CutLine(*told, tuple(f"{name} {n}" for n in each) if way.times > 1 else ("",), _times(pieces, 1))


def _lie(spread: Spread, marks: Mapping[Cut, str], rounder: Rounder) -> Iterator[str]:
    """How blanks lie on a sheet: 3 across, 94 × 20 a, as many rows of it as there are; else by the corner of each."""

    def named(one: Lying) -> str:
        mark = marks[(one.blank.long, one.blank.wide), one.blank.label]
        return whole(f"{_bare((one.wide, one.high), rounder)} {mark}")

    for row in spread.rows:
        rows = f"{row.many} rows of " if row.many > 1 else ""
        yield rows + " and ".join(f"{n} across, {named(one)}" for n, one in row.across)
    if not spread.rows:
        for one in spread.each:
            yield f"{named(one)} at {bare_length(one.at, rounder)}, {bare_length(one.down, rounder)} from the corner"


def _times(pieces: Sequence[tuple[str, str, int]], times: int) -> tuple[CutPieces, ...]:
    return tuple(CutPieces(size, mark, n * times) for size, mark, n in pieces)


def _bare(each: Sequence[Fraction], rounder: Rounder) -> str:
    return " × ".join(bare_length(side, rounder) for side in each)


def _source(one: Cutting, way: Opened, rounder: Rounder) -> str:
    """Which of how many: Spool 3 of 11, 1000 mm; Spools 4 to 6 of 11, each 1000 mm."""
    name, first = NAMES[way.source].capitalize(), way.first or 1
    of = sum(other.times for other in one.ways if other.source == way.source)
    long = sides((*_roll(one), *way.sides), rounder)
    if way.times == 1:
        return f"{name} {first} of {of}, {long}"
    return f"{name}s {first} to {first + way.times - 1} of {of}, each {long}"


def _left(one: Cutting, way: Opened, rounder: Rounder) -> str:
    if way.spread:
        if not way.spread.rest:
            return "nothing left in one piece"
        where = "at their right" if way.spread.beside else "below them"
        return f"{whole(f'left {_bare(way.spread.rest, rounder)}')} {where}"
    if way.left is None:
        return ""
    if not way.left:
        return "nothing left"
    return whole(f"left {_bare((*_roll(one), way.left), rounder)}, {'keep' if way.kept else 'too short to keep'}")


def _roll(one: Cutting) -> tuple[Fraction, ...]:
    """The width of a roll off which strips are cut, mm; nothing of wire and cord."""
    item = one.got.taken.item
    if not isinstance(item, Consumable) or item.across is None or not any(held.sides for held in one.got.taken.held):
        return ()
    return (exact(item.across),)


def cut_bars(cuttings: Sequence[Cutting], rounder: Rounder) -> tuple[tuple[CutBar | None, ...], ...]:
    """What is to be drawn of each way in which each item is cut; nothing of what is no length."""
    return tuple(tuple(_bar(way, rounder) for way in one.ways) for one in cuttings)


def _bar(way: Opened, rounder: Rounder) -> CutBar | None:
    if way.left is None or len(way.sides) != 1:
        return None
    pieces = tuple((float(one.sides[0]), one.many, bare_length(one.sides[0], rounder)) for one in way.pieces)
    left = bare_length(way.left, rounder)
    told = ", ".join(f"{many} of {said}" for _, many, said in pieces)
    says = f"A length of {length(way.sides[0], rounder)} cut into {told}; {left} {'kept' if way.kept else 'left'}"
    return CutBar(float(way.sides[0]), pieces, left, kept=way.kept, says=says)
