"""The wet pieces of one clay and thickness on a rolled slab of the size that the studio owns."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base.outline import Outline
from sheetgen.base.pen import Moved, Recorder
from sheetgen.draw.ghost import extent_of
from sheetgen.draw.packing import pack
from sheetgen.draw.paper import Paper
from sheetgen.draw.pens import Scaled, Turned
from sheetgen.model.drawing import SlabLayout

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.base.material import Clay
    from sheetgen.base.pen import Pen
    from sheetgen.base.rounding import Rounder
    from sheetgen.draw.packing import Placed
    from sheetgen.draw.piece import Piece
    from sheetgen.model.drawing import Drawing
    from sheetgen.model.worked import Slab

SCALE = 0.5


def slabs(pieces: Sequence[Piece], slab: Slab, rounder: Rounder) -> tuple[SlabLayout, ...]:
    """A layout for every clay and thickness."""
    groups: dict[tuple[str, float], list[Piece]] = {}
    for piece in pieces:
        if piece.clay and piece.thickness and piece.cut != Recorder():
            groups.setdefault((piece.clay.id, piece.thickness), []).append(piece)
    return tuple(_layout(group, slab, rounder) for group in groups.values())


def area(marks: Recorder) -> float:
    """Area of the largest outline among cut lines, mm²: holes are cut out of it later and count as used."""
    lines = [Outline(tuple(points)).area for _, points, closed in marks.lines if closed]
    return max([*lines, *(math.pi / 4 * w * h for _, _, w, h in marks.ovals)], default=0.0)


def _layout(group: Sequence[Piece], slab: Slab, rounder: Rounder) -> SlabLayout:
    room = (slab.width - slab.gap, slab.length - slab.gap)
    fitting = [p for p in group if _fits(p, slab, room)]
    each = [p for p in fitting for _ in range(int(p.part.count.usual))]
    sizes = [(extent_of(p.cut).width + slab.gap, extent_of(p.cut).height + slab.gap) for p in each]
    laid = pack(sizes, room, turn=True) if sizes else []
    used = sum(area(p.cut) for p in each)
    clay, thickness = group[0].clay, group[0].thickness or 0
    whole = len(laid) * slab.width * slab.length
    weight = thickness * (clay.density if clay else 0) / 1000
    numbers = {id(p): i + 1 for i, p in enumerate(fitting)}
    drawings = tuple(_picture(page, each, slab, rounder, numbers) for page in laid)
    return SlabLayout(
        clay=_name(clay),
        thickness=thickness,
        slabs=len(laid),
        offcut=1 - used / whole if whole else 0.0,
        rolled=whole * weight,
        cut=used * weight,
        pieces=tuple((numbers[id(p)], p.part.name, int(p.part.count.usual)) for p in fitting),
        too_large=tuple(p.part.name for p in group if p not in fitting),
        drawings=drawings,
    )


def _name(clay: Clay | None) -> str:
    return clay.name if clay else ""


def _fits(piece: Piece, slab: Slab, room: tuple[float, float]) -> bool:
    extent = extent_of(piece.cut)
    sides = (extent.width + slab.gap, extent.height + slab.gap)
    return any(a <= room[0] and b <= room[1] for a, b in (sides, sides[::-1]))


def _picture(
    page: Sequence[Placed], each: Sequence[Piece], slab: Slab, rounder: Rounder, numbers: dict[int, int]
) -> Drawing:
    """One slab at half size, each piece with its number."""
    paper = Paper()
    pen = Scaled(paper, SCALE)
    pen.box((0, 0), slab.width, slab.length, "fold")
    for placed in page:
        piece = each[placed.piece]
        cut = piece.cut
        extent = extent_of(cut)
        corner = (slab.gap + placed.x, slab.gap + placed.y)
        lying: Pen = Moved(pen, (corner[0] - extent.left, corner[1] - extent.top))
        if placed.turned:
            lying = Turned(Moved(pen, (corner[0] + extent.bottom, corner[1] - extent.left)))
        for mark in _marks(cut):
            mark(lying)
        middle = (corner[0] + (placed.width - slab.gap) / 2, corner[1] + (placed.height - slab.gap) / 2)
        pen.text((middle[0], middle[1] + 0.9 / SCALE), str(numbers[id(piece)]), size=2.6, anchor="middle")
    wide, tall = slab.width * SCALE, slab.length * SCALE
    paper.across(-4, 0, wide, rounder.words(slab.width, "mm"), to=0)
    paper.upright(-4, 0, tall, rounder.words(slab.length, "mm"), to=0)
    names = ", ".join(f"{n} {each_name}" for n, each_name in _counted(page, each))
    says = f"A slab of {slab.width:g} × {slab.length:g} mm with {names}, at half size"
    return paper.drawing((-8.5, -8.5), wide + 9.5, tall + 9.5, says)


def _counted(page: Sequence[Placed], each: Sequence[Piece]) -> Iterator[tuple[int, str]]:
    names = [each[p.piece].part.name.replace("_", " ") for p in page]
    yield from ((names.count(name), name) for name in dict.fromkeys(names))


def _marks(cut: Recorder) -> Iterator[Callable[[Pen], None]]:
    for kind, points, closed in cut.lines:
        yield lambda pen, k=kind, p=points, c=closed: pen.line(p, k, closed=c)
    for kind, centre, w, h in cut.ovals:
        yield lambda pen, k=kind, c=centre, w=w, h=h: pen.oval(c, w, h, k)
