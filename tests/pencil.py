"""A pencil: reckons a printed working by the signs that stand in it, and knows nothing of the program.

The signs are those that the sheet explains: + − × ÷ ( ) ² √( ) π, sin asin (radians), ln, down( ) up( ) to the whole
number below or above, nearest(a, b, …) the one of b, … nearest to a, atleast(a, b, …) the smallest of b, … not under
a, and the functions and units that a project's own figure may be written with.
"""

from __future__ import annotations

import math
import re

TOKEN = re.compile(r"\s*(?:(\d+(?:\.\d+)?)|([A-Za-zµ°%][A-Za-z³²/]*)|(.))")
UNITS = {"mm": 1, "cm": 10, "m": 1000, "g": 1, "min": 1, "h": 60, "card": 0.25, "cards": 0.25, "%": 0.01, "in": 25.4}
SMALL = 1e-9


def _stepped(turn: str, x: float, step: float = 1) -> float:
    n = x / step
    return step * {"up": math.ceil(n - 1e-6), "down": math.floor(n + 1e-6), "round": math.floor(n + 0.5)}[turn]


FUNCTIONS = {
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
