"""The build folder: only what changed is written, whole or not at all, and nothing of anybody else's is touched."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

import pytest

from sheetgen.model.page import Entry, Page
from sheetgen.publish import folder as folder_module
from sheetgen.publish.folder import BEGUN, Folder
from sheetgen.publish.record import RECORD


def entry(name: str, title: str = "") -> Entry:
    return Entry(name, title or name.capitalize(), "", "first piece", "10 min", "1", "2026-01-10")


def pages(name: str, **contents: str) -> list[Page]:
    return [Page(f"{name}/{key}.html", value.encode()) for key, value in contents.items()]


def files(root: Path) -> dict[str, str]:
    return {str(p.relative_to(root)): p.read_text() for p in sorted(root.rglob("*")) if p.is_file() and p.name != BEGUN}


def moments(root: Path) -> dict[str, tuple[int, int]]:
    return {str(p): (p.stat().st_mtime_ns, p.stat().st_ino) for p in root.rglob("*") if p.is_file()}


def test_only_what_changed_is_written(tmp_path: Path) -> None:
    folder = Folder(tmp_path)
    assert folder.put(entry("drops"), pages("drops", a="one", b="two")) == ["drops/a.html", "drops/b.html"]
    before = moments(tmp_path)
    assert folder.put(entry("drops"), pages("drops", a="one", b="three")) == ["drops/b.html"]
    after = moments(tmp_path)
    assert before[str(tmp_path / "drops/a.html")] == after[str(tmp_path / "drops/a.html")]
    assert (tmp_path / "drops/b.html").read_text() == "three"


@pytest.mark.usefixtures("quick")
def test_publishing_twice_writes_nothing_the_second_time(library: Any) -> None:
    assert library.publish().changed
    before = moments(library.build)
    assert library.publish().changed == []
    assert moments(library.build) == before


@pytest.mark.usefixtures("quick")
def test_a_change_in_one_project_touches_the_files_of_no_other(library: Any) -> None:
    library.publish()
    library.change("pendant/project.yaml", "revision: 1", "revision: 2")
    changed = library.publish().changed
    assert changed
    assert all(path.startswith("pendant/") or path == "index.html" for path in changed)


@pytest.mark.parametrize("fails_at", [0, 1, 2])
def test_a_failure_in_the_middle_leaves_every_file_whole_old_or_new(
    fails_at: int, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = Folder(tmp_path)
    folder.put(entry("drops"), pages("drops", a="old a", b="old b", c="old c"))
    true_replace, count = Path.replace, iter(range(100))

    def replace(self: Path, target: Path) -> Path:
        if next(count) == fails_at:
            raise OSError(28, "No space left on device")
        return true_replace(self, target)

    monkeypatch.setattr(Path, "replace", replace)
    with pytest.raises(OSError, match="No space"):
        folder.put(entry("drops"), pages("drops", a="new a", b="new b", c="new c"))
    found = files(tmp_path)
    assert set(found) == {"drops/a.html", "drops/b.html", "drops/c.html"}
    assert [text[:3] for text in found.values()] == ["new"] * fails_at + ["old"] * (3 - fails_at)


def test_a_full_disk_leaves_all_old_files_and_no_crumbs(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    folder = Folder(tmp_path)
    folder.put(entry("drops"), pages("drops", a="old a", b="old b"))
    true_beside, count = folder_module.beside, iter(range(100))

    def beside(target: Path, content: bytes) -> Path:
        if next(count) == 1:
            raise OSError(28, "No space left on device")
        return true_beside(target, content)

    monkeypatch.setattr(folder_module, "beside", beside)
    with pytest.raises(OSError, match="No space"):
        folder.put(entry("drops"), pages("drops", a="new a", b="new b"))
    assert files(tmp_path) == {"drops/a.html": "old a", "drops/b.html": "old b"}


def test_a_write_that_breaks_off_leaves_no_crumb(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def fsync(_handle: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("os.fsync", fsync)
    with pytest.raises(OSError, match="No space"):
        Folder(tmp_path).put(entry("drops"), pages("drops", a="new"))
    assert files(tmp_path) == {}


def test_what_a_project_no_longer_has_goes_and_its_empty_folders_with_it(tmp_path: Path) -> None:
    folder = Folder(tmp_path)
    folder.put(entry("drops"), [*pages("drops", a="one"), Page("drops/long/b.html", b"two")])
    assert "drops/long/b.html" in folder.put(entry("drops"), pages("drops", a="one"))
    assert files(tmp_path) == {"drops/a.html": "one"}
    assert not (tmp_path / "drops/long").exists()


def test_what_somebody_else_put_there_stays(tmp_path: Path) -> None:
    folder = Folder(tmp_path)
    folder.put(entry("drops"), pages("drops", a="one", b="two"))
    (tmp_path / "drops/mine.txt").write_text("mine")
    (tmp_path / "CNAME").write_text("mine")
    folder.put(entry("drops"), pages("drops", a="one"))
    folder.drop_missing([])
    assert files(tmp_path) == {"CNAME": "mine", "drops/mine.txt": "mine"}


@pytest.mark.usefixtures("quick")
def test_the_sheets_of_a_project_that_was_taken_away_go(library: Any) -> None:
    library.publish()
    (library.build / "drops" / "note.txt").write_text("mine")
    library.path("drops").rename(library.root / "elsewhere")
    library.publish()
    assert files(library.build / "drops") == {"note.txt": "mine"}
    assert "Little drops" not in (library.build / "index.html").read_text("utf-8")


@pytest.mark.usefixtures("quick")
def test_a_version_that_was_taken_away_takes_its_sheets_with_it_and_leaves_the_pages_of_its_fingerprints(
    library: Any,
) -> None:
    library.publish()
    assert (library.build / "drops/long/index.html").exists()
    library.change("drops/project.yaml", "versions:\n  - name: Long\n    height: 30 mm\n", "")
    library.publish()
    left = [path.name for path in (library.build / "drops/long").iterdir()]
    assert left, "of the version as it was published, and of its kits"
    assert all(re.fullmatch(r"\w{6}\.html", name) for name in left)


@pytest.mark.usefixtures("quick")
def test_a_project_in_trouble_stays_in_the_index_with_its_last_good_words(library: Any) -> None:
    library.publish()
    library.change("drops/project.yaml", "title: Little drops", "title: New drops")
    library.change("drops/project.yaml", "kind: tube", "kind: tubbe")
    outcome = library.publish()
    assert outcome.failed == ["drops"]
    index = (library.build / "index.html").read_text("utf-8")
    assert "Little drops" in index
    assert "New drops" not in index


@pytest.mark.usefixtures("quick")
def test_publishing_one_project_leaves_the_others_in_the_index(library: Any) -> None:
    library.publish()
    before = library.sheets("drops")
    library.publish("pendant")
    index = (library.build / "index.html").read_text("utf-8")
    assert all(title in index for title in ("Little drops", "Round pendant", "Wire link"))
    assert library.sheets("drops") == before


@pytest.mark.usefixtures("quick")
def test_when_the_studio_is_in_trouble_nothing_at_all_is_touched(library: Any) -> None:
    library.publish()
    before = moments(library.build)
    library.change("studio.yaml", "currency: EUR", "currency: euros")
    library.publish()
    assert moments(library.build) == before


@pytest.mark.usefixtures("quick")
def test_when_every_project_is_in_trouble_nothing_is_taken_away(library: Any) -> None:
    library.publish()
    before = files_of(library.build)
    for name in ("drops", "pendant", "link"):
        library.write(f"{name}/project.yaml", "")
    library.publish()
    assert files_of(library.build) == before


def files_of(root: Path) -> dict[str, bytes]:
    return {str(p.relative_to(root)): p.read_bytes() for p in root.rglob("*") if p.is_file() and p.name != RECORD}


@pytest.mark.usefixtures("quick")
def test_a_title_changed_in_the_file_changes_in_the_index(library: Any) -> None:
    library.publish()
    library.change("drops/project.yaml", "title: Little drops", "title: New drops")
    library.publish()
    index = (library.build / "index.html").read_text("utf-8")
    assert "New drops" in index
    assert "Little drops" not in index


@pytest.mark.parametrize(
    "record",
    [
        "",
        "{",
        "[]",
        '{"projects": 3}',
        '{"projects": {"drops": 3}}',
        '{"projects": {"drops": {"files": 3, "entry": {}}}}',
        '{"projects": {"drops": {"files": [], "entry": {"title": 3}}}}',
    ],
)
@pytest.mark.usefixtures("quick")
def test_a_record_that_somebody_spoilt_is_begun_anew(record: str, library: Any) -> None:
    library.build.mkdir()
    (library.build / RECORD).write_text(record)
    outcome = library.publish()
    assert sorted(outcome.published) == ["drops", "link", "pendant"]
    assert json.loads((library.build / RECORD).read_text())["projects"].keys() == {"drops", "link", "pendant"}


@pytest.mark.parametrize("path", ["../outside.txt", "/outside.txt", "drops/../../outside.txt", "link/outside.txt"])
def test_a_record_cannot_make_it_take_away_what_lies_outside(path: str, tmp_path: Path) -> None:
    outside = tmp_path / "outside.txt"
    outside.write_text("mine")
    build = tmp_path / "build"
    build.mkdir()
    (build / "link").symlink_to(tmp_path)
    told = {
        "projects": {"drops": {"files": [path.replace("/outside", f"{tmp_path}/outside") if path[0] == "/" else path]}}
    }
    (build / RECORD).write_text(json.dumps(told))
    folder = Folder(build)
    folder.drop_missing([])
    assert outside.read_text() == "mine"


def test_files_can_be_read_by_everybody_who_serves_them(tmp_path: Path) -> None:
    Folder(tmp_path).put(entry("drops"), pages("drops", a="one"))
    assert (tmp_path / "drops/a.html").stat().st_mode & 0o777 == 0o644


def test_the_index_lists_by_title(tmp_path: Path) -> None:
    folder = Folder(tmp_path)
    for name, title in (("a", "Zircon"), ("b", "amber"), ("c", "Moss")):
        folder.put(entry(name, title), pages(name, a="x"))
    folder.keep_record()
    assert [e.title for e in Folder(tmp_path).entries()] == ["amber", "Moss", "Zircon"]
