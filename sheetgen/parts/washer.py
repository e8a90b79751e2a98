"""Washer: a disc of clay with a round opening in its middle, cut by template or with two cutters from the drawer."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base import views
from sheetgen.base.figure import Made
from sheetgen.base.material import Clay
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.guard import at_most
from sheetgen.formulas.mass import disc_mass
from sheetgen.formulas.shrinkage import fired_mass, fired_size, wet_size
from sheetgen.parts import given
from sheetgen.parts.clay_piece import ClayPiece, fired_by
from sheetgen.parts.drawer import neighbours
from sheetgen.parts.kind import Finding, figure

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from sheetgen.base.figure import Size
    from sheetgen.base.pen import Pen
    from sheetgen.base.spread import Spread

LEAST_RIM = 1.0  # mm of finished clay round the opening: common practice


def _cut(part: Washer) -> bool:
    return part.outside_cutter is not None or part.cut_with == "cutters"


def _opened(part: Washer) -> bool:
    return part.opening_cutter is not None or part.cut_with == "cutters"


class Washer(ClayPiece):
    """Both diameters grow by 1 ÷ (1 − s): in its plane a flat piece shrinks alike, its opening with it.

    What is lifted out of the middle is clay as good as the rest. A thin rim drags and goes oval when it is lifted wet.
    """

    kind = "washer"

    clay = given.item(Clay, "the clay it is cut from")
    outside = given.maybe_length("finished outside diameter; or give its cutter", above=0)
    opening = given.maybe_length("finished diameter of the opening; or give its cutter", above=0)
    outside_cutter = given.maybe_length("the cutter of the outside, when the tool decides", above=0)
    opening_cutter = given.maybe_length("the cutter of the opening, when the tool decides", above=0)
    cut_with = given.one_of("by a template, or with the nearest round cutters owned", "template", "cutters")
    thickness = given.length("thickness the clay is rolled to", above=0)

    def wanted(self, side: str) -> float:
        """The diameter to cut that would fit exactly, mm: the cutter's own where it is given."""
        finished, cutter = self.given_for(side)
        if finished is None and cutter is None:
            raise CannotBe(f"a washer wants its {side}, or the cutter for it", f"{side}: 12 mm", side)
        return cutter.usual if cutter else wet_size(finished or 0, self.clay.shrinkage).usual

    def given_for(self, side: str) -> tuple[Spread | None, Spread | None]:
        """The finished size and the cutter as given for the outside or the opening."""
        return {"outside": (self.outside, self.outside_cutter), "opening": (self.opening, self.opening_cutter)}[side]

    def chosen(self, side: str) -> float:
        """The cutter of one side, mm."""
        wanted = self.wanted(side)
        return wanted if self.given_for(side)[1] else self.tool("round cutter", wanted, side)

    def worked_for(self, side: str) -> str:
        """How the cutter of one side is chosen."""
        wanted = self.wanted(side)
        owned = [] if self.given_for(side)[1] else self.bench.owned("round cutter")
        return f"nearest({wanted:.6g}, {neighbours(owned, wanted)})"

    @property
    def outside_worked(self) -> str:
        """How the outer cutter is chosen."""
        return self.worked_for("outside")

    @property
    def opening_worked(self) -> str:
        """How the inner cutter is chosen."""
        return self.worked_for("opening")

    @figure(
        "Outside, cut wet", "mm", "{outside} ÷ (1 − {clay.shrinkage})", rounding="tenth", when=lambda p: not _cut(p)
    )
    def wet_outside(self) -> Spread:
        """Outside diameter to cut."""
        self.wanted("outside")
        return wet_size(self.outside or 0, self.clay.shrinkage)

    @figure("Outside, round cutter", "mm", "{outside_worked}", when=_cut)
    def cutter_outside(self) -> float:
        """The cutter of the outside."""
        return self.chosen("outside")

    @figure(
        "Opening, cut wet", "mm", "{opening} ÷ (1 − {clay.shrinkage})", rounding="tenth", when=lambda p: not _opened(p)
    )
    def wet_opening(self) -> Spread:
        """Diameter of the opening to cut."""
        self.wanted("opening")
        return wet_size(self.opening or 0, self.clay.shrinkage)

    @figure("Opening, round cutter", "mm", "{opening_worked}", when=_opened)
    def cutter_opening(self) -> float:
        """The cutter of the opening."""
        return self.chosen("opening")

    @property
    def cut_outside(self) -> float:
        """Outside as cut, mm."""
        return (self.cutter_outside if _cut(self) else self.wet_outside).usual

    @property
    def cut_opening(self) -> float:
        """Opening as cut, mm. CannotBe if it leaves too little rim."""
        cut, keep = (self.cutter_opening if _opened(self) else self.wet_opening).usual, 1 - self.clay.shrinkage.usual
        rim, room = (self.cut_outside - cut) / 2 * keep, self.cut_outside - 2 * LEAST_RIM / keep
        if rim < LEAST_RIM - 1e-9:
            fits = at_most(room if self.opening_cutter else room * keep) if room > 0 else "a wider outside"
            field = "opening cutter" if self.opening_cutter else "opening"
            raise CannotBe(f"an opening of {cut:.2f} mm, wet, leaves a rim of {rim:.2f} mm when fired", fits, field)
        return cut

    @figure("Outside, fired", "mm", "{cut_outside} × (1 − {clay.shrinkage})")
    def fired_outside(self) -> Spread:
        """What the outside comes out at."""
        return fired_size(self.cut_outside, self.clay.shrinkage)

    @figure("Opening, fired", "mm", "{cut_opening} × (1 − {clay.shrinkage})")
    def fired_opening(self) -> Spread:
        """What the opening comes out at."""
        return fired_size(self.cut_opening, self.clay.shrinkage)

    @figure("Rim, fired", "mm", "({cut_outside} − {cut_opening}) ÷ 2 × (1 − {clay.shrinkage})")
    def rim(self) -> Spread:
        """Width of the metal round the opening."""
        return (1 - self.clay.shrinkage) * ((self.cut_outside - self.cut_opening) / 2)

    @figure("Clay, each", "g", "π ÷ 4 × {cut_outside}² × {thickness} × {clay.density} ÷ 1000", rounding="mass up")
    def clay_mass(self) -> float:
        """The disc as it is cut, the opening not taken out."""
        return disc_mass(self.clay.density, self.cut_outside, self.thickness.usual)

    @figure("Clay out of the middle, each", "g", "π ÷ 4 × {cut_opening}² × {thickness} × {clay.density} ÷ 1000")
    def middle(self) -> float:
        """What goes back into the wrap."""
        return disc_mass(self.clay.density, self.cut_opening, self.thickness.usual)

    @figure("Fired weight, each", "g", "({clay_mass} − {middle}) × {clay.metal_share}")
    def fired_mass(self) -> Spread:
        """Metal left, the opening taken out."""
        return fired_mass(self.clay_mass - self.middle, self.clay.metal_share)

    def made(self) -> Iterator[Made]:
        """Both diameters."""
        fires = fired_by(self.clay)
        for label, given_size, by_cutter in (("outside", self.outside, _cut), ("opening", self.opening, _opened)):
            if by_cutter(self):
                yield Made(label, f"cutter_{label}", given_size, fires, "round cutter")
            else:
                yield Made(label, f"wet_{label}", given_size, fires, "cutter or template")

    def tools(self) -> Iterator[tuple[str, float]]:
        """The cutters."""
        if _cut(self):
            yield "round cutter", self.cutter_outside.usual
        if _opened(self):
            yield "round cutter", self.cutter_opening.usual

    def check(self) -> Iterator[Finding]:
        """Each diameter given once, and its cutter in the drawer."""
        for side in ("outside", "opening"):
            cutter = self.given_for(side)[1]
            if cutter:
                yield from self.misfits(f"a washer with its {side} cutter", {}, [side])
                yield from self.not_owned("round cutter", cutter.usual, f"{side} cutter")

    def template(self, pen: Pen, size: Callable[[str], Size]) -> None:
        """Two circles on one centre."""
        outside = size("cutter_outside" if _cut(self) else "wet_outside")
        opening = size("cutter_opening" if _opened(self) else "wet_opening")
        middle = (outside / 2, outside / 2)
        pen.circle(middle, outside)
        pen.circle(middle, opening)
        pen.cross(middle)
        pen.across(-4, 0, outside, f"Ø {outside.words}", to=0)
        pen.across(outside + 5, (outside - opening) / 2, (outside + opening) / 2, f"Ø {opening.words}", to=outside)

    def view(self, pen: Pen) -> float:
        """The washer face on; the next part's wire lies in its opening."""
        outside, opening = self.fired_outside.usual, self.fired_opening.usual
        views.washer(pen, outside, opening)
        return (outside + opening) / 2
