"""One run at a time in a folder: the next waits, is told in a sentence, and is never kept out by one that has died."""

from __future__ import annotations

import fcntl
import os
import signal
import subprocess
import sys
import threading
import time
from pathlib import Path

import pytest

from sheetgen.publish import alone as module
from sheetgen.publish.alone import LOCK, alone

ROOT = Path(__file__).parents[2]
# Reads a number, thinks, writes the next one: without the lock most of the runs would write the same.
COUNTS = """
import sys, time
from pathlib import Path
from sheetgen.publish.alone import alone
folder = Path(sys.argv[1])
for _ in range(4):
    with alone(folder):
        many = int((folder / "many").read_text())
        time.sleep(0.01)
        (folder / "many").write_text(str(many + 1))
"""
STAYS = """
import sys, time
from pathlib import Path
from sheetgen.publish.alone import alone
with alone(Path(sys.argv[1])):
    print("in", flush=True)
    time.sleep(60)
"""


def begun(program: str, folder: Path, out: int | None = None) -> subprocess.Popen[str]:
    words = [sys.executable, "-c", program, str(folder)]
    return subprocess.Popen(words, cwd=ROOT, env={**os.environ, "PYTHONPATH": str(ROOT)}, stdout=out, text=True)


def test_five_runs_at_once_lose_nothing_of_what_each_adds(tmp_path: Path) -> None:
    (tmp_path / "many").write_text("0")
    runs = [begun(COUNTS, tmp_path) for _ in range(5)]
    assert [run.wait(60) for run in runs] == [0] * 5
    assert (tmp_path / "many").read_text() == "20"
    assert [path.name for path in tmp_path.iterdir()] == ["many"]  # no lock is left in what is published


def test_a_second_run_waits_until_the_first_has_ended(tmp_path: Path) -> None:
    first, order = alone(tmp_path), []
    first.__enter__()

    def ends() -> None:
        order.append("first")
        first.__exit__(None, None, None)

    threading.Timer(0.3, ends).start()
    with alone(tmp_path):
        order.append("second")
    assert order == ["first", "second"]


def test_a_second_run_that_waits_in_vain_is_told_and_the_first_is_left_alone(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(module, "WAIT", 0.2)
    with alone(tmp_path):
        before = time.monotonic()
        for _ in range(2):
            with pytest.raises(OSError, match=r"another run is at work there; start this one again") as told:
                alone(tmp_path).__enter__()
            assert told.value.strerror
        assert 0.4 <= time.monotonic() - before < 5
        assert (tmp_path / LOCK).exists()
    with alone(tmp_path):
        assert (tmp_path / LOCK).stat().st_mode & 0o777 == 0o600


def test_a_run_that_was_killed_keeps_nobody_out(tmp_path: Path) -> None:
    with begun(STAYS, tmp_path, subprocess.PIPE) as run:
        assert run.stdout is not None
        assert run.stdout.readline() == "in\n"
        run.send_signal(signal.SIGKILL)
    assert (tmp_path / LOCK).exists()
    with alone(tmp_path):
        pass
    assert not (tmp_path / LOCK).exists()


def test_the_file_of_a_run_that_ends_just_then_is_no_lock(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The second has it open when the first takes it out: a third would make one anew, and be in beside the second."""
    first, flock = alone(tmp_path), fcntl.flock
    first.__enter__()

    def just_then(opened: int, how: int) -> None:
        monkeypatch.setattr(fcntl, "flock", flock)
        first.__exit__(None, None, None)
        flock(opened, how)

    monkeypatch.setattr(fcntl, "flock", just_then)
    monkeypatch.setattr(module, "WAIT", 0.5)
    with alone(tmp_path), pytest.raises(OSError, match="another run"):
        alone(tmp_path).__enter__()


def test_a_run_that_fails_lets_the_folder_go(tmp_path: Path) -> None:
    def fails() -> None:
        with alone(tmp_path):
            raise ValueError("the disk is full")

    with pytest.raises(ValueError, match="full"):
        fails()
    with alone(tmp_path):
        pass


def test_a_system_without_locks_is_told_plainly(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "fcntl", None)
    with pytest.raises(OSError, match="this system has no file locks"):
        alone(tmp_path).__enter__()
    assert not list(tmp_path.iterdir())


def test_a_lock_that_is_a_link_to_another_file_is_not_followed(tmp_path: Path) -> None:
    (tmp_path / LOCK).symlink_to(tmp_path / "elsewhere")
    with pytest.raises(OSError, match="is a link"):
        alone(tmp_path).__enter__()
    assert not (tmp_path / "elsewhere").exists()
