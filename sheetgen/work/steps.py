"""Steps with their numbers, waits and cautions."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.material import Clay, Item
from sheetgen.base.spelling import suggest
from sheetgen.facts.cautions import LADDER
from sheetgen.model.worked import WorkedStep
from sheetgen.parts.kind import Part
from sheetgen.work.firing import firing, pace, torch
from sheetgen.work.needs import holds
from sheetgen.work.prose import prose, without_figures
from sheetgen.work.stopped import Stopped
from sheetgen.work.waits import time, waiting

if TYPE_CHECKING:
    from sheetgen.base.figure import Figure
    from sheetgen.base.place import Word
    from sheetgen.model.project import Caution, Step
    from sheetgen.work.bench import Workbench

SHOWN = 5

FACES = ("both", "one")  # through which a piece dries


def steps(bench: Workbench) -> list[WorkedStep]:
    """Every step that this version has."""
    told: set[str] = set()
    return [_step(step, bench, told) for step in bench.project.steps if step.when is None or holds(step.when, bench)]


def _step(step: Step, bench: Workbench, told: set[str]) -> WorkedStep:
    text, expect = prose(step.text, bench), prose(step.expect, bench)
    uses = _uses(step, bench)
    parts = _parts(step.parts, bench)
    wait = waiting(step, bench, parts, uses)
    if str(step.faces) not in FACES:
        bench.troubles.add(f"faces cannot be '{step.faces}'", step.faces.place, f"one of {', '.join(FACES)}")
    clay = _fired(step, bench)
    torched = ""
    if clay is not None:
        torched = torch(clay, bench)
        if wait is None and clay.firing:
            wait = firing(clay.firing, pace(bench))
    return WorkedStep(
        title=without_figures(step.title, "a title", bench),
        text=text,
        expect=expect,
        cautions=_cautions(step, bench, uses, clay, _hazards(parts, bench, told)),
        show=_shown(step, bench, text),
        parts=parts,
        uses=uses,
        minutes=time(step.minutes, bench, "minutes"),
        wait=wait.minutes if wait else None,
        wait_for=wait.what if wait else "",
        wait_working=wait.working if wait else "",
        firing=clay.firing if clay else (),
        pace=pace(bench) if clay else None,
        fired=clay.name if clay else "",
        torch=torched,
        diagrams=_drawn(step.diagram, bench),
        place=step.title.place,
    )


def _fired(step: Step, bench: Workbench) -> Clay | None:
    """The clay that a step fires."""
    if step.firing is None:
        return None
    try:
        clay = bench.item(step.firing, Clay)
    except Stopped:
        return None
    if not isinstance(clay, Clay):
        return None
    if not clay.firing:
        helped = "add firing: to the clay, a list of to: and hold:"
        bench.troubles.add(f"{clay.name} has no firing in stock", step.firing.place, helped)
    return clay


def _uses(step: Step, bench: Workbench) -> tuple[Item, ...]:
    found = []
    for word in step.uses:
        try:
            found.append(bench.item(word))
        except Stopped:
            continue
    return tuple(found)


def _parts(words: list[Word], bench: Workbench) -> tuple[str, ...]:
    found = []
    for word in words:
        plain = word.replace(" ", "_")
        if plain in bench.parts:
            found.append(plain)
        else:
            bench.troubles.add(f"there is no part '{word}'", word.place, suggest(word, bench.parts))
    return tuple(found)


def _drawn(words: list[Word], bench: Workbench) -> tuple[str, ...]:
    """Parts whose forming is drawn; a doubt for one of a kind that has no such drawing."""
    parts = _parts(words, bench)
    for word in words:
        part = bench.parts.get(word.replace(" ", "_"))
        if part is not None and type(part).diagram is Part.diagram:
            helped = "take it out: what is flat is drawn on the page of templates"
            bench.troubles.add(f"a {type(part).kind} has no drawing of how it is formed", word.place, helped, "warning")
    return parts


def _shown(step: Step, bench: Workbench, text: tuple[str | Figure, ...]) -> tuple[Figure, ...]:
    """The figures named under `show`; otherwise those that the text prints, the first few."""
    if step.show:
        found = [f for word in step.show for f in prose(_braced(word), bench) if not isinstance(f, str)]
    else:
        found = [f for f in text if not isinstance(f, str)][:SHOWN]
    return tuple(dict.fromkeys(found))


def _braced(word: Word) -> Word:
    """A name as prose would write it, its place kept."""
    return type(word)("{{" + word + "}}", word.place.shifted(-2))


def _hazards(parts: tuple[str, ...], bench: Workbench, told: set[str]) -> list[str]:
    """What making a part always calls for, at the first step that names the part."""
    found = [hazard for name in parts if name not in told for hazard in type(bench.parts[name]).hazards]
    told.update(parts)
    return found


def _cautions(
    step: Step, bench: Workbench, uses: tuple[Item, ...], clay: Item | None, hazards: list[str]
) -> tuple[Caution, ...]:
    """What the step names, what its tools and materials carry, and what firing always brings; gravest first."""
    known = bench.library.stock.cautions
    names = []
    for word in step.caution:
        if word in known:
            names.append(str(word))
        else:
            bench.troubles.add(f"the caution '{word}' is not known", word.place, suggest(word, known))
    names += [*hazards, *(name for item in uses for name in item.cautions)]
    if clay is not None and isinstance(clay, Clay):
        names += ["kiln", "damp clay"]
        if any("carbon" in phase.bed for phase in clay.firing):
            names.append("carbon box")
    found = [known[name] for name in dict.fromkeys(names) if name in known]
    return tuple(sorted(found, key=lambda c: LADDER.index(c.word)))
