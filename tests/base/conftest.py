"""Surroundings for expressions: a few names, the trade's gauges, and a drawer of tools."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import pytest

from sheetgen.base.binding import Named
from sheetgen.base.cases import Cases, uncertain
from sheetgen.base.dimension import unit
from sheetgen.base.interval import Interval, interval
from sheetgen.base.measure import Measure, measure
from sheetgen.base.spelling import plain
from sheetgen.base.tree import Wrong
from sheetgen.formulas import known

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Sequence

assert known.FORMULAS  # trade sizes and formulas are registered by their modules

# A name, its unit, its value; the last two are one input, asked for twice.
KNOWN: dict[str, tuple[str, Interval, str]] = {
    "height": ("mm", interval(22.0), "height"),
    "top_hole": ("mm", interval(3.0), "top_hole"),
    "body.clay_mass": ("g", interval(4.0), "mass"),
    "body.density": ("g/cm³", interval(7.0), "density"),
    "stone.weight": ("ct", interval(5.0), "weight"),
    "pieces": ("", interval(12.0), "pieces"),
    "loss": ("", Interval(0.09, 0.08, 0.10), "shrinkage"),
    "shrinkage": ("", Interval(0.09, 0.08, 0.10), "shrinkage"),
    "bore": ("mm", Interval(8.0, 7.5, 9.0), "bore"),
}
WORDS = {"shape": ("disc", "long_oval")}
OPTIONAL = {"hole": unit("mm")}
DRAWER = {"drill": (2.0, 2.3, 3.0), "former": ()}


class Names:
    """A handful of names, in place of a project. `given` are the optional ones that are there, mm."""

    key = "here"

    def __init__(self, given: dict[str, float] | None = None) -> None:
        self.there = given or {}

    def named(self, path: str) -> Named:
        if path in WORDS:
            return Named(None, "words", WORDS[path])
        if path in OPTIONAL:
            return Named(OPTIONAL[path], optional=True)
        if path not in KNOWN:
            raise Wrong(f"'{path}' is not known", -1, 1, "")
        return Named(unit(KNOWN[path][0]))

    def same(self, path: str, word: str) -> None:
        if word not in WORDS[path]:
            raise Wrong(f"'{path}' is never '{word}'", -1, 1)

    def each(self, path: str) -> Names:
        raise Wrong(f"'{path}' is no list", -1, 1)

    def tools(self) -> Iterable[str]:
        return DRAWER

    def cases(self, path: str) -> Cases:
        if path in self.there:
            return Cases(self.there[path])
        return uncertain(KNOWN[path][2], KNOWN[path][1])

    def given(self, path: str) -> bool:
        return path in KNOWN or path in self.there

    def true(self, path: str) -> bool:
        return self.given(path)

    def word(self, path: str) -> str:
        return WORDS[path][0]

    def tree(self, path: str) -> None:
        assert plain(path) == path

    def owned(self, kind: str) -> Sequence[float]:
        return DRAWER[kind]

    def series(self, path: str) -> Sequence[Names]:
        raise Wrong(f"'{path}' is no list", -1, 1)

    def told(self, mm: float) -> str:
        return f"{mm:g} mm"


@pytest.fixture(scope="session")
def work() -> Callable[[str], Measure]:
    """An expression to what it comes to."""
    return lambda text: measure(text, Names())


@pytest.fixture(scope="session")
def names() -> type[Names]:
    """Surroundings, with what may be left out given or not."""
    return Names


@pytest.fixture(scope="session")
def wrong(work: Any) -> Callable[[str], Wrong]:
    """An expression that must not work, to what is said of it."""

    def what(text: str) -> Wrong:
        with pytest.raises(Wrong) as caught:
            work(text)
        return caught.value

    return what
