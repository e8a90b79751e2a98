"""One edit of a library, held against everything anew without making everything anew.

Of an edit two things are asked. Which designs are left alone: each must be worked from the edited files to what it was
worked to when it was published, and pages are made of nothing else. And what of a design is made: all its pages are
caught before they are written, and each sheet as it is asked for, whether it is then taken from before or not; a file
that stands must be what was caught. Of the designs that are not left alone one is published, the smallest of those that
are worked otherwise. Where something is not as it should be, the whole way decides (`differences` in tests/edits.py).
"""

from __future__ import annotations

import hashlib
import os
import re
import shutil
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any
from unittest import mock

from sheetgen import pipeline, publishing
from sheetgen.base.cases import Cases
from sheetgen.base.trouble import Troubles
from sheetgen.editions import Editions
from sheetgen.model.page import neighbours_of, with_neighbours
from sheetgen.publish.folder import Folder
from sheetgen.publish.record import RECORD
from sheetgen.publish.standing import standing
from sheetgen.read.library import read_shared
from sheetgen.render.known import KnownPool
from sheetgen.render.neighbours import block, neighbours
from sheetgen.render.theme import Theme
from sheetgen.unchanged import settle

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Sequence
    from pathlib import Path

    from sheetgen.pipeline import Outcome
    from sheetgen.render.job import Job, Printout

OF_A_DESIGN = re.compile(r"projects/([^/]+)/project\.yaml")


@dataclass
class Base:
    """A library as it was published, and what each of its designs was worked to."""

    root: Path
    worked: dict[str, str] = field(init=False)
    small: list[str] = field(init=False)

    def __post_init__(self) -> None:
        outcome = pipeline.work_through(self.root)
        assert not outcome.troubles.errors, outcome.troubles
        self.worked = _told_of(outcome, self.root)
        self.small = sorted(self.worked, key=lambda name: len(outcome.worked[[*self.worked].index(name)].main.steps))

    def copy(self, to: Path) -> Path:
        """The library once more; its pages are the same files until they are put anew."""
        shutil.copytree(self.root, to, ignore=shutil.ignore_patterns("build"))
        shutil.copytree(self.root / "build", to / "build", copy_function=os.link)
        return to


@dataclass
class Made:
    """What a publishing made: files, whether written or not, and each sheet that it asked for."""

    files: dict[str, bytes] = field(default_factory=dict)
    sheets: list[tuple[Job, list[Printout]]] = field(default_factory=list)


def doubts(base: Base, edit: Any, folder: Path, printout: Callable[..., Printout]) -> list[str]:
    """What of an edit is not surely as everything anew would be; `folder` is empty yet."""
    root = base.copy(folder / "library")
    edit.put(root)
    own = OF_A_DESIGN.fullmatch(edit.path)
    worked = pipeline.work_through(root, [own[1]] if own and own[1] in base.worked else [])
    now, alone = _told_of(worked, root), left_alone(root)
    out = [f"{name} is left alone, and is worked otherwise" for name in alone if now.get(name, "") != base.worked[name]]
    if own:
        out = [line for line in out if line.startswith(f"{own[1]} ")]
    rest = [name for name in base.small if name not in alone]
    if own and rest != [own[1]]:
        out.append(f"made again are {rest}")
    if not rest:
        return out
    one = min(rest, key=lambda name: now.get(name) in {None, base.worked[name]})
    return out + list(_of_one(root, one, now, printout))


def left_alone(root: Path) -> list[str]:
    """The designs that a publishing would leave as they are."""
    found, troubles = standing(root, root / "build"), Troubles()
    if found.unsure and (read := read_shared(root, troubles)) is not None:
        settle(found, read.library.stock, troubles)
    return [*found.well, *found.failed]


