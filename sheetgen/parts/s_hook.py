"""S-hook: two half turns the opposite way, a straight between them, and a tip past each."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base.figure import Made
from sheetgen.base.pen import arc
from sheetgen.base.spread import Spread, over
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.paths import s_hook
from sheetgen.parts import given
from sheetgen.parts.kind import Finding, figure
from sheetgen.parts.wire_piece import WirePiece, drawer_worked, from_drawer

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from sheetgen.base.figure import Size
    from sheetgen.base.pen import Pen


class SHook(WirePiece):
    """Two half circles and straights, along the middle of the wire.

    It is the plain S, its mouths as wide as its bends. How far a tip is pressed in, how much the wire springs back and
    what hammering adds are not known here.
    """

    kind = "S-hook"

    upper = given.maybe_length("inside of the upper bend; or give the rod", above=0)
    lower = given.maybe_length("inside of the lower bend, if it differs", above=0)
    rod = given.maybe_length("the rod of the upper bend, when the tool decides", above=0)
    lower_rod = given.maybe_length("the rod of the lower bend, when the tool decides and it differs", above=0)
    length = given.length("finished length over all", above=0)
    tip = given.length("straight tip past each bend", default="3 mm", at_least=0)

    @property
    def lower_end(self) -> tuple[Spread | None, Spread | None]:
        """Bend wanted and rod given below: as above, when the file gives neither."""
        own = self.lower is not None or self.lower_rod is not None
        return (self.lower, self.lower_rod) if own else (self.upper, self.rod)

    @property
    def upper_worked(self) -> str:
        """How the upper rod is worked."""
        return drawer_worked(self, "rod", self.upper, self.rod)

    @property
    def lower_worked(self) -> str:
        """How the lower rod is worked."""
        return drawer_worked(self, "rod", *self.lower_end)

    @figure("Rod, upper bend", "mm", "{upper_worked}")
    def upper_used(self) -> float:
        """The upper bend comes out at this inside."""
        return from_drawer(self, "rod", self.upper, self.rod, "upper")

    @figure("Rod, lower bend", "mm", "{lower_worked}")
    def lower_used(self) -> float:
        """The lower bend comes out at this inside."""
        return from_drawer(self, "rod", *self.lower_end, "lower" if self.lower else "upper")

    @figure("Straight between the bends", "mm", "{length} − ({upper_used} + {lower_used}) ÷ 2 − 2 × {wire.thickness}")
    def middle(self) -> Spread:
        """What is left of the length beside both bends."""
        bends = (self.upper_used + self.lower_used) / 2 + 2 * self.wire.thickness
        if self.length.usual < bends.usual - 1e-9:
            message = f"two bends on these rods are {bends.usual:.1f} mm long by themselves"
            raise CannotBe(message, f"{math.ceil(bends.usual * 10) / 10:g} mm or more, or smaller bends", "length")
        return over(lambda long, both: max(0.0, long - both), self.length, bends)

    @figure(
        "Wire in one hook", "mm",
        "{middle} + π × ({upper_used} + {wire.thickness}) ÷ 2 + π × ({lower_used} + {wire.thickness}) ÷ 2 + 2 × {tip}",
        rounding="tenth",
    )  # fmt: skip
    def one(self) -> Spread:
        """Along the middle of the wire."""
        return s_hook(self.upper_used, self.lower_used, self.middle, self.tip, self.wire.thickness)

    @figure(
        "Length over all", "mm", "{middle} + ({upper_used} + {lower_used}) ÷ 2 + 2 × {wire.thickness}", rounding="tenth"
    )
    def outside(self) -> Spread:
        """As bent, not hammered."""
        return self.middle + (self.upper_used + self.lower_used) / 2 + 2 * self.wire.thickness

    @figure("Inside, bend to bend", "mm", "{length} − 2 × {wire.thickness}")
    def adds(self) -> Spread:
        """What the hook adds to a chain pulled taut."""
        return self.length - 2 * self.wire.thickness

    @figure("Width over all", "mm", "{upper_used} + {lower_used} + 3 × {wire.thickness}", rounding="tenth")
    def across(self) -> Spread:
        """Both bends stand out, one to each side of the middle."""
        return self.upper_used + self.lower_used + 3 * self.wire.thickness

    def made(self) -> Iterator[Made]:
        """Rods and wire."""
        yield Made("wire for one", "cut", tool="ruler")
        yield Made("upper bend", "upper_used", self.upper, None, "rod")
        yield Made("lower bend", "lower_used", self.lower_end[0], None, "rod")

    def tools(self) -> Iterator[tuple[str, float]]:
        """The rods."""
        yield "rod", self.upper_used.usual
        yield "rod", self.lower_used.usual

    def check(self) -> Iterator[Finding]:
        """Bends as wide as the wire at least; tips that stay inside the length."""
        wire = self.wire.thickness
        for field, bend in (
            ("upper", self.upper), ("lower", self.lower), ("rod", self.rod), ("lower rod", self.lower_rod),
        ):  # fmt: skip
            if bend and bend.usual < wire:
                least = math.ceil(wire * 2) / 2
                yield Finding(field, f"is less than the wire is thick ({wire:.2f} mm)", f"{least:g} mm or more")
        for field, rod in (("rod", self.rod), ("lower rod", self.lower_rod)):
            if rod:
                yield from self.not_owned("rod", rod.usual, field)
        most = self.middle.usual + min(self.upper_used.usual, self.lower_used.usual) / 2 + wire
        if self.tip.usual > most + 1e-9:
            yield Finding("tip", "reaches past the other bend", f"{math.floor(most * 10) / 10:g} mm or less")

    def template(self, pen: Pen, size: Callable[[str], Size]) -> None:
        """The middle of the wire with its two edges, to lay the hook on."""
        wire, middle, tip = self.wire.thickness, self.middle.usual, self.tip.usual
        r, s = (float(size("upper_used")) + wire) / 2, (float(size("lower_used")) + wire) / 2
        x, top = 2 * r, r
        bottom = top + middle
        line = [
            (0.0, top + tip), *arc((r, top), r, 180, 360), *arc((x + s, bottom), s, 180, 0), (x + 2 * s, bottom - tip)
        ]  # fmt: skip
        pen.line(line, "centre")
        for side in (1, -1):
            h = side * wire / 2
            edge = [(-h, top + tip), *arc((r, top), r + h, 180, 360), *arc((x + s, bottom), s - h, 180, 0)]
            pen.line([*edge, (x + 2 * s - h, bottom - tip)], "cut")
        pen.upright(-wire / 2 - 5, top - r - wire / 2, bottom + s + wire / 2, size("outside").words, to=-wire / 2)

    def template_note(self, size: Callable[[str], Size]) -> str:
        """Wire and rods."""
        rods = f"rods Ø {size('upper_used').words} and Ø {size('lower_used').words} mm"
        return f"lay the bent hook on it; {self.wire.name}, cut {size('cut').words} mm; {rods}"
