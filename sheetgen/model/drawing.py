"""Drawings: one template, and a page of templates, in millimetres."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from sheetgen.base.pen import Line
    from sheetgen.base.printed import Printed


@dataclass(frozen=True, slots=True)
class Drawing:
    """An SVG of so many millimetres, with its text alternative; `true` where it is drawn at true size.

    `shrunk` is how many times smaller it was made than that to fit, as a share.
    """

    svg: str
    width: float
    height: float
    says: str
    true: bool = True
    shrunk: float = 1.0


SCALED = "; drawn at "
"""What stands before its scale in the text alternative of a drawing that says one."""


def unscaled(svg: str) -> str:
    """A drawing without the scale that it says: a screen shows it as large as there is room, at no scale."""
    said = re.search(rf"{SCALED}([^<]+)</title>", svg)
    if said is None:
        return svg
    return re.sub(rf"<text[^>]*>{re.escape(said[1])}</text>", "", svg.replace(said[0], "</title>"))


@dataclass(frozen=True, slots=True)
class TemplatePage:
    """One page of templates for one paper, its check bars included: what the one along measures, and the upright one.

    The drawing is as wide as the content of the page, and no taller than it needs: a short one shares a page.
    """

    paper: str
    drawing: Drawing
    parts: tuple[str, ...]
    share: float = 0.0
    tile: str = ""
    """Which sheet of how many, of a template larger than a page."""
    bars: tuple[str, str] = ("", "")
    lines: frozenset[Line] = frozenset()
    """The kinds of line that its templates have."""
    deeds: frozenset[str] = frozenset()
    """What is done along their outlines: cut, bend, mark."""


@dataclass(frozen=True, slots=True)
class SlabLayout:
    """The wet pieces of one clay and thickness, all textured or all plain, on rolled slabs; a picture of each. Mm, g.

    `pieces` are the number in the picture, the part's name with what the outline is, and the count of each; `used` is
    the width and length of each slab that the pieces take with the gaps round them, as they are printed; masses and
    shares are of that. The pictures are `over` times smaller than the slabs; `scale` says so: 1 : 3.
    """

    clay: str
    thickness: float
    offcut: float
    used: tuple[tuple[Printed, Printed], ...]
    rolled: float
    cut: float
    pieces: tuple[tuple[int, str, int], ...]
    too_large: tuple[str, ...]
    drawings: tuple[Drawing, ...]
    scale: str = ""
    over: int = 1
    textured: bool = False


@dataclass(frozen=True, slots=True)
class Drawings:
    """All drawings of one version: each part's template, the pages by paper, the diagrams beside steps.

    `labels` are both lines that stand over a template on a screen; on a page they stand in it.
    `diagrams` are by part, and by gesture and part; `curves` are kiln curves by the number of their step, from 0, and
    `narrow_curves` the same as a phone holds them; `cutting` are the files for a craft cutter, by part; `signs`
    are those that its cautions name, by their number; `timetable` is of its class, by evening.
    """

    templates: dict[str, Drawing]
    pages: dict[str, tuple[TemplatePage, ...]]
    diagrams: dict[str, Drawing] = field(default_factory=dict)
    curves: dict[int, Drawing] = field(default_factory=dict)
    narrow_curves: dict[int, Drawing] = field(default_factory=dict)
    finished: Drawing | None = None
    slabs: tuple[SlabLayout, ...] = ()
    cutting: dict[str, str] = field(default_factory=dict)
    signs: dict[str, Drawing] = field(default_factory=dict)
    timetable: tuple[Drawing, ...] = ()
    labels: dict[str, tuple[str, str]] = field(default_factory=dict)
