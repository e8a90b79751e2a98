"""The wet pieces of one clay and thickness on a rolled slab of the size that the studio owns."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.base.pen import Moved, Recorder
from sheetgen.draw.outlines import area, extent_of, outlines
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
EDGE = 9.0  # mm for the dimensions beside a picture


@dataclass(frozen=True, slots=True)
class Cut:
    """One outline to cut so many times: the part it is of, the clay it is of and what that is rolled to."""

    name: str
    clay: Clay
    thickness: float
    marks: Recorder
    count: int

    @property
    def sides(self) -> tuple[float, float]:
        """Width and height, mm."""
        extent = extent_of(self.marks)
        return extent.width, extent.height


def slabs(pieces: Sequence[Piece], slab: Slab, rounder: Rounder) -> tuple[SlabLayout, ...]:
    """A layout for every clay and thickness."""
    groups: dict[tuple[str, float], list[Cut]] = {}
    for cut in (c for piece in pieces for c in _cuts(piece)):
        groups.setdefault((cut.clay.id, cut.thickness), []).append(cut)
    return tuple(_layout(group, slab, rounder) for group in groups.values())


def _cuts(piece: Piece) -> Iterator[Cut]:
    if piece.clay is None or piece.thickness is None:
        return
    found = outlines(piece.flat)
    told = list(piece.part.outlines()) or [(1, piece.thickness)] * len(found)
    for marks, (times, thickness) in zip(found, told, strict=False):
        yield Cut(piece.part.name, piece.clay, thickness, marks, times * round(piece.part.count.usual))


def _layout(group: Sequence[Cut], slab: Slab, rounder: Rounder) -> SlabLayout:
    room = (slab.width - slab.gap, slab.length - slab.gap)
    fitting = [cut for cut in group if _fits(cut, slab.gap, room)]
    each = [i for i, cut in enumerate(fitting) for _ in range(cut.count)]
    sizes = [(fitting[i].sides[0] + slab.gap, fitting[i].sides[1] + slab.gap) for i in each]
    laid = pack(sizes, room, turn=True) if sizes else []
    used = sum(area(cut.marks) * cut.count for cut in fitting)
    whole = len(laid) * slab.width * slab.length
    weight = group[0].thickness * group[0].clay.density / 1000
    return SlabLayout(
        clay=group[0].clay.name,
        thickness=group[0].thickness,
        offcut=1 - used / whole if whole else 0.0,
        enough=max((p.y + p.height for p in laid[-1]), default=0.0) + slab.gap if laid else 0.0,
        rolled=whole * weight,
        cut=used * weight,
        pieces=tuple((i + 1, cut.name, cut.count) for i, cut in enumerate(fitting)),
        too_large=tuple(cut.name for cut in group if cut not in fitting),
        drawings=tuple(_picture(page, each, fitting, slab, rounder) for page in laid),
    )


def _fits(cut: Cut, gap: float, room: tuple[float, float]) -> bool:
    sides = (cut.sides[0] + gap, cut.sides[1] + gap)
    return any(a <= room[0] and b <= room[1] for a, b in (sides, sides[::-1]))


def _outer(marks: Recorder) -> Recorder:
    """The outline without its holes, so that its number can stand in it."""
    each = [Recorder([m]) for m in marks.lines] + [Recorder([], [m]) for m in marks.ovals]
    return max(each, key=area)


def _picture(page: Sequence[Placed], each: Sequence[int], cuts: Sequence[Cut], slab: Slab, rounder: Rounder) -> Drawing:
    """One slab at half size, each piece with its number."""
    paper = Paper()
    pen = Scaled(paper, SCALE)
    pen.box((0, 0), slab.width, slab.length, "fold")
    for placed in page:
        number = each[placed.piece]
        marks = cuts[number].marks
        extent = extent_of(marks)
        x, y = slab.gap + placed.x, slab.gap + placed.y
        lying: Pen = Moved(pen, (x - extent.left, y - extent.top))
        if placed.turned:
            lying = Turned(Moved(pen, (x + extent.bottom, y - extent.left)))
        _outer(marks).replay(lying)
        at = (x + (placed.width - slab.gap) / 2, y + (placed.height - slab.gap) / 2 + 0.9 / SCALE)
        pen.text(at, str(number + 1), size=2.6, anchor="middle")
    wide, tall = slab.width * SCALE, slab.length * SCALE
    paper.across(-4, 0, wide, rounder.words(slab.width, "mm"), to=0)
    paper.upright(-4, 0, tall, rounder.words(slab.length, "mm"), to=0)
    names = [cuts[each[p.piece]].name.replace("_", " ") for p in page]
    told = ", ".join(f"{names.count(name)} {name}" for name in dict.fromkeys(names))
    says = f"A slab of {slab.width:g} × {slab.length:g} mm with {told}, at half size"
    return paper.drawing((-EDGE, -EDGE), wide + EDGE + 1, tall + EDGE + 1, says)
