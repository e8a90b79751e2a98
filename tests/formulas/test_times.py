"""Adhesive, drying, firing, temperatures and durations."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sheetgen.base.trouble import CannotBe
from sheetgen.facts.times import DIFFUSIVITY_SLOW, DRY
from sheetgen.formulas.adhesive import (
    mix_mass,
    mix_volume,
    mixes,
    part_of_mix,
    pot_life,
    ratio_by_mass,
    seat_volume,
    seats_per_mix,
)
from sheetgen.formulas.drying import (
    diffusion_minutes,
    dried_share,
    drying_range,
    drying_time,
    humidity_slowdown,
    time_factor,
    vapour_pressure,
)
from sheetgen.formulas.durations import iso_duration
from sheetgen.formulas.firing import (
    cooling_constant,
    cooling_minutes,
    ramp_minutes,
    ramp_rate,
    segment_minutes,
)
from sheetgen.formulas.temperature import celsius_of, celsius_step, fahrenheit_of


@pytest.mark.parametrize(
    ("fahrenheit", "celsius"),
    [(1110, 598.9), (1200, 648.9), (1290, 698.9), (1380, 748.9), (1435, 779.4), (1650, 898.9), (1675, 912.8)],
)
def test_kiln_temperatures_in_fahrenheit_are_those_of_the_guides(fahrenheit: float, celsius: float) -> None:
    # exact conversion; a supplier's firing guide prints 899 and 913
    assert celsius_of(fahrenheit) == pytest.approx(celsius, abs=0.06)
    assert fahrenheit_of(celsius_of(fahrenheit)) == pytest.approx(fahrenheit)


def test_two_to_one_by_volume_is_100_to_47_by_mass() -> None:
    # composites supplier's guide: the densities are as 0.94
    assert ratio_by_mass(0.5, 0.94, 1.0) == pytest.approx(0.47, abs=0.0005)


@pytest.mark.parametrize(("room", "minutes"), [(13, 10.0), (23, 5.0), (33, 2.5)])
def test_a_pot_life_halves_for_every_ten_degrees(room: float, minutes: float) -> None:
    # rule of thumb, row C13.2
    assert pot_life(5, 23, room) == pytest.approx(minutes, abs=1e-9)


def test_44_seats_in_a_warm_room_want_five_mixes() -> None:
    # independent script, row C13.3
    pot = pot_life(5, 23, 30)
    assert pot == pytest.approx(3.078, abs=0.001)
    assert seats_per_mix(pot, 20) == 9
    assert mixes(44, pot, 20) == 5


def test_a_mix_is_never_less_than_can_be_measured_out() -> None:
    # volume of a cylinder; 0.3 mL is common practice
    seat = seat_volume(3, 1.5, 0.3)
    assert seat == pytest.approx(0.7853981634 * 9 * 1.5 * 0.3 / 1000)
    assert mix_volume(44, seat, 0.5, 0.3) == 0.3
    assert mix_volume(440, seat, 0.5, 0.3) == pytest.approx(440 * seat * 1.5)
    assert part_of_mix(3, 2, 1) == pytest.approx(2)
    assert mix_mass(2, 1.15) == pytest.approx(2.3)


def test_a_mix_that_sets_before_one_seat_is_filled_is_refused() -> None:
    with pytest.raises(CannotBe) as refused:
        seats_per_mix(0.2, 20)
    assert refused.value.field == "pot life"


@pytest.mark.parametrize(
    ("dried", "factor"),
    [
        (0.10, 0.0078),
        (0.20, 0.0314),
        (0.30, 0.0707),
        (0.40, 0.126),
        (0.50, 0.197),
        (0.60, 0.286),
        (0.70, 0.403),
        (0.80, 0.567),
        (0.90, 0.848),
        (0.95, 1.129),
    ],
)
def test_water_leaves_a_slab_as_it_leaves_a_soil(dried: float, factor: float) -> None:
    # ★ soil-mechanics course notes, Terzaghi's U-T table
    assert time_factor(dried) == pytest.approx(factor, abs=0.0012)
    assert dried_share(time_factor(dried)) == pytest.approx(dried, abs=1e-9)


def test_a_millimetre_slab_dries_in_9_minutes_from_both_faces_and_38_from_one() -> None:
    # independent script, section 14, with the slower textbook diffusivity
    factor = time_factor(DRY)
    assert diffusion_minutes(factor, 0.5, DIFFUSIVITY_SLOW) == pytest.approx(9.4, abs=0.05)
    assert diffusion_minutes(factor, 1.0, DIFFUSIVITY_SLOW) == pytest.approx(37.6, abs=0.1)


@given(st.floats(0.0001, 0.25))
def test_early_drying_goes_with_the_root_of_time(factor: float) -> None:
    # Terzaghi: T = π ÷ 4 × U² below 60 %
    assert 3.14159265 / 4 * dried_share(factor) ** 2 == pytest.approx(factor, rel=0.01)


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


@pytest.mark.parametrize(("celsius", "pascals"), [(20, 2338.8), (40, 7383.5)])
def test_water_vapour_has_the_pressure_of_the_ashrae_handbook(celsius: float, pascals: float) -> None:
    # PsychroLib 2.5.0
    assert vapour_pressure(celsius) == pytest.approx(pascals, abs=1)


def test_a_ramp_of_500_fahrenheit_an_hour_to_1000_takes_nearly_two_hours() -> None:
    # teacher's blog on sterling-clay tests: 'took 2 hours'
    minutes = ramp_minutes(celsius_of(70), celsius_of(1000), celsius_step(500))
    assert minutes / 60 == pytest.approx(1.86, abs=0.005)
    assert ramp_rate(celsius_of(70), celsius_of(1000), minutes) == pytest.approx(celsius_step(500))


def test_a_first_phase_of_13_minutes_ramp_and_30_hold_takes_43() -> None:
    # teacher's blog on sterling-clay tests
    assert segment_minutes(13, 30) == 43


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


def test_a_kiln_never_cools_below_its_room() -> None:
    with pytest.raises(CannotBe, match="never quite cools"):
        cooling_minutes(900, 20, 20, 60)
    with pytest.raises(CannotBe):
        ramp_minutes(900, 100, 500)
    with pytest.raises(CannotBe):
        humidity_slowdown(1, 0.4)
    with pytest.raises(CannotBe):
        celsius_of(-500)
    with pytest.raises(CannotBe):
        time_factor(1)


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
