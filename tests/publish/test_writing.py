"""What cannot be written is told in one true sentence, harms nothing that stands, and the next run mends it."""

from __future__ import annotations

import errno
import json
import os
import shutil
import threading
from pathlib import Path
from typing import Any

import pytest

from sheetgen.cli import TROUBLES, USAGE, WELL
from sheetgen.publish import alone as lock
from sheetgen.publish.alone import LOCK, alone
from sheetgen.publish.folder import BEGUN
from sheetgen.publish.record import RECORD

pytestmark = pytest.mark.usefixtures("quick")


def content(build: Path) -> dict[str, bytes]:
    return {str(p.relative_to(build)): p.read_bytes() for p in build.rglob("*") if p.is_file() and p.name != RECORD}


def fails(monkeypatch: pytest.MonkeyPatch, number: int, where: str) -> None:
    """From now on some files cannot be written."""
    write = os.fsync  # the last step before a file is whole

    def no(handle: int) -> None:
        if where in str(Path(f"/proc/self/fd/{handle}").readlink()):
            raise OSError(number, os.strerror(number))
        write(handle)

    monkeypatch.setattr("sheetgen.publish.folder.os.fsync", no)


@pytest.fixture(scope="module")
def undisturbed(good: Any) -> dict[str, bytes]:
    """What is published where nothing is in the way."""
    return content(good.build)


@pytest.mark.parametrize(
    ("number", "told"),
    [
        (errno.ENOSPC, "No space left on device; make room on the disk and publish again"),
        (errno.EDQUOT, "Disk quota exceeded; make room on the disk and publish again"),
        (errno.EROFS, "Read-only file system"),
        (errno.EIO, "Input/output error"),
    ],
)
@pytest.mark.parametrize("where", ["/pendant/.laid", "/drops/.laid", "/build/.laid", f"/build/{BEGUN}"])
def test_a_full_or_broken_disk_is_told_once_and_the_next_run_mends_it(  # noqa: PLR0917 - as above
    run: Any, library: Any, undisturbed: dict[str, bytes], number: int, told: str, where: str
) -> None:
    with pytest.MonkeyPatch.context() as broken:
        fails(broken, number, where)
        result = run("publish")
    assert result.exit_code == USAGE
    [said] = [line for line in result.stderr.splitlines() if not line.startswith("printing ")]
    assert said == f"error: {library.build} cannot be written: {told}"
    assert not [path for path in library.build.rglob("*") if path.name.startswith((".laid", LOCK))]
    assert run("publish").exit_code == WELL
    assert content(library.build) == undisturbed


def test_a_folder_of_one_design_that_cannot_be_written_is_told_of_it_alone(
    run: Any, library: Any, undisturbed: dict[str, bytes]
) -> None:
    with pytest.MonkeyPatch.context() as broken:
        fails(broken, errno.EACCES, "/drops/")
        result = run("publish")
    assert result.exit_code == TROUBLES
    assert (
        "drops/project.yaml:1:8: error: the pages of this project cannot be written: Permission denied" in result.stderr
    )
    assert "let yourself write there" in result.stderr
    assert "published 2 projects" in result.stdout
    assert run("publish").exit_code == WELL
    assert content(library.build) == undisturbed


def test_an_index_that_something_is_in_the_way_of_is_told_of_no_design_and_comes_when_it_is_gone(
    run: Any, library: Any, undisturbed: dict[str, bytes]
) -> None:
    (library.build / "index.html").mkdir(parents=True)
    result = run("publish")
    assert result.exit_code == USAGE
    told = [line for line in result.stderr.splitlines() if "error" in line]
    assert told == [
        f"error: the pages of the library's index cannot be written: '{library.build}/index.html': Is a directory"
    ]
    assert "published 3 projects" in result.stdout
    (library.build / "index.html").rmdir()
    assert run("publish").exit_code == WELL
    assert content(library.build) == undisturbed


