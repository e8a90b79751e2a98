"""Publishes a library: only what is not as it was, each design by itself, and the index at the end."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from sheetgen.base.paths import leads_out
from sheetgen.base.spelling import slug, suggest
from sheetgen.base.trouble import CannotBe, Troubles
from sheetgen.pipeline import THEME, NotReady, Outcome, held, pages_of, work_one
from sheetgen.publish.inputs import design_folders
from sheetgen.publish.standing import standing

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence
    from pathlib import Path

    from sheetgen.base.trouble import Trouble
    from sheetgen.editions import Editions
    from sheetgen.model.project import Filed, Library
    from sheetgen.model.worked import Worked
    from sheetgen.publish.folder import Folder
    from sheetgen.publish.standing import Standing
    from sheetgen.render.pdf_pool import PdfPool
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


def publish(
    root: Path, build: Path, only: Sequence[str] = (), tell: Callable[[str], None] = lambda _said: None
) -> Outcome:
    """All of a library, or the designs named, as `published`."""
    return published(root, build, Wanted(tuple(only)), tell)


def published(root: Path, build: Path, wanted: Wanted, tell: Callable[[str], None] = lambda _said: None) -> Outcome:
    """All stages. A project in trouble does not stop the others, and its last good sheets stay.

    What stands as it was published is left alone, and what was told of it is told again.
    """
    if build.resolve().is_relative_to((root / "projects").resolve()) or root.resolve().is_relative_to(build.resolve()):
        raise NotReady(f"pages cannot be published into {build}: the library's own files stand there")
    if build.is_symlink() and build.absolute().is_relative_to(root.absolute()) and leads_out(build, root):
        raise NotReady(f"{build} is a link to a folder outside the library: name that folder itself with --into")
    outcome = Outcome()
    found = standing(root, build, wanted.designs)
    if wanted.every or wanted.part:
        found.well.clear()
        found.failed.clear()
    known = {*found.own} >= {*wanted.designs}
    if found.index and known and {*found.own} == {*found.well, *found.failed}:
        _stands(found, outcome)
        return outcome
    _Run(root, build, wanted, found, outcome, tell).run()
    return outcome


def _stands(found: Standing, outcome: Outcome) -> None:
    """Tell again what was told of what stands."""
    for told in (*found.well.values(), *found.failed.values()):
        outcome.troubles.extend(told)
    outcome.published += found.well
    outcome.failed += found.failed
    outcome.alone += found.files


class _Run:
    """One publishing, once something is to be done."""

    def __init__(  # noqa: PLR0913, PLR0917 - what it works from and tells to
        self,
        root: Path,
        build: Path,
        wanted: Wanted,
        found: Standing,
        outcome: Outcome,
        tell: Callable[[str], None],
    ) -> None:
        self.root, self.build, self.wanted, self.found = root, build, wanted, found
        self.outcome, self.tell = outcome, tell

    def run(self) -> None:
        """Read, work, print and write what is not as it was."""
        from sheetgen.editions import Editions  # noqa: PLC0415 - heavy: only where pages are made
        from sheetgen.publish.folder import Folder  # noqa: PLC0415
        from sheetgen.read.library import read_library  # noqa: PLC0415
        from sheetgen.render.pdf import NoPango  # noqa: PLC0415
        from sheetgen.render.pdf_pool import PdfPool  # noqa: PLC0415
        from sheetgen.render.theme import Theme  # noqa: PLC0415

        try:
            pool = PdfPool()
        except NoPango as missing:
            raise NotReady(str(missing)) from None
        folder, shared = Folder(self.build), Troubles()
        self.found.failed.clear()  # what else has changed may have mended them
        for name in self._called_alike(folder):
            del self.found.well[name]
        library = self.outcome.library = read_library(self.root, shared, self._asked())
        self.outcome.troubles.extend(shared)
        if library is None:
            return
        self.outcome.failed += library.failed
        _stands(self.found, self.outcome)
        theme, editions = Theme(THEME, [self.root / "themes"]), Editions(self.root, self.outcome.kept)
        whole = not any(_design_of(one) not in self.found.own for one in shared)
        with pool:
            try:
                for filed in library.projects:
                    if filed.name not in self.found.well:
                        own = [one for one in shared if _design_of(one) == filed.name]
                        _Design(self, filed, library, own, whole=whole).publish(folder, editions, theme, pool)
                for name in library.failed:
                    own = [one for one in shared if _design_of(one) == name]
                    folder.failed(name, self.found.key(name, self.root) if whole else "", own)
            finally:
                folder.keep_record()
        editions.tell_unkept(self.outcome.troubles)
        self._index(folder, theme, library)

    def _called_alike(self, folder: Folder) -> list[str]:
        """Designs that stand, and that another one is now called like: both are held back."""
        from sheetgen.read.library import one_title, titles_of  # noqa: PLC0415 - heavy

        folders = design_folders(self.root)
        now = {
            one_title(said)
            for name in self.found.own
            if name not in self.found.well
            for said in titles_of(folders[name])
        }
        titles = {name: told["entry"]["title"] for name, told in folder.record["projects"].items()}
        return [name for name in self.found.well if one_title(titles[name]) in now]

    def _asked(self) -> list[str]:
        """The designs to be read; none where all are."""
        wanted = [name for name in self.found.own if name not in self.found.well]
        unknown = [name for name in self.wanted.designs if name not in self.found.own]
        return [*wanted, *unknown] if self.found.well or self.wanted.designs else []

    def _index(self, folder: Folder, theme: Theme, library: Library) -> None:
        """The library's own pages, and away with what is no longer there."""
        from sheetgen.render import pages as rendering  # noqa: PLC0415 - heavy
        from sheetgen.work.studio import publisher  # noqa: PLC0415

        outcome = self.outcome
        if not outcome.published:
            return
        if not self.wanted.designs:
            folder.drop_missing(design_folders(self.root))
        with held(outcome.troubles, library.studio.name.place, outcome.faults):
            by = publisher(library.studio, library.labels)
            outcome.changed += folder.put_index(rendering.index(by, folder.entries(), theme))
        folder.keep_record()


