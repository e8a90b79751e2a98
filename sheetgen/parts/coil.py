"""Coil: wire wound on a rod and left as a coil, close or with gaps: a spring end, a bead, a sleeve."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base import views
from sheetgen.base.figure import Made
from sheetgen.base.spread import Spread, floor
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.coils import coil_length, coil_wire
from sheetgen.formulas.loops import ring_outside
from sheetgen.parts import given
from sheetgen.parts.kind import Finding, figure
from sheetgen.parts.wire_piece import OnRod, WirePiece, from_drawer, too_tight

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from sheetgen.base.pen import Pen


class Coil(OnRod, WirePiece):
    """A helix on the mean diameter: each turn is √((π × (inside + wire))² + pitch²).

    The inside is that of the rod; sprung wire opens by `springback`, which is measured on a trial coil and not worked.
    How stiff the coil is as a spring is not known here.
    """

    kind = "wire coil"

    inside = given.maybe_length("inside diameter; or give the rod", above=0)
    rod = given.maybe_length("the rod to wind it on, when the tool decides", above=0)
    springback = given.ratio("how much the inside opens when the coil leaves the rod", default="0 %", at_most=0.3)
    turns = given.maybe_number("turns; or give the length", at_least=1)
    length = given.maybe_length("finished length, filled with whole turns; or give the turns", above=0)
    gap = given.length("gap between two turns; 0 for a close coil", default="0 mm", at_least=0)
    ends = given.length("straight wire left at both ends, together, which stays", default="0 mm", at_least=0)

    @figure("Rod", "mm", "{rod_worked}")
    def rod_used(self) -> float:
        """Rod to wind on."""
        return from_drawer(self, "rod", self.wanted, self.rod, "inside")

    @figure("Inside that comes out", "mm", "{rod_used} × (1 + {springback})")
    def inner(self) -> Spread:
        """Inside diameter off the rod."""
        return self.rod_used * (1 + self.springback)

    @figure("Turn to turn", "mm", "{wire.thickness} + {gap}")
    def pitch(self) -> Spread:
        """Middle of one turn to the middle of the next."""
        return self.gap + self.wire.thickness

    @property
    def turns_worked(self) -> str:
        """How the turns are worked."""
        if self.turns is not None:
            return f"{self.turns.usual:.6g}"
        long = self.length.usual if self.length else 0
        return f"down(({long:.6g} − {self.wire.thickness:.6g}) ÷ {self.pitch.usual:.6g})"

    @figure("Turns that come out", "", "{turns_worked}")
    def wound(self) -> float:
        """As given, or as many whole ones as the length takes."""
        if (self.turns is None) == (self.length is None):
            raise CannotBe("a coil wants its turns or its length, one of the two", "give one", "turns")
        if self.length is None:
            return self.turns.usual if self.turns else 1
        whole = floor((self.length.usual - self.wire.thickness) / self.pitch.usual)
        if whole < 1:
            least = math.ceil((self.wire.thickness + self.pitch.usual) * 10 - 1e-6) / 10
            raise CannotBe("a coil so short has less than one turn", f"{least:g} mm or more, or thinner wire", "length")
        return whole

    @figure(
        "Turns to wind on the rod", "",
        "{wound} × ({inner} + {wire.thickness}) ÷ ({rod_used} + {wire.thickness})",
        when=lambda part: part.springback.usual > 0,
    )  # fmt: skip
    def to_wind(self) -> Spread:
        """More than come out where the coil springs open: the same wire goes round a wider coil fewer times."""
        return self.wound * (self.inner.usual + self.wire.thickness) / (self.rod_used + self.wire.thickness)

    @figure("Length that comes out", "mm", "{wound} × {pitch} + {wire.thickness}", rounding="tenth")
    def long(self) -> Spread:
        """End to end, without straight ends."""
        return coil_length(self.wire.thickness, self.pitch, self.wound)

    @figure("Outside", "mm", "{inner} + 2 × {wire.thickness}")
    def outside(self) -> Spread:
        """Outside diameter."""
        return ring_outside(self.inner, self.wire.thickness)

    @figure(
        "Wire in one coil", "mm",
        "{wound} × √((π × ({inner} + {wire.thickness}))² + {pitch}²) + {ends}",
        rounding="tenth",
    )  # fmt: skip
    def one(self) -> Spread:
        """Along the middle of the wire."""
        return coil_wire(self.inner, self.wire.thickness, self.pitch, self.wound) + self.ends

    def made(self) -> Iterator[Made]:
        """Rod, turns and wire."""
        off: Callable[[float], Spread] = lambda rod: rod * (1 + self.springback)  # noqa: E731
        yield Made("inside", "rod_used", self.inside, off, "rod")
        wound = "to_wind" if self.springback.usual else "wound"
        yield Made("length, by its turns", wound, self.length, lambda _turns: self.long, "calliper", "turns")
        yield Made("wire for one", "cut", tool="ruler")

    def tools(self) -> Iterator[tuple[str, float]]:
        """The rod."""
        yield "rod", self.rod_used.usual

    def check(self) -> Iterator[Finding]:
        """Wire that goes round its rod."""
        if self.rod:
            yield from self.not_owned("rod", self.rod.usual, "rod")
        yield from too_tight(self.wire, {"rod" if self.rod else "inside": self.inner})

    def view(self, pen: Pen) -> float:
        """The coil upright."""
        long = self.long.usual
        views.coil(pen, self.outside.usual, long, self.pitch.usual, self.wire.thickness)
        return long
