"""Template pages: templates packed as tight as they go, one larger than a page in tiles, two bars on each page.

A drawing is as wide as the content of a page and as tall as it needs. So it stands on a sheet of templates alone, and
a short one under the last steps of a handout.
"""

from __future__ import annotations

import functools
from dataclasses import replace
from typing import TYPE_CHECKING

from sheetgen.base.packing import packed
from sheetgen.base.pen import Extent, Moved
from sheetgen.draw.bars import FOOT, SIDE, Bars, bars_beside, draw_bars
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

CONTENT = (180.0, 247.0)  # of a page, the same on A4 and Letter, mm
MARGINS = (30.0, 32.4)  # both sides together, of a smaller paper, mm
HEADING = 24.0  # heading and directions above the drawing, mm
GAP = 5.0
EDGE = 0.5  # mm above the highest line, which is drawn half over it
TRIALS = 60  # exchanges tried: a page holds ten templates or fewer
Room = tuple[float, float]


def room(paper: str) -> Room:
    """The room for a drawing on a paper, mm."""
    wide, tall = (min(box, float(side) - less) for box, side, less in zip(CONTENT, PAPERS[paper], MARGINS, strict=True))
    return wide, tall - HEADING


@functools.lru_cache(maxsize=128)
def pages(templates: tuple[Template, ...], room: Room, *, inches: bool) -> tuple[TemplatePage, ...]:
    """Every template on its page, in as few pages as the packing finds; tiles last. Versions and papers share them."""
    free = (room[0] - SIDE, room[1] - FOOT)
    whole: list[Template] = []
    large: list[Template] = []
    for template in templates:
        lying = next((one for one in (template, _turned(template)) if _fits(one.extent, free)), None)
        (whole if lying else large).append(lying or template)
    made = [_packed(page, whole, room, inches=inches) for page in _layout(whole, free)]
    for template in large:
        made += _tiled(template, room, inches=inches)
    return tuple(made)


def _fits(extent: Extent, free: Room) -> bool:
    return extent.width <= free[0] and extent.height <= free[1]


def _turned(template: Template) -> Template:
    return replace(
        template,
        draw=turned_draw(template.draw),
        bare=turned_draw(template.bare),
        extent=turned(template.extent),
    )


def _layout(templates: Sequence[Template], free: Room) -> Sequence[Sequence[Placed]]:
    sizes = tuple((round(p.extent.width + GAP, 3), round(p.extent.height + GAP, 3)) for p in templates)
    return packed(sizes, (free[0] + GAP, free[1] + GAP), trials=TRIALS) if sizes else ()


def _page(pen: Paper, bars: Bars, foot: float, room: Room, says: str) -> TemplatePage:
    """A drawing with its bars, whose page names no part yet."""
    lines = frozenset(pen.drawn)
    draw_bars(pen, bars, foot)
    drawing = pen.drawing((0, -EDGE), room[0], foot + EDGE, f"{says}. {bars.says}")
    return TemplatePage("", drawing, (), bars=(bars.along.words, bars.upright.words), lines=lines)


def _packed(page: Sequence[Placed], templates: Sequence[Template], room: Room, *, inches: bool) -> TemplatePage:
    pen = Paper()
    for placed in page:
        extent = templates[placed.piece].extent
        at = (SIDE + placed.x - extent.left, placed.y - extent.top)
        templates[placed.piece].draw(Moved(pen, at))
    tall = max(p.y + p.height for p in page) - GAP
    bars = bars_beside(tall, room[0], inches=inches)
    shown = [templates[p.piece] for p in sorted(page, key=lambda p: p.piece)]
    share = sum(p.extent.width * p.extent.height for p in shown) / ((room[0] - SIDE) * (room[1] - FOOT))
    says = f"Templates at true size. {'. '.join(p.says for p in shown)}"
    found = _page(pen, bars, bars.foot(tall), room, says)
    deeds = frozenset(p.deed for p in shown)
    return replace(found, parts=tuple(p.piece.name for p in shown), share=share, deeds=deeds)


def _tiled(template: Template, room: Room, *, inches: bool) -> Iterator[TemplatePage]:
    """A template in tiles, upright or turned, whichever takes fewer."""
    head = 4 + LINE + 4
    window = (room[0] - SIDE, room[1] - head - GAP - KEY[1])
    bare = Extent()
    template.bare(bare)
    upright, lying = tiling(bare, window), tiling(turned(bare), window)
    cut, draw, key = upright, template.bare, _small(template.piece)
    if len(lying.tiles) < len(upright.tiles):
        cut, draw, key = lying, turned_draw(draw), turned_draw(key)
    bars = bars_beside(head + cut.tall, room[0], inches=inches)
    foot = max(bars.foot(head + cut.tall), head + cut.tall + GAP + KEY[1])
    for tile in cut.tiles:
        pen = Paper()
        words_under(pen, (SIDE, 4), f"{template.title}: sheet {tile.number} of {len(cut.tiles)}", template.label)
        cut.onto(pen, tile, draw, (SIDE, head))
        cut.key(pen, tile, key, (room[0] - KEY[0], foot - KEY[1]))
        lie = f"{cut.columns} across and {cut.rows} down, with {template.piece.length(OVERLAP, 'fine').told} of overlap"
        says = f"{template.says}. Sheet {tile.number} of {len(cut.tiles)}, {lie}"
        share = cut.wide * cut.tall / (window[0] * window[1])
        tile_of = f"{template.piece.title}, sheet {tile.number} of {len(cut.tiles)}"
        page, deeds = _page(pen, bars, foot, room, says), frozenset({template.deed})
        yield replace(page, parts=(template.piece.name,), share=share, tile=tile_of, deeds=deeds)


def _small(piece: Piece) -> Callable[[Pen], None]:
    """The outlines alone, thin, for the key of a template in tiles."""
    thin = [replace(one, line="thin") for one in piece.flat if one.line == "cut"]

    def draw(pen: Pen) -> None:
        for one in thin:
            one.draw(pen)

    return draw
