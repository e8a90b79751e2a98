"""Whether a wire passes its hole, against sampling: the clay shrinks by every share of its range, and none may bind.

A hole is drilled with a size that the drawer has; what it comes out at is that size less the shrinkage, tried at a
hundred shares between least and most. Reckoned here with plain numbers, and not by the program.
"""

from __future__ import annotations

import random
import re
import shutil
from pathlib import Path
from typing import NamedTuple

import pytest

from sheetgen import pipeline

HERE = Path(__file__).parent
STEPS, PROJECTS = 100, 120
HEAD = """\
title: Sampled {n}
revision: 1
date: 2026-01-01
summary: A tag on a ring.
makes: 1 tag
level: experienced
parts:
  tag: {{kind: cut shape, clay: c-{n}, shape: rectangle, across: 20 mm, down: 30 mm, thickness: 1.5 mm}}
  eye: {{kind: hole, clay: c-{n}, drill: {drill} mm, starter: 0.7 mm, edge: {edge} mm, drilled in: tag}}
  ring: {{kind: jump ring, wire: w-{n}, rod: {rod} mm}}
steps:
  - {{title: Cut, parts: [tag, eye], uses: [c-{n}, fine-drills]}}
  - {{title: Dry, wait: drying, does: [test]}}
  - {{title: Fire, firing: c-{n}, uses: [kiln]}}
  - {{title: Hang, parts: [ring, eye], uses: [rods], does: [hang]}}
"""
CLAY = """\
  c-{n}:
    {{name: Clay {n}, shrinkage: {low}-{high} %, wet density: 4 g/cm³, metal share: 80 %, drying: 12 h,
     drying thickness: 1 mm, firing: [{{to: 650 °C, hold: 30 min}}], sources: {{all: invented}}}}
"""
WIRE = """\
  w-{n}:
    {{name: Wire {n}, metal: copper, thickness: {wire} mm, density: 8.96 g/cm³, sources: {{all: invented}}}}
"""


class Piece(NamedTuple):
    drill: float
    wire: float
    low: int
    high: int
    edge: float
    rod: float

    def told(self) -> set[str]:
        """What sampling finds."""
        shares = [self.low + (self.high - self.low) * i / STEPS for i in range(STEPS + 1)]
        opens = [self.drill * (1 - share / 100) for share in shares]
        found = set()
        if any(opening < self.wire - 1e-9 for opening in opens):
            found.add("passes")
        elif any(opening < self.wire + 0.1 - 1e-9 for opening in opens):
            found.add("close-fit")
        # round the rim of 1.5 mm of clay as thick as it can come out, by Pythagoras
        corner = max((self.edge**2 + (1.5 * (1 - share / 100)) ** 2) ** 0.5 for share in shares)
        if self.rod < corner - 1e-9:
            found.add("reaches")
        return found


def pieces() -> list[Piece]:
    chance = random.Random(5)  # noqa: S311 - sizes, and no secret
    rods = [2, 2.5, 3, 3.5, 4, 5, 6]
    found = []
    for _ in range(PROJECTS):
        low = chance.randrange(6, 20)
        wire = chance.choice([0.8, 0.9, 1, 1.1, 1.2, 1.3, 1.5, 1.6])
        high = low + chance.randrange(1, 9)
        fits = wire / (1 - (low + high) / 200)  # a drill near it passes, binds or lets through
        drill = round(fits * 50 + chance.randrange(-3, 12)) / 50
        edge, rod = chance.choice([1.5, 2, 2.5, 3, 3.5]), chance.choice([r for r in rods if r > 2 * wire])
        found.append(Piece(drill, wire, low, high, edge, rod))
    return found


@pytest.fixture(scope="module")
def told(tmp_path_factory: pytest.TempPathFactory) -> dict[int, set[str]]:
    projects = tmp_path_factory.mktemp("sampled") / "projects"
    (projects / "stock").mkdir(parents=True)
    shutil.copy(HERE / "studio.yaml", projects / "studio.yaml")
    shutil.copy(HERE / "stock.yaml", projects / "stock" / "stock.yaml")
    clays, wires = "clays:\n", "wires:\n"
    for n, one in enumerate(pieces()):
        clays += CLAY.format(n=n, low=one.low, high=one.high)
        wires += WIRE.format(n=n, wire=one.wire)
        (projects / f"sampled-{n}").mkdir()
        text = HEAD.format(n=n, drill=one.drill, edge=one.edge, rod=one.rod)
        (projects / f"sampled-{n}" / "project.yaml").write_text(text)
    sizes = ", ".join(f"{n / 50:g} mm" for n in range(35, 130))
    tools = f"tools:\n  fine-drills: {{name: Fine drills, kind: drill, sizes: [{sizes}]}}\n"
    (projects / "stock" / "sampled.yaml").write_text(clays + wires + tools)
    found: dict[int, set[str]] = {n: set() for n in range(PROJECTS)}
    for trouble in pipeline.work_through(projects.parent).troubles:
        assert trouble.place is not None, trouble
        at = re.search(r"sampled-(\d+)/", trouble.place.source.name)
        assert at, trouble
        found[int(at[1])].add(trouble.rule)
    return found


def test_what_does_not_pass_binds_or_reach_is_what_sampling_finds(told: dict[int, set[str]]) -> None:
    wanted = {n: one.told() for n, one in enumerate(pieces())}
    assert {rule for rules in wanted.values() for rule in rules} == {"passes", "close-fit", "reaches"}
    assert sum(not rules for rules in wanted.values()) > PROJECTS / 10  # some are well
    assert {n: (pieces()[n], told[n], want) for n, want in wanted.items() if told[n] != want} == {}
