"""A project and its versions worked, one after another; the stage's front door."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sheetgen.base.dimension import spelled
from sheetgen.base.figure import Figure
from sheetgen.base.frozen import Frozen
from sheetgen.base.material import Tool
from sheetgen.base.paths import DEVICES, OF_A_DESIGN
from sheetgen.base.place import Place, Source, Word
from sheetgen.base.spelling import plain, slug
from sheetgen.base.spot import Neighbour
from sheetgen.base.trouble import Trouble, Troubles
from sheetgen.facts.rules import waivable
from sheetgen.model.plan import Plan
from sheetgen.model.project import Said
from sheetgen.model.status import SEEN
from sheetgen.model.worked import SHEETS, Shot, Teaching, Waiver, Worked, WorkedVersion
from sheetgen.work.chains import chains
from sheetgen.work.choices import known_choices
from sheetgen.work.classes import class_plan
from sheetgen.work.evaluator import Evaluator
from sheetgen.work.kits import Kits
from sheetgen.work.lists import materials, tools
from sheetgen.work.needs import check_needs, holds
from sheetgen.work.network import network, tasks
from sheetgen.work.pieces import pieces
from sheetgen.work.programs import by_program
from sheetgen.work.prose import prose, told_own, without_figures
from sheetgen.work.sessions import plan
from sheetgen.work.steps import named, steps
from sheetgen.work.stopped import Stopped
from sheetgen.work.studio import publisher, rounder, sheets_of_designs, slab
from sheetgen.work.view import view

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping, Sequence

    from sheetgen.model.project import Filed, Library, Project
    from sheetgen.model.worked import Prose, Publisher, WorkedStep
    from sheetgen.parts.piece import Piece

MAIN, WAS = "main", "was"


def work(
    filed: Filed, library: Library, troubles: Troubles, choices: Mapping[str, str] | None = None, only: str = ""
) -> Worked:
    """The project with every version worked, or `only` one, by its name.

    `choices` tries other values: typed, or words that know their places. What is told of all versions together (what
    nothing breaks that is waived, what lies in no version's kit) is not, of one.
    """
    project, versions = filed.project, {}
    library = replace(library, asked=set())
    tried = {k: v if isinstance(v, Word) else _typed(k, v) for k, v in (choices or {}).items()}
    named: dict[str, dict[str, Word]] = {MAIN: {}}
    called = slug(str(project.main_version)) if project.main_version else MAIN
    for version in project.versions:
        name = _of_version(version, "name")
        if name is None:
            place = next(iter(version)).place if version else project.title.place
            troubles.add("a version has no name", place, "add name: …")
        elif slug(name) in {called, *map(slug, named)}:
            troubles.add(f"another version is called '{name}' too", name.place, "give it another name")
        elif slug(name) in DEVICES | OF_A_DESIGN:
            told = f"a version cannot be called '{name}': its folder would be '{slug(name)}'"
            troubles.add(told, name.place, "that name is taken by another page or by the machine")
        else:
            named[str(name)] = {k: v for k, v in version.items() if k not in {"name", WAS}}
    _look_at_old_names(project, [called, *map(slug, named)], troubles)
    old = {str(_of_version(version, "name")): _of_version(version, WAS) or "" for version in project.versions}
    known_choices([str(key) for key in project.choices], [*named.values(), tried], troubles)
    kits = Kits(project, troubles)
    main_troubles: list[Trouble] = []
    waived: set[str] = set()
    for which, changed in named.items():
        if only not in {"", which}:
            continue
        own = Troubles()
        fired = by_program(project, library, changed | tried, own)
        evaluator = Evaluator(project, fired, changed | tried, own)
        title = main_title(project) if which == MAIN else which
        made = replace(_version(which, title, evaluator), was=str(old.get(which, "")))
        versions[which] = kits.added(made, evaluator)
        waived |= evaluator.waived
        if which == MAIN:
            main_troubles = own.found
            troubles.extend(own)
            if own.errors:
                break
        else:
            troubles.extend(t if only else _in_version(which, t) for t in own if t not in main_troubles)
    if not tried and not only:
        troubles.extend(kits.nowhere())
    waivers = tuple(_waived(project, waived, troubles, sure=not only))
    return Worked(
        name=filed.name,
        folder=str(filed.folder),
        title=str(project.title),
        revision=str(project.revision),
        date=str(project.date),
        level=str(project.level),
        worn_by=str(project.worn_by),
        worn_at=str(project.worn_at or ""),
        worn_places=Frozen(
            {n: w.place for n, w in (("worn by", project.worn_by), ("worn at", project.worn_at)) if w is not None}
        ),
        place=project.title.place,
        waive=waivers,
        studio=_publisher(project, library),
        status=str(project.status),
        instead=(str(project.instead or ""), filed.instead),
        rounder=rounder(library.studio),
        tags=tuple(map(str, project.tags)),
        pictures=tuple(
            Shot(str(one)) if isinstance(one, Word) else Shot(str(one.file), str(one.credit))
            for one in project.pictures
        ),
        versions=Frozen(versions),
        slab=slab(library.studio),
        slats=tuple(Evaluator.sizes(library, "slat")),
        sheets=tuple(s for s in SHEETS if s in (project.sheets or sheets_of_designs(library.studio))),
        asked=frozenset(library.asked),
        was=tuple(map(str, project.was)),
        cards=any(isinstance(t, Tool) and t.kind == "cards" for t in library.stock.items.values()),
    )


def _publisher(project: Project, library: Library) -> Publisher:
    """Who publishes; what is for the studio alone stands at no address."""
    by = publisher(library.studio, library.labels)
    return by if project.status in SEEN else replace(by, address="")


def _of_version(version: Mapping[Word, Word], key: str) -> Word | None:
    return next((value for name, value in version.items() if name == key), None)


def _look_at_old_names(project: Project, taken: Sequence[str], troubles: Troubles) -> None:
    """What versions were called: the address of none that there is, and of one version alone."""
    seen = set(taken)
    for word in filter(None, (_of_version(version, WAS) for version in project.versions)):
        if not slug(word) or slug(word) in DEVICES | OF_A_DESIGN:
            troubles.add(f"no version was ever called '{word}'", word.place, "take it out")
        elif slug(word) in seen:
            message = f"the page of '{word}' is that of another version, and an address leads to one page"
            troubles.add(message, word.place, "take it out of one of them")
        seen.add(slug(word))


def main_title(project: Project) -> str:
    """What the project as its file gives it is called in print."""
    return str(project.main_version or "As designed")


def _version(name: str, title: str, evaluator: Evaluator) -> WorkedVersion:
    chosen = {}
    for key, word in evaluator.choices.items():
        try:
            evaluator.choice(key)
            chosen[key] = str(word)
        except Stopped:
            continue
    parts = pieces(evaluator)
    figures = {figure.key: figure for part in parts.values() for figure in part.figures.values()}
    figures |= {key: figure for key in evaluator.own if (figure := _own_figure(key, evaluator))}
    steps_ = steps(evaluator, parts)
    check_needs(evaluator)
    chains(evaluator, parts)
    hanging(evaluator)
    without_figures(evaluator.project.title, "a title", evaluator)
    return WorkedVersion(
        name=name,
        title=title,
        choices=Frozen(chosen),
        parts=Frozen(parts),
        figures=Frozen(figures),
        materials=tuple(materials(evaluator, parts, steps_)),
        tools=tuple(tools(evaluator, parts, steps_)),
        steps=tuple(steps_),
        summary=prose(evaluator.project.summary, evaluator),
        view=view(evaluator),
        view_shows=prose(evaluator.project.view_shows, evaluator),
        finished=named(evaluator.project.finished_sizes, evaluator),
        teaching=_teaching(evaluator),
        makes=prose(evaluator.project.makes, evaluator),
        plan=_plan(evaluator, parts, steps_),
    )


def _plan(evaluator: Evaluator, parts: Mapping[str, Piece], steps: Sequence[WorkedStep]) -> Plan:
    """What the times come to; nothing where something is in trouble, for then steps or parts are missing."""
    if evaluator.troubles.errors:
        return Plan()
    found = network(parts, steps)
    return replace(plan(tasks(steps, found)), class_plan=class_plan(found, parts, steps, evaluator))


def _teaching(evaluator: Evaluator) -> Teaching:
    """What the project tells the teacher."""
    told = evaluator.project.for_the_teacher
    if told is None:
        return Teaching()
    each = [tuple(_said(lines, evaluator)) for lines in (told.before, told.show, told.bring)]
    scrap, leftovers, after = (prose(one, evaluator) for one in (told.scrap, told.leftovers, told.next))
    return Teaching(each[0], each[1], scrap, leftovers, each[2], after)


def _said(lines: Iterable[Word | Said], evaluator: Evaluator) -> Iterator[Prose]:
    """The lines that hold of a version."""
    for line in lines:
        if isinstance(line, Said):
            if holds(line.when, evaluator):
                yield prose(line.say, evaluator)
        else:
            yield prose(line, evaluator)


def _own_figure(key: str, evaluator: Evaluator) -> Figure | None:
    """One of the project's own figures; None with its trouble noted."""
    try:
        value = evaluator.own_worked(key)
        told = told_own(key, evaluator)
        rounding = evaluator.own[key].rounding(key, evaluator) or "fine"
    except Stopped:
        return None
    return Figure("", key, evaluator.own[key].label, value.interval, spelled(value.unit), value.working, rounding, told)


def hanging(evaluator: Evaluator) -> None:
    """A part that hangs from another must not hang, in the end, from itself."""
    hangs = {}
    for name, part in evaluator.parts.items():
        try:
            other = part.field(part.kind.names["hangs_from"])
        except Stopped:
            continue
        if isinstance(other, Neighbour):
            hangs[name] = other.name
    for name in hangs:
        way = [name]
        while (above := hangs.get(way[-1])) and above not in way:
            way.append(above)
        if above == name:
            told = " → ".join([*way, name]).replace("_", " ")
            place = evaluator.parts[name].place("hangs from")
            evaluator.troubles.add(
                f"these hang from each other in a circle: {told}", place, "let one of them stand: at: 0 mm, 0 mm"
            )
            return


def _typed(name: str, value: str) -> Word:
    """A value from the command line, as if a file held it."""
    return Word(value, Place(Source(f"--with {name}", value), 1, 1, max(1, len(value))))


def _waived(project: Project, waived: set[str], troubles: Troubles, *, sure: bool) -> Iterator[Waiver]:
    """What is waived; a rule is waived with a reason. That no version breaks it is `sure` only where all are worked."""
    for rule, reason in project.waive.items():
        if not reason.strip():
            told = f"'{rule}' is waived without a reason"
            troubles.add(told, rule.place, f"{rule}: and why it may be so, in a few words")
        if not waivable(plain(rule).replace("_", "-")):
            told = f"the rule '{rule}' keeps people whole, and cannot be waived"
            troubles.add(told, rule.place, "take it out, and mend what breaks the rule")
        yield Waiver(str(rule), str(reason), rule.place, plain(rule) in waived or not sure)


def _in_version(name: str, trouble: Trouble) -> Trouble:
    return replace(trouble, message=f"in version {name}: {trouble.message}")
