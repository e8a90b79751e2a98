"""The finished view: fired parts from the front, where the project says they stand or hang."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.cuts import loops
from sheetgen.base.material import Wire
from sheetgen.base.pen import Extent, Moved, Recorder
from sheetgen.base.trouble import CannotBe
from sheetgen.draw.paper import Paper

if TYPE_CHECKING:
    from sheetgen.model.drawing import Drawing
    from sheetgen.model.worked import WorkedVersion
    from sheetgen.parts.kind import Part

WIDEST, TALLEST = 76.0, 60.0


def finished(version: WorkedVersion) -> Drawing | None:
    """The view at true size, or smaller where it would not fit; None where no part has a place."""
    placed: dict[str, tuple[float, float]] = {}
    for part in version.parts.values():
        if part.at is not None or part.hangs_from is not None:
            _place(part, version, placed, ())
    if not placed:
        return None
    extent = Extent()
    for name, spot in placed.items():
        version.parts[name].view(Moved(extent, spot))
    if extent.width <= 0 or extent.height <= 0:
        return None
    pen = Paper()
    for name, spot in placed.items():
        seen = Recorder()
        version.parts[name].view(Moved(seen, spot))
        # What stands in front hides what is behind it, but not through its openings.
        closed = [mark for mark in seen.lines if mark[0] == "cut" and mark[2]]
        pen.cover(loops(Recorder(closed, [mark for mark in seen.ovals if mark[0] == "cut"])))
        version.parts[name].view(Moved(pen, spot))
    names = ", ".join(name.replace("_", " ") for name in placed)
    says = f"The finished piece from the front, {extent.width:.0f} mm wide, {extent.height:.0f} mm high: {names}"
    shrink = min(1.0, WIDEST / (extent.width + 2), TALLEST / (extent.height + 2))
    return pen.drawing((extent.left - 1, extent.top - 1), extent.width + 2, extent.height + 2, says, shrink)


def _place(
    part: Part, version: WorkedVersion, placed: dict[str, tuple[float, float]], above: tuple[str, ...]
) -> tuple[float, float]:
    """Where a part stands; a part that hangs stands below the one it hangs from."""
    if part.name in placed:
        return placed[part.name]
    if part.name in above:
        told = " → ".join((*above, part.name))
        raise CannotBe(f"these hang from each other in a circle: {told}", "let one of them stand: at: 0 mm, 0 mm")
    x = y = 0.0
    if part.hangs_from is not None:
        upper = version.parts[part.hangs_from.name]
        x, y = _place(upper, version, placed, (*above, part.name))
        y += upper.view(Extent())
        wire = getattr(part, "wire", None)
        if isinstance(wire, Wire) and isinstance(getattr(upper, "wire", None), Wire):
            # Wire hangs in wire: the lower one's top lies inside the upper one, its own thickness higher.
            y -= wire.thickness
    if part.at is not None:
        x, y = x + part.at.x, y + part.at.y
    placed[part.name] = (x, y)
    return placed[part.name]
