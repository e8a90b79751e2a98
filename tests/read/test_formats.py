"""The number of a project's format: none is the oldest, an older file is read as ever, a newer one is refused."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sheetgen.base.place import Source
from sheetgen.base.trouble import Troubles
from sheetgen.read import formats
from sheetgen.read.yaml_words import words

HERE = Path(__file__).parent / "formats"
ROOT = Path(__file__).parents[2]
PROJECT = "pendant/project.yaml"
# the number as it is written, line and column of what is told, words of it
WRONG = [
    ("format: 2", 1, 9, "the file is of format 2, and this program reads formats to 1"),
    ("format: 999999", 1, 9, "the file is of format 999999"),
    ("# for a new machine\n\nformat:   7  # newer\n", 3, 11, "the file is of format 7"),
    ('format: "3"', 1, 9, "the file is of format 3"),
    ("format: 0", 1, 9, "'0' is not the number of a format"),
    ("format: -1", 1, 9, "'-1' is not the number of a format"),
    ("format: 1.0", 1, 9, "'1.0' is not the number of a format"),
    ("format: one", 1, 9, "'one' is not the number of a format"),
    ("format: ١", 1, 9, "'١' is not the number of a format"),
    ("format: 99999999999999999999", 1, 9, "'99999999999999999999' is not the number of a format"),
    ("format:", 1, 1, "'format' has nothing after it"),
    ("format: [1]", 1, 9, "'[1]' is not the number of a format"),
    ("Format: 1", 1, 1, "there is no field 'Format' here"),
]
HONEST = [
    "",
    "format: 1\n",
    "format: '1'\n",
    "# of a class\nformat: 1   # the first\n",
    "---\nformat: 1\n",
    "format: 01\n",
]


@pytest.mark.parametrize(("number", "line", "column", "told"), WRONG, ids=[one[0] for one in WRONG])
def test_a_number_that_cannot_be_is_told_where_it_stands_and_nothing_else(
    number: str, line: int, column: int, told: str, library: Any
) -> None:
    library.write(PROJECT, f"{number}\n{library.path(PROJECT).read_text('utf-8')}")
    [trouble] = library.check().troubles.errors
    assert told in trouble.message
    assert (trouble.place.line, trouble.place.column) == (line, column)
    assert trouble.help


@pytest.mark.parametrize("number", HONEST)
def test_a_file_without_a_number_is_read_as_one_of_the_first_format(number: str, library: Any) -> None:
    library.write(PROJECT, f"{number}{library.path(PROJECT).read_text('utf-8')}")
    assert not library.check().troubles.errors


def test_of_a_newer_file_only_its_format_is_told(library: Any) -> None:
    library.write(PROJECT, "format: 12\ncut by: a laser, &then *this\n\tsteps: {{")
    [trouble] = library.check().troubles.errors
    assert "the file is of format 12" in trouble.message
    assert "a newer one" in trouble.help


def test_a_newer_file_all_in_braces_is_refused_too(library: Any) -> None:
    head = "title: A, revision: 1, date: 2026-01-10, summary: B, makes: C, level: first piece"
    library.write(PROJECT, f"{{format: 4, {head},\n steps: [{{title: D}}]}}")
    [trouble] = library.check().troubles.errors
    assert "the file is of format 4" in trouble.message


def graded(text: str) -> str:
    """A step as one may come: what was the grade is the level."""
    return text.replace("\ngrade:", "\nlevel:")


@pytest.fixture
def second_format(monkeypatch: pytest.MonkeyPatch) -> None:
    """A program that writes format 2, in which the grade of format 1 is called level."""
    monkeypatch.setattr(formats, "STEPS", (graded,))


@pytest.mark.usefixtures("second_format")
@pytest.mark.parametrize("number", ["", "format: 1\n"])
def test_an_older_file_is_read_as_ever_and_its_faults_are_told_at_their_lines(number: str, library: Any) -> None:
    old = number + library.path(PROJECT).read_text("utf-8").replace("level:", "grade:")
    library.write(PROJECT, old)
    assert not library.check().troubles.errors
    assert library.worked("pendant").level == "first piece"
    library.write(PROJECT, old.replace("20 mm", "20 mn"))
    [trouble] = library.check().troubles.errors
    assert trouble.place.line == old[: old.index("20 mm")].count("\n") + 1


@pytest.mark.usefixtures("second_format")
def test_a_file_of_the_newest_format_is_not_taken_for_an_older_one(library: Any) -> None:
    whole = library.path(PROJECT).read_text("utf-8")
    library.write(PROJECT, "format: 2\n" + whole)
    assert not library.check().troubles.errors
    library.write(PROJECT, "format: 2\n" + whole.replace("level:", "grade:"))
    assert any("there is no field 'grade'" in one.message for one in library.check().troubles.errors)


def test_there_is_a_file_of_every_format_that_has_been() -> None:
    there = {path.stem for path in HERE.iterdir()}
    assert there == {str(number) for number in range(formats.OLDEST, formats.newest() + 1)}


@pytest.mark.parametrize("path", sorted(HERE.iterdir()), ids=lambda path: path.stem)
def test_a_file_of_every_format_that_has_been_is_read_without_a_murmur(path: Path, library: Any) -> None:
    library.write("of-then/project.yaml", path.read_bytes())
    assert not list(library.check().troubles)
    source = Source("a", path.read_text("utf-8"))
    now = formats.as_now(source, Troubles())
    assert now is not None
    assert now.text.count("\n") == source.text.count("\n"), "a step keeps every line on its line"


@given(
    st.lists(
        st.sampled_from(["# a", "", "---", "title: A", "format: 1", "  b: c", "steps: [d]", "format: 1 # e"]),
        max_size=6,
    )
)
def test_the_number_is_written_once_and_nothing_else_is_changed(lines: list[str]) -> None:
    text = "\n".join(lines)
    before = words(Source("a", text), Troubles())
    made = formats.numbered(text)
    after = words(Source("a", made), Troubles())
    if before is not None and after is not None and text.count("format") < 2:
        said = {str(key): value for key, value in before.items()}
        assert said | {"format": "1"} == after
    assert [line for line in made.split("\n") if "format" not in line] == [
        one for one in lines if "format" not in one
    ] or not lines


def test_the_demonstration_says_the_format_that_an_author_would_copy() -> None:
    files = sorted((ROOT / "projects").glob("*/project.yaml"))
    assert files
    assert [
        path.parent.name for path in files if not path.read_text("utf-8").startswith(f"format: {formats.newest()}\n")
    ] == []
