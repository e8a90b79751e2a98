"""Flat spiral: wire curled on itself in one plane."""

from __future__ import annotations

import math
from collections.abc import Iterator

from sheetgen.base.flat import Flat
from sheetgen.base.outline import Outline
from sheetgen.base.pen import Point
from sheetgen.parts import field
from sheetgen.parts.figure import figure, need, size
from sheetgen.parts.piece import Piece
from sheetgen.parts.wire_piece import WirePiece


def middle(piece: Piece) -> list[Point]:
    """The middle of the wire round (0, 0), its outer end on the right, mm."""
    turns, start, growth = (piece.usual(f) for f in (FlatSpiral.curled, FlatSpiral.start, FlatSpiral.pitch))
    radians, steps = turns * 2 * math.pi, math.ceil(turns * 48)
    radii = [(start + growth * turns * i / steps, radians * (i / steps - 1)) for i in range(steps + 1)]
    return [(radius * math.cos(angle), radius * math.sin(angle)) for radius, angle in radii]


def flat(piece: Piece) -> Iterator[Flat]:
    """The middle of the wire."""
    points = middle(piece)
    left = min(x for x, _ in points)
    yield Flat(Outline(tuple((x - left, y) for x, y in points)), closed=False)


# fmt: off
class FlatSpiral(WirePiece):
    """Archimedes' spiral along the middle of the wire: every turn lies one pitch outside the last.

    The first turn is bent by hand with pliers and is never quite that curve, so allow for trimming.
    """

    kind = "flat spiral"

    across = field.maybe_length("finished width through the outer end, filled with quarter turns; or give the turns", above=0)
    turns = field.maybe_number("turns; or give the width across", at_least=1)
    inside = field.length("opening in the middle; 0 starts from the very centre", default="0 mm", at_least=0)
    gap = field.length("gap between two turns; 0 for a close spiral", default="0 mm", at_least=0)
    tail = field.length("straight wire left at the outer end, which stays", default="0 mm", at_least=0)
    trim = field.length("wire added to be trimmed off", default="5 mm", at_least=0)

    either = (("across", "turns"),)

    pitch = figure("Turn to turn", "mm", "wire.thickness + gap", about="How far each turn lies outside the last.")
    curled = figure("Turns to curl", "", "turns or down(4 × spiral_turns(across, wire.thickness, pitch, start)) ÷ 4",
                    about="As given, or as many quarter turns as the width takes.",
                    needs=(need("curled ≥ 1", "is less than one turn", at="across", when="across", least="spiral_across(start + pitch, pitch, wire.thickness)"),))
    start = figure("Radius at the start", "mm", "(inside + wire.thickness) ÷ 2 if inside else 0 mm",
                   about="From the centre to the middle of the wire, at the inner end.")
    end = figure("Radius at the end", "mm", "start + curled × pitch", about="From the centre to the middle of the wire, at the outer end.")
    wide = figure("Width that comes out", "mm", "spiral_across(end, pitch, wire.thickness)", "out",
                  about="Through the outer end, outside to outside.")
    one = figure("Wire in one spiral", "mm", "spiral_wire(inside, wire.thickness, gap, curled) + (tail if tail)", "out",
                 about="Along the middle of the wire.")

    sizes = (
        size("width, by its turns", "curled", finished="across", fires="wide", tool="template", counted="turns"),
        size("wire for one", "cut", tool="ruler"),
    )
    flat = flat
