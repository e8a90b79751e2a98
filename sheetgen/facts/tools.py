"""How far off a tool of the drawer may be, and how large a template is laid: common practice."""

from __future__ import annotations

from sheetgen.base import reckoning
from sheetgen.facts.fact import Fact

_PRACTICE = "common practice"


def _practice(value: float, name: str, unit: str = "mm") -> Fact:
    return Fact(value, name, unit=unit, source=_PRACTICE, grade="common practice")


# The arithmetic itself chooses by these; it knows no facts, so they are told from it.
NEAR = _practice(reckoning.NEAR, "how far off a tool may be, to the size wanted", "share")
NEAR_LEAST = _practice(reckoning.NEAR_MM, "how far off a tool may always be")
OVER = _practice(reckoning.OVER_MM, "how far over the size a drill for it may always be")
DOME_NEAR = _practice(0.15, "how far off a ball or cup to form a dome may be, to the size wanted", "share")
CUTTER_REACH = _practice(0.2, "how far off a round cutter may be that is taken instead of a knife")
SLAT_REACH = _practice(0.03, "how far off a slat may be: less than clay springs back under the roller")
LONGEST_TEMPLATE = _practice(1000, "longest template: the arm of a bench, and a dozen pages")
