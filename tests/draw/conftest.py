"""One part of every kind that is drawn, in one project; and a diagram with what it may be asked."""

from __future__ import annotations

import math
from functools import partial
from itertools import pairwise
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest

from sheetgen.base.pen import Recorder
from sheetgen.draw import kinds

if TYPE_CHECKING:
    from collections.abc import Callable

    from sheetgen.base.printed import Printed

PARTS = {
    "link": "kind: long link, wire: round-1, inside: 4 mm, second inside: 3 mm, length: 20 mm",
    "eight": "kind: figure-eight link, wire: round-1, loop: 4 mm, second loop: 5 mm, length: 18 mm",
    "wrapped": "kind: wrapped-loop link, wire: awg-22, bead: bead-8, beads: 2, caps: 3 mm",
    "pin": "kind: head-pin drop, wire: awg-22, bead: bead-8, head wire: 4 mm",
    "bought": "kind: head-pin drop, wire: awg-22, bead: bead-8, closed: turned, pin: pin-40",
    "hook": "kind: S-hook, wire: round-1, upper: 5 mm, lower: 4 mm, length: 25 mm",
    "bent": "kind: bent wire, wire: round-1, form: 'straight 12 mm, arc 5 mm 180, straight 20 mm, arc 3 mm 90 left'",
    "zigzag": "kind: bent wire, wire: round-1, form: '"
    + "straight 8 mm; arc 3 mm 180; straight 8 mm; arc 3 mm 180 left; " * 4
    + "straight 8 mm'",
    "folded": "kind: fringe, fibre: ribbon-3, strands: 8, first: 20 mm, last: 45 mm, bar: 3 mm",
    "held": "kind: fringe, fibre: cord-2, strands: 61, first: 30 mm, last: 60 mm, shape: point",
    "chain": "kind: chain run, length: 180 mm, link: 14 mm, ring: 4 mm, wire: 1 mm, ring wire: 0.8 mm, end rings: 3,"
    " clasp: clasp-16",
    "hooked": "kind: chain run, length: 60 mm, link: 16 mm, wire: 1.2 mm, closing: 0 mm",
    "ring": "kind: jump ring, wire: round-1, rod: 5 mm",
    "ellipse": "kind: jump ring, wire: round-1, shape: ellipse, inside: 9 mm, inside width: 5 mm",
    "stones": "kind: stone ring, clay: silver, stone: glass-2, around: 12 mm, across: 18 mm",
    "row": "kind: stone row, clay: silver, stone: glass-2, along: 20 mm, width: 5 mm, gap: 0.8 mm",
    "bail": "kind: bail, clay: silver, inside: 6 mm, width: 4 mm, front tail: 8 mm, back tail: 6 mm, thickness: 1 mm",
    "pressed": "kind: bail, clay: silver, inside: 6 mm, width: 4 mm, front tail: 8 mm, back tail: 6 mm, thickness: 1 mm"
    ", meeting: 6 mm",
    "box": "kind: box, clay: silver, across: 30 mm, down: 20 mm, wall height: 8 mm, thickness: 1.5 mm, lid: with a lip",
    "tray": "kind: box, clay: silver, across: 60 mm, down: 60 mm, wall height: 20 mm, thickness: 2 mm, corners: mitred",
    "tube": "kind: tube, clay: silver, length: 20 mm, inside: 7 mm, thickness: 1 mm, release sheet: 0.1 mm",
    "band": "kind: ring band, clay: silver, size: US 7, width: 5 mm, thickness: 1.5 mm",
    "dome": "kind: dome, clay: silver, across: 25 mm, rise: 5 mm, thickness: 1 mm",
}
SEEN = {
    "disc": "kind: cut shape, clay: silver, across: 15 mm, hole: 3 mm, thickness: 1 mm",
    "drop": "kind: cut shape, clay: silver, shape: teardrop, across: 15 mm, down: 25 mm, thickness: 1 mm",
    "washer": "kind: washer, clay: silver, outside: 18 mm, opening: 9 mm, thickness: 1 mm",
    "seat": "kind: seat, clay: silver, stone: glass-2, thickness: 4 mm",
    "cup": "kind: bezel cup, strip: fine-04, stone: oval-18",
    "spiral": "kind: flat spiral, wire: round-1, across: 18 mm, gap: 0.5 mm",
    "coil": "kind: wire coil, wire: round-1, inside: 5 mm, turns: 6",
    "clasp": "kind: toggle clasp, wire: round-1, inside: 8 mm",
    "strewn": "kind: scatter, clay: silver, stone: glass-2, shape: oval, across: 20 mm, down: 14 mm, number: 9,"
    " gap: 0.7 mm, thickness: 2.3 mm",
    "walled": "kind: bezel strip, sheet: fine-04, stone: oval-18, high: 2 mm",
    "metal": "kind: metal disc, sheet: sterling-08, across: 19 mm, hole: 2 mm",
    "blank": "kind: ring blank, sheet: sterling-15, size: US 7, width: 4 mm",
    "strand": "kind: bead strand, bead: bead-8, length: 60 mm, closing: 0 mm",
    "necklace": "kind: graduated strand, largest: 10 mm, smallest: 4 mm, length: 190 mm, closing: 0 mm",
    "wrist": "kind: beads round a neck or wrist, bead: bead-8, girth: 160 mm, closing: 0 mm",
}
PROJECT = """\
title: Drawn
revision: 1
date: 2026-01-10
summary: One part of every kind that is drawn.
makes: 1
level: experienced
parts:
{parts}
steps:
  - title: Make
    parts: [{names}]
    diagram: [{names}]
  - title: Dry
    wait: 1 h
    does: [dry, test]
  - title: Fire
    firing: silver
"""


