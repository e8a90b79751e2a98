"""Calls the stages in order; the one module that knows them all."""

from __future__ import annotations

import errno
import traceback
from contextlib import contextmanager
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from sheetgen.base.trouble import CannotBe, Misplaced, Troubles
from sheetgen.publish.inputs import PROJECT, design_folders
from sheetgen.publish.record import LAID

if TYPE_CHECKING:
    from collections.abc import Callable, Generator, Iterator, Mapping, Sequence
    from pathlib import Path

    from sheetgen.base.place import Place
    from sheetgen.model.codes import Code
    from sheetgen.model.project import Filed, Library
    from sheetgen.model.worked import Worked
    from sheetgen.render.job import Makes
    from sheetgen.render.pages import Rendered
    from sheetgen.render.theme import Theme

THEME = "plain"
Said = tuple[list[str], list[str]]
"""What a project waives, and by which program a clay is fired where that is not its strongest: lines."""


class NotReady(RuntimeError):
    """The machine lacks something that the pages need; the message says what to install."""


@dataclass(slots=True)
class Outcome:
    """What a run came to: troubles, what was read, the projects worked, and what was written.

    `kept` are the ledgers that were written; `alone` counts sheets that were left as they are, `ours` files
    that are for the studio alone; `faults` are tracebacks
    of what nobody thought of; `said` is what is to be known of each project that is well.
    """

    troubles: Troubles = field(default_factory=Troubles)
    library: Library | None = None
    worked: list[Worked] = field(default_factory=list)
    published: list[str] = field(default_factory=list)
    failed: list[str] = field(default_factory=list)
    changed: list[str] = field(default_factory=list)
    kept: list[str] = field(default_factory=list)
    alone: int = 0
    ours: int = 0
    faults: list[str] = field(default_factory=list)
    said: dict[str, Said] = field(default_factory=dict)


def work_through(root: Path, only: Sequence[str] = (), choices: Mapping[str, str] | None = None) -> Outcome:
    """Read, work, check, and draw as far as it must be; nothing is written. A project with an error is in `failed`."""
    return _through(root, only, lambda filed, library, faults: work_one(filed, library, faults, choices))


def reckon_through(
    root: Path, only: Sequence[str] = (), choices: Mapping[str, str] | None = None, *, main: bool = False
) -> Outcome:
    """As `work_through`, without drawings; of the `main` version alone where no other is asked for."""
    from sheetgen.work.project import MAIN  # noqa: PLC0415 - heavy: not where nothing is to be done

    alone = MAIN if main else ""
    return _through(root, only, lambda filed, library, faults: reckon_one(filed, library, faults, choices, alone))


def _through(
    root: Path, only: Sequence[str], one: Callable[[Filed, Library, list[str]], tuple[Worked | None, Troubles]]
) -> Outcome:
    from sheetgen.read.library import read_library  # noqa: PLC0415 - heavy: not where nothing is to be done

    outcome = Outcome()
    library = outcome.library = read_library(root, outcome.troubles, only)
    if library is None:
        return outcome
    outcome.failed += library.failed
    for filed in library.projects:
        worked, own = one(filed, library, outcome.faults)
        outcome.troubles.extend(own)
        if worked is None:
            outcome.failed.append(filed.name)
        else:
            outcome.worked.append(worked)
    return outcome


def work_one(
    filed: Filed, library: Library, faults: list[str], choices: Mapping[str, str] | None = None, only: str = ""
) -> tuple[Worked | None, Troubles]:
    """A project worked, checked and drawn as far as it must be, with its troubles; None where one is an error.

    `choices` and `only` are those of `work`.
    """
    from sheetgen.draw.figures import with_drawn  # noqa: PLC0415 - heavy, as above

    worked, own = reckon_one(filed, library, faults, choices, only)
    if worked is not None:
        with held(own, filed.project.title.place, faults):
            worked = with_drawn(worked)
    return None if own.errors else worked, own


def check_one(filed: Filed, library: Library, faults: list[str]) -> tuple[Worked | None, Troubles]:
    """As `work_one`, where what its drawings tell is not asked: each is drawn once, to see that it can be."""
    from sheetgen.draw.figures import try_drawings  # noqa: PLC0415 - heavy, as above

    worked, own = reckon_one(filed, library, faults)
    if worked is not None:
        with held(own, filed.project.title.place, faults):
            try_drawings(worked)
    return None if own.errors else worked, own


