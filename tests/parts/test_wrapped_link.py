"""Wrapped-loop links: loop, wraps, neck and tails, each as published or along a helix."""

from __future__ import annotations

import math
from typing import Any

import numpy as np
import pytest

LINK = {"wire": "awg-22", "bead": "bead-8"}


def test_one_end_is_the_published_sum_of_loop_wraps_and_neck(workshop: Any) -> None:
    # C8.2: AWG 22, jaw 2.5, three wraps, tail 3: loop 9.877, neck 1.931, end 27.096; the trade bends at 30 mm
    link = workshop("wrapped-loop link", **LINK)
    assert link.usual("loop_wire") == pytest.approx(9.877, abs=0.001)
    assert link.usual("neck") == pytest.approx(1.931, abs=0.001)
    assert link.usual("beyond") == pytest.approx(27.096, abs=0.001)
    assert link.usual("beyond") < 30


def test_a_wrap_is_a_helix_on_its_stem(workshop: Any) -> None:
    one = workshop("wrapped-loop link", **LINK, wraps=1)
    two = workshop("wrapped-loop link", **LINK, wraps=2)
    d = 0.6438033
    angle = np.linspace(0, 2 * math.pi, 100_001)
    turn = np.stack([d * np.cos(angle), d * np.sin(angle), d * angle / (2 * math.pi)])
    helix = float(np.linalg.norm(np.diff(turn), axis=0).sum())
    assert two.usual("end") - one.usual("end") == pytest.approx(helix + d, rel=1e-6)


def test_the_link_adds_its_beads_necks_and_loops_to_a_chain(workshop: Any) -> None:
    link = workshop("wrapped-loop link", **LINK, beads=2, caps="1.5 mm")
    assert link.usual("stack") == 17.5
    assert link.usual("pitch") == pytest.approx(17.5 + 2 * (4 * 0.6438033 + 2.5), abs=1e-5)


def test_beads_of_uneven_length_make_the_link_a_range(workshop: Any) -> None:
    link = workshop("wrapped-loop link", wire="awg-22", bead="bead-6-ish")
    assert link["pitch"].high - link["pitch"].low == pytest.approx(0.4)


def test_wire_with_both_tails_and_all_beads_are_taken(workshop: Any) -> None:
    link = workshop("wrapped-loop link", **LINK, beads=2, count=5)
    assert workshop.taken(link) == {
        "awg-22": pytest.approx(5 * math.ceil(link.usual("one") + 6)),
        "bead-8": 10,
    }


@pytest.mark.parametrize(
    ("fields", "field", "helps"),
    [
        ({"wire": "awg-22", "bead": "tiny-hole"}, "wire", "0.5 mm or less"),
        ({"wire": "awg-22", "bead": "bead-8", "loop": "0.4 mm"}, "loop", "0.65 mm or more"),
        ({"wire": "awg-22", "bead": "bead-8", "wraps": "0"}, "wraps", "1 or more"),
    ],
)
def test_a_wrapped_link_that_cannot_be_is_told_at_its_field(
    workshop: Any, fields: dict[str, str], field: str, helps: str
) -> None:
    found = workshop.refused("wrapped-loop link", **fields)
    assert any(at == field and helps in helped for at, _, helped in found)
