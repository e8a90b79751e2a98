"""The finished view: fired parts where the project says they stand or hang, each turned as it says."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.base.material import Wire
from sheetgen.base.pen import Extent, Moved
from sheetgen.draw import kinds
from sheetgen.draw.paper import Paper
from sheetgen.draw.pens import Clipped, Scaled, Strokes
from sheetgen.parts.kind import Part

if TYPE_CHECKING:
    from sheetgen.base.pen import Pen, Point
    from sheetgen.base.rounding import Rounder
    from sheetgen.model.drawing import Drawing
    from sheetgen.model.worked import WorkedVersion
    from sheetgen.parts.piece import Piece

WIDEST, TALLEST = 80.0, 46.0


@dataclass(frozen=True, slots=True)
class _Seen:
    """A part in the view, where the middle of its top stands; `above` is what it hangs from."""

    piece: Piece
    at: Point
    turned: str = "front"
    above: _Seen | None = None

    def draw(self, pen: Pen) -> float:
        """The part in its place."""
        return kinds.view(Moved(pen, self.at), self.piece, self.turned)

    @property
    def wire(self) -> Wire | None:
        """The wire that it is made of."""
        return self.piece.playing("made of", Wire)


def finished(version: WorkedVersion, rounder: Rounder) -> Drawing | None:
    """The view at true size, or smaller where it would not fit; None where no part has a place."""
    extent, seen = Extent(), []
    for one in _standing(version):
        own = Extent()
        one.draw(own)
        if own.width > 0 or own.height > 0:  # a kind that has no view is not named in it
            seen.append(one)
            one.draw(extent)
    if extent.width <= 0 or extent.height <= 0:
        return None
    shrink = min(1.0, WIDEST / (extent.width + 2), TALLEST / (extent.height + 2))
    paper = Paper(outline="thin")
    pen = Scaled(paper, shrink)
    for one in seen:
        strokes = Strokes()
        one.draw(strokes)
        # What stands in front hides what is behind it, but not through its openings.
        pen.cover(strokes.closed("cut"))
        one.draw(pen)
        if one.above is not None and one.wire is not None and one.above.wire is not None:
            _linked(pen, one, one.above, strokes.extent)
    names = ", ".join(dict.fromkeys(one.piece.name.replace("_", " ") for one in seen))
    wide, high = (rounder.length(mm, "out").told for mm in (extent.width, extent.height))
    sides = " and turned" if any(one.turned != "front" for one in seen) else ""
    says = f"The finished piece from the front{sides}, {wide} wide, {high} high: {names}"
    corner = ((extent.left - 1) * shrink, (extent.top - 1) * shrink)
    return paper.drawing(corner, (extent.width + 2) * shrink, (extent.height + 2) * shrink, says, true=shrink == 1)


def _linked(pen: Pen, lower: _Seen, upper: _Seen, around: Extent) -> None:
    """Wire that hangs in wire lies over it on one side and under it on the other."""
    middle = (upper.at[0] + lower.at[0]) / 2
    window = ((middle, around.top - 1), (around.right + 1, around.bottom))
    strokes = Strokes()
    upper.draw(strokes)
    pen.cover([part for loop in strokes.closed("cut") if (part := within(loop, *window))])
    upper.draw(Clipped(pen, *window))


def within(loop: list[Point], corner: Point, far: Point) -> list[Point]:
    """The part of a closed outline that lies in a window (after Sutherland and Hodgman)."""
    found = list(loop)
    for axis in (0, 1):
        for edge, way in ((corner[axis], 1), (far[axis], -1)):
            kept: list[Point] = []
            for a, b in zip(found, [*found[1:], *found[:1]], strict=True):
                inside, next_inside = way * (a[axis] - edge) >= 0, way * (b[axis] - edge) >= 0
                if inside:
                    kept.append(a)
                if inside != next_inside:
                    share = (edge - a[axis]) / (b[axis] - a[axis])
                    kept.append((a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])))
            found = kept
    return found


def _standing(version: WorkedVersion) -> list[_Seen]:
    """The parts that have a place of their own, then those of the project's view."""
    placed: dict[str, _Seen] = {}
    for part in version.parts.values():
        if part[Part.at] is not None or part[Part.hangs_from] is not None:
            _place(part, version, placed)
    seen = list(placed.values())
    for stood in version.view:
        above = next((one for one in reversed(seen) if one.piece.name == stood.hangs_from), None)
        seen.append(_hung(version.parts[stood.part], above, (stood.right, stood.down), stood.turned))
    return seen


def _hung(part: Piece, above: _Seen | None, by: Point, turned: str = "front") -> _Seen:
    """A part so far from where it hangs, or from the middle of the view."""
    x, y = by
    if above is not None:
        x, y = x + above.at[0], y + above.at[1] + kinds.view(Extent(), above.piece, above.turned)
        wire = part.playing("made of", Wire)
        if wire is not None and above.wire is not None:
            # Wire hangs in wire: the lower one's top lies inside the upper one, its own thickness higher.
            y -= wire.thickness
    return _Seen(part, (x, y), turned, above)


def _place(part: Piece, version: WorkedVersion, placed: dict[str, _Seen]) -> _Seen:
    """Where a part stands; a part that hangs stands below the one it hangs from."""
    if part.name not in placed:
        hangs, at = part[Part.hangs_from], part[Part.at]
        above = _place(version.parts[hangs.name], version, placed) if hangs is not None else None
        placed[part.name] = _hung(part, above, (at.x, at.y) if at is not None else (0.0, 0.0))
    return placed[part.name]
