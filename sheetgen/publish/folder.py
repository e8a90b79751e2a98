"""Pages to disk: only what changed, each file whole or not at all, nothing of anybody else's touched."""

from __future__ import annotations

import json
import os
import tempfile
from pathlib import Path
from typing import TYPE_CHECKING, Any

from sheetgen.model.page import Entry, Page

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

RECORD = ".published.json"
LAID = ".laid-"
LISTS = ("tags", "versions", "sheets")


class Folder:
    """The build folder, with a record of what was published and by which project."""

    def __init__(self, root: Path) -> None:
        self.root = root
        self.record = self._read_record()
        for crumb in root.rglob(f"{LAID}*") if root.is_dir() else ():  # of a run that was killed
            if crumb.is_file():
                crumb.unlink(missing_ok=True)

    def _read_record(self) -> dict[str, Any]:
        try:
            told = json.loads((self.root / RECORD).read_text("utf-8"))["projects"].items()
            return {"projects": {name: one for name, one in told if _is_record(one)}}
        except (OSError, ValueError, KeyError, TypeError, AttributeError, RecursionError):
            return {"projects": {}}

    def put(self, entry: Entry, pages: Sequence[Page]) -> list[str]:
        """Write a project's pages; take away those it no longer has. Returns the paths that changed."""
        changed = self.write(pages)
        now = [page.path for page in pages]
        before = self.record["projects"].get(entry.name, {}).get("files", [])
        for path in set(before) - set(now):
            target = self._inside(path)
            if target is not None:
                target.unlink(missing_ok=True)
                changed.append(path)
                self._drop_empty(target.parent)
        self.record["projects"][entry.name] = {"files": sorted(now), "entry": entry.as_dict()}
        return changed

    def drop_missing(self, names: Iterable[str]) -> None:
        """Take away the pages of projects whose folders are gone."""
        for name in set(self.record["projects"]) - set(names):
            for path in self.record["projects"][name].get("files", []):
                target = self._inside(path)
                if target is not None:
                    target.unlink(missing_ok=True)
                    self._drop_empty(target.parent)
            del self.record["projects"][name]

    def entries(self) -> list[Entry]:
        """What the index lists: every project ever published and still there, in trouble now or not."""
        found = []
        for told in self.record["projects"].values():
            try:
                found.append(Entry(**told["entry"]))
            except (KeyError, TypeError):
                continue
        return sorted(found, key=lambda e: e.title.lower())

    def write(self, pages: Sequence[Page]) -> list[str]:
        """Write what differs from what is there. All are laid beside their places first, then renamed into them."""
        ready: list[tuple[Path, Path, str]] = []
        try:
            for page in pages:
                target = self.root / page.path
                if target.is_file() and target.read_bytes() == page.content:
                    continue
                target.parent.mkdir(parents=True, exist_ok=True)
                ready.append((beside(target, page.content), target, page.path))
            for laid, target, _ in ready:
                laid.replace(target)
        finally:
            for laid, _, _ in ready:
                laid.unlink(missing_ok=True)
        return [path for _, _, path in ready]

    def keep_record(self) -> None:
        """Write the record down."""
        content = json.dumps(self.record, ensure_ascii=False, indent=1, sort_keys=True) + "\n"
        self.write([Page(RECORD, content.encode())])

    def _inside(self, path: str) -> Path | None:
        """A recorded path, unless it points outside the folder."""
        target = (self.root / path).resolve()
        return target if target.is_relative_to(self.root.resolve()) and not target.is_dir() else None

    def _drop_empty(self, folder: Path) -> None:
        while folder != self.root.resolve() and folder.is_dir() and not any(folder.iterdir()):
            folder.rmdir()
            folder = folder.parent


def _is_record(one: Any) -> bool:  # noqa: ANN401 - whatever a file held
    """Whether a record of a project is as it was written, and not changed by a hand."""
    files, entry = one["files"], one["entry"]
    words = [*files, *(entry[key] for key in ("name", "title"))]
    plain = all(isinstance(word, str) and word and word.isprintable() for word in words)
    return isinstance(files, list) and plain and all(isinstance(entry[key], list) for key in LISTS)


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
