"""The numbers of the pieces on a slab: each in its piece, and no outline broken for it where there is room inside."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.pen import LETTER, SIZE, Extent

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.base.pen import Pen

FIGURE = 0.66  # of its size: how high a figure stands
CLEAR = 0.3  # mm round a number that lies on lines


def numbered(pen: Pen, boxes: Sequence[tuple[int, Extent]]) -> None:
    """Every number in the middle of its piece, and along it where that is too low for it; pieces by their boxes, mm.

    One too narrow for it either way has it on a clear patch, unless that would meet another and a like piece has it.
    """
    told: list[Extent] = []
    known: set[int] = set()
    for number, box in boxes:
        x, y, words = (box.left + box.right) / 2, (box.top + box.bottom) / 2, str(number)
        long, high = LETTER * SIZE * len(words), FIGURE * SIZE
        along = not _holds(box, long, high) and _holds(box, high, long)
        wide, tall = (high, long) if along else (long, high)
        inside = _holds(box, wide, tall)
        room = Extent(x - wide / 2 - CLEAR, y - tall / 2 - CLEAR, x + wide / 2 + CLEAR, y + tall / 2 + CLEAR)
        if not inside:
            if number in known and any(_meet(room, one) for one in told):
                continue
            pen.cover(
                [[(room.left, room.top), (room.right, room.top), (room.right, room.bottom), (room.left, room.bottom)]]
            )
        pen.text((x + high / 2, y) if along else (x, y + high / 2), words, anchor="middle", turn=-90 if along else 0)
        told.append(room)
        known.add(number)


def _holds(box: Extent, wide: float, tall: float) -> bool:
    return box.width >= wide and box.height >= tall


def _meet(a: Extent, b: Extent) -> bool:
    """Whether two rooms for words overlap."""
    return a.left < b.right and b.left < a.right and a.top < b.bottom and b.top < a.bottom
