"""Chain run: taut with what repeats, and hanging straight or closed to a round."""

from __future__ import annotations

from sheetgen.base.pen import Pen
from sheetgen.base.spelling import counted
from sheetgen.draw import forming, views
from sheetgen.draw.bits import Bit, ring
from sheetgen.draw.drawn import Drawn
from sheetgen.parts.chain_run import ChainRun
from sheetgen.parts.piece import Piece
from sheetgen.parts.strand import ROUND


def _wires(piece: Piece) -> tuple[float, float]:
    """Of links and rings; rings whose wire is not given are drawn in that of the links."""
    wire = piece.usual(ChainRun.wire)
    return wire, piece.usual(ChainRun.ring_wire) or wire


def _ends(piece: Piece) -> tuple[int, int]:
    rings = int(piece[ChainRun.end_rings])
    return (rings + 1) // 2, rings // 2


def _links(piece: Piece) -> list[tuple[float, float, float]]:
    """Inside, across and wire of each link and ring, in their order."""
    wire, ring_wire = _wires(piece)
    first, last = _ends(piece)
    inside = piece.usual(ChainRun.ring)
    link = (piece.usual(ChainRun.link), piece.usual(ChainRun.across), wire)
    one = [(inside, inside, ring_wire)] * piece.has(ChainRun.rings)
    between = [link, *one] * int(piece[ChainRun.links])
    return [*one * first, *between[: len(between) - len(one)], *one * last]


def _row(piece: Piece) -> list[Bit]:
    return [ring(*one) for one in _links(piece)]


def _view(pen: Pen, piece: Piece) -> float:
    run = _links(piece)
    whole = piece.usual(ChainRun.inside)
    return views.chain_round(pen, run, whole) if whole >= ROUND else views.chain(pen, run)


def _diagram(pen: Pen, piece: Piece, k: float) -> str:
    """The chain taut: clasp, end rings, first links and last, what repeats."""
    unit, link, ring = piece[ChainRun.unit], piece[ChainRun.link], piece[ChainRun.ring]
    links, clasp = int(piece[ChainRun.links]), piece.usual(ChainRun.clasp_length)
    run = forming.Chain(
        piece.usual(ChainRun.link), piece.usual(ChainRun.across), piece.usual(ChainRun.ring), *_wires(piece), links,
        _ends(piece), clasp,
    )  # fmt: skip
    measured = piece[ChainRun.measured]
    comes = piece[ChainRun.over_all if measured == "over all" else ChainRun.inside]
    told, between = counted(links, "link"), " hooked into each other"
    if piece.has(ChainRun.rings):
        told += f", {counted(piece[ChainRun.rings].words, 'ring')}"
        between = f" and rings of {ring.told} between them"
    words = (link.words, f"{unit.words} repeats")
    forming.captioned(pen, lambda on: forming.chain(on, run, words, k), [told, f"{comes.words} {measured}"])
    ends = int(piece[ChainRun.end_rings])
    closed = f", {'a clasp, ' * bool(piece[ChainRun.clasp])}end rings: {ends}" if piece[ChainRun.clasp] or ends else ""
    return (
        f"A chain of {told}: links of {link.told} inside{between}{closed}, {unit.told} to a repeat, "
        f"{comes.words} {measured}"
    )


DRAWN = Drawn(ChainRun.kind, diagram=_diagram, view=_view, row=_row)
