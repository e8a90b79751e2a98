"""Stone row: seats along a straight edge, opened in wet clay for stones that are set after firing."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base import forming
from sheetgen.base.figure import Made
from sheetgen.base.like import said, worded
from sheetgen.base.material import Clay, Stone
from sheetgen.base.spread import GRAIN, Spread, ceil
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.shrinkage import fired_mass, wet_size
from sheetgen.formulas.stones import row_count, row_gap
from sheetgen.parts import given, seats
from sheetgen.parts.clay_piece import fired_by, template_clay
from sheetgen.parts.kind import Finding, Take, figure
from sheetgen.parts.seats import LEAST_WEB, Seated

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from sheetgen.base.figure import Size
    from sheetgen.base.pen import Pen


class StoneRow(Seated):
    """Counted for the largest stone of the size, so that every parcel fits; the hole for the largest shrinkage."""

    kind = "stone row"

    clay = given.item(Clay, "the clay the seats are made in")
    along = given.length("finished length the row may take, edge to edge", above=0)
    stone = given.item(Stone, "the stone")
    margin = given.length("clay kept at each end, finished", default="1.5 mm", at_least=0)
    gap = given.length("least gap between two stones, finished", default="0.5 mm", at_least=0)
    clearance = given.length("room round the stone in its seat", default="0.1 mm", at_least=0)
    width = given.maybe_length("finished width of the strip the row stands on, if it is a strip of its own", above=0)
    thickness = given.length("thickness of that strip, rolled", default="1 mm", above=0)
    depth = given.maybe_length("how deep the seats are opened, wet; through the strip if it is left out", above=0)

    @figure(
        "Stones in the row", "", "down(({along} − 2 × {margin} + {gap}) ÷ ({stone.size.high} + {gap}))",
        rounding="whole",
    )  # fmt: skip
    def stones(self) -> float:
        """How many fit."""
        n = row_count(self.along.usual, self.margin.usual, self.stone.size.high, self.gap.usual)
        if n < 1:
            least = self.stone.size.high + 2 * self.margin.usual
            message = (
                f"no stone of {self.stone.size.high:g} mm fits a row of {self.along.usual:g} mm with these margins"
            )
            raise CannotBe(message, f"{least:g} mm or more, a smaller stone, or a smaller margin", "along")
        return n

    @property
    def has_gaps(self) -> bool:
        """Whether there are two stones to part."""
        return self.stones.usual > 1

    @figure(
        "Gap, evened out", "mm", "({along} − 2 × {margin} − {stones} × {stone.size.high}) ÷ ({stones} − 1)",
        when=lambda part: part.has_gaps,
    )  # fmt: skip
    def even_gap(self) -> float:
        """Gap between two of the largest stones, finished."""
        return row_gap(self.along.usual, self.margin.usual, self.stone.size.high, self.stones.usual)

    @figure(
        "Pitch, wet", "mm", "({stone.size.high} + {even_gap}) ÷ (1 − {clay.shrinkage})",
        rounding="tenth", when=lambda part: part.has_gaps,
    )  # fmt: skip
    def wet_pitch(self) -> Spread:
        """Centre to centre as marked in wet clay."""
        return wet_size(self.even_gap + self.stone.size.high, self.clay.shrinkage)

    @figure(
        "First seat to last, wet", "mm", "({stones} − 1) × {wet_pitch}",
        rounding="tenth", when=lambda part: part.has_gaps,
    )  # fmt: skip
    def wet_span(self) -> Spread:
        """Centre of the first seat to centre of the last; the row is centred on the clay."""
        return (self.stones - 1) * self.wet_pitch

    seat = seats.seat
    drill = seats.drill
    loosest = seats.loosest

    @figure("Clay between two seats, wet", "mm", "{wet_pitch} − {drill}", when=lambda part: part.has_gaps)
    def web(self) -> float:
        """What is left between two holes."""
        return self.wet_pitch.usual - self.drill.usual

    @figure("Strip length, cut wet", "mm", "{along} ÷ (1 − {clay.shrinkage})", rounding="bench")
    def wet_length(self) -> Spread:
        """Length of the strip the row stands on."""
        return wet_size(self.along, self.clay.shrinkage)

    @figure(
        "Strip width, cut wet", "mm", "{width} ÷ (1 − {clay.shrinkage})",
        rounding="bench", when=lambda part: part.width is not None,
    )  # fmt: skip
    def wet_width(self) -> Spread:
        """Width of the strip the row stands on."""
        return wet_size(self.width or 0, self.clay.shrinkage)

    @figure(
        "Clay, each", "g", "{wet_length} × {wet_width} × {thickness} × {clay.density} ÷ 1000",
        rounding="mass up", when=lambda part: part.width is not None,
    )  # fmt: skip
    def clay_mass(self) -> float:
        """The strip as it is cut, seats not taken out."""
        return self.wet_length.usual * self.wet_width.usual * self.thickness.usual * self.clay.density / 1000

    @figure(
        "Fired weight, each", "g",
        "({wet_length} × {wet_width} × {thickness} − {stones} × π ÷ 4 × {drill}² × {opened}) × {clay.density} ÷ 1000"
        " × {clay.metal_share}",
        when=lambda part: part.width is not None,
    )  # fmt: skip
    def fired_mass(self) -> float:
        """Metal left, the seats taken out of the strip."""
        seats = self.stones.usual * math.pi / 4 * self.drill.usual**2 * self.opened
        volume = self.wet_length.usual * self.wet_width.usual * self.thickness.usual - seats
        return fired_mass(volume * self.clay.density / 1000, self.clay.metal_share)

    @property
    def opened(self) -> float:
        """Depth of a seat in the strip, wet, mm."""
        thick = self.thickness.usual
        return min(self.depth.usual, thick) if self.depth else thick

    def takes(self) -> Iterator[Take]:
        """Stones, and the clay of the strip."""
        yield Take(self.stone, self.stones * self.count, "stones")
        if self.width:
            yield Take(self.clay, self.clay_mass * self.count, "clay_mass")

    def made(self) -> Iterator[Made]:
        """Strip, seats and pitch."""
        fires = fired_by(self.clay)
        if self.width:
            yield Made("strip length", "wet_length", self.along, fires, "ruler or grid")
            yield Made("strip width", "wet_width", self.width, fires, "ruler or grid")
        yield Made("seats in the row, each", "drill", None, fires, "drill")
        if self.has_gaps:
            yield Made("seat to seat", "wet_pitch", self.even_gap + self.stone.size.high, fires, "template")
            fired_span = (self.stones - 1) * (self.even_gap + self.stone.size.high)
            yield Made("first seat to last", "wet_span", fired_span, fires, "template")

    def tools(self) -> Iterator[tuple[str, float]]:
        """The drill."""
        yield "drill", self.drill.usual

    def slats(self) -> Iterator[tuple[str, float]]:
        """Of the strip the row stands on, if it is one of its own."""
        return super().slats() if self.width else iter(())

    def check(self) -> Iterator[Finding]:
        """Clay left between seats and beside them."""
        if self.stone.width and self.stone.width.high < self.stone.size.low:
            yield Finding(
                "stone", "is oval, and a row is drilled round", "a round stone, or a seat of its own for each"
            )
        if self.depth and self.width and self.depth.usual > self.thickness.usual:
            deep = self.depth.usual - self.thickness.usual
            told = f"goes {deep:.2f} mm through the strip, into what is under it"
            yield Finding("depth", told, f"{self.thickness.usual:g} mm or less, or that much clay beneath", "warning")
        if self.has_gaps and self.web.usual < LEAST_WEB - GRAIN:
            sure = (
                ceil(10 * ((self.drill.usual + LEAST_WEB) * (1 - self.clay.shrinkage.usual) - self.stone.size.high))
                / 10
            )
            yield Finding("gap", f"leaves {self.web.usual:.2f} mm of clay between two seats", f"{sure:g} mm or more")
        if self.width and self.wet_width.usual < self.drill.usual + 2 * LEAST_WEB:
            least = (self.drill.usual + 2 * LEAST_WEB) * (1 - self.clay.shrinkage.low)
            yield Finding("width", "leaves too little clay beside the seats", f"{ceil(least * 10) / 10:g} mm or more")

    def view(self, pen: Pen) -> float:
        """The row upright, as it hangs."""
        long, d, n = self.along.usual, self.stone.size.usual, int(self.stones.usual)
        if self.width:
            pen.box((-self.width.usual / 2, 0), self.width.usual, long)
        pitch = self.stone.size.high + self.even_gap.usual if self.has_gaps else 0
        for i in range(n):
            centre = (0.0, (long - (n - 1) * pitch) / 2 + i * pitch)
            pen.circle(centre, d, "thin")
            pen.circle(centre, d / 2, "thin")
        return long

    def diagram(self, pen: Pen, size: Callable[[str], Size], k: float) -> str:
        """The seats as they are marked and drilled, wet: pitch, what is kept at the ends, first to last."""
        long, drill, n = size("wet_length"), size("drill"), int(self.stones.usual)
        wide = float(size("wet_width")) if self.width else drill + 2
        span, pitch = (self.wet_span.usual, self.wet_pitch.usual) if self.has_gaps else (0.0, 0.0)
        first = (long - span) / 2
        edge = worded(first, long)
        pitched = f", {size('wet_pitch').words} mm from centre to centre" if n > 1 else ""

        def row(on: Pen) -> None:
            on.box((0, 0), long * k, wide * k)
            for i in range(n):
                on.circle(((first + i * pitch) * k, wide * k / 2), drill * k, "thin")
            on.across(wide * k + 5, 0, first * k, edge, to=wide * k)
            if n > 1:
                on.across(-4, first * k, (first + pitch) * k, size("wet_pitch").words, to=0)

        forming.captioned(pen, row, [f"wet, {long.words} long, drill Ø {drill.words}"])
        return said(
            long,
            f"{n} seats along {long.words} mm, wet{pitched}, the first {edge} mm from the end, drill {drill.words} mm",
        )

    def template(self, pen: Pen, size: Callable[[str], Size]) -> None:
        """The strip with its seat centres."""
        long, drill = size("wet_length"), size("drill")
        wide = float(size("wet_width")) if self.width else drill + 4
        pen.box((0, 0), long, wide, "cut" if self.width else "fold")
        pitch = self.wet_pitch.usual if self.has_gaps else 0
        count = int(self.stones.usual)
        start = (long - (count - 1) * pitch) / 2
        centres = [start + i * pitch for i in range(count)]
        for x in centres:
            pen.circle((x, wide / 2), drill, "thin")
            pen.cross((x, wide / 2))
        pen.across(wide + 5, 0, long, long.words, to=wide)
        if count > 1:
            pen.across(-8, centres[0], centres[-1], f"{size('wet_span').words} first to last", to=0)
            pen.across(-3.5, centres[0], centres[1], size("wet_pitch").words, to=0)
        if self.width:
            pen.upright(-4, 0, wide, size("wet_width").words, to=0)

    def template_note(self, size: Callable[[str], Size]) -> str:
        """Seats and strip."""
        seated = f"{self.stones.usual:g} seats, drill Ø {size('drill').words} mm"
        clay = template_clay(self.thickness.usual, self.clay) if self.width else "a marking guide"
        return f"{clay}; {seated}"
