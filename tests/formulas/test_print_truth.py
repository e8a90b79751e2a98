"""Paper, scale bars, codes and contrast."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sheetgen.base.trouble import CannotBe
from sheetgen.facts.paper import CONTRAST_TEXT, PAPERS, QR_QUIET
from sheetgen.formulas.contrast import contrast, contrast_of_luminances, luminance
from sheetgen.formulas.page import (
    css_pixels,
    fit_factor,
    points,
    print_again_at,
    print_scale,
    qr_modules,
    qr_side,
    ring_sizes_lost,
    scale_passes,
)
from sheetgen.formulas.rings import us_diameter


@pytest.mark.parametrize(
    ("colour", "ratio"),
    [
        ("#000000", 21.00),  # ★ wcag-contrast-ratio 0.9
        ("#767676", 4.54),  # ★
        ("#777777", 4.48),  # ★
        ("#595959", 7.00),  # wcag-contrast-ratio 0.9
        ("#FF0000", 4.00),
        ("#0000FF", 8.59),
    ],
)
def test_colours_stand_out_on_white_as_the_web_standard_says(colour: str, ratio: float) -> None:
    assert contrast(colour, "#fff") == pytest.approx(ratio, abs=0.006)


def test_grey_767676_passes_as_text_and_777777_does_not() -> None:
    # W3C, WCAG 2.2: 4.5 to 1
    assert contrast("#767676", "#ffffff") >= CONTRAST_TEXT > contrast("#777777", "#ffffff")


@given(st.floats(0, 1), st.floats(0, 1))
def test_contrast_is_the_same_both_ways_and_never_over_21(one: float, other: float) -> None:
    ratio = contrast_of_luminances(one, other)
    assert ratio == contrast_of_luminances(other, one)
    assert 1 <= ratio <= 21 + 1e-9


def test_white_has_all_the_light_and_black_none() -> None:
    # W3C, WCAG 2.2
    assert luminance(1, 1, 1) == pytest.approx(1)
    assert luminance(0, 0, 0) == 0


def test_an_a4_page_is_794_by_1123_css_pixels_and_595_by_842_points() -> None:
    # ★ ISO 216 sizes, CSS definition
    width, height = PAPERS["A4"]
    assert (css_pixels(width), css_pixels(height)) == pytest.approx((793.70, 1122.52), abs=0.01)
    assert (points(width), points(height)) == pytest.approx((595.28, 841.89), abs=0.01)


def test_a4_shrinks_to_94_percent_to_fit_letter() -> None:
    # papersize 1.6.1
    assert fit_factor(*PAPERS["A4"], *PAPERS["Letter"]) == pytest.approx(0.940741, abs=1e-6)


@pytest.mark.parametrize(("version", "modules"), [(1, 21), (2, 25), (7, 45), (40, 177)])
def test_a_code_has_17_modules_and_four_more_a_version(version: int, modules: int) -> None:
    # segno 1.6.6
    assert qr_modules(version) == modules
    assert qr_side(version, 0.5) == pytest.approx((modules + 2 * QR_QUIET) * 0.5)


def test_a_hundred_millimetres_are_378_pixels_and_283_points() -> None:
    # definition
    assert css_pixels(100) == pytest.approx(377.953, abs=0.001)
    assert points(100) == pytest.approx(283.465, abs=0.001)


def test_a_bar_that_reads_97_2_makes_a_ring_gauge_half_a_size_small() -> None:
    # independent script, section 19: 0.57 US sizes, for an inside of about 16.5 mm (US 6)
    assert ring_sizes_lost(us_diameter(6), print_scale(97.2, 100)) == pytest.approx(0.57, abs=0.005)


@pytest.mark.parametrize(
    ("measured", "passes"), [(99.4, False), (99.5, True), (100.5, True), (100.6, False), (97.2, False)]
)
def test_a_template_passes_within_half_a_percent(measured: float, passes: bool) -> None:  # noqa: FBT001 - a table's column
    # common practice
    assert scale_passes(print_scale(measured, 100)) is passes


def test_a_small_print_is_mended_by_its_inverse() -> None:
    assert print_scale(97.2, 100) * print_again_at(print_scale(97.2, 100)) == pytest.approx(1)


@pytest.mark.parametrize("colour", ["", "red", "#12", "#12345g", "#1234567"])
def test_what_is_no_colour_is_refused(colour: str) -> None:
    with pytest.raises(CannotBe):
        contrast(colour, "#fff")


@pytest.mark.parametrize("version", [0, 41, 2.5])
def test_there_is_no_such_version_of_a_code(version: float) -> None:
    with pytest.raises(CannotBe):
        qr_modules(version)
