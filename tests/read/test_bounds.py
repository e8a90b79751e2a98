# ruff: noqa: E501 - a table is read by its rows
"""What no person writes, in size: told at once at its place, and never worked for minutes."""

from __future__ import annotations

import time
from typing import TYPE_CHECKING, Any

import pytest

from sheetgen import pipeline
from sheetgen.base.place import Place, Source
from sheetgen.base.trouble import Trouble, Troubles

if TYPE_CHECKING:
    from pathlib import Path

STEPS = "steps/bench.yaml"
PENDANT = "pendant/project.yaml"
DRIED = "  - title: Dry\n    wait: drying\n    does: [test]\n"
AT_ONCE = 5  # seconds on a slow machine; each took minutes, or all the memory there is
LONG = "b" * 200_000

# What stands in projects/steps, how the project uses it, and what is said.
HOUSE = [
    ("braces", "dry:\n  title: Dry\n  text: '" + "{" * 300_000 + "'\n", "house: dry", "a text of 300000 characters is too long"),
    ("a long word many times", "dry:\n  takes: {a: }\n  title: Dry\n  text: '" + "{a}" * 1900 + "'\n", f"house: dry\n    a: {LONG}", "too long"),
    ("a word many times", "dry:\n  takes: {a: }\n  title: Dry\n  text: '" + "{a}" * 1900 + "'\n", f"house: dry\n    a: {LONG[:5000]}", "with what is put into it, is too long"),
    ("in arithmetic", "dry:\n  takes: {a: }\n  title: Dry\n  minutes: " + "a + " * 1000 + "a\n", f"house: dry\n    a: {LONG[:5000]}", "with what is put into it, is too long"),
    ("a list many times", f"dry:\n  takes: {{a: }}\n  title: Dry\n  uses: [{', '.join(['a'] * 400)}]\n", f"house: dry\n    a: [{', '.join(['knife'] * 400)}]", "this list is too long"),
    ("spaces after a name", "dry:\n  title: Dry\n  text: |\n    {foo}" + " " * 40_000 + "\n", "house: dry", "too long"),
    ("spaces in a short text", "dry:\n  title: Dry\n  text: |\n    {foo}" + " " * 5_900 + "x\n", "house: dry", "no parameter"),
    ("braces that never close, used often", "dry:\n  title: Dry\n  text: '}}" + "{" * 5_990 + "'\n", "house: dry\n" + "  - house: dry\n" * 400, "these braces hold no figure"),
    ("steps times steps", "dry:\n  steps:\n" + "    - {title: A}\n" * 400, "house: dry\n" + "  - house: dry\n" * 400, "more than 500 steps"),
]  # fmt: skip


def said(library: Any, *only: str) -> list[str]:
    begun = time.monotonic()
    told = [t.message for t in library.check(*only).troubles.errors]
    assert time.monotonic() - begun < AT_ONCE
    return told


@pytest.mark.parametrize(("steps", "use", "says"), [one[1:] for one in HOUSE], ids=[one[0] for one in HOUSE])
def test_a_house_step_cannot_grow_without_end(steps: str, use: str, says: str, library: Any) -> None:
    library.write(STEPS, steps)
    library.change(PENDANT, DRIED, f"  - {use}\n")
    told = said(library, "pendant")
    assert any(says in message for message in told), [message[:200] for message in told]


@pytest.mark.parametrize(
    "when", ["' " + " " * 4000 + "x'", "'clay" + " " * 60_000 + "= 3'", "'clay" + " " * 380 + "= ?'"]
)
def test_a_row_of_spaces_in_a_condition_is_told_at_once(when: str, library: Any) -> None:
    library.change(PENDANT, "  - title: Cut\n", f"  - title: Cut\n    when: {when}\n")
    assert said(library, "pendant")


@pytest.mark.parametrize(
    ("file", "old", "new", "says"),
    [
        ("stock/others.yaml", "    name: Craft knife\n", f"    name: {LONG}\n", "a text of 200000 characters"),
        ("stock/others.yaml", "    cautions: [blade]\n", f"    cautions: [{'blade, ' * 15_000}]\n", "a list of 15000"),
        ("studio.yaml", "about: Invented for the tests.\n", f"about: {'so ' * 1000}\n", "a text of 2999 characters"),
        (PENDANT, "title: Round pendant\n", f"title: {LONG}\n", "a text of 200000 characters"),
        (PENDANT, "level: first piece\n", f"level: first piece\ntags: [{'a, ' * 501}]\n", "a list of 501"),
    ],
)
def test_words_and_lists_have_an_end(file: str, old: str, new: str, says: str, library: Any) -> None:
    library.change(file, old, new)
    told = said(library)
    assert any(says in message for message in told), [message[:200] for message in told]


def test_five_hundred_steps_are_taken_and_one_more_is_not(library: Any) -> None:
    library.change(PENDANT, DRIED, DRIED + "  - {title: Wait}\n" * 497)
    assert said(library, "pendant") == []
    library.change(PENDANT, DRIED, DRIED + "  - {title: Wait}\n")
    assert any("500" in t.help or "500" in t.message for t in library.check("pendant").troubles.errors)


def test_fifty_thousand_troubles_are_noted_each_once_and_soon() -> None:
    begun = time.monotonic()
    troubles = Troubles()
    place = Place(Source("a", "x\n" * 50_000))
    for _ in range(2):
        troubles.extend(Trouble(f"fault {i}", place) for i in range(50_000))
    assert len(troubles) == 50_000
    assert time.monotonic() - begun < AT_ONCE


def test_a_trouble_that_was_taken_back_can_be_noted_again() -> None:
    troubles = Troubles()
    troubles.add("a")
    del troubles.found[:]
    troubles.add("a")
    assert [t.message for t in troubles] == ["a"]


@pytest.mark.parametrize("name", ["steps/x.yaml", "stock/x.yaml", "kinds/x.yaml", "other/project.yaml", "studio.yaml"])
def test_a_link_to_a_file_outside_is_refused_and_none_of_its_lines_is_shown(
    name: str, library: Any, tmp_path: Path
) -> None:
    secret = tmp_path / "secret"
    secret.write_text("root: [not for the terminal\n", "utf-8")
    path = library.path(name)
    path.parent.mkdir(parents=True, exist_ok=True)
    path.unlink(missing_ok=True)
    path.symlink_to(secret)
    troubles = list(library.check().troubles)
    assert any("a link to one outside its folder" in t.message for t in troubles)
    assert not any("terminal" in str(t) for t in troubles)


def test_a_link_within_its_folder_is_read(library: Any) -> None:
    path = library.path("stock/others.yaml")
    path.rename(path.with_name("drawer.text"))
    path.symlink_to("drawer.text")
    assert said(library) == []


def test_the_folder_of_house_steps_is_no_project(library: Any) -> None:
    library.write("steps/project.yaml", "dry:\n  title: Dry\n")
    assert pipeline.projects_of(library.root) == ["drops", "link", "pendant"]


@pytest.mark.parametrize("field", ["emergency", "about", "contact", "note"])
def test_an_empty_word_of_the_studio_is_told_and_not_printed_as_a_number(field: str, library: Any) -> None:
    text = library.path("studio.yaml").read_text("utf-8").replace("about: Invented for the tests.\n", "")
    library.write("studio.yaml", f'{text}{field}: " "\n')
    [message] = [m for m in said(library) if "nothing" in m]
    assert message == "this has nothing in it"
