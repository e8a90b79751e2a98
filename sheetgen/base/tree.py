"""The tree of one expression: worked in every case, and printed with its numbers, so that the two cannot differ."""

from __future__ import annotations

import math
import operator
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from sheetgen.base.dimension import unit
from sheetgen.base.interval import ceil, floor

if TYPE_CHECKING:
    from collections.abc import Callable

    from sheetgen.base.dimension import Unit


class Wrong(ValueError):
    """A fault in an expression: what, at which character, and what would help. At −1 the whole of it is to blame."""

    def __init__(self, message: str, at: int = 0, width: int = 1, help: str = "") -> None:  # noqa: A002
        super().__init__(message)
        self.message, self.at, self.width, self.help = message, at, width, help


@dataclass(frozen=True, slots=True)
class Node:
    """One step: `op` on `args`; `it` is what the op itself holds; where it stands in the text."""

    op: str
    args: tuple[Node, ...] = ()
    it: Any = None
    at: int = 0
    width: int = 1


@dataclass(frozen=True, slots=True)
class Number:
    """A number as written, in `unit`: a plain one, or a range, which is known by the text that it stands `within`."""

    usual: float
    unit: Unit = ()
    low: float | None = None
    high: float | None = None
    within: str = ""


@dataclass(frozen=True, slots=True)
class Function:
    """What is truly numeric and prints by its name: `says` tells in words what it does; units of arguments and result.

    `pure` raises CannotBe where it does not hold.
    """

    name: str
    pure: Callable[..., float]
    takes: tuple[Unit, ...]
    gives: Unit
    says: str
    source: str


FUNCTIONS: dict[str, Function] = {}
"""Registered by the formulas' modules."""


def function(
    name: str, units: str, says: str, *, source: str
) -> Callable[[Callable[..., float]], Callable[..., float]]:
    """Register a numeric function: `units` as "mm, mm -> mm"."""

    def register(pure: Callable[..., float]) -> Callable[..., float]:
        takes, _, gives = units.partition("->")
        FUNCTIONS[name] = Function(
            name, pure, tuple(unit(u.strip()) for u in takes.split(",")), unit(gives.strip()), says, source
        )
        return pure

    return register


def _turned(x: float, step: float, turn: Callable[[float], int]) -> float:
    return turn(x / step) * step


def _root(x: float) -> float:
    if x < 0:
        raise ValueError("there is no root of a number below nothing")
    return math.sqrt(x)


def _log(x: float) -> float:
    if x <= 0:
        raise ValueError("there is no logarithm of nothing")
    return math.log(x)


SIGNS: dict[str, Callable[..., float]] = {
    "+": operator.add, "−": operator.sub, "×": operator.mul, "÷": operator.truediv, "neg": operator.neg,
    "²": lambda x: x * x, "√": _root, "sin": math.sin, "cos": math.cos, "asin": lambda x: math.asin(min(1.0, x)),
    "acos": lambda x: math.acos(min(1.0, x)), "atan": math.atan, "ln": _log, "min": min, "max": max,
    "up": lambda x, step=1: _turned(x, step, ceil), "down": lambda x, step=1: _turned(x, step, floor),
    "round": lambda x, step=1: _turned(x + step / 2, step, floor),
}  # fmt: skip
DECIDED = frozenset({"up", "down", "round"})  # a count is decided once, at the usual case; a size to a step is not
CHOOSERS = frozenset({"nearest", "atleast"})
CALLED = frozenset({*SIGNS, *CHOOSERS, "usual", "sum"} - set("+−×÷²") - {"neg"})


def number(x: float) -> str:
    """A number inside a working: enough figures that a pencil gets the printed value."""
    text = f"{x:.6g}" if abs(x) >= 1e-4 or not x else f"{x:.8f}"  # noqa: PLR2004 - no powers of ten in a working
    if "e" in text:
        text = f"{x:.0f}"
    return text.replace("-", "−")


_BINDS = {"+": 1, "−": 1, "×": 2, "÷": 2, "neg": 3}
_ATOM = 9


def printed(node: Node, leaf: Callable[[str], str]) -> str:  # noqa: PLR0911 - one a sort of node
    """A settled tree with its numbers in it; `leaf` prints a name."""
    op = node.op
    if op == "number":
        return number(node.it.usual)
    if op == "π":
        return "π"
    if op == "name":
        return leaf(node.it)
    if op == "value":
        return number(node.it.usual)
    if op == "usual":
        return printed(node.args[0], leaf)
    each = [printed(a, leaf) for a in node.args]
    inner = [_BINDS.get(_bare(a).op, _ATOM) for a in node.args]
    if op in "+−×÷":
        mine = _BINDS[op]
        left = inner[0] < mine or (inner[0] == _BINDS["neg"] and mine > 1)
        right = inner[1] < mine or inner[1] == _BINDS["neg"] or (inner[1] == mine and op in "−÷")
        a = f"({each[0]})" if left else each[0]
        b = f"({each[1]})" if right or each[1].startswith("−") else each[1]
        return f"{a} {op} {b}"
    if op == "²":
        return f"({each[0]})²" if inner[0] < _ATOM or each[0].startswith("−") else f"{each[0]}²"
    if op == "neg":
        return f"−({each[0]})" if inner[0] < _ATOM or each[0].startswith("−") else f"−{each[0]}"
    if op in CHOOSERS:
        return f"{op}({each[0]}, {', '.join(number(size) for size in node.it.shown)})"
    return f"{op}({', '.join(each)})"


def _bare(node: Node) -> Node:
    while node.op == "usual":
        node = node.args[0]
    return node


def named(node: Node) -> set[str]:
    """Every name that a tree asks for."""
    found = {node.it} if node.op == "name" else set()
    return found.union(*[named(a) for a in node.args])


MOST_STEPS = 2000


def not_too_much(node: Node) -> None:
    """Formulas inside formulas grow fast where a letter stands twice: Wrong for more steps than a sheet can print."""
    sizes: dict[int, int] = {}

    def size(one: Node) -> int:  # what is shared is looked at once
        if id(one) not in sizes:
            sizes[id(one)] = 1 + sum(size(a) for a in one.args)
        return sizes[id(one)]

    if size(node) > MOST_STEPS:
        raise Wrong("this comes to too many steps", node.at, node.width, "give a part of it a name of its own")
