"""Sluice box: in whole sixty-fourths of an inch (fractions), shrunk by 12 %; the metal weighed by volume."""

from __future__ import annotations

import math
import sys
from fractions import Fraction as F  # noqa: N817 - a box of fractions

SHRINKS, LEAST, MOST = F(12, 100), F(11, 100), F(13, 100)
WALL, ROOM = F(1, 16), F(1, 64)
CUBIC_INCH = 2.54**3  # cm³


def line(figure: str, what: str, value: F | float | tuple[F, F], words: str) -> None:
    """A row of the table: of a range both ends."""
    ends = value if isinstance(value, tuple) else (value,)
    told = " .. ".join(repr(float(one)) for one in ends)
    sys.stdout.write(f"{figure} | {what} | {told} | {words}\n")


def cut(inches: F) -> F:
    """To the nearest sixty-fourth."""
    return F(round(inches * 64), 64)


def fired(inches: F) -> tuple[F, F]:
    """Shrunk by the most and by the least."""
    return inches * (1 - MOST), inches * (1 - LEAST)


across, down, high = (cut(side / (1 - SHRINKS)) for side in (F(3, 2), F(5, 4), F(3, 8)))
line("box.wet_across", "base", across, "1 45/64 in")
line("box.wet_down", "base", down, "1 27/64 in")
line("box.wet_wall", "walls", high, "27/64 in")
between = down - 2 * WALL
line("box.wall_down", "butted between the others", between, "1 19/64 in")
strip = 2 * (across + between)
line("box.wall_strip", "four walls", strip, "6 in")
line("box.inside_across", "inside, fired", fired(across - 2 * WALL), "1.372 – 1.405 in")
line("box.inside_down", "inside, fired", fired(between), "1.128 – 1.155 in")
line("box.fired_height", "walls on base, fired", fired(high + WALL), "0.421 – 0.432 in")
lip = [cut(side - 2 * WALL - 2 * ROOM / (1 - SHRINKS)) for side in (across, down)]
line("box.lip_across", "lip", lip[0], "1 35/64 in")
line("box.lip_down", "lip", lip[1], "1 17/64 in")
room = (strip * high + 2 * across * down + lip[0] * lip[1]) * WALL
clay = float(room) * CUBIC_INCH * 6.5
line("box.clay_mass", "clay, half a gram up", math.ceil(clay * 2) / 2, "62.5 g")
line("box.fired_mass", "nine tenths are metal", clay * 0.9, "55.9 g")
line("materials.fen-silver", "a tenth more, up to whole grams", math.ceil(clay * 1.1), "69 g")
line("tools.inch-slats", "a sixteenth, in mm", 25.4 / 16, "1.5875")
