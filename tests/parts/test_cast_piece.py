"""Cast pieces: metal from the pattern's weight, by the densities."""

from __future__ import annotations

from typing import Any

import pytest


def test_a_wax_of_5_g_and_a_tenth_for_the_button_takes_74_25_g_of_gold(workshop: Any) -> None:
    # casting supplier's worked example: 5 g of wax, 14 carat gold 13.5 times as heavy, 10 % more
    piece = workshop("cast piece", metal="gold-14", pattern="5 g", pattern_density="1 g/cm³", button="10 %", lost="0 %")
    assert piece.usual("melted") == pytest.approx(74.25)
    assert piece.usual("cast") == pytest.approx(67.5)
    assert piece.usual("back") == pytest.approx(6.75)


def test_a_sprue_is_melted_and_comes_back(workshop: Any) -> None:
    # by hand: (3 × 2 g + 1 g) × 10.36 = 72.52 g in the flask, of which 62.16 g are pieces
    piece = workshop(
        "cast piece", metal="silver-grain", pattern="2 g", count=3, sprue="1 g", pattern_density="1 g/cm³", button="0 %"
    )
    assert piece.usual("tree") == pytest.approx(72.52)
    assert piece.usual("back") == pytest.approx(10.36)
    assert workshop.taken(piece) == {"silver-grain": pytest.approx(72.52)}


def test_what_is_melted_is_printed_for_the_lightest_wax_and_the_largest_button(workshop: Any) -> None:
    piece = workshop("cast piece", metal="silver-grain", pattern="2 g")
    # 2 × 10.36 ÷ 0.95 × 1.5 = 32.7158: tenths are printed, and 32.7 would not be enough
    assert float(piece.figures["it.melted"].printed) == 32.8
    assert piece["melted"].high == pytest.approx(2 * 10.36 / 0.95 * 1.5)


def test_a_pattern_as_heavy_as_its_metal_is_a_slip(workshop: Any) -> None:
    found = workshop.refused("cast piece", metal="silver-grain", pattern="2 g", pattern_density="10.4 g/cm³")
    assert [at for at, _, _ in found] == ["pattern density"]
