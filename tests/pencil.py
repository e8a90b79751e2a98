"""A pencil: reckons a printed working by the signs that stand in it, and knows nothing of the program.

The signs are those that the sheet explains: + − × ÷ ( ) ² √( ) π, sin asin (radians), ln, down( ) up( ) to the whole
number below or above, nearest(a, b, …) the one of b, … nearest to a, atleast(a, b, …) the smallest of b, … not under
a, and the functions and units that a project's own figure may be written with.
"""

from __future__ import annotations

import math
import re
from itertools import pairwise
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable

TOKEN = re.compile(r"\s*(?:(\d+(?:\.\d+)?)|([A-Za-zµ°%][A-Za-z_³²/]*)|(.))")
UNITS = {"mm": 1, "cm": 10, "m": 1000, "g": 1, "min": 1, "h": 60, "card": 0.25, "cards": 0.25, "%": 0.01, "in": 25.4}
SMALL = 1e-9
# Wikipedia, Circle packing in a circle: the radius round so many circles of radius 1, as the table prints it.
BUNDLES = {1: 1, 2: 2, 3: 2.154701, 4: 2.414214, 5: 2.701302, 6: 3, 7: 3, 8: 3.304765, 9: 3.613126, 10: 3.813026,
           11: 3.923804, 13: 4.236068, 18: 4.863703, 19: 4.863703}  # fmt: skip


def _stepped(turn: str, x: float, step: float = 1) -> float:
    n = x / step
    return step * {"up": math.ceil(n - 1e-6), "down": math.floor(n + 1e-6), "round": math.floor(n + 0.5)}[turn]


def _walked(points: list[tuple[float, ...]]) -> float:
    """The length of a run of points."""
    return sum(math.dist(a, b) for a, b in pairwise(points))


def _ellipse(length: float, width: float, steps: int = 20_000) -> float:
    """An ellipse's perimeter, walked."""
    angles = [2 * math.pi * i / steps for i in range(steps + 1)]
    return _walked([(length / 2 * math.cos(a), width / 2 * math.sin(a)) for a in angles])


def _spiral(inside: float, wire: float, gap: float, turns: float, steps: int = 40_000) -> float:
    """A flat spiral along the middle of its wire, walked."""
    start = (inside + wire) / 2 if inside else 0.0
    shares = [turns * i / steps for i in range(steps + 1)]
    radii = [(start + (wire + gap) * share, 2 * math.pi * share) for share in shares]
    return _walked([(r * math.cos(a), r * math.sin(a)) for r, a in radii])


def _linked(inside: float, wire: float, together: float) -> float:
    """How far apart two groups of rings through each other can be pulled: tried out, circle against circle."""
    r, off = (inside + wire) / 2, (together - 1) * wire / 2

    def nearest(apart: float) -> float:
        a, b, wide = 0.0, 0.0, 1.4
        for _ in range(24):  # a grid over both circles' angles, drawn closer each time
            steps = [wide * i / 8 for i in range(-8, 9)]
            _, a, b = min((_between(r, off, apart, (a + i, b + j)), a + i, b + j) for i in steps for j in steps)
            wide /= 2.5
        return _between(r, off, apart, (a, b))

    low, high = r, 2 * r
    for _ in range(40):
        middle = (low + high) / 2
        low, high = (middle, high) if nearest(middle) > wire else (low, middle)
    return low


def _between(r: float, off: float, apart: float, at: tuple[float, float]) -> float:
    """From a point of a level circle to one of an upright circle, each as far off the line of centres."""
    level = (r * math.cos(at[0]), r * math.sin(at[0]), off)
    return math.dist(level, (apart - r * math.cos(at[1]), off, r * math.sin(at[1])))


FUNCTIONS: dict[str, Callable[..., float]] = {
    "sin": math.sin,
    "asin": math.asin,
    "cos": math.cos,
    "tan": math.tan,
    "ln": math.log,
    "√": math.sqrt,
    "down": lambda *a: _stepped("down", *a),
    "up": lambda *a: _stepped("up", *a),
    "round": lambda *a: _stepped("round", *a),
    "nearest": lambda a, *rest: min(rest, key=lambda b: abs(a - b)),
    "atleast": lambda a, *rest: min(b for b in rest if b >= a - 1e-4),
    "min": min,
    "max": max,
    "ellipse_perimeter": _ellipse,
    "spiral_wire": _spiral,
    "linked_pitch": _linked,
    "bundle_ratio": lambda n: BUNDLES[min(k for k in BUNDLES if k >= n)],
}


class _Pencil:
    def __init__(self, text: str) -> None:
        self.tokens = [next(t for t in m.groups() if t) for m in TOKEN.finditer(text) if m.group().strip()]
        self.at = 0

    def peek(self) -> str:
        return self.tokens[self.at] if self.at < len(self.tokens) else ""

    def take(self, wanted: str = "") -> str:
        token = self.peek()
        if not token or (wanted and token != wanted):
            raise ValueError(f"{wanted or 'something'} is wanted and not {token!r}")
        self.at += 1
        return token

    def sum(self) -> float:
        value = self.product()
        while self.peek() in {"+", "−", "-"}:
            value = value + self.product() if self.take() == "+" else value - self.product()
        return value

    def product(self) -> float:
        value = self.signed()
        while self.peek() in {"×", "÷"}:
            value = value * self.signed() if self.take() == "×" else value / self.signed()
        return value

    def signed(self) -> float:
        if self.peek() in {"−", "-"}:
            self.take()
            return -self.signed()
        return self.squared()

    def squared(self) -> float:
        value = self.atom()
        while self.peek() == "²" or self.peek() in UNITS:
            value = value**2 if self.peek() == "²" else value * UNITS[self.peek()]
            self.take()
        return value

    def atom(self) -> float:
        sign = self.take()
        if sign == "(":
            value = self.sum()
            self.take(")")
            return value
        if sign == "π":
            return math.pi
        if sign in FUNCTIONS:
            self.take("(")
            args = [self.sum()]
            while self.peek() == ",":
                self.take()
                args.append(self.sum())
            self.take(")")
            return float(FUNCTIONS[sign](*args))
        if not sign[0].isdigit():
            raise ValueError(f"{sign!r} is no number")
        return float(sign)


def reckon(working: str) -> float:
    """What a working comes to. Raises ValueError for one that a pencil cannot follow."""
    pencil = _Pencil(working)
    value = pencil.sum()
    if pencil.peek():
        raise ValueError(f"{working!r} goes on after {pencil.tokens[: pencil.at]}")
    return value
