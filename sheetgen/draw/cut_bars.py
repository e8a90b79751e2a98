"""A length of stock as a bar to scale: where it is cut, what is left of it, and whether that is kept."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.pen import LETTER, SIZE, WIDTHS
from sheetgen.draw.paper import Paper
from sheetgen.kits.told import bare_length

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.base.rounding import Rounder
    from sheetgen.kits.cut_list import Cutting, Opened
    from sheetgen.model.drawing import Drawing

WIDE, HIGH = 171.0, 5.0  # mm on paper of the longest length of an item
NARROW = 5.0  # mm: pieces shorter on paper are drawn as one block, since a row of lines says nothing
EDGE = 0.3  # mm: half a heavy line, that an edge does not cut off
BASE = 3.5  # mm: where the words stand
BESIDE = 1.0  # mm between words and each end of their piece
KEEP = "keep "


def cut_bars(cuttings: Sequence[Cutting], rounder: Rounder) -> tuple[tuple[Drawing | None, ...], ...]:
    """A bar for each way in which each item is cut, all of one item to one scale; none for what is no length."""
    return tuple(tuple(_bar(way, _scale(one.ways), rounder) for way in one.ways) for one in cuttings)


def _scale(ways: Sequence[Opened]) -> float:
    """Paper for 1 mm of the stock."""
    return WIDE / max((float(side) for way in ways for side in way.sides), default=WIDE)


def _bar(way: Opened, scale: float, rounder: Rounder) -> Drawing | None:
    if way.left is None or len(way.sides) != 1:
        return None
    pen, x, end = Paper(), 0.0, float(way.sides[0]) * scale
    for one in way.pieces:
        long, said = float(one.sides[0]) * scale, bare_length(one.sides[0], rounder)
        if one.many > 1 and long < NARROW:
            blocks, long, said = 1, long * one.many, f"{one.many} × {said}"
        else:
            blocks = one.many
        for _ in range(blocks):
            _words(pen, x, long, said)
            x += long
            if x < end - EDGE:
                pen.line([(x, 0), (x, HIGH)], "cut")
    if way.kept:
        said = KEEP + bare_length(way.left, rounder)
        _words(pen, x, end - x, said)
    elif x < end:
        pen.line([(x, 0), (end, 0), (end, HIGH), (x, HIGH)], "solid", closed=True)
    pen.box((0, 0), end, HIGH, "thin")
    return pen.drawing((-EDGE, -EDGE), end + 2 * EDGE, HIGH + 2 * EDGE, _says(way, rounder), true=False)


def _words(pen: Paper, x: float, long: float, words: str) -> None:
    """Words in the middle of a piece that is long enough for them."""
    if SIZE * sum(WIDTHS.get(letter, LETTER) for letter in words) + 2 * BESIDE <= long:
        pen.text((x + long / 2, BASE), words, anchor="middle")


def _says(way: Opened, rounder: Rounder) -> str:
    pieces = ", ".join(f"{one.many} of {bare_length(one.sides[0], rounder)}" for one in way.pieces)
    left = bare_length(way.left, rounder) if way.left is not None else ""
    kept = " kept" if way.kept else " left"
    return f"A length of {bare_length(way.sides[0], rounder)} {rounder.unit('mm')} cut into {pieces}; {left}{kept}"
