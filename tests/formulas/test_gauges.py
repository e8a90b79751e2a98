"""Wire gauges, cards, and the mass of wire."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import pytest
from fluids.piping import t_from_gauge
from hypothesis import given
from hypothesis import strategies as st

from sheetgen.base.trouble import CannotBe
from sheetgen.facts.gauges import SWG_INCHES
from sheetgen.formulas.gauges import awg, swg, wire_grams

if TYPE_CHECKING:
    from collections.abc import Callable

# trade table: AWG, mm, copper, fine silver, sterling, brass, phosphor bronze, 14 K yellow (g/m); independent script
WIRE_TABLE = """
10 2.5882 47.140 55.190 54.506 44.878 46.614 68.763
12 2.0525 29.647 34.709 34.279 28.224 29.316 43.246
14 1.6277 18.645 21.829 21.558 17.750 18.437 27.197
16 1.2908 11.726 13.728 13.558 11.163 11.595 17.105
18 1.0237 7.374 8.634 8.527 7.021 7.292 10.757
20 0.8118 4.638 5.430 5.363 4.415 4.586 6.765
22 0.6438 2.917 3.415 3.373 2.777 2.884 4.255
24 0.5106 1.834 2.148 2.121 1.746 1.814 2.676
26 0.4049 1.154 1.351 1.334 1.098 1.141 1.683
28 0.3211 0.726 0.849 0.839 0.691 0.717 1.058
30 0.2546 0.456 0.534 0.528 0.434 0.451 0.666
"""


@pytest.mark.parametrize(
    ("gauge", "d"),
    [
        (10, 2.5881867),
        (16, 1.2908459),
        (18, 1.0236873),
        (20, 0.81182097),
        (22, 0.6438033),
        (24, 0.51055923),
        (28, 0.32109385),
        (30, 0.254639),
    ],
)
def test_american_gauges_are_those_of_gnu_units(gauge: int, d: float) -> None:
    # ★ GNU Units 2.22
    assert awg(gauge) == pytest.approx(d, abs=1e-6)


@pytest.mark.parametrize("gauge", [-3, -1, 0, 1, 16, 24, 36, 40])
def test_american_gauges_agree_with_the_program_units(gauge: int, gnu_units: Callable[[str, str], float]) -> None:
    # the program GNU Units, asked here
    assert awg(gauge) == pytest.approx(gnu_units(f"wiregauge({gauge})", "mm"), abs=1e-9)


def test_american_36_is_five_thousandths_and_0000_is_0_46_inch() -> None:
    # ASTM B258 as quoted in GNU Units
    assert awg(36) / 25.4 == pytest.approx(0.005, abs=1e-12)
    assert awg(-3) / 25.4 == pytest.approx(0.46, abs=1e-12)


@pytest.mark.parametrize("gauge", range(41))
def test_american_gauges_agree_with_the_handbook_table(gauge: int) -> None:
    # fluids 1.3.1, after Machinery's Handbook: worst difference 0.0000466 in
    assert awg(gauge) == pytest.approx(t_from_gauge(gauge, SI=True, schedule="AWG") * 1000, abs=0.00006 * 25.4)


@pytest.mark.parametrize(
    ("gauge", "pounds"),
    [(10, 31.43), (12, 19.77), (14, 12.43), (16, 7.818), (18, 4.917), (20, 3.092), (22, 1.945)],
)
def test_a_thousand_feet_of_copper_wire_weighs_what_the_textbook_prints(gauge: int, pounds: float) -> None:
    # ★ Lessons in Electric Circuits, vol. 5, copper wire gage table
    mass = wire_grams(awg(gauge), 1000 * 304.8, 8.89)
    assert mass / 453.59237 == pytest.approx(pounds, rel=0.0005)


@pytest.mark.parametrize(
    ("gauge", "inch"),
    [
        (10, 0.128),
        (14, 0.080),
        (16, 0.064),
        (18, 0.048),
        (20, 0.036),
        (22, 0.028),
        (24, 0.022),
        (26, 0.018),
        (28, 0.0148),
        (30, 0.0124),
    ],
)
def test_british_gauges_are_those_of_the_standard(gauge: int, inch: float) -> None:
    # fluids and GNU Units agree; 28 by GNU Units and BS 3737
    assert swg(gauge) / 25.4 == pytest.approx(inch, abs=1e-9)


def test_every_british_gauge_agrees_with_the_program_units(gnu_units: Callable[[str, str], float]) -> None:
    # the program GNU Units, asked here
    for gauge in SWG_INCHES:
        assert swg(gauge) == pytest.approx(gnu_units(f"brwiregauge({gauge})", "mm"), abs=1e-6)


def test_british_18_is_two_fifths_more_metal_than_american_18() -> None:
    # independent script, section 5: 1.219 against 1.024 mm
    assert swg(18) == pytest.approx(1.219, abs=0.0005)
    assert (swg(18) / awg(18)) ** 2 == pytest.approx(1.42, abs=0.005)


@given(st.floats(0.1, 5), st.floats(1, 20))
def test_wire_weighs_what_a_cylinder_of_it_weighs(d: float, density: float) -> None:
    cubic_centimetres = math.pi * (d / 20) ** 2 * 100
    assert wire_grams(d, 1000, density) == pytest.approx(density * cubic_centimetres)


@pytest.mark.parametrize(("gauge", "near"), [(60, "40"), (17.4, "17"), (-2, "0"), (float("inf"), "SWG")])
def test_a_british_gauge_that_is_not_in_the_table_is_told_the_nearest(gauge: float, near: str) -> None:
    with pytest.raises(CannotBe) as refused:
        swg(gauge)
    assert near in refused.value.help


@pytest.mark.parametrize(("gauge", "near"), [(60, "40"), (-4, "0000"), (float("nan"), "40")])
def test_an_american_gauge_off_the_scale_is_told_the_nearest(gauge: float, near: str) -> None:
    with pytest.raises(CannotBe) as refused:
        awg(gauge)
    assert near in refused.value.help


@pytest.mark.parametrize(
    ("gauge", "copper", "sterling"),
    [(10, 74.385, 86.008), (16, 18.596, 21.502), (20, 5.884, 6.803), (28, 0.994, 1.150)],
)
def test_a_metre_of_british_gauge_wire_weighs_what_the_table_says(gauge: int, copper: float, sterling: float) -> None:
    # independent script, second table of section 5
    assert wire_grams(swg(gauge), 1000, 8.96) == pytest.approx(copper, abs=0.0006)
    assert wire_grams(swg(gauge), 1000, 10.36) == pytest.approx(sterling, abs=0.0006)


@pytest.mark.parametrize("row", WIRE_TABLE.strip().split("\n"))
def test_a_metre_of_wire_weighs_what_the_table_says(row: str) -> None:
    # independent script, wire table of section 5: copper, fine silver, sterling, brass, phosphor bronze, 14 K gold
    gauge, d, *masses = row.split(" ")
    assert awg(int(gauge)) == pytest.approx(float(d), abs=0.00006)
    for density, mass in zip((8.96, 10.49, 10.36, 8.53, 8.86, 13.07), masses, strict=True):
        assert wire_grams(awg(int(gauge)), 1000, density) == pytest.approx(float(mass), abs=0.0006)
