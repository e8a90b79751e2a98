"""What a firing step says: its program as figures, and in one line bed, torch, time and loads."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.printed import NBSP

if TYPE_CHECKING:
    from sheetgen.model.numbers import Numbers
    from sheetgen.model.worked import Load, WorkedStep


AROUND = {"open shelf": "in air", "carbon": "in carbon"}
"""How a bed is told: whether a piece stands on the bare shelf or lies in a nest or a dish is for the step to say."""


def phases(step: WorkedStep, numbers: Numbers) -> list[list[tuple[str, str, str]]]:
    """Label, number and unit of each line of each phase."""
    return [numbers.firing(phase) for phase in step.firing]


def allowed(step: WorkedStep, numbers: Numbers) -> str:
    """The clay's program, where it lies, whether a torch would do, how long to allow, and in how many loads."""
    clay = step.clay
    if clay is None or not step.firing:
        return ""
    because = f", for {clay.because}" if clay.because else ""
    lies = bed(step)
    program = f"Program “{clay.program}”{because}: {lies[:1].lower()}{lies[1:]}" if clay.program else lies
    time = f" Allow {numbers.time(step.wait)}." if step.wait else ""
    return f"{program} {step.torch}{time} {_loads(step)}".strip()


def bed(step: WorkedStep) -> str:
    """What it lies in, phase by phase; nothing of a step that fires nothing."""
    beds = ", then ".join(dict.fromkeys(AROUND.get(phase.bed, phase.bed) for phase in step.firing))
    return f"{beds[:1].upper()}{beds[1:]}." if beds else ""


def _loads(step: WorkedStep) -> str:
    """How many loads it takes, and where they go unless each is one shelf or box; nothing of a kiln not in stock."""
    if not step.loads:
        return ""
    if all(load.loads == load.places == 1 for load in step.loads):
        return "One load."
    if all(load.loads == 1 for load in step.loads):
        return f"One load, {', then '.join(map(_place, step.loads))}."
    return " ".join(map(_told, step.loads))


def _place(load: Load) -> str:
    if load.boxed:
        return "in one box"
    return f"on one{NBSP}shelf" if load.places == 1 else f"on {load.places} shelves"


def _told(load: Load) -> str:
    begin = "In carbon" if load.boxed else "On the shelf"
    if load.loads == 1:
        return f"{begin} one load, {_place(load)}."
    place = "the box" if load.boxed else "a shelf"
    loads = f"{load.loads} loads, one after the other"
    return f"{begin} {loads}: {load.pieces} parts, at most {load.fullest} to {place}."
