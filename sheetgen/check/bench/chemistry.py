"""Chemistry and flame: what must not meet at one bench."""

from __future__ import annotations

from itertools import combinations_with_replacement
from typing import TYPE_CHECKING

from sheetgen.base.material import Tool
from sheetgen.check.bench.survival import there
from sheetgen.check.bench.told import told
from sheetgen.facts.bench import HEATS
from sheetgen.facts.metals import LOW_SOLDER, METALS
from sheetgen.model.bench.bodies import flows

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.base.material import Clay, Item
    from sheetgen.base.trouble import Trouble
    from sheetgen.model.bench.moment import Moment

NEVER = (
    ({"acid", "pickle"}, {"sulphide"}, "acid drives a poison gas out of sulphide"),
    ({"acid", "pickle"}, {"bleach"}, "acid drives chlorine out of bleach"),
    ({"ammonia"}, {"bleach"}, "bleach and ammonia make a poison gas"),
)
IRON = {"steel"}
SOFT = {"tin", "lead"}


def vapour(moment: Moment) -> Iterator[Trouble]:
    """Vapour that burns beside a flame, or on a piece that is hot."""
    step = moment.step
    burns = next((item for item in step.uses if item.acts("solvent", "aerosol")), None)
    if burns is None or moment.deed != "begin":
        return
    flame = next((item.name for item in step.uses if item.acts("torch", "flame", "hot plate")), "")
    if flame or set(HEATS).intersection(step.does):
        message = f"{burns.name} and {flame or 'fire'} are used in one step: its vapour catches fire"
        helped = (
            "a step of its own for the one without the other, with the bottle shut and the air clear before the flame"
        )
        yield told("flame-and-vapour", message, moment.place(burns.id), helped)
    elif any(body.hot for body in moment.bodies):
        message = f"the piece comes hot from {moment.at(_last_heat(moment))}, and {burns.name} is used on it"
        yield told("flame-and-vapour", message, moment.place(burns.id), "let it cool first: does: cool, or quench")


def _last_heat(moment: Moment) -> int:
    return max((body.heated or 0 for body in moment.bodies if body.hot), default=moment.index)


def hot_pickle(moment: Moment) -> Iterator[Trouble]:
    """A piece that goes from the flame into the pickle."""
    if moment.deed == "pickle" and any(body.hot for body in moment.bodies):
        heat = _last_heat(moment)
        said = "this step" if heat == moment.index else f"step {heat + 1}"
        message = (
            f"the piece is hot from the flame of {said} and goes into the pickle at {moment.number}: "
            "acid spits into the face"
        )
        flame = moment.bench.steps[heat]
        deed = next((word for word in ("solder", "heat", "fire") if word in flame.does), "solder")
        helped = (
            f"does: [{deed}, quench, …] at the step of the flame, or cool instead of quench, and the pickle after it"
        )
        yield told("hot-into-pickle", message, moment.place("pickle", "uses"), helped)


def never_meet(moment: Moment) -> Iterator[Trouble]:
    """Two chemicals in one step."""
    if moment.deed != "begin":
        return
    if _one_bath(moment):
        message = (
            f"{moment.number} pickles and patinates, and nothing is rinsed between: acid drives "
            "a poison gas out of sulphide"
        )
        yield told(
            "never-meet",
            message,
            moment.place("patinate", "pickle"),
            "does: [pickle, rinse, …], and the patina in a step of its own",
        )
    uses = list(dict.fromkeys(moment.step.uses))
    for one, other in combinations_with_replacement(uses, 2):
        for these, those, why in NEVER:
            if (_acts(one, these) and _acts(other, those)) or (_acts(one, those) and _acts(other, these)):
                message = f"{one.name} and {other.name} are used in one step: {why}"
                yield told(
                    "never-meet",
                    message,
                    moment.place(other.id),
                    "steps of their own, rinsed well between, at different places",
                )