def reckon_one(
    filed: Filed, library: Library, faults: list[str], choices: Mapping[str, str] | None = None, only: str = ""
) -> tuple[Worked | None, Troubles]:
    """As `work_one`, without drawings: what its numbers are."""
    from sheetgen.check.project import check as look_over  # noqa: PLC0415 - heavy, as above
    from sheetgen.draw.slab import with_slabs  # noqa: PLC0415
    from sheetgen.work.project import work  # noqa: PLC0415

    own, worked = Troubles(), None
    with held(own, filed.project.title.place, faults):
        worked = work(filed, library, own, choices, only)
        if not own.errors:
            look_over(worked, own)
            worked = with_slabs(worked)
    return None if own.errors else worked, own


OF_THE_DISK = {errno.ENOSPC, errno.EDQUOT, errno.EROFS, errno.EIO}
"""Faults that are no project's, and that the next one would meet too."""


@contextmanager
def held(troubles: Troubles, place: Place | None, faults: list[str], what: str = "this project") -> Iterator[None]:
    """Whatever goes wrong with one project is a trouble of that project, and no other one is stopped by it.

    OSError where the disk is full or broken.
    """
    try:
        yield
    except CannotBe as fault:
        troubles.add(fault.message, place, fault.help)
    except Misplaced as fault:
        troubles.extend([fault.trouble])
    except OSError as fault:
        if fault.errno in OF_THE_DISK:
            raise
        troubles.add(f"the pages of {what} cannot be written: {_told_of(fault)}", place, _mend_of(fault))
    except Exception as fault:  # noqa: BLE001 - what nobody thought of must not cost the other projects their sheets
        told = f"{type(fault).__name__}: {fault}"[:200]
        faults.append(traceback.format_exc())
        message = f"a fault of the program{', not of this file,' if place else ''} stops {what} ({told})"
        troubles.add(message, place, "please report it; --traceback shows where in the program it comes from")


def _told_of(fault: OSError) -> str:
    """Where, and why; of a file that was only being laid beside its place, its folder."""
    if not fault.filename:
        return str(fault.strerror or fault)
    where = str(fault.filename2 or fault.filename)  # of a file that is put into its place, the place
    return f"'{where.rpartition('/' + LAID)[0] or where}': {fault.strerror}"


def _mend_of(fault: OSError) -> str:
    if fault.errno in {errno.EACCES, errno.EPERM}:
        return "let yourself write there, or publish elsewhere with --into"
    return "a shorter name" if fault.errno == errno.ENAMETOOLONG else "move away what is in the way there"


def pages_of(  # noqa: PLR0913, PLR0917 - as `render`
    worked: Worked,
    theme: Theme,
    pool: Makes,
    tell: Callable[[str], None] = lambda _said: None,
    codes: Sequence[Code] = (),
    others: Sequence[tuple[Worked, Sequence[Code]]] = (),
) -> Generator[None, None, Rendered]:
    """Draw and render: every file of one project, with a page of each fingerprint, and what jars in their layout.

    `others` are the project in other units, for the pages on a screen, each with its own. It yields as `render` does.
    """
    from sheetgen.draw.templates import draw  # noqa: PLC0415
    from sheetgen.render.in_units import InUnits  # noqa: PLC0415
    from sheetgen.render.pages import render  # noqa: PLC0415

    drawings = {name: draw(worked, version, worked.studio.paper) for name, version in worked.versions.items()}
    more = [
        InUnits(one, {name: draw(one, version, ()) for name, version in one.versions.items()}, own)
        for one, own in others
    ]
    return (yield from render(worked, drawings, theme, pool, tell, codes, more))


def projects_of(root: Path) -> list[str]:
    """The names of a library's projects, by their folders."""
    return [name for name, folder in design_folders(root).items() if (folder / PROJECT).is_file()]


def waived_told(outcome: Outcome) -> list[str]:
    """What the projects waive, each with the reason it gives."""
    return [f"{worked.name} waives {one.rule}: {one.reason}" for worked in outcome.worked for one in worked.waive]


def notes_told(outcome: Outcome, name: str | None = None, *, main: bool = False) -> list[str]:
    """By which program a clay is fired, where that is not its strongest, and why: of all versions, or of one."""
    told: dict[str, None] = {}
    for worked in outcome.worked:
        one = worked.version(name) if name else worked.main
        for version in [one] if name or main else worked.versions.values():
            for clay in (step.clay for step in version.steps if step.clay is not None and step.firing):
                line = f"fires {clay.name} by its program '{clay.program}', because of {clay.because}"
                shared = f"{worked.name} {line}"
                if clay.because and shared not in told:
                    told[shared if version is worked.main else f"{worked.name}, version {version.name}, {line}"] = None
    return list(told)


def said_of(worked: Worked) -> Said:
    """What is to be known of a project that is well."""
    one = Outcome(worked=[worked])
    return waived_told(one), notes_told(one)
