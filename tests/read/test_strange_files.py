"""Files that no person writes on purpose: one trouble at its place, and every other project published."""

from __future__ import annotations

import json
from typing import Any

import pytest

from sheetgen import pipeline, publishing
from sheetgen.base.place import Place, Source, Word
from sheetgen.base.trouble import Troubles
from sheetgen.read.paths import outline

# what is written instead of what, and words of the message and of the place
STRANGE = [
    ("a field called like a form of ours", "title: Round", "Written by: A\ntitle: Round", "no field 'Written by'", 1),
    ("a name with a NUL", "level: first", 'pictures: ["a\\0b.png"]\nlevel: first', "U+0000", 6),
    ("a picture's name of 300 letters", "level: first", f"pictures: [{'a' * 300}.png]\nlevel: first", "no picture", 6),
    ("a part's name of 300 letters", "  plate:\n", f"  {'p' * 300}:\n", "too long", 11),
    ("a slip of the unit", "width: 20 mm", "width: 20 m", "template 22 m long", 11),
    ("a size past every spool", "width: 20 mm", "width: 1000000 m", "across of 'plate' cannot be", 15),
    ("faces that clay has not", "wait: drying", "wait: drying\n    faces: three", "faces cannot be 'three'", 27),
    ("more marks than words", "expect: It is round.", f'expect: "{"**a" * 300}"', "so many marks", 24),
    ("a statement in braces", "It is round.", "It is {% for a in b %} round.", "hold no figure", 24),
]  # fmt: skip


@pytest.mark.parametrize(("old", "new", "says", "line"), [s[1:] for s in STRANGE], ids=[s[0] for s in STRANGE])
def test_what_no_person_means_is_a_trouble_at_its_line(old: str, new: str, says: str, line: int, library: Any) -> None:
    library.change("pendant/project.yaml", old, new)
    outcome = library.check()
    told = [(t.message, t.place.line if t.place else 0) for t in outcome.troubles.errors]
    assert any(says in message and at == line for message, at in told), told
    assert sorted(w.name for w in outcome.worked) == ["drops", "link"]


def test_line_ends_of_an_old_system_and_of_pasted_text_are_read(library: Any) -> None:
    whole = library.path("pendant/project.yaml").read_text("utf-8")
    library.write("pendant/project.yaml", whole.replace("It is round.", "It is\u2028round.").replace("\n", "\r"))
    assert not library.check("pendant").troubles.errors


def test_a_link_in_a_circle_for_a_picture_is_a_trouble(library: Any) -> None:
    library.change("pendant/project.yaml", "level: first", "pictures: [a.png]\nlevel: first")
    library.path("pendant/a.png").symlink_to("a.png")
    [trouble] = library.check("pendant").troubles.errors
    assert "no picture 'a.png'" in trouble.message
    assert "a.png" not in trouble.help


@pytest.mark.parametrize(
    "path", ["M0 0 L20 0 L10 15 L0 0 L20 0 L10 15 Z", "M0 0 L10 0 L5 5 L-5 15 L15 15 L5 5 Z"], ids=["twice", "a corner"]
)
def test_an_outline_that_meets_itself_is_refused(path: str) -> None:
    # drawn twice it would count its clay twice; loops that turn opposite ways would cancel
    troubles = Troubles()
    assert outline(Word(path, Place(Source("a"))), troubles) is None
    [trouble] = troubles.errors
    assert "meets itself" in trouble.message


def test_whatever_goes_wrong_in_one_project_costs_no_other_its_sheets(
    library: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    from sheetgen.draw import templates  # noqa: PLC0415

    real = templates.draw

    def broken(worked: Any, *rest: Any) -> Any:
        if worked.name == "link":
            raise ZeroDivisionError("nobody thought of this")
        return real(worked, *rest)

    monkeypatch.setattr(templates, "draw", broken)
    outcome = library.publish()
    assert outcome.published == ["drops", "pendant"]
    assert outcome.failed == ["link"]
    [trouble] = outcome.troubles.errors
    assert "nobody thought of this" in trouble.message
    assert "Round pendant" in (library.build / "index.html").read_text("utf-8")


def test_a_folder_in_the_way_of_one_project_costs_no_other_its_sheets(library: Any) -> None:
    library.build.mkdir(parents=True)
    (library.build / "drops").write_text("a file of somebody's", "utf-8")
    outcome = library.publish()
    assert outcome.published == ["link", "pendant"]
    assert "drops" in outcome.troubles.errors[0].message
    assert (library.build / "drops").read_text("utf-8") == "a file of somebody's"


@pytest.mark.parametrize(
    "told",
    [
        {"entry": {"name": "x", "title": None, "tags": [], "versions": [], "sheets": []}, "files": ["x/a"]},
        {"entry": {"name": "x", "title": "X", "tags": 3, "versions": [], "sheets": []}, "files": ["x/a"]},
        {"entry": {"name": "x", "title": "X", "tags": [], "versions": [], "sheets": []}, "files": "abc"},
        {"entry": {"name": "x", "title": "X", "tags": [], "versions": [], "sheets": []}, "files": [""]},
    ],
)
def test_a_record_changed_by_a_hand_stops_nothing_and_takes_nothing_away(told: Any, library: Any) -> None:
    library.build.mkdir(parents=True)
    (library.build / "a").write_text("mine", "utf-8")
    (library.build / ".published.json").write_text(json.dumps({"projects": {"x": told}}), "utf-8")
    outcome = library.publish("pendant")
    assert outcome.published == ["pendant"]
    assert (library.build / "a").read_text("utf-8") == "mine"


def test_crumbs_of_a_run_that_was_killed_are_swept(library: Any) -> None:
    (library.build / "pendant").mkdir(parents=True)
    crumb = library.build / "pendant" / ".laid-abc"
    crumb.write_text("half", "utf-8")
    library.publish("pendant")
    assert not crumb.exists()


def test_nothing_is_published_over_the_library_s_own_files(library: Any) -> None:
    for folder in (library.root / "projects", library.root):
        with pytest.raises(pipeline.NotReady):
            publishing.publish(library.root, folder)


def test_a_message_moves_no_terminal_about(library: Any) -> None:
    library.change("pendant/project.yaml", "level: first piece", 'level: "\\e]0;x\\a"')
    [trouble] = library.check("pendant").troubles.errors
    assert all(c.isprintable() or c == "\n" for c in str(trouble))
