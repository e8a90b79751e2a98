"""Publishes a library: only what is not as it was, several designs at once, and the index at the end."""

from __future__ import annotations

from contextlib import contextmanager, suppress
from functools import partial
from typing import TYPE_CHECKING

from sheetgen.base.paths import link_out, ours_of
from sheetgen.base.trouble import CannotBe, Trouble, Troubles
from sheetgen.base.turns import in_turn
from sheetgen.pipeline import THEME, NotReady, Outcome, held
from sheetgen.progress import Progress
from sheetgen.publish.alone import LOCK, alone
from sheetgen.publish.inputs import design_folders
from sheetgen.publish.record import moment_of, refuse_foreign
from sheetgen.publish.standing import standing
from sheetgen.publishing_one import Desk, Wanted, one_published

if TYPE_CHECKING:
    from collections.abc import Generator, Iterable, Iterator, Sequence
    from pathlib import Path

    from sheetgen.model.page import Entry
    from sheetgen.model.project import Library
    from sheetgen.publish.folder import Folder
    from sheetgen.publish.standing import Standing
    from sheetgen.read.library import Shared
    from sheetgen.render.pdf_pool import PdfPool
    from sheetgen.render.theme import Theme

__all__ = ["Wanted", "publish", "published"]

UNDER_WAY = 8
"""Designs whose sheets are being printed at once: enough that no process waits, and few enough to be held in memory."""


def publish(root: Path, build: Path, only: Sequence[str] = ()) -> Outcome:
    """All of a library, or the designs named, as `published`."""
    return published(root, build, Wanted(tuple(only)))


def published(root: Path, build: Path, wanted: Wanted, progress: Progress | None = None) -> Outcome:
    """All stages. A project in trouble does not stop the others, and its last good sheets stay.

    What stands as it was published is left alone, and what was told of it is told again. NotReady for a folder that is
    not to be published into, and where pages cannot be made; OSError where the folder cannot be written.
    """
    _refuse_folder(root, build)
    outcome = Outcome()
    found, recorded = None, moment_of(build)
    if not (build / LOCK).exists():
        found = _found(root, build, wanted)
        if _stands(found, wanted, outcome):
            return outcome
    with _held_alone(build) as free:
        from sheetgen.publish.folder import Folder  # noqa: PLC0415 - heavy: only where something is to be done

        if found is not None and free and found.record["projects"] and recorded == moment_of(build):
            folder = Folder(build, found.record)  # no other run was at work since it was read
        else:
            _refuse_foreign(build)
            folder = Folder(build)
            found = _found(root, build, wanted)
            if _stands(found, wanted, outcome):
                return outcome
        _Run(root, folder, wanted, found, outcome, progress or Progress()).run()
    return outcome


def _refuse_folder(root: Path, build: Path) -> None:
    """NotReady for a folder with files of the library, and for one that a link in the library puts elsewhere."""
    if build.resolve().is_relative_to((root / "projects").resolve()) or root.resolve().is_relative_to(build.resolve()):
        raise NotReady(f"pages cannot be published into {build}: the library's own files stand there")
    if (link := link_out(build, root)) is not None:
        raise NotReady(f"{link} is a link to a folder outside the library: name that folder itself with --into")
    ours = ours_of(build)
    if ours.is_symlink() and ours.parent.resolve().is_relative_to(root.resolve()):  # into what is public, it may be
        raise NotReady(f"{ours} is a link, and what is the studio's alone would go where it leads: take it out")


def _found(root: Path, build: Path, wanted: Wanted) -> Standing:
    """What stands, of what need not be made again."""
    found = standing(root, build, wanted.designs)
    if wanted.every or wanted.part:
        found.well.clear()
        found.failed.clear()
        found.unsure.clear()
        found.files = 0
    return found


def _stands(found: Standing, wanted: Wanted, outcome: Outcome) -> bool:
    """Whether all stands that is wanted; then it is told again."""
    known = {*found.own} >= {*wanted.designs}
    whole = bool(found.index and known and {*found.own} == {*found.well, *found.failed})
    if whole:
        _told_again(found, outcome)
        outcome.troubles.extend(_jarring(found.jars))
    return whole


def _told_again(found: Standing, outcome: Outcome) -> None:
    for told in (*found.well.values(), *found.failed.values()):
        outcome.troubles.extend(told)
    outcome.published += found.well
    outcome.failed += found.failed
    outcome.alone += found.files


