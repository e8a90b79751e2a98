"""Small libraries on disk for the tests: a studio, its stock and a few tiny projects, to be published and broken."""

from __future__ import annotations

import hashlib
import html
import re
from dataclasses import dataclass
from functools import cache
from typing import TYPE_CHECKING, Self

from sheetgen import pipeline, publishing
from sheetgen.draw.slab import slab_layouts
from sheetgen.draw.templates import draw
from sheetgen.render.handout import Sheets
from sheetgen.render.job import Printout
from sheetgen.render.marks import Marks
from sheetgen.render.teacher import Teacher

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence
    from pathlib import Path

    from sheetgen.model.page import Page
    from sheetgen.model.view import BenchCard, Handout, TeacherSheet
    from sheetgen.model.worked import Worked, WorkedVersion
    from sheetgen.pipeline import Outcome
    from sheetgen.render.job import Job, Paper

STUDIO = """\
name: Test Bench
about: Invented for the tests.
currency: EUR
units: mm
bench step: 0.5 mm
paper: [A4, Letter]
teacher's sheets: public
"""

CLAYS = """\
clays:
  silver:
    name: Test silver
    shrinkage: 8-10 %
    wet density: 7 g/cm³
    metal share: 92 %
    drying: 12-24 h
    firing:
      - to: 650 °C
        hold: 30 min
    allowance: 15 %
    sources:
      all: invented
  copper:
    name: Test copper
    test strips:
      - wet 50 mm, fired 42.5 mm
      - wet 50 mm, fired 44 mm
      - wet 50 mm, fired 43 mm
    wet density: 5 g/cm³
    metal share: 88 %
    drying: 6-8 h
    firing:
      - to: 290 °C
        hold: 15 min
        cool below: 50 °C
      - to: 925 °C
        hold: 3 h
        bed: carbon
    sources:
      all: invented
"""

OTHERS = """\
wires:
  copper-16awg:
    name: Copper wire, 16 AWG
    thickness: 16 awg
    density: 8.96 g/cm³
    allowance: 10 %
    sources:
      density: periodictable 2.1.0
stones:
  glass-2:
    name: Glass stone, 2 mm
    size: 1.95-2 mm
    height: 1.5 mm
    kiln: no
    allowance: 5 %
    sources:
      size: invented
findings:
  ear-wire:
    name: Ear wire
    kiln: no
adhesives:
  epoxy:
    name: Test epoxy
    cure: 12-24 h
    pack: 12 mL
    kiln: no
    cautions: [epoxy]
    sources:
      cure: invented
consumables:
  carbon:
    name: Carbon
    acts as: [carbon]
tools:
  firing-box:
    name: Firing box
    acts as: [firing box]
  roller:
    name: Roller
  knife:
    name: Craft knife
    cautions: [blade]
  formers:
    name: Formers
    kind: former
    sizes: [6 mm, 7 mm, 8 mm, 9 mm, 10 mm]
  drills:
    name: Drills
    kind: drill
    sizes: [2 mm, 2.2 mm, 2.3 mm, 2.4 mm, 2.5 mm]
  balls:
    name: Balls
    kind: dome former
    sizes: [20 mm, 30 mm, 35 mm, 40 mm, 50 mm]
"""

PENDANT = """\
title: Round pendant
revision: 1
date: 2026-01-10
summary: A disc {{ plate.across }} wide.
makes: 1 pendant
level: first piece
choices:
  clay: silver
  width: 20 mm
parts:
  plate:
    kind: cut shape
    clay: clay
    shape: disc
    across: width
    thickness: 4 cards
steps:
  - title: Cut
    parts: [plate]
    uses: [clay, roller]
    minutes: 10-15 min
    text: |
      Cut a disc of {{ plate.wet_disc }}.
    expect: It is round.
  - title: Dry
    wait: drying
    does: [test]
  - title: Fire
    firing: clay
    uses: [firing-box, carbon]
"""

LINK = """\
title: Wire link
revision: 1
date: 2026-01-10
summary: Links of copper wire.
makes: 1 chain
level: some practice
parts:
  links:
    kind: figure-eight link
    wire: copper-16awg
    loop: 4 mm
    gap: 3 mm
    count: 12
steps:
  - title: Bend
    parts: [links]
    uses: [copper-16awg]
    minutes: 30 min
    text: Cut {{ links.cut }} for each.
"""

