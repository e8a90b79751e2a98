"""Whether words of a laid-out page can be seen: their size, ink and ground, what cuts them off, what lies over them."""

from __future__ import annotations

import functools
import math
from itertools import pairwise, product
from typing import TYPE_CHECKING, NamedTuple

from sheetgen.facts.paper import CONTRAST_TEXT, TYPE_LEAST
from sheetgen.formulas.contrast import contrast_of_luminances, luminance

if TYPE_CHECKING:
    from collections.abc import Container, Iterable, Iterator, Mapping, Sequence

Rect = tuple[float, float, float, float]
"""Left, top, right and bottom, px."""
Colour = tuple[float, float, float, float]
"""Red, green, blue and how much it covers, each 0 to 1."""
Pair = tuple[Colour, Colour]
Key = tuple[tuple[int, int, int], ...]
"""When something is painted: of two, the greater lies above."""

WHITE: Colour = (1, 1, 1, 1)
BLACK: Colour = (0, 0, 0, 1)
EVERYWHERE: Rect = (-1e9, -1e9, 1e9, 1e9)
SLACK = 0.08  # of the size of the type: how far letters may go under an edge before anybody sees it
EATEN = 0.1  # of the size of the type: how much of a letter must be gone before it reads as another
CLOSED_UP = -0.1  # of the size of the type: closer than this, letters and words run together
APART = 0.5  # of the size of the type: with more between its letters, nobody reads a word
LINE = 0.15  # of the size of the type: a line along words that is thicker covers them
TOUCHES = 0.12  # of the size of the type: so near to a number a line reads as a digit of it
DARK = 2  # the contrast on white from which a line is seen as one
RAISED = 0.6  # of the size of the type: what a face makes small, above or under the line

HIDDEN, CLEAR, PICTURED = "it is hidden", "it is transparent", "it lies on a picture"
PALE = "its ink is too like what it lies on"
SMALL, MIRRORED, CLOSE = f"it is set smaller than {TYPE_LEAST:g} pt", "it is mirrored", "its letters run together"
OUTSIDE, AWAY, CUT = "it lies outside of the page", "it is cut away", "it is cut off"
COVERED = "something lies over it"
STRUCK, WIDE, BACKWARDS = "it is struck out", "its letters stand apart", "it runs from right to left"
FORMED = "a feature of the face gives it other forms"
TANGLED = "other words lie on it"
ON_ITS_HEAD = "it stands on its head"
BESIDE_IT = "a line or a picture stands against it, as a digit would"


Faded = tuple[tuple[int, float], ...]
"""The groups that something is painted in, from the outermost: which, and how much of it covers, 0 to 1."""


class Fill(NamedTuple):
    """A ground that is painted. No colours: a picture, which covers, and may be of any colour anywhere."""

    key: Key
    rect: Rect
    colours: tuple[Colour, ...]
    square: bool = True  # its edges are those of the page; of another only its hull is known
    groups: Faded = ()


class Ink(NamedTuple):
    """Words to be looked at: what their letters stand on, from the base line to the height of the capitals."""

    key: Key
    core: Rect
    size: float
    colour: Colour
    groups: Faded = ()
    least: float = float(CONTRAST_TEXT)  # the contrast that it wants


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


def cut(core: Rect, sheet: Rect, clip: Rect, size: float) -> str:
    """What the edges of a page, and of what cuts off, leave of letters; empty where that is all of them."""
    frame = meet(sheet, clip)
    if within(core, frame, size):
        return ""
    if _share_area(core, frame):
        return CUT
    return AWAY if _share_area(core, sheet) else OUTSIDE


def _share_area(one: Rect, other: Rect) -> bool:
    left, top, right, bottom = meet(one, other)
    return left < right and top < bottom


def unseen_on(ink: Ink, fills: Sequence[Fill]) -> str:
    """Why words are not seen among what is painted on their page; empty where they are seen."""
    _, top, _, bottom = ink.core  # most lie on other lines, and are passed over before anything is reckoned
    level = (fill for fill in fills if fill.rect[1] < bottom and fill.rect[3] > top)
    near = sorted((fill for fill in level if _touches(fill.rect, ink)), key=lambda fill: fill.key)
    if not near and ink.colour == BLACK and not ink.groups:
        return ""
    under = [fill for fill in near if fill.key < ink.key]
    over = [fill for fill in near if fill.key > ink.key and fill.square]
    if any(not fill.colours and _share(fill, ink) for fill in over):
        return COVERED
    for at in _spots(ink, [*under, *over]):
        ground = _at(at, under)
        bare, covered = _painted(ink, ground, _at(at, over))
        if any(_contrast(*pair) < ink.least for pair in bare):
            return PALE if all(fill.colours for fill in ground) else PICTURED
        if any(_contrast(*pair) < ink.least for pair in covered):
            return COVERED
    return ""


