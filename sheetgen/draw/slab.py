"""The wet pieces of one clay and thickness, textured or plain, on a rolled slab of the size that the studio owns."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from sheetgen.base.flat import Flat
from sheetgen.base.frozen import Frozen
from sheetgen.base.packing import Sides, packed
from sheetgen.base.pen import Extent, Moved
from sheetgen.draw.numbered import numbered
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
    from sheetgen.model.worked import Slab, Worked, WorkedVersion
    from sheetgen.parts.piece import Piece

Page = tuple["Placed", ...]

SCALES = (2, 3, 4, 5, 10)
WIDEST, TALLEST = 55.0, 30.0  # mm of paper: a third of a page wide, and no taller than a small sketch
EDGE = 0.5
WIDTHS, NARROW_TRIALS, TRIALS = 12, 24, 120  # narrower slabs tried, the exchanges in each, and on the whole slab


@dataclass(frozen=True, slots=True)
class Cut:
    """One outline to cut so many times: the part it is of, the clay it is of, what that is rolled to and how."""

    name: str
    clay: Clay
    thickness: float
    flat: Flat
    count: int
    textured: bool

    @property
    def sides(self) -> Sides:
        """Width and height, mm."""
        extent = self.flat.extent
        return extent.width, extent.height

    @property
    def called(self) -> str:
        """The part, and which of its outlines."""
        return f"{self.name}, {self.flat.what}" if self.flat.what else self.name


Laid = tuple["Placed", int, Cut]
"""A piece on its slab, its number, and what is cut."""


def with_slabs(worked: Worked) -> Worked:
    """A worked project with the slabs of its versions, on which hangs how much clay is to be there."""
    versions = {name: replace(one, slabs=slab_layouts(worked, one)) for name, one in worked.versions.items()}
    return replace(worked, versions=Frozen(versions))


def slab_layouts(worked: Worked, version: WorkedVersion) -> tuple[SlabLayout, ...]:
    """The slabs of a version by themselves; none where the studio does not say what it rolls."""
    return slabs(version.parts.values(), worked.slab, worked.rounder) if worked.slab else ()


def slabs(pieces: Iterable[Piece], slab: Slab, rounder: Rounder) -> tuple[SlabLayout, ...]:
    """A layout for every clay and thickness, textured or plain."""
    groups: dict[tuple[str, float, bool], list[Cut]] = {}
    for cut in (c for piece in pieces for c in _cuts(piece)):
        groups.setdefault((cut.clay.id, cut.thickness, cut.textured), []).append(cut)
    return tuple(_layout(group, slab, rounder) for group in groups.values())


def _cuts(piece: Piece) -> Iterator[Cut]:
    """What is cut of rolled clay; a guide to mark by takes none."""
    for flat in piece.flat:
        if piece.clay is not None and flat.thickness is not None and flat.line == "cut" and flat.closed:
            textured = bool(piece.roles.get("rolled first"))
            yield Cut(piece.name, piece.clay, flat.thickness, flat, flat.times * piece.count, textured)


def _layout(group: Sequence[Cut], slab: Slab, rounder: Rounder) -> SlabLayout:
    room = (slab.width - slab.gap, slab.length - slab.gap)
    fitting = [cut for cut in group if _fits((cut.sides[0] + slab.gap, cut.sides[1] + slab.gap), room)]
    each = [i for i, cut in enumerate(fitting) for _ in range(cut.count)]
    sizes = tuple((fitting[i].sides[0] + slab.gap, fitting[i].sides[1] + slab.gap) for i in each)
    laid = _tightest(sizes, room, slab.gap) if sizes else ()
    used = sum(cut.flat.outline.area * cut.count for cut in fitting)
    taken = tuple(_told(_used(page, slab.gap), rounder) for page in laid)
    whole = sum(wide * long for wide, long in taken)
    weight = group[0].thickness * group[0].clay.density / 1000
    over = _scale(taken)
    return SlabLayout(
        clay=group[0].clay.name,
        thickness=group[0].thickness,
        offcut=1 - used / whole if whole else 0.0,
        used=taken,
        rolled=whole * weight,
        cut=used * weight,
        pieces=tuple((i + 1, cut.called, cut.count) for i, cut in enumerate(fitting)),
        too_large=tuple(cut.name for cut in group if cut not in fitting),
        drawings=tuple(
            _picture([(p, each[p.piece] + 1, fitting[each[p.piece]]) for p in page], slab.gap, sides, over)
            for page, sides in zip(laid, taken, strict=True)
        ),
        scale=f"1 : {over}",
        over=over,
        textured=group[0].textured,
    )


def _tightest(sizes: tuple[Sides, ...], room: Sides, gap: float) -> Sequence[Page]:
    """The pieces on as few slabs as they need; where one is enough, on the one that is least to roll."""
    laid = packed(sizes, room, turn=True, trials=TRIALS)
    if len(laid) > 1:
        return laid
    least = max(min(sides) for sides in sizes)
    rooms = ((least + (room[0] - least) * i / WIDTHS, room[1]) for i in range(WIDTHS))
    narrower = (packed(sizes, r, turn=True, trials=NARROW_TRIALS) for r in rooms if all(_fits(one, r) for one in sizes))
    return min((laid, *(one for one in narrower if len(one) == 1)), key=lambda one: math.prod(_used(one[0], gap)))


def _used(page: Page, gap: float) -> tuple[float, float]:
    """Width and length of a slab that its pieces take, with the gap round them."""
    return max(p.x + p.width for p in page) + gap, max(p.y + p.height for p in page) + gap


def _told(sides: Sides, rounder: Rounder) -> tuple[Printed, Printed]:
    """The rectangle that is told, rolled and weighed."""
    return rounder.length(sides[0], "bench up"), rounder.length(sides[1], "bench up")


def _fits(sides: Sides, room: Sides) -> bool:
    """Whether a piece lies in the room, one way or the other."""
    return any(a <= room[0] and b <= room[1] for a, b in (sides, sides[::-1]))


def _scale(taken: Iterable[Sides]) -> int:
    """How many times smaller all slabs of a clay and thickness are drawn."""
    wide, tall = (max((sides[i] for sides in taken), default=0.0) for i in (0, 1))
    return next((over for over in SCALES if wide / over <= WIDEST and tall / over <= TALLEST), max(SCALES))


def _picture(laid: Sequence[Laid], gap: float, sides: tuple[Printed, Printed], over: int) -> Drawing:
    """The part of one slab that its pieces take, each with its number, or the first of several that lie close."""
    width, length = sides
    paper, scale = Paper(), 1 / over
    pen = Scaled(paper, scale)
    pen.box((0, 0), width, length, "fold")
    for placed, _, cut in laid:
        extent = cut.flat.extent
        x, y = gap + placed.x, gap + placed.y
        lying: Pen = Moved(pen, (x - extent.left, y - extent.top))
        if placed.turned:
            lying = Turned(Moved(pen, (x + extent.bottom, y - extent.left)))
        Flat(cut.flat.outline, line="thin").draw(lying)  # without its holes, so that its number can stand in it
    numbered(paper, [(number, _box(placed, gap, scale)) for placed, number, _ in laid])
    names = [cut.called.replace("_", " ") for _, _, cut in laid]
    lies = ", ".join(f"{names.count(name)} {name}" for name in dict.fromkeys(names))
    says = f"A slab of {width.words} × {length.told} with {lies}, at 1 : {over}"
    return paper.drawing((-EDGE, -EDGE), width * scale + 2 * EDGE, length * scale + 2 * EDGE, says)


def _box(placed: Placed, gap: float, scale: float) -> Extent:
    """Where a piece lies in the picture."""
    x, y = gap + placed.x, gap + placed.y
    return Extent(x * scale, y * scale, (x + placed.width - gap) * scale, (y + placed.height - gap) * scale)
