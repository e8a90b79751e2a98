"""The texture that a project says a piece bears shows on its outer face, and nowhere else."""

from __future__ import annotations

from typing import Any

import pytest
from shapely.geometry import LineString, Point, Polygon

from sheetgen.base.pen import Recorder
from sheetgen.draw import kinds
from sheetgen.parts.clay_piece import TEXTURES

CLAY = {"clay": "silver", "thickness": "1 mm"}
PIECES: dict[str, dict[str, object]] = {
    "cut shape": {"shape": "rectangle", "across": "20 mm", "down": "12 mm"},
    "dome": {"across": "30 mm", "rise": "5 mm", "holes": 8, "around": "18 mm", "opening": "3 mm"},
    "hollow lentil": {"across": "30 mm", "thick": "9 mm", "vent": "2 mm"},
    "ring band": {"size": "US 7", "width": "5 mm"},
    "tube": {"length": "22 mm", "inside": "8 mm"},
}
# what can be seen of each, and where of that its outer face is
FACES = {
    "cut shape": ("front",),
    "dome": ("front", "side"),
    "hollow lentil": (
        "front",
        "side",
        "back",
    ),  # two halves alike; it is drawn lying on one, whichever way it is turned
    "ring band": ("side",),
    "tube": ("front", "side"),
}


def signs(tried: Any, kind: str, turned: str, texture: str) -> list[list[tuple[float, float]]]:
    """The lines that a part has with its texture and lacks without it."""
    pens = []
    for word in (texture, "none"):
        found = tried(kind, **CLAY, **PIECES[kind], texture=word)
        assert not found.errors
        pen = Recorder()
        kinds.view(pen, found.part, turned)
        pens.append(pen.lines)
    return [points for line, points, _ in pens[0][len(pens[1]) :] if line == "thin"]


@pytest.mark.parametrize("texture", TEXTURES)
@pytest.mark.parametrize("kind", PIECES)
def test_each_texture_shows_on_the_outer_face_and_not_on_the_edge_or_the_back(
    kind: str, texture: str, tried: Any
) -> None:
    for turned in ("front", "side", "back"):
        drawn = signs(tried, kind, turned, texture)
        assert bool(drawn) == (turned in FACES[kind]), turned


@pytest.mark.parametrize("texture", [*TEXTURES, "ribs"])
def test_a_texture_ends_at_the_rim_and_at_the_holes(texture: str, tried: Any) -> None:
    # the dome as it was asked for: 30 mm across, eight holes of 3 mm on a circle of 18 mm
    middle, ring = Point(0, 15), Point(0, 15).buffer(9, 256).exterior
    holes = [ring.interpolate(i / 8, normalized=True).buffer(1.4) for i in range(8)]
    for run in signs(tried, "dome", "front", texture):
        line = LineString(run)
        assert line.within(middle.buffer(15.05, 256))
        assert not any(line.intersects(hole) for hole in holes)


def test_lines_run_as_they_are_named(tried: Any) -> None:
    for run in signs(tried, "cut shape", "front", "lines down"):
        assert len({round(x, 6) for x, _ in run}) == 1
    for run in signs(tried, "cut shape", "front", "lines across"):
        assert len({round(y, 6) for _, y in run}) == 1


def test_no_two_lines_lie_so_near_that_a_copy_makes_them_one(tried: Any) -> None:
    lines = [LineString(run) for run in signs(tried, "cut shape", "front", "lines across")]
    # over 12 mm, each 1 mm or more from the next and from the edges
    assert len(lines) >= 5
    edge = Polygon([(-10, 0), (10, 0), (10, 12), (-10, 12)]).exterior
    apart = [a.distance(b) for i, a in enumerate(lines) for b in lines[:i]]
    assert min(apart) > 1
    assert min(edge.distance(Point(line.interpolate(0.5, normalized=True))) for line in lines) > 1


def test_ribs_run_from_the_middle_of_a_dome_to_its_rim(tried: Any) -> None:
    for run in signs(tried, "dome", "front", "ribs"):
        ends = [complex(x, y - 15) for x, y in (run[0], run[-1])]
        across = (ends[0] * ends[1].conjugate()).imag
        assert across == pytest.approx(0, abs=1e-6), "the middle lies on the line"


def test_a_texture_that_is_not_known_is_told_with_what_may_be_meant(tried: Any) -> None:
    [trouble] = tried("dome", **CLAY, **PIECES["dome"], texture="rib").troubles
    assert (trouble.message, trouble.help) == ("'texture' cannot be 'rib'", "did you mean 'ribs'?")
    [trouble] = tried("tube", **CLAY, **PIECES["tube"], texture="ribs").troubles  # a tube has no middle to its face
    assert trouble.message == "'texture' cannot be 'ribs'"
    [trouble] = tried("washer", **CLAY, outside="18 mm", opening="9 mm", texture="dots").troubles
    assert "texture" in trouble.message
