"""The state of parts against a walk of another make, on random lists of steps.

The other walk keeps no state: for each firing it asks the history. Clay is wet if its last wetting came after its last
drying; things are one thing if a chain of joins and hangings leads from one to the other that nothing took apart.
"""

from __future__ import annotations

import random
import re
import shutil
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

import pytest

from sheetgen import pipeline

if TYPE_CHECKING:
    from collections.abc import Iterator

HERE = Path(__file__).parent
HEAD = """\
title: Random {n}
revision: 1
date: 2026-01-01
summary: Steps in any order.
makes: 1
level: experienced
parts:
  one: {{kind: cut shape, clay: silver, shape: disc, across: 20 mm, thickness: 1 mm}}
  two: {{kind: cut shape, clay: silver, shape: disc, across: 12 mm, thickness: 1 mm}}
  drop:
    {{kind: head-pin drop, wire: fine-wire, bead: glass-bead, loop: 5 mm, closed: turned, head wire: 6 mm,
     head: 1.8 mm}}
steps:
"""
CLAYS = ("one", "two")
MAKES = {
    "cut one": "parts: [one], uses: [silver]",
    "cut two": "parts: [two], uses: [silver]",
    "make the drop": "parts: [drop], uses: [fine-wire, glass-bead]",
    "join": "parts: [one, two], uses: [slip], does: [join]",
    "fill one": "parts: [one], uses: [slip], does: [fill]",
    "dry one": "parts: [one], wait: drying",
    "dry two": "parts: [two], wait: 5 h, does: [dry]",
    "dry all": "wait: drying",
    "rest": "parts: [one], wait: 5 h",
    "fire one": "parts: [one], firing: silver, uses: [kiln]",
    "fire two": "parts: [two], firing: silver, uses: [kiln]",
    "fire all": "firing: silver, uses: [kiln]",
    "hang": "parts: [drop, one], uses: [pliers], does: [hang]",
    "take off": "parts: [drop], uses: [pliers], does: [take off]",
    "glue": "parts: [two], uses: [slow-epoxy, foiled-glass]",
    "cure": "wait: curing, parts: [two], does: [cure], uses: [slow-epoxy]",
}
PROJECTS, LONG = 150, 14


class Told(NamedTuple):
    rule: str
    step: int


def lists() -> Iterator[list[str]]:
    chance = random.Random(11)  # noqa: S311 - lists of steps, and no secret
    rest = [name for name in MAKES if name not in {"cut one", "cut two", "make the drop", "cure"}]
    for _ in range(PROJECTS):
        yield ["cut one", "cut two", "make the drop", *(chance.choice(rest) for _ in range(LONG))]


def ties(history: list[str]) -> list[set[str]]:
    """What ties two parts together after these steps."""
    found = [{"one", "two"}] if "join" in history else []
    hung = [i for i, name in enumerate(history) if name == "hang"]
    off = [i for i, name in enumerate(history) if name == "take off"]
    if hung and (not off or off[-1] < hung[-1]):
        found.append({"drop", "one"})
    return found


def whole(history: list[str], part: str) -> set[str]:
    """A part with all that it is tied to: as far as three parts can reach."""
    found = {part}
    for _ in range(2):
        found = found.union(*(tie for tie in ties(history) if tie & found))
    return found


def fired(history: list[str], part: str) -> bool:
    return any(part in load(history[:i], name) for i, name in enumerate(history) if name.startswith("fire"))


def load(history: list[str], name: str) -> set[str]:
    """What goes into the kiln with a firing."""
    raw = [part for part in CLAYS if name == f"fire {part}" or (name == "fire all" and not fired(history, part))]
    return set().union(*(whole(history, part) for part in raw))


def wet(history: list[str], part: str) -> bool:
    last_wet = last_dry = -1
    for i, name in enumerate(history):
        before = history[:i]
        wets = name in {f"cut {part}", f"fill {part}", "join"}
        if wets and not fired(before, part):
            last_wet = i
        dries = name == "dry all" and any(not fired(before, p) for p in whole(before, part) if p != "drop")
        if dries or (name in {"dry one", "dry two"} and name.split()[1] in whole(before, part)):
            last_dry = i
    return last_wet > last_dry


def expected(steps: list[str]) -> set[Told]:
    found = set()
    for i, name in enumerate(steps):
        if not name.startswith("fire"):
            continue
        before = steps[:i]
        inside = load(before, name)
        if any(wet(before, part) for part in CLAYS if part in inside and not fired(before, part)):
            found.add(Told("dry-before-fire", i + 1))
        if "drop" in inside or ("glue" in before and "two" in inside):
            found.add(Told("survives-kiln", i + 1))
    return found


@pytest.fixture(scope="module")
def told(tmp_path_factory: pytest.TempPathFactory) -> dict[str, set[Told]]:
    projects = tmp_path_factory.mktemp("random") / "projects"
    (projects / "stock").mkdir(parents=True)
    shutil.copy(HERE / "studio.yaml", projects / "studio.yaml")
    shutil.copy(HERE / "stock.yaml", projects / "stock" / "stock.yaml")
    for n, steps in enumerate(lists()):
        lines = [f"  - {{title: {name}, {MAKES[name]}}}\n" for name in steps]
        (projects / f"random-{n}").mkdir()
        (projects / f"random-{n}" / "project.yaml").write_text(HEAD.format(n=n) + "".join(lines))
    found: dict[str, set[Told]] = {}
    for trouble in pipeline.work_through(projects.parent).troubles:
        assert trouble.place is not None
        name = trouble.place.source.name.split("/")[1]
        at = re.search(r"(?:the fire|the kiln) at step (\d+)", trouble.message)
        if at and trouble.rule in {"dry-before-fire", "survives-kiln"}:
            found.setdefault(name, set()).add(Told(trouble.rule, int(at[1])))
    return found


def test_what_the_kiln_meets_is_what_another_walk_finds(told: dict[str, set[Told]]) -> None:
    wanted = {f"random-{n}": expected(steps) for n, steps in enumerate(lists())}
    assert sum(map(len, wanted.values())) > PROJECTS  # the lists are rich enough to try it
    different = {n: (told.get(n, set()), want) for n, want in wanted.items() if told.get(n, set()) != want}
    assert different == {}
