"""The `d` of a path and the `points` of a polygon, held against their grammar: how many points, how far they reach."""

from __future__ import annotations

import functools
import re
from typing import NamedTuple

from sheetgen.base.trouble import CannotBe
from sheetgen.pictures.values import LARGEST, NUMBER, SEPARATOR

LONGEST = 400_000  # characters of one path
TAKES = {"m": 2, "l": 2, "h": 1, "v": 1, "c": 6, "s": 4, "q": 4, "t": 2, "a": 7, "z": 0}
FLAGS = (3, 4)  # of an arc
NEXT = re.compile(f"({NUMBER.pattern}){SEPARATOR.pattern}")
SPACE = re.compile(r"[ \t\r\n]*")
Box = tuple[float, float, float, float]
Point = tuple[float, float]


class Reach(NamedTuple):
    """How many points, none where nothing is drawn, and a box that holds them and whatever a curve does between."""

    points: int
    box: Box


class _Reached:
    """A box that grows."""

    def __init__(self) -> None:
        self.xs: list[float] = []
        self.ys: list[float] = []

    def add(self, x: float, y: float, more: float = 0.0) -> None:
        if not abs(x) <= LARGEST or not abs(y) <= LARGEST:
            raise CannotBe("")
        self.xs += (x - more, x + more)
        self.ys += (y - more, y + more)

    def box(self) -> Box:
        return (min(self.xs), min(self.ys), max(self.xs), max(self.ys)) if self.xs else (0.0, 0.0, 0.0, 0.0)


@functools.lru_cache(256)
def of_points(text: str) -> Reach:
    """Of a polygon. Raises CannotBe."""
    text = _not_too_long(text)
    reached, given, at = _Reached(), [], 0
    while at < len(text):
        value, at = _number(text, at)
        given.append(value)
    for x, y in zip(given[::2], given[1::2], strict=False):
        reached.add(x, y)
    if len(given) % 2:
        raise CannotBe("")
    return Reach(len(given) // 2, reached.box())


@functools.lru_cache(256)
def of_path(text: str) -> Reach:
    """Of a path. Raises CannotBe."""
    text = _not_too_long(text)
    if text in {"", "none"}:
        return Reach(0, (0.0, 0.0, 0.0, 0.0))
    reached, at, count, moves, letter = _Reached(), 0, 0, 0, ""
    here = begun = pulled = (0.0, 0.0)
    while at < len(text):
        if text[at].lower() in TAKES:
            letter, at = text[at], SPACE.match(text, at + 1).end()  # type: ignore[union-attr]  # it matches nothing too
        elif letter in {"", "z", "Z"}:
            raise CannotBe("")
        if not count and letter not in {"m", "M"}:
            raise CannotBe("")
        given = []
        for i in range(TAKES[letter.lower()]):
            value, at = _flag(text, at) if letter in {"a", "A"} and i in FLAGS else _number(text, at)
            given.append(value)
        here, pulled = (begun, begun) if letter in {"z", "Z"} else _drawn(letter, given, (here, pulled), reached)
        count += 1 + len(given) // 2
        moves += 2 if letter in {"m", "M"} else 1 if letter in {"z", "Z"} else 0
        if letter in {"m", "M"}:
            begun, letter = here, "l" if letter == "m" else "L"
    return Reach(count if count > moves else 0, reached.box())


def _drawn(letter: str, given: list[float], before: tuple[Point, Point], reached: _Reached) -> tuple[Point, Point]:
    """Where a stroke ends, and what last pulled at it; what it may reach is noted. A curve stays within its points."""
    here, pulled = before
    x, y = here if letter.islower() else (0.0, 0.0)
    kind = letter.lower()
    swung = 0.0
    if kind in {"h", "v"}:
        points = [(x + given[0], here[1])] if kind == "h" else [(here[0], y + given[0])]
    elif kind == "a":
        points = [(x + given[5], y + given[6])]
        if points[0] == here or not given[0] or not given[1]:
            raise CannotBe("")  # an arc of no length or breadth: the printer divides by it
        swung = 2 * max(map(abs, (*given[:2], points[0][0] - here[0], points[0][1] - here[1])))
    else:
        points = [(x + a, y + b) for a, b in zip(given[::2], given[1::2], strict=True)]
    if kind in {"s", "t"}:
        points.insert(0, (2 * here[0] - pulled[0], 2 * here[1] - pulled[1]))
    for one in points:
        reached.add(*one, swung)
    return points[-1], points[-2] if len(points) > 1 else points[-1]


def _not_too_long(text: str) -> str:
    if len(text) > LONGEST:
        raise CannotBe(f"has a line of {len(text)} characters", "simplify it, or save it as a PNG")
    return text.strip()


def _number(text: str, at: int) -> tuple[float, int]:
    found = NEXT.match(text, at)
    if not found:
        raise CannotBe("")
    return float(found[1]), found.end()


def _flag(text: str, at: int) -> tuple[float, int]:
    if text[at : at + 1] not in {"0", "1"}:
        raise CannotBe("")
    return float(text[at]), SEPARATOR.match(text, at + 1).end()  # type: ignore[union-attr]  # it matches nothing too
