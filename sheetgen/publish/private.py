"""Files for the studio's eyes alone: readable by their owner, whole or not at all, never among what is public."""

from __future__ import annotations

import errno
import time
from typing import TYPE_CHECKING

from sheetgen.base.paths import link_out
from sheetgen.base.trouble import CannotBe
from sheetgen.publish.folder import beside
from sheetgen.publish.record import LAID, RECORD

if TYPE_CHECKING:
    from collections.abc import Collection, Mapping
    from pathlib import Path

OWNER_ALONE = 0o600
OWNERS_FOLDER = 0o700
A_DAY = 86_400  # s


def refuse_public(into: Path, library: Path, build: Path) -> None:
    """CannotBe for a folder in which files would be published, mailed with the library or mixed with its own.

    So for one that a link in the library leads out to: what is written there, and closed, is whoever's it is.
    """
    where = into.resolve()
    handed_on = any(where.is_relative_to((library / one).resolve()) for one in ("projects", "themes"))
    if handed_on or library.resolve().is_relative_to(where):  # it would be closed to others, with the library in it
        told = f"lists with prices cannot be written into {into}: a library is handed on with what is in it"
        raise CannotBe(told, help=_BESIDE, field="into")
    public = where.is_relative_to(build.resolve()) or any((one / RECORD).exists() for one in (where, *where.parents))
    if public:
        raise CannotBe(
            f"lists with prices cannot be written into {into}: what is there is published", help=_BESIDE, field="into"
        )
    if (own := link_out(into, library)) is not None:
        raise CannotBe(f"{own} is a link to a folder outside the library", help=_ITSELF, field="into")
    if where.exists() and not where.is_dir():
        raise CannotBe(f"{into} is a file", help="a folder", field="into")


_BESIDE = "a folder beside build and projects, such as --private private"
_ITSELF = "name that folder itself with --private"


def write_private(private: Path, within: str, files: Mapping[str, bytes]) -> list[str]:
    """Write them all into a folder within the private one, both closed to others. Returns the names. OSError where not.

    `within` may be empty: the private folder itself.
    """
    into = inside(private, within)
    closed(private)
    for folder in (*reversed([one for one in into.parents if one.is_relative_to(private)][:-1]), into):
        closed(folder)
    _sweep(into)
    ready: list[tuple[Path, Path]] = []
    try:
        for name, content in files.items():
            ready.append((beside(into / name, content, OWNER_ALONE), into / name))
        for laid, target in ready:
            laid.replace(target)
    finally:
        for laid, _ in ready:
            laid.unlink(missing_ok=True)
    return list(files)


def inside(private: Path, within: str) -> Path:
    """A folder within the private one. OSError for one that a link leads out of it."""
    into = private / within
    if not into.resolve().is_relative_to(private.resolve()):
        raise OSError(errno.EXDEV, f"{within} in it is a link to elsewhere", str(into))
    return into


def closed(folder: Path) -> None:
    """Have a folder that its owner alone can look into. OSError where that cannot be."""
    folder.parent.mkdir(parents=True, exist_ok=True)
    folder.mkdir(mode=OWNERS_FOLDER, exist_ok=True)
    folder.chmod(OWNERS_FOLDER)  # one that was made by hand lets others in


def _sweep(folder: Path) -> None:
    """Take out what a run that was killed left half written; a run of today may still be at it."""
    for crumb in folder.glob(f"{LAID}*"):
        if crumb.is_file() and time.time() - crumb.lstat().st_mtime > A_DAY:
            crumb.unlink(missing_ok=True)


def drop_stale(private: Path, within: str, begins: str, kept: Collection[str]) -> None:
    """Take out what an earlier run wrote there under names that begin so, but for those that are kept.

    OSError as `inside`.
    """
    for path in inside(private, within).glob(f"{begins}*"):
        if path.name not in kept:
            path.unlink(missing_ok=True)
