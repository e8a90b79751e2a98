"""Publishes one design: worked, printed, written, and remembered with what was told of it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, NamedTuple

from sheetgen.base.frozen import Frozen
from sheetgen.base.spelling import slug, suggest
from sheetgen.base.trouble import CannotBe
from sheetgen.model.status import DRAFT
from sheetgen.other_units import in_other_units
from sheetgen.pipeline import held, pages_of, said_of, work_one
from sheetgen.publish.record import OfStock, Told

if TYPE_CHECKING:
    from collections.abc import Callable, Generator, Sequence
    from pathlib import Path

    from sheetgen.base.trouble import Trouble, Troubles
    from sheetgen.editions import Editions
    from sheetgen.model.project import Filed, Library
    from sheetgen.model.worked import Worked
    from sheetgen.pipeline import Outcome
    from sheetgen.progress import Progress
    from sheetgen.publish.folder import Folder
    from sheetgen.publish.standing import Standing
    from sheetgen.publish.stocked import Stocked
    from sheetgen.render.job import Prints
    from sheetgen.render.theme import Theme


class Wanted(NamedTuple):
    """What of a library is published: designs, or all; of them one version, one sheet, or all.

    `every`: also what is as it was.
    """

    designs: Sequence[str] = ()
    version: str = ""
    sheet: str = ""
    every: bool = False

    @property
    def part(self) -> bool:
        """Whether no design is made whole."""
        return bool(self.version or self.sheet)


@dataclass(frozen=True, slots=True)
class Desk:
    """What designs are published with.

    `whole`: whether the library was read without a doubt in what is shared; where one was, all is to be looked at
    again.
    """

    root: Path
    library: Library
    wanted: Wanted
    found: Standing
    outcome: Outcome
    progress: Progress
    folder: Folder
    editions: Editions
    theme: Theme
    pool: Prints
    whole: bool
    stocked: Stocked

    def key(self, name: str) -> str:
        """What a design is made of besides stock; empty where that is in doubt."""
        return self.found.key(name, self.root) if self.whole else ""

    def whole_key(self, name: str) -> str:
        """What it is made of and all of the stock; empty where that is in doubt."""
        return self.found.whole_key(name, self.root) if self.whole else ""

    def of_stock(self, worked: Worked) -> OfStock:
        """What of the stock it hangs on."""
        return OfStock(self.found.stock, worked.asked, self.stocked.key(worked.asked))


def one_published(desk: Desk, filed: Filed, told: Sequence[Trouble]) -> Generator[None, None, None]:
    """Publish a design, of which so much was told when it was read; what goes wrong is a trouble of this design.

    It yields where it would wait for what it has begun to print. OSError where the disk is full or broken.
    """
    outcome, name, faults = desk.outcome, filed.name, list[str]()
    worked, own = work_one(filed, desk.library, faults)
    others = in_other_units(filed, desk.library, own, work_one) if worked is not None else []
    checked = [*told, *own]
    if worked is not None:
        outcome.worked.append(worked)
        with held(own, worked.place, faults):
            yield from _printed(desk, worked, others, own)
            outcome.published.append(name)
    outcome.troubles.extend(own)
    outcome.faults += faults
    if own.errors:  # a full disk is not of the files, nor is a fault of the program, which is looked at again
        outcome.failed.append(name)
        of_files = worked is None and not faults
        desk.folder.failed(name, desk.whole_key(name) if of_files else "", [*told, *own])
    elif worked is not None and not desk.wanted.part:
        desk.folder.told(
            name, desk.key(name), desk.of_stock(worked), Told([*told, *own], checked, said_of(worked), worked.was)
        )
    desk.folder.keep_record(at_last=False)


def _printed(desk: Desk, found: Worked, in_others: Sequence[Worked], own: Troubles) -> Generator[None, None, None]:
    from sheetgen.render import pages as rendering  # noqa: PLC0415 - heavy: only where pages are made
    from sheetgen.render.known import Before, KnownPool  # noqa: PLC0415

    folder, wanted = desk.folder, desk.wanted
    worked, codes = desk.editions.of(found, own)
    others = [_marked_as(one, worked) for one in in_others]
    more = [(one, desk.editions.in_units(one, own)) for one in others]
    sheets = folder.sheets(found.name)
    known = KnownPool(desk.pool, Before(sheets, folder.read, desk.found.printer, _asked(worked, wanted), wanted.every))
    rendered = yield from pages_of(worked, desk.theme, known, desk.progress.begun, codes, more)
    entry = rendering.entry(worked, rendered, desk.editions.news[found.name])
    desk.outcome.changed += folder.put(entry, rendered.pages, known.now, rendered.ours)
    desk.outcome.ours += len(rendered.ours)
    desk.outcome.alone += known.kept
    for doubt in rendered.doubts:
        own.add(str(doubt), worked.place, severity="warning")
    for one in (found, *others) if found.status != DRAFT else ():  # a draft's numbers are not anybody's yet
        desk.editions.keep(one)


def _marked_as(other: Worked, worked: Worked) -> Worked:
    """A design in other units, of whose versions the same have changed."""
    versions = {name: replace(one, changed=worked.versions[name].changed) for name, one in other.versions.items()}
    return replace(other, versions=Frozen(versions))


def _asked(worked: Worked, wanted: Wanted) -> Callable[[str], bool]:
    """Which files are to be made where they are not as they would be now.

    CannotBe for a version or a sheet that the design does not have.
    """
    from sheetgen.model.codes import folder_of  # noqa: PLC0415 - heavy

    folder = folder_of(worked, worked.version(wanted.version).name) if wanted.version else ""
    sheet = slug(wanted.sheet) if wanted.sheet else ""
    if wanted.sheet and sheet not in map(slug, worked.sheets):
        raise CannotBe(f"{worked.title} has no sheet '{wanted.sheet}'", suggest(wanted.sheet, worked.sheets))

    def asked(path: str) -> bool:
        below, _, name = path.rpartition("/")
        return folder in {"", below} and (not sheet or name.startswith(f"{sheet}-"))

    return asked
