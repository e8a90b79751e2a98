"""What is drilled in a flat part: whether it has a template, clay enough, metal beside the hole, and stays flat."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from sheetgen.base.interval import GRAIN
from sheetgen.base.outline import Outline, apart
from sheetgen.base.trouble import Severity, Trouble, refused
from sheetgen.facts.fit import LEAST_EDGE, ROUNDED

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.base.interval import Interval
    from sheetgen.base.pen import Point
    from sheetgen.model.worked import WorkedVersion
    from sheetgen.parts.piece import Piece


def drilled(part: Piece, version: WorkedVersion) -> Iterator[Trouble]:
    """What cannot be, or is doubtful, of one part that is drilled in another."""
    into = next(iter(part.roles.get("drilled in", ())), None)
    if into is None:
        return
    host, title = version.parts[into], part.title.lower()
    place = part.places.get("drilled_in")
    if not host.flat:
        flat = [p.title.lower() for p in version.parts.values() if p.flat]
        message = f"{title}: drilled in is '{host.title.lower()}', which has no template"
        yield Trouble(message, place, f"one of {', '.join(flat)}")
        return
    needed = next((part.length(one.high, "most") for one in part.roles.get("clay needed", ())), None)
    if needed is not None and host.deep is not None and host.deep.usual < needed - GRAIN:
        rolled = part.length(host.deep.usual, "fine").plain
        message = (
            f"{title}: drilled in is '{host.title.lower()}', rolled to {rolled}, and seat and floor want {needed.plain}"
        )
        yield refused("least-floor", message, place, "thicker clay, the layers as a part of their own, or less floor")
    if host.reshaped and len(part.drilled) > 1 and "keeps clear" not in part.roles:
        # What stands by an edge is measured from it along the clay; spots among each other are measured straight.
        message = (
            f"{title}: drilled in is '{host.title.lower()}', which is formed after it is cut, and what is marked on it "
            "flat comes out closer together"
        )
        helped = "take this out, and mark and drill it when the clay is formed; or lay it out larger"
        yield Trouble(message, place, helped, "warning")
    for edge in part.roles.get("keeps clear", ()) if part.drilled else ():
        yield from _beside(part, host, edge)


def _beside(part: Piece, host: Piece, edge: Interval) -> Iterator[Trouble]:
    """Metal left between a hole and the outline it is drilled in, where that narrows or curves."""
    first = host.flat[0]
    if first.line != "cut" or not first.closed or part.clay is None:
        return
    outline = Outline(tuple(first.outline.points))
    if not all(outline.holds(hole.centre) for hole in part.drilled):
        message = f"{part.title.lower()}: its middle lies outside '{host.title.lower()}'"
        place = part.places.get("place", part.places.get("edge", part.places.get("drilled_in")))
        yield Trouble(message, place, "a spot inside the outline")
        return
    wet = min(_nearest(hole.centre, first.runs) - hole.width / 2 for hole in part.drilled)
    left = wet * (1 - part.clay.shrinkage.usual)
    if left < edge.usual - ROUNDED:
        told = part.length(max(0.0, left)).plain
        asked = part.length(edge.usual, "fine").plain
        message = (
            f"{part.title.lower()}: edge is {asked}, and only {told} of '{host.title.lower()}' is left beside the hole"
        )
        helped = "more edge, so that the hole lies where it is wider, or a smaller hole"
        severity: Severity = "warning" if left >= LEAST_EDGE else "error"
        place = next((part.places[n] for n in ("edge", "place", "drilled_in") if n in part.places), part.places.get(""))
        yield refused("least-edge" if left > 0 else "", message, place, helped, severity)


def _nearest(centre: Point, runs: list[list[Point]]) -> float:
    """How far a point is from the nearest of some lines."""
    return min(apart(centre, a, b) for run in runs for a, b in pairwise(run))