def tangled(inks: Mapping[int, Ink], asked: Container[int]) -> Iterator[int]:
    """Those that are asked for on whose letters others lie."""
    ordered = sorted(inks, key=lambda i: inks[i].core[1])
    for at, i in enumerate(ordered):
        for j in ordered[at + 1 :]:
            if inks[j].core[1] >= inks[i].core[3]:
                break
            if (i in asked or j in asked) and _on_each_other(inks[i], inks[j]):
                yield from (one for one in (i, j) if one in asked)


def like_a_digit(ink: Ink, fills: Iterable[Fill]) -> bool:
    """Whether a bar or picture, no larger than a digit, stands right before or after letters."""
    left, top, right, bottom = ink.core
    for fill in fills:
        begins, upper, ends, lower = fill.rect
        level = min(bottom, lower) - max(top, upper) > (bottom - top) / 2
        apart = max(begins - right, left - ends)
        if not level or not -EATEN <= apart / ink.size < TOUCHES or max(ends - begins, lower - upper) > 2 * ink.size:
            continue
        if not fill.colours or any(_contrast(_laid(one, WHITE), WHITE) >= DARK for one in fill.colours):
            return True
    return False


def _on_each_other(one: Ink, other: Ink) -> bool:
    left, top, right, bottom = meet(one.core, other.core)
    eaten = EATEN * max(one.size, other.size)
    return right - left > eaten and bottom - top > eaten


def _painted(ink: Ink, under: Sequence[Fill], over: Sequence[Fill]) -> tuple[set[Pair], set[Pair]]:
    """Ink and the ground beside it, without what lies over them and with it; several where a ground is a gradient.

    What is painted in a group is painted there first, and then all of it is faded.
    """
    grounds: list[set[Colour]] = []
    below = {WHITE}
    for level in range(len(ink.groups) + 1):
        for fill in under:
            if _level(fill, ink) == level:
                below = {_laid(colour, ground) for colour in _colours(fill, ink) for ground in below}
        grounds.append(below)
    bare = covered = {(_laid(ink.colour, ground), ground) for ground in below}
    for level in range(len(ink.groups), -1, -1):
        for fill in over:
            if _level(fill, ink) == level:
                covered = {(_laid(c, one), _laid(c, ground)) for c in _colours(fill, ink) for one, ground in covered}
        if level:
            share = ink.groups[level - 1][1]
            bare, covered = (
                {
                    (_laid((*one[:3], share), low), _laid((*ground[:3], share), low))
                    for one, ground in pairs
                    for low in grounds[level - 1]
                }
                for pairs in (bare, covered)
            )
    return bare, covered


def _level(fill: Fill, ink: Ink) -> int:
    """In how many groups both are."""
    return sum(one == other for one, other in zip(fill.groups, ink.groups, strict=False))


def _share(fill: Fill, ink: Ink) -> float:
    """How much of a fill covers in the groups that are its own."""
    return math.prod(share for _, share in fill.groups[_level(fill, ink) :])


def _colours(fill: Fill, ink: Ink) -> set[Colour]:
    """Its colours; of a picture those that are worst for any ink, and the ink's own."""
    share = _share(fill, ink)
    return {(red, green, blue, alpha * share) for red, green, blue, alpha in fill.colours or (WHITE, BLACK, ink.colour)}


def _at(spot: tuple[float, float], fills: Iterable[Fill]) -> list[Fill]:
    """What lies there."""
    x, y = spot
    return [fill for fill in fills if fill.rect[0] <= x <= fill.rect[2] and fill.rect[1] <= y <= fill.rect[3]]


def _touches(rect: Rect, ink: Ink) -> bool:
    left, top, right, bottom = meet(rect, ink.core)
    eaten = EATEN * ink.size
    return right - left > eaten and bottom - top > eaten


def _spots(ink: Ink, fills: Sequence[Fill]) -> Iterator[tuple[float, float]]:
    """Where the words are looked at: between any two edges of what lies under or over them."""
    across, down = (_between(ink, [fill.rect for fill in fills], way) for way in (0, 1))
    return product(across, down)


def _between(ink: Ink, rects: Iterable[Rect], way: int) -> list[float]:
    """The middles between all edges, across or down, that are far enough apart to take a letter's shape."""
    first, last = ink.core[way], ink.core[way + 2]
    edges = sorted({first, last, *(edge for rect in rects for edge in rect[way::2] if first < edge < last)})
    return [(a + b) / 2 for a, b in pairwise(edges) if b - a > EATEN * ink.size]


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
