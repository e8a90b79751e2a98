"""S-hook: two half turns the opposite way, a straight between them, and a tip past each."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base import forming, sketches
from sheetgen.base.figure import Made
from sheetgen.base.like import said, worded
from sheetgen.base.pen import arc
from sheetgen.base.spread import Spread, over
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.paths import s_hook
from sheetgen.parts import given
from sheetgen.parts.kind import Finding, figure
from sheetgen.parts.wire_piece import WirePiece, drawer_worked, from_drawer, too_tight

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from sheetgen.base.figure import Size
    from sheetgen.base.pen import Pen, Point


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
        bends = {"upper": self.upper, "lower": self.lower, "rod": self.rod, "lower rod": self.lower_rod}
        yield from too_tight(self.wire, bends)
        for field, rod in (("rod", self.rod), ("lower rod", self.lower_rod)):
            if rod:
                yield from self.not_owned("rod", rod.usual, field)
        most = self.middle.usual + min(self.upper_used.usual, self.lower_used.usual) / 2 + self.wire.thickness
        if self.tip.usual > most + 1e-9:
            yield Finding("tip", "reaches past the other bend", f"{math.floor(most * 10) / 10:g} mm or less")

    def hook(self, upper: float, lower: float) -> tuple[list[Point], Point, Point]:
        """The middle of the wire on two rods, mm, and the middles of its bends."""
        wire, middle, tip = self.wire.thickness, self.middle.usual, self.tip.usual
        r, s = (upper + wire) / 2, (lower + wire) / 2
        above, below = (r, r), (2 * r + s, r + middle)
        line = [(0.0, r + tip), *arc(above, r, 180, 360), *arc(below, s, 180, 0), (2 * r + 2 * s, r + middle - tip)]
        return line, above, below

    def template(self, pen: Pen, size: Callable[[str], Size]) -> None:
        """The middle of the wire with its two edges, to lay the hook on."""
        wire, (upper, lower) = self.wire.thickness, (float(size(n)) for n in ("upper_used", "lower_used"))
        line, _, below = self.hook(upper, lower)
        pen.line(line, "centre")
        for edge in sketches.band(line, wire):
            pen.line(edge, "cut")
        low = below[1] + (lower + wire) / 2
        pen.upright(-wire / 2 - 5, -wire / 2, low + wire / 2, size("outside").words, to=-wire / 2)

    def diagram(self, pen: Pen, size: Callable[[str], Size], k: float) -> str:
        """The wire round its two rods."""
        upper, lower, long, cut = (size(n) for n in ("upper_used", "lower_used", "outside", "cut"))
        d = self.wire.thickness
        line, above, below = self.hook(upper, lower)
        low, words = below[1] + (lower + d) / 2, f"rods {upper.words} and {lower.words}"

        def rods(on: Pen) -> None:
            for rod, (x, y) in ((upper, above), (lower, below)):
                on.circle((x * k, y * k), rod * k, "thin")
                on.cross((x * k, y * k))
            sketches.wire(on, [(x * k, y * k) for x, y in line], d * k)
            on.upright(-d * k / 2 - 5, -d * k / 2, (low + d / 2) * k, long.words, to=-d * k / 2)

        forming.captioned(pen, rods, [words, f"tips {worded(self.tip.usual, cut, 'fine')}, cut {cut.words}"])
        return said(
            cut, f"Wire of {cut.words} mm bent round {words} mm the opposite way, {long.words} mm long over all"
        )

    def view(self, pen: Pen) -> float:
        """As it hangs: the middle of the lower bend under that of the upper one."""
        d, upper, lower = self.wire.thickness, self.upper_used.usual, self.lower_used.usual
        line, (ax, ay), (bx, by) = self.hook(upper, lower)
        apart = math.hypot(bx - ax, by - ay)
        c, s = (by - ay) / apart, (bx - ax) / apart
        top = upper / 2 + d
        hung = [((x - ax) * c - (y - ay) * s, top + (x - ax) * s + (y - ay) * c) for x, y in line]
        sketches.wire(pen, hung, d)
        return top + apart + lower / 2

    def template_note(self, size: Callable[[str], Size]) -> str:
        """Wire and rods."""
        rods = f"rods Ø {size('upper_used').words} and Ø {size('lower_used').words} mm"
        return f"lay the bent hook on it; {self.wire.name}, cut {size('cut').words} mm; {rods}"
