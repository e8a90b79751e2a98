"""The page of formulas, rules and facts holds them all, and the list on the command line says the same."""

from __future__ import annotations

import html
import re
from typing import Any

import pytest
from click.testing import CliRunner

from sheetgen.cli import main
from sheetgen.facts.rules import RULES
from sheetgen.formulas.every import every


@pytest.fixture
def rows(library: Any, quick: None) -> list[list[str]]:  # noqa: ARG001 - quick is for its effect
    """Every row of every table of the page, cell by cell."""
    library.publish()
    page = (library.build / "facts.html").read_text("utf-8")
    found = [
        re.findall(r"<td[^>]*>(.*?)</td>", row, re.DOTALL) for row in re.findall(r"<tr>(.*?)</tr>", page, re.DOTALL)
    ]
    return [
        [" ".join(html.unescape(cell).replace("’", "'").split()) for cell in row] for row in found if row
    ]  # a unit keeps to its number, and an apostrophe is round


def test_every_rule_is_on_the_facts_page_with_its_reason_its_source_and_who_may_waive_it(rows: list[list[str]]) -> None:
    for name, rule in RULES.items():
        severity = rule.severity if rule.waivable else f"{rule.severity}, never waived"
        assert [name, rule.reason, severity, rule.source] in rows


def test_every_fact_is_on_the_facts_page_with_its_unit_and_how_it_was_seen(rows: list[list[str]]) -> None:
    printed = {row[0]: row[1:] for row in rows}
    _, facts = every()
    for fact in facts:
        value, source, grade = printed[fact.name]
        assert value.endswith(f" {fact.unit}")
        assert source in {fact.source, "as above"}
        assert grade == fact.grade


def test_facts_of_one_subject_stand_together(rows: list[list[str]]) -> None:
    names = [row[0] for row in rows]
    assert abs(names.index("sterling silver begins to melt") - names.index("silver and copper in contact melt")) < 10


def test_no_line_breaks_at_a_relation(library: Any, quick: None) -> None:  # noqa: ARG001
    library.publish()
    page = html.unescape((library.build / "facts.html").read_text("utf-8"))
    formulas = page.partition("<h2>Formulas</h2>")[2].partition("<h2>")[0]
    assert "length\u00a0≥\u00a00" in formulas
    assert re.findall(r".{9} [=<>≤≥≈] .{9}", re.sub(r"<[^>]*>", "|", formulas)) == []


def test_every_rule_is_listed_on_the_command_line_in_one_line() -> None:
    told = CliRunner().invoke(main, ["kinds", "--words"]).stdout.splitlines()
    for name, rule in RULES.items():
        [line] = [line for line in told if line.startswith(f"  {name}: ({rule.severity}")]
        assert line.endswith(rule.reason)
        assert ("never waived" in line) != rule.waivable
