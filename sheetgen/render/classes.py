"""What the teacher's sheet says of the class: where it does not fit, what is done between, which tools are shared."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.spelling import in_a_sentence
from sheetgen.model.view import Homework
from sheetgen.render.rows import runs

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.model.numbers import Numbers
    from sheetgen.model.plan import Between, ClassPlan, Remedy
    from sheetgen.model.worked import WorkedVersion

WHO = {"pupil": "Pupil", "teacher": "You", "": "–"}  # nobody waits beside what dries


class ClassWords:
    """The words of one version's class plan; nothing where none is planned."""

    def __init__(self, version: WorkedVersion, numbers: Numbers) -> None:
        self.version, self.numbers, self.plan = version, numbers, version.plan.class_plan

    @property
    def people(self) -> int:
        """How many; 0 where no class is planned."""
        return self.plan.held.people if self.plan else 0

    def says(self) -> Iterator[str]:
        """Whether it fits, what would make it, and what the hours leave out."""
        if self.plan is None:
            return
        yield from self._fits(self.plan)
        if self.plan.others:
            many = self.plan.others
            others = f"{many} others of the class make" if many > 1 else "1 other of the class makes"
            yield f"The hours are those of this design by itself; {others} another."
            yield "Few tools, and loads of the kiln, are reckoned for all who share them in an evening."

    def _fits(self, plan: ClassPlan) -> Iterator[str]:
        waits = any(slot.waits for evening in plan.evenings for slot in evening.slots)
        bars = f"Black bar: least time; open: most{'; broken: a wait' * waits}."
        home = self._steps([one.step for one in plan.homework])
        homework = f" Homework: {home}." if home else ""
        if not plan.left:
            n, people = len(plan.evenings), "people" if self.people > 1 else "person"
            yield f"For {self.people} {people}, in {n} evening{'s' * (n > 1)}.{homework} {bars}"
            return
        several = len(plan.left) > 1
        left = f"{self._steps(plan.left)} {'find' if several else 'finds'} no room"
        yield f"Does not fit: {left}.{homework} {bars}"
        ways = [_remedy(one) for one in plan.remedies]
        if ways:
            yield f"It fits with {' or with '.join(ways)}."

    def _steps(self, steps: Sequence[int]) -> str:
        """Steps by their numbers: step 4, steps 4–6; nothing of what has none."""
        counted = {n for n in (self.version.numbers[i] for i in steps) if n}
        return f"step{'s' * (len(counted) > 1)} {runs(list(counted))}" if counted else ""

    def between(self) -> Iterator[Homework]:
        """What is done or waited for between the evenings."""
        for one in self.plan.between if self.plan else ():
            when = f"{one.after}, that night" if one.day == 0 else f"{one.after}, day {one.day}"
            yield Homework(when, WHO[one.who], self._what(one), self._time(one))

    def _what(self, one: Between) -> str:
        step, number = self.version.steps[one.step], self.version.numbers[one.step]
        loads = f", load {one.load} of {one.loads}" if one.loads > 1 else ""
        if self.plan and one.step in self.plan.together:
            loads += ", with the pieces of other designs"
        told = f"{number} {step.short}" if number else step.short
        return told + loads

    def _time(self, one: Between) -> str:
        told = [self.numbers.time(part) for part in (one.active, one.wait) if part is not None and part.high]
        return ", then ".join(told)

    def stations(self) -> Iterator[str]:
        """Tools of which there are fewer than people, and how often the step is done for that."""
        if self.plan is None:
            return
        wanted: dict[tuple[str, int | None, int], list[int]] = {}
        for slot in (slot for evening in self.plan.evenings for slot in evening.slots):
            for tool in slot.shared:
                if slot.step is not None and self.version.numbers[slot.step]:
                    users = self.people + self.plan.beside.get(tool.id, 0)
                    named = (tool.name.partition(",")[0], tool.owned, users)
                    wanted.setdefault(named, []).append(self.version.numbers[slot.step])
        alike: dict[tuple[int | None, int, str], list[str]] = {}
        for (name, owned, users), steps in wanted.items():
            told = f"step{'s' * (len(set(steps)) > 1)} {runs(steps)}"
            alike.setdefault((owned, users, told), []).append(name)
        for (owned, users, told), names in alike.items():
            first, *others = names
            yield f"{', '.join([first, *map(in_a_sentence, others)])}: {owned} for {users}, {told}"


def _remedy(one: Remedy) -> str:
    if one.kind == "evenings":
        return f"{one.number} evenings"
    if one.kind == "tool" and one.tool is not None:
        return f"{one.number} of {one.tool.name.partition(',')[0].lower()}"
    if one.kind == "pairs":
        return "pupils in pairs"
    return f"{one.number} people" if one.kind == "people" else f"evenings {one.number} min longer"
