"""The hazards of every step: from what is done, with what, to what; from stock and kinds; and as the project says.

Which of them stand there in full is for the sheets.
"""

from __future__ import annotations

from contextlib import suppress
from dataclasses import replace
from typing import TYPE_CHECKING

from sheetgen.base.material import Bead, Clay, Consumable, Fibre, Finding, Item, Stone, Tool
from sheetgen.base.spelling import in_a_sentence, suggest
from sheetgen.facts.cautions import GLOWS, LADDER, TAUGHT
from sheetgen.facts.fit import SWALLOWED
from sheetgen.facts.metals import METALS
from sheetgen.model.item_hazards import OF_AN_ITEM, brought_by
from sheetgen.work.dusts import called
from sheetgen.work.state import State
from sheetgen.work.stopped import Stopped

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Mapping, Sequence

    from sheetgen.model.project import Step
    from sheetgen.model.worked import WorkedStep
    from sheetgen.parts.piece import Piece
    from sheetgen.work.evaluator import Evaluator

OFF_SKIN = ("clothes", "nowhere")
COPPERS = ("copper", "bronze", "brass")  # families whose traces spoil silver, and silver them
FIRST = "first piece"


def _does(*words: str) -> Callable[[WorkedStep], bool]:
    return lambda step: any(word in step.does for word in words)


def _in_carbon(step: WorkedStep) -> bool:
    return step.acts("carbon") or any(phase.in_carbon for phase in step.firing)


def _in_kiln(step: WorkedStep) -> bool:
    return step.acts("kiln") or "open" in step.does or (step.clay is not None and not step.by_torch)


def _glows(step: WorkedStep) -> bool:
    return max((*(phase.to for phase in step.firing), step.opened_at or 0.0)) >= GLOWS


CAUSES: dict[str, Callable[[WorkedStep], bool]] = {
    "kiln": _in_kiln,
    "kiln glow": _glows,
    "carbon box": _in_carbon,
    "damp clay": lambda step: step.clay is not None or _does("fire")(step),
    "binder smoke": lambda step: step.clay is not None or _does("fire")(step),
    "torch": lambda step: step.acts("torch"),
    "hot metal": lambda step: step.by_torch or _does("heat", "solder", "quench")(step),
    "solder fumes": _does("solder"),
    "pickle": _does("pickle"),
    "patina": _does("patinate"),
    "hot plate": lambda step: step.acts("hot plate"),
    "drilling": _does("drill"),
    "rotary tool": lambda step: step.acts("wheel", "tumbler") or _does("tumble")(step),
}
"""What a step does, and with what, that brings a caution by itself, besides what its items bring (`brought_by`)."""

TAUGHT_FIRST = ("kiln", "carbon box", "torch", "solder fumes", "pickle")


def cautioned(
    written: Sequence[Step], steps: Sequence[WorkedStep], evaluator: Evaluator, pieces: Mapping[str, Piece]
) -> list[WorkedStep]:
    """The steps of one version with their cautions, who does them, and what stock says of what comes to hand."""
    state = State(steps, pieces)
    pairs = enumerate(zip(written, steps, strict=True))
    found = [[*_written(one, evaluator), *_of_step(i, step, state)] for i, (one, step) in pairs]
    for i in state.swallowed():
        found[i].append("small parts")
    for i, name in (*_of_kinds(steps, pieces, found), *_once(state, evaluator, found)):
        found[i].append(name)
    known = evaluator.library.stock.cautions
    order = list(known)
    items: set[str] = set()
    cautioned = []
    for step, names in zip(steps, found, strict=True):
        cautions = [known[name] for name in dict.fromkeys(names) if name in known]
        cautions.sort(key=lambda c: (LADDER.index(c.word), order.index(c.id)))
        taught = evaluator.project.level == FIRST and any(c.id in TAUGHT_FIRST for c in cautions)
        first = [item for item in step.uses if item.id not in items]
        items.update(item.id for item in first)
        cautioned.append(
            replace(
                step,
                cautions=tuple(cautions),
                who=TAUGHT if taught else "",
                notes=_notes(first),
            )
        )
    return called(cautioned)


def _notes(items: Sequence[Item]) -> tuple[str, ...]:
    """What stock says of items at the bench, under what each is called; once where it says the same of several."""
    told = (f"{item.name.partition(',')[0]}: {in_a_sentence(item.at_the_bench)}" for item in items if item.at_the_bench)
    return tuple(dict.fromkeys(told))


def _written(step: Step, evaluator: Evaluator) -> Iterator[str]:
    """What the project names itself."""
    known = evaluator.library.stock.cautions
    for word in step.caution:
        if word in known:
            yield str(word)
        else:
            evaluator.troubles.add(f"the caution '{word}' is not known", word.place, suggest(word, known))


