"""Order: dry before the fire, fired once it is whole, hung and drilled when it is there, cured before it is moved."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.material import Adhesive, Stone
from sheetgen.check.bench.survival import bears
from sheetgen.check.bench.told import hours, listed, told
from sheetgen.facts.bench import HEATS

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.base.trouble import Trouble
    from sheetgen.model.bench.bodies import Attached
    from sheetgen.model.bench.moment import Moment

MOVES = {"hang", "polish", "patinate", "harden"}


def dry(moment: Moment) -> Iterator[Trouble]:
    """Clay that is heated has dried since it was last wet, and was tested after it."""
    if moment.deed not in HEATS:
        return
    where = moment.place("firing", moment.deed, "uses")
    clays = [body for body in moment.bodies if body.clay is not None]
    wet = [body for body in clays if body.wet is not None]
    if wet:
        named = listed([f"'{body.title}'" for body in wet[:3]])
        last = max(body.wet or 0 for body in wet)
        how = next(body.how for body in wet if body.wet == last)
        message = (
            f"{named}, {how} at {moment.at(last)}, comes into the fire at {moment.number}, and nothing dries it before"
        )
        yield told(
            "dry-before-fire", message, where, "a step between them with wait: drying, or with a time and does: dry"
        )
    untested = [body for body in clays if body.wet is None and not body.tested and body.dried is not None]
    if untested:
        named = listed([f"'{body.title}'" for body in untested[:3]])
        message = f"{named}: fired at {moment.number} without a test for damp since the last drying"
        helped = "does: test, with a mirror or scales, after the drying"
        yield told("dry-test", message, where, helped)


def raw_on_fired(moment: Moment) -> Iterator[Trouble]:
    """Raw clay or slip that is worked on what is fired."""
    step = moment.step
    if moment.deed not in {"shape", "join", "close", "fill"} or step.acts("paste for fired metal"):
        return
    named = moment.bodies_named
    fired = [body for body in named if body.fired is not None and body.clay is not None]
    raw = [body for body in named if body.fired is None and body.clay is not None]
    slip = step.acts("slip")
    if not fired or not (raw or slip or moment.deed in {"shape", "fill"}):
        return
    body = fired[0]
    since = f"'{body.title}' is fired at {moment.at(body.fired or 0)}, and raw clay is worked on it at {moment.number}"
    later = any("fire" in one.does for one in moment.bench.steps[moment.index + 1 :])
    if later:
        helped = "join it before the first firing, or use an item that acts as: paste for fired metal"
        yield told(
            "wet-on-fired",
            f"{since}, with nothing that holds on fired metal",
            moment.place(moment.deed, "uses"),
            helped,
        )
    else:
        yield told(
            "after-firing",
            f"{since}; no firing comes after it",
            moment.place("uses", "parts"),
            "move it before the firing",
        )


def never_fired(moment: Moment) -> Iterator[Trouble]:
    """Clay that no firing of this version takes in."""
    if moment.deed != "finish":
        return
    raw = [
        b
        for b in moment.bench.bodies.values()
        if b.clay is not None and b.piece.roles.get("clay mass") and b.fired is None
    ]
    for body in raw:
        if body.clay is None or not body.there:
            continue
        message = f"{body.clay.name} is never fired: no step fires '{body.title}'"
        helped = f"firing: {body.clay.id} in a step that names it under parts:"
        yield told("never-fired", message, body.piece.places.get(""), helped)


def not_there(moment: Moment) -> Iterator[Trouble]:
    """What is hung or drilled before it, or what it is hung or drilled in, is made."""
    bodies, steps = moment.bench.bodies, len(moment.bench.steps)
    if moment.deed == "hang":
        named = moment.bodies_named
        if len(named) == 1:
            named += [bodies[h] for h in named[0].piece.roles.get("hangs from", ()) if h in bodies]
        for body in named:
            if moment.index < body.made < steps:
                message = f"'{body.title}' is hung at {moment.number}, and is made only at {moment.at(body.made)}"
                yield told("not-there-yet", message, moment.place("hang", "parts"), "hang it after it is made")
    if moment.deed == "drill":
        for body in moment.bodies_named:
            for host in (bodies[h] for h in body.piece.roles.get("drilled in", ()) if h in bodies):
                if moment.index < host.made < steps:
                    message = (
                        f"'{body.title}' is drilled at {moment.number}, and '{host.title}' is made only at "
                        f"{moment.at(host.made)}"
                    )
                    yield told("not-there-yet", message, moment.place("parts", "drill"), "drill it after it is cut")


def seat_fired(moment: Moment) -> Iterator[Trouble]:
    """A stone glued into a seat of raw clay; where the fire to come would spoil it, that is told there."""
    if moment.deed not in {"set", "glue"}:
        return
    glues = [one for one in (*moment.step.uses, *_mixed(moment)) if isinstance(one, Adhesive)]
    later = any("fire" in one.does for one in moment.bench.steps[moment.index + 1 :])
    if not glues or (later and any(not bears(glue, "kiln") for glue in glues)):
        return
    for body in moment.bodies_named:
        whole = [one for one in moment.bench.of_group({body.name}) if one.clay is not None]
        if body.piece.playing("holds", Stone) and whole and all(one.fired is None for one in whole):
            message = f"a stone is glued into '{body.title}' at {moment.number}, before the clay is fired"
            yield told(
                "seat-fired", message, moment.place("uses", "parts"), "fire the clay first; its seats shrink with it"
            )
            return


def _mixed(moment: Moment) -> Iterator[Adhesive]:
    for name in moment.named:
        yield from moment.bench.bodies[name].glues()


def cured(moment: Moment) -> Iterator[Trouble]:
    """Adhesive cures before it is moved, and for as long as the slowest of what is open wants."""
    wet = _open(moment.attached)
    step = moment.step
    if moment.deed == "cure" and wet and step.wait is not None and step.wait.low < wet[-1][0]:
        least, one = wet[-1]
        message = (
            f"{one.item.name}, used at {moment.at(one.step)}, cures in {hours(least)} or more, "
            f"and {moment.number} waits {hours(step.wait.low)}"
        )
        yield told("cure-time", message, moment.place("wait"), "wait: curing, which takes the longest of what is open")
    if moment.deed in MOVES and wet:
        one = wet[-1][1]
        if one.step != moment.index:
            message = (
                f"{one.item.name} is used at {moment.at(one.step)}, and the piece is worked on at {moment.number} "
                "before it has cured"
            )
            yield told(
                "cure-time", message, moment.place(moment.deed, "parts"), "a step with wait: curing between them"
            )
    if moment.deed == "finish" and (left := _open(moment.bench.attached)):
        least, one = left[-1]
        message = (
            f"{one.item.name} is used at {moment.at(one.step)}, and no step after it waits {hours(least)} "
            "for it to cure"
        )
        place = moment.bench.steps[one.step].places
        yield told("cure-time", message, place.get(one.item.id) or place.get("parts"), "add a step with wait: curing")


def _open(attached: list[Attached]) -> list[tuple[float, Attached]]:
    """Adhesives that have not cured with the least that each wants, min; the longest last."""
    found = [(one.item.cure.low, one) for one in attached if isinstance(one.item, Adhesive) and not one.cured]
    return sorted(found, key=lambda pair: pair[0])
