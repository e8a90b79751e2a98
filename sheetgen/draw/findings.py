"""Bought-in parts as they hang: each form by what stock says of it, the rest in proportion."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base.pen import Extent, arc
from sheetgen.draw import sketches, views
from sheetgen.draw.bits import Bit, ring

if TYPE_CHECKING:
    from collections.abc import Callable

    from sheetgen.base.material import Finding
    from sheetgen.base.pen import Pen

CLIP, TEETH = 0.6, 5  # of a ribbon end: its depth in widths, and the folds that are drawn on it
EYE = 1.9  # inside of the eye of a hook, in thicknesses of its wire
CATCH, HINGE = 0.72, 0.36  # of a brooch pin: its catch and the coil of its pin, in widths of the bar


def bit(finding: Finding) -> Bit | None:
    """A finding as a bit of a row; None where stock says too little to draw it."""
    form = FORMS.get(finding.form)
    return form(finding) if form is not None else None


def on_edge(pen: Pen, one: Bit) -> None:
    """A finding of wire seen along its plane: as thick as its wire."""
    own = Extent()
    one.draw(own)
    pen.box((-one.wire / 2, own.top), one.wire, own.height)


def _ring(one: Finding) -> Bit:
    inside = one.inside or one.length or 0.0
    return ring(inside, inside, one.wire or inside / 4)


def _crimp(one: Finding) -> Bit:
    long = one.length or 0.0
    wide = (one.inside or long / 2) * 1.4
    return Bit(lambda pen: pen.box((-wide / 2, 0), wide, long), long, layer=1)


def _hook(one: Finding) -> Bit:
    """Its eye, a straight shank, and the bend that the last link lies in; `length` is from eye to bend, inside."""
    d, long = one.wire or 1.0, one.length or 16.0
    r = (EYE + 1) * d / 2
    eye, low = d / 2 + r, d + long + d / 2 - r
    path = [(r, eye), *arc((0, low), r, 0, 180, 32)]
    path += [(-r, low - r), *arc((-r - 2 * r, low - r), 2 * r, 0, -38, 12)]  # the tip stands off a little

    def draw(pen: Pen) -> None:
        sketches.wire(pen, path, d)
        pen.cover([arc((0, eye), out, 0, 360, 48) for out in (r + d / 2, r - d / 2)])
        views.loop(pen, 0, 2 * r - d, d)

    return Bit(draw, long, d, d)


def _ribbon_end(one: Finding) -> Bit:
    """Its loop, and the clip pressed shut over what it holds."""
    inside, wide = one.inside or 2.0, one.width or 10.0
    d = one.wire or inside / 2
    low, deep = inside + 1.5 * d, wide * CLIP

    def draw(pen: Pen) -> None:
        views.loop(pen, 0, inside, d)
        pen.cover([[(-wide / 2, low), (wide / 2, low), (wide / 2, low + deep), (-wide / 2, low + deep)]])
        pen.box((-wide / 2, low), wide, deep)
        for i in range(1, TEETH):
            x = wide * (i / TEETH - 0.5)
            pen.line([(x, low + deep * 0.25), (x, low + deep * 0.85)], "thin")

    return Bit(draw, inside + d / 2, d, d, layer=1)


def _eye(one: Finding) -> Bit:
    """An eye on its stem, of which the part that it is set in hides the lower end."""
    inside, d = one.inside or 2.5, one.wire or 1.0

    def draw(pen: Pen) -> None:
        pen.box((-d / 2, inside + 1.5 * d), d, 2 * d)
        pen.cover([arc((0, inside / 2 + d), inside / 2 + d, 0, 360, 48)])
        views.loop(pen, 0, inside, d)

    return Bit(draw, inside + d, d, d)


def _ear_wire(one: Finding) -> Bit:
    """A fish hook from the side: the loop below its front, the arch, and the leg behind the ear."""
    arch, d, long = one.inside or 9.0, one.wire or 0.8, one.length or 20.0
    r, loop = (arch + d) / 2, 1.25 * d + d / 2
    low = long - d - 2 * loop
    leg = low * 0.85
    path = [(0.0, low + d / 2), *arc((-r, r + d / 2), r, 0, -180, 48), *arc((-2 * r - arch, leg), arch, 0, 25, 12)]

    def draw(pen: Pen) -> None:
        sketches.wire(pen, path, d)
        pen.cover([arc((0, low + loop), loop + d / 2, 0, 360, 48)])
        views.loop(pen, low - d / 2, 2 * loop - d, d)

    return Bit(draw, low + 2 * loop - d, d / 2, d)


def _pin(one: Finding) -> Bit:
    """A bar with the pin along it, seen from behind; it lies across.

    The coil is on the right and the catch on the left, as a right hand closes it and as a bench fixes it.
    """
    long, wide = one.length or 25.0, one.width or 5.0
    middle = wide / 2

    def draw(pen: Pen) -> None:
        bar = [(-long / 2, 0.0), (long / 2, 0.0), (long / 2, wide), (-long / 2, wide)]
        pen.cover([bar])
        pen.line(bar, closed=True)
        hinge, catch = long / 2 - wide * 0.6, -long / 2 + wide * 0.55
        pen.circle((hinge, middle), wide * HINGE * 2)
        pen.circle((hinge, middle), wide * HINGE)
        for y in (-0.09, 0.09):
            pen.line([(hinge - wide * HINGE, middle + y * wide), (catch, middle + y * wide / 2)], "thin")
        half = wide * CATCH / 2
        opening = math.degrees(math.asin(0.3))
        pen.cover([arc((catch, middle), half, 0, 360, 48)])
        pen.line([*arc((catch, middle), half, -90 - opening + 180, 450 - 2 * opening, 48)])
        pen.circle((catch, middle), half)

    return Bit(draw, wide, plate=True)


FORMS: dict[str, Callable[[Finding], Bit]] = {
    "ring": _ring,
    "crimp": _crimp,
    "hook": _hook,
    "ribbon end": _ribbon_end,
    "eye": _eye,
    "fish hook": _ear_wire,
    "bar pin": _pin,
}
