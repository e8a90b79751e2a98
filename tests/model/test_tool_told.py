"""A tool as the list of tools names it."""

from __future__ import annotations

import re
from typing import Any

import pytest

from sheetgen.base.material import Tool
from sheetgen.base.rounding import Rounder
from sheetgen.model.tool_told import tool_told

DRILLS = Tool(id="drills", name="Drills, turned by hand", singular="Drill", sizes=(1.5, 2.5))
TAPERS = Tool(id="tapers", name="Tapers", sizes=(1.5, 2.5))


@pytest.mark.parametrize(
    ("tool", "sizes", "said"),
    [
        (DRILLS, [2.5], "Drill: 2.5\u00a0mm"),
        (DRILLS, [1.5, 2.5], "Drills: 1.5 and 2.5\u00a0mm"),
        (DRILLS, [], "Drills"),
        (TAPERS, [2.5], "Tapers: 2.5\u00a0mm"),
    ],
)
def test_one_size_of_a_set_is_one_drill_and_not_drills(tool: Tool, sizes: list[float], said: str) -> None:
    assert tool_told(tool, sizes, Rounder()) == said


def test_who_opens_a_ring_with_two_pliers_has_two_on_the_list(demo: Any) -> None:
    short = {}
    for worked in demo.check().worked:
        sheet = demo.handout(worked.name)
        if any("two pliers" in str(row.text) for row in sheet.rows):
            names = [name.lower() for group in sheet.tools for name in group.names if "pliers" in name]
            if sum(2 if name.startswith("two ") else 1 for name in names) < 2:
                short[worked.name] = names
    assert short == {}


def test_no_tool_of_the_demonstration_is_told_in_the_plural_for_one_size(demo: Any) -> None:
    # of balls a set of buttons takes several of one size
    plural = {}
    for worked in demo.check().worked:
        names = [name for group in demo.handout(worked.name).tools for name in group.names]
        found = [name for name in names if re.fullmatch(r"[^:]*s: [\d.½]+\u00a0mm", name) and "Balls" not in name]
        if found:
            plural[worked.name] = found
    assert plural == {}
