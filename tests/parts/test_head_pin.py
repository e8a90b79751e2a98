"""Head-pin drops, wrapped or turned, of wire or of bought pins."""

from __future__ import annotations

import math
from typing import Any

import pytest


def test_a_turned_loop_takes_the_ten_millimetres_that_tutorials_cut_to(workshop: Any) -> None:
    # C8.3: 10 mm of 0.8 mm wire makes an inside of 2.383 mm; here in 1 mm wire, 10 ÷ π − 1
    drop = workshop("head-pin drop", wire="round-1", bead="bead-8", closed="turned", loop="2.1831 mm")
    assert drop.usual("end") == pytest.approx(10, abs=0.001)
    assert "it.neck" not in drop.figures


def test_a_wrapped_drop_hangs_by_loop_neck_beads_and_head(workshop: Any) -> None:
    drop = workshop("head-pin drop", wire="awg-22", bead="bead-8", head="1.5 mm")
    assert drop.usual("drop") == pytest.approx(2.5 + 4 * 0.6438033 + 8 + 1.5, abs=1e-5)
    assert drop.usual("beyond") == pytest.approx(27.096, abs=0.001)  # C8.2


def test_a_head_of_ones_own_takes_its_wire(workshop: Any) -> None:
    plain = workshop("head-pin drop", wire="awg-22", bead="bead-8")
    balled = workshop("head-pin drop", wire="awg-22", bead="bead-8", head_wire="7 mm", count=3)
    assert balled.usual("one") - plain.usual("one") == pytest.approx(7)
    assert workshop.taken(balled) == {
        "awg-22": pytest.approx(3 * math.ceil(balled.usual("one") + 3)),
        "bead-8": 3,
    }


def test_bought_pins_are_taken_and_no_wire(workshop: Any) -> None:
    drop = workshop("head-pin drop", wire="awg-22", bead="bead-8", pin="pin-40", count=2)
    assert workshop.taken(drop) == {"pin-40": 2, "bead-8": 2}
    assert "it.wire_length" not in drop.figures


def test_a_pin_too_short_for_beads_and_loop_is_told(workshop: Any) -> None:
    found = workshop.refused("head-pin drop", wire="awg-22", bead="bead-8", beads=3, pin="pin-40")
    # three beads of 8 mm and the published end of C8.2, its tail of 3 mm taken off: 24 + 24.096
    assert any(at == "pin" and helped == "48.1 mm or more" for at, _, helped in found)


@pytest.mark.parametrize(
    ("fields", "field", "helps"),
    [
        ({"wire": "awg-22", "bead": "tiny-hole"}, "wire", "0.5 mm or less"),
        ({"wire": "awg-22", "bead": "bead-8", "loop": "0.4 mm"}, "loop", "0.65 mm or more"),
        ({"wire": "awg-22", "bead": "bead-8", "closed": "glued"}, "closed", "wrapped"),
    ],
)
def test_a_drop_that_cannot_be_is_told_at_its_field(
    workshop: Any, fields: dict[str, str], field: str, helps: str
) -> None:
    found = workshop.refused("head-pin drop", **fields)
    assert any(at == field and helps in helped for at, _, helped in found)
