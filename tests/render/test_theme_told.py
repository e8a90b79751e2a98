"""The page for a theme's author says all that a theme gets, and nothing that it does not."""

from __future__ import annotations

import dataclasses
import re
from pathlib import Path

import pytest
from click.testing import CliRunner

from sheetgen.cli import main
from sheetgen.model import kit_cards_view, lists_view, view
from sheetgen.render.ordered import HOW
from sheetgen.render.theme_told import classes, theme_told

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def told() -> str:
    result = CliRunner().invoke(main, ["theme"])
    assert result.exit_code == 0
    assert result.output == theme_told()
    return result.output


def test_every_field_of_every_sheet_is_told_with_its_sentence(told: str) -> None:
    sections = dict(re.findall(r"^### (\w+)\n(.*?)(?=^###|\Z)", told, re.MULTILINE | re.DOTALL))
    assert list(sections) == [one.__name__ for one in classes()]
    for one in classes():
        assert str(one.__doc__) in sections[one.__name__]
        fields = re.findall(r"^- (\w+): ", sections[one.__name__], re.MULTILINE)
        assert fields == [field.name for field in dataclasses.fields(one)]
    assert "- minutes: HTML; time that it takes, or is waited for, or nothing" in sections["Row"]
    assert "- told: a list of Told; cautions that stand here in full, gravest first" in sections["Row"]
    assert "- matrix: Matrix or nothing; in place of figures" in sections["Row"]
    assert "- number: a number; of a step or a session; 0 for a wait" in sections["Row"]
    assert "- waived: a list of a pair (text, text); " in sections["TeacherSheet"]


def test_every_class_that_a_sheet_is_made_of_is_told() -> None:
    assert {one.__name__ for one in classes()} == {
        name
        for module in (view, lists_view, kit_cards_view)
        for name, one in vars(module).items()
        if dataclasses.is_dataclass(one)
    }


def test_every_template_is_told_with_what_it_gets(told: str) -> None:
    for path in (ROOT / "themes" / "plain").iterdir():
        assert f"- {path.name}: " in told
    for template, given in {"handout": "Handout", "card": "BenchCard", "project": "Screen", "facts": "Facts"}.items():
        assert f"- {template}.html.j2: `sheet` is {given}" in told
    for way in HOW["handout"].ways:
        assert repr(way) in told


def test_every_block_of_the_printed_sheets_is_told(told: str) -> None:
    for base in ("sheet.html.j2", "list.html.j2"):
        text = (ROOT / "themes" / "plain" / base).read_text("utf-8")
        for block in re.findall(r"block (\w+)", text):
            assert f"- {block}\n" in told.split(f"## Blocks of {base}")[1].split("##", maxsplit=1)[0]


def test_what_a_theme_may_load_and_must_print_is_told(told: str) -> None:
    for words in ("bare names", "no link", "data-told", "data-n", "data-step", "data-may-be-short", "is an error"):
        assert words in told
