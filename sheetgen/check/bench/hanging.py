"""Hanging: what meets in one step goes through what it goes through, reaches round, has room, and holds."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base.interval import GRAIN, Interval
from sheetgen.base.material import Fibre, Finding
from sheetgen.check.bench.told import listed, told
from sheetgen.facts.fit import CLOSE, LOOSE
from sheetgen.formulas.packing import MOST_KNOWN, bundle_ratio
from sheetgen.model.bench.bodies import thickness

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.base.trouble import Trouble
    from sheetgen.model.bench.bodies import Body
    from sheetgen.model.bench.moment import Moment

PULLED = {"neck", "wrist", "ankle"}


def hung(moment: Moment) -> Iterator[Trouble]:
    """Rings, holes and findings that meet in one step."""
    if moment.deed != "hang":
        return
    named = moment.bodies_named
    rings = [body for body in named if body.piece.roles.get("ring inside")]
    wires = [(body, thick) for body in rings or named if (thick := thickness(body.piece)) is not None]
    for hole in (body for body in named if body.feature and body.piece.roles.get("opens")):
        yield from _through(moment, hole, wires)
        yield from _reaches(moment, hole, rings)
    for finding in (item for item in moment.step.uses if isinstance(item, Finding) and item.inside is not None):
        for body, thick in wires if rings else ():
            if finding.inside is not None and thick > finding.inside - GRAIN:
                told_inside, told_wire = (body.piece.length(x, "fine").plain for x in (finding.inside, thick))
                message = f"'{body.title}' is of wire {told_wire} thick, and {finding.name} is {told_inside} inside"
                yield told(
                    "passes",
                    message,
                    moment.place(finding.id, "hang"),
                    "a thinner ring, or a finding that is wider inside",
                )
    for ring in rings:
        yield from _crowded(moment, ring, [body for body in named if body is not ring])
    yield from _opens(moment, rings, named)


def _through(moment: Moment, hole: Body, wires: list[tuple[Body, float]]) -> Iterator[Trouble]:
    """What goes through a hole at its narrowest: fired where the clay shrinks most."""
    opening = hole.number("opens")
    passing = [(f"the wire of '{body.title}'", thick) for body, thick in wires]
    if not passing:
        passing = [(item.name, item.thickness) for item in moment.step.uses if isinstance(item, Fibre)]
    for name, thick in passing if opening else ():
        if opening is None:
            continue
        least, told_wire = (hole.piece.length(x, "fine").plain for x in (opening.low, thick))
        where = hole.place("drill", "opening", "for wire", "for_wire")
        if opening.low < thick - GRAIN:
            message = (
                f"'{hole.title}' may come out of the fire at {least}, and {name}, hung in it at {moment.number}, "
                f"is {told_wire} thick"
            )
            yield told(
                "passes",
                message,
                where,
                "a larger hole, or for wire: instead of its opening, which sizes it for the most shrinkage",
            )
        elif opening.low - thick < CLOSE - GRAIN:
            message = (
                f"'{hole.title}' may come out of the fire at {least}, close round {name} of {told_wire}, and binds"
            )
            yield told("close-fit", message, where, f"{CLOSE:g} mm of room or more")


def _reaches(moment: Moment, hole: Body, rings: list[Body]) -> Iterator[Trouble]:
    """A ring that goes through a hole reaches round the edge beside it."""
    least = hole.number("reaches round")
    edge = hole.number("keeps clear")
    if hole.piece.fields.get("place") is not None or edge is None:
        return
    if least is None:
        host = next(
            (moment.bench.bodies[h] for h in hole.piece.roles.get("drilled in", ()) if h in moment.bench.bodies), None
        )
        rolled, clay = (host.number("rolled to"), host.clay) if host else (None, None)
        if rolled is None or clay is None:
            return
        thick = rolled.usual * (1 - clay.thickness_shrinkage.low)
        least = Interval(*([math.hypot(edge.usual, thick)] * 3))
    for ring in rings:
        inside = ring.number("ring inside")
        if inside is not None and inside.usual < least.usual - GRAIN:
            told_inside, told_least = (ring.piece.length(x, "fine").plain for x in (inside.usual, least.usual))
            message = (
                f"'{ring.title}' is {told_inside} inside, and does not reach from '{hole.title}' round "
                f"the edge: that takes {told_least}"
            )
            yield told(
                "reaches",
                message,
                ring.place("inside", "rod"),
                f"{told_least} or more inside, or the hole nearer to the edge",
            )


def _crowded(moment: Moment, ring: Body, others: list[Body]) -> Iterator[Trouble]:
    """All the wires that go through one ring, lying in a bundle; each taken as thick as the thickest."""
    inside = ring.number("ring inside")
    wires = [
        (thick, max(1, math.ceil(body.piece.count / ring.piece.count)), body)
        for body in others if (thick := thickness(body.piece)) is not None
    ]  # fmt: skip
    if inside is None or not wires:
        return
    many, thickest = sum(n for _, n, _ in wires), max(thick for thick, _, _ in wires)
    bundle = thickest * (bundle_ratio.pure(many) if many <= MOST_KNOWN else math.sqrt(many / LOOSE))
    if bundle > inside.low + GRAIN:
        told_inside, told_bundle = (ring.piece.length(x, "fine").plain for x in (inside.usual, bundle))
        named = listed([f"{n} of '{body.title}'" for _, n, body in wires])
        meets = f"{named} hang in each at {moment.number}, a bundle {told_bundle} across"
        message = f"'{ring.title}' is {told_inside} inside, and {meets}"
        helped = f"a ring of more than {told_bundle} inside, or two rings"
        yield told("two-wires", message, ring.place("inside", "rod"), helped)


def _opens(moment: Moment, rings: list[Body], named: list[Body]) -> Iterator[Trouble]:
    """A ring that is only closed, where a clasp pulls at it."""
    clasps = {
        item.id
        for body in moment.bench.bodies.values()
        for item in body.piece.roles.get("closed by", ())
        if isinstance(item, Finding)
    }
    pulls = any(item.id in clasps for item in moment.step.uses) or any(body.piece.roles.get("closes") for body in named)
    for ring in rings if pulls and moment.bench.worn_at in PULLED else ():
        if not ring.solders:
            message = f"'{ring.title}' is not soldered, and the clasp pulls at it"
            yield told("open-ring", message, ring.piece.places.get(""), "solder it, take a closed ring, or a split one")
