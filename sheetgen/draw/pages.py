"""Template pages for one paper: small templates packed together, one larger than a page in tiles, bars on each."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sheetgen.base.pen import Extent, Moved, Recorder
from sheetgen.draw.bars import FOOT, LEAST, SIDE, bars
from sheetgen.draw.packing import pack
from sheetgen.draw.paper import Paper
from sheetgen.draw.piece import LINE, words_under
from sheetgen.draw.tiles import KEY, OVERLAP, Tiling, tiling, turned, turned_draw
from sheetgen.facts.paper import PAPERS
from sheetgen.model.drawing import TemplatePage

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.draw.packing import Placed
    from sheetgen.draw.piece import Piece

MARGINS = (30.0, 32.0)  # of a page, both sides together, mm
HEADING = 44.0  # heading, directions and table above the drawing, mm
GAP = 5.0
EDGE = 0.5  # mm above the highest line, which is drawn half over it
BARS_SAY = "Bars of 100 mm and of 4 in both ways"


def room(paper: str) -> tuple[float, float]:
    """The room for a drawing on a paper, mm."""
    wide, tall = PAPERS[paper]
    return float(wide) - MARGINS[0], float(tall) - MARGINS[1] - HEADING


def pages(pieces: Sequence[Piece], paper: str) -> tuple[TemplatePage, ...]:
    """Every template on its page, in as few pages as the packing finds; tiles last."""
    wide, tall = room(paper)
    free = (wide - SIDE, tall - FOOT - GAP)
    whole: list[Piece] = []
    large: list[Piece] = []
    for piece in pieces:
        lying = next((p for p in (piece, _turned(piece)) if _fits(p.extent, free)), None)
        (whole if lying else large).append(lying or piece)
    made = [_packed(page, whole, paper, free) for page in _layout(whole, free)]
    for piece in large:
        made += _tiled(piece, paper, free)
    return tuple(made)


def _fits(extent: Extent, free: tuple[float, float]) -> bool:
    return extent.width <= free[0] and extent.height <= free[1]


def _turned(piece: Piece) -> Piece:
    return replace(
        piece, draw=turned_draw(piece.draw), bare=turned_draw(piece.bare), extent=turned(piece.extent)
    )  # fmt: skip


def _layout(pieces: Sequence[Piece], free: tuple[float, float]) -> list[list[Placed]]:
    sizes = [(p.extent.width + GAP, p.extent.height + GAP) for p in pieces]
    return pack(sizes, (free[0] + GAP, free[1] + GAP), tidy=True) if sizes else []


def _packed(page: Sequence[Placed], pieces: Sequence[Piece], paper: str, free: tuple[float, float]) -> TemplatePage:
    pen = Paper()
    foot = max(LEAST, max(p.y + p.height for p in page) + FOOT)
    for placed in page:
        extent = pieces[placed.piece].extent
        at = (SIDE + placed.x - extent.left, placed.y - extent.top)
        pieces[placed.piece].draw(Moved(pen, at))
    bars(pen, foot)
    shown = [pieces[p.piece] for p in sorted(page, key=lambda p: p.piece)]
    share = sum(p.extent.width * p.extent.height for p in shown) / (free[0] * free[1])
    says = f"Templates at true size. {'. '.join(p.says for p in shown)}. {BARS_SAY}"
    drawing = pen.drawing((0, -EDGE), room(paper)[0], foot + EDGE, says)
    return TemplatePage(paper, drawing, tuple(p.part.name for p in shown), share)


def _tiled(piece: Piece, paper: str, free: tuple[float, float]) -> Iterator[TemplatePage]:
    """A template in tiles, upright or turned, whichever takes fewer."""
    head = 4 + LINE * (len(piece.note) + 1) + 4
    window = (free[0], free[1] - head)
    bare = Extent()
    piece.bare(bare)
    upright, lying = tiling(bare, window), tiling(turned(bare), window)
    cut, draw = upright, piece.bare
    if len(lying.tiles) < len(upright.tiles):
        cut, draw = lying, turned_draw(piece.bare)
    small = Recorder(
        [("thin", points, closed) for kind, points, closed in piece.flat.lines if kind == "cut"],
        [("thin", at, width, height) for kind, at, width, height in piece.flat.ovals if kind == "cut"],
    )
    key = small.replay if cut is upright else turned_draw(small.replay)
    for tile in cut.tiles:
        pen = Paper()
        words_under(pen, (SIDE, 4), [f"{piece.title}: sheet {tile.number} of {len(cut.tiles)}"], piece.note)
        cut.onto(pen, tile, draw, (SIDE, head))
        foot = max(LEAST, head + cut.tall + GAP + FOOT)
        bars(pen, foot)
        cut.key(pen, tile, key, (room(paper)[0] - KEY[0], foot - KEY[1]))
        says = f"{piece.says}. Sheet {tile.number} of {len(cut.tiles)}, {_lie(cut)}. {BARS_SAY}"
        share = cut.wide * cut.tall / (free[0] * free[1])
        drawing = pen.drawing((0, 0), room(paper)[0], foot, says)
        yield TemplatePage(
            paper, drawing, (piece.part.name,), share, f"{piece.name}, sheet {tile.number} of {len(cut.tiles)}"
        )


def _lie(cut: Tiling) -> str:
    return f"{cut.columns} across and {cut.rows} down, with {OVERLAP:g} mm of overlap"
