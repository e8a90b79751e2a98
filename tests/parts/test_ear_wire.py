"""Ear wires: as long as their drawn line, and hanging where the drawing has the loop."""

from __future__ import annotations

import math
from typing import Any

import pytest
from shapely.geometry import LineString

from sheetgen.base.pen import Recorder
from sheetgen.draw.kinds import diagram, view

HOOK = {"wire": "round-1", "loop": "2 mm", "front": "8 mm", "bend": "10 mm", "back": "20 mm"}


def test_the_wire_is_the_sum_of_its_straights_and_arcs_and_of_its_drawn_line(workshop: Any) -> None:
    hook = workshop("ear wire", **HOOK, count=2)
    line = LineString(hook.drawn().lines[0][1])
    assert hook.usual("one") == pytest.approx(math.pi * 3 + 8 + math.pi * 11 / 2 + 20)
    assert hook.usual("one") == pytest.approx(line.length, rel=1e-3)
    # 54.7 mm and 2 mm of trim are cut at 57 mm
    assert workshop.taken(hook) == {"round-1": 2 * 57}


def test_it_hangs_by_half_its_bend_its_front_and_half_its_loop(workshop: Any) -> None:
    hook = workshop("ear wire", **HOOK)
    assert hook.usual("drop") == 5 + 8 + 1
    # the back is the longer side: half of the outside of the bend, and the back
    assert hook.usual("long") == pytest.approx(6 + 20)
    assert workshop("ear wire", **HOOK | {"front": "24 mm"}).usual("long") == pytest.approx(6 + 24 + 2)


def test_the_owned_rod_decides_the_bend(workshop: Any) -> None:
    hook = workshop("ear wire", **HOOK | {"bend": "9.5 mm"})
    assert hook.usual("bend_used") == 10
    assert hook.part.tools == (("rod", 10),)


def test_what_hangs_in_it_lies_at_the_bottom_of_its_loop(workshop: Any) -> None:
    piece, pen = workshop("ear wire", **HOOK).part, Recorder()
    # 14 mm below the inside of the bend, whose wire of 1 mm lies on the ear
    assert view(pen, piece) == pytest.approx(1 + 14)
    assert diagram(Recorder(), piece, 1).count(" to ") == len(("loop", "front", "bend", "back"))


@pytest.mark.parametrize(
    ("change", "field", "helps"),
    [
        ({"wire": "awg-14"}, "wire", "1.1 mm or less"),
        ({"loop": "0.5 mm"}, "loop", "1 mm or more"),
        ({"back": "5 mm"}, "back", "8 mm or more"),
        ({"bend": "30 mm"}, "bend", "12 mm"),
    ],
)
def test_a_hook_that_cannot_be_worn_is_told_at_its_field(
    workshop: Any, change: dict[str, str], field: str, helps: str
) -> None:
    found = workshop.refused("ear wire", **HOOK | change)
    assert any(at == field and helps in helped for at, _, helped in found)