def _one_bath(moment: Moment) -> bool:
    """Whether a step pickles and patinates, one after the other, and rinses nothing between."""
    does = moment.step.does
    if not {"pickle", "patinate"}.issubset(does):
        return False
    first, last = sorted((does.index("pickle"), does.index("patinate")))
    return "rinse" not in does[first:last]


def _acts(item: Item, words: set[str]) -> bool:
    return item.acts(*words)


def coating(moment: Moment) -> Iterator[Trouble]:
    """What is plated, galvanised or lacquered, and heated."""
    if moment.deed not in HEATS:
        return
    kiln = moment.deed == "fire" and not moment.step.by_torch
    coated = [one.item for one in there(moment) if one.item.coated]
    coated += [item for item in moment.step.uses if item.coated and not isinstance(item, Tool)]
    for item in dict.fromkeys(coated):
        message = f"{item.name} is coated with {item.coated}, and {moment.number} heats it: its fumes harm"
        helped = "take it bare, or put it on after the heat"
        yield told("coating-heated", message, moment.place(item.id, "firing" if kiln else moment.deed, "uses"), helped)


def soft_solder(moment: Moment) -> Iterator[Trouble]:
    """Tin or lead on a piece that is heated for silver solder, or fired."""
    if moment.deed not in {"solder", "fire"}:
        return
    here = [item for item in moment.step.uses if item.acts("solder")] if moment.deed == "solder" else []
    hard = moment.deed == "fire" or any(flows(item) >= LOW_SOLDER for item in here)
    before = [(index, item) for body in moment.bodies for index, item in body.solders]
    soft = next(((index, item) for index, item in before if item.metal in SOFT or flows(item) < LOW_SOLDER), None)
    if hard and soft:
        message = (
            f"{soft[1].name} is on the piece since {moment.at(soft[0])}, and {moment.number} heats "
            "it much hotter: it eats into the silver"
        )
        yield told(
            "lead-under-silver",
            message,
            moment.place(moment.deed, "firing", "uses"),
            "silver solder first and soft solder last, or none of it",
        )
    of = next((one.item for one in there(moment) if one.item.metal in SOFT), None)
    if hard and of is not None:
        message = f"{of.name} is of {of.metal}, and {moment.number} heats it for silver solder or in the fire"
        yield told(
            "lead-under-silver",
            message,
            moment.place(of.id, moment.deed, "firing"),
            "put it on last, cold or with soft solder",
        )


def iron(moment: Moment) -> Iterator[Trouble]:
    """Steel in the pickle."""
    if moment.deed != "pickle":
        return
    heats = set(HEATS).intersection(moment.step.does)  # then tweezers and pick may be for the flame alone
    steel = [item for item in moment.step.uses if item.metal in IRON and not heats]
    steel += [one.item for one in there(moment) if one.item.metal in IRON]
    for item in dict.fromkeys(steel):
        message = (
            f"{item.name} is of steel, and {moment.number} pickles: iron in the pickle lays copper on everything in it"
        )
        yield told(
            "steel-in-pickle",
            message,
            moment.place(item.id, "pickle", "uses"),
            "tongs of copper or plastic, and no iron in the pot",
        )


def _silver(clay: Clay) -> bool:
    """Whether a clay is of silver, or does not say of what."""
    return not clay.metal or METALS[clay.metal].family == "silver"


def aluminium(moment: Moment) -> Iterator[Trouble]:
    """Aluminium against silver clay, raw or in the fire."""
    clays = [body for body in moment.bodies if body.clay is not None and _silver(body.clay)]
    raw = any(body.fired is None for body in clays)
    if not clays:
        return
    if moment.deed != "fire" and not (moment.deed == "end" and raw):
        return
    found = [item for item in moment.step.uses if item.metal == "aluminium"]
    found += [one.item for one in there(moment) if one.item.metal == "aluminium"]
    for item in dict.fromkeys(found):
        message = (
            f"{item.name} comes against the clay at {moment.number}: aluminium eats into silver clay, wet or fired"
        )
        yield told(
            "aluminium-under-clay", message, moment.place(item.id, "firing"), "another support, without aluminium"
        )