class _Design:
    """One design that is published: worked, printed, written, and remembered with what was told of it."""

    def __init__(self, run: _Run, filed: Filed, library: Library, told: Sequence[Trouble], *, whole: bool) -> None:
        self.run, self.filed, self.library, self.told, self.whole = run, filed, library, told, whole

    def publish(self, folder: Folder, editions: Editions, theme: Theme, pool: PdfPool) -> None:
        """Do it; what goes wrong is a trouble of this design."""
        outcome, name = self.run.outcome, self.filed.name
        faults = len(outcome.faults)
        worked, own = work_one(self.filed, self.library, outcome.faults)
        if worked is not None:
            outcome.worked.append(worked)
            with held(own, worked.place, outcome.faults):
                self._printed(worked, own, folder, editions, theme, pool)
                outcome.published.append(name)
        outcome.troubles.extend(own)
        told = [*self.told, *own]
        if own.errors:  # a full disk is not of the files, nor is a fault of the program, which is looked at again
            outcome.failed.append(name)
            of_files = worked is None and len(outcome.faults) == faults
            folder.failed(name, self._key() if of_files else "", told)
        elif not self.run.wanted.part:
            folder.told(name, self._key(), told)
        folder.keep_record(at_last=False)

    def _printed(  # noqa: PLR0913, PLR0917 - by what it is made
        self, found: Worked, own: Troubles, folder: Folder, editions: Editions, theme: Theme, pool: PdfPool
    ) -> None:
        from sheetgen.render import pages as rendering  # noqa: PLC0415 - heavy
        from sheetgen.render.known import Before, KnownPool  # noqa: PLC0415

        run = self.run
        worked, codes = editions.of(found, own)
        before = Before(
            folder.sheets(self.filed.name),
            folder.read,
            run.found.printer,
            _wanted(worked, run.wanted),
            run.wanted.every,
        )
        known = KnownPool(pool, before)
        rendered = pages_of(worked, theme, known, run.tell, codes)
        run.outcome.changed += folder.put(rendering.entry(worked, rendered.pages), rendered.pages, known.now)
        run.outcome.alone += known.kept
        for doubt in rendered.doubts:
            own.add(str(doubt), worked.place, severity="warning")
        editions.keep(found)

    def _key(self) -> str:
        """What it is made of; empty where something of the library is in doubt, and all is to be looked at again."""
        return self.run.found.key(self.filed.name, self.run.root) if self.whole else ""


def _wanted(worked: Worked, wanted: Wanted) -> Callable[[str], bool]:
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


def _design_of(trouble: Trouble) -> str:
    """The design whose file a trouble stands in, or empty."""
    parts = trouble.place.where_used.source.name.split("/") if trouble.place else []
    return parts[1] if len(parts) > 2 and parts[0] == "projects" else ""  # noqa: PLR2004 - projects, a folder, a file
