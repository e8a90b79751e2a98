"""Fit: what meets in one step of hanging goes through what it goes through, and holds; clays and plugs that agree."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base.interval import GRAIN, Interval
from sheetgen.base.material import Clay, Fibre, Finding
from sheetgen.check.bench.bodies import thickness
from sheetgen.check.bench.told import listed, told
from sheetgen.facts.clay import ONE_GO, PLUG, SPAN
from sheetgen.facts.fit import CLOSE, LOOSE
from sheetgen.facts.metals import LOW_SOLDER
from sheetgen.facts.rings import US_STEP
from sheetgen.facts.units import MM_PER_INCH
from sheetgen.formulas.packing import MOST_KNOWN, bundle_ratio

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.base.place import Place
    from sheetgen.base.trouble import Trouble
    from sheetgen.check.bench.bodies import Body
    from sheetgen.check.bench.walk import Moment

PULLED = {"neck", "wrist", "ankle"}


def _number(body: Body, role: str) -> Interval | None:
    return next((one for one in body.piece.roles.get(role, ()) if isinstance(one, Interval)), None)


def _field(body: Body, *names: str) -> Place | None:
    places = body.piece.places
    return next((places[name] for name in names if name in places), places.get(""))


def hung(moment: Moment) -> Iterator[Trouble]:
    """Rings, holes and findings that meet in one step."""
    if moment.deed != "hang":
        return
    named = [moment.bench.bodies[name] for name in moment.named]
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
    opening = _number(hole, "opens")
    passing = [(f"the wire of '{body.title}'", thick) for body, thick in wires]
    if not passing:
        passing = [(item.name, item.thickness) for item in moment.step.uses if isinstance(item, Fibre)]
    for name, thick in passing if opening else ():
        if opening is None:
            continue
        least, told_wire = (hole.piece.length(x, "fine").plain for x in (opening.low, thick))
        where = _field(hole, "drill", "opening", "for wire", "for_wire")
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
    least = _number(hole, "reaches round")
    edge = _number(hole, "keeps clear")
    if hole.piece.fields.get("place") is not None or edge is None:
        return
    if least is None:
        host = next(
            (moment.bench.bodies[h] for h in hole.piece.roles.get("drilled in", ()) if h in moment.bench.bodies), None
        )
        rolled, clay = (_number(host, "rolled to"), host.clay) if host else (None, None)
        if rolled is None or clay is None:
            return
        thick = rolled.usual * (1 - clay.thickness_shrinkage.low)
        least = Interval(*([math.hypot(edge.usual, thick)] * 3))
    for ring in rings:
        inside = _number(ring, "ring inside")
        if inside is not None and inside.usual < least.usual - GRAIN:
            told_inside, told_least = (ring.piece.length(x, "fine").plain for x in (inside.usual, least.usual))
            message = (
                f"'{ring.title}' is {told_inside} inside, and does not reach from '{hole.title}' round "
                f"the edge: that takes {told_least}"
            )
            yield told(
                "reaches",
                message,
                _field(ring, "inside", "rod"),
                f"{told_least} or more inside, or the hole nearer to the edge",
            )


def _crowded(moment: Moment, ring: Body, others: list[Body]) -> Iterator[Trouble]:
    """All the wires that go through one ring, lying in a bundle; each taken as thick as the thickest."""
    inside = _number(ring, "ring inside")
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
        yield told("two-wires", message, _field(ring, "inside", "rod"), helped)


def _opens(moment: Moment, rings: list[Body], named: list[Body]) -> Iterator[Trouble]:
    """A ring that is only closed, where a clasp pulls at it."""
    clasps = {
        item.id
        for body in moment.bench.bodies.values()
        for item in body.piece.roles.get("closed by", ())
        if isinstance(item, Finding)
    }
    pulls = any(item.id in clasps for item in moment.step.uses) or any(body.piece.roles.get("closes") for body in named)
    for ring in rings if pulls and moment.worn_at in PULLED else ():
        if not ring.solders:
            message = f"'{ring.title}' is not soldered, and the clasp pulls at it"
            yield told("open-ring", message, ring.piece.places.get(""), "solder it, take a closed ring, or a split one")


def joined(moment: Moment) -> Iterator[Trouble]:
    """Raw clays that are joined shrink alike."""
    if moment.deed not in {"join", "close"}:
        return
    raw = [
        body
        for body in (moment.bench.bodies[name] for name in moment.named)
        if body.clay is not None and body.fired is None
    ]
    for one, other in ((raw[0], body) for body in raw[1:]):
        a, b = one.clay, other.clay
        if a is None or b is None or (a.shrinkage.low <= b.shrinkage.high and b.shrinkage.low <= a.shrinkage.high):
            continue
        message = (
            f"'{one.title}' of {a.name} shrinks by {_share(a)}, and '{other.title}' of {b.name}, "
            f"joined to it at {moment.number}, by {_share(b)}"
        )
        yield told(
            "shrink-alike",
            message,
            moment.place(moment.deed, "parts"),
            "one clay for both, or fire them apart and join them after it",
        )
        return


def _share(clay: Clay) -> str:
    return f"{clay.shrinkage.low * 100:.3g} to {clay.shrinkage.high * 100:.3g} %"


def fired(moment: Moment) -> Iterator[Trouble]:
    """Plugs in the rings they hold, and thin clay that lies free."""
    if moment.deed != "fire":
        return
    for body in (moment.bench.bodies[name] for name in moment.named):
        inside, span, rolled = (_number(body, role) for role in ("on a plug", "span", "rolled to"))
        for plug in moment.step.uses if inside is not None else ():
            across = getattr(plug, "across", None)
            if inside is not None and plug.acts("plug") and across is not None and across > inside.usual + PLUG + GRAIN:
                sizes = (body.piece.length(x, "fine").plain for x in (across, inside.usual))
                message = "{0} is {2} across, and '{1}' is to be {3} inside".format(plug.name, body.title, *sizes)
                off = f"a plug of that, {(across - inside.usual) / (MM_PER_INCH * US_STEP):.2g} US sizes less"
                yield told("plug", message, moment.place(plug.id, "firing"), off)
        if (
            span is not None
            and rolled is not None
            and span.usual > SPAN * rolled.usual
            and not moment.step.acts("support")
        ):
            free, thick = (body.piece.length(x, "fine").plain for x in (span.usual, rolled.usual))
            message = f"'{body.title}' lies free for {free} in the fire, {thick} thick, and sags"
            yield told(
                "sags", message, _field(body, "span"), "support it from below in the fire with what acts as: support"
            )


def grips(moment: Moment) -> Iterator[Trouble]:
    """A hole that shrinks on to the solid wire or stem of what was put through it."""
    if moment.deed != "fire":
        return
    for hole in (body for body in moment.bodies if body.feature):
        opening = _number(hole, "opens")
        through = [one.item for one in moment.attached if one.part == hole.name and isinstance(one.item, Finding)]
        for item in through if opening is not None and hole.fired is None else ():
            if opening is not None and item.wire is not None and opening.low < item.wire - GRAIN:
                least, stem = (hole.piece.length(x, "fine").plain for x in (opening.low, item.wire))
                message = (
                    f"'{hole.title}' shrinks to {least}, and {item.name} in it is {stem} thick: the clay "
                    "cracks round it"
                )
                helped = f"a larger hole, {stem} or more at the most shrinkage, or open beside the stem"
                yield told("grips", message, _field(hole, "drill", "opening"), helped)


def strong(moment: Moment) -> Iterator[Trouble]:
    """What is hammered, stretched or pulled, and was fired by a program for the least strength."""
    if moment.deed not in {"harden", "stretch", "pull"}:
        return
    for body in (moment.bench.bodies[name] for name in moment.named):
        if body.fired is not None and body.clay is not None and body.clay.strength == "least":
            message = (
                f"'{body.title}' of {body.clay.name} is fired by '{body.clay.program}', and {moment.number} strains it"
            )
            full = next((one.name for one in body.clay.programs if one.strength == "full"), "")
            helped = (
                f"programs: {{{body.clay.id}: {full}}}" if full else "a program of full strength, by the clay's maker"
            )
            yield told("strength", message, moment.place(moment.deed, "parts"), helped)
            return


def drilled(moment: Moment) -> Iterator[Trouble]:
    """A wide hole in unfired clay that is drilled in one go."""
    if moment.deed != "drill" or sum(item.acts("drill") for item in moment.step.uses) > 1:
        return
    for body in (moment.bench.bodies[name] for name in moment.named):
        wide = _number(body, "drilled with")
        host = moment.bench.group({body.name})
        if (
            wide is None
            or body.piece.roles.get("begun with")
            or any(moment.bench.bodies[n].fired is not None for n in host)
        ):
            continue
        if wide.usual > ONE_GO + GRAIN:
            message = (
                f"'{body.title}' is drilled with {body.piece.length(wide.usual, 'fine').plain} in one "
                "go in unfired clay, which breaks out"
            )
            helped = "starter: 1 mm, or a starting drill under uses:"
            yield told("one-go", message, _field(body, "drill", "opening", "for wire", "for_wire"), helped)


def solders(moment: Moment) -> Iterator[Trouble]:
    """A joint that is made after another with a solder that flows no lower."""
    if moment.deed != "solder":
        return
    now = [item for item in moment.step.uses if item.acts("solder")]
    lowest = min((_flows(item) for item in now), default=0.0)
    before = [
        (index, item)
        for body in moment.bodies
        for index, item in body.solders
        if index != moment.index and _flows(item) >= LOW_SOLDER
    ]
    low = min(before, key=lambda pair: _flows(pair[1]), default=None)
    if low is not None and now and lowest >= _flows(low[1]):
        message = (
            f"{low[1].name} holds a joint since {moment.at(low[0])}, and {moment.number} solders "
            f"with {now[0].name}: the first joint flows again"
        )
        helped = "hard solder first and an easier one after it, or the first joint kept from the heat"
        yield told("one-solder", message, moment.place(now[0].id, "solder", "uses"), helped)


def _flows(item: object) -> float:
    found = getattr(item, "flows_at", None)
    return float(found) if found is not None else 0.0
