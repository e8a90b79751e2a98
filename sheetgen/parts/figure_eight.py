"""Figure-eight link: wire led crosswise round two pegs, two loops on one line."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base import sketches
from sheetgen.base.figure import Made
from sheetgen.base.pen import arc
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.pegs import crossed_belt, inside_pitch
from sheetgen.parts import given
from sheetgen.parts.kind import Finding, figure
from sheetgen.parts.wire_piece import WirePiece, drawer_worked, from_drawer

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from sheetgen.base.figure import Size
    from sheetgen.base.pen import Pen
    from sheetgen.base.spread import Spread


class FigureEight(WirePiece):
    """A crossed belt, exact: handbooks' series is 1 to 2 % short where pegs stand as close as here.

    The two strands cross one on top of the other; hammering lengthens a link, and no figure here knows by how much.
    """

    kind = "figure-eight link"

    loop = given.maybe_length("inside diameter of the first loop; or give the peg", above=0)
    second_loop = given.maybe_length("inside diameter of the second loop, if it differs", above=0)
    peg = given.maybe_length("the first peg, when the tool decides", above=0)
    second_peg = given.maybe_length("the second peg, when the tool decides and it differs", above=0)
    gap = given.maybe_length("clear gap between the pegs; or give the length", above=0)
    length = given.maybe_length("finished length over all; or give the gap", above=0)

    @property
    def second(self) -> tuple[Spread | None, Spread | None]:
        """Loop wanted and peg given for the second end: as the first, when the file gives neither."""
        own = self.second_loop is not None or self.second_peg is not None
        return (self.second_loop, self.second_peg) if own else (self.loop, self.peg)

    @property
    def first_worked(self) -> str:
        """How the first peg is worked."""
        return drawer_worked(self, "peg", self.loop, self.peg)

    @property
    def second_worked(self) -> str:
        """How the second peg is worked."""
        return drawer_worked(self, "peg", *self.second)

    @figure("First peg", "mm", "{first_worked}")
    def peg_used(self) -> float:
        """The first loop comes out at this inside."""
        return from_drawer(self, "peg", self.loop, self.peg, "loop")

    @figure("Second peg", "mm", "{second_worked}")
    def second_used(self) -> float:
        """The second loop comes out at this inside."""
        return from_drawer(self, "peg", *self.second, "second loop" if self.second_loop else "loop")

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
        found, wire = self.gap, self.wire.thickness
        if self.length is not None:
            found = self.length - 2 * wire - self.peg_used - self.second_used
        if found is None or found.usual < wire - 1e-9:
            message = f"there is no room for the wire ({wire:.2f} mm) to cross between the pegs"
            if self.gap is not None:
                raise CannotBe(message, f"{math.ceil(wire * 10) / 10:g} mm or more", "gap")
            least = 3 * wire + self.peg_used.usual + self.second_used.usual
            raise CannotBe(message, f"{math.ceil(least * 10) / 10:g} mm or more", "length")
        return found

    @property
    def radii(self) -> Spread:
        """Radii of the wire's middle line round both pegs, added, mm."""
        return (self.peg_used + self.second_used) / 2 + self.wire.thickness

    @figure("Peg centres apart", "mm", "{clear} + ({peg_used} + {second_used}) ÷ 2")
    def centres(self) -> Spread:
        """Centre to centre on the jig."""
        return self.clear + (self.peg_used + self.second_used) / 2

    @figure(
        "Wire in one link", "mm",
        "2 × √({centres}² − {radii}²) + {radii} × (π + 2 × asin({radii} ÷ {centres}))",
        rounding="tenth",
    )  # fmt: skip
    def one(self) -> Spread:
        """Along the middle of the wire."""
        return crossed_belt(self.peg_used, self.second_used, self.clear, self.wire.thickness)

    @figure("Inside, loop to loop", "mm", "{clear} + {peg_used} + {second_used}")
    def pitch(self) -> Spread:
        """What one link adds to a chain pulled taut."""
        return inside_pitch(self.peg_used, self.second_used, self.clear)

    @figure("Length over all", "mm", "{pitch} + 2 × {wire.thickness}", rounding="tenth")
    def outside(self) -> Spread:
        """Outside length of one link."""
        return self.pitch + 2 * self.wire.thickness

    def made(self) -> Iterator[Made]:
        """Pegs, gap and wire."""
        yield Made("wire for one", "cut", tool="ruler")
        yield Made("pegs, centre to centre", "centres", tool="jig")
        yield Made("length over all", "outside", self.length, None, "as bent, not hammered")

    def diagram(self, pen: Pen, size: Callable[[str], Size], k: float) -> str:
        """The two pegs and the wire's path."""
        first, second, gap = self.peg_used.usual, self.second_used.usual, self.clear.usual
        words = (
            f"gap {size('clear').words}",
            f"{size('centres').words} apart",
            f"pegs {first:g} and {second:g}, cut {size('cut').words}",
        )
        sketches.two_pegs(pen, first, second, gap, self.wire.thickness, words, k, crossed=True)
        return f"Wire led crosswise round two pegs of {first:g} and {second:g} mm, {words[1]} from centre to centre, clear {words[0]} mm"

    def view(self, pen: Pen) -> float:
        """The link hanging, its first loop above."""
        d = self.wire.thickness
        r1, r2 = (self.peg_used.usual + d) / 2, (self.second_used.usual + d) / 2
        upper, lower = (0.0, r1 + d / 2), (0.0, r1 + d / 2 + self.centres.usual)
        sketches.wire(pen, arc(upper, r1, 0, 360, 64)[:-1], d, closed=True)
        sketches.wire(pen, arc(lower, r2, 0, 360, 64)[:-1], d, closed=True)
        return self.outside.usual - d

    def tools(self) -> Iterator[tuple[str, float]]:
        """The pegs."""
        yield "peg", self.peg_used.usual
        yield "peg", self.second_used.usual

    def check(self) -> Iterator[Finding]:
        """A loop wants to be wider than its wire, and a peg that is given to be in the drawer."""
        least = math.ceil(self.wire.thickness * 2) / 2
        thick = f"is less than the wire is thick ({self.wire.thickness:.2f} mm)"
        for field, loop in (
            ("loop", self.loop), ("second loop", self.second_loop), ("peg", self.peg), ("second peg", self.second_peg),
        ):  # fmt: skip
            if loop and loop.usual < self.wire.thickness:
                yield Finding(field, thick, f"{least:g} mm or more")
        for field, peg in (("peg", self.peg), ("second peg", self.second_peg)):
            if peg:
                yield from self.not_owned("peg", peg.usual, field)
