"""Whether words of a laid-out page can be seen: their size, ink and ground, what cuts them off, what lies over them."""

from __future__ import annotations

import functools
from typing import TYPE_CHECKING, NamedTuple

from sheetgen.facts.paper import INK_CONTRAST, TYPE_LEAST
from sheetgen.formulas.contrast import contrast_of_luminances, luminance

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

Rect = tuple[float, float, float, float]
"""Left, top, right and bottom, px."""
Colour = tuple[float, float, float, float]
"""Red, green, blue and how much it covers, each 0 to 1."""
Key = tuple[tuple[int, int, int], ...]
"""When something is painted: of two, the greater lies above."""

WHITE: Colour = (1, 1, 1, 1)
BLACK: Colour = (0, 0, 0, 1)
EVERYWHERE: Rect = (-1e9, -1e9, 1e9, 1e9)
SLACK = 0.08  # of the size of the type: how far letters may go under an edge before anybody sees it
EATEN = 0.2  # of the size of the type: how much of a letter must be gone before it reads as another
CLOSED_UP = -0.1  # of the size of the type: closer than this, letters and words run together

HIDDEN, CLEAR, PALE = "it is hidden", "it is transparent", "its ink is that of what it lies on"
SMALL, MIRRORED, CLOSE = f"it is set smaller than {TYPE_LEAST:g} pt", "it is mirrored", "its letters run together"
OUTSIDE, CUT, COVERED = "it lies outside of the page", "it is cut off", "something lies over it"


class Fill(NamedTuple):
    """A ground that is painted. No colours: a picture, which covers, and is no ground that is known."""

    key: Key
    rect: Rect
    colours: tuple[Colour, ...]
    square: bool = True  # its edges are those of the page; of another only its hull is known


class Ink(NamedTuple):
    """Words to be looked at: what their letters stand on, from the base line to the height of the capitals."""

    key: Key
    core: Rect
    size: float
    colour: Colour


def meet(one: Rect, other: Rect) -> Rect:
    """What two rectangles share; empty where right is left of left."""
    return max(one[0], other[0]), max(one[1], other[1]), min(one[2], other[2]), min(one[3], other[3])


def within(core: Rect, frame: Rect, size: float) -> bool:
    """Whether letters lie inside of a frame, but for what nobody sees."""
    slack = SLACK * size
    return (
        core[0] >= frame[0] - slack
        and core[1] >= frame[1] - slack
        and core[2] <= frame[2] + slack
        and core[3] <= frame[3] + slack
    )


def unseen_on(ink: Ink, fills: Sequence[Fill]) -> str:
    """Why words are not seen among what is painted on their page; empty where they are seen."""
    near = sorted((fill for fill in fills if _touches(fill.rect, ink)), key=lambda fill: fill.key)
    if not near and ink.colour == BLACK:
        return ""
    under = [fill for fill in near if fill.key < ink.key and fill.colours]
    over = [fill for fill in near if fill.key > ink.key and fill.square]
    if any(not fill.colours for fill in over):
        return COVERED
    for at in _spots(ink, [*under, *over]):
        grounds = {WHITE}
        for colours in _at(at, under):
            grounds = {_laid(colour, ground) for colour in colours for ground in grounds}
        pairs = {(_laid(ink.colour, ground), ground) for ground in grounds}
        if any(_contrast(*pair) < INK_CONTRAST for pair in pairs):
            return PALE
        for colours in _at(at, over):
            pairs = {(_laid(colour, one), _laid(colour, ground)) for colour in colours for one, ground in pairs}
        if any(_contrast(*pair) < INK_CONTRAST for pair in pairs):
            return COVERED
    return ""


def _at(at: float, fills: Iterable[Fill]) -> Iterator[set[Colour]]:
    """The colours of each ground that lies there."""
    return (set(fill.colours) for fill in fills if fill.rect[0] <= at <= fill.rect[2])


def _touches(rect: Rect, ink: Ink) -> bool:
    left, top, right, bottom = meet(rect, ink.core)
    eaten = EATEN * ink.size
    return right - left > eaten / 2 and bottom - top > eaten


def _spots(ink: Ink, fills: Sequence[Fill]) -> Iterator[float]:
    """Where along the words it is looked at: between any two edges of what lies under or over them."""
    left, _, right, _ = ink.core
    edges = sorted({left, right, *(x for fill in fills for x in (fill.rect[0], fill.rect[2]) if left < x < right)})
    for a, b in zip(edges, edges[1:], strict=False):
        if b - a > EATEN * ink.size / 2:
            yield (a + b) / 2


def _laid(colour: Colour, ground: Colour) -> Colour:
    """A colour on a ground that covers."""
    share = colour[3]
    red, green, blue = (
        min(1, one * share + other * (1 - share)) for one, other in zip(colour[:3], ground[:3], strict=True)
    )
    return red, green, blue, 1


@functools.lru_cache(256)
def _contrast(one: Colour, other: Colour) -> float:
    return contrast_of_luminances.pure(luminance.pure(*one[:3]), luminance.pure(*other[:3]))
