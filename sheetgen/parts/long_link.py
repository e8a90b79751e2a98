"""Long link: wire led straight round two pegs and closed, two round ends and two sides."""

from __future__ import annotations

import math

from sheetgen.base.spread import Spread, over
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.pegs import inside_pitch, open_belt
from sheetgen.parts import given
from sheetgen.parts.kind import figure
from sheetgen.parts.pegs import PegPair


class LongLink(PegPair):
    """An open belt over two pegs, exact, along the middle of the wire.

    The two ends meet edge to edge. Sprung wire opens when it leaves the pegs, and hammering or drawing lengthens a
    link: no figure here knows by how much.
    """

    kind = "long link"

    inside = given.maybe_length("inside width of one end; or give the peg", above=0)
    second_inside = given.maybe_length("inside width of the other end, if it differs", above=0)
    peg = given.maybe_length("the peg of one end, when the tool decides", above=0)
    second_peg = given.maybe_length("the peg of the other end, when the tool decides and it differs", above=0)
    gap = given.maybe_length("clear gap between the pegs; or give the length", at_least=0)
    length = given.maybe_length("finished length over all; or give the gap", above=0)
    trim = given.length("wire added to be trimmed off", default="1 mm", at_least=0)

    ends = ("inside", "second inside")
    crossed = False

    @property
    def insides(self) -> tuple[Spread | None, Spread | None]:
        """The inside widths wanted of both ends, mm."""
        return self.inside, self.second_inside

    def between(self) -> Spread:
        """Pegs may touch."""
        if self.gap is not None:
            return self.gap
        pegs = self.peg_used + self.second_used
        least = pegs.usual + 2 * self.wire.thickness
        if self.length is None or self.length.usual < least - 1e-9:
            message = f"two pegs of {self.peg_used.usual:g} mm and {self.second_used.usual:g} mm do not fit in it"
            raise CannotBe(message, f"{math.ceil(least * 10 - 1e-6) / 10:g} mm or more, or smaller pegs", "length")
        return over(lambda long, both: max(0.0, long - both), self.length, pegs + 2 * self.wire.thickness)

    @property
    def one_worked(self) -> str:
        """How the wire of one link is worked: equal pegs make it short."""
        a, b, wire = (f"{n:.6g}" for n in (self.peg_used.usual, self.second_used.usual, self.wire.thickness))
        c = f"{self.centres.usual:.6g}"
        if a == b:
            return f"2 × {c} + π × ({a} + {wire})"
        lean = f"({a} − {b}) ÷ 2"
        ends = f"π × (({a} + {b}) ÷ 2 + {wire}) + 2 × {lean} × asin({lean} ÷ {c})"
        return f"2 × √({c}² − ({lean})²) + {ends}"

    def belt(self) -> Spread:
        """An open belt."""
        return open_belt(self.peg_used, self.second_used, self.clear, self.wire.thickness)

    @figure("Inside length", "mm", "{clear} + {peg_used} + {second_used}")
    def pitch(self) -> Spread:
        """What one link adds to a chain pulled taut."""
        return inside_pitch(self.peg_used, self.second_used, self.clear)

    @figure("Width over all", "mm", "max({peg_used}, {second_used}) + 2 × {wire.thickness}", rounding="tenth")
    def across(self) -> float:
        """Outside width at the wider end."""
        return max(self.peg_used.usual, self.second_used.usual) + 2 * self.wire.thickness