@contextmanager
def _held_alone(build: Path) -> Iterator[bool]:
    """Have the build folder for this run alone; yields what `alone` does. One that stays empty is not left behind."""
    there = build.exists()
    build.mkdir(parents=True, exist_ok=True)
    try:
        with alone(build) as free:
            yield free
    finally:
        if not there:
            with suppress(OSError):
                build.rmdir()


def _refuse_foreign(build: Path) -> None:
    try:
        refuse_foreign(build)
    except CannotBe as fault:
        raise NotReady(f"{fault.message}; {fault.help}") from None


class _Run:
    """One publishing, once something is to be done."""

    def __init__(  # noqa: PLR0913, PLR0917 - what it works from and tells to
        self, root: Path, folder: Folder, wanted: Wanted, found: Standing, outcome: Outcome, progress: Progress
    ) -> None:
        self.root, self.folder, self.wanted, self.found = root, folder, wanted, found
        self.outcome, self.progress = outcome, progress

    def run(self) -> None:
        """Read, work, print and write what is not as it was; what prints is begun while the library is read."""
        from sheetgen.read.library import read_shared  # noqa: PLC0415 - heavy: only where pages are made
        from sheetgen.render.pdf import NoPango  # noqa: PLC0415
        from sheetgen.render.pdf_pool import PdfPool  # noqa: PLC0415
        from sheetgen.render.theme import Theme  # noqa: PLC0415
        from sheetgen.unchanged import part_alike  # noqa: PLC0415

        shared = Troubles()
        read = self._sure(shared) if self.found.unsure else None
        if read and _stands(self.found, self.wanted, self.outcome):
            self.folder.keep_record()
            return
        self.found.failed.clear()  # what else has changed may have mended them
        with PdfPool() as pool:
            part_alike(self.found, self.folder.record, self.root)
            read = read or read_shared(self.root, shared)
            library = self.outcome.library = self._designs_of(read, shared) if read else None
            try:
                pool.ready()
            except NoPango as missing:
                raise NotReady(str(missing)) from None
            self.outcome.troubles.extend(shared)
            if library is None:
                return
            self.outcome.failed += library.failed
            _told_again(self.found, self.outcome)
            theme = Theme(THEME, [self.root / "themes"])
            try:
                self._designs(library, shared, theme, pool)
                self._index(theme, library, pool)
            finally:
                self.folder.keep_record()

    def _sure(self, troubles: Troubles) -> Shared | None:
        """Read what is shared, and let the designs stand of whose items of stock none is another."""
        from sheetgen.read.library import read_shared  # noqa: PLC0415 - heavy, as above
        from sheetgen.unchanged import settle  # noqa: PLC0415

        read = read_shared(self.root, troubles)
        if read is not None:
            for name in settle(self.found, read.library.stock, troubles):
                self.folder.still(name, self.found.stock)
        return read

    def _designs(self, library: Library, shared: Troubles, theme: Theme, pool: PdfPool) -> None:
        from sheetgen.editions import Editions  # noqa: PLC0415 - heavy, as above
        from sheetgen.publish.stocked import Stocked  # noqa: PLC0415

        told: dict[str, list[Trouble]] = {}
        for one in shared:
            told.setdefault(_design_of(one), []).append(one)
        folder, editions = self.folder, Editions(self.root, self.outcome.kept)
        whole = {*told} <= {*self.found.own}
        desk = Desk(
            self.root,
            library,
            self.wanted,
            self.found,
            self.outcome,
            self.progress,
            folder,
            editions,
            theme,
            pool,
            whole,
            Stocked(library.stock),
        )
        in_turn(self._each(desk, told), UNDER_WAY)
        for name in library.failed:
            folder.failed(name, desk.key(name), told.get(name, []))
        self.outcome.published.sort()  # they were begun by their size
        editions.tell_unkept(self.outcome.troubles)

    def _each(self, desk: Desk, told: dict[str, list[Trouble]]) -> Iterator[Generator[None, None, None]]:
        """The designs that are to be published, the largest first, so that no printer is left without work at the end.

        How far they are is told of their steps, in every version: each takes its time.
        """
        designs = [filed for filed in desk.library.projects if filed.name not in self.found.well]
        sizes = {one.name: (1 + len(one.project.versions)) * max(1, len(one.project.steps)) for one in designs}
        designs.sort(key=lambda filed: -sizes[filed.name])
        ended: list[str] = []

        def told_when_done(name: str, work: Generator[None, None, None]) -> Generator[None, None, None]:
            yield from work
            ended.append(name)
            self.progress.done(sum(map(sizes.__getitem__, ended)) / sum(sizes.values()))

        for filed in designs:
            yield told_when_done(filed.name, one_published(desk, filed, told.get(filed.name, [])))

    def _designs_of(self, read: Shared, troubles: Troubles) -> Library:
        """The library with the designs that are to be made, or all."""
        from sheetgen.read.library import read_designs  # noqa: PLC0415 - heavy, as above

        wanted = [name for name in self.found.own if name not in self.found.well]
        unknown = [name for name in self.wanted.designs if name not in self.found.own]
        asked = [*wanted, *unknown] if self.found.well or self.wanted.designs else []
        return read_designs(read, troubles, asked, self.found.old_names())

    def _index(self, theme: Theme, library: Library, pool: PdfPool) -> None:
        """The library's own pages and sheets, and away with what is no longer there."""
        from sheetgen.render.catalogue import library_sheets  # noqa: PLC0415 - heavy
        from sheetgen.render.faces import face_paths  # noqa: PLC0415
        from sheetgen.render.known import Before, KnownPool  # noqa: PLC0415
        from sheetgen.render.library import Had  # noqa: PLC0415
        from sheetgen.render.library import library as own_pages  # noqa: PLC0415
        from sheetgen.render.ours import ours  # noqa: PLC0415
        from sheetgen.work.studio import publisher, sheets_of_library  # noqa: PLC0415

        outcome, folder = self.outcome, self.folder
        if not outcome.published:
            return
        if not self.wanted.designs:
            folder.drop_missing(design_folders(self.root))
        before = Before(folder.record["sheets"], folder.read, self.found.printer, always=self.wanted.every)
        known = KnownPool(pool, before)
        with held(outcome.troubles, None, outcome.faults, "the library's index"):
            by, entries = publisher(library.studio, library.labels), folder.entries()
            self._neighbours(theme, entries)
            if self.found.well and self.found.index and folder.index_stands():  # by their keys what all share is alike
                outcome.troubles.extend(_jarring(self.found.jars))
                return
            asked = sheets_of_library(library.studio)
            sheets = library_sheets(by, asked, entries, theme, known, folder.read)
            printed = tuple(page.path for page in sheets.pages)
            had = Had(folder.pages(), folder.since(), printed, known.made, self.found.shared)
            pages = [*own_pages(by, entries, theme, had), *sheets.pages]
            faces = [page for page in pages if page.path in face_paths()]
            mine = ours(by, entries, theme, folder.for_the_studio(), faces)
            outcome.changed += folder.put_index(pages, known.now, mine)
            outcome.troubles.extend(_jarring((one.sheet, one.page, one.words) for one in sheets.doubts))

    def _neighbours(self, theme: Theme, entries: Sequence[Entry]) -> None:
        """What leads from the pages of designs to others; of what has just been put the paths are told once."""
        from sheetgen.publish.neighbours import put_neighbours  # noqa: PLC0415 - heavy, as above
        from sheetgen.render.neighbours import block, neighbours  # noqa: PLC0415

        files = {name: one["files"] for name, one in self.folder.record["projects"].items()}
        put = put_neighbours(self.folder, neighbours(entries, files), partial(block, theme))
        self.outcome.changed = [*dict.fromkeys([*self.outcome.changed, *put])]


def _jarring(jars: Iterable[tuple[str, int, str]]) -> Iterator[Trouble]:
    """What jars in a sheet of the library: it is of no one file."""
    for name, page, words in jars:
        yield Trouble(f"{name}, page {page}: {words}" if page else f"{name}: {words}", None, "", "warning")


def _design_of(trouble: Trouble) -> str:
    """The design whose file a trouble stands in, or empty."""
    parts = trouble.place.where_used.source.name.split("/") if trouble.place else []
    return parts[1] if len(parts) > 2 and parts[0] == "projects" else ""  # noqa: PLR2004 - projects, a folder, a file
