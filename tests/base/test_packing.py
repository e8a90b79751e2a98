"""Packing: no two pieces overlap, none leaves its page, and published exact instances are filled well."""

from __future__ import annotations

from math import ceil
from typing import TYPE_CHECKING

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sheetgen.base.packing import Placed, pack, packed

if TYPE_CHECKING:
    from collections.abc import Sequence

TALL = 10_000.0
# Hopper and Turton (2000), C1a, as in hyperpack 1.3.0: sixteen pieces fill a sheet of 20 × 20.
C1A = [
    (2, 12), (7, 12), (8, 6), (3, 6), (3, 5), (5, 5), (3, 12), (3, 7), (5, 7), (2, 6), (3, 2), (4, 2), (3, 4), (4, 4),
    (9, 2), (11, 2),
]  # fmt: skip
# The perfect squared square of order 21 (Duijvestijn) and the squared rectangle of order 9 (Moroń); areas verified.
SQUARED_SQUARE = [2, 4, 6, 7, 8, 9, 11, 15, 16, 17, 18, 19, 24, 25, 27, 29, 33, 35, 37, 42, 50]
SQUARED_RECTANGLE = [1, 4, 7, 8, 9, 10, 14, 15, 18]
INSTANCES = {
    "Hopper and Turton C1a": (C1A, 20),
    "squared square of order 21": ([(s, s) for s in SQUARED_SQUARE], 112),
    "squared rectangle, 33 wide": ([(s, s) for s in SQUARED_RECTANGLE], 33),
}
side = st.floats(1, 90)
sides = st.lists(st.tuples(side, side), min_size=1, max_size=25)


def apart(a: Placed, b: Placed) -> bool:
    return (
        a.x + a.width <= b.x + 1e-6 or b.x + b.width <= a.x + 1e-6
        or a.y + a.height <= b.y + 1e-6 or b.y + b.height <= a.y + 1e-6
    )  # fmt: skip


def check(pages: list[list[Placed]], pieces: Sequence[tuple[float, float]], room: tuple[float, float]) -> None:
    """Every piece once, on its page, over no other, as large as it was."""
    assert sorted(p.piece for page in pages for p in page) == list(range(len(pieces)))
    for page in pages:
        for i, one in enumerate(page):
            was = pieces[one.piece]
            assert (one.width, one.height) == (was[::-1] if one.turned else was)
            assert one.x >= 0
            assert one.y >= 0
            assert one.x + one.width <= room[0] + 1e-6
            assert one.y + one.height <= room[1] + 1e-6
            assert all(apart(one, other) for other in page[i + 1 :])


@pytest.mark.parametrize("turn", [False, True])
@pytest.mark.parametrize("name", INSTANCES)
def test_a_published_exact_instance_takes_no_more_than_15_per_cent_over_its_area(name: str, turn: bool) -> None:  # noqa: FBT001
    pieces, width = INSTANCES[name]
    [page] = pages = pack(pieces, (width, TALL), turn=turn)
    check(pages, pieces, (width, TALL))
    used = max(p.y + p.height for p in page)
    assert used <= 1.15 * sum(a * b for a, b in pieces) / width


@settings(max_examples=40)
@given(sides, st.booleans(), st.booleans())
def test_no_two_pieces_overlap_and_none_leaves_its_page(
    pieces: list[tuple[float, float]],
    turn: bool,  # noqa: FBT001
    tidy: bool,  # noqa: FBT001
) -> None:
    check(pack(pieces, (100, 120), turn=turn, tidy=tidy), pieces, (100, 120))


@settings(max_examples=25)
@given(st.lists(st.floats(2, 60), min_size=2, max_size=20))
def test_discs_with_a_gap_round_each_do_not_touch(diameters: list[float]) -> None:
    gap = 3.0
    for page in pack([(d + gap, d + gap) for d in diameters], (100 + gap, 120 + gap)):
        discs = [(p.x + p.width / 2, p.y + p.height / 2, (p.width - gap) / 2) for p in page]
        for i, (x, y, r) in enumerate(discs):
            assert r <= x + 1e-6
            assert x + r <= 100 + gap / 2 + 1e-6
            for a, b, s in discs[i + 1 :]:
                assert ((x - a) ** 2 + (y - b) ** 2) ** 0.5 >= r + s + gap - 1e-6


def test_the_same_pieces_are_laid_the_same_way_every_time() -> None:
    assert pack(C1A, (20, TALL), turn=True) == pack(C1A, (20, TALL), turn=True)


def test_a_piece_that_fits_only_turned_is_turned() -> None:
    [[placed]] = pack([(90, 10)], (20, 100), turn=True)
    assert placed.turned
    assert (placed.width, placed.height) == (10, 90)


def test_a_piece_that_fits_no_page_is_refused() -> None:
    with pytest.raises(ValueError, match="does not fit"):
        pack([(90, 10)], (20, 100))


def test_as_few_pages_as_area_allows_for_equal_tiles() -> None:
    # twelve of 50 × 40 to a page of 150 × 160, counted by hand
    assert [len(page) for page in pack([(50, 40)] * 30, (150, 160), tidy=True)] == [12, 12, 6]


def test_twenty_thousand_blanks_are_soon_laid_whatever_is_smaller_going_into_the_last_gap() -> None:
    """Six of 50 × 50 fill a sheet of 150 × 100; of 12,001 the last has a sheet to itself, and 10 × 10 go beside it."""
    pages = pack([(50, 50)] * 12_001 + [(10, 10)] * 8_000, (150, 100))
    assert [len(page) for page in pages[:2001]] == [6] * 2000 + [1 + 125]
    assert sum(map(len, pages)) == 20_001
    assert len(pages) == 2001 + ceil((8_000 - 125) / 150)


def test_equal_pieces_are_packed_once_and_lie_as_they_would_each_time() -> None:
    pieces, room = ((30.0, 20.0), (20.0, 10.0), (12.0, 40.0)), (60.0, 80.0)
    found = packed(pieces, room, turn=True, trials=20)
    assert packed(tuple(pieces), room, turn=True, trials=20) is found
    assert [list(page) for page in found] == pack(pieces, room, turn=True, trials=20)
