"""How a class loads the kiln: the pieces of all makers laid down together, and how often it is fired."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from sheetgen.base.frozen import Frozen
from sheetgen.base.trouble import Troubles
from sheetgen.work.evaluator import Evaluator
from sheetgen.work.loads import Loading

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from sheetgen.model.project import Library, Project
    from sheetgen.model.worked import Load, WorkedStep, WorkedVersion
    from sheetgen.parts.piece import Piece
    from sheetgen.work.loads import Laid


@dataclass(slots=True)
class ClassLoads:
    """The firings of one version as a class does them, for one number of makers after another.

    `beside` are the pieces of other designs that go in with those of a step.
    """

    parts: Mapping[str, Piece]
    steps: Sequence[WorkedStep]
    evaluator: Evaluator
    beside: Mapping[int, Laid] = field(default_factory=Frozen)
    _loaded: dict[tuple[int, int, bool], tuple[Load, ...]] = field(default_factory=dict)

    def loads(self, i: int, makers: int, *, alone: bool = False) -> tuple[Load, ...]:
        """How the pieces of all makers go into the kiln; `alone`, without those of other designs."""
        step = self.steps[i]
        if not step.loads or step.clay is None or step.place is None:
            return ()
        if (i, makers, alone) not in self._loaded:
            loading = Loading(step.clay, step.uses, step.place, self.evaluator)
            more = () if alone else self.beside.get(i, ())
            self._loaded[i, makers, alone] = loading.loads(self.parts, step.parts, makers, more)
        return self._loaded[i, makers, alone]

    def loads_of(self, i: int, makers: int, *, alone: bool = False) -> int:
        """How often the kiln is fired for all of them; where they are too many to lay down at once, half by half."""
        packed, of_one = self.loads(i, makers, alone=alone), self.steps[i].loads
        if len(packed) == len(of_one) or makers == 1:
            return max((load.loads for load in packed or of_one), default=1)
        return self.loads_of(i, makers // 2, alone=alone) + self.loads_of(i, makers - makers // 2, alone=True)


def firings(version: WorkedVersion, project: Project, library: Library, besides: int = 0) -> tuple[int, ...]:
    """How often the kiln is fired in all with 1, 2, … pieces: those of all places, and so many made `besides`.

    What takes one load for all takes one for fewer. Worked where a fee is held against it and not with the plan: for
    each number of pieces they are laid down anew. Nothing where nobody says how a class is held.
    """
    if version.plan.class_plan is None:
        return ()
    most = version.plan.class_plan.held.people + besides
    kiln, fired = _kiln(version, project, library), _fired(version)
    several = [i for i in fired if kiln.loads_of(i, most) > 1]
    return tuple(
        len(fired) - len(several) + sum(kiln.loads_of(i, pieces) for i in several) for pieces in range(1, most + 1)
    )


def firings_of(version: WorkedVersion, pieces: int, project: Project, library: Library) -> int:
    """How often the kiln is fired in all with so many pieces."""
    kiln = _kiln(version, project, library)
    return sum(kiln.loads_of(i, pieces) for i in _fired(version))


def _kiln(version: WorkedVersion, project: Project, library: Library) -> ClassLoads:
    return ClassLoads(version.parts, version.steps, Evaluator(project, library, {}, Troubles()))


def _fired(version: WorkedVersion) -> list[int]:
    return [i for i, step in enumerate(version.steps) if step.firing]
