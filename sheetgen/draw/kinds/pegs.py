"""Links bent round two pegs: the pegs and the wire's path; the link hanging, its first end above."""

from __future__ import annotations

from sheetgen.base.pen import Pen
from sheetgen.draw import sketches
from sheetgen.draw.drawn import Drawn
from sheetgen.parts import pegs
from sheetgen.parts.pegs import PegPair
from sheetgen.parts.piece import Piece


def drawn(kind: type[PegPair], *, crossed: bool) -> Drawn:
    """Both pictures of a kind of link."""

    def diagram(pen: Pen, piece: Piece, k: float) -> str:
        first, second, gap = (piece[figure] for figure in (kind.peg_used, kind.second_used, kind.clear))
        apart, words = piece[pegs.centres], (f"gap {gap.words}", f"{piece[pegs.centres].words} apart")
        sketches.two_pegs(pen, first, second, gap, piece[kind.wire].thickness, words, k, crossed=crossed)
        return (
            f"Wire led {'crosswise' if crossed else 'straight'} round two pegs of {first.words} and {second.told}, "
            f"{apart.told} apart from centre to centre, clear gap {gap.told}"
        )

    def view(pen: Pen, piece: Piece) -> float:
        d = piece[kind.wire].thickness
        upper, lower = ((piece.usual(peg) + d) / 2 for peg in (kind.peg_used, kind.second_used))
        top = upper + d / 2
        hung = [(-y, top + x) for x, y in sketches.belt(upper, lower, piece.usual(kind.apart), crossed=crossed)]
        sketches.wire(pen, hung, d, closed=True)
        if crossed:
            sketches.crossed_over(pen, hung, d)
        return piece.usual(pegs.outside) - d

    return Drawn(kind.kind, diagram=diagram, view=view)