def _of_one(root: Path, one: str, now: dict[str, str], printout: Callable[..., Printout]) -> Iterator[str]:
    """One design published, and held against the same worked by itself."""
    build = root / "build"
    before = _files(build)
    fresh = pipeline.work_through(root, [one])
    for worked in fresh.worked:
        Editions(root, []).of(worked, fresh.troubles)  # what has changed since its ledger was kept
    known, made = caught(root, one)
    after = _files(build)
    if known.published == [one] and fresh.library is not None and not fresh.failed:
        if not {*_told_of(known, root).items()} == {*_told_of(fresh, root).items()} <= {*now.items()}:
            yield f"{one} is worked otherwise when it is published"
        for path in {*made.files, *(path for path in after if path.startswith(f"{one}/"))}:
            if _alone(after.get(path)) != _alone(made.files.get(path)):
                yield f"{path} is not what was made"
        for job, outs in made.sheets:
            if [printout(job, paper) for paper in job.papers] != outs:
                yield f"{job.papers[0].name} is not as it was asked for"
    elif known.published or (fresh.library is not None and fresh.failed != known.failed):  # by its page, it may be
        yield f"published {known.published}, failed {known.failed}; worked by itself, failed {fresh.failed}"
    yield from _led_astray(root)
    aside = {path for path in {*before, *after} if before.get(path) != after.get(path)}
    if aside and not known.published:
        yield f"in trouble, and yet otherwise: {sorted(aside)[:3]}"
    if missed := {*_said(fresh)} - {*_said(known)}:
        yield f"not told: {sorted(missed)}"
    jars = [*_jars(made)]
    if more := [line for line in _said(known) if line not in _said(fresh) and not any(jar in line for jar in jars)]:
        yield f"told by nobody else: {more}"


def _alone(page: bytes | None) -> bytes | None:
    """A page without what leads from it to other designs, which is put later."""
    return page if page is None or neighbours_of(page) is None else with_neighbours(page, b"")


def _led_astray(root: Path) -> Iterator[str]:
    """Pages that do not lead to the designs that stand beside theirs by the record."""
    folder, theme = Folder(root / "build"), Theme("plain", [root / "themes"])
    files = {name: one["files"] for name, one in folder.record["projects"].items()}
    for pages in neighbours(folder.entries(), files).values():
        for path, one in pages.items():
            if neighbours_of((root / "build" / path).read_bytes()) != block(theme, one):
                yield f"{path} leads to other designs than stand beside it"


def caught(root: Path, one: str) -> tuple[Outcome, Made]:
    """Publish a design, and catch what it is made of."""
    made, put, printed = Made(), Folder.put, KnownPool.printed

    def putting(self: Folder, entry: Any, pages: Sequence[Any], *more: Any) -> list[str]:
        made.files.update({page.path: page.content for page in pages})
        return put(self, entry, pages, *more)

    def printing(self: KnownPool, jobs: Sequence[Job]) -> Iterator[list[Printout]]:
        for job, outs in zip(jobs, printed(self, jobs), strict=True):
            made.sheets.append((job, outs))
            yield outs

    with mock.patch.object(Folder, "put", putting), mock.patch.object(KnownPool, "printed", printing):
        return publishing.publish(root, root / "build", [one]), made


def _jars(made: Made) -> Iterator[str]:
    for _, outs in made.sheets:
        for out in outs:
            yield from (one.words for one in out.warnings)


def _said(outcome: Outcome) -> list[str]:
    return [str(one) for one in outcome.troubles.gathered()]


def _files(build: Path) -> dict[str, bytes]:
    return {str(p.relative_to(build)): p.read_bytes() for p in build.rglob("*") if p.is_file() and p.name != RECORD}


def _told_of(outcome: Outcome, root: Path) -> dict[str, str]:
    """Of each design a digest of all that it was worked to, to its last number."""

    def cases(self: Cases) -> str:
        return f"Cases({self.usual!r}, {self.keys!r}, {self.ends!r})"

    with mock.patch.object(Cases, "__repr__", cases):
        return {one.name: _digest(repr(one).replace(str(root), "")) for one in outcome.worked}


def _digest(told: str) -> str:
    return hashlib.sha256(told.encode("utf-8", "surrogatepass")).hexdigest()
