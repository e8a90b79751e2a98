"""What hangs in a view of the finished piece hangs, in the end, from something that stands."""

from __future__ import annotations

from typing import Any

import pytest

PROJECT = """\
title: Hanging
revision: 1
date: 2026-01-10
summary: Discs under each other.
makes: 1
level: first piece
parts:
  top: {kind: cut shape, clay: silver, shape: disc, across: 10 mm, thickness: 1 mm, TOP}
  middle: {kind: cut shape, clay: silver, shape: disc, across: 10 mm, thickness: 1 mm, hangs from: top}
  low: {kind: cut shape, clay: silver, shape: disc, across: 10 mm, thickness: 1 mm, hangs from: middle}
steps:
  - title: Cut
    parts: [top, middle, low]
  - title: Dry
    wait: drying
    does: [test]
  - title: Fire
    firing: silver
"""


@pytest.mark.parametrize(
    ("above", "circle"),
    [("middle", "top → middle → top"), ("low", "top → low → middle → top"), ("top", "top → top")],
)
def test_check_tells_that_parts_hang_from_each_other_in_a_circle(above: str, circle: str, library: Any) -> None:
    library.write("hanging/project.yaml", PROJECT.replace("TOP", f"hangs from: {above}"))
    [trouble] = library.check("hanging").troubles.errors
    assert circle in trouble.message
    assert "at: 0 mm, 0 mm" in trouble.help
    assert trouble.place.line == PROJECT[: PROJECT.index("  top:")].count("\n") + 1


def test_parts_that_hang_from_one_that_stands_are_well(library: Any) -> None:
    library.write("hanging/project.yaml", PROJECT.replace("TOP", '"at": "0 mm, 0 mm"'))
    assert not list(library.check("hanging").troubles)
