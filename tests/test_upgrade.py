"""`upgrade` writes a project's file in the newest format: what is otherwise is shown, and the file of before kept."""

from __future__ import annotations

from typing import Any

import pytest

from sheetgen.read import formats

PROJECT = "pendant/project.yaml"
ALL = ("drops", "link", "pendant")


@pytest.fixture
def renamed(monkeypatch: pytest.MonkeyPatch) -> None:
    """A program that writes format 2, in which the grade of format 1 is called level."""
    monkeypatch.setattr(formats, "STEPS", (lambda text: text.replace("\ngrade:", "\nlevel:"),))


def older(library: Any) -> str:
    """The pendant as it was written in format 1, with what its author noted."""
    text = library.path(PROJECT).read_text("utf-8").replace("level: first piece", "grade: first piece   # they say")
    told: str = f"# Of the first class.\n\n{text}"
    library.write(PROJECT, told)
    return told


@pytest.mark.usefixtures("renamed")
def test_an_older_file_is_written_anew_with_its_comments_and_kept_as_it_was(library: Any, run: Any) -> None:
    old = older(library)
    result = run("upgrade", "pendant")
    assert result.exit_code == 0
    new = library.path(PROJECT).read_text("utf-8")
    wanted = old.replace("title:", "format: 2\ntitle:", 1).replace("\ngrade:", "\nlevel:")
    assert new == wanted
    assert library.path(f"{PROJECT}.before").read_text("utf-8") == old
    assert not library.check("pendant").troubles.errors
    for line in ("+format: 2", "-grade: first piece   # they say", "+level: first piece   # they say"):
        assert line in result.output.split("\n")
    assert "is kept as it was in project.yaml.before" in result.output
    assert result.output.endswith("1 of 1 file brought into format 2\n")


@pytest.mark.usefixtures("renamed")
def test_what_it_would_do_is_shown_without_writing(library: Any, run: Any) -> None:
    old = older(library)
    result = run("upgrade", "--show")
    assert "+level: first piece   # they say" in result.output
    assert "3 of 3 files would be brought into format 2" in result.output
    assert library.path(PROJECT).read_text("utf-8") == old
    assert {path.name for path in library.path("pendant").iterdir()} == {"project.yaml"}


@pytest.mark.usefixtures("renamed")
def test_numbers_are_the_same_before_and_after(library: Any, run: Any) -> None:
    older(library)
    before = {name: library.worked(name) for name in ALL}
    run("upgrade")
    for name in ALL:
        after = library.worked(name)
        assert after.main.figures.keys() == before[name].main.figures.keys()
        assert [f.printed for f in after.main.figures.values()] == [
            f.printed for f in before[name].main.figures.values()
        ]


def test_a_file_of_today_is_left_alone(library: Any, run: Any) -> None:
    run("upgrade")
    stood = {path: path.stat().st_mtime_ns for path in library.root.rglob("*")}
    result = run("upgrade")
    assert result.exit_code == 0
    assert "0 of 3 files brought into format 1" in result.output
    assert {path: path.stat().st_mtime_ns for path in library.root.rglob("*")} == stood


def test_a_copy_is_never_written_over(library: Any, run: Any) -> None:
    old = library.path(PROJECT).read_bytes()
    library.write(f"{PROJECT}.before", "mine\n")
    library.path(f"{PROJECT}.before-2").symlink_to("nowhere")
    run("upgrade", "pendant")
    assert library.path(f"{PROJECT}.before").read_text("utf-8") == "mine\n"
    assert library.path(f"{PROJECT}.before-3").read_bytes() == old


@pytest.mark.parametrize("ends", ["\n", "\r\n", "\r"])
def test_line_ends_and_the_mark_of_its_encoding_stay(ends: str, library: Any, run: Any) -> None:
    old = b"\xef\xbb\xbf" + library.path(PROJECT).read_bytes().replace(b"\n", ends.encode())
    library.write(PROJECT, old)
    library.path(PROJECT).chmod(0o640)
    run("upgrade", "pendant")
    assert library.path(PROJECT).read_bytes() == old.replace(b"title:", f"format: 1{ends}title:".encode(), 1)
    assert library.path(PROJECT).stat().st_mode & 0o777 == 0o640


def test_a_file_in_trouble_stays_and_the_others_are_upgraded(library: Any, run: Any) -> None:
    library.write(PROJECT, 'title: "Round\nlevel: x')
    library.write("link/project.yaml", "format: 9\ntitle: A\n")
    stood = [library.path(name).read_bytes() for name in (PROJECT, "link/project.yaml")]
    result = run("upgrade")
    assert result.exit_code == 1
    assert "projects/pendant/project.yaml:1:8: error: a quotation mark is opened and not closed" in result.output
    assert "projects/link/project.yaml:1:9: error: the file is of format 9" in result.output
    assert "1 of 3 files brought into format 1" in result.output
    assert [library.path(name).read_bytes() for name in (PROJECT, "link/project.yaml")] == stood


def test_a_file_all_in_braces_is_left_to_its_author(library: Any, run: Any) -> None:
    library.write(PROJECT, "{title: A, steps: [{title: B}]}\n")
    result = run("upgrade", "pendant")
    assert result.exit_code == 1
    assert "cannot be written into the file without changing what it says" in result.output
    assert library.path(PROJECT).read_text("utf-8").startswith("{title")


def test_a_project_that_there_is_not_and_a_folder_that_leads_out_are_told(library: Any, run: Any) -> None:
    result = run("upgrade", "pendent")
    assert result.exit_code == 2
    assert "did you mean 'pendant'?" in result.output
    outside = library.root.parent / f"{library.root.name}-outside"
    library.path("pendant").rename(outside)
    library.path("pendant").symlink_to(outside)
    stood = (outside / "project.yaml").read_bytes()
    assert "error: the folder" in run("upgrade", "pendant").output
    assert (outside / "project.yaml").read_bytes() == stood
