"""Long link: wire led straight round two pegs and closed, two round ends and two sides."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base.figure import Made
from sheetgen.base.spread import Spread, over
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.pegs import inside_pitch, open_belt
from sheetgen.parts import given
from sheetgen.parts.kind import Finding, figure
from sheetgen.parts.wire_piece import WirePiece, drawer_worked, from_drawer

if TYPE_CHECKING:
    from collections.abc import Iterator


class LongLink(WirePiece):
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

    @property
    def second(self) -> tuple[Spread | None, Spread | None]:
        """Width wanted and peg given for the other end: as the first, when the file gives neither."""
        own = self.second_inside is not None or self.second_peg is not None
        return (self.second_inside, self.second_peg) if own else (self.inside, self.peg)

    @property
    def first_worked(self) -> str:
        """How the first peg is worked."""
        return drawer_worked(self, "peg", self.inside, self.peg)

    @property
    def second_worked(self) -> str:
        """How the second peg is worked."""
        return drawer_worked(self, "peg", *self.second)

    @figure("First peg", "mm", "{first_worked}")
    def peg_used(self) -> float:
        """One end comes out at this inside width."""
        return from_drawer(self, "peg", self.inside, self.peg, "inside")

    @figure("Second peg", "mm", "{second_worked}")
    def second_used(self) -> float:
        """The other end comes out at this inside width."""
        return from_drawer(self, "peg", *self.second, "second inside" if self.second_inside else "inside")

    @property
    def gap_worked(self) -> str:
        """How the gap is worked."""
        if self.gap is not None:
            return f"{self.gap.usual:.6g}"
        pegs = f"{self.peg_used.usual:.6g} − {self.second_used.usual:.6g}"
        return f"{self.length.usual if self.length else 0:.6g} − 2 × {self.wire.thickness:.6g} − {pegs}"

    @figure("Gap between the pegs", "mm", "{gap_worked}")
    def clear(self) -> Spread:
        """Clear gap between the pegs."""
        if (self.gap is None) == (self.length is None):
            raise CannotBe("a link wants its gap or its length, one of the two", "give one", "gap")
        if self.gap is not None:
            return self.gap
        pegs = self.peg_used + self.second_used
        least = pegs.usual + 2 * self.wire.thickness
        if self.length is None or self.length.usual < least - 1e-9:
            message = f"two pegs of {self.peg_used.usual:g} mm and {self.second_used.usual:g} mm do not fit in it"
            raise CannotBe(message, f"{math.ceil(least * 10 - 1e-6) / 10:g} mm or more, or smaller pegs", "length")
        return over(lambda long, both: max(0.0, long - both), self.length, pegs + 2 * self.wire.thickness)

    @figure("Peg centres apart", "mm", "{clear} + ({peg_used} + {second_used}) ÷ 2")
    def centres(self) -> Spread:
        """Centre to centre on the jig."""
        return self.clear + (self.peg_used + self.second_used) / 2

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

    @figure("Wire in one link", "mm", "{one_worked}", rounding="tenth")
    def one(self) -> Spread:
        """Along the middle of the wire."""
        return open_belt(self.peg_used, self.second_used, self.clear, self.wire.thickness)

    @figure("Inside length", "mm", "{clear} + {peg_used} + {second_used}")
    def pitch(self) -> Spread:
        """What one link adds to a chain pulled taut."""
        return inside_pitch(self.peg_used, self.second_used, self.clear)

    @figure("Length over all", "mm", "{pitch} + 2 × {wire.thickness}", rounding="tenth")
    def outside(self) -> Spread:
        """Outside length of one link."""
        return self.pitch + 2 * self.wire.thickness

    @figure("Width over all", "mm", "max({peg_used}, {second_used}) + 2 × {wire.thickness}", rounding="tenth")
    def across(self) -> float:
        """Outside width at the wider end."""
        return max(self.peg_used.usual, self.second_used.usual) + 2 * self.wire.thickness

    def made(self) -> Iterator[Made]:
        """Pegs, gap and wire."""
        yield Made("wire for one", "cut", tool="ruler")
        yield Made("pegs, centre to centre", "centres", tool="jig")
        yield Made("length over all", "outside", self.length, None, "as bent, not hammered")

    def tools(self) -> Iterator[tuple[str, float]]:
        """The pegs."""
        yield "peg", self.peg_used.usual
        yield "peg", self.second_used.usual

    def check(self) -> Iterator[Finding]:
        """The next link's wire goes into an end as wide as the wire, and a peg that is given is in the drawer."""
        least = math.ceil(self.wire.thickness * 2) / 2
        thick = f"is less than the wire is thick ({self.wire.thickness:.2f} mm)"
        ends = {
            "inside": self.inside,
            "second inside": self.second_inside,
            "peg": self.peg,
            "second peg": self.second_peg,
        }
        for field, end in ends.items():
            if end and end.usual < self.wire.thickness:
                yield Finding(field, thick, f"{least:g} mm or more")
        for field in ("peg", "second peg"):
            if (peg := ends[field]) is not None:
                yield from self.not_owned("peg", peg.usual, field)
