"""Who stops a run, or whose machine lacks something, gets one sentence and the right code, and keeps what was whole."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest

if TYPE_CHECKING:
    from collections.abc import Iterator

ROOT = Path(__file__).parents[2]


def begun(library: Any, *more: str, path: str = str(ROOT)) -> subprocess.Popen[str]:
    """A run of the program itself."""
    words = [sys.executable, "-m", "sheetgen", "publish", "--library", str(library.root), *more]
    return subprocess.Popen(
        words,
        cwd=ROOT,
        env={**os.environ, "PYTHONPATH": path},
        text=True,
        stderr=subprocess.PIPE,
        start_new_session=True,  # as a terminal has it: what is stopped there is all that was begun from there
    )


def children(pid: int) -> Iterator[int]:
    """The processes that one has begun."""
    for stat in Path("/proc").glob("[0-9]*/stat"):
        try:
            state, parent = stat.read_text("utf-8").rpartition(")")[2].split()[:2]
        except OSError:
            continue
        if int(parent) == pid and state != "Z":
            yield int(stat.parent.name)


@pytest.mark.parametrize(("number", "code"), [(signal.SIGINT, 130), (signal.SIGTERM, 143)])
def test_who_stops_a_run_waits_for_nothing_and_finds_all_whole(library: Any, number: signal.Signals, code: int) -> None:
    with begun(library) as run:
        assert run.stderr is not None
        assert run.stderr.readline().startswith("printing ")
        printers = [*children(run.pid)]
        assert printers
        before = time.monotonic()
        os.killpg(run.pid, number)
        said = run.stderr.read()
    assert time.monotonic() - before < 60  # a machine at work; to print the rest would take longer than it waits
    assert run.returncode == code
    assert "Traceback" not in said
    assert not [pid for pid in printers if Path(f"/proc/{pid}").exists()]
    assert not [path for path in library.build.rglob("*") if path.name.startswith((".lock", ".laid"))]
    assert all(path.read_bytes().startswith(b"%PDF") for path in library.build.rglob("*.pdf"))


def test_a_machine_without_pango_is_told_so_once_and_no_design_is_blamed(library: Any, tmp_path: Path) -> None:
    lacking = tmp_path / "lacking"
    (lacking / "weasyprint").mkdir(parents=True)
    (lacking / "weasyprint" / "__init__.py").write_text("raise OSError('cannot load library libpango')", "utf-8")
    with begun(library, path=os.pathsep.join([str(lacking), str(ROOT)])) as run:
        assert run.stderr is not None
        said = run.stderr.read()
    assert run.returncode == 2
    assert said.count("\n") == 1
    assert said.startswith("error: the PDFs need Pango: on Debian, apt-get install")
    assert not library.build.exists()
