"""The finished view: fired parts where the project says they stand, hang or are laid, each turned as it says."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from sheetgen.base.material import Finding
from sheetgen.base.pen import Extent, Moved
from sheetgen.draw import findings, kinds, rows, way
from sheetgen.draw.bits import Bit
from sheetgen.draw.laid import laid
from sheetgen.draw.paper import Paper
from sheetgen.draw.pens import Clipped, Scaled, Strokes
from sheetgen.draw.sparing import Sparing
from sheetgen.draw.windows import MEETS, within
from sheetgen.parts.kind import Part

if TYPE_CHECKING:
    from sheetgen.base.pen import Pen, Point
    from sheetgen.base.rounding import Rounder
    from sheetgen.draw.way import Way
    from sheetgen.model.drawing import Drawing
    from sheetgen.model.worked import Stood, WorkedVersion
    from sheetgen.parts.piece import Piece

WIDEST, TALLEST = 80.0, 46.0


@dataclass(frozen=True, slots=True)
class _Seen:
    """A part or finding in the view, where the middle of its top stands; `above` is what it hangs from."""

    shown: Piece | Bit
    at: Point
    name: str
    turned: str = "front"
    above: _Seen | None = None

    def draw(self, pen: Pen) -> float:
        """It in its place; how far down it reaches, or where the next one hangs in it."""
        moved = Moved(pen, self.at)
        if isinstance(self.shown, Bit):
            if self.turned == "side":
                findings.on_edge(moved, self.shown)
            else:
                self.shown.draw(moved)
            return self.shown.end
        return kinds.view(moved, self.shown, self.turned)

    @property
    def says(self) -> str:
        """Its name, and what its face bears."""
        marks = "" if isinstance(self.shown, Bit) else kinds.textured(self.shown, self.turned)
        return f"{self.name.replace('_', ' ')}{f' with {marks.split()[0]}' if marks else ''}"

    @property
    def wire(self) -> float:
        """How thick the wire is that it is made of; 0 for what is not."""
        return self.shown.wire if isinstance(self.shown, Bit) else rows.wired(self.shown)

    def show(self, pen: Pen) -> None:
        """It over what is behind it, but not over what is seen through its openings."""
        strokes = Strokes()
        self.draw(strokes)
        pen.cover(strokes.closed("cut"))
        self.draw(pen)
        if self.above is not None and self.wire and self.above.wire:
            _linked(pen, self, self.above, strokes.extent)


@dataclass(frozen=True, slots=True)
class _Row:
    """Bits laid one after the other on their way, from a place of the view on or round it."""

    bits: list[Bit]
    on: Way
    joints: list[float]
    at: Point
    name: str

    def draw(self, pen: Pen) -> None:
        """The row in its place."""
        laid(Moved(pen, self.at), self.bits, self.on, self.joints)

    show = draw

    @property
    def says(self) -> str:
        """The names of what lies in it."""
        return self.name.replace("_", " ")


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
    for one in seen:
        one.show(Scaled(Sparing(paper), shrink))
    says = _says(version, seen, extent, rounder)
    corner = ((extent.left - 1) * shrink, (extent.top - 1) * shrink)
    size = (extent.width + 2) * shrink, (extent.height + 2) * shrink
    return replace(paper.drawing(corner, *size, says, true=shrink == 1), shrunk=shrink)


def _says(version: WorkedVersion, seen: list[_Seen | _Row], extent: Extent, rounder: Rounder) -> str:
    """What is seen, as the project says it; failing that, which parts. And how large it all is."""
    wide, high = (rounder.length(mm, "out").told for mm in (extent.width, extent.height))
    if version.view_shows:
        words = "".join(one if isinstance(one, str) else one.printed.told for one in version.view_shows)
        return f"{words.strip().rstrip('.')}; all of it {wide} wide and {high} high"
    sides = " and turned" if any(isinstance(one, _Seen) and one.turned != "front" for one in seen) else ""
    names = ", ".join(dict.fromkeys(one.says for one in seen))
    return f"The finished piece from the front{sides}, {wide} wide, {high} high: {names}"


def _linked(pen: Pen, lower: _Seen, upper: _Seen, around: Extent) -> None:
    """Wire that hangs in wire lies over it on one side and under it on the other; one seen on edge lies over it."""
    if lower.turned == "side":
        return
    strokes = Strokes()
    upper.draw(strokes)
    left = around.left - 1 if upper.turned == "side" else _middle(lower, strokes.extent, lower.wire + upper.wire)
    window = ((left, around.top - 1), (around.right + 1, around.bottom))
    pen.cover([part for loop in strokes.closed("cut") if (part := within(loop, *window))])
    (x1, y1), (x2, y2) = window
    upper.draw(Clipped(pen, (x1 - MEETS, y1 - MEETS), (x2 + MEETS, y2 + MEETS)))


def _middle(lower: _Seen, upper: Extent, deep: float) -> float:
    """The middle of where the top of one thing, so deep, lies in what it hangs from."""
    strokes = Strokes()
    lower.draw(strokes)
    xs = [x for run in strokes.runs() for x, y in run if y <= lower.at[1] + deep] or [lower.at[0]]
    return (max(min(xs), upper.left) + min(max(xs), upper.right)) / 2


def _standing(version: WorkedVersion) -> list[_Seen | _Row]:
    """The parts that have a place of their own, then those of the project's view."""
    placed: dict[str, _Seen] = {}
    for part in version.parts.values():
        if part[Part.at] is not None or part[Part.hangs_from] is not None:
            _place(part, version, placed)
    seen: list[_Seen | _Row] = list(placed.values())
    for stood in version.view:
        if (one := _stood(stood, version, seen)) is not None:
            seen.append(one)
    return seen


def _stood(stood: Stood, version: WorkedVersion, seen: list[_Seen | _Row]) -> _Seen | _Row | None:
    """What an entry of the project's view shows."""
    by = (stood.right, stood.down)
    if stood.row:
        bits, first = rows.row(version, stood.row)
        names = [one.id if isinstance(one, Finding) else one for thing in stood.row for one in thing.of]
        on, joints = way.closed(bits, first) if stood.closed else way.led_back(bits)
        return _Row(bits, on, joints, by, ", ".join(dict.fromkeys(names)))
    above = next((one for one in reversed(seen) if isinstance(one, _Seen) and one.name == stood.hangs_from), None)
    shown = findings.bit(stood.part) if isinstance(stood.part, Finding) else version.parts[stood.part]
    return _hung(shown, stood.name, above, by, stood.turned) if shown is not None else None


def _hung(shown: Piece | Bit, name: str, above: _Seen | None, by: Point, turned: str = "front") -> _Seen:
    """A part or finding so far from where it hangs, or from the middle of the view."""
    x, y = by
    if above is not None:
        x, y = x + above.at[0], y + above.at[1] + above.draw(Extent())
        if above.wire:
            # Wire hangs in wire: the lower one's top lies inside the upper one, its own thickness higher.
            y -= _Seen(shown, (0.0, 0.0), name).wire
    return _Seen(shown, (x, y), name, turned, above)


def _place(part: Piece, version: WorkedVersion, placed: dict[str, _Seen]) -> _Seen:
    """Where a part stands; a part that hangs stands below the one it hangs from."""
    if part.name not in placed:
        hangs, at = part[Part.hangs_from], part[Part.at]
        above = _place(version.parts[hangs.name], version, placed) if hangs is not None else None
        placed[part.name] = _hung(part, part.name, above, (at.x, at.y) if at is not None else (0.0, 0.0))
    return placed[part.name]
