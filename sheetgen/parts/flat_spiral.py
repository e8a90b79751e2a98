"""Flat spiral: wire curled on itself in one plane."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base import views
from sheetgen.base.figure import Made
from sheetgen.base.spread import Spread, floor, spread
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.coils import spiral_across, spiral_turns, spiral_wire
from sheetgen.parts import given
from sheetgen.parts.kind import figure
from sheetgen.parts.wire_piece import WirePiece

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from sheetgen.base.figure import Size
    from sheetgen.base.pen import Pen, Point

QUARTERS = 4


class FlatSpiral(WirePiece):
    """Archimedes' spiral along the middle of the wire: every turn lies one pitch outside the last.

    The first turn is bent by hand with pliers and is never quite that curve, so allow for trimming.
    """

    kind = "flat spiral"

    across = given.maybe_length(
        "finished width through the outer end, filled with quarter turns; or give the turns", above=0
    )
    turns = given.maybe_number("turns; or give the width across", at_least=1)
    inside = given.length("opening in the middle; 0 starts from the very centre", default="0 mm", at_least=0)
    gap = given.length("gap between two turns; 0 for a close spiral", default="0 mm", at_least=0)
    tail = given.length("straight wire left at the outer end, which stays", default="0 mm", at_least=0)
    trim = given.length("wire added to be trimmed off", default="5 mm", at_least=0)

    @figure("Turn to turn", "mm", "{wire.thickness} + {gap}")
    def pitch(self) -> Spread:
        """How far each turn lies outside the last."""
        return self.gap + self.wire.thickness

    @property
    def first(self) -> Spread:
        """Radius of the wire's middle where the spiral starts, mm."""
        return (self.inside + self.wire.thickness) / 2 if self.inside.usual else spread(0)

    @property
    def turns_worked(self) -> str:
        """How the turns are worked."""
        if self.turns is not None:
            return f"{self.turns.usual:.6g}"
        wide, wire = f"{self.across.usual if self.across else 0:.6g}", f"{self.wire.thickness:.6g}"
        pitch = f"{self.pitch.usual:.6g}"
        return f"down(4 × (({wide} − {wire} + {pitch} ÷ 2) ÷ 2 − {self.first.usual:.6g}) ÷ {pitch}) ÷ 4"

    @figure("Turns to curl", "", "{turns_worked}")
    def curled(self) -> float:
        """As given, or as many quarter turns as the width takes."""
        if (self.turns is None) == (self.across is None):
            raise CannotBe("a spiral wants its width across or its turns, one of the two", "give one", "across")
        if self.across is None:
            return self.turns.usual if self.turns else 1
        turns = spiral_turns(self.inside.usual, self.wire.thickness, self.gap.usual, self.across.usual)
        return floor(turns * QUARTERS) / QUARTERS

    @figure("Radius at the start", "mm", "{start_worked}")
    def start(self) -> Spread:
        """From the centre to the middle of the wire, at the inner end."""
        return self.first

    @property
    def start_worked(self) -> str:
        """How the start is worked."""
        return f"({self.inside.usual:.6g} + {self.wire.thickness:.6g}) ÷ 2" if self.inside.usual else "0"

    @figure("Radius at the end", "mm", "{start} + {curled} × {pitch}")
    def end(self) -> Spread:
        """From the centre to the middle of the wire, at the outer end."""
        return self.first + self.curled * self.pitch

    @figure("Width that comes out", "mm", "2 × {end} − {pitch} ÷ 2 + {wire.thickness}", rounding="tenth")
    def wide(self) -> Spread:
        """Through the outer end, outside to outside."""
        return spiral_across(self.inside, self.wire.thickness, self.gap, self.curled)

    @property
    def one_worked(self) -> str:
        """How the wire is worked: the integral of the spiral's length, from its start to its end."""
        a, b = f"{self.start.usual:.6g}", f"{self.end.usual:.6g}"
        g = f"{self.growth:.6g}"
        from_end, from_start = f"√({b}² + {g}²)", f"√({a}² + {g}²)"
        even = f"({b} × {from_end} − {a} × {from_start}) ÷ (2 × {g})"
        tail = f" + {self.tail.usual:.6g}" if self.tail.usual else ""
        return f"{even} + {g} ÷ 2 × ln(({b} + {from_end}) ÷ ({a} + {from_start})){tail}"

    @property
    def growth(self) -> float:
        """How much the radius grows for each radian turned, mm."""
        return self.pitch.usual / (2 * math.pi)

    @figure("Wire in one spiral", "mm", "{one_worked}", rounding="tenth")
    def one(self) -> Spread:
        """Along the middle of the wire."""
        return spiral_wire(self.inside, self.wire.thickness, self.gap, self.curled) + self.tail

    def made(self) -> Iterator[Made]:
        """Width and wire."""
        yield Made("width, by its turns", "curled", self.across, lambda _turns: self.wide, "template", "turns")
        yield Made("wire for one", "cut", tool="ruler")

    def spiral(self, turns: float) -> list[Point]:
        """The middle of the wire round (0, 0), its outer end on the right."""
        radians, steps = turns * 2 * math.pi, math.ceil(turns * 48)
        radii = [
            (self.start.usual + self.growth * radians * i / steps, radians * (i / steps - 1)) for i in range(steps + 1)
        ]
        return [(radius * math.cos(angle), radius * math.sin(angle)) for radius, angle in radii]

    def view(self, pen: Pen) -> float:
        """The spiral face on, its outer end on the right."""
        return views.placed(pen, self.spiral(self.curled.usual), self.wire.thickness)

    def template(self, pen: Pen, size: Callable[[str], Size]) -> None:
        """The middle of the wire at true size."""
        points = self.spiral(self.curled.usual)
        left, half = min(x for x, _ in points), self.wire.thickness / 2
        pen.line([(x - left, y) for x, y in points], "cut")
        right, low = self.end.usual + half - left, max(y for _, y in points) + half
        pen.across(low + 5, right - size("wide"), right, size("wide").words, to=low)

    def template_note(self, size: Callable[[str], Size]) -> str:
        """What the line is."""
        return f"the line is the middle of the wire; {self.wire.name}, cut {size('cut').words} mm"
