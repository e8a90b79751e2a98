"""Attacks as files: each laid into a small library and run by itself, with limits, in a process that is watched.

A file of an attack has lines of what is meant, and then what is laid into the library:

    tries: what it tries, in one sentence
    run: publish                              the command, `check` where none is named
    told: a word of the trouble               none for an honest one, which must be well
    at: projects/pendant/project.yaml:7       where it is told
    ends: 2                                   the exit code, where it is not that of troubles in the files
    shows: a word                             what the command, or a published page, shows
    hides: a word                             what neither shows
    --- change projects/pendant/project.yaml
    the words there
    ===
    the words instead
    --- write projects/stock/more.yaml        a file with these words; `write-hex` one of these bytes
    --- link projects/pendant -> OUTSIDE      a link, a `fifo`, a `folder`
    --- large build/.published.json -> 9000   a file of so many bytes of nothing, which take no room on the disk
    --- pack season.xlsx                      a workbook of these lines, with commas between the cells, and
    order,design,count                        parts of it that are otherwise, each after its name
    === xl/styles.xml

`⟦words × 9000⟧` stands for the words so often, and `{n}` in them for the number. OUTSIDE is a folder beside the
library, with files that nobody may read.
"""

from __future__ import annotations

import contextlib
import gc
import json
import os
import re
import resource
import signal
import sys
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING, Any
from unittest import mock

from click.testing import CliRunner

from sheetgen.cli import main
from sheetgen.render import pdf_pool
from sheetgen.runs import press
from tests import workbooks
from tests.hanging import SECONDS

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

BYTES = 500_000_000
CANARY = "canary-of-nobody"
OFTEN = re.compile(r"⟦(.*?) × (\d+)⟧", re.DOTALL)
PIECE = re.compile(r"^--- ", re.MULTILINE)
MOVING = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]")
"""What would move a terminal about, or turn its lines."""
OPENS = {"open", "os.listdir", "os.scandir", "os.rename", "os.remove", "os.mkdir", "os.link", "os.chmod", "os.truncate"}
FOLLOWS = {"open", "os.listdir", "os.scandir", "os.chmod", "os.truncate"}
CALLS = {"socket.connect", "socket.getaddrinfo", "socket.bind", "subprocess.Popen", "os.system", "os.exec"}


@dataclass(frozen=True)
class Attack:
    """One file of an attack, taken apart."""

    meant: dict[str, str]
    pieces: list[tuple[str, str]]

    @classmethod
    def read(cls, path: Path) -> Attack:
        """The attack of a file."""
        head, *pieces = PIECE.split(path.read_text("utf-8"))
        meant = dict(line.split(": ", 1) for line in head.splitlines() if line.strip())
        assert meant.keys() <= {"tries", "run", "told", "at", "shows", "hides", "ends"}, path
        return cls(meant, [tuple(piece.split("\n", 1)) for piece in pieces])

    def lay(self, root: Path, outside: Path) -> None:
        """Put its files into a library."""
        for how, text in self.pieces:
            deed, _, rest = how.replace("OUTSIDE", str(outside)).partition(" ")
            name, _, aim = rest.partition(" -> ")
            path = root / json.loads(f'"{name}"')
            path.parent.mkdir(parents=True, exist_ok=True)
            _lay(deed, path, aim, often(text))


def _lay(deed: str, path: Path, aim: str, text: str) -> None:
    match deed:
        case "write":
            path.unlink(missing_ok=True)
            path.write_text(text, "utf-8")
        case "write-hex":
            path.write_bytes(bytes.fromhex(text))
        case "change":
            old, new = text.removesuffix("\n").split("\n===\n")
            whole = path.read_text("utf-8")
            assert whole.count(old) == 1, old
            path.write_text(whole.replace(old, new), "utf-8")
        case "link":
            if path.is_dir() and not path.is_symlink():
                path.rename(path.with_name(f".{path.name}"))
            path.unlink(missing_ok=True)
            path.symlink_to(aim)
        case "fifo":
            path.unlink(missing_ok=True)
            os.mkfifo(path)
        case "folder":
            path.mkdir()
        case "large":
            with path.open("wb") as file:
                file.truncate(int(aim))
        case "pack":
            table, *more = re.split("^=== ", text, flags=re.MULTILINE)
            rows: workbooks.Cells = [[*line.split(",")] for line in table.splitlines()]
            path.write_bytes(workbooks.packed(workbooks.parts(rows) | dict(one.split("\n", 1) for one in more)))
        case _:
            raise AssertionError(deed)


def often(text: str) -> str:
    """Words with what stands in them many times written out."""
    return OFTEN.sub(lambda one: "".join(one[1].replace("{n}", str(n)) for n in range(int(one[2]))), text)


@dataclass
class Ran:
    """How a command ended: its exit code, or the signal that stopped it; its lines; what it did outside."""

    code: int | None = None
    stopped: int = 0
    said: str = ""
    outside: list[str] = field(default_factory=list)
    pages: dict[str, str] = field(default_factory=dict)


