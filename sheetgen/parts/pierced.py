"""A round piece of clay with a hole in its middle, holes in a ring round it, or none."""

from __future__ import annotations

from collections.abc import Iterator
from typing import ClassVar

from sheetgen.base.flat import Oval
from sheetgen.base.pen import Point, arc
from sheetgen.facts.clay import SAME_HOLE, STRAW
from sheetgen.facts.fit import LEAST_RIM
from sheetgen.parts import field
from sheetgen.parts.figure import Need, SizeSpec, ToolSpec, aside, flag, need, size, tool
from sheetgen.parts.kind import Part

_ROW = f"around × sin(π ÷ holes) − {LEAST_RIM:g} mm"
_EDGE = f"across − {2 * LEAST_RIM:g} mm − opening"
_INNER = f"hole + {2 * LEAST_RIM:g} mm + opening"


def _bored(label: str, figure: str, finished: str, fires: str, when: str) -> tuple[SizeSpec, SizeSpec]:
    """A hole, with what it is made with in wet or dry clay."""
    return (
        size(label, figure, finished=finished, fires=fires, tool="drill", when=f"{when} and {figure} < {STRAW:g} mm"),
        size(
            label,
            figure,
            finished=finished,
            fires=fires,
            tool="drill, cutter or straw",
            when=f"{when} and {figure} ≥ {STRAW:g} mm",
        ),
    )


def ring(middle: Point, around: float, holes: int) -> list[Point]:
    """The centres of the holes in the ring."""
    return arc(middle, around / 2, -90, 270, holes)[:holes] if holes else []


def bored(middle: Point, hole: float | None, around: float | None, opening: float | None, holes: int) -> Iterator[Oval]:
    """The hole in the middle and those round it, as many as there are, by their diameters in mm."""
    if hole:
        yield Oval(middle, hole, hole)
    if around and opening:
        yield from (Oval(centre, opening, opening) for centre in ring(middle, around, holes))


# fmt: off
class Pierced(Part):
    """A kind works how wide the holes are cut wet: `wet_hole`, `hole_fires`, `wet_opening`, `wet_around`."""

    hole = field.maybe_length("finished diameter of a hole in the middle", above=0, role="opens")
    holes = field.count("holes in a ring round the middle", default="0", at_least=0, at_most=60)
    around = field.maybe_length("finished diameter of the circle their centres stand on", above=0)
    opening = field.maybe_length("finished diameter of each of those holes", above=0, role="opens")

    ringed = flag("holes and around and opening")
    holes_squared = aside("mm²", "(wet_hole² if hole) + (holes × wet_opening² if ringed)")

    sizes: ClassVar[tuple[SizeSpec, ...]] = (
        *_bored("hole in the middle", "wet_hole", "hole", "hole_fires", "hole"),
        *_bored("{holes} holes round it", "wet_opening", "opening", "fired(wet_opening, clay.shrinkage)", "ringed"),
        size("circle of their centres", "wet_around", finished="around", tool="template", when="ringed"),
    )
    tools: ClassVar[tuple[ToolSpec, ...]] = (
        tool("drill", "wet_hole", when="hole", within=f"{SAME_HOLE:g} mm"),
        tool("drill", "wet_opening", when="ringed", within=f"{SAME_HOLE:g} mm"),
    )
    needs: ClassVar[tuple[Need, ...]] = (
        need("hole < across", "leaves nothing of the rim", at="hole", when="hole", most=f"max(0.5 mm, across − {4 * LEAST_RIM:g} mm)"),
        need(f"hole ≤ across − {4 * LEAST_RIM:g} mm", "leaves too little rim", at="hole", when="hole and hole < across",
             most=f"max(0.5 mm, across − {4 * LEAST_RIM:g} mm)", rule="least-rim"),
        need("holes = 0 or around and opening", "want the circle they stand on and their size", at="holes", help="give around: and opening:"),
        need("holes ≤ 1 or opening < around × sin(π ÷ holes)", "is so wide that the holes run together", at="opening", most=f"max(0.5 mm, {_ROW})",
             when="ringed"),
        need("holes ≤ 1 or opening ≤ " + _ROW, "is so wide that {holes} holes stand {around × sin(π ÷ holes) − opening} apart on that circle",
             at="opening", most=f"max(0.5 mm, {_ROW})", when="ringed and opening < around × sin(π ÷ holes)", rule="least-web"),
        need("around + opening < across", "brings the holes over the rim", at="around", most=f"max(0.5 mm, {_EDGE})", when="ringed"),
        need(f"around ≤ {_EDGE}", "brings the holes to the rim", at="around", most=f"max(0.5 mm, {_EDGE})",
             when="ringed and around + opening < across", rule="least-rim"),
        need("around − opening > hole", "brings the holes into the middle one", at="around", least=_INNER, when="ringed and hole"),
        need(f"around ≥ {_INNER}", "brings the holes near the middle one", at="around", least=_INNER,
             when="ringed and hole and around − opening > hole", rule="least-web"),
    )
