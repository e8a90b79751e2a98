"""The wet pieces of one clay and thickness on a rolled slab of the size that the studio owns."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.base.flat import Flat
from sheetgen.base.packing import Sides, pack
from sheetgen.base.pen import Moved
from sheetgen.draw.paper import Paper
from sheetgen.draw.pens import Scaled, Turned
from sheetgen.model.drawing import SlabLayout

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from sheetgen.base.material import Clay
    from sheetgen.base.packing import Placed
    from sheetgen.base.pen import Pen
    from sheetgen.base.printed import Printed
    from sheetgen.base.rounding import Rounder
    from sheetgen.model.drawing import Drawing
    from sheetgen.model.worked import Slab
    from sheetgen.parts.piece import Piece

SCALE = 0.5
EDGE = 9.0  # mm for the dimensions beside a picture
SMALLEST, LARGEST = 2.0, 2.8  # mm high: the number in a piece
CORNERS = ((-1, -1), (1, -1), (1, 1), (-1, 1))
WIDTHS, TRIALS = 16, 40  # narrower slabs tried, and the exchanges in each


@dataclass(frozen=True, slots=True)
class Cut:
    """One outline to cut so many times: the part it is of, the clay it is of and what that is rolled to."""

    name: str
    clay: Clay
    thickness: float
    flat: Flat
    count: int

    @property
    def sides(self) -> Sides:
        """Width and height, mm."""
        extent = self.flat.extent
        return extent.width, extent.height

    @property
    def called(self) -> str:
        """The part, and which of its outlines."""
        return f"{self.name}, {self.flat.what}" if self.flat.what else self.name


def slabs(pieces: Iterable[Piece], slab: Slab, rounder: Rounder) -> tuple[SlabLayout, ...]:
    """A layout for every clay and thickness."""
    groups: dict[tuple[str, float], list[Cut]] = {}
    for cut in (c for piece in pieces for c in _cuts(piece)):
        groups.setdefault((cut.clay.id, cut.thickness), []).append(cut)
    return tuple(_layout(group, slab, rounder) for group in groups.values())


def _cuts(piece: Piece) -> Iterator[Cut]:
    """What is cut of rolled clay; a guide to mark by takes none."""
    for flat in piece.flat:
        if piece.clay is not None and flat.thickness is not None and flat.line == "cut" and flat.closed:
            yield Cut(piece.name, piece.clay, flat.thickness, flat, flat.times * piece.count)


def _layout(group: Sequence[Cut], slab: Slab, rounder: Rounder) -> SlabLayout:
    room = (slab.width - slab.gap, slab.length - slab.gap)
    fitting = [cut for cut in group if _fits((cut.sides[0] + slab.gap, cut.sides[1] + slab.gap), room)]
    each = [i for i, cut in enumerate(fitting) for _ in range(cut.count)]
    sizes = [(fitting[i].sides[0] + slab.gap, fitting[i].sides[1] + slab.gap) for i in each]
    laid = _tightest(sizes, room, slab.gap) if sizes else []
    used = sum(cut.flat.outline.area * cut.count for cut in fitting)
    taken = tuple(_told(_used(page, slab.gap), rounder) for page in laid)
    whole = sum(wide * long for wide, long in taken)
    weight = group[0].thickness * group[0].clay.density / 1000
    return SlabLayout(
        clay=group[0].clay.name,
        thickness=group[0].thickness,
        offcut=1 - used / whole if whole else 0.0,
        used=taken,
        rolled=whole * weight,
        cut=used * weight,
        pieces=tuple((i + 1, cut.called, cut.count) for i, cut in enumerate(fitting)),
        too_large=tuple(cut.name for cut in group if cut not in fitting),
        drawings=tuple(_picture(page, each, fitting, slab.gap, sides) for page, sides in zip(laid, taken, strict=True)),
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


def _told(sides: Sides, rounder: Rounder) -> tuple[Printed, Printed]:
    """The rectangle that is told, rolled and weighed."""
    return rounder.length(sides[0], "bench up"), rounder.length(sides[1], "bench up")


def _fits(sides: Sides, room: Sides) -> bool:
    """Whether a piece lies in the room, one way or the other."""
    return any(a <= room[0] and b <= room[1] for a, b in (sides, sides[::-1]))


def _picture(
    page: Sequence[Placed], each: Sequence[int], cuts: Sequence[Cut], gap: float, sides: tuple[Printed, Printed]
) -> Drawing:
    """The part of one slab that its pieces take, at half size, each piece with its number."""
    width, length = sides
    paper = Paper()
    pen = Scaled(paper, SCALE)
    pen.box((0, 0), width, length, "fold")
    for placed in page:
        number = each[placed.piece]
        flat = cuts[number].flat
        extent = flat.extent
        x, y = gap + placed.x, gap + placed.y
        lying: Pen = Moved(pen, (x - extent.left, y - extent.top))
        if placed.turned:
            lying = Turned(Moved(pen, (x + extent.bottom, y - extent.left)))
        Flat(flat.outline).draw(lying)  # without its holes, so that its number can stand in it
        wide, tall = placed.width - gap, placed.height - gap
        # Smaller in a narrow piece; where even so it touches the edges, on a clear patch of its own.
        tell = max(SMALLEST, min(LARGEST, min(wide, tall) * SCALE))
        middle, words = (x + wide / 2, y + tall / 2), str(number + 1)
        if min(wide, tall) * SCALE < SMALLEST:
            across, down = (0.32 * len(words) + 0.15) * tell, 0.5 * tell
            pen.cover([[(middle[0] + a * across / SCALE, middle[1] + b * down / SCALE) for a, b in CORNERS]])
        pen.text((middle[0], middle[1] + 0.36 * tell / SCALE), words, size=tell, anchor="middle")
    wide, tall = width * SCALE, length * SCALE
    paper.across(-4, 0, wide, width.words, to=0)
    paper.upright(-4, 0, tall, length.words, to=0)
    names = [cuts[each[p.piece]].called.replace("_", " ") for p in page]
    lies = ", ".join(f"{names.count(name)} {name}" for name in dict.fromkeys(names))
    says = f"A slab of {width.words} × {length.told} with {lies}, at half size"
    # A number beside a short side stands above it, on end.
    return paper.drawing((-EDGE, -EDGE - 5), max(wide, 12) + EDGE + 5, tall + EDGE + 8, says)
