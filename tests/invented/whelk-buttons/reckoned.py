"""Whelk buttons: a cap of a sphere, its area found by adding up its rings (scipy), and the disc of that area."""

from __future__ import annotations

import math
import sys

from scipy.integrate import quad
from scipy.optimize import brentq

ACROSS, RISE, THICK, AROUND, OPENING, HOLES, PIECES = 24, 5, 1.25, 15, 2, 8, 6
LEAST, USUAL, MOST = 0.11, 0.12, 0.13  # shrinkage, across and in thickness
BALLS = (28, 32, 36, 40, 44, 50, 55, 60)


def line(figure: str, what: str, value: float | tuple[float, float], words: str) -> None:
    """A row of the table: of a range both ends."""
    told = f"{value[0]!r} .. {value[1]!r}" if isinstance(value, tuple) else repr(value)
    sys.stdout.write(f"{figure} | {what} | {told} | {words}\n")


def cap(radius: float, lean: float) -> float:
    """Area of a cap: ring by ring from the crown to where the sphere leans so much, radians."""
    return float(quad(lambda at: 2 * math.pi * radius * math.sin(at) * radius, 0, lean)[0])


def flat(area: float) -> float:
    """Across a disc of that area."""
    return math.sqrt(4 * area / math.pi)


# The sphere through crown and rim: as far from the one as from the other.
radius = brentq(lambda r: math.hypot(ACROSS / 2, r - RISE) - r, RISE, 1000)
lean = math.asin(ACROSS / 2 / radius)
fired_thick = THICK * (1 - USUAL)
middle = radius - fired_thick / 2
disc = flat(cap(middle, lean))
wet_disc = round(disc / (1 - USUAL), 1)  # cut to a tenth
line("shell.radius", "sphere", radius, "16.9 mm")
line("shell.fired_thickness", "thickness, fired", (THICK * (1 - MOST), THICK * (1 - LEAST)), "1.0 – 1.2 mm")
line("shell.wet_disc", "disc", disc / (1 - USUAL), "28.6 mm")
ball = min(BALLS, key=lambda one: abs(one - 2 * (radius / (1 - USUAL) - THICK)))
line("shell.ball", "ball", ball, "36 mm")

# On the ball that is owned, wet: how far the disc's middle reaches round it.
inner = ball / 2
outer = inner + THICK
lies = brentq(lambda at: flat(cap(inner + THICK / 2, at)) - wet_disc, 0.01, 1.5)
line("shell.wet_across", "across the outer edge of the rim", 2 * outer * math.sin(lies), "27.3 mm")
line("shell.wet_high", "from the inner edge of the rim to the crown", outer - inner * math.cos(lies), "6.6 mm")
rise = outer * (1 - math.cos(lies))
line("shell.rise_out", "rise of the outside, fired", (rise * (1 - MOST), rise * (1 - LEAST)), "4.9 – 5.1 mm")
wide = 2 * outer * math.sin(lies)
line("shell.width_out", "width of the outside, fired", (wide * (1 - MOST), wide * (1 - LEAST)), "23.7 – 24.3 mm")
line("shell.wet_opening", "holes", OPENING / (1 - USUAL), "2.3 mm")
line(
    "shell.wet_around",
    "circle of the holes",
    flat(cap(middle, math.asin(AROUND / 2 / radius))) / (1 - USUAL),
    "16.9 mm",
)
clay = math.pi / 4 * wet_disc**2 * THICK * 6.5 / 1000
line("shell.clay_mass", "clay, a tenth up", math.ceil(clay * 10) / 10, "5.3 g")
left = math.pi / 4 * (wet_disc**2 - HOLES * 2.3**2) * THICK * 6.5 / 1000
line("shell.fired_mass", "metal, holes out", left * 0.9, "4.5 g")
line("materials.fen-silver", "six and a tenth more, up to whole grams", math.ceil(PIECES * clay * 1.1), "35 g")
line("tools.balls", "", ball, "36")
line("tools.drills", "", 2.3, "2.3")
line("tools.slats", "", THICK, "1.25")
