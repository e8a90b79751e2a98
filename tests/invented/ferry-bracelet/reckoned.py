"""Ferry bracelet: links as outlines grown by half a wire (shapely), the weave as circles in space (scipy)."""

from __future__ import annotations

import math
import sys

from scipy.optimize import brentq, minimize
from shapely.geometry import LineString, Point

THICK, THIN, COPPER = 1.5, 1.2, 8.96
FINE = 4000  # corners of a quarter turn


def line(figure: str, what: str, value: float, words: str) -> None:
    """A row of the table."""
    sys.stdout.write(f"{figure} | {what} | {value!r} | {words}\n")


def up(x: float, step: float) -> float:
    """To the next step."""
    return math.ceil(x / step - 1e-9) * step


def grams(wire: float, long: float) -> float:
    """Of copper wire."""
    return math.pi * wire**2 / 4 * long * COPPER / 1000


# A long link: its inside is a straight of 14 mm grown by 2.5 mm; the middle of its wire lies 0.75 mm farther out.
centres = 22 - 2 * THICK - 5
one = LineString([(0, 0), (centres, 0)]).buffer(2.5 + THICK / 2, quad_segs=FINE).length
line("links.peg_used", "peg", 5, "5 mm")
line("links.clear", "between the pegs", centres - 5, "9 mm")
line("links.centres", "pegs' middles", centres, "14 mm")
line("links.one", "wire in a link", one, "48.4 mm")
line("links.pitch", "inside", centres + 5, "19 mm")
line("links.across", "width over all", 5 + 2 * THICK, "8 mm")
link_cut = up(one + 1, 1)
line("links.cut", "and 1 mm, a mm up", link_cut, "50 mm")
line("links.mass", "a link", grams(THICK, one), "0.77 g")

inner = 4.5 * 1.03
line("rings.rod_wanted", "springs by 3 %", 4.5 / 1.03, "4.37 mm")
line("rings.rod_used", "rod", 4.5, "4.5 mm")
line("rings.inner", "off the rod", inner, "4.64 mm")
ring = Point(0, 0).buffer((inner + THIN) / 2, quad_segs=FINE).length
line("rings.one", "wire in a ring", ring, "18.3 mm")
line("rings.wire_length", "eight and the coil's ends, up to fives", up(8 * ring + 20, 5), "170 mm")

# The chain, link for link: taut, inside to inside.
fittings = 12 + 2 * inner
chain = {n: n * (centres + 5) + (n - 1) * inner + fittings for n in range(1, 20)}
links = min(chain, key=lambda n: abs(chain[n] - 183))
line("chain.links", "nearest to 183", links, "7")
line("chain.rings", "between, and two at the ends", links - 1 + 2, "8")
line("chain.inside", "comes out", chain[links], "182.1 mm")
line("chain.over_all", "and a wire at each end", chain[links] + 2 * THICK, "185.1 mm")
line("chain.over", "less than asked", chain[links] - 183, "−0.9 mm")
line("chain.unit", "a link more", chain[9] - chain[8], "23.6 mm")

loop = Point(0, 0).buffer((12 + THICK) / 2, quad_segs=FINE).length
bar = 12 + 2 * THICK + 2 * 5
eye = Point(0, 0).buffer((2 * THICK + THICK) / 2, quad_segs=FINE).length
line("clasp.ring", "wire in the ring", loop, "42.4 mm")
line("clasp.bar_made", "5 mm beyond at both ends", bar, "25 mm")
line("clasp.bar_one", "with a turn for its eye", bar + eye, "39.1 mm")
ring_cut, bar_cut = up(loop + 2, 1), up(bar + eye + 2, 1)
line("clasp.ring_cut", "and 2 mm", ring_cut, "45 mm")
line("clasp.bar_cut", "and 2 mm", bar_cut, "42 mm")
line("clasp.slim", "half a bar", bar / 2, "12.5 mm")
line("clasp.mass", "ring and bar", grams(THICK, loop + bar + eye), "1.3 g")

# Two in two: rings of 1.2 mm wire, sawn, closed. Two lie level, 0.6 mm to either side of the middle; the next two stand
# upright through them. They are taut when the middle of a wire is one wire from the middle of the nearest.
closed = 6.5 - 0.4 / math.pi
r = (closed + THIN) / 2


def nearest(apart: float) -> float:
    """Least distance between the middles of one level ring and one upright ring, their groups so far apart."""

    def between(turns: list[float]) -> float:
        a, b = turns
        level = (r * math.cos(a), r * math.sin(a), THIN / 2)
        upright = (apart + r * math.cos(b), THIN / 2, r * math.sin(b))
        return math.dist(level, upright)

    starts = [
        (a, b) for a in (-0.4, -0.1, 0.1, 0.4) for b in (math.pi - 0.4, math.pi - 0.1, math.pi + 0.1, math.pi + 0.4)
    ]
    return min(
        float(minimize(between, start, method="Nelder-Mead", options={"xatol": 1e-10, "fatol": 1e-12}).fun)
        for start in starts
    )


grows = brentq(lambda apart: nearest(apart) - THIN, r, 2 * r - 1e-6, xtol=1e-10)
line("charm_chain.inner", "closed", closed, "6.37 mm")
line("charm_chain.aspect", "inside over wire", closed / THIN, "5.31")
four = math.ceil((1 + math.sqrt(2)) * THIN * 100) / 100
line("charm_chain.least", "round four wires, a hundredth up", four, "2.9 mm")
line("charm_chain.pitch", "longer by two rings", grows, "6.23 mm")
repeats = next(n for n in range(1, 99) if (n - 1) * grows + closed + 2 * THIN >= 60)
line("charm_chain.repeats", "until it is 60 long", repeats, "10")
line("charm_chain.comes_out", "over all", (repeats - 1) * grows + closed + 2 * THIN, "64.9 mm")
line("charm_chain.rings", "two in each", 2 * repeats, "20")
line("charm_chain.over", "as nothing else is given", 10, "10 mm")
line("charm_chain.per_length", "two in each repeat", 20 / grows, "3.21")
sawn = math.pi * (6.5 + THIN)
line("charm_chain.one", "wire, the cut included", sawn, "24.2 mm")
line("charm_chain.mass", "all rings", grams(THIN, 2 * repeats * (sawn - 0.4)), "4.8 g")
weave = 2 * repeats * sawn + 20
line("charm_chain.wire_length", "and the coil's ends, up to fives", up(weave, 5), "505 mm")
line("materials.copper-1-5", "a tenth more, up to fives", up((7 * link_cut + ring_cut + bar_cut) * 1.1, 5), "485 mm")
line("materials.copper-1-2", "a tenth more, up to fives", up((8 * ring + 20 + weave) * 1.1, 5), "740 mm")
line("tools.pegs", "", 5, "5")
line("tools.rods", "", 4.5, "4.5, 6.5, 12")
