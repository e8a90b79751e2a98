"""Rectangles on pages, slabs or shelves: none overlaps another or leaves its page; as few as a short search finds.

A page is filled from its upper edge: each piece goes where it lies highest, then furthest left. The order decides how
full that gets, so several orders are tried and the best is bettered by exchanges, always the same ones.
"""

from __future__ import annotations

import functools
import itertools
import math
import random
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

GRAIN = 1e-9
MOST_TRIALS = 400
MOST_WORK = 400_000  # trials × pieces², so that many pieces do not hold a page up
Sides = tuple[float, float]
Order = list[tuple[int, bool]]
"""Which piece comes next, and whether it is turned a quarter."""
Page = list[tuple[int, float, float]]
"""The pieces of a page, by their places in the order: x and y of the upper left corner."""


@dataclass(frozen=True, slots=True)
class Placed:
    """One piece on its page: its number, its upper left corner, its sides as they lie."""

    piece: int
    x: float
    y: float
    width: float
    height: float
    turned: bool = False


@functools.lru_cache(maxsize=4096)
def packed(
    pieces: tuple[Sides, ...], room: Sides, *, turn: bool = False, trials: int = 0
) -> tuple[tuple[Placed, ...], ...]:
    """As `pack`, once for equal pieces and rooms: versions and papers often share them."""
    return tuple(map(tuple, pack(pieces, room, turn=turn, trials=trials)))


SORTS: tuple[Callable[[Sides], float], ...] = (
    lambda s: -s[1], lambda s: -s[0] * s[1], lambda s: -s[0], lambda s: -max(s), lambda s: -sum(s), lambda _s: 0,
)  # fmt: skip


def pack(
    pieces: Sequence[Sides], room: Sides, *, turn: bool = False, tidy: bool = False, trials: int = MOST_TRIALS
) -> list[list[Placed]]:
    """Every piece placed, a list a page. Each piece must fit the room; `turn` allows a quarter turn.

    `tidy` keeps the rows of the first order unless another takes fewer pages; `trials` is how many exchanges are tried.
    """
    best = _best(pieces, room, turn=turn, tidy=tidy, trials=trials)
    sides = [pieces[i][::-1] if turned else pieces[i] for i, turned in best]
    return [
        [Placed(best[k][0], x, y, *sides[k], best[k][1]) for k, x, y in page] for page in _pages(tuple(sides), room)
    ]


