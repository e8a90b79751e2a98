"""Wet and fired sizes, and what firing leaves of mass and volume."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.rings import us_diameter
from sheetgen.formulas.shrinkage import (
    compactness,
    fired_density,
    fired_mass,
    fired_size,
    relative_density,
    shrinkage,
    two_stage,
    volume_ratio,
    wet_mass,
    wet_size,
)

shares = st.floats(0, 0.9)
sizes = st.floats(0.1, 1000)


@given(sizes, shares)
def test_what_is_cut_wet_fires_to_the_size_asked_for(size: float, s: float) -> None:
    assert wet_size(size, s) * (1 - s) == pytest.approx(size)
    assert fired_size(wet_size(size, s), s) == pytest.approx(size)


@given(sizes, st.floats(0.001, 0.9))
def test_a_test_strip_tells_the_shrinkage_it_was_cut_for(size: float, s: float) -> None:
    assert shrinkage(wet_size(size, s), size) == pytest.approx(s)


def test_a_ring_made_at_us_10_and_fired_to_us_7_shrank_by_12_3_percent() -> None:
    # teacher's blog on sterling-clay tests; sizes by Wikipedia, Ring size
    assert shrinkage(us_diameter(10), us_diameter(7)) == pytest.approx(0.1234, abs=0.0005)


@pytest.mark.parametrize(("s", "left"), [(0.09, 0.75357), (0.15, 0.61412), (0.28, 0.37325)])
def test_volume_falls_by_the_cube(s: float, left: float) -> None:
    # independent script, row C1.6
    assert volume_ratio(s, s) == pytest.approx(left, abs=1e-5)


def test_silver_sintered_to_10_22_is_97_4_percent_solid() -> None:
    # Journal of Metals, Materials and Minerals 20(1); its printed 67.41 % is a misprint
    assert compactness(10.22, 10.49) * 100 == pytest.approx(97.43, abs=0.05)


def test_a_clay_of_7_0_with_92_percent_metal_fires_to_8_5_at_9_percent() -> None:
    # independent script, row C1.9
    assert fired_density(7.0, 0.92, 0.09, 0.09) == pytest.approx(8.546, abs=0.001)


def test_mass_falls_by_water_and_binder_only() -> None:
    # conservation of mass
    assert fired_mass(25, 0.92) == pytest.approx(23.0)
    assert wet_mass(23, 0.92) == pytest.approx(25.0)


def test_a_clay_that_would_fire_denser_than_silver_is_refused() -> None:
    # independent script: 6.0 × 0.80 ÷ 0.72³ = 12.86 g/cm³
    with pytest.raises(CannotBe, match=r"denser .* than solid metal"):
        relative_density(6.0, 0.80, 0.28, 0.28, 10.49)


@pytest.mark.parametrize("s", [-0.01, 1.0, 1.5, float("nan"), float("inf")])
def test_a_shrinkage_below_nothing_or_of_everything_is_refused(s: float) -> None:
    with pytest.raises(CannotBe, match="wet cannot be worked from fired = 10") as refused:
        wet_size(10, s)
    assert refused.value.help == "valid for 0 ≤ s and s < 1 and fired ≥ 0"


def test_a_strip_that_grew_in_the_fire_was_measured_the_wrong_way_round() -> None:
    with pytest.raises(CannotBe, match="longer than the wet one"):
        shrinkage(90, 100)


def test_what_shrinks_in_drying_and_then_in_the_fire_is_one_shrinkage_on_the_wet_size() -> None:
    # independent script, row C1.10: 1.5 % in drying, then 12 or 16 % in the fire
    assert two_stage(0.015, 0.12) == pytest.approx(0.1332, abs=1e-6)
    assert two_stage(0.015, 0.16) == pytest.approx(0.1726, abs=1e-6)


@given(st.floats(1, 200), st.floats(0, 0.3), st.floats(0, 0.5))
def test_a_strip_measured_wet_dry_and_fired_shrinks_in_two_steps_as_in_one(wet: float, dry: float, fire: float) -> None:
    measured = wet - dry * wet  # dry
    measured -= fire * measured  # fired
    assert shrinkage(wet, measured) == pytest.approx(two_stage(dry, fire), abs=1e-9)
