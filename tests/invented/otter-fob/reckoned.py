"""Otter fob: wire as a path of points and straights between tangents (shapely); bronze by the room it fills."""

from __future__ import annotations

import math
import sys

from shapely.geometry import LineString

PATTERN, SPRUE, OTTERS = 1.9, 2.5, 3
LIGHT, HEAVY, BRONZE = 0.95, 0.98, 8.8  # wax, g/cm³


def line(figure: str, what: str, value: float, words: str) -> None:
    """A row of the table."""
    sys.stdout.write(f"{figure} | {what} | {value!r} | {words}\n")


def up(x: float, step: float) -> float:
    """To the next step."""
    return math.ceil(x / step - 1e-9) * step


wax = (LIGHT + HEAVY) / 2
line("otter.times", "room of a gram of wax, full of bronze", BRONZE / wax, "9.12")
cast = PATTERN / wax * BRONZE
line("otter.cast", "each", cast, "17.3 g")
line("otter.finished", "a twentieth filed away", cast * 0.95, "16.5 g")
line("otter.tree", "three and their sprue", (OTTERS * PATTERN + SPRUE) / wax * BRONZE, "74.8 g")
most = (OTTERS * PATTERN + SPRUE) / LIGHT * BRONZE * 1.5
line("otter.melted", "lightest wax, largest button, a tenth up", up(most, 0.1), "114 g")
line("otter.back", "of what is weighed out, less the three", most - OTTERS * cast, "62 g")
line("materials.casting-bronze", "up to fives", up(most, 5), "115 g")

# A figure-eight, quarter for quarter: from the tip of one loop round to where the wire leaves it for the other.
small, large = (4 + 1) / 2, (5 + 1) / 2
gap = 18 - 2 - 4 - 5
centres = gap + (4 + 5) / 2
turn = math.acos((small + large) / centres)  # from the line of centres to where the crossing strand touches
half = [
    (small * math.cos(a), small * math.sin(a)) for a in (math.pi - i / 20000 * (math.pi - turn) for i in range(20001))
]
half += [
    (centres - large * math.cos(a), -large * math.sin(a))
    for a in (turn + i / 20000 * (math.pi - turn) for i in range(20001))
]
one = 2 * LineString(half).length
line("eights.peg_used", "", 4, "4 mm")
line("eights.second_used", "", 5, "5 mm")
line("eights.clear", "between the pegs", gap, "7 mm")
line("eights.centres", "", centres, "11.5 mm")
line("eights.one", "wire", one, "43 mm")
line("eights.pitch", "inside", 16, "16 mm")
eight_cut = up(one + 2, 1)
line("eights.cut", "and 2 mm, a mm up", eight_cut, "45 mm")
line("eights.wire_length", "eight, up to fives", up(8 * eight_cut, 5), "360 mm")
line("eights.per_spool", "out of 2 m", 2000 // eight_cut, "44")
line("eights.mass", "", math.pi / 4 * one * 8.5 / 1000, "0.29 g")
links = next(n for n in range(1, 99) if n * 16 + 2 >= 120)
line("chain.links", "until it is 120 over all", links, "8")
line("chain.inside", "", links * 16, "128 mm")
line("chain.over_all", "", links * 16 + 2, "130 mm")
line("chain.over", "", links * 16 + 2 - 120, "10 mm")
oval = LineString([(0, 0), (7 - 5, 0)]).buffer(5 / 2 + 0.5, quad_segs=4000).length
line("ovals.one", "straight sides and round ends", oval, "22.8 mm")
line("ovals.outside", "", 9, "9 mm")
line("ovals.aspect", "inside width over wire", 5, "5")
line("ovals.coil_length", "three turns", 3, "3 mm")
line("ovals.wire_length", "and the coil's ends, up to whole mm", up(3 * oval + 20, 1), "89 mm")
line("materials.brass-1", "a tenth more, up to fives", up((8 * eight_cut + 3 * oval + 20) * 1.1, 5), "495 mm")
line("tools.pegs", "", 4, "4, 5")
