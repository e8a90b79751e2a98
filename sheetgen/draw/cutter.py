"""A template as a file for a craft cutter or a laser: lines to cut, to fold and to mark, a group each, in mm."""

from __future__ import annotations

from html import escape
from typing import TYPE_CHECKING

from sheetgen.base.material import Clay, Fibre, Sheet
from sheetgen.base.pen import SIZE, Anchor, Extent, Line, Pen, Point
from sheetgen.draw.paper import mm

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.draw.piece import Template

EDGE = 1.0
GROUPS: dict[Line, str] = {"cut": "cut", "fold": "fold", "meet": "fold", "centre": "marks", "thin": "marks"}
LOOK = 'fill="none" stroke="#000" stroke-width="0.1"'


class Cutter(Pen):
    """Keeps what a machine may follow: no dimensions, no words."""

    def __init__(self) -> None:
        self.groups: dict[str, list[str]] = {"cut": [], "fold": [], "marks": []}
        self.extent = Extent()

    def line(self, points: Sequence[Point], kind: Line = "cut", *, closed: bool = False) -> None:
        """A path of straight runs."""
        run = " L".join(f"{mm(x)} {mm(y)}" for x, y in points)
        self._keep(kind, f'<path d="M{run}{" Z" if closed else ""}"/>')
        self.extent.line(points, kind, closed=closed)

    def oval(self, centre: Point, width: float, height: float, kind: Line = "cut") -> None:
        """A circle or an ellipse."""
        at = f'cx="{mm(centre[0])}" cy="{mm(centre[1])}"'
        radii = f'rx="{mm(width / 2)}" ry="{mm(height / 2)}"'
        circle = f'<circle {at} r="{mm(width / 2)}"/>'
        self._keep(kind, circle if abs(width - height) < 1e-9 else f"<ellipse {at} {radii}/>")  # noqa: PLR2004
        self.extent.oval(centre, width, height, kind)

    def _keep(self, kind: Line, mark: str) -> None:
        if kind in GROUPS:
            self.groups[GROUPS[kind]].append(mark)

    def text(self, at: Point, words: str, *, size: float = SIZE, anchor: Anchor = "start", turn: float = 0) -> None:
        """No words."""

    def arrow(self, tip: Point, along: Point) -> None:
        """No arrows."""

    def across(self, y: float, x1: float, x2: float, words: str, *, to: float) -> None:
        """No dimensions."""

    def beside(self, x: float, y1: float, y2: float, words: str, *, to: float) -> None:
        """No dimensions."""

    def inside(self, y: float, x1: float, x2: float, words: str, *, below: float) -> None:
        """No dimensions."""

    def upright(self, x: float, y1: float, y2: float, words: str, *, to: float) -> None:
        """No dimensions."""

    def file(self, says: str) -> str:
        """The SVG, its user unit a millimetre."""
        e = self.extent
        wide, tall = e.width + 2 * EDGE, e.height + 2 * EDGE
        head = (
            f'<svg xmlns="http://www.w3.org/2000/svg" width="{mm(wide)}mm" height="{mm(tall)}mm" '
            f'viewBox="{mm(e.left - EDGE)} {mm(e.top - EDGE)} {mm(wide)} {mm(tall)}">'
        )
        groups = "".join(f'<g id="{name}" {LOOK}>{"".join(g)}</g>\n' for name, g in self.groups.items() if g)
        return f"{head}<title>{escape(says, quote=False)}</title>\n{groups}</svg>\n"


def for_cutter(template: Template) -> str:
    """The file of one template; empty where there is nothing to cut or to fold, as of a bent wire."""
    used = (one for playing in template.piece.roles.values() for one in playing)
    if not any(isinstance(one, Clay | Sheet | Fibre) for one in used):
        return ""
    pen = Cutter()
    template.own(pen)
    return pen.file(template.says) if pen.groups["cut"] or pen.groups["fold"] else ""
