"""Fringe: strips or cords hanging side by side, folded over a bar or held at one end, of one length or several."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base import forming
from sheetgen.base.figure import Made
from sheetgen.base.like import said, worded
from sheetgen.base.material import Fibre
from sheetgen.base.pen import Moved
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.buying import stock_for_pieces
from sheetgen.formulas.fibre import folded_strip, fringe_mean, fringe_steps
from sheetgen.formulas.stones import row_count
from sheetgen.parts import given
from sheetgen.parts.kind import Finding, Part, Take, figure

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from sheetgen.base.figure import Size
    from sheetgen.base.pen import Pen
    from sheetgen.base.spread import Spread


class Fringe(Part):
    """Drops grow in even steps; a folded strip is two drops and half a turn over the bar, on its middle.

    Fibre stretches, frays and curls as it pleases, and knots take up length: trim the finished fringe by eye.
    """

    kind = "fringe"

    fibre = given.item(Fibre, "the strip, ribbon or cord")
    width = given.maybe_length("width of one strip, when it is slit from a wider ribbon", above=0)
    strips_of = given.neighbour("the slit strips that it is made of, which count the ribbon")
    strands = given.maybe_count("how many side by side; or give the edge they fill", at_most=2000)
    along = given.maybe_length("edge that they hang from", above=0)
    gap = given.length("gap between two strips", default="0 mm", at_least=0)
    first = given.length("finished drop of the first; in a point, of both outer ones", above=0)
    last = given.maybe_length("finished drop of the last; in a point, of the middle; all alike if left out", above=0)
    shape = given.one_of("how the drops run from first to last", "slope", "point")
    bar = given.maybe_length("diameter of the bar they are folded over; held at one end if left out", above=0)
    held = given.length("length held in the end or seam, of strips that are not folded", default="10 mm", at_least=0)
    trim = given.length("length added at each hanging end to trim even", default="0 mm", at_least=0)

    @property
    def wide(self) -> float:
        """How much of the edge one strip takes, mm."""
        return self.width.usual if self.width else self.fibre.width or self.fibre.thickness

    @property
    def strips_worked(self) -> str:
        """How the strips are worked."""
        if self.strands is not None:
            return f"{self.strands.usual:g}"
        edge, gap = self.along.usual if self.along else 0, f"{self.gap.usual:.6g}"
        return f"down(({edge:.6g} + {gap}) ÷ ({self.wide:.6g} + {gap}))"

    @figure("Strands", "", "{strips_worked}", rounding="whole")
    def strips(self) -> float:
        """Side by side."""
        if self.strands is not None:
            return self.strands.usual
        if self.along is None:
            raise CannotBe("a fringe wants how many strands, or the edge they fill", "strands: 12", "strands")
        if self.along.usual < self.wide - 1e-9:
            raise CannotBe("the edge is narrower than one strip", f"{self.wide:g} mm or more", "along")
        return row_count(self.along.usual, 0, self.wide, self.gap.usual)

    @property
    def longest(self) -> Spread:
        """Drop of the last strip or of the middle, mm."""
        return self.last or self.first

    @property
    def steps(self) -> float:
        """Steps from the first drop to the last."""
        return fringe_steps(self.strips.usual, 1 if self.shape == "point" else 0)

    @figure(
        "Step, strand to strand", "mm", "({longest} − {first}) ÷ {steps}",
        when=lambda part: part.last and part.steps > 0,
    )  # fmt: skip
    def step(self) -> Spread:
        """How much longer each next strip hangs; shorter with a minus."""
        return (self.longest - self.first) / self.steps

    @property
    def mean_worked(self) -> str:
        """How the mean drop is worked: a point of an odd number has only one of the longest."""
        a, b, n = (f"{x:.6g}" for x in (self.first.usual, self.longest.usual, self.strips.usual))
        if self.shape == "point" and self.strips.usual % 2:
            return f"(({n} + 1) ÷ 2 × {a} + ({n} − 1) ÷ 2 × {b}) ÷ {n}"
        return f"({a} + {b}) ÷ 2"

    @figure("Drop, on the mean", "mm", "{mean_worked}", rounding="tenth")
    def mean(self) -> Spread:
        """Of all strips."""
        return fringe_mean(self.strips, self.first, self.longest, 1 if self.shape == "point" else 0)

    def _cut(self, drop: Spread) -> Spread:
        """Strip to cut for a drop, mm."""
        if self.bar is None:
            return drop + self.held + self.trim
        return folded_strip(drop, self.bar, self.fibre.thickness) + 2 * self.trim

    def _worked(self, drop: Spread) -> str:
        if self.bar is None:
            return f"{drop.usual:.6g} + {self.held.usual:.6g} + {self.trim.usual:.6g}"
        turn = f"π × ({self.bar.usual:.6g} + {self.fibre.thickness:.6g}) ÷ 2"
        return f"2 × {drop.usual:.6g} + {turn} + 2 × {self.trim.usual:.6g}"

    @property
    def first_worked(self) -> str:
        """How the first strip is worked."""
        return self._worked(self.first)

    @property
    def last_worked(self) -> str:
        """How the last strip is worked."""
        return self._worked(self.longest)

    @property
    def mean_cut_worked(self) -> str:
        """How the mean strip is worked."""
        return self._worked(self.mean)

    @figure("First strand, cut", "mm", "{first_worked}", rounding="bench up")
    def first_cut(self) -> Spread:
        """With what is held or goes over the bar."""
        return self._cut(self.first)

    @figure("Last strand, cut", "mm", "{last_worked}", rounding="bench up", when=lambda part: part.last)
    def last_cut(self) -> Spread:
        """With what is held or goes over the bar."""
        return self._cut(self.longest)

    @figure("Fibre for one fringe", "mm", "{strips} × ({mean_cut_worked})", rounding="length up")
    def total(self) -> Spread:
        """All its strips."""
        return self.strips * self._cut(self.mean)

    @property
    def each(self) -> float:
        """Ends of each strip that hang."""
        return 2 if self.bar else 1

    @figure("Hanging ends", "", "{strips} × {each}", rounding="whole")
    def ends(self) -> Spread:
        """Two of each folded strip."""
        return self.strips * self.each

    @figure("Edge that they fill", "mm", "{strips} × {wide} + ({strips} − 1) × {gap}", rounding="tenth")
    def fills(self) -> Spread:
        """Side by side, not overlapping."""
        return stock_for_pieces(self.strips, self.wide, self.gap)

    def takes(self) -> Iterator[Take]:
        """Fibre by length, unless its strips are slit as a part of their own."""
        if self.strips_of is None:
            yield Take(self.fibre, self.total * self.count, "total")

    def made(self) -> Iterator[Made]:
        """First and last strip."""
        yield Made("first strand" if self.last else f"strand, {self.strips.usual:g} in each", "first_cut", tool="ruler")
        if self.last:
            yield Made("last strand", "last_cut", tool="ruler")

    def check(self) -> Iterator[Finding]:
        """They fit the edge; one strip has no slope; slit strips are narrower than their ribbon."""
        if self.width and self.width.usual > (self.fibre.width or 0) + 1e-9:
            helped = f"{self.fibre.width:g} mm or less" if self.fibre.width else "take it out: stock gives it no width"
            yield Finding("width", f"cannot be slit from {self.fibre.name}", helped)
        if self.strips_of and not self.width:
            yield Finding("strips of", "wants the width of one strip", f"width: {self.strips_of.name}.width")
        if self.width and not self.strips_of:
            helped = "add a part of kind slit strips, and name it here as strips of"
            yield Finding("width", "is of slit strips, and nothing says how many come out of a ribbon", helped)
        if self.along and self.strands and self.fills.usual > self.along.usual + 1e-9:
            most = row_count(self.along.usual, 0, self.wide, self.gap.usual)
            yield Finding(
                "strands", f"take {self.fills.usual:.1f} mm, more than the edge", f"{max(most, 1):g} or fewer"
            )
        least = 3 if self.shape == "point" else 2
        if self.last and self.last.usual != self.first.usual and self.strips.usual < least:
            where = "strands" if self.strands else "along"
            yield Finding(where, f"are too few for a {self.shape}", f"{least} strands or more")

    def drops(self) -> list[float]:
        """The drop of each strip, mm."""
        n, point = int(self.strips.usual), self.shape == "point"
        step = (self.longest.usual - self.first.usual) / self.steps if self.steps else 0
        return [self.first.usual + step * (min(i, n - 1 - i) if point else i) for i in range(n)]

    def diagram(self, pen: Pen, size: Callable[[str], Size], k: float) -> str:
        """The strips side by side with first and longest drop; one in section over its bar, or all held in an end."""
        fills, cut, drops = size("fills"), size("first_cut"), self.drops()
        first, longest = (worded(d.usual, cut, "fine") for d in (self.first, self.longest))
        last = f", last {size('last_cut').words}" if self.last else ""
        lines = [f"cut first {cut.words}{last}"]
        if self.bar is None:
            held = worded(self.held.usual, cut, "fine")
            how = f"with {held} mm held in the end"
        else:
            words = worded(self.bar.usual, cut, "fine")
            how = f"folded over a bar of {words} mm"
            lines.append(f"folded over a bar of {words}")

        def hung(on: Pen) -> None:
            forming.fringe(on, drops, (self.wide, self.gap.usual), (first, longest, fills.words), k)
            if self.bar is None:
                forming.held(on, fills * k, self.held.usual * k, f"held {held}")
            else:
                bar, thick = self.bar.usual, self.fibre.thickness
                path = forming.over_bar((bar + thick) / 2, drops[0], drops[0])
                forming.folded(Moved(on, (-14 - (bar / 2 + thick) * k, 0)), path, bar, thick, k)

        forming.captioned(pen, hung, lines)
        return said(
            fills,
            f"{len(drops)} strands side by side over {fills.words} mm, {how}: the first hangs {first} mm, the longest {longest} mm",
        )

    def view(self, pen: Pen) -> float:
        """The strips as they hang."""
        drops, step = self.drops(), self.wide + self.gap.usual
        left = -(len(drops) * step - self.gap.usual) / 2
        for i, drop in enumerate(drops):
            pen.box((left + i * step, 0), self.wide, drop, "thin")
        return max(drops)
