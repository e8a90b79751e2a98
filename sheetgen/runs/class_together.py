"""The plans of a class that makes several designs: each worked beside the others, in place of those worked alone."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from typing import TYPE_CHECKING, NamedTuple

from sheetgen.base.frozen import Frozen
from sheetgen.base.material import Tool
from sheetgen.base.spelling import counted, in_a_sentence
from sheetgen.work.classes import not_through
from sheetgen.work.together import Making, together

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from sheetgen.base.trouble import Trouble
    from sheetgen.kits.class_run import ClassRun
    from sheetgen.kits.taken import Kits
    from sheetgen.model.plan import ClassPlan
    from sheetgen.model.project import Library, Project
    from sheetgen.model.worked import WorkedVersion
    from sheetgen.runs.kinds import Key


class Beside(NamedTuple):
    """The kinds of set with their new plans; the warnings of the old ones, which hold no longer, and the new ones."""

    kinds: dict[Key, Kits]
    no_longer: frozenset[Trouble]
    troubles: list[Trouble]


def beside_each_other(
    kinds: Mapping[Key, Kits], keys: Sequence[Key], projects: Mapping[str, Project], library: Library
) -> Beside:
    """The kinds that pupils make, planned together; `keys` is each pupil's, `projects` are held for their makers."""
    pupils = Counter(keys)
    makings = [
        Making(kits.worked.name, kits.version, projects[kits.worked.name], pupils[key]) for key, kits in kinds.items()
    ]
    plans, troubles = together(makings, library)
    if all(plan is one.version.plan.class_plan for plan, one in zip(plans, makings, strict=True)):
        return Beside(dict(kinds), frozenset(), [])
    alone = frozenset(
        trouble
        for kits in kinds.values()
        for one in kits.worked.versions.values()
        if one.plan.class_plan
        for trouble in not_through(one.plan.class_plan, one.steps, projects[kits.worked.name], library.studio)
    )
    planned = {key: _planned(kits, plan) for (key, kits), plan in zip(kinds.items(), plans, strict=True)}
    return Beside(planned, alone, troubles)


def told_together(run: ClassRun) -> Iterator[str]:
    """Of several designs in one class: what they share, for how many, and which loads hold the pieces of several."""
    uses: dict[str, set[str]] = {}
    few: dict[str, tuple[Tool, int]] = {}
    for kits in run.kinds:
        plan = kits.version.plan.class_plan
        for tool in (line.item for line in kits.version.tools):
            if isinstance(tool, Tool) and tool.owned:
                uses.setdefault(called(tool), set()).add(kits.worked.name)
                beside = plan.beside.get(tool.id, 0) if plan else 0
                if plan and beside:
                    few[tool.id] = tool, max(plan.held.people + beside, few.get(tool.id, (tool, 0))[1])
    if len({kits.worked.name for kits in run.kinds}) == 1:
        return
    shared = ", ".join(in_a_sentence(name) for name, designs in uses.items() if len(designs) > 1)
    yield "the evenings of each design are planned by themselves" + (f"; they share: {shared}" if shared else "")
    yield from (f"{called(tool)}: {tool.owned} for {users} who use it in one evening" for tool, users in few.values())
    yield from dict.fromkeys(told for kits in run.kinds for told in _fired_together(kits))


def called(tool: Tool) -> str:
    """A tool by its first words."""
    return tool.name.partition(",")[0]


def _fired_together(kits: Kits) -> Iterator[str]:
    plan = kits.version.plan.class_plan
    for i in plan.together if plan else ():
        if plan and i not in plan.elsewhere and (loads := plan.loads.get(i)):
            pieces, many = max(load.pieces for load in loads), max(load.loads for load in loads)
            what = f"{kits.version.steps[i].title} ({kits.design})"
            yield f"{what}, with the pieces of other designs: {pieces} pieces, {counted(many, 'load')}"


def _planned(kits: Kits, plan: ClassPlan | None) -> Kits:
    """A kind of set whose version has another plan, in its design too."""

    def with_plan(version: WorkedVersion) -> WorkedVersion:
        return replace(version, plan=replace(version.plan, class_plan=plan))

    worked, name = kits.worked, kits.version.name
    versions = Frozen({**worked.versions, name: with_plan(worked.versions[name])})
    return replace(kits, worked=replace(worked, versions=versions), version=with_plan(kits.version))
