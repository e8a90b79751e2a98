"""Chain ends: the shortest piece, link by link; it is seen only in a row."""

from __future__ import annotations

from sheetgen.draw.bits import Bit, ring
from sheetgen.draw.drawn import Drawn
from sheetgen.parts.chain_ends import ChainEnds
from sheetgen.parts.piece import Piece

WIRE, ACROSS = 0.23, 0.67  # of a link of cable chain, in its inside lengths, where stock does not say


def _row(piece: Piece) -> list[Bit]:
    chain, inside = piece[ChainEnds.chain], piece.usual(ChainEnds.link)
    wire = chain.thickness if chain is not None else inside * WIRE
    return [ring(inside, inside * ACROSS, wire)] * int(piece[ChainEnds.links_first])


DRAWN = Drawn(ChainEnds.kind, row=_row)
