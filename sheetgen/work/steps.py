"""Steps with their numbers, waits and cautions."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.dimension import TIME
from sheetgen.base.material import Adhesive, Clay, Item
from sheetgen.base.spelling import suggest
from sheetgen.base.spread import Spread
from sheetgen.facts.cautions import LADDER
from sheetgen.model.worked import WorkedStep
from sheetgen.work.bench import Stopped, Workbench
from sheetgen.work.firing import firing_minutes
from sheetgen.work.prose import prose

if TYPE_CHECKING:
    from sheetgen.base.figure import Figure
    from sheetgen.base.material import Phase
    from sheetgen.base.place import Word
    from sheetgen.model.project import Caution, Step

SHOWN = 5


def steps(bench: Workbench) -> list[WorkedStep]:
    """Every step; one that cannot be worked is left out with its troubles."""
    return [_step(step, bench) for step in bench.project.steps]


def _step(step: Step, bench: Workbench) -> WorkedStep:
    text, expect = prose(step.text, bench), prose(step.expect, bench)
    uses = _uses(step, bench)
    parts = _parts(step, bench)
    wait, wait_for = _wait(step, bench, parts, uses)
    phases: tuple[Phase, ...] = ()
    fired, clay = "", None
    if step.firing is not None:
        try:
            clay = bench.item(step.firing, Clay)
        except Stopped:
            clay = None
        if isinstance(clay, Clay):
            phases, fired = clay.firing, clay.name
            if not phases:
                helped = "add firing: to the clay, a list of to: and hold:"
                bench.troubles.add(f"{clay.name} has no firing in stock", step.firing.place, helped)
            elif wait is None:
                wait, wait_for = firing_minutes(phases), "firing and cooling"
    return WorkedStep(
        title=str(step.title),
        text=text,
        expect=expect,
        cautions=_cautions(step, bench, uses, clay),
        show=_shown(step, bench, text),
        parts=parts,
        uses=uses,
        minutes=_time(step.minutes, bench, "minutes"),
        wait=wait,
        wait_for=wait_for,
        firing=phases,
        fired=fired,
        place=step.title.place,
    )


def _uses(step: Step, bench: Workbench) -> tuple[Item, ...]:
    found = []
    for word in step.uses:
        try:
            found.append(bench.item(word))
        except Stopped:
            continue
    return tuple(found)


def _parts(step: Step, bench: Workbench) -> tuple[str, ...]:
    found = []
    for word in step.parts:
        plain = word.replace(" ", "_")
        if plain in bench.parts:
            found.append(plain)
        else:
            bench.troubles.add(f"there is no part '{word}'", word.place, suggest(word, bench.parts))
    return tuple(found)


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


def _time(word: Word | None, bench: Workbench, name: str) -> Spread | None:
    """A time; a bare number stands for minutes, as the field's name says."""
    if word is None:
        return None
    try:
        found = bench.worked(word)
    except Stopped:
        return None
    bare = name == "minutes" and not any(found.dimension)
    if (found.dimension != TIME and not bare) or found.value.low < 0:
        bench.troubles.add(f"'{word}' is not a time", word.place, "write it as 10 min or 12-24 h")
        return None
    return found.value


def _wait(step: Step, bench: Workbench, parts: tuple[str, ...], uses: tuple[Item, ...]) -> tuple[Spread | None, str]:
    """How long a wait lasts and what for: drying by the clays in hand, curing by the adhesive, or a time."""
    if step.wait is None:
        return None, ""
    if step.wait == "drying":
        clays = _clays(bench, parts) or _clays(bench, tuple(bench.parts))
        times = [c.drying for c in clays if c.drying]
        if times:
            return Spread(max(t.usual for t in times), max(t.low for t in times), max(t.high for t in times)), "drying"
        helped = "add drying: 12-24 h to the clay, or write the time here"
        bench.troubles.add("no clay here says how long it dries", step.wait.place, helped)
        return None, "drying"
    if step.wait == "curing":
        all_uses = [*uses, *(i for s in bench.project.steps for i in _uses(s, bench))]
        glues = [i for i in all_uses if isinstance(i, Adhesive)]
        if glues:
            return glues[0].cure, "curing"
        bench.troubles.add("no step uses an adhesive that could cure", step.wait.place, "name it under uses:")
        return None, "curing"
    return _time(step.wait, bench, "wait"), ""


def _clays(bench: Workbench, parts: tuple[str, ...]) -> list[Clay]:
    found = []
    for name in parts:
        field = type(bench.parts[name]).fields().get("clay")
        if field is not None:
            try:
                clay = bench.given(bench.parts[name], field)
            except Stopped:
                continue
            if isinstance(clay, Clay):
                found.append(clay)
    return found


def _cautions(step: Step, bench: Workbench, uses: tuple[Item, ...], clay: Item | None) -> tuple[Caution, ...]:
    """What the step names, what its tools and materials carry, and what firing always brings; gravest first."""
    known = bench.library.stock.cautions
    names = []
    for word in step.caution:
        if word in known:
            names.append(str(word))
        else:
            bench.troubles.add(f"the caution '{word}' is not known", word.place, suggest(word, known))
    names += [name for item in uses for name in item.cautions]
    if clay is not None and isinstance(clay, Clay):
        names += ["kiln", "damp clay"]
        if any("carbon" in phase.bed for phase in clay.firing):
            names.append("carbon box")
    found = [known[name] for name in dict.fromkeys(names) if name in known]
    return tuple(sorted(found, key=lambda c: LADDER.index(c.word)))
