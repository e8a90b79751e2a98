"""Fire: each clay by its own program, metals that may meet, the torch, the carbon box, and nothing opened hot."""

from __future__ import annotations

import math
from itertools import groupby
from typing import TYPE_CHECKING

from sheetgen.base.interval import Interval
from sheetgen.check.bench.hollows import things
from sheetgen.check.bench.survival import peak, there
from sheetgen.check.bench.told import degrees, hours, listed, told
from sheetgen.facts.kiln import UNLOAD
from sheetgen.facts.metals import EUTECTIC, METALS, STRANGERS
from sheetgen.facts.times import TORCH_MASS
from sheetgen.parts.by_torch import too_much

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.base.material import Clay
    from sheetgen.base.trouble import Trouble
    from sheetgen.model.bench.bodies import Body
    from sheetgen.model.bench.moment import Moment


def program(moment: Moment) -> Iterator[Trouble]:
    """A load whose clay has another program than the one it is fired by."""
    step = moment.step
    if moment.deed != "fire" or step.clay is None or step.by_torch:
        return
    clays = {body.clay.id: (body, body.clay) for body in moment.bodies if body.clay is not None}
    strange = [(body, clay) for body, clay in clays.values() if clay.firing != step.clay.firing]
    if not strange:
        return
    own = len(strange) < len(clays)
    body, clay = strange[0]
    rule = "one-load" if own else "program"
    message = f"'{body.title}' is of {clay.name}, and is fired at {moment.number} by the program of {step.clay.name}"
    helped = (
        f"fire it by itself, with firing: {clay.id}" if own else f"firing: {clay.id}, or the choice that names the clay"
    )
    yield told(rule, message, moment.place("firing"), helped)


def metals_meet(moment: Moment) -> Iterator[Trouble]:
    """Metals that melt into each other where they touch in the kiln."""
    if moment.deed != "fire" or moment.step.by_torch:
        return
    for bodies in things(moment):
        names = {body.name for body in bodies}
        found = [one for one in there(moment) if one.part in names and one.item.metal]
        families = {METALS[one.item.metal].family: one for one in found}
        silver = families.get("silver")
        if silver is None:
            continue
        copper = families.get("copper")
        where = moment.place("firing")
        if copper is not None and peak(moment) > EUTECTIC:
            message = (
                f"{silver.item.name} and {copper.item.name} touch and are fired at {moment.number} at "
                f"{degrees(peak(moment))}: where silver and copper touch they melt at {degrees(EUTECTIC)}"
            )
            yield told("eutectic", message, where, "join them after the fire, or take one metal for both")
        for family in STRANGERS.intersection(families):
            other = families[family].item
            if (other.borne("kiln") or 0.0) < peak(moment):
                message = (
                    f"{silver.item.name} and {other.name} touch in the kiln at {moment.number}, and nothing "
                    "says that they may"
                )
                helped = (
                    f"join them after the fire, or say so in stock, of {other.id}: kiln: to {peak(moment):g} "
                    "°C, with its source"
                )
                yield told("strange-metals", message, where, helped)


def torch(moment: Moment) -> Iterator[Trouble]:
    """What is fired with a flame: by the clay's data, its bed, its weight and its width."""
    if moment.deed != "fire" or not moment.step.by_torch:
        return
    for bodies in things(moment):
        clays = [body for body in bodies if body.clay is not None]
        for _, same in groupby(clays, key=lambda body: body.clay.id if body.clay else ""):
            yield from _by_torch(moment, next(same))
        mass = sum(_mass(body) for body in clays)
        wide = next((body for body in clays if too_much(body.piece)), None)
        where = moment.place("firing")
        if wide is not None:
            message = f"'{wide.title}' is fired with a torch at {moment.number}: it {too_much(wide.piece)}"
            yield told("torch-firing", message, where, "fire it in a kiln")
        elif mass > TORCH_MASS:
            named = listed([f"'{body.title}'" for body in clays])
            message = f"{named} weigh {mass:.0f} g together, and {TORCH_MASS:g} g is the most for a torch"
            yield told("torch-firing", message, where, "fire it in a kiln")


