"""Chain weave: a few repeats of the plain chains, pulled taut, or one ring of another weave; the chain hanging."""

from __future__ import annotations

from sheetgen.base.pen import Pen, Point
from sheetgen.draw import forming, sketches, views
from sheetgen.draw.drawn import Drawn
from sheetgen.parts.chain_weave import ChainWeave
from sheetgen.parts.piece import Piece

SHOWN = 3


def _plain(piece: Piece) -> bool:
    """Whether it is known here how its rings hang in each other."""
    return piece[ChainWeave.repeat_rings] is None


def _diagram(pen: Pen, piece: Piece, k: float) -> str:
    d, inside, pitch = piece[ChainWeave.wire].thickness, piece[ChainWeave.inner], piece[ChainWeave.pitch]
    rod, together = piece[ChainWeave.rod_used], piece[ChainWeave.together]
    under = [f"wire {piece.length(d, 'fine').words}, rod {rod.words}"]
    if not _plain(piece):
        forming.captioned(pen, lambda on: sketches.round_ring(on, inside, d, f"Ø {inside.words}", k), under)
        return f"A ring of the weave, inside {inside.told}, wound on a rod of {rod.told}"

    def run(on: Pen) -> None:
        ring: list[Point] = sketches.link(inside * k, inside * k, d * k)
        sketches.linked(on, [([(x + i * pitch * k, y) for x, y in ring], d * k) for i in range(SHOWN)])
        low = (inside / 2 + d) * k
        on.across(low + 5, inside * k, (inside + pitch) * k, pitch.words, to=low * 0.5)

    forming.captioned(pen, run, [*under, *([f"{together.words} side by side"] if together > 1 else [])])
    return (
        f"Rings of {inside.told} inside, {together.words} through {together.words}, pulled taut: "
        f"each repeat makes it {pitch.told} longer"
    )


def _view(pen: Pen, piece: Piece) -> float:
    if not _plain(piece):
        return 0.0
    pitch, inside, d = piece[ChainWeave.pitch], piece[ChainWeave.inner], piece[ChainWeave.wire].thickness
    return views.chain(pen, [(pitch, inside, d)] * round(piece.usual(ChainWeave.repeats)))


DRAWN = Drawn(ChainWeave.kind, diagram=_diagram, view=_view)
