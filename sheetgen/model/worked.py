"""A project with every number worked and nothing rounded."""

from __future__ import annotations

import operator
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from sheetgen.base.spread import GRAIN, Spread

if TYPE_CHECKING:
    from collections.abc import Callable

    from sheetgen.base.figure import Figure, Size
    from sheetgen.base.material import Item, Pace, Phase
    from sheetgen.base.place import Place
    from sheetgen.base.rounding import Rounder
    from sheetgen.model.project import Caution, Filed, Studio
    from sheetgen.parts.kind import Part

Prose = tuple["str | Figure", ...]
"""Text as written, with a figure wherever the file names one."""


@dataclass(frozen=True, slots=True)
class MaterialLine:
    """One line of what is used up: net amount, allowance as a share, both in the item's unit.

    `least` must be in the hand at once, however little is used up: a piece at the thickness it is first rolled to.
    `blanks` of sheet: how many, and length and width in mm of each.
    """

    item: Item
    net: Spread | None
    allowance: float = 0.0
    working: str = ""
    use: str = ""
    least: float = 0.0
    blanks: tuple[tuple[int, float, float], ...] = ()


@dataclass(frozen=True, slots=True)
class ToolLine:
    """One tool, with the sizes in mm that the parts of the step need of it."""

    item: Item
    sizes: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class WorkedStep:
    """One step with its numbers; times in min."""

    title: str
    text: Prose
    expect: Prose
    cautions: tuple[Caution, ...]
    show: tuple[Figure, ...]
    parts: tuple[str, ...]
    uses: tuple[Item, ...]
    minutes: Spread | None = None
    wait: Spread | None = None
    wait_for: str = ""
    wait_working: str = ""
    torch: str = ""
    diagrams: tuple[str, ...] = ()
    firing: tuple[Phase, ...] = ()
    pace: Pace | None = None
    fired: str = ""
    place: Place | None = None


COMPARISONS: dict[str, Callable[[float, float], bool]] = {
    "<=": lambda a, b: a <= b + GRAIN, ">=": lambda a, b: a >= b - GRAIN,
    "<": operator.lt, ">": operator.gt, "=": lambda a, b: abs(a - b) <= GRAIN,
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Need:
    """A comparison of the project's own, both sides worked: `sign` is one of <, <=, >, >=, =."""

    left: Spread
    sign: str
    right: Spread
    unit: str
    say: str
    place: Place


@dataclass(slots=True)
class WorkedVersion:
    """One version: its choices, parts, figures, lists and steps."""

    name: str
    choices: dict[str, str] = field(default_factory=dict)
    parts: dict[str, Part] = field(default_factory=dict)
    figures: dict[str, Figure] = field(default_factory=dict)
    materials: list[MaterialLine] = field(default_factory=list)
    tools: list[ToolLine] = field(default_factory=list)
    steps: list[WorkedStep] = field(default_factory=list)
    summary: Prose = ()
    makes: Prose = ()
    needs: list[Need] = field(default_factory=list)

    def drilled_in(self, part: Part) -> list[Part]:
        """The holes and seats that are drilled in a part."""
        into = ((one, getattr(one, "drilled_in", None)) for one in self.parts.values())
        return [one for one, host in into if host is not None and host.name == part.name]

    @property
    def bench_times(self) -> list[Spread]:
        """Minutes of work at the bench, step by step."""
        return [s.minutes for s in self.steps if s.minutes]

    @property
    def whole_times(self) -> list[Spread]:
        """Those and the waits, one after the other."""
        return [*self.bench_times, *(s.wait for s in self.steps if s.wait)]


@dataclass(frozen=True, slots=True)
class Slab:
    """The slab of clay that the studio rolls, and the gap it keeps between pieces and at the edge, mm."""

    width: float
    length: float
    gap: float


@dataclass(slots=True)
class Worked:
    """A project with all its versions; the first is `main`."""

    filed: Filed
    studio: Studio
    rounder: Rounder
    versions: dict[str, WorkedVersion] = field(default_factory=dict)
    slab: Slab | None = None

    def sizes(self, version: WorkedVersion, part: Part) -> Callable[[str], Size]:
        """The sizes of a part of a version as they are printed and drawn, by the names of its figures."""
        return lambda name: self.rounder.size(version.figures[f"{part.name}.{name}"])

    def called(self, version: str) -> str:
        """What a version is called on the page."""
        return str(self.filed.project.main_version or "As designed") if version == self.main.name else version

    @property
    def main(self) -> WorkedVersion:
        """The project as its file gives it, no choice changed."""
        return next(iter(self.versions.values()))
