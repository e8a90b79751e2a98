"""What a piece of clay takes up in the kiln: as its kind says, or as its template lies where it stays flat."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.reckoning import holds
from sheetgen.base.room import Room
from sheetgen.base.trouble import CannotBe
from sheetgen.work.stopped import Stopped

if TYPE_CHECKING:
    from sheetgen.parts.piece import Piece
    from sheetgen.work.part import PartSource


def rooms(piece: Piece, part: PartSource) -> tuple[Room, ...]:
    """The room of every piece that one of a part is, before it shrinks; nothing where it is not known."""
    if piece.clay is None or "clay mass" not in piece.roles:
        return ()
    if part.kind.on_shelf:
        return _standing(part)
    if part.kind.reshaped:
        return ()
    return tuple(
        Room(flat.extent.width, flat.extent.height, flat.thickness)
        for flat in piece.flat
        if flat.line == "cut" and flat.closed and flat.thickness
        for _ in range(flat.times)
    )


def _standing(part: PartSource) -> tuple[Room, ...]:
    troubles = part.evaluator.troubles.found
    before = len(troubles)
    try:
        return tuple(
            Room(*(part.number(text).high for text in (one.wide, one.deep, one.high)))
            for one in part.kind.on_shelf
            if not one.when or holds(part.kind.texts.conditions[one.when], part)
        )
    except (Stopped, CannotBe):  # told where the number was worked
        del troubles[before:]
        return ()
