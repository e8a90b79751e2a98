"""Steps with their numbers and waits."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sheetgen.base.dimension import TEMPERATURE
from sheetgen.base.frozen import Frozen
from sheetgen.base.material import Clay, Item
from sheetgen.base.place import Word
from sheetgen.base.spelling import plain, suggest
from sheetgen.model.worked import ON_CARD, Illustration, Mishap, WorkedStep
from sheetgen.work.deeds import deeds
from sheetgen.work.firing import kiln_of, torch, walk
from sheetgen.work.gestures import drawn
from sheetgen.work.hazards import cautioned
from sheetgen.work.loads import Loading
from sheetgen.work.needs import holds
from sheetgen.work.prose import prose, shown, without_figures
from sheetgen.work.stopped import Stopped
from sheetgen.work.times import minutes
from sheetgen.work.waits import Wait, adhesives, waiting

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from sheetgen.base.material import Adhesive
    from sheetgen.base.place import Place
    from sheetgen.model.project import Showing, Step, StepPicture
    from sheetgen.model.worked import Load, Shown
    from sheetgen.parts.piece import Piece
    from sheetgen.work.evaluator import Evaluator

SHOWN = 5

FACES = ("both", "one")  # through which a piece dries


def steps(evaluator: Evaluator, pieces: Mapping[str, Piece]) -> list[WorkedStep]:
    """Every step that this version has."""
    taken = [step for step in evaluator.project.steps if step.when is None or holds(step.when, evaluator)]
    uncured: list[Adhesive] = []
    made = []
    for step in taken:
        worked = _step(step, evaluator, pieces, uncured)
        uncured += adhesives(pieces, worked.parts, worked.uses)
        if "cure" in worked.does:
            uncured.clear()
        made.append(worked)
    return cautioned(taken, _ahead(made, evaluator), evaluator, pieces)


def _ahead(steps: Sequence[WorkedStep], evaluator: Evaluator) -> list[WorkedStep]:
    """What stock wants done ahead of a step: in the last wait that is early enough; its hazards are then told there."""
    made, seen = list(steps), set[str]()
    for number, step in enumerate(steps):
        for item in step.uses:
            at = _early(item, steps[:number])
            if item.ahead and item.id not in seen and at is not None:
                wait, tools = made[at], tuple(_items(item.ahead_with, evaluator))
                meanwhile = (item.ahead, *(" ", *wait.meanwhile) * bool(wait.meanwhile))
                made[at] = replace(wait, uses=(*wait.uses, item, *tools), meanwhile=meanwhile)
            seen.add(item.id)
    return made


def _early(item: Item, steps: Sequence[WorkedStep]) -> int | None:
    """The last wait of what comes before a step from which on the waits take as long as an item wants."""
    left = 0.0
    for number in reversed(range(len(steps))):
        step = steps[number]
        left += step.wait.low if step.wait else 0
        if step.waits and left >= item.ahead_by:
            return number
    return None


def _step(step: Step, evaluator: Evaluator, pieces: Mapping[str, Piece], uncured: Sequence[Adhesive]) -> WorkedStep:
    """One step; `uncured` are the adhesives that still cure."""
    text, expect = prose(step.text, evaluator), prose(step.expect, evaluator)
    uses = tuple(_items(step.uses, evaluator))
    parts = _parts(step.parts, evaluator)
    wait = waiting(step, evaluator, pieces, parts, [*uncured, *adhesives(pieces, parts, uses)])
    if str(step.faces) not in FACES:
        evaluator.troubles.add(f"faces cannot be '{step.faces}'", step.faces.place, f"one of {', '.join(FACES)}")
    diagrams, gestures = drawn(step.diagram, evaluator)
    clay = _fired(step, evaluator)
    flame = any(item.acts("torch") for item in uses) and not any(item.acts("kiln") for item in uses)
    torched, walked = "", None
    loaded: tuple[Load, ...] = ()
    if clay is not None and not flame:
        torched = torch(clay, pieces, evaluator.rounder)
        if clay.firing:
            walked = walk(clay.firing, kiln_of(uses, evaluator))
            loaded = Loading(clay, uses, step.title.place, evaluator).loads(pieces, parts)
            wait = wait or Wait(walked.minutes, "firing and cooling", walked.working)
    return WorkedStep(
        title=without_figures(step.title, "a title", evaluator),
        text=text,
        expect=expect,
        show=_shown(step, evaluator, text),
        parts=parts,
        uses=uses,
        minutes=minutes(step, evaluator, pieces, parts),
        wait=wait.minutes if wait else None,
        wait_for=wait.what if wait else "",
        wait_working=wait.working if wait else "",
        does=deeds(step, evaluator, parts, uses),
        clay=clay,
        walk=walked,
        loads=loaded,
        opened_at=_opened(step, evaluator),
        torch=torched,
        diagrams=diagrams,
        gestures=gestures,
        place=step.title.place.where_used,
        places=Frozen(_places(step, evaluator)),
        short=without_figures(step.short or step.title, "a title", evaluator),
        card=_on_the_card(step, evaluator),
        meanwhile=prose(step.meanwhile, evaluator),
        mishaps=tuple(_mishaps(step, evaluator)),
        picture=_picture(step.picture),
    )


def _mishaps(step: Step, evaluator: Evaluator) -> Iterator[Mishap]:
    """What can go wrong, as the step says, or as the studio knows it by a name."""
    known = evaluator.library.stock.faults
    for one in step.if_it_goes_wrong:
        if not isinstance(one, Word):
            yield Mishap(prose(one.seen, evaluator), prose(one.why, evaluator), prose(one.mend, evaluator))
        elif (fault := known.get(str(one))) is not None:
            yield Mishap((fault.seen,), (fault.why,), (fault.mend,), fault.name)
        else:
            helped = (
                suggest(one, known) if known else "write it here as seen:, why: and mend:, or in stock under faults:"
            )
            evaluator.troubles.add(f"the fault '{one}' is not known", one.place, helped)


def _on_the_card(step: Step, evaluator: Evaluator) -> tuple[Shown, ...]:
    """The numbers that a step names for the bench card; a trouble at the first for which a row has no room."""
    listed = step.on_the_card
    if len(listed) > ON_CARD:
        first = listed[ON_CARD]
        told = f"a row of the bench card has room for {ON_CARD} numbers, and here are {len(listed)}"
        helped = f"keep the {ON_CARD} that are set or checked at this step; the handout prints all of show"
        evaluator.troubles.add(told, (first if isinstance(first, Word) else first.what).place, helped)
    return named(listed, evaluator)


def _picture(picture: StepPicture | None) -> Illustration | None:
    if picture is None:
        return None
    return Illustration(str(picture.file), str(picture.caption), str(picture.shows), str(picture.credit or ""))


def _places(step: Step, evaluator: Evaluator) -> dict[str, Place]:
    """Where the fields of a step that the checks speak of are written, and where each item is named."""
    words = {"firing": step.firing, "wait": step.wait, "opened at": step.opened_at}
    found = {name: word.place for name, word in words.items() if word is not None}
    for name, listed in (("uses", step.uses), ("parts", step.parts), ("does", step.does)):
        if listed:
            found[name] = listed[0].place
    found |= {str(word): word.place for word in step.does}
    for word in step.uses:
        try:
            found[evaluator.item(word).id] = word.place
        except Stopped:
            continue
    return found


def _opened(step: Step, evaluator: Evaluator) -> float | None:
    """How hot the kiln or the box is when it is opened, °C."""
    if step.opened_at is None:
        return None
    try:
        found = evaluator.worked(step.opened_at, "opened at", wanted="°C")
    except Stopped:
        return None
    if found.dimension != TEMPERATURE:
        evaluator.troubles.add(f"'{step.opened_at}' is not a temperature", step.opened_at.place, "write it as 50 °C")
        return None
    return found.interval.high


def _fired(step: Step, evaluator: Evaluator) -> Clay | None:
    """The clay that a step fires."""
    if step.firing is None:
        return None
    try:
        clay = evaluator.item(step.firing, Clay)
    except Stopped:
        return None
    if not isinstance(clay, Clay):
        return None
    if not clay.firing:
        helped = "add firing: to the clay, a list of to: and hold:"
        evaluator.troubles.add(f"{clay.name} has no firing in stock", step.firing.place, helped)
    return clay


def _items(words: Sequence[Word], evaluator: Evaluator) -> Iterator[Item]:
    """What is named; what stock does not have is a trouble."""
    for word in words:
        try:
            yield evaluator.item(word)
        except Stopped:
            continue


def _parts(words: list[Word], evaluator: Evaluator) -> tuple[str, ...]:
    found = []
    for word in words:
        if plain(word) in evaluator.parts:
            found.append(plain(word))
        else:
            evaluator.troubles.add(f"there is no part '{word}'", word.place, suggest(word, evaluator.parts))
    return tuple(found)


def _shown(step: Step, evaluator: Evaluator, text: tuple[str | Shown, ...]) -> tuple[Shown, ...]:
    """The numbers named under `show`; otherwise those that the text prints, the first few."""
    if not step.show:
        return tuple(dict.fromkeys(f for f in text if not isinstance(f, str)))[:SHOWN]
    return named(step.show, evaluator)


def named(listed: Sequence[Word | Showing], evaluator: Evaluator) -> tuple[Shown, ...]:
    """The numbers that a list names, each with its label where it has one."""
    named = [(one, "") if isinstance(one, Word) else (one.what, str(one.label)) for one in listed]
    found = (shown(word, evaluator, label) for word, label in named)
    return tuple(dict.fromkeys(one for one in found if one is not None))
