"""Survival: what is attached to a part meets what the part meets, and must bear it."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, NamedTuple

from sheetgen.base.material import Adhesive, Clay, Fibre, Item
from sheetgen.check.bench.told import degrees, told
from sheetgen.facts.bench import HEATS
from sheetgen.facts.metals import MARGIN, METALS
from sheetgen.model.bench.bodies import flows, stays

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.base.trouble import Trouble
    from sheetgen.model.bench.bodies import Body
    from sheetgen.model.bench.moment import Moment

MEETS = {
    "fire": ("kiln", "survives-kiln", "the kiln"),
    "heat": ("torch", "survives-flame", "the flame"),
    "solder": ("torch", "survives-flame", "the flame"),
    "quench": ("quench", "survives-quench", "the quench"),
    "pickle": ("pickle", "survives-pickle", "the pickle"),
    "tumble": ("tumbler", "survives-tumbler", "the tumbler"),
}
WETS = ("rinse", "quench", "pickle", "tumble")
HELP = {
    "kiln": "put it on after the last firing, or, if it bears that, say so in stock: kiln: to 900 °C, with its source",
    "torch": "put it on after the flame, or, if it bears a flame, say so in stock: torch: yes, with its source",
    "quench": "let it cool slowly, or, if it bears that, say so in stock: quench: yes, with its source",
    "pickle": "put it on after the pickle, or, if it bears that, say so in stock: pickle: yes, with its source",
    "tumbler": "put it on after the tumbler, or, if it bears that, say so in stock: tumbler: yes, with its source",
    "solvent": "keep the solvent off it, put it on later, or let the adhesive cure first",
    "water": "keep water off it, or put it on later",
}


class There(NamedTuple):
    """An item on the piece: what it is, which part it is of, since which step, and whether an adhesive has cured."""

    item: Item
    part: str
    since: int
    cured: bool
    put: str


def there(moment: Moment) -> Iterator[There]:
    """Everything that the pieces worked on consist of, and what is attached to them."""
    for body in moment.bodies:
        for item in dict.fromkeys(body.items()):
            since = _since(moment, body, item)
            if since <= moment.index:
                yield There(item, body.name, since, cured=True, put="part of it since")
    for one in moment.attached:
        yield There(one.item, one.part, one.step, one.cured, "put on at")


def _since(moment: Moment, body: Body, item: Item) -> int:
    """When an item became part of a part: at the step that uses it for it, else when the part was made."""
    steps = moment.bench.steps
    using = (i for i, step in enumerate(steps) if item in step.uses and body.name in (*step.parts, *step.pictured))
    return next(using, min(body.made, moment.index))


def peak(moment: Moment) -> float:
    """The hottest that a firing gets, °C."""
    return max((phase.to for phase in moment.step.firing), default=0.0)


def bears(item: Item, what: str, *, cured: bool = True) -> float | None:
    """How much of something an item bears: °C, nothing or anything; None where only its metal could tell."""
    said = item.borne(what)
    if said is not None or (isinstance(item, Clay) and what != "quench"):
        return math.inf if said is None else said
    if what in {"solvent", "water"}:
        soft = (
            (isinstance(item, Fibre) and not item.metal)
            or item.acts("wax")
            or (isinstance(item, Adhesive) and not cured)
        )
        return 0.0 if soft else math.inf
    if stays(item) and not _bare(item, what):
        return 0.0
    if what != "kiln" or isinstance(item, Clay):
        return math.inf
    return METALS[item.metal].solidus - MARGIN if item.metal else None


def _bare(item: Item, what: str) -> bool:
    """A finding of bare metal that is said to bear the kiln bears what metal bears besides."""
    return bool(item.metal and item.borne("kiln") and not item.coated and not item.hard) and what not in {
        "kiln",
        "torch",
    }


def survives(moment: Moment) -> Iterator[Trouble]:
    """What does not bear what the deed brings."""
    if moment.deed in MEETS:
        what, rule, name = MEETS[moment.deed]
        if moment.deed == "fire" and moment.step.by_torch:
            what, rule, name = MEETS["heat"]
        yield from _meets(moment, what, rule, name)
    if moment.deed in WETS:
        yield from _meets(moment, "water", "survives-water", "water")
    does = moment.step.does  # before it is glued it is wiped where the adhesive goes, and no farther
    glued = moment.deed == "degrease" and {"glue", "set"}.intersection(does[does.index("degrease") :])
    if (moment.deed == "degrease" and not glued) or (moment.deed == "begin" and moment.step.acts("aerosol")):
        yield from _meets(moment, "solvent", "survives-solvent", "solvent")


def _meets(moment: Moment, what: str, rule: str, name: str) -> Iterator[Trouble]:
    seen: set[str] = set()
    for one in there(moment):
        most = bears(one.item, what, cured=one.cured)
        if one.item.id in seen or (one.item.coated and what in {"kiln", "torch"}):  # told as a coating
            continue
        held = moment.bench.bodies[one.part].title
        since = f"{one.item.name} ('{held}') is {one.put} {moment.at(one.since)}"
        where = moment.place({"kiln": "firing"}.get(what, moment.deed), "uses", "parts")
        if most is None:
            seen.add(one.item.id)
            helped = f"add metal: to {one.item.id} in stock, such as metal: fine silver"
            yield told(
                rule, f"{since}, it meets {name} at {moment.number}, and nothing says what metal it is", where, helped
            )
        elif most <= 0:
            seen.add(one.item.id)
            yield told(rule, f"{since}, and meets {name} at {moment.number}, which it does not bear", where, HELP[what])
        elif what == "kiln" and most < peak(moment):
            seen.add(one.item.id)
            told_most = f"it bears {degrees(most)}, and the firing at {moment.number} goes to {degrees(peak(moment))}"
            yield told("melts", f"{since}; {told_most}", where, "put it on after the firing, or take what bears it")


def solder_melts(moment: Moment) -> Iterator[Trouble]:
    """A joint that is soldered and then fired hotter than its solder flows."""
    if moment.deed != "fire" or moment.step.by_torch:
        return
    for body in moment.bodies:
        for index, solder in body.solders:
            if flows(solder) < peak(moment):
                message = (
                    f"'{body.title}' is soldered at {moment.at(index)} with {solder.name}, which flows at "
                    f"{degrees(flows(solder))}, and is fired at {moment.number} at {degrees(peak(moment))}"
                )
                yield told("melts", message, moment.place("firing"), "fire first and solder after it")
                return


def temper(moment: Moment) -> Iterator[Trouble]:
    """What was hammered hard and is heated after it."""
    if moment.deed not in HEATS:
        return
    for item in dict.fromkeys(one.item for one in there(moment) if one.item.hard and not stays(one.item)):
        message = f"{item.name} is hard, and the heat of {moment.number} makes it soft"
        yield told(
            "temper", message, moment.place(moment.deed, "uses", "firing"), "harden it again after the last heat"
        )
    for body in moment.bodies:
        if body.hardened is not None:
            message = (
                f"'{body.title}' is hardened at {moment.at(body.hardened)}, and the heat of {moment.number} "
                "makes it soft again"
            )
            yield told("temper", message, moment.place(moment.deed, "uses", "firing"), "heat first and harden after it")