def project(parts: dict[str, str]) -> str:
    found = "\n".join(f"  {name}: {{{text}}}" for name, text in parts.items())
    return PROJECT.format(parts=found, names=", ".join(parts))


@pytest.fixture(scope="session")
def drawn_parts() -> dict[str, str]:
    """The parts by name, as a project file writes them."""
    return PARTS | SEEN


@pytest.fixture(scope="session")
def drawn_project() -> Callable[[dict[str, str]], str]:
    """What writes a project of parts that are drawn."""
    return project


@pytest.fixture(scope="session")
def drawn_library(libraries: Any, tmp_path_factory: pytest.TempPathFactory) -> Any:
    """A library of one part of every kind that is drawn, with the stock of the workbench."""
    stock = (Path(__file__).parents[1] / "parts" / "workbench.yaml").read_text("utf-8")
    made = libraries.make(tmp_path_factory.mktemp("drawn"), libraries.FILES | {"stock/workbench.yaml": stock})
    made.write("drawn/project.yaml", project(PARTS | SEEN))
    return made


@pytest.fixture(scope="session")
def all_drawn(drawn_library: Any) -> Any:
    """The project of every part that is drawn, worked."""
    return drawn_library.worked("drawn")


@pytest.fixture(scope="session")
def drawn_in_inches(drawn_library: Any, tmp_path_factory: pytest.TempPathFactory) -> Any:
    """The same project of a studio that works in inches, worked."""
    files = {str(p.relative_to(drawn_library.path(""))): p for p in drawn_library.path("").rglob("*.yaml")}
    made = type(drawn_library)(tmp_path_factory.mktemp("inches"))
    for name, path in files.items():
        made.write(name, path.read_text("utf-8"))
    made.change("studio.yaml", "units: mm", "units: in")
    return made.worked("drawn")


@pytest.fixture(scope="session")
def drawn(all_drawn: Any) -> Callable[..., Drawn]:
    """The diagram of a part, by its name."""
    return partial(Drawn, all_drawn)


class Drawn:
    """One part's diagram on a pen that remembers, and its figures."""

    def __init__(self, worked: Any, name: str, k: float = 2.0) -> None:
        self.part, self.k, self.pen = worked.main.parts[name], k, Recorder()
        self.says = kinds.diagram(self.pen, self.part, k)

    def size(self, figure: str) -> Printed:
        """A figure as it is printed."""
        printed: Printed = self.part.figures[figure].printed
        return printed

    def usual(self, name: str) -> float:
        """A figure or a field, unrounded."""
        figure = self.part.figures.get(name)
        return float((figure.value if figure else self.part.numbers[name]).usual)

    @property
    def words(self) -> list[str]:
        return [words for _, words in self.pen.texts]

    def circles(self, across: float, kind: str = "cut") -> list[tuple[float, float]]:
        """Middles of the circles so wide, mm of the piece."""
        found = [o for o in self.pen.ovals if o[0] == kind and o[2] == pytest.approx(across * self.k)]
        return [(x / self.k, y / self.k) for _, (x, y), _, _ in found]

    def middle(self) -> float:
        """Length of the middle of the wire or strip, halfway between the two longest edges, mm of the piece."""
        edges = sorted((walk(points, closed=closed) for _, points, closed in self.pen.lines), reverse=True)
        return sum(edges[:2]) / 2 / self.k

    def band(self, thickness: float) -> float:
        """Length of an open wire or strip, from the outline round it, mm of the piece."""
        longest = max(walk(points, closed=True) for _, points, closed in self.pen.lines if closed)
        return longest / 2 / self.k - thickness


def walk(points: list[tuple[float, float]], *, closed: bool) -> float:
    run = [*points, points[0]] if closed else points
    return sum(math.dist(a, b) for a, b in pairwise(run))