def ran(words: list[str], root: Path, outside: Path, ready: Callable[[], object]) -> Ran:
    """Run a command in a process of its own, within the limits, watched for what it opens."""
    told = root.parent / "ran.json"
    child = os.fork()
    if not child:
        with contextlib.suppress(BaseException):
            _as_child(words, root, outside, told, ready)
        os._exit(0)
    _, status = os.waitpid(child, 0)
    stopped = os.WTERMSIG(status) if os.WIFSIGNALED(status) else 0
    if not told.exists():
        return Ran(stopped=stopped or signal.SIGABRT)
    return Ran(stopped=stopped, **json.loads(told.read_text("utf-8")), pages=dict(_pages(root)))


def warmed(root: Path, libraries: Any) -> None:
    """Run every command once on a library that is well, so that what they load is loaded before a process is begun."""
    library = libraries.make(root)
    with mock.patch.object(pdf_pool, "PdfPool", libraries.QuickPool):
        for command in ("check", "publish"):
            assert CliRunner().invoke(main, [command, "--library", str(library.root)]).exit_code == 0


def _as_child(words: list[str], root: Path, outside: Path, told: Path, ready: Callable[[], object]) -> None:
    ready()
    gc.freeze()  # what the tests hold is not gone through for waste
    found: list[str] = []
    watched = [True]

    def watch(event: str, args: tuple[Any, ...]) -> None:
        if watched[0] and event in CALLS:
            found.append(f"{event} {args!r}")
        elif watched[0] and event in OPENS:
            paths = [os.fsdecode(path) for path in args[:2] if isinstance(path, str | bytes)]
            follows = event in FOLLOWS and not (event == "open" and args[2] & os.O_NOFOLLOW)
            ends = os.path.realpath if follows else _itself
            found.extend(f"{event} {path}" for path in paths if ends(path).startswith(str(outside)))

    sys.addaudithook(watch)
    here = _bytes_now()
    resource.setrlimit(resource.RLIMIT_AS, (here + BYTES, here + BYTES))
    resource.setrlimit(resource.RLIMIT_CPU, (SECONDS, SECONDS + 1))
    os.chdir(root)
    result = CliRunner().invoke(main, words, catch_exceptions=True)
    watched[0] = False
    fault = result.exception
    odd = f"{type(fault).__name__}: {fault}" if fault and not isinstance(fault, SystemExit) else ""
    told.write_text(json.dumps({"code": result.exit_code, "said": result.output + odd, "outside": found}), "utf-8")


def _itself(path: str) -> str:
    """Where a path stands, a link at its end not followed."""
    return str(Path(os.path.realpath(Path(path).parent)) / Path(path).name)


def _bytes_now() -> int:
    return int(Path("/proc/self/statm").read_text("ascii").split()[0]) * resource.getpagesize()


def _pages(root: Path) -> Iterator[tuple[str, str]]:
    build = root / "build"
    for path in sorted(build.rglob("*")) if build.is_dir() else ():
        if path.suffix in {".html", ".json", ".pdf"} and not path.is_symlink() and 0 < path.stat().st_size < BYTES:
            yield str(path.relative_to(build)), path.read_text("utf-8", "replace")


def looked_at(attack: Attack, tmp_path: Path, libraries: Any) -> None:
    """Run an attack, and hold what came of it against what is meant."""
    root, outside = tmp_path / "library", tmp_path / "outside"
    libraries.make(root)
    _outside(outside, libraries)
    before = _stood(outside)
    attack.lay(root, outside)

    def ready() -> None:
        for asks in (pdf_pool, press):  # in the child alone: printers that another test has begun do not answer there
            vars(asks)["PdfPool"] = libraries.QuickPool

    result = ran(attack.meant.get("run", "check").split(), root, outside, ready)
    shown = "\n".join([result.said, *result.pages.values()])
    start = result.said[:3000]
    assert not result.stopped, f"stopped by signal {result.stopped}: past {SECONDS} s or {BYTES} bytes"
    assert "fault of the program" not in result.said, start
    assert "Traceback" not in result.said, start
    assert not MOVING.search(result.said), start
    assert not result.outside, result.outside
    assert CANARY not in shown, start
    assert _stood(outside) == before, "a file outside was changed"
    wanted = [attack.meant[one] for one in ("told", "at") if one in attack.meant]
    assert all(one in result.said for one in wanted), start
    assert result.code == int(attack.meant.get("ends", "1" if "told" in attack.meant else "0")), start
    assert attack.meant.get("shows", "") in shown, start
    assert "hides" not in attack.meant or attack.meant["hides"] not in shown, start


def _outside(outside: Path, libraries: Any) -> None:
    """What lies beside the library: a folder of a design, stock, a theme, each with the word that nobody may see."""
    outside.mkdir()
    for name, text in libraries.FILES.items():
        path = outside / "projects" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(f"# {CANARY}\n{text.replace('Round', CANARY)}", "utf-8")
    (outside / "secret.html.j2").write_text(CANARY, "utf-8")
    (outside / "secret.css").write_text(f"/* {CANARY} */", "utf-8")
    (outside / "empty").mkdir()


def _stood(outside: Path) -> dict[str, tuple[bytes, int]]:
    return {str(p): (p.read_bytes() if p.is_file() else b"", p.lstat().st_mtime_ns) for p in outside.rglob("*")}
