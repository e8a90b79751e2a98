"""Whole files that cannot be read, and folders that are not as they should be."""

from __future__ import annotations

import os
from pathlib import Path
from typing import Any

import pytest

from sheetgen.base.place import Place, Source, Word
from sheetgen.base.trouble import Troubles
from sheetgen.read.paths import outline
from sheetgen.read.text import read_text
from sheetgen.read.yaml_words import words

GOOD = "title: Little drops\nrevision: 1\n"
LATIN = "title: Große Tropfen\n".encode("latin-1")
# name, bytes, line:column, words of the message, words of the help
FILES = [
    ("empty", b"", "1:1", "empty", "title"),
    ("only spaces", b"  \n\n", "1:1", "empty", "title"),
    ("only a comment", b"# soon\n", "1:1", "empty", "title"),
    ("binary", b"\x00\x01\x02\xff" * 300, "1:1", "not text", "plain text editor"),
    ("a picture by mistake", b"\x89PNG\r\n\x1a\n" + b"x" * 50, "1:1", "not text", "plain text editor"),
    ("a document of an office", b"PK\x03\x04" + b"x" * 50, "1:1", "not text", "plain text editor"),
    ("a PDF", b"%PDF-1.7\n%x", "1:1", "not text", "plain text editor"),
    ("Latin-1", LATIN, "1:11", "not in UTF-8", "UTF-8"),
    ("Latin-1 further down", GOOD.encode() + b"summary: Gr\xfcn\n", "3:12", "not in UTF-8", "UTF-8"),
    ("UTF-16", GOOD.encode("utf-16"), "1:1", "not", "text editor"),
    ("too large", b"# " + b"x" * 1_100_000, "1:1", "1.1 MB", "right file"),
    ("a list", b"- one\n- two\n", "1:1", "not a list of fields", "name: value"),
    ("one word", b"drops\n", "1:1", "not a list of fields", "name: value"),
    ("100 KB of brackets", b"title: " + b"[" * 100_000, "1:", "too deep", "12"),
    ("100 KB of braces", b"title: " + b"{" * 100_000, "1:", "too deep", "12"),
    ("more parts than a person writes", b"tags: [" + b"a, " * 30_000 + b"a]\n", "1:", "too many parts", "20000"),
]


@pytest.mark.parametrize(("raw", "at", "says", "helps"), [f[1:] for f in FILES], ids=[f[0] for f in FILES])
def test_a_file_that_cannot_be_read_gets_a_trouble_and_the_others_publish(
    raw: bytes, at: str, says: str, helps: str, standing: Any
) -> None:
    before = standing.sheets("drops")
    standing.write("drops/project.yaml", raw)
    outcome = standing.publish()
    assert sorted(outcome.published) == ["link", "pendant"]
    assert outcome.failed == ["drops"]
    assert standing.sheets("drops") == before
    [trouble] = outcome.troubles.errors
    assert str(trouble.place).startswith(f"projects/drops/project.yaml:{at}")
    assert says in trouble.message
    assert helps in trouble.help


@pytest.mark.usefixtures("quick")
@pytest.mark.parametrize("name", ["stock/clays.yaml", "studio.yaml"])
@pytest.mark.parametrize(("rule", "raw"), [(f[0], f[1]) for f in FILES], ids=[f[0] for f in FILES])
def test_a_stock_or_studio_file_that_cannot_be_read_is_a_trouble_too(
    name: str, rule: str, raw: bytes, library: Any
) -> None:
    library.write(name, raw)
    outcome = library.publish()
    assert any(t.place and t.place.source.name == f"projects/{name}" for t in outcome.troubles.errors), rule
    assert outcome.published == ([] if name == "studio.yaml" else ["link"])


