"""Sundew brooch: the dome by its geometry, the ring of stones laid out as a polygon and measured (shapely)."""

from __future__ import annotations

import itertools
import math
import sys

from shapely.geometry import Point

LEAST, USUAL, MOST = 0.11, 0.12, 0.13  # shrinkage, across and in thickness
BALLS = (28, 32, 36, 40, 44, 50, 55, 60)
DRILLS = (1, 1.2, 1.5, 1.8, 2, 2.3, 2.5, 2.8, 3, 3.5, 4, 4.8)
THICK, AROUND = 2.5, 22
STONE_LOW, STONE_HIGH, STONE_DEEP = 2.4, 2.5, 1.5
WEB = 0.5  # wet clay kept between two seats


def line(figure: str, what: str, value: float | tuple[float, float], words: str) -> None:
    """A row of the table: of a range both ends."""
    told = f"{value[0]!r} .. {value[1]!r}" if isinstance(value, tuple) else repr(value)
    sys.stdout.write(f"{figure} | {what} | {told} | {words}\n")


def apart(across: float, stones: int) -> float:
    """From one corner of a regular polygon on that circle to the next, straight."""
    corners = [
        Point(across / 2 * math.cos(2 * math.pi * i / stones), across / 2 * math.sin(2 * math.pi * i / stones))
        for i in range(2)
    ]
    return float(corners[0].distance(corners[1]))


# The dome. The chord from crown to rim is half across of a disc of the same area (Archimedes).
radius = (17**2 + 6**2) / (2 * 6)
shell = 2 * math.hypot(17, 6) * (radius - THICK * (1 - USUAL) / 2) / radius / (1 - USUAL)
disc = round(shell, 1)
line("shell.wet_disc", "disc", shell, "39.3 mm")
ball = min(BALLS, key=lambda one: abs(one - 2 * (radius / (1 - USUAL) - THICK)))
line("shell.ball", "ball", ball, "55 mm")
middle, outer = (ball + THICK) / 2, ball / 2 + THICK
lies = 2 * math.asin(disc / 2 / 2 / middle)  # the chord crown to rim is half the disc
rise = outer * (1 - math.cos(lies))
line("shell.rise_out", "rise, fired", (rise * (1 - MOST), rise * (1 - LEAST)), "6.0 – 6.3 mm")
clay = math.pi * (disc / 2) ** 2 * THICK * 6.5 / 1000
line("shell.clay_mass", "clay, half a gram up", math.ceil(clay * 2) / 2, "20 g")
line("materials.fen-silver", "a tenth more, up to whole grams", math.ceil(clay * 1.1), "22 g")

# The ring of stones.
seat = (STONE_HIGH + 0.1) / (1 - MOST)
drill = min(one for one in DRILLS if one >= seat)
circle = round(AROUND / (1 - USUAL), 1)
line("dew.seat", "seat, largest stone, most shrinkage", seat, "2.99 mm")
line("dew.drill", "drill", drill, "3 mm")
line("dew.wet_around", "circle", AROUND / (1 - USUAL), "25 mm")
# As many as leave the web between two drilled holes on the circle that is marked, and so one fewer than do not.
stones = next(n for n in itertools.count(2) if apart(circle, n + 1) - drill < WEB)
line("dew.stones", "stones", stones, "22")
line("dew.even_gap", "gap between two of the largest, fired", apart(AROUND, stones) - STONE_HIGH, "0.63 mm")
line("dew.turn", "degrees", 360 / stones, "16.36")
line("dew.wet_pitch", "middle to middle, wet", apart(circle, stones), "3.6 mm")
line("dew.web", "clay between two holes, wet", apart(circle, stones) - drill, "0.56 mm")
line("dew.loosest", "loosest fit", drill * (1 - LEAST) - STONE_LOW, "0.27 mm")
line(
    "dew.needed",
    "clay, seat and floor, a hundredth up",
    math.ceil((STONE_DEEP + 0.5) / (1 - MOST) * 100) / 100,
    "2.3 mm",
)
line("materials.dew-glass", "and a tenth more", stones, "22+3")

# The stone in the middle.
hole = 4.1 / (1 - MOST)
heart = min(one for one in DRILLS if one >= hole)
deep = math.ceil((1.8 - 0.5) / (1 - MOST) * 10) / 10
line("heart.seat", "seat", hole, "4.71 mm")
line("heart.drill", "drill", heart, "4.8 mm")
line("heart.depth", "depth, a tenth up", deep, "1.5 mm")
line("heart.stands", "stands proud", (1.7 - deep * (1 - LEAST), 1.8 - deep * (1 - MOST)), "0.3 – 0.5 mm")
line("heart.needed", "seat and floor, a hundredth up", math.ceil((deep + 0.5 / (1 - MOST)) * 100) / 100, "2.08 mm")
line("heart.layers", "layers of 2.5", math.ceil((deep + 0.5 / (1 - MOST)) / THICK), "1")
line("heart.fired_floor", "floor", ((THICK - deep) * (1 - MOST), (THICK - deep) * (1 - LEAST)), "0.8 – 0.9 mm")
line("tools.drills", "", drill, "3, 4.8")
line("tools.balls", "", ball, "55")
line("tools.slats", "", THICK, "2.5")
line("materials.moss-glass", "", 1, "1")
