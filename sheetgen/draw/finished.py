"""The finished view: fired parts from the front, where the project says they stand or hang."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.material import Wire
from sheetgen.base.pen import Extent, Moved
from sheetgen.draw import kinds
from sheetgen.draw.paper import Paper
from sheetgen.draw.pens import Scaled, Strokes
from sheetgen.parts.kind import Part

if TYPE_CHECKING:
    from sheetgen.base.rounding import Rounder
    from sheetgen.model.drawing import Drawing
    from sheetgen.model.worked import WorkedVersion
    from sheetgen.parts.piece import Piece

WIDEST, TALLEST = 76.0, 60.0


def finished(version: WorkedVersion, rounder: Rounder) -> Drawing | None:
    """The view at true size, or smaller where it would not fit; None where no part has a place."""
    placed: dict[str, tuple[float, float]] = {}
    for part in version.parts.values():
        if part[Part.at] is not None or part[Part.hangs_from] is not None:
            _place(part, version, placed)
    extent = Extent()
    for name, spot in list(placed.items()):
        own = Extent()
        kinds.view(Moved(own, spot), version.parts[name])
        if own.width <= 0 and own.height <= 0:  # a kind that has no view is not named in it
            placed.pop(name)
        kinds.view(Moved(extent, spot), version.parts[name])
    if extent.width <= 0 or extent.height <= 0:
        return None
    shrink = min(1.0, WIDEST / (extent.width + 2), TALLEST / (extent.height + 2))
    paper = Paper(outline="thin")
    pen = Scaled(paper, shrink)
    for name, spot in placed.items():
        seen = Strokes()
        kinds.view(Moved(seen, spot), version.parts[name])
        # What stands in front hides what is behind it, but not through its openings.
        pen.cover(seen.closed("cut"))
        kinds.view(Moved(pen, spot), version.parts[name])
    names = ", ".join(name.replace("_", " ") for name in placed)
    wide, high = (rounder.length(mm, "out").told for mm in (extent.width, extent.height))
    says = f"The finished piece from the front, {wide} wide, {high} high: {names}"
    corner = ((extent.left - 1) * shrink, (extent.top - 1) * shrink)
    return paper.drawing(corner, (extent.width + 2) * shrink, (extent.height + 2) * shrink, says, true=shrink == 1)


def _place(part: Piece, version: WorkedVersion, placed: dict[str, tuple[float, float]]) -> tuple[float, float]:
    """Where a part stands; a part that hangs stands below the one it hangs from."""
    if part.name in placed:
        return placed[part.name]
    x = y = 0.0
    if (above := part[Part.hangs_from]) is not None:
        upper = version.parts[above.name]
        x, y = _place(upper, version, placed)
        y += kinds.view(Extent(), upper)
        wire = part.playing("made of", Wire)
        if wire is not None and upper.playing("made of", Wire) is not None:
            # Wire hangs in wire: the lower one's top lies inside the upper one, its own thickness higher.
            y -= wire.thickness
    if (at := part[Part.at]) is not None:
        x, y = x + at.x, y + at.y
    placed[part.name] = (x, y)
    return placed[part.name]
