"""How a kind of part is drawn: what stands beside its outline, how it is formed, how it looks when finished."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.base.spelling import counted, in_a_sentence
from sheetgen.facts.gauges import CARD
from sheetgen.model.numbers import whole_cards

if TYPE_CHECKING:
    from collections.abc import Callable

    from sheetgen.base.material import Clay, Sheet, Wire
    from sheetgen.base.pen import Extent, Pen
    from sheetgen.base.printed import Printed
    from sheetgen.draw.bits import Bit
    from sheetgen.parts.piece import Piece

GRAIN = 1e-9
MOST = 40  # letters in a line of a label
HALF = 0.5  # per cent: a shrinkage is told to the half, which is finer than a kiln keeps it


def _cut(_piece: Piece) -> str:
    return "cut"


def bend(_piece: Piece) -> str:
    """What is done by the template of a wire."""
    return "bend"


@dataclass(frozen=True, slots=True)
class Drawn:
    """The drawings of one kind, each left out where there is none. See draw/kinds/__init__.py for what each returns.

    `template` adds to the outlines, which are drawn already. `centred`: the middle of its diagram is at (0, 0), where
    what is drilled there is drawn too. `deed` is what is done by the template: cut, bend, mark. `textured`: how it is
    turned where its outer face is seen, which may bear a texture.
    """

    kind: str
    template: Callable[[Pen, Piece], None] | None = None
    note: Callable[[Piece], str] | None = None
    label: Callable[[Piece], str] | None = None
    deed: Callable[[Piece], str] = _cut
    diagram: Callable[[Pen, Piece, float], str] | None = None
    view: Callable[[Pen, Piece], float] | None = None
    side: Callable[[Pen, Piece], float] | None = None
    back: Callable[[Pen, Piece], float] | None = None
    above: Callable[[Pen, Piece], float] | None = None
    sunk: Callable[[Pen, Piece], float] | None = None
    row: Callable[[Piece], list[Bit]] | None = None
    pierces: Callable[[Bit, Piece], Bit] | None = None
    mark: Callable[[Pen, Piece, Extent], str] | None = None
    centred: bool = False
    textured: tuple[str, ...] = ("front",)


def rolled(piece: Piece, thickness: Printed, clay: Clay) -> str:
    """What to roll to, and what shrinkage a template is drawn for."""
    cards = round(thickness / CARD)
    off = abs(cards * CARD - thickness)
    near = f", {'' if off < GRAIN else 'about '}{counted(cards, 'card')}" if off < CARD / 4 else ""
    shrinks = piece.rounder.decimal(clay.shrinkage.usual * 100, 2)
    return f"roll to {thickness.told}{near}; {clay.name}, drawn for {shrinks} % shrinkage"


def clay_note(piece: Piece) -> str:
    """Thickness and clay, of a part that is of clay; nothing of another."""
    thickness = next(iter(piece.roles.get("rolled to", ())), None)
    if piece.clay is None or thickness is None:
        return ""
    return rolled(piece, piece.length(thickness.usual, "fine"), piece.clay)


def per_cent(piece: Piece, clay: Clay) -> str:
    """What shrinkage a template is drawn for, to half a per cent."""
    return f"{piece.rounder.decimal(round(clay.shrinkage.usual * 100 / HALF) * HALF, 1)} %"


def clay_label(piece: Piece) -> str:
    """What a part of clay is rolled to, of which clay, drawn for which shrinkage; nothing of another."""
    thickness = next(iter(piece.roles.get("rolled to", ())), None)
    if piece.clay is None or thickness is None:
        return ""
    cards = whole_cards(thickness.usual)
    deep = counted(cards, "card") if cards else piece.length(thickness.usual, "fine").told
    stamped = next((one.made.told for one in piece.sizes if one.tool == "round cutter"), "")
    if stamped:
        return f"round cutter {stamped}; roll to {deep}"
    by, name = per_cent(piece, piece.clay), in_a_sentence(piece.clay.name)
    short = name.partition(",")[0]
    return fitting(
        f"roll to {deep}; {name}, shrinks {by}", f"roll to {deep}; {short}, shrinks {by}",
        f"{deep}; {short}, shrinks {by}", f"roll to {deep}; shrinks {by}",
    )  # fmt: skip


def fitting(*words: str) -> str:
    """The first that fits a line of a label; where none does, the last without what is behind its last commas."""
    last = words[-1]
    while len(last) > MOST and ", " in last:
        last = last.rpartition(", ")[0]
    return next((one for one in words if len(one) <= MOST), last[:MOST].rstrip())


def wire_label(metal: str, cut: str) -> str:
    """Which wire, and how much of it is cut for one."""
    return fitting(f"{metal}, cut {cut}", f"{metal.partition(',')[0]}, cut {cut}", f"cut {cut}")


def thick(piece: Piece, metal: Sheet | Wire) -> str:
    """Name of a metal, with its thickness unless its name says it."""
    said = piece.length(metal.thickness, "fine")
    return metal.name if said.told.replace("\u00a0", " ") in metal.name else f"{metal.name}, {said.told} thick"
