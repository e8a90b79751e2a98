"""Surroundings for expressions: a few names, the trade's gauges, and a currency."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import pytest

from sheetgen.base.arithmetic import Quantity, Wrong, read
from sheetgen.base.dimension import COUNT, LENGTH, MASS
from sheetgen.base.spread import Spread, spread
from sheetgen.formulas import scales

if TYPE_CHECKING:
    from collections.abc import Callable

KNOWN = {
    "height": Quantity(spread(22.0), LENGTH),
    "body.clay_mass": Quantity(spread(4.0), MASS),
    "pieces": Quantity(spread(12.0), COUNT),
    "shrinkage": Quantity(Spread(0.09, 0.08, 0.10), COUNT),
}


class Names:
    """A handful of names."""

    units = scales.units("EUR")

    def name(self, name: str) -> Quantity:
        if name not in KNOWN:
            raise Wrong(f"'{name}' is not known", -1, 1, "")
        return KNOWN[name]

    def scale(self, scale: str, text: str) -> Quantity:
        return scales.size(scale, text)


@pytest.fixture(scope="session")
def work() -> Callable[[str], Any]:
    """An expression to its quantity."""
    return lambda text: read(text).work(Names())


@pytest.fixture(scope="session")
def wrong(work: Any) -> Callable[[str], Wrong]:
    """An expression that must not work, to what is said of it."""

    def what(text: str) -> Wrong:
        with pytest.raises(Wrong) as caught:
            work(text)
        return caught.value

    return what
