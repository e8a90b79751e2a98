"""What the numbers of a version are worked from, small and flat, so that a later reader sees which of it was edited."""

from __future__ import annotations

from dataclasses import fields
from typing import TYPE_CHECKING

from sheetgen.base.interval import Interval
from sheetgen.base.material import NUMBERS, SAME_AS, Clay, Item, Phase
from sheetgen.base.room import Room

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.base.place import Place
    from sheetgen.model.worked import Worked, WorkedVersion

PROGRAM = "program"
UNTOLD = {
    "id", "name", "unit", "price", "sources", "place", "note", "cautions", "acts_as", "bears", "metal", "coated",
    "hard", "at_the_bench", "ahead", "ahead_by", "ahead_with", "programs", "strength", "good_for", "because", "group",
    "owned", "engraved", "singular", "mixed",
}  # fmt: skip
"""What of an item moves no printed number by itself, or stands in it twice."""
SHARES = ("shrinkage", "share", "allowance")
"""How the names of numbers end that are written in per cent."""


def inputs(worked: Worked, version: WorkedVersion, program: str) -> dict[str, str]:
    """Choices, the parts as written, values of the stock in use, the studio's rounding, the program's version."""
    found = {f"choice {key}": value for key, value in version.choices.items()}
    for part in version.parts.values():
        for name, place in sorted(part.places.items()):
            if name:
                found[f"part {part.name}: {name.replace('_', ' ')}"] = _written(place)
    for item in used(version):
        for one in fields(item):
            same = SAME_AS.get(one.name, "")
            if getattr(item, one.name) == getattr(item, same, None):
                continue
            if one.name not in UNTOLD and (told := _told(one.name, getattr(item, one.name))):
                unit = NUMBERS.get(type(item).__name__, {}).get(one.name, ("", False))[0]
                found[f"stock {item.id}: {one.name.replace('_', ' ')}"] = f"{told} {unit}".strip()
    for line in version.materials:
        if line.allowance != line.item.allowance:
            found[f"allowance of {line.item.id}"] = _told("allowance", line.allowance)
    if version.plan.class_plan is not None:
        found["class people"] = str(version.plan.class_plan.held.people)
    found |= dict(_studio(worked)) | {PROGRAM: program}
    return {" ".join(key.split()): " ".join(value.split()) for key, value in found.items()}


def used(version: WorkedVersion) -> list[Item]:
    """The items of stock that a version uses, by their ids."""
    found: dict[str, Item] = {}
    for item in (*(line.item for line in version.materials), *(line.item for line in version.tools)):
        found.setdefault(item.id, item)
    for step in version.steps:
        found |= {item.id: item for item in step.uses} | ({step.clay.id: step.clay} if step.clay is not None else {})
    for part in version.parts.values():
        items = (one for each in part.roles.values() for one in each if isinstance(one, Item))
        found |= {item.id: item for item in items if isinstance(item, Clay) or item.id not in found}
    return [found[key] for key in sorted(found)]


def _written(place: Place) -> str:
    """A field as its file has it."""
    return place.source.line(place.line)[place.column - 1 :][: place.width]


def _studio(worked: Worked) -> Iterator[tuple[str, str]]:
    rounder, slab = worked.rounder, worked.slab
    yield "studio bench step", f"{rounder.step:g} mm"
    yield "studio units", "in" if rounder.inches else "mm"
    yield "studio decimal sign", rounder.point
    if slab is not None:
        yield "studio slab", f"{slab.width:g} × {slab.length:g} mm, gap {slab.gap:g} mm"


def _told(name: str, value: object) -> str:
    """A value as a person reads it; nothing of what is left out, is none, or is no number or word."""
    factor, unit = (100, " %") if name.endswith(SHARES) else (1, "")
    told = ""
    match value:
        case str():
            told = value
        case int() | float() if value:
            told = "yes" if value is True else f"{value * factor:.6g}{unit}"
        case Interval(usual, low, high):
            least, most = f"{low * factor:.6g}", f"{high * factor:.6g}{unit}"
            told = most if low == high else f"{least} to {most}, usually {usual * factor:.6g}{unit}"
        case Phase():
            heat = f"{_told('', value.rate)} °C/min to " if value.rate else ""
            below = f", cool below {value.cool_below:g} °C" if value.cool_below else ""
            told = f"{heat}{value.to:g} °C, {_told('', value.hold)} min, {value.bed}{below}"
        case Room(wide, deep, high):
            told = f"{wide:g} × {deep:g} × {high:g}"
        case Item():
            told = value.id
        case tuple():
            told = "; ".join(filter(None, (_told("", one) for one in value)))
    return told