def test_a_fault_of_the_program_at_the_index_is_told_of_no_design(
    run: Any, undisturbed: dict[str, bytes], library: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    with monkeypatch.context() as broken:
        broken.setattr("sheetgen.render.library.library", lambda *_what: 1 / 0)
        result = run("publish")
    told = [line for line in result.stderr.splitlines() if "error" in line]
    assert told == ["error: a fault of the program stops the library's index (ZeroDivisionError: division by zero)"]
    assert run("publish").exit_code == WELL
    assert content(library.build) == undisturbed


FOREIGN = (
    '{"posts": ["a", "b"]}',
    '{"projects": ["a"], "name": "another tool"}',
    '["a", "b"]',
    "published: yes",
    '"a word"',
    "\\ufeff{}",
)


@pytest.mark.parametrize("foreign", FOREIGN)
def test_another_program_s_record_is_refused_and_nothing_is_touched(run: Any, library: Any, foreign: str) -> None:
    library.build.mkdir()
    for name in (RECORD, ".laid-out", "index.html"):
        (library.build / name).write_text(foreign, "utf-8")
    before = {path: path.read_bytes() for path in library.build.iterdir()}
    result = run("publish")
    assert result.exit_code == USAGE
    assert result.stderr == (
        f"error: {library.build / RECORD} is not a record of what was published here, and stays as it is, with all "
        "that is there; publish into another folder, or move that file away\n"
    )
    assert {path: path.read_bytes() for path in library.build.iterdir()} == before


def test_a_record_that_is_a_link_or_a_folder_is_refused_too(run: Any, library: Any, tmp_path: Path) -> None:
    library.build.mkdir()
    (tmp_path / "mine.json").write_text("{}", "utf-8")
    (library.build / RECORD).symlink_to(tmp_path / "mine.json")
    assert run("publish").exit_code == USAGE
    (library.build / RECORD).unlink()
    (library.build / RECORD).mkdir()
    assert run("publish").exit_code == USAGE
    assert [path.name for path in library.build.iterdir()] == [RECORD]


@pytest.mark.parametrize("there", [True, False])
def test_what_is_announced_is_written_through_no_link(run: Any, library: Any, tmp_path: Path, *, there: bool) -> None:
    library.build.mkdir()
    mine = tmp_path / "mine.txt"
    if there:
        mine.write_text("mine", "utf-8")
    (library.build / BEGUN).symlink_to(mine)
    assert run("publish").exit_code == WELL
    assert (mine.read_text("utf-8") if mine.exists() else None) == ("mine" if there else None)
    assert not (library.build / BEGUN).is_symlink()


def test_a_second_run_in_one_folder_is_told_in_a_sentence_and_writes_nothing(
    run: Any, library: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(lock, "WAIT", 0.2)
    library.build.mkdir()
    with alone(library.build):
        result = run("publish")
        assert [path.name for path in library.build.iterdir()] == [LOCK]
    assert result.exit_code == USAGE
    said = "another run is at work there; start this one again when it has ended"
    assert result.stderr == f"error: {library.build} cannot be written: {said}\n"


def test_two_runs_at_once_lose_no_design_of_each_other(library: Any, undisturbed: dict[str, bytes]) -> None:
    runs = [threading.Thread(target=library.publish, args=(name,)) for name in ("drops", "link", "pendant")]
    for one in runs:
        one.start()
    for one in runs:
        one.join()
    assert content(library.build) == undisturbed
    assert sorted(json.loads((library.build / RECORD).read_text("utf-8"))["projects"]) == ["drops", "link", "pendant"]


def test_a_design_that_a_killed_run_wrote_and_nobody_wants_any_more_is_taken_away(library: Any) -> None:
    """Its record was not written: only what was announced tells whose the pages are."""

    def killed(*_what: object, **_more: object) -> None:
        raise KeyboardInterrupt

    with pytest.MonkeyPatch.context() as broken:
        broken.setattr("sheetgen.publish.folder.Folder.keep_record", killed)
        with pytest.raises(KeyboardInterrupt):
            library.publish()
    assert (library.build / "drops" / "index.html").is_file()
    (library.build / "drops" / "mine.txt").write_text("mine", "utf-8")
    shutil.rmtree(library.path("drops"))
    library.publish()
    assert [path.name for path in (library.build / "drops").rglob("*")] == ["mine.txt"]
