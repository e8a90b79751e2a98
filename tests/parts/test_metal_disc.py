"""Discs, washers and the flat discs of domes."""

from __future__ import annotations

import math
from typing import Any

import pytest
from scipy.integrate import quad


def test_a_disc_of_sterling_weighs_what_is_published(workshop: Any) -> None:
    # C15.4: Ø 25, 0.8 mm, sterling 10.36: 4.068 g
    assert workshop("metal disc", sheet="sterling-08", across="25 mm").usual("mass") == pytest.approx(4.068, abs=0.001)


def test_a_washer_loses_its_hole(workshop: Any) -> None:
    washer = workshop("metal disc", sheet="sterling-08", across="25 mm", hole="10 mm")
    assert washer.usual("mass") == pytest.approx(math.pi / 4 * (625 - 100) * 0.8 * 0.01036)


def test_a_domed_disc_has_the_area_of_the_middle_of_its_dome(workshop: Any) -> None:
    disc = workshop("metal disc", sheet="sterling-08", across="25 mm", rise="5 mm")
    ball = (25**2 / 4 + 5**2) / 10
    middle = ball - 0.4
    rim = math.asin(12.5 / ball)
    area, _ = quad(lambda a: 2 * math.pi * middle**2 * math.sin(a), 0, rim)
    assert math.pi / 4 * disc.usual("disc") ** 2 == pytest.approx(area, rel=1e-9)


def test_the_disc_as_it_is_drawn_decides_what_it_weighs(workshop: Any) -> None:
    # wanted 26.33, drawn and sawn at 26.3
    disc = workshop("metal disc", sheet="sterling-08", across="25 mm", rise="5 mm", count=2)
    assert disc.part.figures["disc"].printed == pytest.approx(26.3)
    assert disc.usual("mass") == pytest.approx(math.pi / 4 * 26.3**2 * 0.8 * 0.01036)
    assert workshop.taken(disc) == {"sterling-08": pytest.approx(2 * 27.3**2)}


def test_half_a_ball_of_thin_sheet_wants_atkins_disc(workshop: Any) -> None:
    # C9.1: disc radius is the ball's diameter over √2 (the text divides by 1.4)
    disc = workshop("metal disc", sheet="fine-04", across="200 mm", rise="100 mm")
    assert disc.usual("disc") == pytest.approx(200 * math.sqrt(2), rel=0.005)


def test_an_owned_cutter_decides_a_punched_disc(workshop: Any) -> None:
    disc = workshop("metal disc", sheet="sterling-08", across="15 mm", cutting="punched")
    assert disc.usual("disc") == disc.usual("width_out") == 16
    assert disc.part.tools == (("disc cutter", 16),)
    domed = workshop("metal disc", sheet="sterling-08", across="15 mm", rise="3 mm", cutting="punched")
    assert [size.tool for size in domed.part.sizes] == ["disc cutter"]
    assert domed.usual("width_out") / 15 == pytest.approx(
        16 / workshop("metal disc", sheet="sterling-08", across="15 mm", rise="3 mm").usual("disc")
    )


def test_each_disc_is_cut_from_its_square_of_sheet(workshop: Any) -> None:
    disc = workshop("metal disc", sheet="sterling-08", across="19 mm", count=4)
    assert workshop.taken(disc) == {"sterling-08": pytest.approx(4 * 400)}


def test_the_template_is_the_disc_with_its_hole(workshop: Any) -> None:
    ovals = workshop("metal disc", sheet="sterling-08", across="19 mm", hole="3 mm").drawn().ovals
    assert [(wide, tall) for _, _, wide, tall in ovals] == [(19, 19), (3, 3)]


@pytest.mark.parametrize(
    ("fields", "field", "helps"),
    [
        ({"across": "20 mm", "rise": "11 mm"}, "rise", "10 mm or less"),
        ({"across": "20 mm", "rise": "0.5 mm"}, "rise", "more than 0.8 mm"),
        ({"across": "20 mm", "hole": "19.5 mm"}, "hole", "18.4 mm or less"),
        ({"across": "50 mm", "cutting": "punched"}, "across", "25 mm"),
        ({"across": "20 mm", "rise": "8 mm", "hole": "3 mm"}, "hole", "after doming"),
    ],
)
def test_a_disc_that_cannot_be_is_told_at_its_field(
    workshop: Any, fields: dict[str, str], field: str, helps: str
) -> None:
    found = workshop.refused("metal disc", sheet="sterling-08", **fields)
    assert any(at == field and helps in helped for at, _, helped in found)
