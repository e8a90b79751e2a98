"""Pieces of sheet metal are counted out of the sheet as it is sold, since areas alone would promise too many."""

from __future__ import annotations

from typing import Any

import pytest

SQUARE = 50 * 50


@pytest.mark.parametrize(("across", "fit"), [(19, 4), (23.5, 4), (24, 1), (16, 4), (15, 9), (48, 1)])
def test_a_square_of_sheet_gives_as_many_discs_as_stand_on_it_in_rows(workshop: Any, across: float, fit: int) -> None:
    # by placing them, a millimetre kept between two and along every side
    placed = sum(1 for i in range(50) for j in range(50) if 1 + max(i, j) * (across + 1) + across + 1 <= 50)
    assert placed == fit
    disc = workshop("metal disc", sheet="square-08", across=f"{across} mm")
    assert disc.usual("area") == pytest.approx(SQUARE / fit)


def test_the_sheet_to_have_for_a_disc_is_wider_than_the_disc(workshop: Any) -> None:
    # nobody punches or saws a disc of 20 mm out of a piece of 20 mm
    [take] = workshop("metal disc", sheet="square-08", across="20 mm").part.takes
    assert take.blank == pytest.approx((22, 22))


def test_a_disc_wider_than_the_sheet_is_refused_whatever_its_area(workshop: Any) -> None:
    refused = workshop.make("metal disc", sheet="square-08", across="49 mm")
    assert refused.blamed(refused.errors[0]) == "across"
    assert "sold 50 mm × 50 mm" in refused.errors[0].message


def test_a_blank_as_long_as_no_side_of_the_sheet_is_refused(workshop: Any) -> None:
    # π × (17.35 + 0.8) is 57 mm, and 57 × 4 mm is less than a tenth of the sheet
    refused = workshop.make("ring blank", sheet="square-08", size="US 7", width="4 mm")
    assert refused.blamed(refused.errors[0]) == "size"


def test_a_roll_gives_as_many_bezels_as_its_length_has_strips(workshop: Any) -> None:
    strip = workshop("bezel strip", sheet="roll-03", stone="round-8", high="3 mm", count=2)
    # what is slit off beside a strip 3 mm high is no bezel of 3 mm
    assert strip.usual("area") == pytest.approx(1500 / (300 // strip.figures["it.cut"].printed))
    assert workshop.taken(strip)["round-8"] == 2


def test_a_cup_takes_its_wall_from_a_roll_and_its_base_from_a_square(workshop: Any) -> None:
    cup = workshop("bezel cup", strip="roll-03", base="square-08", stone="round-8", height="2 mm")
    assert cup.usual("wall_area") == pytest.approx(1500 / (300 // 27.5) / 2)  # 27.2 cut as 27.5; two heights in 5 mm
    wide = cup.usual("base_across") + 1  # with what is left between two; as much along the sides
    assert cup.usual("base_blank") == pytest.approx(SQUARE / (49 // wide) ** 2)
    assert [take.blank for take in cup.part.takes][1] == pytest.approx((wide + 1, wide + 1))