def _best(pieces: Sequence[Sides], room: Sides, *, turn: bool, tidy: bool, trials: int) -> Order:
    """The best order that is found. Pieces of one size are laid alike, so an order of sizes is tried once."""
    known: dict[tuple[Sides, ...], tuple[float, ...]] = {}
    ways = [(one, one[::-1]) for one in pieces]

    def score(order: Order) -> tuple[float, ...]:
        sides = tuple([ways[i][turned] for i, turned in order])
        if (found := known.get(sides)) is None:
            found = known[sides] = _score(_pages(sides, room), sides, tidy=tidy)
        return found

    lying = [_first_turn(p, room, turn=turn) for p in pieces]
    both = [turn and _fits(p, room) and _fits(p[::-1], room) for p in pieces]
    orders = [[(i, lying[i]) for i in sorted(range(len(pieces)), key=lambda i: key(pieces[i]))] for key in SORTS]
    order = min(orders, key=score)
    least, any_turns = score(order), any(both)
    chance = random.Random(len(pieces))  # noqa: S311 - the same exchanges every time
    for _ in range(min(trials, MOST_WORK // max(1, len(pieces) ** 2)) if len(pieces) > 1 else 0):
        changed = _exchanged(order, both if any_turns else (), chance)
        other = score(changed)
        if other < least or (not tidy and other == least):
            least, order = other, changed
    return order


def _first_turn(piece: Sides, room: Sides, *, turn: bool) -> bool:
    if _fits(piece, room):
        return False
    if turn and _fits(piece[::-1], room):
        return True
    raise ValueError(f"a piece of {piece[0]:g} × {piece[1]:g} does not fit {room[0]:g} × {room[1]:g}")


def _fits(piece: Sides, room: Sides) -> bool:
    return piece[0] <= room[0] + GRAIN and piece[1] <= room[1] + GRAIN


def _exchanged(order: Order, both: Sequence[bool], chance: random.Random) -> Order:
    """Another order; `both` says which pieces may lie either way, and is empty where none may."""
    changed = order[:]
    a, b = chance.randrange(len(order)), chance.randrange(len(order))
    way = chance.random()
    if way < 0.4:  # noqa: PLR2004 - two exchanged
        changed[a], changed[b] = changed[b], changed[a]
    elif way < 0.8 or not both:  # noqa: PLR2004 - one moved
        changed.insert(b, changed.pop(a))
    else:  # one turned
        piece, turned = changed[a]
        changed[a] = (piece, turned != both[piece])
    return changed


def _score(pages: Sequence[Page], sides: Sequence[Sides], *, tidy: bool) -> tuple[float, ...]:
    """Fewest pages; and but for `tidy`, the last one emptiest, then the least paper in all."""
    if tidy:
        return (len(pages),)
    heights = [max([y + sides[k][1] for k, _, y in page]) for page in pages]
    return len(pages), round(heights[-1], 6) if heights else 0, round(sum(heights), 6)


def _pages(sides: Sequence[Sides], room: Sides) -> list[Page]:
    """Pieces that follow each other and are of one size go together: thousands of them are soon laid."""
    alike = ((one, [k for k, _ in each]) for one, each in itertools.groupby(enumerate(sides), key=lambda one: one[1]))
    left = [(one, each[::-1]) for one, each in alike]
    pages = []
    while left:
        pages.append(_one_page(left, room))
        left = [one for one in left if one[1]]
    return pages


def _one_page(left: Sequence[tuple[Sides, list[int]]], room: Sides) -> Page:
    """What goes on one page in this order; taken from the end of what is left of each size.

    The free edge is steps from left to right: where each begins, and how far down it lies. It only sinks, so where a
    piece has no room none of its size has any later.
    """
    begins, depths = [0.0], [0.0]
    page: Page = []
    full = set[Sides]()
    for size, pieces in left:
        while pieces and size not in full:
            at = _highest(begins, depths, size[0], room[0])
            if at is None or at[1] + size[1] > room[1] + GRAIN:
                full.add(size)
                continue
            page.append((pieces.pop(), begins[at[0]], at[1]))
            _cover(begins, depths, *at, size, room[0])
    return page


def _highest(begins: list[float], depths: list[float], width: float, room: float) -> tuple[int, float, int] | None:
    """Where a piece lies highest, then furthest left: its first step, how far down, and the first step behind it."""
    best: tuple[int, float, int] | None = None
    least, many = math.inf, len(begins)
    for k, x in enumerate(begins):
        if x + width > room + GRAIN:
            break
        end, y, behind = x + width - GRAIN, depths[k], k + 1
        while y < least and behind < many and begins[behind] < end:
            y = max(y, depths[behind])
            behind += 1
        if y < least:
            least, best = y - GRAIN, (k, y, behind)
    return best


def _cover(  # noqa: PLR0913, PLR0917 - the edge, and where on it which piece lies
    begins: list[float], depths: list[float], k: int, y: float, behind: int, size: Sides, room: float
) -> None:
    """Lay a piece from step `k` on up to the one `behind` it; steps of one depth are joined."""
    x = begins[k]
    end, depth = x + size[0], y + size[1]
    last = begins[behind] if behind < len(begins) else room
    steps = [(x, depth)]
    if last > end + GRAIN:
        steps.append((end, depths[behind - 1]))
    elif behind < len(begins):
        begins[behind] = max(end, last)
    first = k
    if k and abs(depths[k - 1] - depth) < GRAIN:
        first, steps[0] = k - 1, (begins[k - 1], depths[k - 1])
    depth = steps[0][1]
    if len(steps) > 1 and abs(steps[1][1] - depth) < GRAIN:
        steps.pop()
    while len(steps) == 1 and behind < len(begins) and abs(depths[behind] - depth) < GRAIN:
        behind += 1
    begins[first:behind], depths[first:behind] = [b for b, _ in steps], [d for _, d in steps]
