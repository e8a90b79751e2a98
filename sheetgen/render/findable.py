"""What a design is found by in the library: worked once when it is published, and kept in the record."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from sheetgen.base.material import Clay
from sheetgen.base.spelling import blank
from sheetgen.facts.techniques import BOTH, KILN, NEITHER, TECHNIQUES, TORCH
from sheetgen.model.numbers import Numbers
from sheetgen.render.needs import IN_DRAWER, named, place_of

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from sheetgen.model.worked import Worked, WorkedVersion


def findable(worked: Worked) -> dict[str, Any]:
    """Techniques, heat, times, sessions, evenings, clays, tools with their places, metals, and so on, of an entry.

    Heat, times, sessions and evenings are those of the main version, all else is of every version.
    """
    versions = list(worked.versions.values())
    numbers = Numbers(worked.rounder)
    needs = [sorted({*_clays(one), *_metals(one, worked), *_tools(one)}) for one in versions]
    places = _places(versions)
    tools = _each(name for one in versions for name in _tools(one))
    return {
        "techniques": _each((*(tag for tag in worked.tags if not blank(tag)), *_techniques(versions))),
        "heat": _heat(worked.main),
        "minutes": numbers.most(worked.main.bench_times),
        "whole": numbers.added(worked.main.whole_times),
        "whole_minutes": numbers.most(worked.main.whole_times),
        "sessions": len(worked.main.plan.sessions),
        "evenings": _evenings(worked.main),
        "clays": _each(name for one in versions for name in _clays(one)),
        "tools": tools,
        "places": [places[_alike(name)] for name in tools],
        "metals": [
            list(one) for one in dict(item for one in versions for item in _metals(one, worked).items()).items()
        ],
        "materials": _each(line.item.name for one in versions for line in one.materials),
        "parts": _each(part.title for one in versions for part in one.parts.values()),
        "made_of": [_each(_clays(one)) for one in versions],
        "needs": [one for n, one in enumerate(needs) if one not in needs[:n]],
    }


def _each(names: Iterable[str]) -> list[str]:
    """Each once, in its order; two that differ in capitals alone are one."""
    found: dict[str, str] = {}
    for name in names:
        found.setdefault(_alike(name), " ".join(name.split()))
    return list(found.values())


def _alike(name: str) -> str:
    return " ".join(name.lower().split())


def _clays(version: WorkedVersion) -> Iterator[str]:
    return (line.item.name for line in version.materials if isinstance(line.item, Clay))


def _tools(version: WorkedVersion) -> Iterator[str]:
    return (line.item.name for line in version.tools)


def _places(versions: Iterable[WorkedVersion]) -> dict[str, str]:
    """Where each tool lies, as the first version says that has it."""
    found: dict[str, str] = {}
    for one in versions:
        of_clay = any(_clays(one))
        for line in one.tools:
            found.setdefault(_alike(line.item.name), place_of(line.item, of_clay=of_clay))
    return found


def _metals(version: WorkedVersion, worked: Worked) -> dict[str, str]:
    """Wire and sheet by their names, as a list of needs prints them."""
    items = [line.item for line in version.materials if isinstance(line.item, IN_DRAWER)]
    return {
        item.name: ", ".join(filter(None, named(item, worked.rounder))) for item in items if not isinstance(item, Clay)
    }


def _techniques(versions: Iterable[WorkedVersion]) -> Iterator[str]:
    done = {deed for version in versions for step in version.steps for deed in step.does}
    return (name for deed, name in TECHNIQUES.items() if deed in done)


def _evenings(version: WorkedVersion) -> int:
    """Those of its class; 0 where none is planned, or a step finds no room in it."""
    plan = version.plan.class_plan
    return 0 if plan is None or plan.left else len(plan.evenings)


def _heat(version: WorkedVersion) -> str:
    kiln = any(step.firing and not step.by_torch for step in version.steps)
    torch = any(step.acts("torch") for step in version.steps)
    return BOTH if kiln and torch else KILN if kiln else TORCH if torch else NEITHER