def test_when_a_stock_file_cannot_be_read_what_it_held_is_not_called_misspelt(library: Any) -> None:
    library.write("stock/clays.yaml", b"clays: [")
    outcome = library.check("pendant")
    missing = [t for t in outcome.troubles.errors if "not in stock" in t.message]
    assert missing
    assert all(t.help == "first mend projects/stock/clays.yaml" for t in missing)


def test_an_item_in_trouble_is_named_as_such_where_it_is_used(library: Any) -> None:
    library.change("stock/clays.yaml", "    shrinkage: 8-10 %", "    shrinkage: 120 %")
    told = [t for t in library.check("pendant").troubles.errors if "in stock, but" in t.message]
    assert [str(t.place) for t in told] == ["projects/pendant/project.yaml:8:9"]
    assert told[0].help == "first mend projects/stock/clays.yaml:4:16"


def test_a_bom_and_the_line_ends_of_another_system_are_read_as_they_should_be(library: Any) -> None:
    text = library.path("pendant/project.yaml").read_text("utf-8")
    library.write("pendant/project.yaml", b"\xef\xbb\xbf" + text.replace("\n", "\r\n").encode())
    assert library.worked("pendant").title == "Round pendant"


def test_words_that_look_like_other_things_stay_words() -> None:
    # YAML 1.1 would make false, 750, a date, 8, 1000 and nothing of these
    text = "a: no\nb: 12:30\nc: 2026-03-14\nd: 010\ne: 1_000\nf: null\ng: 1e3\n"
    found = words(Source("x.yaml", text), Troubles())
    assert found is not None
    assert list(found.values()) == ["no", "12:30", "2026-03-14", "010", "1_000", "null", "1e3"]


@pytest.mark.parametrize("count", [2, 30])
def test_a_bomb_of_aliases_is_refused_before_it_grows(count: int) -> None:
    lines = ["a0: &a0 [lol, lol]"] + [f"a{i}: &a{i} [{', '.join([f'*a{i - 1}'] * 9)}]" for i in range(1, count)]
    troubles = Troubles()
    assert words(Source("x.yaml", "\n".join(lines)), troubles) is None
    assert [(t.message, str(t.place)) for t in troubles] == [
        ("an anchor or alias (& or *) is not taken here", "x.yaml:1:5")
    ]


def test_a_directory_for_a_file_is_a_trouble(library: Any) -> None:
    path = library.path("drops/project.yaml")
    path.unlink()
    path.mkdir()
    outcome = library.check()
    [trouble] = outcome.troubles.errors
    assert str(trouble.place) == "projects/drops/project.yaml:1:1"
    assert "not a file" in trouble.message
    assert outcome.failed == ["drops"]


def test_a_pipe_for_a_file_is_a_trouble_and_not_a_wait(library: Any) -> None:
    path = library.path("drops/project.yaml")
    path.unlink()
    os.mkfifo(path)
    [trouble] = library.check().troubles.errors
    assert "not a file" in trouble.message


def test_a_link_in_a_circle_is_a_trouble(library: Any) -> None:
    path = library.path("drops/project.yaml")
    path.unlink()
    path.symlink_to(path)
    outcome = library.check()
    assert outcome.failed == ["drops"]
    assert all(str(t.place).startswith("projects/drops/project.yaml") for t in outcome.troubles.errors)


def test_a_file_that_may_not_be_read_is_a_trouble(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    # as root may read everything, the refusal is acted
    path = tmp_path / "project.yaml"
    path.write_text(GOOD)

    def refuse(_path: Path) -> bytes:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "read_bytes", refuse)
    troubles = Troubles()
    assert read_text(path, "projects/x/project.yaml", troubles) is None
    assert [t.message for t in troubles] == ["the file cannot be read: Permission denied"]


def test_a_folder_without_a_project_is_a_trouble_that_names_a_likely_file(library: Any) -> None:
    library.path("drops/project.yaml").rename(library.path("drops/projekt.yml"))
    [trouble] = library.check().troubles.errors
    assert trouble.help == "rename projekt.yml to project.yaml"


