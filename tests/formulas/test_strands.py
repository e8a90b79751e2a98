"""Beads on a thread, chains, cords and fibres."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sheetgen.base.trouble import CannotBe
from sheetgen.facts import beads as facts
from sheetgen.facts.units import PIECES_PER_GREAT_GROSS, PIECES_PER_GROSS
from sheetgen.formulas.beads import (
    beads_in,
    beads_to_buy,
    girth_inside,
    graduated_each_side,
    graduated_length,
    graduated_sizes,
    knotted_count,
    repeat_count,
    strand_length,
    strand_round,
    thread_to_cut,
)
from sheetgen.formulas.chains import (
    chain_inside,
    chain_overall,
    graded_links,
    links_for,
    links_in,
    rings_between,
    whole_links,
)
from sheetgen.formulas.fibre import (
    binding_thread,
    folded_strip,
    fringe_mean,
    fringe_steps,
    wound_ends,
    wound_yarn,
)
from sheetgen.formulas.packing import (
    bundle_diameter,
    bundle_fill,
    bundle_of_many,
    bundle_of_strips,
    bundle_ratio,
)
from sheetgen.formulas.pegs import inside_pitch


@pytest.mark.parametrize(
    ("bead", "count"), [(2, 203.2), (3, 135.47), (5, 81.28), (7, 58.06), (8, 50.8), (9, 45.16), (11, 36.95)]
)
def test_a_16_inch_strand_holds_the_whole_beads_of_the_chart(bead: float, count: float) -> None:
    # supplier's beads-per-inch chart
    assert facts.STRAND / bead == pytest.approx(count, abs=0.006)
    assert beads_in(facts.STRAND, bead) == int(count)
    assert beads_to_buy(facts.STRAND, bead) == int(count) + 1


def test_eighteen_inches_of_8_mm_beads_want_58() -> None:
    # supplier's article, How many beads per inch
    assert beads_to_buy(18 * 25.4, 8) == 58


@pytest.mark.parametrize(("bead", "real"), [(4, 94), (6, 66), (8, 50), (10, 40), (12, 32)])
def test_a_real_strand_holds_no_more_than_division_says(bead: int, real: int) -> None:
    # a bead dealer's blog, 2008
    assert float(facts.DEALER_COUNTS[bead]) == real
    assert real <= beads_in(facts.STRAND, bead)


def test_a_380_mm_neck_wants_405_mm_of_8_mm_beads() -> None:
    # independent script, section 11
    assert strand_round(380, 8) == pytest.approx(405, abs=0.2)
    assert girth_inside(strand_round(380, 8), 8) == pytest.approx(380)


def test_a_gross_is_144_and_a_great_gross_1728() -> None:
    # GNU Units 2.22
    assert (float(PIECES_PER_GROSS), float(PIECES_PER_GREAT_GROSS)) == (144, 1728)


@given(st.floats(10, 1000), st.floats(1, 20), st.floats(0, 2))
def test_one_knotted_bead_more_would_be_too_long(length: float, bead: float, knot: float) -> None:
    n = knotted_count(length, bead, knot)
    if n:
        assert strand_length(n, bead, n + 1, knot) <= length + 1e-6
    assert strand_length(n + 1, bead, n + 2, knot) > length


def test_thread_is_cut_150_mm_longer() -> None:
    # common practice: two crimped ends of 75 mm
    assert thread_to_cut(450, 150) == 600


def test_a_pattern_of_beads_repeats_as_often_as_it_fits() -> None:
    # adding up: 6 + 4 + 2 = 12 mm, with 6 mm kept for a last bead
    assert repeat_count(180, [6, 4, 2], 6) == 14


@given(st.floats(4, 20), st.floats(1, 4), st.integers(1, 40))
def test_a_graduated_strand_is_as_long_as_its_beads_laid_out(largest: float, smallest: float, side: int) -> None:
    sizes = graduated_sizes(largest, smallest, side)
    assert len(sizes) == 2 * side + 1
    assert sizes == sorted(sizes[: side + 1]) + sorted(sizes[side + 1 :], reverse=True)
    assert graduated_length(largest, smallest, side) == pytest.approx(sum(sizes))


@given(st.floats(100, 600), st.floats(4, 20), st.floats(1, 4))
def test_two_beads_more_would_make_a_graduated_strand_too_long(length: float, largest: float, smallest: float) -> None:
    side = int(graduated_each_side(length, largest, smallest))
    assert sum(graduated_sizes(largest, smallest, side)) <= length + 1e-6
    assert sum(graduated_sizes(largest, smallest, side + 1)) > length - 1e-6


def test_a_strand_that_closes_on_nothing_is_refused() -> None:
    with pytest.raises(CannotBe):
        girth_inside(20, 8)
    with pytest.raises(CannotBe):
        graduated_sizes(4, 6, 3)


def test_inside_lengths_of_a_taut_chain_add_up() -> None:
    # independent script, section 7
    pitch = inside_pitch(6, 4, 3)
    assert chain_inside(10, pitch, 4) == pytest.approx(10 * 13 + 9 * 4)
    assert chain_overall(10, pitch, 4, 1.2) == pytest.approx(166 + 2.4)
    assert rings_between(10, 2) == 11


@given(st.floats(50, 1000), st.floats(3, 40), st.floats(0, 10))
def test_a_chain_takes_the_links_that_one_more_would_overfill(length: float, link: float, ring: float) -> None:
    least = links_for(length, link, ring)
    assert chain_inside(least, link, ring) >= length - 1e-6
    most = links_in(length, link, ring)
    assert chain_inside(most, link, ring) <= length + 1e-6
    assert chain_inside(most + 1, link, ring) > length


def test_a_chain_shorter_than_its_link_is_refused() -> None:
    with pytest.raises(CannotBe) as refused:
        links_in(10, 13, 4)
    assert refused.value.help == "13 mm or more"


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


def test_among_few_cords_each_fuller_bundle_than_before_is_of_2_3_4_7_or_19() -> None:
    # OEIS A084644
    records, best = [], 0.0
    for n in (2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 13, 18, 19):
        if bundle_fill(n) > best + 1e-9:
            records.append(n)
            best = bundle_fill(n)
    assert records == [2, 3, 4, 7, 19]


@pytest.mark.parametrize(
    ("n", "fill"), [(3, 0.6462), (4, 0.6863), (5, 0.6852), (8, 0.7325), (11, 0.7145), (19, 0.8032)]
)
def test_the_share_filled_is_that_of_the_closed_forms(n: int, fill: float) -> None:
    # independent script, section 12: a public table printed some of these from cut radii
    assert bundle_fill(n) == pytest.approx(fill, abs=0.00006)


@pytest.mark.parametrize("n", [12, 14, 15, 16, 17])
def test_a_bundle_without_a_closed_form_takes_the_next_larger_one(n: int) -> None:
    # a bore that is a little too wide still takes the bundle
    assert bundle_ratio(n) >= bundle_ratio(n - 1)
    assert bundle_ratio(n) == bundle_ratio(13 if n == 12 else 18)


def test_many_fibres_go_by_their_fill() -> None:
    # areas
    assert bundle_of_many(100, 0.2, 0.64) == pytest.approx(0.2 * 12.5)
    assert bundle_diameter(7, 2, 0.6) == pytest.approx(6)
    assert bundle_diameter(100, 0.2, 0.64) == pytest.approx(2.5)
    assert math.pi / 4 * bundle_of_strips(20, 3, 0.5, 0.75) ** 2 * 0.75 == pytest.approx(20 * 3 * 0.5)


def test_twenty_five_wraps_of_three_yarns_are_150_ends() -> None:
    # craft blog on tassels, 2009
    assert wound_ends(25, 3) == 150
    assert wound_yarn(25, 3, 100, 0) == 15000


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
    assert graded_links(7, 7, 2) == sum(7 + 2 * i for i in range(7))
    assert [whole_links(length, 3) for length in (1, 1.5, 20, 19.4)] == [0, 1, 7, 6]


@pytest.mark.parametrize("strips", [3, 4, 9, 10])
def test_a_point_of_drops_has_the_mean_of_its_strips(strips: int) -> None:
    half = math.ceil(strips / 2)
    side = [30 + 30 * i / (half - 1) for i in range(half)]
    drops = side + side[: strips - half][::-1]
    assert fringe_mean(strips, 30, 60, 1) == pytest.approx(sum(drops) / strips)
    assert fringe_steps(strips, 1) == half - 1
    assert fringe_mean(strips, 30, 60, 0) == 45
    assert fringe_steps(strips, 0) == strips - 1
