"""Pages to disk: only what changed, each file whole or not at all, nothing of anybody else's touched."""

from __future__ import annotations

import os
import re
import tempfile
import time
from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any

from sheetgen.base.paths import leads_out, ours_of
from sheetgen.base.place import Place, Source
from sheetgen.base.trouble import Misplaced, Trouble
from sheetgen.model.page import Entry, Page
from sheetgen.publish.neighbours import carried_over
from sheetgen.publish.plain_file import held_in
from sheetgen.publish.record import LAID, LARGEST, LARGEST_PAGE, RECORD, as_told, read_record, record_text, stamp_of

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from sheetgen.publish.record import OfStock, Told

BEGUN = ".published.begun"
"""Paths that are written and not yet in the record, a line each; there only while a run is at work, or was killed."""
DAY = re.compile(r"\d{4}-\d\d-\d\d")
EVERY = 2.0
"""Seconds between two writings of the record: of a library of a thousand designs it is long."""


class Folder:
    """The build folder, with a record of what was published and by which project."""

    def __init__(self, root: Path, record: dict[str, Any] | None = None) -> None:
        """`record` is its record where that was just read, and no other run has been at work or was killed since."""
        self.root, self.ours = root, ours_of(root)
        self.record = read_record(root) if record is None else record
        self.written = time.monotonic()
        if record is None or (root / BEGUN).exists():
            self._take_back()
        self._before = self._listed(), self.record["index"]

    def put(
        self, entry: Entry, pages: Sequence[Page], sheets: Mapping[str, Any] | None = None, ours: Sequence[Page] = ()
    ) -> list[str]:
        """Write a project's pages; take away those it no longer has. Returns the paths that changed.

        `sheets` is remembered with them, for who asks for it later. `ours` are the pages that nobody but the studio
        sees, which lie in a folder of their own.
        """
        before = self.record["projects"].get(entry.name, {}).get("files", {})
        pages = carried_over(self, pages, before)
        now = {page.path: page.content for page in pages}
        self._announce(path for path in now if path not in before)
        changed = self.write(pages)
        for path in set(before) - set(now) - self._of_others(entry.name):
            if self._take_away(path):
                changed.append(path)
        self.record["projects"][entry.name] = {
            "files": {path: stamp_of(self.root / path, content) for path, content in now.items()},
            "ours": self._put_ours(self.record["projects"].get(entry.name, {}).get("ours", {}), ours, changed),
            "entry": entry.as_dict(),
            "sheets": dict(sheets or {}),
        }  # and no neighbours yet: they are put when all designs are
        self._unsay_index()
        return changed

    def _unsay_index(self) -> None:
        """Until it is put it may say otherwise: a run that is killed before is to leave no index that stands."""
        self.record["index"] = {path: [] for path in self.record["index"]}

    def _put_ours(self, before: Iterable[str], pages: Sequence[Page], changed: list[str]) -> dict[str, Any]:
        """Write what is the studio's alone, and take away what no longer is. Adds to the paths that changed."""
        changed += [f"{self.ours.name}/{path}" for path in self.write(pages, self.ours)]
        now = {page.path: page.content for page in pages}
        for path in {*before} - {*now}:
            if self._take_away(path, self.ours):
                changed.append(f"{self.ours.name}/{path}")
        return {path: stamp_of(self.ours / path, content) for path, content in now.items()}

    def _take_away(self, path: str, root: Path | None = None) -> bool:
        """Take a recorded file away, and its folder if nothing else is in it; whether it is one of ours."""
        target = self._inside(path, root)
        if target is not None:
            target.unlink(missing_ok=True)
            self._drop_empty(target.parent, root)
        return target is not None

    def drop_missing(self, names: Iterable[str]) -> None:
        """Take away the pages of projects whose folders are gone."""
        for name in set(self.record["projects"]) - set(names):
            others = self._of_others(name)
            for path in self.record["projects"][name].get("files", []):
                if path not in others:
                    self._take_away(path)
            for path in self.record["projects"][name].get("ours", []):
                self._take_away(path, self.ours)
            del self.record["projects"][name]
            self._unsay_index()
        for name in set(self.record["in trouble"]) - set(names):
            del self.record["in trouble"][name]

    def _of_others(self, name: str) -> set[str]:
        """The files of all projects but this one: where one was renamed, its pages lead on from another's place."""
        return {path for other, one in self.record["projects"].items() if other != name for path in one["files"]}

    def sheets(self, name: str) -> Mapping[str, Any]:
        """What is remembered of a project's printed sheets."""
        sheets = self.record["projects"].get(name, {}).get("sheets", {})
        return sheets if isinstance(sheets, dict) else {}

    def told(self, name: str, key: str, stock: OfStock, told: Told) -> None:
        """Remember from what a project was published whole, and what was told of it."""
        of_stock = stock._asdict() | {"asked": sorted(stock.asked)}
        now = {"key": key, "stock": of_stock, "told": as_told(told.whole), "checked": as_told(told.checked)}
        self.record["projects"][name] |= now | {"said": told.said, "was": list(told.was)}
        self.record["in trouble"].pop(name, None)

    def still(self, name: str, files: str) -> None:
        """Remember that a project stands although the files of the stock, by their key, are others."""
        self.record["projects"][name]["stock"]["files"] = files

    def failed(self, name: str, key: str, told: Iterable[Trouble]) -> None:
        """Remember from what a project could not be published, and why; nothing where that is not known."""
        if key:
            since = self.since().get(name) or datetime.now(UTC).date().isoformat()
            self.record["in trouble"][name] = {"key": key, "told": as_told(told), "since": since}

    def since(self) -> dict[str, str]:
        """Of every project in trouble the day since which it is, year-month-day."""
        each = ((name, one.get("since")) for name, one in self.record["in trouble"].items() if isinstance(one, dict))
        return {name: day for name, day in each if isinstance(day, str) and DAY.fullmatch(day)}

    def index_stands(self) -> bool:
        """Whether the library's own pages would be as they were put: nothing that they are made of is another.

        Of designs that is; whoever asks knows that the studio's file, the theme and the program are the same.
        """
        listed, index = self._before
        if not index or not all(index.values()) or self._listed() != listed:
            return False
        self.record["index"] = index
        return True

    def _listed(self) -> tuple[object, ...]:
        """What the library's own pages tell: entries, pages, pictures, what is the studio's, since when in trouble."""
        pictures = {
            path: one["files"].get(path)
            for one in self.record["projects"].values()
            for path in ((one.get("entry") or {}).get("picture") or {}).values()
            if isinstance(path, str)
        }
        entries = {name: one.get("entry") for name, one in self.record["projects"].items()}
        return entries, self.pages(), pictures, self.for_the_studio(), self.since()

    def put_index(
        self, pages: Sequence[Page], sheets: Mapping[str, Any] | None = None, ours: Sequence[Page] = ()
    ) -> list[str]:
        """Write the library's own pages, and take away those of before. Returns the paths that changed.

        `sheets` is remembered of those among them that were printed; `ours` are those of what is the studio's alone.
        """
        now = {page.path for page in pages}
        self._announce(now - {*self.record["index"]})
        changed = self.write(pages)
        theirs = self._of_others("")
        changed += [path for path in {*self.record["index"]} - now - theirs if self._take_away(path)]
        self.record["ours"] = self._put_ours(self.record["ours"], ours, changed)
        self.record["sheets"] = dict(sheets or {})
        self.record["index"] = {page.path: stamp_of(self.root / page.path, page.content) for page in pages}
        return changed

    def read(self, path: str) -> bytes | None:
        """What a file holds, whoever sees it; None where it is not there."""
        for root in (self.root, self.ours):
            target = self._inside(path, root)
            content = held_in(target, LARGEST_PAGE) if target is not None else None
            if content is not None:
                return content
        return None

    def entries(self) -> list[Entry]:
        """What the index lists: every project ever published and still there, in trouble now or not."""
        found = []
        for told in self.record["projects"].values():
            try:
                found.append(Entry(**told["entry"]))
            except (KeyError, TypeError):
                continue
        return sorted(found, key=lambda one: (one.title.lower(), one.name))

    def pages(self) -> dict[str, list[str]]:
        """Of every project the pages of its versions, the main one first."""
        return {
            name: sorted(path for path in one["files"] if path.startswith(f"{name}/") and path.endswith("/index.html"))
            for name, one in self.record["projects"].items()
        }

    def for_the_studio(self) -> dict[str, list[str]]:
        """Of every project the pages and sheets that the studio alone sees."""
        each = ((name, one["ours"]) for name, one in self.record["projects"].items())
        return {
            name: sorted(path for path in ours if path.endswith((".pdf", "/index.html"))) for name, ours in each if ours
        }

    def write(self, pages: Sequence[Page], root: Path | None = None) -> list[str]:
        """Write what differs from what is there. All are laid beside their places first, then renamed into them."""
        root = root or self.root
        ready: list[tuple[Path, Path, str]] = []
        try:
            for page in pages:
                target = root / page.path
                if leads_out(target.parent, root):
                    raise Misplaced(_linked(root, target.parent))
                if held_in(target, len(page.content)) == page.content:
                    continue
                target.parent.mkdir(parents=True, exist_ok=True)
                ready.append((beside(target, page.content), target, page.path))
            for laid, target, _ in ready:
                laid.replace(target)
        finally:
            for laid, _, _ in ready:
                laid.unlink(missing_ok=True)
        return [path for _, _, path in ready]

    def keep_record(self, *, at_last: bool = True) -> None:
        """Write the record down; in between only where that was not done just before."""
        if at_last or time.monotonic() - self.written > EVERY:
            self.write([Page(RECORD, record_text(self.record))])
            (self.root / BEGUN).unlink(missing_ok=True)
            self.written = time.monotonic()

    def _announce(self, paths: Iterable[str]) -> None:
        """Note what is about to be written and was not there: a run that is killed is to leave nothing behind."""
        lines = "".join(f"{path}\n" for path in paths)
        if lines:
            self.root.mkdir(parents=True, exist_ok=True)
            how = os.O_WRONLY | os.O_APPEND | os.O_CREAT | os.O_NOFOLLOW  # a link may lead anywhere
            with os.fdopen(os.open(self.root / BEGUN, how, 0o644), "a", encoding="utf-8") as file:
                file.write(lines)
                file.flush()
                os.fsync(file.fileno())

    def _take_back(self) -> None:
        """Take away what a run that was killed was laying, and what it has written and not put into the record."""
        for crumb in (one for root in (self.root, self.ours) if root.is_dir() for one in root.rglob(f"{LAID}*")):
            if crumb.is_file():
                crumb.unlink(missing_ok=True)
        begun = held_in(self.root / BEGUN, LARGEST) or b""  # there is none, as a rule
        lines = begun.decode("utf-8", "replace").splitlines(keepends=True)
        known = {*self.record["index"]}.union(*(one["files"] for one in self.record["projects"].values()))
        for path in (line.removesuffix("\n") for line in lines if line.endswith("\n")):
            if path not in known:
                self._take_away(path)
        (self.root / BEGUN).unlink(missing_ok=True)

    def _inside(self, path: str, root: Path | None = None) -> Path | None:
        """A recorded path, unless it points outside the folder."""
        root = root or self.root
        target = (root / path).parent.resolve() / Path(path).name  # of a link the link, and not what it leads to
        return target if target.is_relative_to(root.resolve()) and not target.is_dir() else None

    def _drop_empty(self, folder: Path, root: Path | None = None) -> None:
        """Take away folders in which nothing is left; of what is public the outermost stays, for it has the record."""
        stays = self.root.resolve() if root is None else root.resolve().parent
        while folder != stays and folder.is_dir() and not any(folder.iterdir()):
            folder.rmdir()
            folder = folder.parent


def _linked(root: Path, folder: Path) -> Trouble:
    """That a folder of the output is a link, or lies in one."""
    link = next(one for one in (*reversed(folder.parents), folder) if one.is_relative_to(root) and one.is_symlink())
    where = Place(Source(f"{root.name}/{link.relative_to(root)}"))
    return Trouble("the folder is a link to one outside the output", where, "take the link away")


def beside(target: Path, content: bytes, mode: int = 0o644) -> Path:
    """A finished file next to its place, on the same disk, so that a rename puts it there in one stroke."""
    handle, name = tempfile.mkstemp(prefix=LAID, dir=target.parent)
    laid = Path(name)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        laid.chmod(mode)
    except BaseException:  # a full disk, or a person who stops it: no crumb stays
        laid.unlink(missing_ok=True)
        raise
    return laid