DROPS = """\
title: Little drops
revision: 1
date: 2026-01-10
summary: A pair of tubes {{ body.length }} long.
makes: 1 pair
level: some practice
tags: [metal clay]
pictures: [finished.svg]
choices:
  clay: silver
  height: 22 mm
  bore: 8 mm
  stone: glass-2
parts:
  body:
    kind: tube
    clay: clay
    length: height
    inside: bore
    thickness: 3 cards
    release sheet: 0.1 mm
    overlap: 4 mm
    count: 2
  seats:
    kind: stone row
    clay: clay
    along: body.length
    stone: stone
    margin: 2 mm
    gap: 0.5 mm
    count: 2
materials:
  - item: ear-wire
    amount: 2
    for: hanging
allowance:
  clay: 20 %
figures:
  class clay: 12 * body.clay_mass
checks:
  - need: body.inside < 12 mm
    say: The cap takes no wider tube.
versions:
  - name: Long
    height: 30 mm
steps:
  - title: Roll
    parts: [body]
    uses: [clay, roller, formers]
    minutes: 10-15 min
    text: |
      Cut {{ body.wet_length }} by {{ body.strip_cut }}.
      Wind it on {{ body.former_used }}.
    expect: "The ends meet."
    caution: [blade]
  - title: Open the seats
    parts: [seats]
    uses: [drills]
    minutes: 20 min
    text: >
      Mark {{ seats.stones }} seats,
      {{ seats.wet_pitch }} apart.
  - title: Dry
    wait: drying
    does: [test]
  - title: Fire
    firing: clay
    uses: [firing-box, carbon]
  - title: Set
    parts: [seats]
    uses: [stone, epoxy, ear-wire]
    minutes: 30 min
    text: Set all {{ seats.stones }}.
  - title: Cure
    wait: curing
"""

# One part of every flat kind, plainly sized, each with a hole or a line where its kind has one.
FLATS = """\
title: Every flat kind
revision: 3
date: 2026-01-10
summary: One of each, for a ruler.
makes: 1 set
level: experienced
choices:
  clay: silver
parts:
  tube:
    kind: tube
    clay: clay
    length: 22 mm
    inside: 8 mm
    thickness: 3 cards
    release sheet: 0.1 mm
    overlap: 4 mm
  disc:
    kind: cut shape
    clay: clay
    shape: disc
    across: 20 mm
    thickness: 4 cards
    hole: 3 mm
  plate:
    kind: cut shape
    clay: clay
    shape: rectangle
    across: 30 mm
    down: 12 mm
    thickness: 4 cards
  oval:
    kind: cut shape
    clay: clay
    shape: oval
    across: 26 mm
    down: 17 mm
    thickness: 4 cards
  kite:
    kind: cut shape
    clay: clay
    shape: outline
    path: M0 8 L10 0 L20 8 L10 31 Z
    thickness: 4 cards
  dome:
    kind: dome
    clay: clay
    across: 25 mm
    rise: 4 mm
    thickness: 4 cards
    hole: 2 mm
    holes: 8
    around: 15 mm
    opening: 2.5 mm
  band:
    kind: ring band
    clay: clay
    size: US 7
    width: 5 mm
    thickness: 5 cards
  row:
    kind: stone row
    clay: clay
    along: 22 mm
    stone: glass-2
    margin: 2 mm
    gap: 0.5 mm
    width: 5 mm
    thickness: 4 cards
steps:
  - title: Cut
    parts: [tube, disc, plate, oval, kite, dome, band, row]
    uses: [clay, roller, knife]
    minutes: 60-90 min
    text: |
      Cut them all. The ring's inside fires to {{ band.fired_inside }}, which is {{ band.fired_us }}
      or {{ band.fired_uk }}.
    expect: They are clean.
  - title: Dry
    wait: drying
    does: [test]
  - title: Fire
    firing: clay
    uses: [firing-box, carbon]
"""

PICTURE = """\
<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 60 30"><title>Two tubes</title>
<rect x="5" y="5" width="10" height="20" fill="#555"/></svg>
"""

FILES = {
    "studio.yaml": STUDIO,
    "stock/clays.yaml": CLAYS,
    "stock/others.yaml": OTHERS,
    "pendant/project.yaml": PENDANT,
    "link/project.yaml": LINK,
    "drops/project.yaml": DROPS,
    "drops/finished.svg": PICTURE,
}
FLAT_FILES = {
    "studio.yaml": STUDIO,
    "stock/clays.yaml": CLAYS,
    "stock/others.yaml": OTHERS,
    "flats/project.yaml": FLATS,
}


