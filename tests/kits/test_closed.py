"""When a bag is closed: at the last station that has something for it, and nothing is said of a bag of one thing."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from sheetgen.runs import paper


def told(made: Any, *run: Any) -> dict[str, list[tuple[str, str, str]]]:
    pick: Any = paper.views(made.lists(*run))["pick"]
    return {
        station.name: [
            (item.name, line.where.replace("\u00a0", " "), line.close) for item in station.items for line in item.lines
        ]
        for station in pick.stations
        if station.name != "paper"
    }


def test_a_bag_stays_open_until_the_last_station_that_fills_it(made: Any) -> None:
    clay, wire, thin = made.clay(), made.wire("Wire 16"), made.wire("Wire 20")
    stone, bead = made.stone("Bead"), made.stone("Stone")
    bags = made.bagged(("A clay", (clay, stone)), ("B wire", (wire, thin)), ("C bead", (bead,)))
    lines = [made.line(one, 12) for one in (clay, wire, thin, stone, bead)]
    found = told(made, made.kits(*lines, bags=4, kit=bags))
    assert found == {
        "clay": [("Clay", "bag A clay", "closed at stones")],
        "wire": [("Wire 16", "bag B wire", "more follows here"), ("Wire 20", "bag B wire", "close the bag")],
        "stones": [("Bead", "bag A clay", "close the bag"), ("Stone", "bag C bead", "close the bag")],
    }


def test_what_is_sent_by_itself_is_told_where_the_others_have_their_bag(made: Any) -> None:
    clay, stone = made.clay(), made.stone()
    bags = made.bagged(("A clay", (clay,)), ("B stones", (stone,)))
    whole = made.kits(made.line(clay, 12), made.line(stone, 3), kit=bags, posted=True)
    found = told(made, whole, replace(whole, only=frozenset({clay.id})))
    assert found["clay"] == [
        ("Clay", "bag A clay", "close the bag"),
        ("Clay", "only bag A clay", "close the bag"),
    ]
