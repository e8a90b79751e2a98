"""A measure by itself: in studio and stock files no names stand."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, NoReturn, Protocol

from sheetgen.base.arithmetic import read
from sheetgen.base.binding import Named, Scope, bind
from sheetgen.base.dimension import ANY, BARE, Dimension, dimension_of, ours
from sheetgen.base.interval import Interval
from sheetgen.base.reckoning import Source, reckon, settle
from sheetgen.base.tree import Wrong

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from sheetgen.base.cases import Cases
    from sheetgen.base.dimension import Unit
    from sheetgen.base.tree import Node


@dataclass(frozen=True, slots=True)
class Measure:
    """A number in ours (mm, g, min, °C, and their products), what it measures, and the unit that it is written in."""

    value: Interval
    dimension: Dimension
    unit: Unit = BARE


class Surroundings(Scope, Source, Protocol):
    """Names, and the numbers behind them."""


class _Nameless:
    """Surroundings without names."""

    key = ""

    def named(self, path: str) -> Named:
        raise Wrong(f"'{path}' is not a measure", -1, 1, "write a number with its unit, such as 38 mm")

    def same(self, path: str, word: str) -> None:
        raise Wrong(f"'{path}' is not a measure, and cannot be {word}", -1, 1)

    def each(self, path: str) -> NoReturn:
        raise Wrong(f"'{path}' is no list", -1, 1)

    def tools(self) -> Iterable[str]:
        return ()

    def cases(self, path: str) -> Cases:
        raise Wrong(f"'{path}' is not a measure", -1, 1)

    def given(self, path: str) -> bool:  # noqa: ARG002 - no names
        return False

    true = given

    def word(self, path: str) -> str:
        return path

    def tree(self, path: str) -> Node | None:  # noqa: ARG002 - no names
        return None

    def owned(self, kind: str) -> Sequence[float]:  # noqa: ARG002 - no names
        return ()

    def series(self, path: str) -> Sequence[Source]:  # noqa: ARG002 - no names
        return ()

    def told(self, mm: float) -> str:
        return f"{mm:g} mm"


_NAMELESS = _Nameless()


def measure(text: str, names: Surroundings = _NAMELESS) -> Measure:
    """What a text comes to. Raises Wrong with the character to blame."""
    try:
        tree, unit = bind(read(text), names)
        found = reckon(settle(tree, names), names).interval
    except ZeroDivisionError:
        raise Wrong("a division by zero", 0, len(text), "the divisor may not reach zero") from None
    except (ArithmeticError, ValueError) as fault:
        if isinstance(fault, Wrong):
            raise
        raise Wrong(str(fault), 0, len(text), getattr(fault, "help", "")) from None
    unit = BARE if unit == ANY else unit
    factor = ours(unit)
    value = Interval(*(x * factor for x in (found.usual, found.low, found.high))) if factor != 1 else found
    return Measure(value, dimension_of(unit), unit)
