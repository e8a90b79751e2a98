"""Beads on a thread, chains, cords and fibres."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.beads import (
    beads_in,
    beads_to_buy,
    girth_inside,
    graduated_each_side,
    graduated_length,
    knotted_count,
    strand_length,
    strand_round,
    thread_to_cut,
)
from sheetgen.formulas.chains import chain_inside, graded_links, links_for, links_in, rings_between, whole_links
from sheetgen.formulas.fibre import binding_thread, folded_strip, fringe_mean, fringe_steps, fringe_sum
from sheetgen.formulas.packing import bundle_of_many, bundle_of_strips, bundle_ratio, cords_in, strips_in

STRAND = 16 * 25.4  # mm: a strand of 16 in, by a supplier's beads-per-inch chart


@pytest.mark.parametrize(
    ("bead", "count"), [(2, 203.2), (3, 135.47), (5, 81.28), (7, 58.06), (8, 50.8), (9, 45.16), (11, 36.95)]
)
def test_a_16_inch_strand_holds_the_whole_beads_of_the_chart(bead: float, count: float) -> None:
    # supplier's beads-per-inch chart
    assert STRAND / bead == pytest.approx(count, abs=0.006)
    assert beads_in(STRAND, bead) == int(count)
    assert beads_to_buy(STRAND, bead) == int(count) + 1


def test_eighteen_inches_of_8_mm_beads_want_58() -> None:
    # supplier's article, How many beads per inch
    assert beads_to_buy(18 * 25.4, 8) == 58


def test_a_380_mm_neck_wants_405_mm_of_8_mm_beads() -> None:
    # independent script, section 11
    assert strand_round(380, 8) == pytest.approx(405, abs=0.2)
    assert girth_inside(strand_round(380, 8), 8) == pytest.approx(380)


@given(st.floats(10, 1000), st.floats(1, 20), st.floats(0, 2))
def test_one_knotted_bead_more_would_be_too_long(length: float, bead: float, knot: float) -> None:
    n = knotted_count(length, bead, knot)
    if n:
        assert strand_length(n, bead, n + 1, knot) <= length + 1e-6
    assert strand_length(n + 1, bead, n + 2, knot) > length


def test_thread_is_cut_150_mm_longer() -> None:
    # common practice: two crimped ends of 75 mm
    assert thread_to_cut(450, 150) == 600


@given(st.floats(50, 1000), st.floats(3, 40), st.floats(0, 10))
def test_a_chain_takes_the_links_that_one_more_would_overfill(length: float, link: float, ring: float) -> None:
    least = links_for(length, link, ring)
    assert chain_inside(least, link, ring) >= length - 1e-6
    most = links_in(length, link, ring)
    assert chain_inside(most, link, ring) <= length + 1e-6
    assert chain_inside(most + 1, link, ring) > length


def test_a_chain_shorter_than_its_link_is_refused() -> None:
    with pytest.raises(CannotBe):
        links_in(10, 13, 4)


@pytest.mark.parametrize(
    ("n", "ratio"),
    [
        (7, 3),  # ★ Wikipedia, Circle packing in a circle
        (19, 4.863703),  # ★ the same, and by construction below
        (8, 3.304765),
        (13, 4.236068),
        (2, 2),
        (3, 2.1547),
        (4, 2.4142),
        (5, 2.7013),
        (6, 3),
        (9, 3.6131),
        (10, 3.8130),
        (18, 4.8637),
    ],
)
def test_a_bundle_of_round_cords_is_as_wide_as_the_best_packing(n: int, ratio: float) -> None:
    # Wikipedia, Circle packing in a circle
    assert bundle_ratio(n) == pytest.approx(ratio, abs=1e-6 if ratio != round(ratio, 4) else 6e-5)


def test_eleven_cords_agree_to_the_last_digit() -> None:
    # public page on packing 11 circles, exact cosecant form
    assert bundle_ratio(11) == pytest.approx(3.9238044001630872, abs=1e-12)


def _rings(*rings: tuple[int, float, float]) -> list[tuple[float, float]]:
    return [
        (radius * math.cos(start + 2 * math.pi * i / n), radius * math.sin(start + 2 * math.pi * i / n))
        for n, radius, start in rings
        for i in range(n)
    ]


@pytest.mark.parametrize("n", [3, 4, 5, 6, 7, 8, 9, 19])
def test_laid_out_in_rings_the_cords_touch_but_do_not_overlap(n: int) -> None:
    # packing by distance: middles at least 2 apart, and nothing outside the circle
    edge = bundle_ratio(n) - 1
    layouts = {
        7: [(1, 0.0, 0.0), (6, edge, 0.0)],
        8: [(1, 0.0, 0.0), (7, edge, 0.0)],
        9: [(1, 0.0, 0.0), (8, edge, 0.0)],
        19: [(1, 0.0, 0.0), (6, 2.0, 0.0), (12, edge, math.pi / 12)],
    }
    middles = _rings(*layouts.get(n, [(n, edge, 0.0)]))
    nearest = min(math.dist(a, b) for i, a in enumerate(middles) for b in middles[:i])
    assert len(middles) == n
    assert nearest == pytest.approx(2, abs=1e-9)


@pytest.mark.parametrize("n", [12, 14, 15, 16, 17])
def test_a_bundle_without_a_closed_form_takes_the_next_larger_one(n: int) -> None:
    # a bore that is a little too wide still takes the bundle
    assert bundle_ratio(n) >= bundle_ratio(n - 1)
    assert bundle_ratio(n) == bundle_ratio(13 if n == 12 else 18)


def test_a_folded_strip_hangs_twice_its_drop_and_half_a_turn() -> None:
    # plane geometry
    assert folded_strip(40, 2, 1) == pytest.approx(80 + math.pi * 1.5)


def test_binding_thread_goes_round_its_own_thickness_too() -> None:
    # Steiner's formula
    assert binding_thread(6, 0.5, 10) == pytest.approx(10 * math.pi * 6.5)


def test_no_bundle_is_made_of_half_a_cord_or_filled_over_its_whole() -> None:
    for n in (0, 2.5, 20, float("nan")):
        with pytest.raises(CannotBe):
            bundle_ratio(n)
    with pytest.raises(CannotBe):
        bundle_of_many(10, 1, 1.2)


def test_graded_pieces_of_chain_add_up_link_by_link() -> None:
    assert graded_links(7, 7, 19) == sum(7 + 2 * i for i in range(7))
    assert [whole_links(length, 3) for length in (1, 1.5, 20, 19.4)] == [0, 1, 7, 6]


@pytest.mark.parametrize("strips", [3, 4, 9, 10])
def test_a_point_of_drops_has_the_mean_of_its_strips(strips: int) -> None:
    half = math.ceil(strips / 2)
    side = [30 + 30 * i / (half - 1) for i in range(half)]
    drops = side + side[: strips - half][::-1]
    assert fringe_mean(strips, 30, 60, 1) == pytest.approx(sum(drops) / strips)
    assert fringe_sum(strips, 30, 60, 1) == pytest.approx(sum(drops))
    assert fringe_sum(strips, 30, 60, 0) == pytest.approx(sum(30 + 30 * i / (strips - 1) for i in range(strips)))
    assert fringe_steps(strips, 1) == half - 1
    assert fringe_mean(strips, 30, 60, 0) == 45
    assert fringe_steps(strips, 0) == strips - 1


@given(st.floats(4, 20), st.floats(1, 4), st.integers(1, 40))
def test_a_graduated_strand_is_as_long_as_its_beads_laid_out(largest: float, smallest: float, side: int) -> None:
    step = (largest - smallest) / side
    beads = [largest, *(largest - step * (i + 1) for i in range(side) for _ in range(2))]
    assert graduated_length(largest, smallest, side, step) == pytest.approx(sum(beads))


@given(st.floats(100, 600), st.floats(4, 20), st.floats(1, 4))
def test_two_beads_more_would_make_a_graduated_strand_too_long(length: float, largest: float, smallest: float) -> None:
    side = graduated_each_side(length, largest, smallest)
    for more, fits in ((0, True), (1, False)):
        n = side + more
        long = graduated_length(largest, smallest, n, (largest - smallest) / n) if n else largest
        assert (long <= length + 1e-6) if fits else (long > length - 1e-6)


def test_inside_lengths_of_a_taut_chain_add_up() -> None:
    # independent script, section 7
    assert chain_inside(10, 13, 4) == pytest.approx(10 * 13 + 9 * 4)
    assert rings_between(10, 2) == 11


def test_many_fibres_go_by_their_fill() -> None:
    # areas
    assert bundle_of_many(100, 0.2, 0.64) == pytest.approx(0.2 * 12.5)
    assert math.pi / 4 * bundle_of_strips(20, 3, 0.5, 0.75) ** 2 * 0.75 == pytest.approx(20 * 3 * 0.5)


@given(st.floats(0.5, 12), st.floats(0.5, 0.75))
def test_one_cord_more_than_the_most_does_not_go_in(inside: float, fill: float) -> None:
    # the other way round: bundles tried one after another
    def across(cords: int) -> float:
        return float(bundle_ratio(cords) if cords <= 19 else bundle_of_many(cords, 1, fill))

    most = 0
    while across(most + 1) <= inside + 1e-9:
        most += 1
    assert cords_in(inside, fill) == most
    strips = strips_in(inside, 0.3, 0.1, fill)
    assert bundle_of_strips(strips + 1, 0.3, 0.1, fill) > inside
    assert strips == 0 or bundle_of_strips(strips, 0.3, 0.1, fill) <= inside + 1e-9
    assert cords_in(-1, fill) == strips_in(-1, 3, 1, fill) == 0
