"""A formula of the trade: a text in letters with its source, worked and printed where it is called; or a numeric one.

A text is expanded where it is called, so that a pencil can follow. What no pencil works (an ellipse, a spiral, a table)
is a `numeric` function; with `units` it is known to arithmetic, prints by its name and says in words what it does.
"""

from __future__ import annotations

import functools
import inspect
import math
import re
from typing import TYPE_CHECKING, overload

from sheetgen.base.arithmetic import FORMULAS, RESERVED, read, read_condition
from sheetgen.base.interval import Interval, over
from sheetgen.base.reckoning import PI, compare
from sheetgen.base.tree import FUNCTIONS, SIGNS, Node, Wrong, named, number
from sheetgen.base.tree import function as register
from sheetgen.base.trouble import CannotBe

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

ALL: list[Formula] = []


class Formula:
    """A pure function of numbers with its statement, its validity and its source."""

    def __init__(  # noqa: PLR0913, PLR0917 - what a formula says of itself
        self,
        pure: Callable[..., float],
        name: str,
        about: str,
        says: str,
        source: str,
        valid: str,
        module: str,
        letters: tuple[str, ...],
    ) -> None:
        if not says.strip() or not source.strip():
            raise ValueError("a formula wants its statement and its source")
        self.pure, self.name, self.module = pure, name, module
        self.letters = letters
        self.about, self.says, self.source, self.valid = about, says, source, valid
        ALL.append(self)

    @property
    def call(self) -> str:
        """As arithmetic calls it: `wet(fired, s)`."""
        return f"{self.name}({', '.join(self.letters)})"

    @overload
    def __call__(self, *args: float) -> float: ...  # type: ignore[overload-overlap]  # an interval only from an interval
    @overload
    def __call__(self, *args: Interval | float) -> Interval: ...
    def __call__(self, *args: Interval | float) -> Interval | float:
        """A number from numbers; an interval as soon as one argument is one."""
        if any(isinstance(a, Interval) for a in args):
            return over(self.pure, *args)
        return self.pure(*args)


def formula(call: str, says: str, *, about: str, source: str, valid: str = "") -> Formula:
    """Declare a formula as a text in letters: `call` is `wet(fired, s)`, `says` what it comes to, `valid` a condition.

    Worked from Python it raises CannotBe where `valid` does not hold. TypeError for a text that cannot be read.
    """
    name, _, rest = call.partition("(")
    letters = [letter.strip() for letter in rest.rstrip(")").split(",")]
    if name in RESERVED or name in FUNCTIONS or name in FORMULAS:
        raise TypeError(f"a formula cannot be called '{name}'")
    try:
        tree, must = read(says), read_condition(valid) if valid else None
    except Wrong as wrong:
        raise TypeError(f"{call}: {wrong.message}\n    {says}\n    {' ' * wrong.at}{'^' * wrong.width}") from None
    if strangers := named(tree).union(named(must) if must else set()) - set(letters):
        raise TypeError(f"{call}: '{min(strangers)}' is none of its letters")

    def expanded(args: list[Node], at: int, width: int) -> Node:
        if len(args) != len(letters):
            raise Wrong(f"{name} wants {len(letters)} numbers", at, width, ", ".join(letters))
        return _put(tree, dict(zip(letters, args, strict=True)), at, width)

    def pure(*args: float) -> float:
        if len(args) != len(letters):
            raise TypeError(f"{call} takes {len(letters)} numbers")
        numbers = dict(zip(letters, map(float, args), strict=True))
        if must is not None and not (all(map(math.isfinite, numbers.values())) and _holds(must, numbers)):
            told = ", ".join(f"{letter} = {number(x)}" for letter, x in numbers.items())
            raise CannotBe(f"{name} cannot be worked from {told}", f"valid for {valid}")
        return _worked(tree, numbers)

    FORMULAS[name] = expanded
    module = _caller()
    return Formula(pure, name, about, says, source, valid, module, tuple(letters))


def numeric(says: str, *, source: str, valid: str = "", units: str = "") -> Callable[[Callable[..., float]], Formula]:
    """Declare a numeric function; with `units` (`mm, mm -> mm`) arithmetic knows it by its name.

    The function raises CannotBe where it does not hold.
    """

    def declare(pure: Callable[..., float]) -> Formula:
        about = re.sub(r"\s*CannotBe\b[^.]*\.", "", (pure.__doc__ or "").strip().splitlines()[0])  # a programmer's
        if units:
            register(pure.__name__, units, says, source=source)(pure)
        letters = tuple(inspect.signature(pure).parameters)
        found = Formula(pure, pure.__name__, about, says, source, valid, pure.__module__, letters)
        functools.update_wrapper(found, pure)
        return found

    return declare


def _caller() -> str:
    import sys  # noqa: PLC0415 - only to group the page of formulas by their files

    frame = sys._getframe(2)  # noqa: SLF001 - the module that declares
    return str(frame.f_globals.get("__name__", ""))


def _put(node: Node, letters: Mapping[str, Node], at: int, width: int) -> Node:
    if node.op == "name":
        return letters[node.it]
    return Node(node.op, tuple(_put(a, letters, at, width) for a in node.args), node.it, at, width)


def _worked(node: Node, letters: Mapping[str, float]) -> float:
    if node.op == "name":
        return letters[node.it]
    if node.op == "number":
        plain: float = node.it.usual
        return plain
    if node.op == "π":
        return PI
    if node.op == "if":
        return _worked(node.args[0 if _holds(node.args[1], letters) else 2], letters)
    return (FUNCTIONS[node.op].pure if node.op in FUNCTIONS else SIGNS[node.op])(
        *(_worked(a, letters) for a in node.args)
    )


def _holds(node: Node, letters: Mapping[str, float]) -> bool:
    if node.op == "and":
        return all(_holds(a, letters) for a in node.args)
    if node.op == "not":
        return not _holds(node.args[0], letters)
    a, b = (_worked(side, letters) for side in node.args)
    return compare(node.it, a, b)
