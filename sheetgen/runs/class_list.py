"""A class: from a list of its pupils to its lists, its tables and the teacher's sheets, into the private folder."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from typing import TYPE_CHECKING

from sheetgen.base.spelling import counted
from sheetgen.base.trouble import CannotBe, Troubles
from sheetgen.kits.at_tables import Room
from sheetgen.kits.class_run import Named, class_run
from sheetgen.kits.money import Coin
from sheetgen.kits.run import taken
from sheetgen.kits.tables_list import tables_list
from sheetgen.kits.without_orders import lists_of
from sheetgen.model.class_list import Besides
from sheetgen.model.project import Class
from sheetgen.model.written import default
from sheetgen.pipeline import NotReady, Outcome
from sheetgen.publish.private import drop_stale, refuse_public, write_private
from sheetgen.read.library import read_library
from sheetgen.read.pupils import read_pupils
from sheetgen.render.faceless import faceless
from sheetgen.runs.class_handouts import BEGIN as HANDED_OUT
from sheetgen.runs.class_handouts import copies
from sheetgen.runs.class_printed import printed
from sheetgen.runs.class_together import beside_each_other, told_together
from sheetgen.runs.designs import Designs, versions_of
from sheetgen.runs.kinds import Kinds
from sheetgen.runs.press import list_files, press
from sheetgen.work.besides import besides

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence
    from pathlib import Path

    from sheetgen.kits.class_run import ClassRun
    from sheetgen.kits.taken import Kits
    from sheetgen.model.class_list import PupilLine
    from sheetgen.model.project import Library, Project
    from sheetgen.runs.kinds import Key

CLASS = "class"
"""The folder of what a class takes, within the private one."""
TEACHERS = "teacher-"


def class_list(root: Path, table: Path, private: Path, build: Path) -> tuple[Outcome, list[str]]:
    """What a class takes, where it stands, and its teacher's sheets, into the private folder; a summary in lines.

    What is wrong with a pupil's line is told, and the class is made up without him. NotReady for a folder that is
    public, or cannot be written.
    """
    try:
        refuse_public(private, root, build)
    except CannotBe as fault:
        raise NotReady(f"{fault.message}; {fault.help}") from None
    outcome = Outcome()
    pupils = read_pupils(table, table.name, versions_of(root), outcome.troubles)
    library = read_library(root, outcome.troubles, sorted({str(one.design) for one in pupils})) if pupils else None
    if library is None:
        return outcome, []
    run = _made_up(root, library, pupils, outcome)
    outcome.troubles.keep_causes()
    if run is None:
        return outcome, []
    studio = outcome.worked[0].studio
    lists, told, troubles = lists_of(run.kinds, Coin(studio.currency, point=outcome.worked[0].rounder.point))
    outcome.troubles.extend(troubles)
    if troubles:
        return outcome, []
    needs = taken(run.kinds)
    laid = Room(run, needs).laid()
    with press(root) as by:
        bare = faceless(by.pool.printer, [table.stem, *(word for one in pupils for word in (one.name, one.table))])
        _tell_bare(pupils, bare, outcome.troubles)
        files, _ = list_files(lists, by, [tables_list(laid)])(outcome.troubles)
        files |= {page.path: page.content for page in printed(by, table.stem, run, laid, needs, outcome, bare)}
    try:
        outcome.changed = write_private(private, CLASS, files)
        for begins in (TEACHERS, *HANDED_OUT):
            drop_stale(private, CLASS, begins, files)
    except OSError as fault:
        raise NotReady(f"{private} cannot be written: {fault.strerror}") from None
    usual = any(besides(filed.project, library.studio).usual for filed in library.projects) and run.extras
    extra = "; what is made up besides the pupils’ is common practice, where class: does not say" if usual else ""
    return outcome, [
        run.counted() + extra,
        *told_together(run),
        *copies(run),
        *told,
        f"wrote {counted(len(files), 'file')} into {private / CLASS}",
    ]


def _made_up(root: Path, library: Library, pupils: Sequence[PupilLine], outcome: Outcome) -> ClassRun | None:
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
    _tell_places([pupil for pupil, _ in made], library, said, outcome.troubles)
    return class_run([Named(pupil.name, pupil.table, key) for pupil, key in made], beside.kinds, said)


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


def _tell_bare(pupils: Sequence[PupilLine], bare: frozenset[str], troubles: Troubles) -> None:
    """Warn of each name or table that cannot be printed whole."""
    for pupil in pupils:
        if bare.intersection(pupil.name + pupil.table):
            told = "the name or the table has a letter that no type face on this machine has: a box stands for it"
            helped = "write it by hand, or install a face that has it (on Debian, fonts-noto)"
            troubles.add(told, pupil.place, helped, "warning")


def _tell_full(people: int, besides: Besides, what: str, troubles: Troubles) -> None:
    if besides.places and people > besides.places:
        told = f"{people} pupils {what}, and its class has {counted(besides.places, 'place')}"
        helped = f"people: {people}, if there is room for them; or take {people - besides.places} off the list"
        troubles.add(told, besides.where, helped, "warning")
