"""Figure-eight link: wire led crosswise round two pegs, two loops on one line."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.pegs import crossed_belt
from sheetgen.parts import given
from sheetgen.parts.pegs import PegPair

if TYPE_CHECKING:
    from sheetgen.base.spread import Spread


class FigureEight(PegPair):
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

    ends = ("loop", "second loop")
    crossed = True

    @property
    def insides(self) -> tuple[Spread | None, Spread | None]:
        """The insides wanted of both loops, mm."""
        return self.loop, self.second_loop

    def between(self) -> Spread:
        """Room for the wire to cross, at the least."""
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

    @property
    def one_worked(self) -> str:
        """How the wire of one link is worked."""
        c, r = f"{self.centres.usual:.6g}", f"{self.radii.usual:.6g}"
        return f"2 × √({c}² − {r}²) + {r} × (π + 2 × asin({r} ÷ {c}))"

    def belt(self) -> Spread:
        """A crossed belt."""
        return crossed_belt(self.peg_used, self.second_used, self.clear, self.wire.thickness)