@pytest.mark.parametrize("name", ["My Drops", "drops_2", "Drops", "été"])
def test_a_folder_whose_name_makes_no_web_address_is_a_trouble(name: str, library: Any) -> None:
    library.path("drops").rename(library.path(name))
    [trouble] = library.check().troubles.errors
    assert f"'{name}'" in trouble.message
    assert "small letters" in trouble.help


def test_a_library_without_projects_is_a_trouble(tmp_path: Path, libraries: Any) -> None:
    outcome = libraries.Library(tmp_path).check()
    [trouble] = outcome.troubles.errors
    assert "no folder 'projects'" in trouble.message
    assert "--library" in trouble.help


def test_without_a_studio_no_project_is_published(library: Any) -> None:
    library.path("studio.yaml").unlink()
    outcome = library.check()
    assert sorted(outcome.failed) == ["drops", "link", "pendant"]
    assert [t.message for t in outcome.troubles.errors] == ["the studio's file is missing"]


def test_a_picture_that_a_link_fetches_from_outside_is_refused(standing: Any, tmp_path: Path) -> None:
    before = standing.sheets("drops")
    secret = tmp_path / "secret.svg"
    secret.write_text("<svg xmlns='http://www.w3.org/2000/svg'/>")
    picture = standing.path("drops/finished.svg")
    picture.unlink()
    picture.symlink_to(secret)
    outcome = standing.publish()
    [trouble] = outcome.troubles.errors
    assert "outside the project's folder" in trouble.message
    assert str(trouble.place) == "projects/drops/project.yaml:8:12"
    assert standing.sheets("drops") == before


@pytest.mark.parametrize(
    ("name", "raw"),
    [
        ("broken.png", b"\x89PNG\r\n\x1a\nbut no picture"),
        ("broken.jpg", b"not a photograph"),
        ("empty.svg", b""),
        ("words.svg", b"just words"),
        ("script.svg", b'<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>'),
        ("outside.svg", b'<svg xmlns="http://www.w3.org/2000/svg"><image href="file:///etc/passwd"/></svg>'),
        ("entity.svg", b'<!DOCTYPE svg [<!ENTITY a "aaaa">]><svg xmlns="http://www.w3.org/2000/svg"/>'),
    ],
)
def test_a_picture_that_is_broken_or_reaches_outside_stops_only_its_own_project(
    name: str, raw: bytes, standing: Any
) -> None:
    before = standing.sheets("drops")
    standing.write(f"drops/{name}", raw)
    standing.change("drops/project.yaml", "pictures: [finished.svg]", f"pictures: [{name}]")
    outcome = standing.publish()
    assert sorted(outcome.published) == ["link", "pendant"]
    assert outcome.failed == ["drops"]
    assert len(outcome.troubles.errors) == 1
    assert name in outcome.troubles.errors[0].message
    assert str(outcome.troubles.errors[0].place) == "projects/drops/project.yaml:8:12"
    assert standing.sheets("drops") == before


def test_two_projects_with_one_title_are_both_held_back(standing: Any) -> None:
    before = standing.sheets("drops"), standing.sheets("link")
    standing.change("drops/project.yaml", "title: Little drops", "title: wire  LINK")
    outcome = standing.publish()
    [trouble] = outcome.troubles.errors
    assert str(trouble.place) == "projects/link/project.yaml:1:8"
    assert "projects/drops/project.yaml:1:8" in trouble.message
    assert outcome.published == ["pendant"]
    assert sorted(outcome.failed) == ["drops", "link"]
    assert (standing.sheets("drops"), standing.sheets("link")) == before


def test_a_project_published_alone_may_not_bear_the_title_of_another(library: Any) -> None:
    copied = (library.root / "projects/drops/project.yaml").read_text("utf-8")
    (library.root / "projects/copied").mkdir()
    (library.root / "projects/copied/project.yaml").write_text(copied, "utf-8")
    [trouble] = library.check("drops").troubles.errors
    assert "projects/copied/project.yaml:1:8" in trouble.message


