"""A class as it is made up from its list: each design worked for as many as make it, what is made up besides, loads."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from sheetgen.base.spelling import counted
from sheetgen.base.trouble import Troubles
from sheetgen.kits.class_run import Named, class_run, fired_alike
from sheetgen.kits.kit_lines import where_it_is_made
from sheetgen.model.class_list import Besides
from sheetgen.model.project import Class
from sheetgen.model.written import default
from sheetgen.pipeline import Outcome
from sheetgen.read.library import read_library
from sheetgen.read.pupils import read_pupils
from sheetgen.runs.class_together import beside_each_other
from sheetgen.runs.designs import Designs, versions_of
from sheetgen.runs.kinds import Kinds
from sheetgen.work.besides import besides
from sheetgen.work.class_loads import firings, firings_of

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence
    from pathlib import Path

    from sheetgen.kits.class_run import ClassRun, Fired
    from sheetgen.kits.taken import Kits
    from sheetgen.model.class_list import PupilLine
    from sheetgen.model.project import Library, Project
    from sheetgen.runs.kinds import Key


@dataclass(frozen=True, slots=True)
class MadeUp:
    """A class: its run, what its designs say of one, by their folders, and those of its list who can be made up for."""

    run: ClassRun
    said: Mapping[str, Besides]
    kiln: Kiln
    pupils: tuple[PupilLine, ...] = ()

    @property
    def loads(self) -> tuple[int, ...]:
        """How often the kiln is fired with 1, 2, … pieces, the teacher's last; nothing where not all go in together."""
        first, *others = self.run.kinds
        if len(self.run.designs) > 1 or any(fired_alike(one) != fired_alike(first) for one in others):
            return ()
        return self.kiln.each(first, sum(one.teacher for one in self.run.extras))


@dataclass(frozen=True, slots=True)
class Kiln:
    """How often the kiln is fired for a class, the teacher's pieces among those of the pupils."""

    projects: Mapping[str, Project]
    library: Library

    def fired(self, of: Fired) -> int:
        """For all of them; what goes in with a design before it in the list is counted there.

        Where no class is planned, once for each firing. Of designs that share loads, those of the plan, and as many
        more as the teacher's piece wants.
        """
        version, plan = of.kits.version, of.kits.version.plan.class_plan
        if plan is None:
            return sum(bool(step.firing) for step in version.steps)
        project = self.projects[of.kits.worked.name]
        alone = firings_of(version, of.pupils + of.teachers, project, self.library)
        if not (plan.together or plan.elsewhere) or of.pupils < plan.held.people:
            return alone
        own = (i for i, step in enumerate(version.steps) if step.firing and i not in plan.elsewhere)
        shared = sum(max((load.loads for load in plan.loads.get(i, ())), default=1) for i in own)
        return shared + alone - firings_of(version, of.pupils, project, self.library)

    def each(self, kits: Kits, teachers: int) -> tuple[int, ...]:
        """With 1, 2, … pieces of a kind, up to those of all places and of the teacher."""
        return firings(kits.version, self.projects[kits.worked.name], self.library, teachers)


def made_up(root: Path, table: Path, outcome: Outcome, paper: str = "") -> MadeUp | None:
    """The class of a list, on one `paper` or on those of the studio; None where nobody's set can be made.

    What is wrong with a pupil's line is told, and the class is made up without him.
    """
    pupils = read_pupils(table, table.name, versions_of(root), outcome.troubles)
    library = read_library(root, outcome.troubles, sorted({str(one.design) for one in pupils})) if pupils else None
    if library is None:
        return None
    if paper:
        library = replace(library, studio=library.studio.model_copy(update={"paper": [default(paper)]}))
    found = of_pupils(root, library, pupils, outcome)
    outcome.troubles.keep_causes()
    return found


