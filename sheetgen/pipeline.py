"""Calls the stages in order; the one module that knows them all."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from sheetgen.base.trouble import CannotBe, Troubles
from sheetgen.check.project import check as look_over
from sheetgen.read.library import read_library
from sheetgen.work.project import work

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping, Sequence
    from pathlib import Path

    from sheetgen.model.worked import Worked

THEME = "plain"


@dataclass(slots=True)
class Outcome:
    """What a run came to: troubles, the projects worked, and what was written."""

    troubles: Troubles = field(default_factory=Troubles)
    worked: list[Worked] = field(default_factory=list)
    published: list[str] = field(default_factory=list)
    failed: list[str] = field(default_factory=list)
    changed: list[str] = field(default_factory=list)


def work_through(root: Path, only: Sequence[str] = (), choices: Mapping[str, str] | None = None) -> Outcome:
    """Read, work and check; nothing is written. A project with an error is in `failed`."""
    outcome = Outcome()
    library = read_library(root, outcome.troubles, only)
    if library is None:
        return outcome
    outcome.failed += library.failed
    for filed in library.projects:
        own = Troubles()
        worked = work(filed, library, own, choices)
        if not own.errors:
            look_over(worked, own)
        outcome.troubles.extend(own)
        if own.errors:
            outcome.failed.append(filed.name)
        else:
            outcome.worked.append(worked)
    return outcome


def publish(
    root: Path, build: Path, only: Sequence[str] = (), tell: Callable[[str], None] = lambda _said: None
) -> Outcome:
    """All stages. A project in trouble does not stop the others, and its last good sheets stay."""
    from sheetgen.draw.templates import draw  # noqa: PLC0415 - heavy: only where pages are made
    from sheetgen.publish.folder import Folder  # noqa: PLC0415
    from sheetgen.render import pages as rendering  # noqa: PLC0415
    from sheetgen.render.pdf import Printer  # noqa: PLC0415
    from sheetgen.render.theme import Theme  # noqa: PLC0415

    printer = Printer()
    outcome = work_through(root, only)
    theme = Theme(THEME, [root / "themes"])
    folder = Folder(build)
    studio = None
    for worked in outcome.worked:
        studio = worked.studio
        try:
            papers = [str(p) for p in studio.paper]
            drawings = {name: draw(worked, version, papers) for name, version in worked.versions.items()}
            pages = rendering.render(worked, drawings, theme, printer, tell)
        except CannotBe as fault:
            outcome.troubles.add(fault.message, worked.filed.project.title.place, fault.help)
            outcome.failed.append(worked.filed.name)
            continue
        outcome.changed += folder.put(rendering.entry(worked), pages)
        outcome.published.append(worked.filed.name)
    if not only:
        folder.drop_missing(
            [p.name for p in (root / "projects").iterdir() if p.is_dir()] if studio else list(folder.record["projects"])
        )
    if studio is not None:
        outcome.changed += folder.write(rendering.index(studio, folder.entries(), theme))
        folder.keep_record()
    return outcome
