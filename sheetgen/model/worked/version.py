"""A version of a project with every number worked."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from sheetgen.base.frozen import Frozen
from sheetgen.model.plan import Plan

if TYPE_CHECKING:
    from collections.abc import Mapping

    from sheetgen.base.figure import Figure
    from sheetgen.base.interval import Interval
    from sheetgen.model.drawing import SlabLayout
    from sheetgen.model.kit import Colourway, Kit
    from sheetgen.model.worked.lines import MaterialLine, ToolLine
    from sheetgen.model.worked.shown import Prose, Shown
    from sheetgen.model.worked.step import WorkedStep
    from sheetgen.model.worked.stood import Stood
    from sheetgen.parts.piece import Piece


@dataclass(frozen=True, slots=True)
class Teaching:
    """What whoever teaches a design wants to know.

    What is made ready and shown, a scrap that tests the firing, how leftovers keep, what pupils bring, what comes next.
    """

    before: tuple[Prose, ...] = ()
    show: tuple[Prose, ...] = ()
    scrap: Prose = ()
    leftovers: Prose = ()
    bring: tuple[Prose, ...] = ()
    next: Prose = ()


@dataclass(frozen=True, slots=True)
class WorkedVersion:
    """One version: its choices, parts, figures, lists and steps.

    `finished` are the finished sizes that the first side names; `plan` is what its times come to; `kit` and
    `colourways` are what the design says of kits, as far as it holds for this version;
    `view` is what stands where in the view of the finished piece, beside the parts that say so themselves, and
    `view_shows` what is seen there, for who cannot see it. `slabs` are rolled for its clay, as soon as they are laid
    out. `drawn` are the figures that its templates and the drawings beside its steps print; None: not known, any may
    be. `changed`: its revision was published with other numbers; `kits_changed`: in these colourways, and under no
    name in none, a posted kit of it was. `was` is what it was called before, or nothing.
    """

    name: str
    title: str
    choices: Mapping[str, str] = field(default_factory=Frozen)
    parts: Mapping[str, Piece] = field(default_factory=Frozen)
    figures: Mapping[str, Figure] = field(default_factory=Frozen)
    materials: tuple[MaterialLine, ...] = ()
    tools: tuple[ToolLine, ...] = ()
    steps: tuple[WorkedStep, ...] = ()
    summary: Prose = ()
    makes: Prose = ()
    finished: tuple[Shown, ...] = ()
    teaching: Teaching = Teaching()
    plan: Plan = field(default_factory=Plan)
    view: tuple[Stood, ...] = ()
    view_shows: Prose = ()
    kit: Kit | None = None
    colourways: tuple[Colourway, ...] = ()
    slabs: tuple[SlabLayout, ...] = ()
    drawn: frozenset[str] | None = None
    changed: bool = False
    kits_changed: frozenset[str] = frozenset()
    was: str = ""

    @property
    def numbers(self) -> list[int]:
        """The number of each step; 0 for what is only waited for."""
        counted = 0
        numbers = []
        for step in self.steps:
            counted += not step.waits
            numbers.append(0 if step.waits else counted)
        return numbers

    def drilled_in(self, part: Piece) -> list[Piece]:
        """The holes and seats that are drilled in a part."""
        return [one for one in self.parts.values() if part.name in one.roles.get("drilled in", ())]

    @property
    def bench_times(self) -> list[Interval]:
        """Minutes of work at the bench, step by step."""
        return [s.minutes for s in self.steps if s.minutes]

    @property
    def untimed(self) -> bool:
        """Whether some step says neither how long it takes nor what it waits for."""
        return any(s.minutes is None and s.wait is None for s in self.steps)

    @property
    def whole_times(self) -> list[Interval]:
        """Those and the waits, one after the other."""
        return [*self.bench_times, *(wait for s in self.steps if (wait := s.whole_wait))]
