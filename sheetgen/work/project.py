"""A project and its versions worked, one after another; the stage's front door."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.figure import Figure
from sheetgen.base.place import Place, Source, Word
from sheetgen.base.spelling import slug, suggest
from sheetgen.base.trouble import Trouble, Troubles
from sheetgen.model.worked import Worked, WorkedVersion
from sheetgen.work.bench import Workbench
from sheetgen.work.lists import materials, tools
from sheetgen.work.needs import needs
from sheetgen.work.prose import prose, without_figures
from sheetgen.work.steps import steps
from sheetgen.work.stopped import Stopped
from sheetgen.work.studio import rounder, slab

if TYPE_CHECKING:
    from collections.abc import Mapping

    from sheetgen.model.project import Filed, Library

MAIN = "main"


def work(filed: Filed, library: Library, troubles: Troubles, choices: Mapping[str, str] | None = None) -> Worked:
    """The project with every version worked; `choices` tries other values, as on the command line."""
    worked = Worked(filed, library.studio, rounder(library.studio), slab=slab(library.studio))
    tried = {k: _typed(k, v) for k, v in (choices or {}).items()}
    named: dict[str, dict[str, Word]] = {MAIN: {}}
    called = slug(str(filed.project.main_version)) if filed.project.main_version else MAIN
    for version in filed.project.versions:
        name = next((v for k, v in version.items() if k == "name"), None)
        if name is None:
            place = next(iter(version)).place if version else filed.project.title.place
            troubles.add("a version has no name", place, "add name: …")
        elif slug(name) in {called, *map(slug, named)}:
            troubles.add(f"another version is called '{name}' too", name.place, "give it another name")
        else:
            named[str(name)] = {k: v for k, v in version.items() if k != "name"}
    _known_choices(filed, [*named.values(), tried], troubles)
    main_troubles: list[Trouble] = []
    for which, changed in named.items():
        own = Troubles()
        bench = Workbench(filed.project, library, changed | tried, own)
        worked.versions[which] = _version(which, bench)
        if which == MAIN:
            main_troubles = own.found
            troubles.extend(own)
            if own.errors:
                break
        else:
            troubles.extend(_in_version(which, t) for t in own if t not in main_troubles)
    return worked


def _version(name: str, bench: Workbench) -> WorkedVersion:
    version = WorkedVersion(name)
    version.parts = bench.parts
    for key, word in bench.choices.items():
        try:
            bench.choice(key)
            version.choices[key] = str(word)
        except Stopped:
            continue
    for part in bench.parts.values():
        _all_fields(part.name, bench)
        for worker in type(part).workers().values():
            try:
                if part.has(worker):
                    figure = part.worked(worker)
                    version.figures[figure.key] = figure
            except Stopped:
                continue
    for key in bench.own:
        try:
            found = bench.figure_named(key)
        except Stopped:
            continue
        if isinstance(found, Figure):
            version.figures[key] = found
    version.steps = steps(bench)
    version.needs = list(needs(bench))
    version.summary = prose(bench.project.summary, bench)
    version.makes = prose(bench.project.makes, bench)
    without_figures(bench.project.title, "a title", bench)
    version.materials = materials(bench, version.steps)
    version.tools = tools(bench, version.steps)
    return version


def _all_fields(part: str, bench: Workbench) -> None:
    """Every field once, so that a wrong one that no figure uses is still told."""
    for field in type(bench.parts[part]).fields().values():
        try:
            bench.given(bench.parts[part], field)
        except Stopped:
            continue


def _known_choices(filed: Filed, changes: list[dict[str, Word]], troubles: Troubles) -> None:
    known = [str(k) for k in filed.project.choices]
    plain = {k.replace(" ", "_") for k in known}
    for change in changes:
        for key in change:
            if str(key).replace(" ", "_") not in plain:
                place = key.place if isinstance(key, Word) else None
                troubles.add(f"'{key}' is not a choice of this project", place, suggest(key, known))


def _typed(name: str, value: str) -> Word:
    """A value from the command line, as if a file held it."""
    return Word(value, Place(Source(f"--with {name}", value), 1, 1, max(1, len(value))))


def _in_version(name: str, trouble: Trouble) -> Trouble:
    return Trouble(f"in version {name}: {trouble.message}", trouble.place, trouble.help, trouble.severity)
