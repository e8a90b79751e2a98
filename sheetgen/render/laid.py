"""A page as it is laid out, as plain data: how full it is, its words and what can be seen of them, what is marked."""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple


class Words(NamedTuple):
    """Words of one line and one type, in mm from the upper left corner of the page; their box is that of the letters.

    `line`: two with the same number stand on one line. `unseen`: why nobody sees them. `margin`: at the page's edge.
    """

    text: str
    page: int
    x: float
    y: float
    w: float
    h: float
    line: int
    size: float
    unseen: str = ""
    margin: bool = False


class Picture(NamedTuple):
    """A drawing or picture, in mm; `unseen` where an edge cuts it off."""

    page: int
    x: float
    y: float
    w: float
    h: float
    unseen: str = ""


class Drawing(NamedTuple):
    """A template drawing with its mark, in mm as it is painted; `upright` where it is neither turned nor mirrored."""

    id: str
    page: int
    x: float
    y: float
    w: float
    h: float
    upright: bool
    fingerprint: str
    unseen: str = ""


class Line(NamedTuple):
    """A line of type in its column, in mm: where its words begin and end, and the column.

    `fixed`: it may not be broken, and its column has the same width whatever stands in it.
    """

    page: int
    text: str
    x: float
    w: float
    column_x: float
    column_w: float
    fixed: bool


@dataclass(frozen=True, slots=True)
class Marked:
    """A marked element: `kind` is told, number, step, list, short or piece; `beside` the step of a caution.

    `step`: the innermost step that it stands in.
    """

    kind: str
    id: str
    beside: str
    words: tuple[Words, ...]
    pictures: tuple[Picture, ...]
    step: str = ""


@dataclass(frozen=True, slots=True)
class LaidPage:
    """A page: its number, its content box in mm, and the share of that height to the end of the last that is seen."""

    number: int
    x: float
    y: float
    w: float
    h: float
    full: float


class Missed(NamedTuple):
    """A box that was to stand beside the one before it, and went under it for want of so many mm."""

    page: int
    by: float


@dataclass(frozen=True, slots=True)
class LaidOut:
    """A document; its words in the order in which they are read."""

    pages: tuple[LaidPage, ...]
    words: tuple[Words, ...]
    pictures: tuple[Picture, ...]
    marked: tuple[Marked, ...]
    lines: tuple[Line, ...]
    missed: tuple[Missed, ...] = ()
    drawings: tuple[Drawing, ...] = ()
