"""Plover ring: the ellipse walked round (scipy), the plate's area measured on an outline grown evenly (shapely)."""

from __future__ import annotations

import math
import sys

from scipy.integrate import quad
from shapely.geometry import Polygon

LONG, NARROW, ROOM, STRIP, RIM = 10.1, 8.1, 0.1, 0.3, 0.5


def line(figure: str, what: str, value: float, words: str) -> None:
    """A row of the table."""
    sys.stdout.write(f"{figure} | {what} | {value!r} | {words}\n")


def up(x: float, step: float) -> float:
    """To the next step."""
    return math.ceil(x / step - 1e-9) * step


def most(sheet: tuple[float, float], blank: tuple[float, float], gap: float) -> int:
    """Blanks in rows, all one way."""
    a, b = sheet
    return max(int((a + gap) // (x + gap)) * int((b + gap) // (y + gap)) for x, y in (blank, blank[::-1]))


# UK letters count 1.25 mm of circumference from C, 40 mm: N½ is eleven and a half on.
round_finger = 40 + 1.25 * 11.5
inside = round_finger / math.pi
meets = round(round_finger + 1.2 * math.pi + 0.5, 1)
line("shank.meets", "round the middle, and 0.5 mm for a band over 4 mm", round_finger + 1.2 * math.pi + 0.5, "58.6 mm")
line("shank.cut", "and 0.5 mm, half a mm up", up(meets + 0.5, 0.5), "59.5 mm")
line("shank.outside", "outside", (round_finger + 0.5) / math.pi + 2.4, "19.9 mm")
line("shank.strip", "width", 5, "5 mm")
line("shank.us", "inches 0.458 and 0.032 each", (inside / 25.4 - 0.458) / 0.032, "US 7")
line("shank.uk", "as asked", 11.5, "UK N½")
line("shank.iso", "circumference", round_finger, "ISO 54.4")
line("shank.jp", "thirds of a mm from 13 mm", 3 * inside - 38, "JP 13.9")
line("shank.area", "share of a sheet of 60 × 30", 60 * 30 / most((60, 30), (up(meets + 0.5, 0.5), 5), 0), "300 mm²")
line("shank.mass", "closed", meets * 5 * 1.2 * 10.36 / 1000, "3.6 g")

edge = quad(lambda at: math.hypot(LONG / 2 * math.sin(at), NARROW / 2 * math.cos(at)), 0, 2 * math.pi)[0]
wall_meets = round(edge + math.pi * (ROOM + STRIP), 1)
line("cup.strip_meets", "round the stone, on the strip's middle", edge + math.pi * (ROOM + STRIP), "29.9 mm")
strip_cut = up(wall_meets + 0.5, 0.5)
line("cup.strip_cut", "and 0.5 mm, half a mm up", strip_cut, "30.5 mm")
wall = round(0.4 * 4.2, 1)
line("cup.wall", "two fifths of the stone", 0.4 * 4.2, "1.7 mm")
base = [round(side + ROOM + 2 * (STRIP + RIM), 1) for side in (LONG, NARROW)]
line("cup.base_across", "base", base[0], "11.8 mm")
line("cup.base_down", "base", base[1], "9.8 mm")
line("cup.wall_area", "share of a strip of 300 × 5", 300 * 5 / most((300, 5), (strip_cut, wall), 0), "83.33 mm²")
corners = [(LONG / 2 * math.cos(t), NARROW / 2 * math.sin(t)) for t in (math.tau * i / 4000 for i in range(4000))]
plate = Polygon(corners).buffer((base[0] - LONG) / 2, quad_segs=400).area
line("cup.base_area", "the stone's outline grown evenly", plate, "90.9 mm²")
line(
    "cup.base_blank",
    "share of a sheet of 60 × 30, 1 mm round",
    60 * 30 / most((58, 28), (base[0], base[1]), 1),
    "180 mm²",
)
weight = (wall_meets * wall * STRIP * 10.49 + plate * 0.5 * 10.36) / 1000
line("cup.mass", "wall and base", weight, "0.63 g")
line("materials.sterling-sheet-1-2", "", 1, "1 of 59.5 × 5 mm")
line("materials.fine-strip", "", 1, "1 of 30.5 × 1.7 mm")
line("materials.sterling-sheet-0-5", "a mm round, half a mm up", 1, "1 of 14 × 12 mm")
line("materials.plover-agate", "", 1, "1")
