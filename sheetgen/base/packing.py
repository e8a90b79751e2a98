"""Rectangles on pages, slabs or shelves: none overlaps another or leaves its page; as few as a short search finds.

A page is filled from its upper edge: each piece goes where it lies highest, then furthest left. The order decides how
full that gets, so several orders are tried and the best is bettered by exchanges, always the same ones.
"""

from __future__ import annotations

import functools
import itertools
import math
import random
from collections import deque
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

GRAIN = 1e-9
MOST_TRIALS = 400
MOST_WORK = 400_000  # trials × pieces², so that many pieces do not hold a page up
Sides = tuple[float, float]
Step = tuple[float, float, float]
"""One step of the free edge of a page: x, y and width."""
Order = list[tuple[int, bool]]
"""Which piece comes next, and whether it is turned a quarter."""


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
    score: Callable[[list[list[Placed]]], tuple[float, ...]] = (lambda found: (len(found),)) if tidy else _score
    lying = [_first_turn(p, room, turn=turn) for p in pieces]
    both = [turn and _fits(p, room) and _fits(p[::-1], room) for p in pieces]
    orders = [[(i, lying[i]) for i in sorted(range(len(pieces)), key=lambda i: key(pieces[i]))] for key in SORTS]
    found = [(_pages(order, pieces, room), order) for order in orders]
    pages, order = min(found, key=lambda one: score(one[0]))
    chance = random.Random(len(pieces))  # noqa: S311 - the same exchanges every time
    for _ in range(min(trials, MOST_WORK // max(1, len(pieces) ** 2)) if len(pieces) > 1 else 0):
        changed = _exchanged(order, both, chance)
        other = _pages(changed, pieces, room)
        if score(other) < score(pages) or (not tidy and score(other) == score(pages)):
            pages, order = other, changed
    return pages


def _first_turn(piece: Sides, room: Sides, *, turn: bool) -> bool:
    if _fits(piece, room):
        return False
    if turn and _fits(piece[::-1], room):
        return True
    raise ValueError(f"a piece of {piece[0]:g} × {piece[1]:g} does not fit {room[0]:g} × {room[1]:g}")


def _fits(piece: Sides, room: Sides) -> bool:
    return piece[0] <= room[0] + GRAIN and piece[1] <= room[1] + GRAIN


def _exchanged(order: Order, both: Sequence[bool], chance: random.Random) -> Order:
    changed = order[:]
    a, b = chance.randrange(len(order)), chance.randrange(len(order))
    way = chance.random()
    if way < 0.4:  # noqa: PLR2004 - two exchanged
        changed[a], changed[b] = changed[b], changed[a]
    elif way < 0.8 or not any(both):  # noqa: PLR2004 - one moved
        changed.insert(b, changed.pop(a))
    else:  # one turned
        piece, turned = changed[a]
        changed[a] = (piece, turned != both[piece])
    return changed


def _score(pages: list[list[Placed]]) -> tuple[float, ...]:
    """Fewest pages, then the last one emptiest, then the least paper in all."""
    heights = [max((p.y + p.height for p in page), default=0.0) for page in pages]
    return len(pages), round(heights[-1], 6) if heights else 0, round(sum(heights), 6)


def _pages(order: Order, pieces: Sequence[Sides], room: Sides) -> list[list[Placed]]:
    """Pieces that follow each other and lie alike go together: thousands of one size are soon laid."""
    alike = itertools.groupby(order, key=lambda one: (pieces[one[0]], one[1]))
    left = [(sides[::-1] if turned else sides, turned, deque(i for i, _ in each)) for (sides, turned), each in alike]
    pages = []
    while left:
        pages.append(_one_page(left, room))
        left = [one for one in left if one[2]]
    return pages


def _one_page(left: Sequence[tuple[Sides, bool, deque[int]]], room: Sides) -> list[Placed]:
    """What goes on one page in this order; taken out of what is left.

    The free edge only sinks, so where a piece has no room none of its size has any later.
    """
    edge: list[Step] = [(0.0, 0.0, room[0])]
    page: list[Placed] = []
    full = set[Sides]()
    for sides, turned, pieces in left:
        width, height = sides
        while pieces and sides not in full:
            at = _highest(edge, width, room[0])
            if at is None or at[1] + height > room[1] + GRAIN:
                full.add(sides)
                continue
            page.append(Placed(pieces.popleft(), *at, width, height, turned))
            edge = _covered(edge, at[0], width, at[1] + height)
    return page


def _highest(edge: list[Step], width: float, room: float) -> tuple[float, float] | None:
    best: tuple[float, float] | None = None
    for k, (x, _, _) in enumerate(edge):
        if x + width > room + GRAIN:
            break
        y = 0.0
        for step in edge[k:]:
            if step[0] >= x + width - GRAIN:
                break
            y = max(y, step[1])
        if y < (best[1] if best else math.inf) - GRAIN:
            best = (x, y)
    return best


def _covered(edge: list[Step], x: float, width: float, y: float) -> list[Step]:
    """The free edge after a piece has been laid from x on; steps of one height are joined."""
    steps = [(x, y, width)]
    for sx, sy, wide in edge:
        if sx < x - GRAIN:
            steps.append((sx, sy, min(sx + wide, x) - sx))
        if sx + wide > x + width + GRAIN:
            begin = max(sx, x + width)
            steps.append((begin, sy, sx + wide - begin))
    joined: list[Step] = []
    for step in sorted(steps):
        if joined and abs(joined[-1][1] - step[1]) < GRAIN:
            last = joined[-1]
            joined[-1] = (last[0], last[1], last[2] + step[2])
        else:
            joined.append(step)
    return joined