def _of_step(number: int, step: WorkedStep, state: State) -> Iterator[str]:
    """What is done, with what, to what."""
    yield from (name for name, brings in CAUSES.items() if brings(step))
    yield from (name for item in step.uses for name in brought_by(item))
    if any(map(_small, step.uses)):
        yield "small parts"
    refined = "refine" in step.does or step.acts("abrasive")
    raw = state.raw(number)
    if raw and (refined or ("drill" in step.does and state.dried(number))):
        yield "clay dust"
    elif refined and not raw and state.metal(number):
        yield "metal dust"


def _of_kinds(
    steps: Sequence[WorkedStep], pieces: Mapping[str, Piece], found: Sequence[Sequence[str]]
) -> Iterator[tuple[int, str]]:
    """What making a part always calls for, at the first step that names the part.

    What a deed of a step that names the part has brought already, such as the flame where it is soldered, stands there.
    """
    for name, piece in pieces.items():
        named = [i for i, step in enumerate(steps) if name in step.parts]
        for hazard in piece.hazards if named else ():
            of_a_deed = hazard in CAUSES or hazard in OF_AN_ITEM
            if not of_a_deed or not any(hazard in found[i] for i in named):
                yield named[0], hazard


def _once(state: State, evaluator: Evaluator, found: Sequence[Sequence[str]]) -> Iterator[tuple[int, str]]:
    """What is of the whole piece, and is told at one step of it, unless it is told no later."""
    for number, name in _of_the_piece(state, evaluator) if state.steps else ():
        if not any(name in names for names in found[: number + 1]):
            yield number, name


def _of_the_piece(state: State, evaluator: Evaluator) -> Iterator[tuple[int, str]]:
    steps, pieces = state.steps, state.pieces
    worn = str(evaluator.project.worn_at or "")
    last = state.last
    small = [_first(steps, pieces, _small)]
    small += [last] if any(map(_small, _materials(evaluator))) else []
    if told := [number for number in small if number is not None]:
        yield min(told), "small parts"
    nickel = _handled(steps, worn)
    if worn not in OFF_SKIN:
        asked = _may_hold_nickel if worn else _nickel
        nickel = _first(steps, pieces, asked)
        if nickel is None and any(map(asked, _materials(evaluator))):
            nickel = last
    if nickel is not None:
        yield nickel, "nickel"
    strung = _first(steps, pieces, lambda item: isinstance(item, Fibre)) is not None
    if worn == "neck" and (strung or any(piece.roles.get("closes") for piece in pieces.values())):
        yield last, "strand"
    in_hand = [take.item for piece in pieces.values() for take in piece.takes]
    in_hand += [item for step in steps for item in step.uses if not isinstance(item, Tool)]
    families = {METALS[item.metal].family for item in (*in_hand, *_materials(evaluator)) if item.metal in METALS}
    if "silver" in families and families.intersection(COPPERS):
        used = _first(steps, {}, lambda item: isinstance(item, Clay))
        clay = _first(steps, pieces, lambda item: isinstance(item, Clay)) if used is None else used
        if clay is not None:
            yield clay, "metals apart"


def _small(item: Item) -> bool:
    """Whether it is bought in and goes through the cylinder; of a finding stock does not say how large it is."""
    return isinstance(item, Finding) or (isinstance(item, Stone | Bead) and item.size.usual < SWALLOWED)


def _nickel(item: Item) -> bool:
    """Whether it is known to hold nickel and stays in the piece."""
    holds = item.metal == "nickel silver" or "nickel" in item.coated
    return holds and not isinstance(item, Tool | Consumable)


def _may_hold_nickel(item: Item) -> bool:
    """Whether it is known to, or is a finding of which stock says no metal."""
    return _nickel(item) or (isinstance(item, Finding) and not item.metal)


def _handled(steps: Sequence[WorkedStep], worn: str) -> int | None:
    """Where fingers come to nickel though it lies on no skin: a finding of clothes that is closed, or one filed."""
    for i, step in enumerate(steps):
        findings = any(isinstance(item, Finding) and _nickel(item) for item in step.uses)
        if findings and (worn == "clothes" or "refine" in step.does):
            return i
    return None


def _materials(evaluator: Evaluator) -> Iterator[Item]:
    """What the project adds to its parts; an item that is not in stock is told elsewhere."""
    for written in evaluator.project.materials:
        with suppress(Stopped):
            yield evaluator.item(written.item)


def _first(steps: Sequence[WorkedStep], pieces: Mapping[str, Piece], asked: Callable[[Item], bool]) -> int | None:
    """The first step at which such an item comes to hand.

    One that uses it, or names a part that is of nothing else and no seat in clay; failing that, one that names a part
    with it.
    """
    taken = {name: [take.item for take in piece.takes] for name, piece in pieces.items()}
    wholly = {name for name, items in taken.items() if items and all(map(asked, items)) and not pieces[name].clay}
    for i, step in enumerate(steps):
        if wholly.intersection(step.parts) or any(map(asked, step.uses)):
            return i
    partly = {name for name, items in taken.items() if any(map(asked, items))}
    return next((i for i, step in enumerate(steps) if partly.intersection(step.parts)), None)
