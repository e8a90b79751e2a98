"""The wet pieces of one clay and thickness on a rolled slab of the size that the studio owns."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.base.cuts import area, extent_of, outlines
from sheetgen.base.pen import Moved, Recorder
from sheetgen.draw.packing import Sides, pack
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
SMALLEST, LARGEST = 2.0, 2.8  # mm high: the number in a piece
CORNERS = ((-1, -1), (1, -1), (1, 1), (-1, 1))
WIDTHS, TRIALS = 16, 40  # narrower slabs tried, and the exchanges in each


@dataclass(frozen=True, slots=True)
class Cut:
    """One outline to cut so many times: the part it is of, the clay it is of and what that is rolled to."""

    name: str
    what: str
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
    told = list(piece.part.outlines()) or [(1, piece.thickness, "")] * len(found)
    for marks, (times, thickness, what) in zip(found, told, strict=False):
        yield Cut(piece.part.name, what, piece.clay, thickness, marks, times * round(piece.part.count.usual))


def _layout(group: Sequence[Cut], slab: Slab, rounder: Rounder) -> SlabLayout:
    room = (slab.width - slab.gap, slab.length - slab.gap)
    fitting = [cut for cut in group if _fits((cut.sides[0] + slab.gap, cut.sides[1] + slab.gap), room)]
    each = [i for i, cut in enumerate(fitting) for _ in range(cut.count)]
    sizes = [(fitting[i].sides[0] + slab.gap, fitting[i].sides[1] + slab.gap) for i in each]
    laid = _tightest(sizes, room, slab.gap) if sizes else []
    used = sum(area(cut.marks) * cut.count for cut in fitting)
    taken = tuple(_used(page, slab.gap) for page in laid)
    whole = sum(wide * long for wide, long in taken)
    weight = group[0].thickness * group[0].clay.density / 1000
    return SlabLayout(
        clay=group[0].clay.name,
        thickness=group[0].thickness,
        offcut=1 - used / whole if whole else 0.0,
        used=taken,
        rolled=whole * weight,
        cut=used * weight,
        pieces=tuple((i + 1, _called(cut), cut.count) for i, cut in enumerate(fitting)),
        too_large=tuple(cut.name for cut in group if cut not in fitting),
        drawings=tuple(
            _picture(page, each, fitting, slab.gap, sides, rounder) for page, sides in zip(laid, taken, strict=True)
        ),
    )


def _tightest(sizes: Sequence[Sides], room: Sides, gap: float) -> list[list[Placed]]:
    """The pieces on as few slabs as they need; where one is enough, on the one that is least to roll."""
    laid = pack(sizes, room, turn=True)
    if len(laid) > 1:
        return laid
    least = max(min(sides) for sides in sizes)
    rooms = ((least + (room[0] - least) * i / WIDTHS, room[1]) for i in range(WIDTHS))
    narrower = (pack(sizes, r, turn=True, trials=TRIALS) for r in rooms if all(_fits(one, r) for one in sizes))
    return min((laid, *(one for one in narrower if len(one) == 1)), key=lambda one: math.prod(_used(one[0], gap)))


def _used(page: Sequence[Placed], gap: float) -> tuple[float, float]:
    """Width and length of a slab that its pieces take, with the gap round them."""
    return max(p.x + p.width for p in page) + gap, max(p.y + p.height for p in page) + gap


def _called(cut: Cut) -> str:
    return f"{cut.name}, {cut.what}" if cut.what else cut.name


def _fits(sides: Sides, room: Sides) -> bool:
    """Whether a piece lies in the room, one way or the other."""
    return any(a <= room[0] and b <= room[1] for a, b in (sides, sides[::-1]))


def _outer(marks: Recorder) -> Recorder:
    """The outline without its holes, so that its number can stand in it."""
    each = [Recorder([m]) for m in marks.lines] + [Recorder([], [m]) for m in marks.ovals]
    return max(each, key=area)


def _picture(  # noqa: PLR0913, PLR0917 - a page, what lies on it, and how it is drawn
    page: Sequence[Placed], each: Sequence[int], cuts: Sequence[Cut], gap: float, sides: Sides, rounder: Rounder
) -> Drawing:
    """The part of one slab that its pieces take, at half size, each piece with its number."""
    width, length = sides
    paper = Paper()
    pen = Scaled(paper, SCALE)
    pen.box((0, 0), width, length, "fold")
    for placed in page:
        number = each[placed.piece]
        marks = cuts[number].marks
        extent = extent_of(marks)
        x, y = gap + placed.x, gap + placed.y
        lying: Pen = Moved(pen, (x - extent.left, y - extent.top))
        if placed.turned:
            lying = Turned(Moved(pen, (x + extent.bottom, y - extent.left)))
        _outer(marks).replay(lying)
        wide, tall = placed.width - gap, placed.height - gap
        # Smaller in a narrow piece; where even so it touches the edges, on a clear patch of its own.
        tell = max(SMALLEST, min(LARGEST, min(wide, tall) * SCALE))
        middle, words = (x + wide / 2, y + tall / 2), str(number + 1)
        if min(wide, tall) * SCALE < SMALLEST:
            across, down = (0.32 * len(words) + 0.15) * tell, 0.5 * tell
            pen.cover([[(middle[0] + a * across / SCALE, middle[1] + b * down / SCALE) for a, b in CORNERS]])
        pen.text((middle[0], middle[1] + 0.36 * tell / SCALE), words, size=tell, anchor="middle")
    wide, tall = width * SCALE, length * SCALE
    told = [rounder.words(rounder.rounded(mm, "bench up"), "mm", "bench up") for mm in sides]
    paper.across(-4, 0, wide, told[0], to=0)
    paper.upright(-4, 0, tall, told[1], to=0)
    names = [_called(cuts[each[p.piece]]).replace("_", " ") for p in page]
    lies = ", ".join(f"{names.count(name)} {name}" for name in dict.fromkeys(names))
    says = f"A slab of {rounder.words(width, 'mm')} × {rounder.words(length, 'mm')} mm with {lies}, at half size"
    # A number beside a short side stands above it, on end.
    return paper.drawing((-EDGE, -EDGE - 5), max(wide, 12) + EDGE + 5, tall + EDGE + 8, says)