def test_every_fault_of_every_file_is_told_in_one_run(library: Any) -> None:
    library.change("drops/project.yaml", "    overlap: 4 mm", "    overlp: 4 mm")
    library.change("drops/project.yaml", "summary: A pair", "sumary: A pair")
    library.change("pendant/project.yaml", "  width: 20 mm", "  width: 20 mn")
    library.change("stock/clays.yaml", "    metal share: 88 %", "    metal share: 188 %")
    library.change("link/project.yaml", "    loop: 4 mm", "    loop: -4 mm")
    told = [str(t.place).split(":")[0] for t in library.check().troubles.errors]
    assert set(told) == {
        "projects/drops/project.yaml", "projects/pendant/project.yaml", "projects/link/project.yaml",
        "projects/stock/clays.yaml",
    }  # fmt: skip


def test_several_faults_of_one_file_are_all_told(library: Any) -> None:
    library.change("drops/project.yaml", "summary: A pair", "sumary: A pair")
    library.change("drops/project.yaml", "level: some practice", "level: [easy]")
    library.change("drops/project.yaml", "    minutes: 30 min", "    minuts: 30 min")
    assert [t.place.line for t in library.check("drops").troubles.errors if t.place] == [1, 4, 6, 72]


def test_a_field_written_twice_hides_no_other_fault_of_its_file(library: Any) -> None:
    library.change("drops/project.yaml", "level: some practice", "level: some practice\nlevel: some practice\ntags:")
    library.change("drops/project.yaml", "summary: A pair", "sumary: A pair")
    library.change("drops/project.yaml", "    overlap: 4 mm", "    overlp: 4 mm")
    told = [t.message for t in library.check("drops").troubles.errors]
    for words_ in ("'level' is written twice", "'tags' has nothing after it", "no field 'sumary'", "no field 'overlp'"):
        assert [words_ in message for message in told].count(True) == 1, told


PATHS = [
    ("an open path", "M0 0 L10 0 L10 10", "open"),
    ("a path that crosses itself", "M0 0 L10 10 L12 0 L0 8 Z", "crosses itself"),
    ("two outlines", "M0 0 L10 0 L10 10 Z M20 0 L30 0 L30 10 Z", "more than one outline"),
    ("a line and no shape", "M0 0 L10 0 Z", "encloses nothing"),
    ("words", "a fish", "path"),
    ("nothing drawn", "M0 0", ""),
    ("numbers without end", "M0 0 L1e999 0 L10 10 Z", "too far"),
    ("more curves than a hand can cut", "M0 0" + "q1 1 2 0" * 2000 + "Z", "points"),
    ("a path as long as a book", "M0 0 " + "L1 1 " * 5000 + "Z", "characters long"),
]


@pytest.mark.parametrize(("rule", "path", "says"), PATHS, ids=[p[0] for p in PATHS])
def test_a_path_that_cannot_be_cut_is_a_trouble_at_the_path(rule: str, path: str, says: str) -> None:
    troubles = Troubles()
    place = Place(Source("projects/x/project.yaml", path), 1, 1)
    assert outline(Word(path, place), troubles) is None, rule
    [trouble] = troubles
    assert says in trouble.message
    assert trouble.place == place
    assert trouble.help


def test_a_sign_that_no_editor_shows_is_told_where_it_stands_and_the_other_faults_are_told_too(library: Any) -> None:
    library.change("drops/project.yaml", "level: some practice", "level: some\x07 practise\nmakes it: 1 pair")
    told = [(one.message, one.place.line, one.place.column) for one in library.check().troubles.errors]
    assert told[0] == ("the sign U+0007 cannot stand in a file", 6, 12)
    assert told[1][:2] == ("there is no field 'makes it' here", 7)
