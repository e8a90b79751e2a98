"""Bail: a strip of clay folded over a straw or rod, its two tails left to be joined to the piece."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base import forming
from sheetgen.base.figure import Made
from sheetgen.base.like import said
from sheetgen.base.material import Clay
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.guard import at_least
from sheetgen.formulas.mass import sheet_mass
from sheetgen.formulas.shrinkage import fired_mass, fired_size, wet_size
from sheetgen.formulas.wrap import hung_over
from sheetgen.parts import given
from sheetgen.parts.clay_piece import ClayPiece, fired_by, template_clay
from sheetgen.parts.drawer import neighbours
from sheetgen.parts.kind import Finding, figure

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from sheetgen.base.figure import Size
    from sheetgen.base.pen import Pen
    from sheetgen.base.spread import Spread


def _meets(part: Bail) -> bool:
    return part.meeting is not None


class Bail(ClayPiece):
    """Worked on the middle of the clay: half a turn, π ÷ 2 × (inside + thickness), and two tails hanging straight.

    Where the tails are brought together `meeting` below the middle of the former, the strip leaves it along two
    tangents (an open belt, Wikipedia, Belt problem), and the tails count from there. Clay stretches a little over a
    thin former and sags before it is dry, so the blank is right to about half a millimetre.
    """

    kind = "bail"
    reshaped = True

    clay = given.item(Clay, "the clay it is cut from")
    inside = given.maybe_length("finished inside across the loop; or give the former", above=0)
    former = given.maybe_length("the straw or rod to use, when the tool decides", above=0)
    width = given.length("finished width of the strip", above=0)
    front_tail = given.length("finished length of the front tail", above=0)
    back_tail = given.length("finished length of the back tail", above=0)
    meeting = given.maybe_length("how far under the former's middle the tails come together, finished", above=0)
    thickness = given.length("thickness the clay is rolled to", above=0)

    @property
    def wanted(self) -> float:
        """The former that would fit exactly, mm."""
        if self.former is None and self.inside is None:
            raise CannotBe("a bail wants its finished inside or its former", "inside: 4 mm", "inside")
        return self.former.usual if self.former else wet_size(self.inside or 0, self.clay.shrinkage).usual

    @property
    def owned(self) -> str:
        """The formers in the drawer nearest to the wanted one."""
        return neighbours([] if self.former else self.bench.owned("former"), self.wanted)

    @figure("Former", "mm", "nearest({wanted}, {owned})")
    def former_used(self) -> float:
        """The straw or rod to fold over."""
        return self.wanted if self.former else self.tool("former", self.wanted, "inside")

    @figure("Inside, fired", "mm", "{former_used} × (1 − {clay.shrinkage})")
    def fired_inside(self) -> Spread:
        """What the loop comes out at, across."""
        return fired_size(self.former_used, self.clay.shrinkage)

    @figure("Front tail, wet", "mm", "{front_tail} ÷ (1 − {clay.shrinkage})", rounding="tenth")
    def wet_front(self) -> Spread:
        """From the end of the strip to the first fold line."""
        return wet_size(self.front_tail, self.clay.shrinkage)

    @figure("Back tail, wet", "mm", "{back_tail} ÷ (1 − {clay.shrinkage})", rounding="tenth")
    def wet_back(self) -> Spread:
        """From the second fold line to the other end of the strip."""
        return wet_size(self.back_tail, self.clay.shrinkage)

    @figure(
        "Tails come together under the former's middle, wet", "mm", "{meeting} ÷ (1 − {clay.shrinkage})",
        rounding="tenth", when=_meets,
    )  # fmt: skip
    def wet_meeting(self) -> Spread:
        """Where to press the two tails together."""
        return wet_size(self.meeting or 0, self.clay.shrinkage)

    @figure("Over the former", "mm", "{over_worked}", rounding="tenth")
    def over_former(self) -> float:
        """The part of the strip between its two tails, along the middle of the clay."""
        radius = (self.former_used.usual + self.thickness.usual) / 2
        if not self.meeting:
            return math.pi * radius
        if self.wet_meeting.usual <= radius:
            least = radius * (1 - self.clay.shrinkage.usual)
            raise CannotBe("the tails cannot come together inside the loop", at_least(least * 1.001), "meeting")
        return hung_over(radius, self.wet_meeting.usual)

    @property
    def over_worked(self) -> str:
        """How the part over the former is worked."""
        r = f"({self.former_used.usual:.6g} + {self.thickness.usual:.6g}) ÷ 2"
        if not self.meeting:
            return f"π × {r}"
        c = f"{self.wet_meeting.usual:.6g}"
        return f"2 × √({c}² − ({r})²) + {r} × (π + 2 × asin({r} ÷ {c}))"

    @figure("Strip, cut wet", "mm", "{wet_front} + {over_former} + {wet_back}", rounding="tenth")
    def strip(self) -> Spread:
        """Length of the strip: tail, fold, tail."""
        return self.wet_front + self.over_former + self.wet_back

    @figure("Width, cut wet", "mm", "{width} ÷ (1 − {clay.shrinkage})", rounding="bench")
    def wet_width(self) -> Spread:
        """Width of the strip."""
        return wet_size(self.width, self.clay.shrinkage)

    @figure("Clay, each", "g", "{strip} × {wet_width} × {thickness} × {clay.density} ÷ 1000", rounding="mass up")
    def clay_mass(self) -> float:
        """The strip as it is cut."""
        return sheet_mass(self.clay.density, self.strip.usual * self.wet_width.usual, self.thickness.usual)

    @figure("Fired weight, each", "g", "{clay_mass} × {clay.metal_share}")
    def fired_mass(self) -> Spread:
        """Metal left."""
        return fired_mass(self.clay_mass, self.clay.metal_share)

    def made(self) -> Iterator[Made]:
        """Strip and former."""
        fires = fired_by(self.clay)
        yield Made("strip length", "strip", tool="ruler or grid")
        yield Made("strip width", "wet_width", self.width, fires, "ruler or grid")
        yield Made("inside of the loop", "former_used", self.inside, fires, "straw or rod")

    def tools(self) -> Iterator[tuple[str, float]]:
        """The former."""
        yield "former", self.former_used.usual

    def check(self) -> Iterator[Finding]:
        """One of inside and former; the clay not thicker than its loop."""
        if self.former:
            yield from self.misfits("a bail with its former", {}, ["inside"])
            yield from self.not_owned("former", self.former.usual, "former")
        if self.former_used.usual < self.thickness.usual:
            field = "former" if self.former else "inside"
            sure = at_least(self.thickness.usual * (1 if self.former else 1 - self.clay.shrinkage.low))
            yield Finding(field, "is less than the clay is thick, and so tight a fold cracks", sure, "warning")

    def template(self, pen: Pen, size: Callable[[str], Size]) -> None:
        """The strip with the two lines between which it lies on the former."""
        long, wide, front, back = (size(name) for name in ("strip", "wet_width", "wet_front", "wet_back"))
        pen.box((0, 0), long, wide)
        for x in (front, long - back):
            pen.line([(x, 0), (x, wide)], "fold")
        pen.across(-9, 0, front, front.words, to=0)
        pen.across(-4, long - back, long, back.words, to=0)
        pen.across(wide + 5, 0, long, long.words, to=wide)
        pen.upright(-4, 0, wide, wide.words, to=0)

    def template_note(self, size: Callable[[str], Size]) -> str:
        """Thickness, clay and former."""
        return f"{template_clay(self.thickness.usual, self.clay)}; over a former of {size('former_used').words} mm"

    def diagram(self, pen: Pen, size: Callable[[str], Size], k: float) -> str:
        """The strip over its former, in section, wet."""
        front, back, former = (size(name) for name in ("wet_front", "wet_back", "former_used"))
        thick, meet = self.thickness.usual, size("wet_meeting") if self.meeting else None
        path = forming.over_bar((former + thick) / 2, front, back, (meet or 0, thick / 2))
        edge, start = (max(abs(x) for x, _ in path) + thick / 2) * k, (meet or 0) * k
        side = (thick if meet else former / 2 + thick) * k

        def section(on: Pen) -> None:
            forming.folded(on, path, former, thick, k)
            on.upright(-edge - 5, start, start + front * k, front.words, to=-side)
            on.upright(edge + 7, start, start + back * k, back.words, to=side)
            if meet:
                on.upright(edge + 14, 0, start, meet.words, to=edge)

        forming.captioned(pen, section, [f"former {former.words}, strip {size('strip').words}"])
        joined = f", coming together {meet.words} mm under its middle" if meet else ""
        return said(
            former,
            f"A strip of {size('strip').words} mm over a former of {former.words} mm, wet: front tail {front.words} mm, back tail {back.words} mm{joined}",
        )

    def view(self, pen: Pen) -> float:
        """From the front: the strip's width, over the loop and down the front tail."""
        thick = fired_size(self.thickness, self.clay.thickness_shrinkage).usual
        loop = thick + (self.fired_inside.usual / 2 + self.meeting.usual if self.meeting else self.fired_inside.usual)
        start = loop if self.meeting else thick + self.fired_inside.usual / 2
        pen.box((-self.width.usual / 2, 0), self.width.usual, start + self.front_tail.usual)
        return loop