@dataclass(frozen=True)
class Library:
    """A library in a folder, with its build folder beside its projects."""

    root: Path

    @property
    def build(self) -> Path:
        return self.root / "build"

    def path(self, name: str) -> Path:
        return self.root / "projects" / name

    def write(self, name: str, text: str | bytes) -> None:
        """Write one file below projects/, its folder with it."""
        path = self.path(name)
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(text if isinstance(text, bytes) else text.encode())

    def change(self, name: str, old: str, new: str) -> None:
        """Replace words that stand in a file exactly once."""
        text = self.path(name).read_text("utf-8")
        assert text.count(old) == 1, f"{old!r} stands {text.count(old)} times in {name}"
        self.write(name, text.replace(old, new))

    def check(self, *only: str, **choices: str) -> Outcome:
        return pipeline.work_through(self.root, only, choices)

    def publish(self, *only: str) -> Outcome:
        return publishing.publish(self.root, self.build, only)

    def worked(self, name: str, **choices: str) -> Worked:
        """One project, which must be well."""
        outcome = self.check(name, **choices)
        assert not outcome.troubles.errors, "\n".join(map(str, outcome.troubles))
        return outcome.worked[0]

    def main(self, name: str, **choices: str) -> WorkedVersion:
        return self.worked(name, **choices).main

    def handout(self, name: str, version: str = "main") -> Handout:
        """What a theme gets for the pupil's sheet, without its template pages."""
        return self._sheets(name, version).handout(Marks(), ())

    def card(self, name: str, version: str = "main") -> BenchCard:
        return self._sheets(name, version).card(Marks())

    def teacher(self, name: str, version: str = "main") -> TeacherSheet:
        of = self._sheets(name, version)
        slabs = {name: slab_layouts(of.worked, one) for name, one in of.worked.versions.items()}
        return Teacher(of.worked, of.version, of.drawings, Marks(), slabs).sheet()

    def _sheets(self, name: str, version: str) -> Sheets:
        worked = self.worked(name)
        one = worked.versions[version]
        return Sheets(worked, one, draw(worked, one, worked.studio.paper))

    def sheets(self, project: str) -> dict[str, str]:
        """Every published file of a project with a digest of its bytes and the moment it was written."""
        files = sorted(p for p in (self.build / project).rglob("*") if p.is_file())
        return {str(p.relative_to(self.build)): hashlib.sha256(p.read_bytes()).hexdigest() for p in files}


class Unchanged(Library):
    """A library whose files no test changes."""

    def check(self, *only: str, **choices: str) -> Outcome:
        """As of any library, and the same for all who ask the same."""
        return _worked_once(self.root, only, tuple(sorted(choices.items())))


@cache
def _worked_once(root: Path, only: tuple[str, ...], choices: tuple[tuple[str, str], ...]) -> Outcome:
    return pipeline.work_through(root, only, dict(choices))


def make(root: Path, files: dict[str, str] = FILES) -> Library:
    """A library with these files."""
    library = Library(root)
    for name, text in files.items():
        library.write(name, text)
    return library


def said(text: str) -> str:
    """What a person reads in HTML: no tags, plain spaces."""
    bare = re.sub(r"<style>.*?</style>|<title>.*?</title>", "", text, flags=re.DOTALL)
    plain = html.unescape(
        re.sub(r"<[^>]*>", "", re.sub(r"<(?:/?(?:p|div|tr|td|th|li|ul|h\d|section|table))\b[^>]*>", " ", bare))
    )
    return " ".join(plain.replace("\u2060", "").replace("\u202f", " ").replace("\u00a0", " ").split())


class QuickPool:
    """Stands in for the pool where a test asks which files are written and not how they look."""

    printer = None

    def __init__(self, _cores: int | None = None) -> None:
        pass

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_what: object) -> None:
        pass

    def ready(self) -> None:
        pass

    def printed(self, jobs: Sequence[Job]) -> list[list[Printout]]:
        return [[self.printout(job, paper) for paper in job.papers] for job in jobs]

    @staticmethod
    def made(_name: str, _of: str, make: Callable[[], Sequence[Page]]) -> list[Page]:
        return list(make())

    @staticmethod
    def printout(job: Job, paper: Paper) -> Printout:
        told = hashlib.sha256(f"{paper}{job.htmls[0]}".encode()).hexdigest()
        return Printout(f"%PDF, as it were: {told}".encode(), 1)
