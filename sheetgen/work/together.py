"""Several designs in one class: each planned by its own hours, with what all of an evening share counted for all.

A tool of which stock says how many there are is there for all who use it in the same evening. What is fired by one
schedule after the same evening goes into the kiln together; for anything else the kiln is fired for one design after
the other, in their order. Who uses what when is taken from the plans, and these are made anew until that is so.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.base.frozen import Frozen
from sheetgen.base.trouble import Troubles
from sheetgen.work.classes import Shared, class_plan
from sheetgen.work.evaluator import Evaluator
from sheetgen.work.firing import kiln_of
from sheetgen.work.loads import Loading
from sheetgen.work.network import network
from sheetgen.work.stations import counted

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.base.material import Item
    from sheetgen.base.trouble import Trouble
    from sheetgen.model.plan import ClassPlan
    from sheetgen.model.project import Library, Project
    from sheetgen.model.worked import WorkedVersion
    from sheetgen.work.loads import Laid

PASSES = 4  # of plans made anew: what is shared once stays so, and few things are
Step = tuple[int, int]
"""Which of the makings, and which step of it."""


@dataclass(frozen=True, slots=True)
class Making:
    """A version that so many pupils of a class make, of a design as it is held for all its makers."""

    design: str
    version: WorkedVersion
    project: Project
    pupils: int


def together(makings: Sequence[Making], library: Library) -> tuple[list[ClassPlan | None], list[Trouble]]:
    """The plan of each making beside the others, and a warning for what then finds no room.

    The plans are those that they have where the class makes one design, or nobody says how it is held.
    """
    found = [one.version.plan.class_plan for one in makings]
    plans = [plan for plan in found if plan is not None]
    if len({one.design for one in makings}) == 1 or len(plans) < len(makings):
        return found, []
    return _Together(makings, library, plans).planned()


class _Together:
    """The makings of one class being planned beside each other."""

    def __init__(self, makings: Sequence[Making], library: Library, plans: list[ClassPlan]) -> None:
        self.makings, self.library, self.plans = makings, library, plans
        self.evaluators = [Evaluator(one.project, library, {}, Troubles()) for one in makings]
        self.schedules = {
            (k, i): (step.firing, *self._kiln(k, step.uses), step.clay.metal if step.clay else "")
            for k, one in enumerate(makings)
            for i, step in enumerate(one.version.steps)
            if step.firing
        }
        self.mates: set[tuple[Step, Step]] = set()  # both ways round
        self.users: dict[tuple[int, str], int] = {}

    def planned(self) -> tuple[list[ClassPlan | None], list[Trouble]]:
        """Plans made anew until nothing more is shared."""
        self._share()
        troubles = self._anew()
        for _ in range(PASSES):
            before = set(self.mates), dict(self.users)
            self._share()
            if before == (self.mates, self.users):
                break
            troubles = self._anew()
        return list(self.plans), troubles

    def _kiln(self, k: int, uses: Sequence[Item]) -> tuple[str, ...]:
        """The kiln, and the boxes that go into it."""
        kiln = kiln_of(uses, self.evaluators[k])
        return kiln.id if kiln else "", *sorted(item.id for item in uses if item.acts("firing box"))

    def _share(self) -> None:
        """Note what is shared by the plans as they are; what was shared before stays so."""
        for k in range(len(self.makings)):
            for tool, days in self._days(k).items():
                most = max(self._others_at(k, tool, day) for day in days)
                self.users[k, tool] = max(self.users.get((k, tool), 0), most)
        for k, j in self._others():
            self.mates |= {
                ((k, i), (j, n))
                for i, day in self._fired(k).items()
                for n, other in self._fired(j).items()
                if other == day and self.schedules[k, i] == self.schedules[j, n]
            }

    def _others_at(self, k: int, tool: str, day: int | None) -> int:
        """How many who make other designs than this use a tool on a day, or on any."""
        return sum(
            self.makings[j].pupils
            for one, j in self._others()
            if one == k and (days := self._days(j).get(tool)) and (day is None or not days.isdisjoint({day, None}))
        )

    def _others(self) -> Iterator[tuple[int, int]]:
        """Each making with each of another design."""
        each = range(len(self.makings))
        return ((k, j) for k in each for j in each if self.makings[k].design != self.makings[j].design)

    def _days(self, k: int) -> dict[str, set[int | None]]:
        """The days on which each counted tool is used; None of what finds no room: it may be any."""
        plan, steps = self.plans[k], self.makings[k].version.steps
        done: list[tuple[int, int | None]] = [(i, evening.day) for evening in plan.evenings for i in evening.done]
        found: dict[str, set[int | None]] = {}
        for i, day in [*done, *((i, None) for i in plan.left)]:
            for tool in counted(steps[i]):
                found.setdefault(tool.id, set()).add(day)
        return found

    def _fired(self, k: int) -> dict[int, int]:
        """After which evening's day each step is first fired."""
        return {one.step: one.day for one in reversed(self.plans[k].fired)}

    def _anew(self) -> list[Trouble]:
        """Every plan anew, the designs in their order; what then finds no room."""
        troubles = Troubles()
        before: list[tuple[int, ClassPlan]] = []
        for k, one in enumerate(self.makings):
            parts, steps = one.version.parts, one.version.steps
            evaluator = Evaluator(one.project, self.library, {}, Troubles())
            plan = class_plan(network(parts, steps), parts, steps, evaluator, self._shared(k, before))
            if plan is not None:
                self.plans[k] = plan
                before.append((k, plan))
            troubles.extend(trouble for trouble in evaluator.troubles if trouble.severity == "warning")
        return list(troubles)

    def _shared(self, k: int, before: Sequence[tuple[int, ClassPlan]]) -> Shared:
        """What a making shares, beside the plans of those before it."""
        design = self.makings[k].design
        mates = sorted(pair for pair in self.mates if pair[0][0] == k)
        pieces: dict[int, Laid] = {}
        for (_, i), other in mates:
            pieces[i] = (*pieces.get(i, ()), *self._laid(other))
        earlier = [(j, plan) for j, plan in before if self.makings[j].design != design]
        first = {self.makings[j].design: j for j, _ in reversed(earlier)}.values()
        taken = (
            (one.begin, one.end)
            for j, plan in earlier
            for one in plan.fired
            if not any(pair[1] == (j, one.step) for pair in mates) and self._one_kiln(k, (j, one.step))
        )
        return Shared(
            sum(one.pupils for one in self.makings if one.design != design),
            Frozen({tool: many for (one, tool), many in self.users.items() if one == k and many}),
            Frozen(pieces),
            tuple(taken),
            tuple(sorted({i for (_, i), (j, _) in mates if j in first})),
        )

    def _one_kiln(self, k: int, other: Step) -> bool:
        """Whether a firing wants a kiln that a making wants too."""
        return any(self.schedules[one][1] == self.schedules[other][1] for one in self.schedules if one[0] == k)

    def _laid(self, step: Step) -> Laid:
        """The pieces of a step of another making, for all its pupils."""
        k, i = step
        one, of = self.makings[k], self.makings[k].version.steps[i]
        if of.clay is None or of.place is None:
            return ()
        return Loading(of.clay, of.uses, of.place, self.evaluators[k]).laid(one.version.parts, of.parts, one.pupils)
