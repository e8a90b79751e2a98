"""What stands in a file's words moves no terminal about, and is no style of its own."""

from __future__ import annotations

import re
from typing import Any

import pytest

PENDANT = "pendant/project.yaml"
# bells, colours, the one-sign form of the same, and what turns the direction of writing about
STRANGE = '"a\\x1b[2Jb\\x07c\\x9b2Jd\\u202ee"'
MOVES = re.compile("[\x00-\x09\x0b-\x1f\x7f-\x9f\u200e\u200f\u202a-\u202e\u2066-\u2069]")
FIGURES = "figures:\n  own one:\n    label: {}\n    value: 3 mm\n"


def figure(library: Any, label: str) -> None:
    library.change(PENDANT, "steps:\n", FIGURES.format(label) + "steps:\n")


@pytest.mark.parametrize("label", ["[/b]", "[/x] y", "[bold]loud", "[link=http://x]a[/link]", "a [red"])
def test_square_brackets_in_a_label_and_a_title_are_printed_as_they_stand(label: str, run: Any, library: Any) -> None:
    figure(library, f'"{label}"')
    library.change(PENDANT, "title: Round pendant", f'title: "{label} pendant"')
    result = run("figures", "pendant")
    assert result.exit_code == 0
    assert f"{label} pendant" in result.stdout
    assert any(label in line and "3 mm" in line for line in result.stdout.splitlines())


@pytest.mark.parametrize(
    "words", [["figures", "pendant"], ["figures", "pendant", "--working"], ["figures", "pendant", "--json"]]
)
def test_a_label_that_moves_a_terminal_about_is_refused_at_its_line(words: list[str], run: Any, library: Any) -> None:
    figure(library, STRANGE)
    result = run(*words)
    assert result.exit_code == 1
    assert "project.yaml:19:12: error: the sign U+001B moves or hides what stands beside it" in result.stderr
    assert not MOVES.search(result.stdout + result.stderr)


def test_a_house_step_that_moves_a_terminal_about_is_refused(run: Any, library: Any) -> None:
    text = f"dry:\n  about: {STRANGE}\n  takes: {{how: {STRANGE}}}\n  title: Dry\n  text: '{{how}}'\n"
    library.write("steps/bench.yaml", text)
    assert not MOVES.search(run("steps").output)
    told = run("check").stderr
    assert "steps/bench.yaml:2:10: error: the sign U+001B" in told
    assert "steps/bench.yaml:3:16: error: the sign U+001B" in told
    assert not MOVES.search(told)


def test_no_reason_of_a_waiver_moves_a_terminal_about(run: Any, library: Any) -> None:
    library.change(PENDANT, "steps:\n", f"waive: {{least-rim: {STRANGE}}}\nsteps:\n")
    result = run("check", "pendant")
    assert "[2Jb" in result.stdout + result.stderr
    assert not MOVES.search(result.stdout + result.stderr)


@pytest.mark.parametrize("value", ["1\x1b[2J mm", "1 mm\x9b", "\ue010 mm"])
def test_a_value_to_try_is_of_signs_that_can_be_printed(value: str, run: Any) -> None:
    result = run("figures", "drops", "--with", f"height={value}")
    assert result.exit_code == 2
    assert "signs that can be printed" in result.stderr
    assert not MOVES.search(result.stderr)


@pytest.mark.parametrize("field", ["wire: {a: b}", "loop: {a: {b: c}}", "count: {}", "kind: {a: b}", "gap: [{a: b}]"])
def test_fields_below_a_field_of_a_part_stop_that_project_only(field: str, run: Any, library: Any) -> None:
    name = field.partition(":")[0]
    text = library.path("link/project.yaml").read_text("utf-8")
    library.write("link/project.yaml", re.sub(rf"^    {name}: .*$", f"    {field}", text, count=1, flags=re.MULTILINE))
    result = run("check")
    assert result.exit_code == 1
    assert "2 projects well" in result.stdout
    assert "projects/link/project.yaml:" in result.stderr
    assert "a fault of the program" not in result.stderr
