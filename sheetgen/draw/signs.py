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
    # a blade over a fingertip
    "W022": _black("M3.7 5.4 L6.4 4 L6.2 5.4 z") + _line("M3.2 8 V7.6 A1.8 1.2 0 0 1 6.8 7.6 V8", wide=0.6)
    + _dot(4.6, 6, 0.28),
    # drops that eat into a plate
    "W023": _line("M4.3 4.5 L5.7 4", wide=0.9) + _dot(4.2, 5.9, 0.4) + _dot(5.7, 5.6, 0.4)
    + _black("M2.4 7.2 H3.3 A.7 .6 0 0 0 4.7 7.2 H5.3 A.7 .6 0 0 0 6.7 7.2 H7.6 V8.2 H2.4 z"),
    # a weight that comes down on fingers
    "W024": _black("M3.4 5.3 H6.6 V6.1 H3.4 z") + _line("M5 3 V4.8 M4.3 4.2 L5 4.9 L5.7 4.2", wide=0.5)
    + _line("M3.2 8 V7 M4.4 8 V6.8 M5.6 8 V6.8 M6.8 8 V7", wide=0.6),
    # a head under a cloud
    "W041": _dot(5, 6.5, 0.8) + _black("M3.2 8.4 A1.8 1.2 0 0 1 6.8 8.4 z")
    + _dot(4.2, 4.7, 0.5) + _dot(5.1, 4.2, 0.6) + _dot(5.9, 4.8, 0.45),
    # a head with cups over its ears
    "M003": HEAD + _line("M2.3 5.4 V4.4 A2.7 2.9 0 0 1 7.7 4.4 V5.4", "#fff", 0.45)
    + '<rect x="1.6" y="4.5" width="1.4" height="2" rx=".5" fill="#fff" stroke="#000" stroke-width=".3"/>'
    + '<rect x="7" y="4.5" width="1.4" height="2" rx=".5" fill="#fff" stroke="#000" stroke-width=".3"/>',
    # a head with goggles
    "M004": HEAD + _dot(3.9, 4.9, 0.95) + _dot(6.1, 4.9, 0.95) + _line("M2.4 4.6 H7.6", wide=0.45),
    # a glove
    "M009": '<path d="M3.5 8.3 V5.6 L2.5 4.4 A.5 .5 0 0 1 3.3 3.8 L4 4.5 V2.6 A.4 .4 0 0 1 4.8 2.6 V4 V2.1 '
    'A.4 .4 0 0 1 5.6 2.1 V4 V2.5 A.4 .4 0 0 1 6.4 2.5 V4.2 V3.3 '
    'A.35 .4 0 0 1 7.1 3.3 V6.2 L6.6 7 V8.3 z" fill="#fff"/>'
    + _line("M3.6 7.5 H6.5 M4.8 4.1 V2.8 M5.6 4.1 V2.8 M6.4 4.2 V3.2", wide=0.22),
    # a head with a mask
    "M016": HEAD + _dot(4.1, 4.3, 0.35) + _dot(5.9, 4.3, 0.35) + _black("M3.5 5.6 Q5 4.8 6.5 5.6 V6.8 Q5 8.4 3.5 6.8 z")
    + _line("M2.6 5.2 L3.6 5.8 M7.4 5.2 L6.4 5.8", wide=0.3),
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