def _by_torch(moment: Moment, body: Body) -> Iterator[Trouble]:
    clay = body.clay
    if clay is None:
        return
    if any(phase.in_carbon for phase in clay.firing):
        message = f"{clay.name} is fired in carbon, and {moment.number} fires it with a torch"
        yield told("torch-firing", message, moment.place("firing"), "fire it in a kiln, in its box")
    elif clay.strength == "full" and any(one.strength == "least" for one in clay.programs):
        message = f"{clay.name} is worked by its program '{clay.program}', and {moment.number} fires it with a torch"
        least = next(one.name for one in clay.programs if one.strength == "least")
        helped = f"programs: {{{clay.id}: {least}}}, which is as much as a flame gives"
        yield told("torch-firing", message, moment.place("firing"), helped)
    elif not clay.torch:
        message = f"{clay.name} is fired with a torch at {moment.number}, and its data does not allow it"
        helped = "fire it in a kiln, or, if its maker says that a torch will do, torch: yes in stock"
        yield told("torch-firing", message, moment.place("firing"), helped)


def _mass(body: Body) -> float:
    return next((one.high for one in body.piece.roles.get("clay mass", ()) if isinstance(one, Interval)), 0.0)


def carbon(moment: Moment) -> Iterator[Trouble]:
    """A firing in carbon has its box and its carbon."""
    step = moment.step
    if moment.deed != "fire" or not any(phase.in_carbon for phase in step.firing):
        return
    missing = [word for word in ("firing box", "carbon") if not step.acts(word)]
    if missing:
        message = f"{moment.number} fires in carbon, and uses nothing that acts as {listed(missing)}"
        helped = f"name it under uses:, and in stock acts as: [{missing[0]}]"
        yield told("carbon-box", message, moment.place("firing"), helped)


def opened(moment: Moment) -> Iterator[Trouble]:
    """A kiln or a box that is opened, or emptied, before it is as cold as the clay wants."""
    step = moment.step
    clays = [body.clay for body in moment.bodies if body.clay is not None]
    if moment.deed == "open" and step.opened_at is not None:
        below = min(map(_coldest, clays), default=float(UNLOAD))
        if step.opened_at > below:
            at = degrees(step.opened_at)
            message = f"{moment.number} opens it at {at}, and it must have cooled below {degrees(below)}"
            yield told(
                "opened-hot", message, moment.place("opened at"), f"opened at: {below:g} °C or less, or take it out"
            )
    if moment.deed == "fire" and not step.by_torch and step.walk is not None and step.wait is not None:
        least = step.walk.minutes.low
        if step.wait.low < least:
            waits = f"takes {hours(least)} or more until it may be opened, and its wait is {hours(step.wait.low)}"
            helped = "take the wait out: the program works it"
            yield told("opened-hot", f"{moment.number} {waits}", moment.place("wait", "firing"), helped)
    if moment.deed == "quench":
        # What is quenched and was last in the kiln came out of it hot.
        hot = [
            one.clay for one in moment.bodies if one.kilned is not None and not one.cold and not one.hot and one.clay
        ]
        for clay in [clay for clay in dict.fromkeys(hot) if not _quenched(clay)][:1]:
            message = f"{clay.name} is quenched out of the kiln at {moment.number}, and its data does not allow that"
            helped = "let it cool in the shut kiln, or, if its maker says so, quench: yes in stock"
            yield told("opened-hot", message, moment.place("quench", "firing"), helped)


def raw_flame(moment: Moment) -> Iterator[Trouble]:
    """Raw clay that is heated with a flame, and no step says that it is fired."""
    if moment.deed not in {"heat", "solder"}:
        return
    raw = next((body for body in moment.bodies if body.clay is not None and body.fired is None), None)
    if raw is not None and raw.clay is not None:
        message = f"'{raw.title}' is raw clay, and {moment.number} heats it with a flame"
        helped = f"fire it first: firing: {raw.clay.id}, with the torch under uses: where its maker allows that"
        yield told("torch-firing", message, moment.place(moment.deed, "uses"), helped)


def _quenched(clay: Clay) -> bool:
    return clay.borne("quench") == math.inf and not any(phase.in_carbon for phase in clay.firing)


def _coldest(clay: Clay) -> float:
    """What the kiln must have cooled below, °C, by the clay's data; where it says nothing, what anybody unloads at."""
    return min((phase.cool_below for phase in clay.firing if phase.cool_below is not None), default=float(UNLOAD))
