"""Fit: clays that are joined agree, plugs and stems go in, thin clay is carried, holes and joints are made in order."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.interval import GRAIN
from sheetgen.base.material import Finding
from sheetgen.check.bench.told import told
from sheetgen.facts.clay import ONE_GO, PLUG, SPAN
from sheetgen.facts.metals import LOW_SOLDER
from sheetgen.facts.rings import US_STEP
from sheetgen.facts.units import MM_PER_INCH
from sheetgen.model.bench.bodies import flows

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.base.material import Clay
    from sheetgen.base.trouble import Trouble
    from sheetgen.model.bench.moment import Moment


def joined(moment: Moment) -> Iterator[Trouble]:
    """Raw clays that are joined shrink alike."""
    if moment.deed not in {"join", "close"}:
        return
    raw = [body for body in moment.bodies_named if body.clay is not None and body.fired is None]
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
    for body in moment.bodies_named:
        inside, span, rolled = (body.number(role) for role in ("on a plug", "span", "rolled to"))
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
                "sags", message, body.place("span"), "support it from below in the fire with what acts as: support"
            )


def grips(moment: Moment) -> Iterator[Trouble]:
    """A hole that shrinks on to the solid wire or stem of what was put through it."""
    if moment.deed != "fire":
        return
    for hole in (body for body in moment.bodies if body.feature):
        opening = hole.number("opens")
        through = [one.item for one in moment.attached if one.part == hole.name and isinstance(one.item, Finding)]
        for item in through if opening is not None and hole.fired is None else ():
            if opening is not None and item.wire is not None and opening.low < item.wire - GRAIN:
                least, stem = (hole.piece.length(x, "fine").plain for x in (opening.low, item.wire))
                message = (
                    f"'{hole.title}' shrinks to {least}, and {item.name} in it is {stem} thick: the clay "
                    "cracks round it"
                )
                helped = f"a larger hole, {stem} or more at the most shrinkage, or open beside the stem"
                yield told("grips", message, hole.place("drill", "opening"), helped)


def strong(moment: Moment) -> Iterator[Trouble]:
    """What is hammered, stretched or pulled, and was fired by a program for the least strength."""
    if moment.deed not in {"harden", "stretch", "pull"}:
        return
    for body in moment.bodies_named:
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
    for body in moment.bodies_named:
        wide = body.number("drilled with")
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
            yield told("one-go", message, body.place("drill", "opening", "for wire", "for_wire"), helped)


def solders(moment: Moment) -> Iterator[Trouble]:
    """A joint that is made after another with a solder that flows no lower."""
    if moment.deed != "solder":
        return
    now = [item for item in moment.step.uses if item.acts("solder")]
    lowest = min((flows(item) for item in now), default=0.0)
    before = [
        (index, item)
        for body in moment.bodies
        for index, item in body.solders
        if index != moment.index and flows(item) >= LOW_SOLDER
    ]
    low = min(before, key=lambda pair: flows(pair[1]), default=None)
    if low is not None and now and lowest >= flows(low[1]):
        message = (
            f"{low[1].name} holds a joint since {moment.at(low[0])}, and {moment.number} solders "
            f"with {now[0].name}: the first joint flows again"
        )
        helped = "hard solder first and an easier one after it, or the first joint kept from the heat"
        yield told("one-solder", message, moment.place(now[0].id, "solder", "uses"), helped)
