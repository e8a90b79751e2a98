"""What unfired clay bears while it is formed, drilled, dried and fired: common practice."""

from __future__ import annotations

from sheetgen.facts.fact import Fact

_PRACTICE = "common practice"


def _practice(value: float, name: str, unit: str = "mm") -> Fact:
    return Fact(value, name, unit=unit, source=_PRACTICE, grade="common practice")


PLUG = _practice(0.1, "how much wider than its ring a plug may be")
SPAN = _practice(12, "span of unfired clay that carries itself in the fire", "thicknesses")
ONE_GO = _practice(1.5, "widest drill to begin a hole with in unfired clay")
SAME_HOLE = _practice(0.06, "between a hole and its drill: less than dry clay lets one tell")
STRAW = _practice(2.5, "hole below which no straw and few cutters are so small, and it is drilled")
LEAST_VENT = _practice(0.8, "finished hole that lets steam and smoke out of a closed hollow, least")
LID = _practice(0.95, "share of an end's width from which a lid still shuts it, sunk into it", "share")
CREASES = _practice(0.4, "rise of a dome from which a flat disc creases, to its width", "share")
LEAST_INSIDE = _practice(1, "room left inside a box, wet, least")
DEEP_BOX = _practice(0.5, "height from which the walls of a box lean before they are dry, to its narrow side", "share")
