"""Cord bundle: cords, yarns or strips gathered and bound, and whether they go into the end and the cap."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.material import Fibre
from sheetgen.base.material import Finding as Bought
from sheetgen.base.spread import GRAIN, Spread, ceil, spread
from sheetgen.base.trouble import CannotBe
from sheetgen.facts.fibre import YARN_FILL_LEAST, YARN_FILL_MOST
from sheetgen.formulas.fibre import binding_thread
from sheetgen.formulas.packing import MOST_KNOWN, bundle_of_many, bundle_of_strips, bundle_ratio
from sheetgen.parts import given
from sheetgen.parts.kind import Finding, Part, Take, figure, working_number

if TYPE_CHECKING:
    from collections.abc import Iterator


class CordBundle(Part):
    """To 19 round cords the smallest circle round equal circles (Wikipedia, Circle packing in a circle); more by fill.

    Soft yarn is squeezed into less, by a hand and a thread: the fill is a range, and so is the bundle. Try it with the
    real cord before a dozen are cut.
    """

    kind = "cord bundle"

    fibre = given.item(Fibre, "the cord, yarn or strip")
    cords = given.count("how many lie side by side in the bundle, a folded one counted twice", at_most=5000)
    fill = given.ratio(
        "share of the bundle that is fibre, from 20 cords on and for strips",
        default=f"{YARN_FILL_LEAST:g}-{YARN_FILL_MOST:g}", at_least=0.2,
    )  # fmt: skip
    end = given.maybe_item(Bought, "the crimp end that it goes into, by its inside")
    cap = given.maybe_item(Bought, "the cap that it is drawn up into, by its inside")
    thread = given.maybe_item(Fibre, "the binding thread")
    turns = given.count("turns of binding thread, side by side", default="10", at_most=200)
    tails = given.length("thread left at both ends of the binding, together", default="150 mm", at_least=0)

    def across_of(self, cords: float) -> Spread:
        """Diameter of a bundle of so many, mm."""
        t, width = self.fibre.thickness, self.fibre.width
        if width:
            return bundle_of_strips(spread(cords), width, t, self.fill)
        if cords <= MOST_KNOWN:
            return spread(t * bundle_ratio(cords))
        return bundle_of_many(spread(cords), t, self.fill)

    @property
    def across_worked(self) -> str:
        """How the bundle is worked."""
        n, t, fill = self.cords.usual, working_number(self.fibre.thickness), working_number(self.fill)
        if self.fibre.width:
            return f"√(4 × {n:g} × {working_number(self.fibre.width)} × {t} ÷ (π × {fill}))"
        return f"{t} × {working_number(bundle_ratio(n))}" if n <= MOST_KNOWN else f"{t} × √({n:g} ÷ {fill})"

    @figure("Bundle, across", "mm", "{across_worked}")
    def across(self) -> Spread:
        """Diameter of the gathered bundle."""
        return self.across_of(self.cords.usual)

    @figure("Bundle, bound", "mm", "{across} + 2 × {thread.thickness}", when=lambda part: part.thread)
    def bound(self) -> Spread:
        """Across the binding."""
        return self.across + 2 * (self.thread.thickness if self.thread else 0)

    @figure(
        "Binding thread, each", "mm", "{turns} × π × ({across} + {thread.thickness}) + {tails}",
        rounding="bench most", when=lambda part: part.thread,
    )  # fmt: skip
    def binding(self) -> Spread:
        """Turns side by side, and both tails."""
        return binding_thread(self.across, self.thread.thickness if self.thread else 0, self.turns) + self.tails

    @figure(
        "Binding, along the bundle", "mm", "{turns} × {thread.thickness}", rounding="tenth", when=lambda p: p.thread
    )
    def wide(self) -> Spread:
        """Turns side by side."""
        return self.turns * (self.thread.thickness if self.thread else 0)

    @property
    def whole(self) -> Spread:
        """What must go in: the bundle with its binding, mm."""
        return self.bound if self.thread else self.across

    def _room(self, bought: Bought | None, field: str) -> Spread:
        if bought is None or bought.inside is None:
            name = bought.name if bought else f"the {field}"
            raise CannotBe(f"stock does not say how wide {name} is inside", "add its inside: to stock", field)
        return bought.inside - self.whole

    @figure("Room in the end", "mm", "{end.inside} − {whole}", when=lambda part: part.end)
    def room_in_end(self) -> Spread:
        """Less than nothing: it does not go in."""
        return self._room(self.end, "end")

    @figure("Room in the cap", "mm", "{cap.inside} − {whole}", when=lambda part: part.cap)
    def room_in_cap(self) -> Spread:
        """Less than nothing: it does not go in."""
        return self._room(self.cap, "cap")

    def takes(self) -> Iterator[Take]:
        """End, cap and binding thread; the cords belong to the fringe."""
        for bought in (self.end, self.cap):
            if bought:
                yield Take(bought, self.count, "count")
        if self.thread:
            yield Take(self.thread, self.binding * self.count, "binding")

    def _most(self, inside: float) -> int:
        """The most cords whose bundle goes into an inside at the loosest, mm."""
        bound = 2 * self.thread.thickness if self.thread else 0
        most = int(self.cords.usual)
        while most > 0 and self.across_of(most).high + bound > inside + GRAIN:
            most -= 1
        return most

    def check(self) -> Iterator[Finding]:
        """It goes into the end and the cap; the binding is hidden in the end."""
        for field, bought, room in (
            ("end", self.end, self.room_in_end if self.end else None),
            ("cap", self.cap, self.room_in_cap if self.cap else None),
        ):  # fmt: skip
            if bought is None or room is None or room.low >= -GRAIN:
                continue
            most = self._most(bought.inside or 0)
            helped = (
                f"{most} cords, or one of {ceil(self.whole.high * 10) / 10:g} mm or more inside"
                if most
                else "a wider one"
            )
            if room.high < -GRAIN:
                yield Finding(field, f"is {bought.inside:g} mm inside, too narrow for the bundle", helped)
            else:
                message = f"is {bought.inside:g} mm inside, and takes the bundle only if it is drawn tight"
                yield Finding(field, message, helped, "warning")
        if self.thread and self.end and self.end.depth is not None and self.wide.usual > self.end.depth + GRAIN:
            most = int(self.end.depth / self.thread.thickness + 1e-9)
            yield Finding("turns", "reach out of the end", f"{max(most, 1)} turns or fewer", "warning")
