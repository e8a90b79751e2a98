"""The demonstration's pure metals are as dense as a table from outside says."""

from __future__ import annotations

import re
from pathlib import Path

import periodictable
import pytest

from sheetgen.base.material import Clay, Sheet, Wire
from sheetgen.base.trouble import Troubles
from sheetgen.read.library import read_library

ROOT = Path(__file__).parents[2]
SILVER, COPPER = periodictable.Ag.density, periodictable.Cu.density  # periodictable 2.1.0, g/cm³


def test_fine_silver_and_copper_in_stock_are_as_dense_as_the_periodic_table_says() -> None:
    library = read_library(ROOT, Troubles())
    assert library
    items = library.stock.items.items()
    found = {name: item.density for name, item in items if isinstance(item, Sheet | Wire)}
    found |= {name: item.solid_density for name, item in items if isinstance(item, Clay) and item.solid_density}
    pure = {name: density for name, density in found.items() if re.search("copper|fine-silver|silver-low", name)}
    assert len(pure) >= 4
    for name, density in pure.items():
        assert density == pytest.approx(COPPER if "copper" in name else SILVER, rel=0.005), name
