"""Coils: a helix, reckoned again along its points."""

from __future__ import annotations

import math
from typing import Any

import numpy as np
import pytest


def helix(radius: float, pitch: float, turns: float) -> float:
    angle = np.linspace(0, 2 * math.pi * turns, 200_001)
    points = np.stack([radius * np.cos(angle), radius * np.sin(angle), pitch * angle / (2 * math.pi)])
    return float(np.linalg.norm(np.diff(points), axis=0).sum())


def test_a_close_coil_is_the_helix_through_the_middle_of_its_wire(workshop: Any) -> None:
    coil = workshop("wire coil", wire="round-1", inside="4 mm", turns=7.5)
    assert coil.usual("one") == pytest.approx(helix(2.5, 1, 7.5), rel=1e-7)
    assert coil.usual("long") == pytest.approx(8.5)


def test_a_coil_that_springs_open_is_wound_with_more_turns_than_come_out(workshop: Any) -> None:
    # The same wire: 5 turns of π × 5.4 are 5.4 turns of π × 5.
    coil = workshop("wire coil", wire="round-1", inside="4.4 mm", springback="10 %", turns=5)
    assert coil.usual("to_wind") * math.pi * 5 == pytest.approx(5 * math.pi * 5.4)


def test_an_open_coil_is_a_steeper_helix(workshop: Any) -> None:
    coil = workshop("wire coil", wire="round-1", inside="4 mm", turns=6, gap="2 mm")
    assert coil.usual("one") == pytest.approx(helix(2.5, 3, 6), rel=1e-7)


def test_a_length_is_filled_with_whole_turns_and_one_more_would_not_fit(workshop: Any) -> None:
    coil = workshop("wire coil", wire="round-1", inside="4 mm", length="12.7 mm")
    assert coil.usual("wound") == 11
    assert coil.usual("long") <= 12.7 < coil.usual("long") + coil.usual("pitch")


def test_sprung_wire_is_wound_on_a_smaller_rod(workshop: Any) -> None:
    coil = workshop("wire coil", wire="round-1", inside="4.4 mm", springback="10 %", turns=5, ends="12 mm")
    assert coil.usual("rod_used") == 4
    assert coil.usual("inner") == pytest.approx(4.4)
    assert coil.usual("one") == pytest.approx(helix(2.7, 1, 5) + 12, rel=1e-7)


@pytest.mark.parametrize(
    ("fields", "field", "helps"),
    [
        ({"inside": "4 mm", "turns": "0.5"}, "turns", "1 or more"),
        ({"inside": "4 mm", "length": "1.5 mm"}, "length", "2 mm or more"),
        ({"inside": "4 mm", "turns": "3", "length": "9 mm"}, "turns", "give one"),
        ({"inside": "0.7 mm", "turns": "3"}, "inside", "2 mm"),
        ({"rod": "7 mm", "turns": "3"}, "rod", "6 mm and 8 mm"),
    ],
)
def test_a_coil_that_cannot_be_is_told_at_its_field(
    workshop: Any, fields: dict[str, str], field: str, helps: str
) -> None:
    found = workshop.refused("wire coil", wire="round-1", **fields)
    assert any(at == field and helps in helped for at, _, helped in found)
