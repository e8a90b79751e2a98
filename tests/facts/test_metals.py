"""Metals, torch and small parts against what is printed elsewhere."""

from __future__ import annotations

import math

import pytest

from sheetgen.facts import fit, metals, times

# Defining fixed points of the International Temperature Scale of 1990, table 1, °C: what freezes melts.
ITS_90 = {
    "tin": 231.928, "zinc": 419.527, "aluminium": 660.323, "fine silver": 961.78, "gold": 1064.18, "copper": 1084.62,
}  # fmt: skip
# Pages of alloy data, °F: C52400 (10 % tin) and C26000 (30 % zinc), where melting begins.
FAHRENHEIT = {"bronze": 1550, "brass": 1680}
# Silver-copper phase diagram of an agency of measurement: the eutectic, °C, and the most copper in silver there, %.
EUTECTIC, MOST_COPPER = 779.1, 8.27
# 2-euro coin, summary of the European regulation, and the cylinder of 16 CFR 1501 (1 1/4 in), mm.
COIN, CYLINDER = 25.75, 31.75


@pytest.mark.parametrize("metal", ITS_90)
def test_a_pure_metal_begins_to_melt_at_its_fixed_point_rounded_down(metal: str) -> None:
    assert float(metals.METALS[metal].solidus) == math.floor(ITS_90[metal])


@pytest.mark.parametrize("metal", FAHRENHEIT)
def test_an_alloy_begins_to_melt_where_its_page_has_it_rounded_down(metal: str) -> None:
    assert float(metals.METALS[metal].solidus) == math.floor((FAHRENHEIT[metal] - 32) / 1.8)


@pytest.mark.parametrize(("metal", "low", "high"), [
    # Pages of alloy data: C74500 970 °C; C73100 1000 °C; C77000 1000 °C.
    ("nickel silver", 970, 1000),
    # A trade association's table, quoting a handbook: type 316 from 1375 °C, 304 from 1400 °C.
    ("stainless steel", 1375, 1400),
    # Two pages on steel: from 1370 °C, and from 1425 °C.
    ("steel", 1370, 1425),
    # A supplier's guide: sterling from 805 °C; a supplier's data sheet: from 788 °C.
    ("sterling", 788, 805),
    # A page of melting points of pure metals: 327 °C; the handbook's is 327.5 °C.
    ("lead", 327, 327.5),
])  # fmt: skip
def test_a_metal_begins_to_melt_within_what_pages_print(metal: str, low: float, high: float) -> None:
    assert low <= metals.METALS[metal].solidus <= high


def test_silver_and_copper_melt_at_the_eutectic_and_below_either() -> None:
    assert float(metals.EUTECTIC) == math.floor(EUTECTIC)
    assert all(
        metals.METALS[one].solidus > metals.EUTECTIC for one in ("fine silver", "sterling", "silver 960", "copper")
    )


@pytest.mark.parametrize(("metal", "copper"), [("sterling", 7.5), ("silver 960", 4.0)])
def test_silver_with_copper_begins_to_melt_near_the_line_from_silver_to_the_eutectic(metal: str, copper: float) -> None:
    # The solidus of a phase diagram is nearly straight on the side of silver.
    line = ITS_90["fine silver"] - (ITS_90["fine silver"] - EUTECTIC) * copper / MOST_COPPER
    assert line == pytest.approx(metals.METALS[metal].solidus, abs=10)


def test_the_soft_metals_are_those_that_melt_as_soft_solder_does() -> None:
    # A welding society's glossary: a soft solder flows at 450 °C or less. Tin, lead and zinc do.
    for metal, facts in metals.METALS.items():
        assert (facts.family == "soft") == (facts.solidus < metals.LOW_SOLDER), metal


def test_a_torch_fires_what_a_2_euro_coin_covers_and_25_g() -> None:
    # Two teachers' pages on torch firing: up to 25 g, and no larger than a 2-euro coin.
    assert float(times.TORCH_ACROSS) == COIN
    assert float(times.TORCH_MASS) == 25


def test_what_goes_into_the_cylinder_of_the_toy_rules_can_be_swallowed() -> None:
    assert pytest.approx(CYLINDER) == fit.SWALLOWED
