"""Bent wire: ear wires, hooks, pins and forms of one's own, given as straights and arcs one after another."""

from __future__ import annotations

import math
from functools import reduce
from itertools import accumulate
from typing import TYPE_CHECKING

from sheetgen.base import forming, views
from sheetgen.base.figure import Made
from sheetgen.base.like import said, worded
from sheetgen.base.pen import arc
from sheetgen.base.spread import Spread, spread
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.paths import arc_length
from sheetgen.parts import given
from sheetgen.parts.kind import Finding, figure, working_number
from sheetgen.parts.wire_piece import WirePiece

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from sheetgen.base.bend import Bend
    from sheetgen.base.figure import Size
    from sheetgen.base.pen import Pen, Point

MANY = 12  # pieces: of more only how far along the wire each one ends


class BentWire(WirePiece):
    """Straights as they are, arcs on the middle of the wire: π × (inside + wire) × degrees ÷ 360.

    All in one plane. A bend tighter than the wire is thick stretches it, wire springs back from its jaw, and hammering
    lengthens it: none of that is known here, so bend one for a trial.
    """

    kind = "bent wire"

    form = given.bends(
        "straights and arcs from one end to the other, an arc by its inside diameter, degrees and side: "
        "straight 12 mm, arc 5 mm 180 left, straight 20 mm"
    )

    def _long(self, bend: Bend) -> Spread:
        wire = self.wire.thickness
        return spread(arc_length(bend.size, bend.degrees, wire)) if bend.degrees else bend.size

    @property
    def one_worked(self) -> str:
        """How the wire is worked, piece by piece."""
        wire = working_number(self.wire.thickness)
        return " + ".join(
            f"π × ({working_number(b.size)} + {wire}) × {b.degrees:g} ÷ 360" if b.degrees else working_number(b.size)
            for b in self.form
        )

    @figure("Wire in one", "mm", "{one_worked}", rounding="tenth")
    def one(self) -> Spread:
        """Along the middle of the wire."""
        long = reduce(lambda a, b: a + b, map(self._long, self.form), spread(0))
        if long.usual <= 0:
            raise CannotBe(
                "a form wants at least one straight or arc that is more than nothing", "straight 12 mm", "form"
            )
        return long

    def legs(self) -> list[list[Point]]:
        """The middle of each piece as points, mm: it starts upwards, and an arc turns right unless it says left."""
        at, heading = (0.0, 0.0), -90.0
        found: list[list[Point]] = []
        for bend in self.form:
            if not bend.degrees:
                long, turn = bend.size.usual, math.radians(heading)
                found.append([at, (at[0] + long * math.cos(turn), at[1] + long * math.sin(turn))])
            else:
                side = -1 if bend.left else 1
                r, out = (bend.size.usual + self.wire.thickness) / 2, math.radians(heading + 90 * side)
                centre = (at[0] + r * math.cos(out), at[1] + r * math.sin(out))
                start = heading - 90 * side
                found.append([at, *arc(centre, r, start, start + side * bend.degrees)[1:]])
                heading += side * bend.degrees
            at = found[-1][-1]
        return found

    def path(self) -> list[Point]:
        """The middle of the whole wire."""
        return [(0.0, 0.0), *(point for leg in self.legs() for point in leg[1:])]

    def joints(self) -> list[Point]:
        """Where it starts, and where each piece ends."""
        return [(0.0, 0.0), *(leg[-1] for leg in self.legs())]

    def made(self) -> Iterator[Made]:
        """Wire to cut."""
        yield Made("wire for one", "cut", tool="ruler")

    def tools(self) -> Iterator[tuple[str, float]]:
        """A rod for each bend."""
        for size in sorted({bend.size.usual for bend in self.form if bend.degrees}):
            yield "rod", size

    def check(self) -> Iterator[Finding]:
        """Bends that the wire goes round, on rods that are owned."""
        wire, owned = self.wire.thickness, self.bench.owned("rod")
        for size in sorted({bend.size.usual for bend in self.form if bend.degrees}):
            if size < wire - 1e-9:
                message = f"has a bend of {size:g} mm, tighter than the wire is thick: it thins there, and may crack"
                yield Finding("form", message, f"{math.ceil(wire * 10) / 10:g} mm or more", "warning")
            elif owned and min(abs(size - rod) for rod in owned) > max(0.5, 0.1 * size) + 1e-9:
                near = ", ".join(f"{rod:g} mm" for rod in sorted(owned, key=lambda rod: abs(rod - size))[:2])
                yield Finding(
                    "form", f"has a bend of {size:g} mm, and no rod near it is in the drawer", near, "warning"
                )

    def template(self, pen: Pen, size: Callable[[str], Size]) -> None:  # noqa: ARG002 - drawn as given
        """The middle of the wire at true size."""
        points = self.path()
        left, top = min(x for x, _ in points), min(y for _, y in points)
        pen.line([(x - left, y - top) for x, y in points], "cut")
        pen.circle((points[0][0] - left, points[0][1] - top), 1.4, "thin")

    def template_note(self, size: Callable[[str], Size]) -> str:
        """What the line is."""
        cut = size("cut")
        pieces = ", then ".join(self._piece(bend, cut) for bend in self.form)
        told = f"; {pieces}" if len(self.form) <= MANY else ""
        return f"the line is the middle of the wire, and starts at the small circle{told}; {self.wire.name}, cut {cut.words} mm"

    def diagram(self, pen: Pen, size: Callable[[str], Size], k: float) -> str:
        """The bent wire with a number where each piece ends, and how far along the wire that is."""
        cut, d = size("cut"), self.wire.thickness
        along = [worded(at, cut) for at in accumulate(self._long(bend).usual for bend in self.form)]
        pieces = [self._piece(bend, cut) for bend in self.form] if len(along) <= MANY else [""] * len(along)
        lines = [
            f"{i}: {piece}{', ' * bool(piece)}to {at}"
            for i, (piece, at) in enumerate(zip(pieces, along, strict=True), 1)
        ]
        head = ["mm of wire from the circle on:"] if len(along) <= MANY else []
        path, joints = self.path(), self.joints()
        forming.captioned(
            pen,
            lambda on: forming.bent(on, path, joints, d, k),
            [*head, *lines, f"cut {cut.words}"],
        )
        return said(
            cut, f"The bent wire and its pieces, mm, each to so far along the wire: {'; '.join(lines)}; cut {cut.words}"
        )

    def _piece(self, bend: Bend, like: Size) -> str:
        words = worded(bend.size.usual, like, "fine")
        return f"Ø {words} by {bend.degrees:g}°" if bend.degrees else words

    def view(self, pen: Pen) -> float:
        """The wire as it is bent."""
        return views.placed(pen, self.path(), self.wire.thickness)