def planned(kits: Kits, library: Library) -> MadeUp:
    """The class of one version with all the places that its plan has; of none where nobody says how it is held."""
    design, plan = kits.worked.name, kits.version.plan.class_plan
    projects = {filed.name: filed.project for filed in library.projects}
    said, kiln = {design: besides(projects[design], library.studio)}, Kiln(projects, library)
    named = [Named("", "", (design,))] * (plan.held.people if plan else 1)
    kinds: dict[Key, Kits] = {(design,): where_it_is_made(replace(kits, bags=0))}
    return MadeUp(class_run(named, kinds, said, kiln.fired), said, kiln)


def of_pupils(root: Path, library: Library, pupils: Sequence[PupilLine], outcome: Outcome) -> MadeUp | None:
    """The class, each design worked for as many as make it; None where nobody's set can be made.

    A design is first worked for all who ask for it. If the line of one of these cannot be made, once more for the rest.
    """
    first = Outcome()
    keys = _keys(root, library, pupils, first, outcome.troubles)
    made = [(pupil, key) for pupil, key in zip(pupils, keys[1], strict=True) if key is not None]
    found, worked = keys[0], first
    if len(made) < len(pupils) and made:
        worked = Outcome()
        rest = [pupil for pupil, _ in made]
        found, again = _keys(root, library, rest, worked, Troubles())
        made = [(pupil, key) for pupil, key in zip(rest, again, strict=True) if key is not None]
        outcome.troubles.extend(first.troubles.errors)
    keys_made = [key for _, key in made]
    people = Counter(str(pupil.design) for pupil, _ in made)
    projects = {one.name: _for_people(one.project, people[one.name]) for one in library.projects}
    beside = beside_each_other({key: found[key] for key in dict.fromkeys(keys_made)}, keys_made, projects, library)
    outcome.troubles.extend(one for one in worked.troubles if one not in beside.no_longer)
    outcome.troubles.extend(beside.troubles)
    outcome.worked, outcome.failed, outcome.faults = worked.worked, first.failed, first.faults
    if not made:
        return None
    said = {filed.name: besides(filed.project, library.studio) for filed in library.projects}
    sitting = tuple(pupil for pupil, _ in made)
    _tell_places(sitting, library, said, outcome.troubles)
    kiln = Kiln(projects, library)
    named = [Named(pupil.name, pupil.table, key) for pupil, key in made]
    return MadeUp(class_run(named, beside.kinds, said, kiln.fired), said, kiln, sitting)


def _keys(
    root: Path, library: Library, pupils: Sequence[PupilLine], outcome: Outcome, troubles: Troubles
) -> tuple[dict[Key, Kits], list[Key | None]]:
    """The kinds of set that pupils make, and each one's, None where it cannot be made; each design for its makers."""
    many = Counter(str(pupil.design) for pupil in pupils)
    projects = [
        replace(filed, project=_for_people(filed.project, many[filed.name]))
        for filed in library.projects
        if many[filed.name]
    ]
    kinds = Kinds(Designs(root, replace(library, projects=projects), outcome, published=library), troubles)
    keys = [kinds.key(pupil) for pupil in pupils]
    return kinds.found, keys


def _for_people(project: Project, people: int) -> Project:
    """A project whose class is of so many."""
    said = project.class_ or Class()
    return project.model_copy(update={"class_": said.model_copy(update={"people": default(str(people))})})


def _tell_places(
    pupils: Sequence[PupilLine], library: Library, said: Mapping[str, Besides], troubles: Troubles
) -> None:
    """Warn where more come than there are places: for a design, and for all of them in the studio."""
    many = Counter(str(pupil.design) for pupil in pupils)
    studio = library.studio.class_.people if library.studio.class_ is not None else None
    for design, people in many.items():
        if len(many) == 1 or studio is None or said[design].where != studio.place:
            _tell_full(people, said[design], f"make {design}", troubles)
    if len(many) > 1 and studio is not None:
        _tell_full(len(pupils), Besides(0, 0, int(studio), studio.place), "are on the list", troubles)


def _tell_full(people: int, besides: Besides, what: str, troubles: Troubles) -> None:
    if besides.places and people > besides.places:
        told = f"{people} pupils {what}, and its class has {counted(besides.places, 'place')}"
        helped = f"people: {people}, if there is room for them; or take {people - besides.places} off the list"
        troubles.add(told, besides.where, helped, "warning")
