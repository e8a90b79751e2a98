"""Clay by mass: pieces weighed and not measured, and what becomes of the clay rolled beyond them."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base.figure import Made
from sheetgen.base.material import Clay
from sheetgen.base.spread import Spread, between, floor, spread
from sheetgen.base.trouble import CannotBe
from sheetgen.facts.allowances import OFFCUT_LOSS_LEAST, OFFCUT_LOSS_MOST
from sheetgen.formulas.buying import clay_returned, with_waste
from sheetgen.formulas.mass import slab_area
from sheetgen.formulas.shrinkage import fired_mass, wet_mass
from sheetgen.parts import given
from sheetgen.parts.kind import Finding, Part, Take, figure

if TYPE_CHECKING:
    from collections.abc import Iterator

LOSS = between(OFFCUT_LOSS_LEAST, OFFCUT_LOSS_MOST)


def _rolled(part: ClayByMass) -> bool:
    return part.thickness is not None


class ClayByMass(Part):
    """A piece loses what is not metal in it, and nothing else: fired mass = wet mass × metal share.

    What is rolled beyond the pieces is gathered, less what dries and sticks (3 to 10 %, common practice), and goes
    back into the wrap. It says how large a slab is, and not whether a shape fits on it.
    """

    kind = "clay by mass"

    clay = given.item(Clay, "the clay")
    mass = given.maybe_mass("wet clay in one piece; or give its finished weight", above=0)
    weight = given.maybe_mass("finished weight of one piece", above=0)
    thickness = given.maybe_length("thickness it is rolled to, if it is rolled", above=0)
    rolling = given.maybe_ratio("clay rolled beyond the pieces, as a share of them; left out, the clay's own allowance")

    @property
    def share(self) -> float:
        """The rolling allowance."""
        return self.rolling.usual if self.rolling else self.clay.allowance

    @property
    def mass_worked(self) -> str:
        """How the clay of one piece is worked."""
        if self.mass or not self.weight:
            return f"{self.mass.usual if self.mass else 0:.6g}"
        return f"{self.weight.usual:.6g} ÷ {self.clay.metal_share:.6g}"

    @figure("Clay, each", "g", "{mass_worked}")
    def clay_mass(self) -> Spread:
        """Wet clay in one piece. CannotBe if neither it nor its finished weight is given."""
        if self.mass is None and self.weight is None:
            raise CannotBe("a piece by mass wants its wet clay or its finished weight", "mass: 2.5 g", "mass")
        return self.mass or wet_mass(self.weight or spread(0), self.clay.metal_share)

    @figure("Fired weight, each", "g", "{clay_mass} × {clay.metal_share}")
    def fired_mass(self) -> Spread:
        """Metal left of one piece."""
        return fired_mass(self.clay_mass, self.clay.metal_share)

    @figure("Clay in all the pieces", "g", "{count} × {clay_mass}")
    def all_pieces(self) -> Spread:
        """What stays in the pieces."""
        return self.count * self.clay_mass

    @figure("Clay to take, rolling allowance and all", "g", "{all_pieces} × (1 + {share})", rounding="mass up")
    def taken(self) -> Spread:
        """What is taken out of the wrap."""
        return with_waste(self.all_pieces, self.share)

    @figure("Offcuts", "g", "{taken} − {all_pieces}")
    def offcuts(self) -> Spread:
        """What is left on the mat."""
        return self.all_pieces * self.share

    @property
    def loss(self) -> Spread:
        """What is lost of it as it is gathered and rolled again, as a share."""
        return LOSS

    @figure("Back into the wrap", "g", "{offcuts} × (1 − {loss})")
    def back(self) -> Spread:
        """What comes back of the offcuts."""
        return clay_returned(self.offcuts, LOSS)

    @figure("Used up, what is lost included", "g", "{taken} − {back}", rounding="mass up")
    def used_up(self) -> Spread:
        """What the packet is lighter by."""
        return self.all_pieces + self.offcuts * LOSS

    @figure("Pieces from one packet, never more than", "", "down({clay.pack} ÷ {clay_mass})",
            rounding="whole", when=lambda part: part.clay.pack)  # fmt: skip
    def from_packet(self) -> float:
        """Were nothing lost and every offcut rolled again."""
        return floor((self.clay.pack or 0) / self.clay_mass.usual)

    @figure("Slab, area for one piece", "mm²", "1000 × {clay_mass} ÷ {clay.density} ÷ {thickness}", when=_rolled)
    def area(self) -> Spread:
        """What one piece covers at that thickness."""
        return slab_area(self.clay.density, self.thickness or spread(0), self.clay_mass)

    @figure("Slab of all the clay taken, square, side", "mm", "√(1000 × {taken} ÷ {clay.density} ÷ {thickness})",
            rounding="bench", when=_rolled)  # fmt: skip
    def side(self) -> float:
        """How large the slab is, were it rolled square."""
        thick = self.thickness.usual if self.thickness else 0
        return math.sqrt(slab_area(self.clay.density, thick, self.taken.usual))

    def takes(self) -> Iterator[Take]:
        """The pieces; the allowance of stock comes on top as for every other part."""
        yield Take(self.clay, self.all_pieces, "clay_mass")

    def made(self) -> Iterator[Made]:
        """The slab."""
        if _rolled(self):
            yield Made("slab, were it square", "side", tool="slats")

    def check(self) -> Iterator[Finding]:
        """One of mass and weight; a piece no heavier than its packet."""
        if self.mass:
            yield from self.misfits("a piece with its mass", {}, ["weight"])
        if self.clay.pack and self.clay_mass.usual > self.clay.pack:
            field, most = ("mass", 1.0) if self.mass else ("weight", self.clay.metal_share)
            helped = f"{self.clay.pack * most:g} g or less from one packet; several are joined by kneading"
            yield Finding(field, "is more than one packet holds", helped, "warning")
