"""What a design is made of, as keys: the program, what the studio shares, its stock, and the design's own folder.

Only the standard library and the base are imported here: where nothing has changed, nothing else is needed.
"""

from __future__ import annotations

import hashlib
import os
import sys
from pathlib import Path
from typing import TYPE_CHECKING

from sheetgen.base.paths import leads_out
from sheetgen.publish.plain_file import held_in

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

STOCK = "stock"
FOLDERS_OF_STUDIO = (STOCK, "kinds", "steps")
LEDGER = "ledger"
PROJECT = "project.yaml"
LARGEST = 100_000_000
"""Bytes of a file that is read whole; of a larger one, its size and its moment count."""
FACES = ("/usr/share/fonts", "/usr/local/share/fonts", "~/.fonts", "~/.local/share/fonts", "~/Library/Fonts")
PANGO = ("/usr/lib/*/libpango*.so.*", "/usr/lib*/libpango*.so.*", "/usr/local/lib/libpango*", "/opt/*/lib/libpango*")


def printer_key() -> str:
    """Of what any printed byte hangs on besides its page: program, packages, type faces, what shapes letters."""
    digest = hashlib.sha256(sys.version.encode())
    package = Path(__file__).parents[1]
    _add_files(digest, package, (path for path in _files(package) if not path.endswith((".pyc", ".pyo"))))
    for folder in map(Path, sys.path):  # of the packages their names and versions
        _add_names(digest, folder, folder.glob("*.dist-info") if folder.is_dir() else ())
    for folder in (Path(face).expanduser() for face in FACES):
        _add_names(digest, folder, (path for path in folder.rglob("*") if path.is_dir()), moments=True)
    for pattern in PANGO:
        _add_names(digest, Path("/"), Path("/").glob(pattern[1:]), moments=True)
    return digest.hexdigest()


def shared_key(root: Path) -> str:
    """Of what a library's designs share whole: themes, studio, steps, kinds."""
    digest = hashlib.sha256()
    _add_files(digest, root, _below(root / "themes", root))
    projects = root / "projects"
    if not leads_out(projects, root):
        _add_files(digest, root, (str(path) for path in projects.glob("*") if not path.is_dir()))
    for folder in (projects / name for name in FOLDERS_OF_STUDIO if name != STOCK):
        _add_files(digest, root, _below(folder, root))
    return digest.hexdigest()


def stock_key(root: Path) -> str:
    """Of the files of a library's stock, of which a design hangs on some items only."""
    digest = hashlib.sha256()
    _add_files(digest, root, _below(root / "projects" / STOCK, root))
    return digest.hexdigest()


def own_key(folder: Path) -> str:
    """Of a design's folder, without its ledgers, which publishing writes."""
    digest = hashlib.sha256()
    ledgers = str(folder / LEDGER)
    _add_files(
        digest,
        folder,
        (
            path
            for path in _below(folder, folder.parents[1])
            if path != ledgers and not path.startswith(ledgers + os.sep)
        ),
    )
    return digest.hexdigest()


def ledger_key(folder: Path) -> str:
    """Of what a design has kept of what was printed."""
    digest = hashlib.sha256()
    if os.path.lexists(folder / LEDGER):
        _add_files(digest, folder, _below(folder / LEDGER, folder.parents[1]))
    return digest.hexdigest()


def joined(*keys: str) -> str:
    """One key of several."""
    return hashlib.sha256(" ".join(keys).encode()).hexdigest()


def design_folders(root: Path) -> dict[str, Path]:
    """Every folder of a design, by its name, in order; in trouble or not."""
    projects = root / "projects"
    there = sorted(projects.iterdir()) if projects.is_dir() and not leads_out(projects, root) else []
    apart = FOLDERS_OF_STUDIO
    return {path.name: path for path in there if path.is_dir() and path.name not in apart and path.name[0] != "."}


def _below(folder: Path, root: Path) -> Iterable[str]:
    """What stands in a folder; of a link that leads out of the library the link alone."""
    return [str(folder)] if leads_out(folder, root) else _files(folder)


def _files(folder: Path) -> Iterator[str]:
    """Every file and link below a folder. Plain words and no paths: of a thousand designs they are thousands."""
    for at, folders, files in os.walk(folder):
        yield from (os.path.join(at, name) for name in files)
        yield from (path for name in folders if os.path.islink(path := os.path.join(at, name)))


def _add_files(digest: hashlib._Hash, base: Path, paths: Iterable[str]) -> None:
    home = f"{base}{os.sep}"
    for path in sorted(paths):
        if os.path.islink(path) and leads_out(Path(path), base):  # it is not read
            told = f"{os.path.basename(path)}\0{os.readlink(path)}\0"
            digest.update(told.encode("utf-8", "surrogateescape"))
        elif os.path.isfile(path):
            content = held_in(os.path.realpath(path), LARGEST)
            if content is None:  # nothing that is printed has as much in it
                found = os.stat(path)
                content = f"{found.st_size} {found.st_mtime_ns}".encode()
            digest.update(f"{path.removeprefix(home)}\0{len(content)}\0".encode("utf-8", "surrogateescape"))
            digest.update(content)


def _add_names(digest: hashlib._Hash, base: Path, paths: Iterable[Path], *, moments: bool = False) -> None:
    for path in sorted(paths):
        told = f"{path}" if base == Path("/") else f"{path.relative_to(base)}"
        moment = path.stat().st_mtime_ns if moments else ""
        digest.update(f"{told}\0{moment}\0".encode("utf-8", "surrogateescape"))
