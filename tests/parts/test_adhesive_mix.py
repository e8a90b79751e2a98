"""Two-part adhesive: volume, parts, pot life and batches."""

from __future__ import annotations

import math
from typing import Any

import pytest

MIX = {"adhesive": "slow-epoxy", "seats": 44, "across": "3 mm", "depth": "1.5 mm"}


def test_the_published_44_seats_in_a_warm_room_want_5_batches(workshop: Any) -> None:
    # C13.3: 5 min at 23 °C, 20 s a seat, 30 °C: pot 3.078 min, 9 in a batch, 5 batches
    mix = workshop("adhesive mix", **MIX, room="30 °C")
    assert mix.usual("open_time") == pytest.approx(3.078, abs=0.001)
    assert (mix.usual("most_seats"), mix.usual("batches")) == (9, 5)


@pytest.mark.parametrize(("room", "minutes"), [(13, 10.0), (23, 5.0), (33, 2.5)])
def test_pot_life_halves_for_every_ten_degrees(workshop: Any, room: int, minutes: float) -> None:
    # C13.2: rule of thumb
    assert workshop("adhesive mix", **MIX, room=f"{room} °C").usual("open_time") == pytest.approx(minutes)


def test_no_batch_is_less_than_can_be_measured_out(workshop: Any) -> None:
    mix = workshop("adhesive mix", **MIX)
    assert mix.usual("batch_seats") * mix["one_seat"].high * 2 / 1000 < 0.3
    assert mix.usual("batch") == 0.3
    assert workshop.taken(mix) == {"slow-epoxy": pytest.approx(mix.usual("batches") * 0.3)}


def test_large_seats_are_filled_as_cylinders_with_their_waste(workshop: Any) -> None:
    mix = workshop("adhesive mix", adhesive="quiet", seats=20, across="12 mm", depth="3 mm", fill=0.4, waste="150 %")
    seat = math.pi * 36 * 3 * 0.4
    assert mix.usual("one_seat") == pytest.approx(seat)
    assert mix.usual("total") == pytest.approx(20 * seat * 2.5 / 1000)


def test_the_parts_make_the_whole_in_their_ratio(workshop: Any) -> None:
    mix = workshop("adhesive mix", **MIX)
    assert mix.usual("part_a") + mix.usual("part_b") == pytest.approx(mix.usual("batch"))
    assert mix.usual("part_b") / mix.usual("part_a") == pytest.approx(0.5)
    assert mix.usual("mass_a") + mix.usual("mass_b") == pytest.approx(mix.usual("batch") * 1.2)


def test_parts_that_do_not_weigh_alike_are_weighed_each_by_its_own_density(workshop: Any) -> None:
    # 2 : 1 by volume, densities as 1 : 0.94, is 100 : 47 by weight (composites supplier's guide)
    mix = workshop("adhesive mix", **MIX | {"adhesive": "two-densities"})
    assert mix.usual("weight_b") / mix.usual("weight_a") == pytest.approx(0.47)
    assert mix.figures["it.weight_a"].label == "Part A by weight"
    assert "it.mass_a" not in mix.figures
    # 0.3 mL is 0.2 mL of A at 1.1 g/mL and 0.1 mL of B at 1.034 g/mL, and five such are taken by weight
    assert workshop.taken(mix) == {"two-densities": pytest.approx(mix.usual("batches") * (0.2 * 1.1 + 0.1 * 1.034))}


def test_an_adhesive_of_one_density_says_that_both_parts_are_taken_to_weigh_alike(workshop: Any) -> None:
    mix = workshop("adhesive mix", **MIX)
    assert mix.figures["it.mass_b"].label == "Part B by weight, if both parts weigh alike"
    assert "it.weight_b" not in mix.figures


def test_an_adhesive_of_no_stated_pot_life_is_one_batch_and_promises_no_time(workshop: Any) -> None:
    mix = workshop("adhesive mix", **MIX | {"adhesive": "quiet"})
    assert mix.usual("batches") == 1
    assert "it.open_time" not in mix.figures


def test_all_pieces_are_mixed_for_together(workshop: Any) -> None:
    mix = workshop("adhesive mix", **MIX, count=2, room="30 °C")
    assert (mix.usual("seats_all"), mix.usual("batches")) == (88, 10)


def test_an_adhesive_sold_by_weight_is_taken_by_weight(workshop: Any) -> None:
    mix = workshop("adhesive mix", **MIX | {"adhesive": "by-weight-epoxy"})
    assert workshop.taken(mix) == {"by-weight-epoxy": pytest.approx(mix.usual("total") * 1.2)}


@pytest.mark.parametrize(
    ("change", "field", "helps"),
    [
        ({"each": "10 min", "room": "23 °C"}, "each", "5 min or less"),
        ({"room": "60 °C"}, "room", "45 °C or less"),
        ({"fill": "0 %"}, "fill", "20 % to 50 %"),
        ({"depth": "0 mm"}, "depth", "more than 0 mm"),
        ({"seats": "2"}, "seats", "several pieces at once"),
        ({"room": "20 mm"}, "room", "650 °C"),
    ],
)
def test_a_mix_that_cannot_be_is_told_at_its_field(
    workshop: Any, change: dict[str, str], field: str, helps: str
) -> None:
    found = workshop.refused("adhesive mix", **MIX | change)
    assert any(at == field and helps in helped for at, _, helped in found)
