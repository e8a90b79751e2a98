"""Safety signs by their numbers of ISO 7010, drawn simply by us: a triangle that warns, a disc that tells what to wear.

Each is 10 mm by 10 mm; black only, so that a copier keeps it.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.facts.signs import GENERAL, SIGNS
from sheetgen.model.drawing import Drawing

if TYPE_CHECKING:
    from sheetgen.model.worked import WorkedVersion

SIDE = 10.0  # mm
LINE = 'fill="none" stroke="{ink}" stroke-width="{wide}" stroke-linecap="round" stroke-linejoin="round"'
TRIANGLE = f'<path d="M5 .8 L9.6 9 L.4 9 z" {LINE.format(ink="#000", wide=0.8)}/>'
DISC = '<circle cx="5" cy="5" r="4.8" fill="#000"/>'
HEAD = '<path d="M2.6 8.2 V4.6 A2.4 2.6 0 0 1 7.4 4.6 V8.2 A4.2 4.2 0 0 1 2.6 8.2 z" fill="#fff"/>'


def _black(path: str) -> str:
    return f'<path d="{path}" fill="#000"/>'


def _line(path: str, ink: str = "#000", wide: float = 0.5) -> str:
    return f'<path d="{path}" {LINE.format(ink=ink, wide=wide)}/>'


def _dot(x: float, y: float, r: float, ink: str = "#000") -> str:
    return f'<circle cx="{x:g}" cy="{y:g}" r="{r:g}" fill="{ink}"/>'


MARKS = {
    # a stroke and a point
    "W001": _black("M4.5 3.5 H5.5 L5.3 6.3 H4.7 z") + _dot(5, 7.4, 0.55),
    # a skull on two bones
    "W016": _line("M3 6.7 L7 8.2 M7 6.7 L3 8.2", wide=0.55) + _dot(5, 4.9, 1.25)
    + _black("M4.35 5.6 H5.65 V6.7 H4.35 z") + _dot(4.55, 4.9, 0.33, "#fff") + _dot(5.45, 4.9, 0.33, "#fff"),
    # heat that rises from a plate
    "W017": _line("M2.9 8 H7.1", wide=0.6)
    + "".join(_line(f"M{x} 7 c-.7 -.6 .7 -1 0 -1.6 s.4 -.8 0 -1.2", wide=0.5) for x in (3.9, 5, 6.1)),
    # a flame on a line
    "W021": _line("M3.2 8.1 H6.8", wide=0.6)
    + _black("M5.1 3 C5.2 4.3 6.8 4.9 6.6 6.3 A1.6 1.3 0 0 1 3.4 6.3 C3.4 5.5 4 5.1 4 4.4 C4.5 4.6 5 3.9 5.1 3 z"),
    # the blade of a craft knife, and its handle
    "W022": _black("M4.1 6 V4.6 L5.9 2.9 V6 z") + _black("M4 6.5 H6 V8.2 H4 z"),
    # drops that eat into a plate
    "W023": _line("M4.3 4.5 L5.7 4", wide=0.9) + _dot(4.2, 5.9, 0.4) + _dot(5.7, 5.6, 0.4)
    + _black("M2.4 7.2 H3.3 A.7 .6 0 0 0 4.7 7.2 H5.3 A.7 .6 0 0 0 6.7 7.2 H7.6 V8.2 H2.4 z"),
    # a weight that comes down on fingers
    "W024": _black("M3.4 5.3 H6.6 V6.1 H3.4 z") + _line("M5 3 V4.8 M4.3 4.2 L5 4.9 L5.7 4.2", wide=0.5)
    + _line("M3.2 8 V7 M4.4 8 V6.8 M5.6 8 V6.8 M6.8 8 V7", wide=0.6),
    # somebody who lies under a cloud
    "W041": _dot(4.2, 5.1, 0.7) + _dot(5, 4.3, 0.9) + _dot(5.8, 5.15, 0.65) + _black("M4.2 5 H5.8 V5.8 H4.2 z")
    + _dot(3.1, 7.15, 0.7) + _line("M4.5 7.3 H7.1", wide=0.95),
    # a head with cups over its ears
    "M003": '<ellipse cx="5" cy="5.4" rx="1.75" ry="2.5" fill="#fff"/>'
    + _line("M2.1 5 A2.9 3.2 0 0 1 7.9 5", "#fff", 0.75)
    + '<rect x="1.2" y="4.4" width="1.5" height="2.6" rx=".6" fill="#fff"/>'
    + '<rect x="7.3" y="4.4" width="1.5" height="2.6" rx=".6" fill="#fff"/>',
    # a head with goggles
    "M004": HEAD + _dot(3.9, 4.9, 0.95) + _dot(6.1, 4.9, 0.95) + _line("M2.4 4.6 H7.6", wide=0.45),
    # a glove
    "M009": _line("M3.4 5.2 V2.9 M4.65 5 V2 M5.9 5 V2.2 M7.1 5.2 V3.2", "#fff", 0.8)
    + _line("M3.6 6.7 L2 5.1", "#fff", 1)
    + '<path d="M3 4.7 H7.5 V6.4 L7 7.2 H3.5 L3 6.6 z M3.4 7.7 H7.1 V8.7 H3.4 z" fill="#fff"/>',
    # a head with a mask
    "M016": HEAD + _dot(4.1, 3.6, 0.42) + _dot(5.9, 3.6, 0.42) + _black("M2.2 4.9 H7.8 V9 H2.2 z")
    + '<path d="M3 5.4 H7 V7.2 L6.2 8.3 H3.8 L3 7.2 z" fill="#fff"/>' + _line("M3.6 6.3 H6.4 M3.6 7.2 H6.4", wide=0.35),
}  # fmt: skip


def sign(number: str) -> Drawing:
    """One sign. KeyError for a number that is not drawn."""
    says = f"{number}, {SIGNS[number]}"
    ground = TRIANGLE if number.startswith("W") else DISC
    svg = (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {SIDE:g} {SIDE:g}" role="img">'
        f"<title>{says}</title>{ground}{MARKS[number]}</svg>"
    )
    return Drawing(svg, SIDE, SIDE, says)


def signs(version: WorkedVersion) -> dict[str, Drawing]:
    """Those that the cautions of a version name; for one that names none that warns the general one."""
    named: set[str] = set()
    for signs in {c.signs for step in version.steps for c in step.cautions}:
        named.update(signs if any(number.startswith("W") for number in signs) else (*signs, GENERAL))
    return {number: sign(number) for number in sorted(named)}
