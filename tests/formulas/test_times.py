"""Adhesive, drying, firing, temperatures and durations."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.adhesive import mix_volume, pot_factor, seat_volume
from sheetgen.formulas.drying import drying_range, drying_time, humidity_slowdown
from sheetgen.formulas.durations import iso_duration
from sheetgen.formulas.firing import cooling_constant, cooling_minutes, ramp_minutes


def test_clay_twice_as_thick_dries_in_two_to_four_times_as_long() -> None:
    # rate-limited drying and diffusion bound it
    dry = drying_range(60, 2, 1)
    assert (dry.low, dry.high) == pytest.approx((120, 240))
    thin = drying_range(60, 0.5, 1)
    assert (thin.low, thin.high) == pytest.approx((15, 30))


@given(st.floats(1, 600), st.floats(0.2, 6), st.floats(0.2, 6), st.floats(1, 2))
def test_every_drying_time_lies_in_its_range(minutes: float, thick: float, known: float, power: float) -> None:
    dry = drying_range(minutes, thick, known)
    assert dry.low - 1e-9 <= drying_time(minutes, thick, known, power) <= dry.high + 1e-9


def test_air_of_70_percent_humidity_dries_half_as_fast_as_air_of_40() -> None:
    # independent script, section 14
    assert humidity_slowdown(0.70, 0.40) == pytest.approx(2)


def test_damp_air_slows_drying_as_its_vapour_pressure_says() -> None:
    # rate ∝ p(skin) − p(air): saturation pressures at 20 and 40 °C, PsychroLib 2.5.0 after ASHRAE, row C14.5
    for saturated in (2338.8, 7383.5):
        slower = (saturated - 0.40 * saturated) / (saturated - 0.70 * saturated)
        assert humidity_slowdown(0.70, 0.40) == pytest.approx(slower)


# Degree of drying and time factor: soil-mechanics course table, Terzaghi, row C14.1.
TERZAGHI = {
    0.10: 0.0078, 0.20: 0.0314, 0.30: 0.0707, 0.40: 0.126, 0.50: 0.197, 0.60: 0.286, 0.70: 0.403, 0.80: 0.567,
    0.90: 0.848, 0.95: 1.129,
}  # fmt: skip
DIFFUSIVITY = 5e-4  # mm²/s, a textbook problem of a drying clay ball


def dried(thick: float, seconds: float, faces: int) -> float:
    """How much of its water a slab (mm) has lost, by diffusion in 40 layers, step by step."""
    layers = 40
    deep = thick / 2 if faces == 2 else thick
    step = deep / layers
    tick = 0.25 * step**2 / DIFFUSIVITY
    wet = [1.0] * layers
    for _ in range(round(seconds / tick)):
        left = [*wet[1:], wet[-1]]
        right = [-wet[0], *wet[:-1]]  # its open face is dry
        wet = [w + 0.25 * (a + b - 2 * w) for w, a, b in zip(wet, left, right, strict=True)]
    return 1 - sum(wet) / layers


@pytest.mark.parametrize("share", TERZAGHI)
def test_the_published_table_is_what_diffusion_comes_to_and_goes_with_the_square_of_thickness(share: float) -> None:
    one = TERZAGHI[share] * 0.5**2 / DIFFUSIVITY  # s, for 1 mm that dries from both faces
    assert dried(1, one, 2) == pytest.approx(share, abs=0.01)
    thicker = float(drying_time(one, 2, 1, 2))
    assert dried(2, thicker, 2) == pytest.approx(share, abs=0.01)


def test_a_slab_of_1_mm_is_95_percent_dry_in_9_4_minutes_and_from_one_face_in_37_6() -> None:
    # published row: a D of 5e-10 m²/s; one open face is as slow as twice the thickness
    both = TERZAGHI[0.95] * 0.5**2 / DIFFUSIVITY / 60
    assert both == pytest.approx(9.4, abs=0.05)
    assert drying_range(both, 2, 1).high == pytest.approx(37.6, abs=0.1)
    assert dried(1, 37.6 * 60, 1) == pytest.approx(0.95, abs=0.01)


def test_a_kiln_with_an_hours_constant_cools_from_900_to_100_in_2_4_hours() -> None:
    # independent script, row C14.6
    assert cooling_minutes(900, 100, 20, 60) / 60 == pytest.approx(2.398, abs=0.001)
    assert cooling_constant(900, 100, 20, cooling_minutes(900, 100, 20, 60)) == pytest.approx(60)


@given(st.floats(150, 1000), st.floats(30, 140), st.floats(20, 200))
def test_a_kiln_cools_as_step_by_step_cooling_does(hot: float, cool: float, constant: float) -> None:
    # Newton's law stepped numerically, a 20000th of the time constant at a time
    temperature, steps = hot, 0
    while temperature > cool:
        temperature -= (temperature - 20) / 20000
        steps += 1
    assert cooling_minutes(hot, cool, 20, constant) == pytest.approx(steps / 20000 * constant, rel=1e-3)


@pytest.mark.parametrize(
    ("minutes", "text"),
    [
        (90, "PT1H30M"),  # ★ isodate 0.7.2
        (26 * 60 + 5, "P1DT2H5M"),
        (0.75, "PT45S"),
        (8 * 60 + 35, "PT8H35M"),
        (649, "PT10H49M"),
        (0, "PT0S"),
        (1440, "P1D"),
        (1439.999, "P1D"),
        (60 * 24 * 40, "P40D"),
    ],
)
def test_minutes_are_written_as_iso_durations(minutes: float, text: str) -> None:
    # ISO 8601 as in isodate 0.7.2; days, never months
    assert iso_duration(minutes) == text


@given(st.integers(0, 10**7))
def test_a_duration_reads_back_as_the_same_seconds(seconds: int) -> None:
    import re  # noqa: PLC0415 - only this reading back needs it

    found = re.fullmatch(r"P(?:(\d+)D)?(?:T(?:(\d+)H)?(?:(\d+)M)?(?:(\d+)S)?)?", iso_duration(seconds / 60))
    assert found
    day, hour, minute, second = (int(part or 0) for part in found.groups())
    assert ((day * 24 + hour) * 60 + minute) * 60 + second == seconds


def test_time_does_not_run_backwards() -> None:
    with pytest.raises(CannotBe):
        iso_duration(-1)


def test_a_mix_is_never_less_than_can_be_measured_out() -> None:
    # volume of a cylinder; 0.3 mL is common practice
    seat = seat_volume(3, 1.5, 0.3)
    assert seat == pytest.approx(0.7853981634 * 9 * 1.5 * 0.3)  # mm³
    assert mix_volume(44, seat / 1000, 0.5, 0.3) == 0.3
    assert mix_volume(440, seat / 1000, 0.5, 0.3) == pytest.approx(440 * seat / 1000 * 1.5)


def test_a_pot_life_halves_for_every_ten_degrees() -> None:
    # rule of thumb of reaction rates
    assert pot_factor(23, 33) * 2 == pytest.approx(pot_factor(23, 23)) == pytest.approx(1)


def test_a_ramp_of_500_fahrenheit_an_hour_to_1000_takes_nearly_two_hours() -> None:
    # teacher's blog on sterling-clay tests: 'took 2 hours'; °F by their definition
    start, to, rate = (70 - 32) / 1.8, (1000 - 32) / 1.8, 500 / 1.8
    assert ramp_minutes(start, to, rate) / 60 == pytest.approx(1.86, abs=0.005)


def test_a_kiln_never_cools_below_its_room() -> None:
    with pytest.raises(CannotBe, match="never quite cools"):
        cooling_minutes(900, 20, 20, 60)
    with pytest.raises(CannotBe):
        ramp_minutes(900, 100, 500)
    with pytest.raises(CannotBe):
        humidity_slowdown(1, 0.4)
    with pytest.raises(CannotBe):
        cooling_minutes(900, -500, 20, 60)
