"""The paper pen: SVG in millimetres with presentation attributes, which browser and PDF print alike."""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from html import escape
from typing import TYPE_CHECKING

from sheetgen.base.pen import SIZE, Anchor, Line, Pen, Point
from sheetgen.base.spelling import apostrophes
from sheetgen.model.drawing import Drawing

if TYPE_CHECKING:
    from collections.abc import Sequence

FONT = "Source Sans Pro, Helvetica Neue, Arial, sans-serif"
# Two weights in mm, 1.4 pt for what is cut and 0.6 pt for all else. Dashes that a copy of a copy keeps: the dashes
# follow ISO 128, chain for centres and axes; dots, a little heavier, for what comes.
HEAVY, FINE, DOT = 0.5, 0.21, 0.42
FOLD = (1.8, 1.2)  # a dash and a gap
_OPEN = 'fill="none" stroke="#000"'
STYLES: dict[Line, str] = {
    "cut": f'{_OPEN} stroke-width="{HEAVY}"',
    "fold": f'{_OPEN} stroke-width="{FINE}" stroke-dasharray="{FOLD[0]} {FOLD[1]}"',
    "meet": f'{_OPEN} stroke-width="{FINE}" stroke-dasharray="4.4 1.1 0.9 1.1"',
    "centre": f'{_OPEN} stroke-width="{FINE}" stroke-dasharray="4.4 1.1 0.9 1.1"',
    "fired": f'{_OPEN} stroke-width="{DOT}" stroke-dasharray="0.01 1.2" stroke-linecap="round"',
    "thin": f'{_OPEN} stroke-width="{FINE}"',
    "solid": 'fill="#000" stroke="none"',
}


def turns(loop: Sequence[Point]) -> bool:
    """Whether a loop runs clockwise, as it is seen on paper."""
    return sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(loop, [*loop[1:], *loop[:1]], strict=True)) > 0


def mm(x: float) -> str:
    """A coordinate with a thousandth of a millimetre."""
    text = f"{x:.3f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def folded(long: float) -> str:
    """The dashes of a straight fold, mm: whole ones, at both of its ends, two at least, for a strip is narrow."""
    dash, gap = FOLD
    many = max(2, round((long + gap) / (dash + gap)))
    unit = long / (many * dash + (many - 1) * gap)
    return f"{mm(dash * unit)} {mm(gap * unit)}"


@dataclass(slots=True)
class Paper(Pen):
    """Collects SVG elements. What is cut is heavy on a template; a picture of it has outlines as fine as all else."""

    marks: list[str] = field(default_factory=list)
    outline: Line = "cut"
    drawn: set[Line] = field(default_factory=set)  # the kinds of line so far

    def _style(self, kind: Line) -> str:
        self.drawn.add(kind)
        return STYLES[self.outline if kind == "cut" else kind]

    def line(self, points: Sequence[Point], kind: Line = "cut", *, closed: bool = False) -> None:
        """A polyline or polygon."""
        if len(points) == 2:  # noqa: PLR2004 - a single run
            (x1, y1), (x2, y2) = points
            at = f'x1="{mm(x1)}" y1="{mm(y1)}" x2="{mm(x2)}" y2="{mm(y2)}"'
            style = self._style(kind)
            if kind == "fold":
                style = style.replace(f"{FOLD[0]} {FOLD[1]}", folded(math.dist(*points)))
            self.marks.append(f"<line {at} {style}/>")
            return
        run = " ".join(f"{mm(x)},{mm(y)}" for x, y in points)
        self.marks.append(f'<{"polygon" if closed else "polyline"} points="{run}" {self._style(kind)}/>')

    def oval(self, centre: Point, width: float, height: float, kind: Line = "cut") -> None:
        """A circle or an ellipse."""
        at = f'cx="{mm(centre[0])}" cy="{mm(centre[1])}"'
        if abs(width - height) < 1e-9:  # noqa: PLR2004 - a circle
            self.marks.append(f'<circle {at} r="{mm(width / 2)}" {self._style(kind)}/>')
        else:
            self.marks.append(f'<ellipse {at} rx="{mm(width / 2)}" ry="{mm(height / 2)}" {self._style(kind)}/>')

    def cover(self, loops: Sequence[Sequence[Point]]) -> None:
        """White paper laid over what was drawn.

        Openings run against the outline: where both end at one edge, a printer leaves no hair of white along it.
        """
        ways = (loop if turns(loop) == (n == 0) else loop[::-1] for n, loop in enumerate(loops))
        runs = " ".join("M" + " L".join(f"{mm(x)},{mm(y)}" for x, y in loop) + "Z" for loop in ways)
        if runs:
            self.marks.append(f'<path d="{runs}" fill="#fff" fill-rule="evenodd" stroke="none"/>')

    def text(self, at: Point, words: str, *, size: float = SIZE, anchor: Anchor = "start", turn: float = 0) -> None:
        """Words."""
        x, y = mm(at[0]), mm(at[1])
        turned = f' transform="rotate({mm(turn)} {x} {y})"' if turn else ""
        look = f'font-size="{mm(size)}" text-anchor="{anchor}" fill="#000"'
        self.marks.append(f'<text x="{x}" y="{y}" {look}{turned}>{escape(apostrophes(words), quote=False)}</text>')

    def drawing(self, corner: Point, width: float, height: float, says: str, *, true: bool = True) -> Drawing:
        """What has been drawn, as an SVG whose upper left is at `corner`; `true` where that is its true size."""
        box = f"{mm(corner[0])} {mm(corner[1])} {mm(width)} {mm(height)}"
        head = (
            f'<svg xmlns="http://www.w3.org/2000/svg" width="{mm(width)}mm" height="{mm(height)}mm" '
            f'viewBox="{box}" font-family="{FONT}" font-weight="600" role="img">'
        )
        svg = f"{head}<title>{escape(apostrophes(says), quote=False)}</title>{''.join(self.marks)}</svg>"
        return Drawing(svg, width, height, says, true=true)
