"""Box: a shallow box of clay, four walls standing on a base plate, with a lid or without."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base import forming
from sheetgen.base.figure import Made
from sheetgen.base.like import said, worded
from sheetgen.base.material import Clay
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.guard import at_least
from sheetgen.formulas.mass import sheet_mass
from sheetgen.formulas.shrinkage import fired_mass, fired_size, wet_size
from sheetgen.parts import given
from sheetgen.parts.clay_piece import fired_by, template_clay
from sheetgen.parts.kind import Finding, figure
from sheetgen.parts.lidded import Lidded, lipped

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from sheetgen.base.figure import Size
    from sheetgen.base.pen import Pen
    from sheetgen.base.spread import Spread


LEAST_INSIDE = 1.0  # mm left inside, wet, for a box to be one: common practice
DEEP = 0.5  # of the narrow side: past it clay walls lean before they are dry, common practice


class Box(Lidded):
    """Put together wet or dry, before firing, so walls and base are fitted to each other in wet sizes (plane geometry).

    A butted corner: the walls across run full length and those down stand between them. A mitred corner: all four run
    full length and their ends are cut at 45°. Walls lean, and a large flat base warps, if they dry unevenly.
    """

    kind = "box"

    clay = given.item(Clay, "the clay it is built from")
    across = given.length("finished width", above=0)
    down = given.length("finished length the other way", above=0)
    sizes_are = given.one_of("of the outside, or of the inside", "outside", "inside")
    wall_height = given.length("finished height of the walls above the base, inside", above=0)
    thickness = given.length("thickness the walls are rolled to", above=0)
    base_thickness = given.maybe_length("thickness base and lid are rolled to, if not that of the walls", above=0)
    corners = given.one_of("how the walls meet", "butted", "mitred")
    lid = given.one_of("a flat plate on top, or one with a second plate under it that sits inside", "none", "flat",
                       "with a lip")  # fmt: skip
    clearance = given.length("room on each side of the lid's lip, finished", default="0.3 mm", at_least=0)

    @property
    def base_rolled(self) -> Spread:
        """Thickness of base and lid, wet, mm."""
        return self.base_thickness or self.thickness

    @property
    def walls_added(self) -> str:
        """What the walls add to a size given of the inside."""
        return f" + 2 × {self.thickness.usual:.6g}" if self.sizes_are == "inside" else ""

    def outside(self, size: Spread, field: str) -> Spread:
        """A side of the base, wet, mm. CannotBe if the walls leave nothing between them."""
        wet = wet_size(size, self.clay.shrinkage)
        if self.sizes_are == "inside":
            return wet + 2 * self.thickness.usual
        least = 2 * self.thickness.usual + LEAST_INSIDE
        if wet.usual < least:
            fired = at_least(least * (1 - self.clay.shrinkage.usual))
            message = f"two walls of {self.thickness.usual:g} mm leave no room in {size.usual:g} mm"
            raise CannotBe(message, f"{fired}, or thinner walls", field)
        return wet

    @figure("Base, across, cut wet", "mm", "{across} ÷ (1 − {clay.shrinkage}){walls_added}", rounding="tenth")
    def wet_across(self) -> Spread:
        """Width of the base plate, and length of the two walls across, which run over the corners."""
        return self.outside(self.across, "across")

    @figure("Base, down, cut wet", "mm", "{down} ÷ (1 − {clay.shrinkage}){walls_added}", rounding="tenth")
    def wet_down(self) -> Spread:
        """Length of the base plate the other way."""
        return self.outside(self.down, "down")

    @figure("Walls, height cut wet", "mm", "{wall_height} ÷ (1 − {clay.shrinkage})", rounding="tenth")
    def wet_wall(self) -> Spread:
        """Width of the strip that the walls are cut from."""
        return wet_size(self.wall_height, self.clay.shrinkage)

    @property
    def taken_off(self) -> float:
        """What the walls across take from the walls down, mm."""
        return 2 * self.thickness.usual if self.corners == "butted" else 0.0

    @figure("Two walls down, length cut wet", "mm", "{wet_down} − {taken_off}", rounding="tenth")
    def wall_down(self) -> Spread:
        """Between the others where they butt; along their outside where they are mitred."""
        return self.wet_down - self.taken_off

    @figure("Wall strip, all four", "mm", "2 × ({wet_across} + {wall_down})", rounding="bench up")
    def wall_strip(self) -> Spread:
        """Strip to roll for all the walls."""
        return 2 * (self.wet_across + self.wall_down)

    @figure("Inside across, fired", "mm", "({wet_across} − 2 × {thickness}) × (1 − {clay.shrinkage})")
    def inside_across(self) -> Spread:
        """Room between the walls."""
        return fired_size(self.wet_across.usual - 2 * self.thickness.usual, self.clay.shrinkage)

    @figure("Inside down, fired", "mm", "({wet_down} − 2 × {thickness}) × (1 − {clay.shrinkage})")
    def inside_down(self) -> Spread:
        """Room between the walls, the other way."""
        return fired_size(self.wet_down.usual - 2 * self.thickness.usual, self.clay.shrinkage)

    @figure("Height over all without its lid, fired", "mm",
            "{wet_wall} × (1 − {clay.shrinkage}) + {base_rolled} × (1 − {clay.thickness_shrinkage})")  # fmt: skip
    def fired_height(self) -> Spread:
        """Walls and base."""
        wall = fired_size(self.wet_wall.usual, self.clay.shrinkage)
        return wall + fired_size(self.base_rolled.usual, self.clay.thickness_shrinkage)

    @figure("Lip of the lid, across, cut wet", "mm",
            "{wet_across} − 2 × {thickness} − 2 × {clearance} ÷ (1 − {clay.shrinkage})",
            rounding="tenth", when=lipped)  # fmt: skip
    def lip_across(self) -> Spread:
        """Width of the plate under the lid."""
        return self.lip(self.wet_across, "across")

    @figure("Lip of the lid, down, cut wet", "mm",
            "{wet_down} − 2 × {thickness} − 2 × {clearance} ÷ (1 − {clay.shrinkage})",
            rounding="tenth", when=lipped)  # fmt: skip
    def lip_down(self) -> Spread:
        """Length of the plate under the lid the other way."""
        return self.lip(self.wet_down, "down")

    @figure("Clay, each", "g",
            "({wall_strip} × {wet_wall} × {thickness} + ({wet_across} × {wet_down}{lid_worked}) × {base_rolled})"
            " × {clay.density} ÷ 1000", rounding="mass up")  # fmt: skip
    def clay_mass(self) -> float:
        """Walls, base and lid as they are cut."""
        walls = sheet_mass(self.clay.density, self.wall_strip.usual * self.wet_wall.usual, self.thickness.usual)
        plates = self.wet_across.usual * self.wet_down.usual + self.lid_area[0]
        return walls + sheet_mass(self.clay.density, plates, self.base_rolled.usual)

    @property
    def mitred_off(self) -> float:
        """Clay cut off at the ends of mitred walls, g: four ends' worth of thickness × thickness."""
        if self.corners == "butted":
            return 0.0
        return sheet_mass(self.clay.density, 4 * self.thickness.usual * self.wet_wall.usual, self.thickness.usual)

    @figure("Fired weight, each", "g", "({clay_mass} − {mitred_off}) × {clay.metal_share}")
    def fired_mass(self) -> Spread:
        """Metal left, what is cut off at mitres taken out."""
        return fired_mass(self.clay_mass - self.mitred_off, self.clay.metal_share)

    def made(self) -> Iterator[Made]:
        """Base, walls, lip."""
        fires = fired_by(self.clay)
        plates = ["base", *["lid"] * (self.lid != "none")]
        for way, size, cut in (("across", self.across, self.wet_across), ("down", self.down, self.wet_down)):
            finished = size if self.sizes_are == "outside" else fires(cut.usual)
            cuts = [*plates, *["two walls"] * (way == "across")]
            named = f"{', '.join(cuts[:-1])} and {cuts[-1]}" if len(cuts) > 1 else cuts[0]
            yield Made(f"{named}, {way}", f"wet_{way}", finished, fires, "template")
        yield Made("two walls down", "wall_down", tool="template")
        yield Made("height of the walls", "wet_wall", self.wall_height, fires, "ruler or grid")
        if lipped(self):
            finished = self.inside_across - 2 * self.clearance
            yield Made("lip of the lid, across", "lip_across", finished, fires, "template")
            yield Made("lip of the lid, down", "lip_down", self.inside_down - 2 * self.clearance, fires, "template")

    def diagram(self, pen: Pen, size: Callable[[str], Size], k: float) -> str:
        """From above how the walls meet; in section walls on their base, and the lid over them; wet sizes."""
        sizes = (size("wet_across"), size("wet_down"), size("wall_down"), size("wet_wall"))
        plate = worded(self.base_rolled.usual, sizes[0], "fine")
        lip = size("lip_across") if lipped(self) else None
        walls = (self.thickness.usual, self.base_rolled.usual, self.corners == "mitred")
        forming.case(pen, forming.Case(sizes, *walls, self.lid != "none", lip, f"base {plate}"), k)
        across, down, short, high = (s.words for s in sizes)
        meet = "mitred" if self.corners == "mitred" else f"butted, two of {short} mm between two of {across} mm"
        lid = (
            "" if self.lid == "none" else f", and its lid with a lip of {lip.words} mm" if lip else ", and its flat lid"
        )
        return said(sizes[0], f"A box, wet: walls {high} mm high on a base of {across} by {down} mm, {meet}{lid}")

    def view(self, pen: Pen) -> float:
        """From above: the lid, or the walls round the inside."""
        wide, tall = (fired_size(cut.usual, self.clay.shrinkage).usual for cut in (self.wet_across, self.wet_down))
        pen.box((-wide / 2, 0), wide, tall)
        if self.lid == "none":
            inside = (self.inside_across.usual, self.inside_down.usual)
            pen.box((-inside[0] / 2, (tall - inside[1]) / 2), *inside)
        return tall

    def slats(self) -> Iterator[tuple[str, float]]:
        """Walls and base."""
        yield from super().slats()
        if self.base_thickness:
            yield "base thickness", self.base_thickness.usual

    def check(self) -> Iterator[Finding]:
        """Shallow enough that its walls stand."""
        narrow = min(self.across.usual, self.down.usual)
        if self.wall_height.usual > DEEP * narrow:
            helped = f"{DEEP * narrow:g} mm or less"
            yield Finding("wall height", "is more than half the narrow side: walls lean before dry", helped, "warning")

    def template(self, pen: Pen, size: Callable[[str], Size]) -> None:
        """Base, one wall of each length, and the lip."""
        wide, tall, high = size("wet_across"), size("wet_down"), size("wet_wall")
        pen.box((0, 0), wide, tall)
        pen.across(-4, 0, wide, wide.words if self.lid == "none" else f"2 × {wide.words}", to=0)
        pen.upright(-4, 0, tall, tall.words, to=0)
        pen.text((wide / 2, tall / 2 + 1), "base" if self.lid == "none" else "base, lid", anchor="middle")
        y = tall + 9
        for name in ("wet_across", "wall_down"):
            long = size(name)
            pen.box((0, y), long, high)
            pen.across(y - 3, 0, long, f"2 × {long.words}", to=y)
            y += high + 9
        pen.upright(-4, tall + 9, tall + 9 + high, high.words, to=0)
        if lipped(self):
            lip, deep = size("lip_across"), size("lip_down")
            pen.box((wide + 14, 0), lip, deep)
            pen.across(-4, wide + 14, wide + 14 + lip, f"lip {lip.words}", to=0)
            pen.upright(wide + 10, 0, deep, deep.words, to=wide + 14)

    def outlines(self) -> Iterator[tuple[int, float, str]]:
        """Base and flat lid, the walls, the lip."""
        yield 1 if self.lid == "none" else 2, self.base_rolled.usual, "base" if self.lid == "none" else "base and lid"
        yield 2, self.thickness.usual, "walls across"
        yield 2, self.thickness.usual, "walls down"
        yield 1, self.base_rolled.usual, "lip"

    def template_note(self, size: Callable[[str], Size]) -> str:  # noqa: ARG002 - the same words at every size
        """Thickness, clay and corners."""
        ends = ", cut square; sanded to 45° when dry" if self.corners == "mitred" else ""
        plates = "base" if self.lid == "none" else "base and lid"
        base = f"; {plates} {self.base_rolled.usual:g} mm" if self.base_thickness else ""
        return f"{template_clay(self.thickness.usual, self.clay)}{base}; walls of each length ×2{ends}"
