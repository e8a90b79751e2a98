"""Texture only thins: what is rolled first is never thinner than what the clay is rolled to."""

from __future__ import annotations

from typing import Any

import pytest

from sheetgen.parts.catalogue import kinds

ROLLED = {"clay": "silver", "thickness": "1 mm"}
PIECES = {
    "cut shape": {"shape": "disc", "across": "20 mm"},
    "dome": {"across": "30 mm", "rise": "5 mm"},
    "hollow lentil": {"across": "30 mm", "thick": "9 mm", "vent": "2 mm"},
    "ring band": {"size": "US 7", "width": "5 mm"},
    "tube": {"length": "22 mm", "inside": "8 mm"},
}


@pytest.mark.parametrize("kind", PIECES)
def test_rolled_first_thinner_than_the_thickness_is_refused(kind: str, tried: Any) -> None:
    for first in ("0.75 mm", "3 cards"):
        thin = tried(kind, **ROLLED, **PIECES[kind], rolled_first=first)
        assert [(thin.blamed(t), t.help) for t in thin.errors] == [("rolled first", "1 mm or more")]
    for first in ("1 mm", "1.5 mm"):
        assert not tried(kind, **ROLLED, **PIECES[kind], rolled_first=first).errors


def test_every_kind_that_is_rolled_first_is_tried() -> None:
    assert {name for name, kind in kinds().items() if kind.with_role("rolled first")} == set(PIECES)
