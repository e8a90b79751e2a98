"""A length of stock as a bar to scale: where it is cut, what is left of it, and whether that is kept."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.pen import LETTER, SIZE, WIDTHS
from sheetgen.draw.paper import Paper

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.model.cut_bar import CutBar
    from sheetgen.model.drawing import Drawing

WIDE, HIGH = 171.0, 5.0  # mm on paper of the longest length of an item
NARROW = 5.0  # mm: pieces shorter on paper are drawn as one block, since a row of lines says nothing
EDGE = 0.3  # mm: half a heavy line, that an edge does not cut off
BASE = 3.5  # mm: where the words stand
BESIDE = 1.0  # mm between words and each end of their piece


def cut_bars(items: Sequence[Sequence[CutBar | None]]) -> tuple[tuple[Drawing | None, ...], ...]:
    """The bars of each item, all of one item to one scale; none for what is no length."""
    return tuple(tuple(_drawn(bar, _scale(each)) if bar else None for bar in each) for each in items)


def _scale(each: Sequence[CutBar | None]) -> float:
    """Paper for 1 mm of the stock."""
    return WIDE / max((bar.long for bar in each if bar), default=WIDE)


def _drawn(bar: CutBar, scale: float) -> Drawing:
    pen, x, end = Paper(), 0.0, bar.long * scale
    for length, many, words in bar.pieces:
        long, blocks, said = length * scale, many, words
        if many > 1 and long < NARROW:
            long, blocks, said = long * many, 1, f"{many} × {words}"
        for _ in range(blocks):
            _words(pen, x, long, said)
            x += long
            if x < end - EDGE:
                pen.line([(x, 0), (x, HIGH)], "cut")
    if bar.kept:
        _words(pen, x, end - x, f"keep {bar.left}")
    elif x < end:
        pen.line([(x, 0), (end, 0), (end, HIGH), (x, HIGH)], "solid", closed=True)
    pen.box((0, 0), end, HIGH, "thin")
    return pen.drawing((-EDGE, -EDGE), end + 2 * EDGE, HIGH + 2 * EDGE, bar.says, true=False)


def _words(pen: Paper, x: float, long: float, words: str) -> None:
    """Words in the middle of a piece that is long enough for them."""
    if SIZE * sum(WIDTHS.get(letter, LETTER) for letter in words) + 2 * BESIDE <= long:
        pen.text((x + long / 2, BASE), words, anchor="middle")
