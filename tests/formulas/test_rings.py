"""Ring sizes of every system, to and from millimetres."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.rings import (
    iso_diameter,
    iso_size,
    jp_diameter,
    jp_size,
    uk_circumference,
    uk_letter,
    uk_mm,
    us_diameter,
    us_size,
)
from sheetgen.formulas.shrinkage import wet_size
from sheetgen.formulas.wrap import former_for

if TYPE_CHECKING:
    from collections.abc import Callable

ISO = [
    15.6, 15.9, 16.2, 16.6, 16.9, 17.2, 17.5, 17.8, 18.1, 18.5, 18.8, 19.1,
    19.4, 19.7, 20.1, 20.4, 20.7, 21.0, 21.3, 21.6, 22.0, 22.3, 22.6, 22.9,
]  # fmt: skip


@pytest.mark.parametrize(("size", "diameter"), list(enumerate(ISO, start=49)))
def test_an_iso_size_is_its_inside_circumference(size: int, diameter: float) -> None:
    # ★ ISO 8653:2016 table in Wikipedia, Ring size
    assert iso_diameter(size) == pytest.approx(diameter, abs=0.051)
    assert iso_size(iso_diameter(size)) == pytest.approx(size)


@pytest.mark.parametrize(("n", "across", "around"), [(0, 11.63, 36.5), (1, 12.45, 39.1), (4, 14.88, 46.8)])
def test_us_sizes_are_those_of_the_chart(n: int, across: float, around: float) -> None:
    # ★ Wikipedia, Ring size
    assert us_diameter(n) == pytest.approx(across, abs=0.006)
    assert math.pi * us_diameter(n) == pytest.approx(around, abs=0.06)


def test_one_us_size_is_0_81_mm_across_and_2_55_mm_around() -> None:
    # Wikipedia, Ring size
    assert us_diameter(8) - us_diameter(7) == pytest.approx(0.8128, abs=0.001)
    assert math.pi * (us_diameter(8) - us_diameter(7)) == pytest.approx(2.553, abs=0.001)


@pytest.mark.parametrize(("letter", "around"), [("A", 37.50), ("C", 40.00), ("L", 51.25), ("Q", 57.50), ("Z", 68.75)])
def test_uk_letters_are_those_of_the_standard(letter: str, around: float) -> None:
    # ★ GNU Units 2.22, after BS 6820:1987
    assert uk_mm(letter) == pytest.approx(around, abs=1e-9)
    assert uk_letter(around) == letter


@pytest.mark.parametrize("letter", "ABCDEFGHIJKLMNOPQRSTUVWXYZ")
def test_uk_letters_agree_with_the_program_units(letter: str, gnu_units: Callable[[str, str], float]) -> None:
    # the program GNU Units, asked here
    assert uk_mm(letter) == pytest.approx(gnu_units(f"size{letter}ring", "mm"), abs=1e-9)


@pytest.mark.parametrize("text", ["N½", "n½", "N 1/2", "N1/2", " N.5 "])
def test_a_half_letter_may_be_written_in_several_ways(text: str) -> None:
    # GNU Units 2.22: half a letter is 0.625 mm
    assert uk_mm(text) == pytest.approx(53.75 + 0.625)


@given(st.integers(0, 51))
def test_every_half_letter_comes_back_from_its_millimetres(halves: int) -> None:
    around = 37.5 + 0.625 * halves
    assert uk_mm(uk_letter(around)) == pytest.approx(around)
    assert uk_circumference(-2 + halves / 2) == pytest.approx(around)


@pytest.mark.parametrize(
    ("us", "across", "around", "uk", "jp"),
    [
        (3, 14.072, 44.21, "F½", 4.2),
        (4, 14.884, 46.76, "H½", 6.7),
        (5, 15.697, 49.31, "J½", 9.1),
        (6, 16.510, 51.87, "L½", 11.5),
        (7, 17.323, 54.42, "N½", 14.0),
        (8, 18.136, 56.97, "P½", 16.4),
        (9, 18.948, 59.53, "R½", 18.9),
        (10, 19.761, 62.08, "T½", 21.3),
        (11, 20.574, 64.64, "V½", 23.7),
    ],
)
def test_one_finger_has_a_name_in_every_country(us: int, across: float, around: float, uk: str, jp: float) -> None:
    # independent script, table of section 4
    assert us_diameter(us) == pytest.approx(across, abs=0.0006)
    assert math.pi * us_diameter(us) == pytest.approx(around, abs=0.006)
    assert uk_letter(math.pi * us_diameter(us)) == uk
    assert jp_size(us_diameter(us)) == pytest.approx(jp, abs=0.06)


@pytest.mark.parametrize(
    ("s", "size"),
    [(0.08, 8.85), (0.09, 9.11), (0.10, 9.37), (0.12, 9.91), (0.15, 10.76), (0.20, 12.33), (0.25, 14.10)],
)
def test_a_us_7_is_formed_two_to_seven_sizes_up_as_its_clay_shrinks(s: float, size: float) -> None:
    # independent script, section 4
    assert us_size(wet_size(us_diameter(7), s)) == pytest.approx(size, abs=0.006)


def test_a_us_7_in_9_percent_clay_over_a_sheet_wants_an_8_86_former() -> None:
    # independent script, row C4.8
    former = former_for(wet_size(us_diameter(7), 0.09), 1, 0.10)
    assert former == pytest.approx(18.836, abs=0.002)
    assert us_size(former) == pytest.approx(8.86, abs=0.01)


@given(st.floats(0, 20))
def test_a_us_size_comes_back_from_its_millimetres(n: float) -> None:
    assert us_size(us_diameter(n)) == pytest.approx(n, abs=1e-9)


def test_a_japanese_1_is_13_mm_across() -> None:
    # GNU Units 2.22, jpringsize()
    assert jp_diameter(1) == pytest.approx(13)


@pytest.mark.parametrize("text", ["", "½", "AA", "7", "Å", "Z+1"])
def test_what_is_no_letter_is_no_uk_size(text: str) -> None:
    with pytest.raises(CannotBe) as refused:
        uk_mm(text)
    assert "N½" in refused.value.help


@pytest.mark.parametrize("around", [30.0, 80.0])
def test_a_finger_off_the_uk_scale_is_told_the_scale(around: float) -> None:
    with pytest.raises(CannotBe, match="no UK letter") as refused:
        uk_letter(around)
    assert refused.value.help == "37.5 to 69.375 mm"


def test_a_ring_smaller_than_every_us_size_is_refused() -> None:
    with pytest.raises(CannotBe, match="us cannot be worked from inside = 10"):
        us_size(10)
    with pytest.raises(CannotBe):
        us_diameter(-1)
    with pytest.raises(CannotBe, match="jp cannot be worked from inside = 12"):
        jp_size(12)


def test_us_sizes_are_those_of_an_independent_script() -> None:
    # section 4 of it
    assert us_diameter(7) == pytest.approx(17.323, abs=0.0006)
    assert us_diameter(12) == pytest.approx(21.387, abs=0.0006)
