"""Every working of every kind in clay, holes and stones, reckoned with a pencil, in every case that it has."""

from __future__ import annotations

from typing import Any

import pytest

CUT = {"clay": "silver", "thickness": "1.2 mm"}
BOX = {**CUT, "across": "31 mm", "down": "19 mm", "wall_height": "5 mm"}
BAIL = {**CUT, "width": "6 mm", "front_tail": "7 mm", "back_tail": "9 mm"}
STREWN = {"clay": "silver", "thickness": "2.3 mm", "stone": "glass-2", "gap": "0.8 mm"}
CASES: list[tuple[str, dict[str, Any]]] = [
    *(
        ("cut shape", {**CUT, "shape": s, "across": "13.3 mm", "down": "27.7 mm", "hole": "1.7 mm"})
        for s in ("teardrop", "leaf", "oval", "rectangle")
    ),
    *(("cut shape", {**CUT, "shape": "polygon", "across": "13.3 mm", "sides": n}) for n in (3, 4, 5, 8, 17)),
    ("cut shape", {**CUT, "shape": "leaf", "across": "0.9 mm", "down": "60 mm"}),
    ("cut shape", {**CUT, "shape": "disc", "across": "13.3 mm", "hole": "1.7 mm"}),
    ("cut shape", {**CUT, "shape": "disc", "cutter": "22 mm", "hole": "3.3 mm"}),
    ("cut shape", {**CUT, "shape": "disc", "across": "18.2 mm", "cut_with": "cutter"}),
    ("cut shape", {**CUT, "shape": "outline", "path": "M0 0 L20 0 L10 15 Z", "across": "17 mm"}),
    ("washer", {**CUT, "outside": "18.3 mm", "opening": "7.1 mm"}),
    ("washer", {**CUT, "outside": "18.3 mm", "opening": "7.1 mm", "cut_with": "cutters"}),
    ("washer", {**CUT, "outside_cutter": "20 mm", "opening_cutter": "12.3 mm"}),
    *(
        ("box", {**BOX, "corners": c, "lid": lid, "sizes_are": s})
        for c in ("butted", "mitred")
        for lid in ("none", "flat", "with a lip")
        for s in ("outside", "inside")
    ),
    ("box", {**BOX, "base_thickness": "1.7 mm"}),
    ("bail", {**BAIL, "inside": "3.7 mm"}),
    ("bail", {**BAIL, "former": "5 mm"}),
    ("bail", {**BAIL, "former": "5 mm", "meeting": "6.3 mm"}),
    ("hole", {"clay": "silver", "opening": "1.9 mm"}),
    ("hole", {"clay": "silver", "drill": "2.3 mm", "for_wire": "copper-16awg", "thickness": "1.3 mm"}),
    ("hole", {"clay": "silver", "for_wire": "copper-16awg", "clearance": "0.6 mm"}),
    ("stone ring", {"clay": "silver", "stone": "glass-2", "around": "17.3 mm", "across": "24 mm", "gap": "0.8 mm"}),
    ("stone ring", {"clay": "silver", "stone": "glass-2", "around": "17.3 mm", "number": 7}),
    ("scatter", {**STREWN, "across": "23.4 mm"}),
    ("scatter", {**STREWN, "across": "23.4 mm", "down": "31 mm", "shape": "rectangle", "share": "21 %"}),
    ("scatter", {**STREWN, "across": "23.4 mm", "down": "31 mm", "shape": "oval", "number": 9}),
    ("seat", {**CUT, "stone": "glass-2", "proud": "0.2 mm"}),
    ("seat", {**CUT, "stone": "oval-18"}),
    ("stone ring", {"clay": "silver", "stone": "glass-2", "around": "17.3 mm", "thickness": "2.3 mm"}),
    ("scatter", {**STREWN, "across": "30 mm", "down": "12 mm", "shape": "oval", "margin": "3 mm", "depth": "1 mm"}),
    ("stone row", {"clay": "silver", "stone": "glass-2", "along": "22 mm"}),
    ("stone row", {"clay": "silver", "stone": "glass-2", "along": "5.3 mm"}),
    ("stone row", {**CUT, "stone": "glass-2", "along": "22 mm", "width": "5 mm", "depth": "0.6 mm"}),
    ("bezel strip", {"sheet": "silver-thin", "stone": "oval-18", "high": "3 mm", "kerf": "0.3 mm"}),
    ("bezel cup", {"strip": "silver-thin", "stone": "oval-18", "base": "silver-thick"}),
    ("bezel cup", {"strip": "silver-thick", "stone": "diamond-6", "height": "2.2 mm"}),
    ("tube", {**CUT, "length": "22 mm", "inside": "8 mm", "release_sheet": "0.1 mm"}),
    ("tube", {**CUT, "length": "22 mm", "former": "9 mm", "overlap": "0 mm"}),
    ("ring band", {**CUT, "size": "US 7", "width": "6.3 mm"}),
    ("ring band", {**CUT, "size": "US 0.5", "width": "3 mm", "turns": 0}),
    ("dome", {**CUT, "across": "30 mm", "rise": "6 mm"}),
    ("dome", {**CUT, "across": "30 mm", "rise": "6 mm", "formed": "in", "hole": "2.1 mm"}),
    ("dome", {**CUT, "across": "30 mm", "rise": "6 mm", "holes": 7, "around": "18 mm", "opening": "2.6 mm"}),
    ("clay by mass", {"clay": "still", "mass": "2.3 g", "thickness": "1.3 mm", "count": 7}),
    ("clay by mass", {"clay": "still", "weight": "2.3 g", "rolling": "33 %"}),
]


@pytest.mark.parametrize(("kind", "fields"), CASES, ids=str)
def test_a_pencil_gets_every_figure(kind: str, fields: dict[str, Any], stocked: Any, pencil: Any) -> None:
    part = stocked(kind, **fields)
    assert not part.errors, "\n".join(map(str, part.errors))
    for figure in part.figures.values():
        value = pencil.reckon(figure.working)
        assert value == pytest.approx(figure.value.usual, rel=2e-4, abs=2e-4), f"{figure.key}: {figure.working}"


@pytest.mark.parametrize(("kind", "fields"), CASES, ids=str)
def test_every_part_says_what_it_is_made_from_and_draws_itself(kind: str, fields: dict[str, Any], stocked: Any) -> None:
    part = stocked(kind, **fields)
    assert all(take.amount.low >= 0 for take in part.part.takes)
    assert all(f"it.{size.figure}" in part.figures for size in part.part.sizes)
    assert all(size > 0 for _, size in part.part.tools)
    if part.part.flat:
        assert part.drawn().lines or part.drawn().ovals
