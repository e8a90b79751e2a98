"""Fringe: its strips side by side with first and longest drop, one in section over its bar, or all held in an end."""

from __future__ import annotations

from sheetgen.base.pen import Moved, Pen
from sheetgen.draw import forming
from sheetgen.draw.drawn import Drawn
from sheetgen.parts.fringe import Fringe
from sheetgen.parts.piece import Piece


def _drops(piece: Piece) -> list[float]:
    """The drop of each strip, mm."""
    n, point = round(piece[Fringe.strips]), piece[Fringe.shape] == "point"
    step = piece.usual(Fringe.step) if piece.has(Fringe.step) else 0.0
    return [piece.usual(Fringe.first) + step * (min(i, n - 1 - i) if point else i) for i in range(n)]


def _diagram(pen: Pen, piece: Piece, k: float) -> str:
    fills, cut, drops = piece[Fringe.fills], piece[Fringe.first_cut], _drops(piece)
    bar, held, first = piece[Fringe.bar], piece[Fringe.held], piece[Fringe.first]
    longest = piece[Fringe.last] or first
    last = f", last {piece[Fringe.last_cut].words}" if piece.has(Fringe.last_cut) else ""
    lines = [f"cut first {cut.words}{last}"]
    if bar is None:
        how = f"with {held.told} held in the end"
    else:
        how = f"folded over a bar of {bar.told}"
        lines.append(f"folded over a bar of {bar.words}")

    def hung(on: Pen) -> None:
        strip = (piece.usual(Fringe.wide), piece.usual(Fringe.gap))
        forming.fringe(on, drops, strip, (first.words, longest.words, fills.words), k)
        if bar is None:
            forming.held(on, fills * k, held * k, f"held {held.words}")
        else:
            thick = piece[Fringe.fibre].thickness
            path = forming.over_bar((bar + thick) / 2, drops[0], drops[0])
            forming.folded(Moved(on, (-14 - (bar / 2 + thick) * k, 0)), path, bar, thick, k)

    forming.captioned(pen, hung, lines)
    return (
        f"{len(drops)} strands side by side over {fills.told}, {how}: the first hangs {first.told}, "
        f"the longest {longest.told}"
    )


def _view(pen: Pen, piece: Piece) -> float:
    """The strips as they hang."""
    drops, wide, gap = _drops(piece), piece.usual(Fringe.wide), piece.usual(Fringe.gap)
    left = -(len(drops) * (wide + gap) - gap) / 2
    for i, drop in enumerate(drops):
        pen.box((left + i * (wide + gap), 0), wide, drop, "thin")
    return max(drops)


DRAWN = Drawn(Fringe.kind, diagram=_diagram, view=_view)
