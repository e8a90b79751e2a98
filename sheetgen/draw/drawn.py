"""How a kind of part is drawn: what stands beside its outline, how it is formed, how it looks when finished."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.facts.gauges import CARD

if TYPE_CHECKING:
    from collections.abc import Callable

    from sheetgen.base.material import Clay, Sheet, Wire
    from sheetgen.base.pen import Extent, Pen
    from sheetgen.base.printed import Printed
    from sheetgen.parts.piece import Piece

GRAIN = 1e-9


@dataclass(frozen=True, slots=True)
class Drawn:
    """The drawings of one kind, each left out where there is none. See draw/kinds/__init__.py for what each returns.

    `template` adds to the outlines, which are drawn already. `centred`: the middle of its diagram is at (0, 0), where
    what is drilled there is drawn too.
    """

    kind: str
    template: Callable[[Pen, Piece], None] | None = None
    note: Callable[[Piece], str] | None = None
    diagram: Callable[[Pen, Piece, float], str] | None = None
    view: Callable[[Pen, Piece], float] | None = None
    mark: Callable[[Pen, Piece, Extent], str] | None = None
    centred: bool = False


def rolled(piece: Piece, thickness: Printed, clay: Clay) -> str:
    """What to roll to, and what shrinkage a template is drawn for."""
    cards = round(thickness / CARD)
    off = abs(cards * CARD - thickness)
    near = f", {'' if off < GRAIN else 'about '}{cards} cards" if off < CARD / 4 else ""
    shrinks = piece.rounder.decimal(clay.shrinkage.usual * 100, 2)
    return f"roll to {thickness.told}{near}; {clay.name}, drawn for {shrinks} % shrinkage"


def clay_note(piece: Piece) -> str:
    """Thickness and clay, of a part that is of clay; nothing of another."""
    thickness = next(iter(piece.roles.get("rolled to", ())), None)
    if piece.clay is None or thickness is None:
        return ""
    return rolled(piece, piece.length(thickness.usual, "fine"), piece.clay)


def thick(piece: Piece, metal: Sheet | Wire) -> str:
    """Name of a metal, with its thickness unless its name says it."""
    said = piece.length(metal.thickness, "fine")
    return metal.name if said.told.replace("\u00a0", " ") in metal.name else f"{metal.name}, {said.told} thick"
