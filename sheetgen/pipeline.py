"""Calls the stages in order; the one module that knows them all."""

from __future__ import annotations

from contextlib import contextmanager
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

from sheetgen.base.spelling import suggest
from sheetgen.base.trouble import CannotBe, Misplaced, Troubles
from sheetgen.check.project import check as look_over
from sheetgen.read.library import read_library
from sheetgen.work.project import work

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Mapping, Sequence
    from pathlib import Path

    from sheetgen.model.page import Page
    from sheetgen.model.project import Filed
    from sheetgen.model.worked import Worked
    from sheetgen.render.press import Press
    from sheetgen.render.theme import Theme

THEME = "plain"


class NotReady(RuntimeError):
    """The machine lacks something that the pages need; the message says what to install."""


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
        worked = None
        with _held(own, filed):
            worked = work(filed, library, own, choices)
            if not own.errors:
                look_over(worked, own)
        outcome.troubles.extend(own)
        if own.errors or worked is None:
            outcome.failed.append(filed.name)
        else:
            outcome.worked.append(worked)
    return outcome


@contextmanager
def _held(troubles: Troubles, filed: Filed) -> Iterator[None]:
    """Whatever goes wrong with one project is a trouble of that project, and no other one is stopped by it."""
    place = filed.project.title.place
    try:
        yield
    except CannotBe as fault:
        troubles.add(fault.message, place, fault.help)
    except Misplaced as fault:
        troubles.extend([fault.trouble])
    except OSError as fault:
        what = f"'{fault.filename}': {fault.strerror}" if fault.filename else str(fault)
        troubles.add(
            f"its pages cannot be written: {what}", place, "is something in the way there, or a name too long?"
        )
    except Exception as fault:  # noqa: BLE001 - what nobody thought of must not cost the other projects their sheets
        told = f"{type(fault).__name__}: {fault}"[:200]
        troubles.add(
            f"this project cannot be worked through ({told})", place, "look at its largest and smallest numbers"
        )


def publish(
    root: Path, build: Path, only: Sequence[str] = (), tell: Callable[[str], None] = lambda _said: None
) -> Outcome:
    """All stages. A project in trouble does not stop the others, and its last good sheets stay."""
    from sheetgen.publish.folder import Folder  # noqa: PLC0415 - heavy: only where pages are made
    from sheetgen.render import pages as rendering  # noqa: PLC0415
    from sheetgen.render.pdf import NoPango  # noqa: PLC0415
    from sheetgen.render.press import Press  # noqa: PLC0415
    from sheetgen.render.theme import Theme  # noqa: PLC0415

    if build.resolve().is_relative_to((root / "projects").resolve()) or root.resolve().is_relative_to(build.resolve()):
        raise NotReady(f"pages cannot be published into {build}: the library's own files stand there")
    try:
        press = Press()
    except NoPango as missing:
        raise NotReady(str(missing)) from None
    outcome = work_through(root, only)
    theme = Theme(THEME, [root / "themes"])
    folder = Folder(build)
    with press:
        for worked in outcome.worked:
            with _held(outcome.troubles, worked.filed):
                pages = _pages(worked, theme, press, tell)
                outcome.changed += folder.put(rendering.entry(worked), pages)
                folder.keep_record()
                outcome.published.append(worked.filed.name)
            if worked.filed.name not in outcome.published:
                outcome.failed.append(worked.filed.name)
    if outcome.worked:
        if not only:
            folder.drop_missing([p.name for p in (root / "projects").iterdir() if p.is_dir()])
        with _held(outcome.troubles, outcome.worked[0].filed):
            outcome.changed += folder.write(rendering.index(outcome.worked[0].studio, folder.entries(), theme))
        folder.keep_record()
    return outcome


def _pages(worked: Worked, theme: Theme, press: Press, tell: Callable[[str], None]) -> list[Page]:
    """Draw and render: every file of one project."""
    from sheetgen.draw.templates import draw  # noqa: PLC0415
    from sheetgen.render.pages import render  # noqa: PLC0415

    papers = [str(p) for p in worked.studio.paper]
    drawings = {name: draw(worked, version, papers) for name, version in worked.versions.items()}
    return render(worked, drawings, theme, press, tell)


def figures_told(outcome: Outcome, name: str | None = None) -> Iterator[tuple[str, list[tuple[str, ...]]]]:
    """Each project's figures for a terminal: a title, and rows of name, label, printed value, range and working.

    `name` names a version; raises CannotBe for one that there is not.
    """
    from sheetgen.render.numbers import Numbers  # noqa: PLC0415 - only where something is shown

    for worked in outcome.worked:
        version = worked.versions.get(name or worked.main.name)
        if version is None:
            raise CannotBe(f"there is no version '{name}' of {worked.filed.name}", suggest(name or "", worked.versions))
        numbers = Numbers(worked.rounder)
        rows: list[tuple[str, ...]] = []
        for key, figure in version.figures.items():
            value = figure.value
            span = "" if value.exact else f"{value.low:.4g} – {value.high:.4g}"
            printed = str(numbers.words(figure).striptags()).replace("\u00a0", " ").replace("\u202f", "")
            rows.append((key, figure.label, printed, span, figure.working))
        for line in version.materials:
            amount = numbers.amount(line).replace("\u00a0", " ").replace("\u202f", "") or "as needed"
            rows.append((line.item.id, f"Used up: {line.item.name}", amount, "", line.working))
        title = str(worked.filed.project.title)
        yield (title if version is worked.main else f"{title}, {version.name}"), rows


def figures_as_data(outcome: Outcome) -> list[dict[str, Any]]:
    """What figures.json of each project holds."""
    from sheetgen.render.figures import figures_data  # noqa: PLC0415 - only where it is wanted

    return [figures_data(worked) for worked in outcome.worked]


def kinds_told(name: str = "") -> str:
    """What kinds of part there are, or one of them, in plain lines. Raises CannotBe for one that there is not."""
    from sheetgen.parts import described  # noqa: PLC0415 - reads every kind
    from sheetgen.parts.catalogue import kinds  # noqa: PLC0415

    known = kinds()
    if name and name not in known:
        raise CannotBe(f"there is no kind '{name}'", suggest(name, known))
    return "\n".join(described.told(k, kind) for k, kind in known.items() if name in {"", k})
