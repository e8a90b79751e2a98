"""A run that is killed at any moment leaves every file whole, old or new, and the next one mends what it left.

Thirty moments here; 300 with: pytest tests/publish/test_killed.py --kills 300 -s
"""

from __future__ import annotations

import os
import random
import signal
import subprocess
import sys
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest

from sheetgen.model.page import neighbours_of, with_neighbours
from sheetgen.publish.record import LAID, RECORD, read_record

if TYPE_CHECKING:
    from collections.abc import Iterator

ROOT = Path(__file__).parents[2]
SEED = 20260110
# Loads all there is by publishing once, and publishes in a copy of itself whenever it is told to, until that is done or
# its time is up.
PUBLISHES = """
import os, runpy, signal, sys, time
from pathlib import Path
from sheetgen import publishing
from sheetgen.read import library; from sheetgen.render import pages; from sheetgen import editions
from sheetgen.publish.folder import Folder
import sheetgen.render.pdf_pool
sheetgen.render.pdf_pool.PdfPool = runpy.run_path("tests/library.py")["QuickPool"]
once = runpy.run_path("tests/kept.py")["compiled"]()
once.__enter__()
publishing.publish(Path(sys.argv[1]), Path(sys.argv[2]))
for line in sys.stdin:
    root, build, begins, seconds = line.rstrip("\\n").split("\\t")
    times = [time.monotonic()]
    written, writes = os.pipe()
    pid = os.fork()
    if not pid:
        write = Folder.write
        def first(*what):
            os.write(writes, b".")
            return write(*what)
        Folder.write = first
        publishing.publish(Path(root), Path(build))
        os._exit(0)
    os.close(writes)
    if begins == "write":
        os.read(written, 1)
        times.append(time.monotonic())
    if seconds:
        time.sleep(float(seconds))
        os.kill(pid, signal.SIGKILL)
    how = os.waitpid(pid, 0)[1]
    os.close(written)
    print(how, time.monotonic() - times[-1], flush=True)
"""


class Publisher:
    """Publishes a library into a folder, all of it or until it is killed."""

    def __init__(self, run: subprocess.Popen[str]) -> None:
        assert run.stdin is not None
        assert run.stdout is not None
        self.told, self.says = run.stdin, run.stdout

    def publish(self, library: Any, build: Path, since: str = "run", killed_after: float | None = None) -> float:
        """How long it took, s, since it began to `run` or to `write`; 0 where it was killed before it was done."""
        self.told.write(f"{library.root}\t{build}\t{since}\t{'' if killed_after is None else killed_after}\n")
        self.told.flush()
        how, took = self.says.readline().split()
        assert int(how) in {0, signal.SIGKILL}
        return 0 if int(how) else float(took)


@pytest.fixture
def publisher(good: Any, tmp_path: Path) -> Iterator[Publisher]:
    words = [sys.executable, "-c", PUBLISHES, str(good.root), str(tmp_path / "loaded")]
    env = {**os.environ, "PYTHONPATH": str(ROOT)}
    with subprocess.Popen(words, cwd=ROOT, env=env, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True) as run:
        yield Publisher(run)


def content(build: Path) -> dict[str, bytes]:
    """Every file but the record, which says when each was written."""
    return {str(p.relative_to(build)): p.read_bytes() for p in build.rglob("*") if p.is_file() and p.name != RECORD}


def remembered(build: Path) -> Any:
    """What the record says, but for when."""
    told = read_record(build)
    for files in (told["index"], *(one["files"] for one in told["projects"].values())):
        for stamp in files.values():
            stamp[1] = 0
    return told


def test_killed_at_random_moments_it_leaves_whole_files_and_the_next_run_mends_all(
    library: Any, publisher: Publisher, request: pytest.FixtureRequest, tmp_path: Path
) -> None:
    kills = int(request.config.getoption("--kills"))
    drops, link = (library.path(f"{name}/project.yaml").read_text("utf-8") for name in ("drops", "link"))
    pendant, aside = library.path("pendant"), tmp_path / "pendant, aside"

    def first() -> None:
        library.write("drops/project.yaml", drops)
        library.write("link/project.yaml", link)
        if aside.exists():
            aside.rename(pendant)

    def second() -> None:
        """A version goes and another comes, a design goes, and a title changes."""
        other = drops.replace("name: Long", "name: Short").replace("height: 30", "height: 20")
        library.write("drops/project.yaml", other)
        library.write("link/project.yaml", link.replace("title: Wire link", "title: Wire link, twisted"))
        pendant.rename(aside)

    states, undisturbed, took = (first, second), [], {"run": 0.0, "write": 0.0}
    publisher.publish(library, tmp_path / "before")  # its ledgers are there: what follows hangs on the files alone
    for n, state in enumerate(states):
        state()
        for since, longest in took.items():
            build = tmp_path / f"undisturbed {since} {n}"
            took[since] = max(longest, publisher.publish(library, build, since))
        undisturbed.append((content(build), remembered(build)))
    chance, build, at = random.Random(SEED), library.build, 1  # noqa: S311 - the same moments each time
    publisher.publish(library, build)
    amid = after = crumbs = 0
    for _ in range(kills):
        before, at = at, 1 - at
        (old, _), (new, _) = undisturbed[before], undisturbed[at]
        states[at]()
        since = chance.choice(["run", "write", "write"])  # to write takes a small part of the time
        after += publisher.publish(library, build, since, chance.uniform(0, took[since])) > 0
        left = content(build)
        for path, found in left.items():
            if not Path(path).name.startswith("."):
                assert found in {*either(old.get(path), new.get(path))}, f"{path} is neither old nor new"
        amid += not same(left, old) and not same(left, new)
        crumbs += any(LAID in path for path in left)
        if chance.random() < 1 / 3:  # the edit is taken back
            at = before
            states[at]()
        publisher.publish(library, build)
        files, record = content(build), remembered(build)
        assert [
            path for path in {*files} | {*undisturbed[at][0]} if files.get(path) != undisturbed[at][0].get(path)
        ] == []
        assert record == undisturbed[at][1]
    sys.stderr.write(f"\n{kills} kills: {amid} amid the writing, {after} after it, {crumbs} left a file half laid\n")
    assert amid, "no moment fell into the writing"


def either(*pages: bytes | None) -> Iterator[bytes | None]:
    """A file as it was and as it is to be; of a page of a design what leads to others is put last: it may be of either.

    It may not be there yet, as on the page of a design that stands alone.
    """
    yield from pages
    blocks = [neighbours_of(page) for page in pages if page is not None]
    for page in pages:
        if page is not None and neighbours_of(page) is not None:
            yield from (with_neighbours(page, block) for block in (b"", *blocks) if block is not None)


def same(left: dict[str, bytes], whole: dict[str, bytes]) -> bool:
    """Whether there are just these files, but for those whose names begin with a dot."""
    return {path: found for path, found in left.items() if not Path(path).name.startswith(".")} == whole
