"""What is fired, by which program, and in how many loads, as the firing step says it."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from sheetgen.model.worked import Load, WorkedStep


def fired(step: WorkedStep) -> dict[str, str]:
    """Clay, program, why it is that one, and loads by the names that the theme uses; empty where there are none."""
    clay = step.clay
    if clay is None:
        return {"fired": "", "program": "", "because": "", "loads": ""}
    return {"fired": clay.name, "program": clay.program, "because": clay.because, "loads": _loads(step)}


def _loads(step: WorkedStep) -> str:
    """How many loads it takes, on the shelves and in carbon; nothing where stock does not know the kiln."""
    if not step.loads:
        return ""
    if all(load.loads == 1 for load in step.loads):
        return f"All of it is one load, {', then '.join(map(_place, step.loads))}."
    return " ".join(map(_told, step.loads))


def _place(load: Load) -> str:
    if load.boxed:
        return "in one box"
    return "on one shelf" if load.places == 1 else f"on {load.places} shelves"


def _told(load: Load) -> str:
    begin = "In carbon" if load.boxed else "On the shelf"
    if load.loads == 1:
        return f"{begin} one load, {_place(load)}."
    place = "the box" if load.boxed else "a shelf"
    loads = f"{load.loads} loads, one after the other"
    return f"{begin} {loads}: {load.pieces} parts, at most {load.fullest} to {place}."
