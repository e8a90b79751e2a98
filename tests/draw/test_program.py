"""The program of a firing as a curve: the numbers that are set, and one curve a phase."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from itertools import combinations
from typing import Any

import pytest
from PIL import ImageFont

from sheetgen.base.interval import Interval
from sheetgen.base.material import Phase
from sheetgen.base.rounding import Rounder
from sheetgen.draw.program import program, programs
from sheetgen.render.pdf import font_files

SVG = "{http://www.w3.org/2000/svg}"


def words(drawing: Any) -> list[str]:
    return [one.text or "" for one in ET.fromstring(drawing.svg).iter(f"{SVG}text")]  # noqa: S314 - our own


def test_it_tells_how_fast_how_hot_how_long_and_how_cold_it_is_opened(demo: Any) -> None:
    version = demo.main("buoy-drops")
    [drawn] = programs(version, demo.worked("buoy-drops").rounder).values()
    # silver-low-fire, program least, in projects/stock/clays.yaml
    assert {"800", "°C/h", "650 °C", "50 °C"} <= set(words(drawn))
    assert any("30" in said and "45" in said and said.endswith("min") for said in words(drawn))
    assert "heat to 650 °C" in drawn.says


def test_two_phases_stand_side_by_side_in_their_order(demo: Any) -> None:
    worked = demo.worked("buoy-drops")
    copper = next(version for name, version in worked.versions.items() if "Copper" in name)
    [step] = [step for step in copper.steps if step.firing]
    drawn = program(step.firing, worked.rounder)
    heats = [f"{phase.to:.0f} °C" for phase in step.firing]
    assert [said for said in words(drawn) if said in heats] == heats
    assert drawn.width == 84


def test_on_a_phone_two_phases_stand_one_under_the_other_no_wider_than_its_screen(demo: Any) -> None:
    worked = demo.worked("buoy-drops")
    copper = next(version for name, version in worked.versions.items() if "Copper" in name)
    [drawn] = programs(copper, worked.rounder, stacked=True).values()
    # a screen of 390 px less its margins of 16 px, where a word of 3 mm is 16 px high: 67 mm
    assert drawn.width < (390 - 2 * 16) / 16 * 3
    lower = {said: float(one.attrib["y"]) for one in ET.fromstring(drawn.svg).iter(f"{SVG}text") if (said := one.text)}  # noqa: S314 - our own
    first, second = (f"{phase.to:.0f} °C" for phase in next(step.firing for step in copper.steps if step.firing))
    assert lower[second] > lower[first] + 17


def boxes(drawing: Any) -> list[tuple[str, float, float, float, float]]:
    """Each word with where it stands, mm: left, top, right, bottom, by the letters of our face."""
    [bold] = [path for name, path in font_files().items() if "Semibold" in name]
    face, found = ImageFont.truetype(str(bold), 1000), []
    for one in ET.fromstring(drawing.svg).iter(f"{SVG}text"):  # noqa: S314 - our own
        at, size, said = one.attrib, float(one.attrib["font-size"]), one.text or ""
        wide = face.getlength(said) / 1000 * size
        left = float(at["x"]) - wide * {"middle": 0.5, "end": 1.0}.get(at.get("text-anchor", ""), 0.0)
        found.append((said, left, float(at["y"]) - 0.7 * size, left + wide, float(at["y"])))
    return found


@pytest.mark.parametrize("many", [1, 2, 3, 4, 5, 6])
@pytest.mark.parametrize("stacked", [False, True], ids=["paper", "phone"])
def test_no_number_of_a_long_program_stands_on_another(many: int, *, stacked: bool) -> None:
    """A kiln is set by them."""
    phases = [
        Phase(
            to=250 + 120 * n,
            hold=Interval(90, 60, 120),
            rate=Interval(500 / 60, 500 / 60, 500 / 60),
            bed="carbon",
            cool_below=50,
        )
        for n in range(many)
    ]
    drawn = program(phases, Rounder(), stacked=stacked)
    words = boxes(drawn)
    assert len(words) == 6 * many  # how fast, its unit, how hot, how long, how cold, and "shut to"
    for (one, *a), (other, *b) in combinations(words, 2):
        apart = a[2] <= b[0] or b[2] <= a[0] or a[3] <= b[1] or b[3] <= a[1]
        assert apart, f"{one} stands on {other}"
    assert all(left >= 0 and right <= drawn.width for _, left, _, right, _ in words)
