"""Template pages for one paper: small templates packed together, one larger than a page in tiles, bars on each."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sheetgen.base.packing import pack
from sheetgen.base.pen import Extent, Moved
from sheetgen.draw.bars import FOOT, LEAST, SIDE, bars
from sheetgen.draw.paper import Paper
from sheetgen.draw.piece import LINE, words_under
from sheetgen.draw.tiles import KEY, OVERLAP, tiling, turned, turned_draw
from sheetgen.facts.paper import PAPERS
from sheetgen.model.drawing import TemplatePage

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Sequence

    from sheetgen.base.packing import Placed
    from sheetgen.base.pen import Pen
    from sheetgen.draw.piece import Template
    from sheetgen.parts.piece import Piece

MARGINS = (30.0, 32.0)  # of a page, both sides together, mm
HEADING = 44.0  # heading, directions and table above the drawing, mm
GAP = 5.0
EDGE = 0.5  # mm above the highest line, which is drawn half over it
BARS_SAY = "Bars of 100 mm and of 4 in both ways"


def room(paper: str) -> tuple[float, float]:
    """The room for a drawing on a paper, mm."""
    wide, tall = PAPERS[paper]
    return float(wide) - MARGINS[0], float(tall) - MARGINS[1] - HEADING


def pages(templates: Sequence[Template], paper: str) -> tuple[TemplatePage, ...]:
    """Every template on its page, in as few pages as the packing finds; tiles last."""
    wide, tall = room(paper)
    free = (wide - SIDE, tall - FOOT - GAP)
    whole: list[Template] = []
    large: list[Template] = []
    for template in templates:
        lying = next((one for one in (template, _turned(template)) if _fits(one.extent, free)), None)
        (whole if lying else large).append(lying or template)
    made = [_packed(page, whole, paper, free) for page in _layout(whole, free)]
    for template in large:
        made += _tiled(template, paper, free)
    return tuple(made)


def _fits(extent: Extent, free: tuple[float, float]) -> bool:
    return extent.width <= free[0] and extent.height <= free[1]


def _turned(template: Template) -> Template:
    return replace(
        template,
        draw=turned_draw(template.draw),
        bare=turned_draw(template.bare),
        extent=turned(template.extent),
    )


def _layout(templates: Sequence[Template], free: tuple[float, float]) -> list[list[Placed]]:
    sizes = [(p.extent.width + GAP, p.extent.height + GAP) for p in templates]
    return pack(sizes, (free[0] + GAP, free[1] + GAP), tidy=True) if sizes else []


def _packed(
    page: Sequence[Placed], templates: Sequence[Template], paper: str, free: tuple[float, float]
) -> TemplatePage:
    pen = Paper()
    foot = max(LEAST, max(p.y + p.height for p in page) + FOOT)
    for placed in page:
        extent = templates[placed.piece].extent
        at = (SIDE + placed.x - extent.left, placed.y - extent.top)
        templates[placed.piece].draw(Moved(pen, at))
    bars(pen, foot)
    shown = [templates[p.piece] for p in sorted(page, key=lambda p: p.piece)]
    share = sum(p.extent.width * p.extent.height for p in shown) / (free[0] * free[1])
    says = f"Templates at true size. {'. '.join(p.says for p in shown)}. {BARS_SAY}"
    drawing = pen.drawing((0, -EDGE), room(paper)[0], foot + EDGE, says)
    return TemplatePage(paper, drawing, tuple(p.piece.name for p in shown), share)


def _tiled(template: Template, paper: str, free: tuple[float, float]) -> Iterator[TemplatePage]:
    """A template in tiles, upright or turned, whichever takes fewer."""
    head = 4 + LINE * (len(template.note) + 1) + 4
    window = (free[0], free[1] - head)
    bare = Extent()
    template.bare(bare)
    upright, lying = tiling(bare, window), tiling(turned(bare), window)
    cut, draw, key = upright, template.bare, _small(template.piece)
    if len(lying.tiles) < len(upright.tiles):
        cut, draw, key = lying, turned_draw(draw), turned_draw(key)
    for tile in cut.tiles:
        pen = Paper()
        words_under(pen, (SIDE, 4), [f"{template.title}: sheet {tile.number} of {len(cut.tiles)}"], template.note)
        cut.onto(pen, tile, draw, (SIDE, head))
        foot = max(LEAST, head + cut.tall + GAP + FOOT)
        bars(pen, foot)
        cut.key(pen, tile, key, (room(paper)[0] - KEY[0], foot - KEY[1]))
        lie = f"{cut.columns} across and {cut.rows} down, with {template.piece.length(OVERLAP, 'fine').told} of overlap"
        says = f"{template.says}. Sheet {tile.number} of {len(cut.tiles)}, {lie}. {BARS_SAY}"
        share = cut.wide * cut.tall / (free[0] * free[1])
        drawing = pen.drawing((0, 0), room(paper)[0], foot, says)
        name = template.piece.name
        tile_of = f"{template.piece.title}, sheet {tile.number} of {len(cut.tiles)}"
        yield TemplatePage(paper, drawing, (name,), share, tile_of)


def _small(piece: Piece) -> Callable[[Pen], None]:
    """The outlines alone, thin, for the key of a template in tiles."""
    thin = [replace(one, line="thin") for one in piece.flat if one.line == "cut"]

    def draw(pen: Pen) -> None:
        for one in thin:
            one.draw(pen)

    return draw
