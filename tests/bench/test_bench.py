"""Small projects, wrong and honest, written from the trade before the rules: what the bench says of each.

Each wrong one names the rule that tells it, and the words of the line to mend; an honest one looks like a wrong one
and is right, and nothing is said of it. Those in fresh/ were written when the rules stood; in hidden/ somebody tried to
hide what hurts behind odd but legal writing.
"""

from __future__ import annotations

import re
import shutil
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from sheetgen import pipeline
from sheetgen.facts.rules import RULES

if TYPE_CHECKING:
    from sheetgen.base.trouble import Trouble

HERE = Path(__file__).parent
WRONG = sorted((*HERE.glob("wrong/*.yaml"), *HERE.glob("fresh/wrong/*.yaml")))
HIDDEN = sorted(HERE.glob("hidden/*.yaml"))
HONEST = sorted((*HERE.glob("honest/*.yaml"), *HERE.glob("fresh/honest/*.yaml")))


def header(case: Path, name: str) -> str:
    found = re.search(rf"^# {name}: (.*)$", case.read_text(), re.MULTILINE)
    return found[1].strip() if found else ""


@cache
def library(kept: Path) -> Path:
    """A library of all cases, each a project of its own."""
    projects = kept / "projects"
    (projects / "stock").mkdir(parents=True)
    shutil.copy(HERE / "studio.yaml", projects / "studio.yaml")
    for stock in HERE.glob("stock*.yaml"):
        shutil.copy(stock, projects / "stock" / stock.name)
    for case in (*WRONG, *HIDDEN, *HONEST):
        (projects / case.stem).mkdir()
        shutil.copy(case, projects / case.stem / "project.yaml")
    return kept


@pytest.fixture(scope="session")
def told(tmp_path_factory: pytest.TempPathFactory) -> dict[str, list[Trouble]]:
    """Every trouble of every case, by the case's name."""
    outcome = pipeline.work_through(library(tmp_path_factory.mktemp("bench")))
    found: dict[str, list[Trouble]] = {case.stem: [] for case in (*WRONG, *HIDDEN, *HONEST)}
    for trouble in outcome.troubles:
        assert trouble.place is not None, trouble
        name = trouble.place.source.name.split("/")[1]
        assert name in found, trouble
        found[name].append(trouble)
    return found


@pytest.mark.parametrize("case", [*WRONG, *HIDDEN], ids=lambda case: case.stem)
def test_a_wrong_project_is_told_by_its_rule(case: Path, told: dict[str, list[Trouble]]) -> None:
    rule = header(case, "rule")
    found = [trouble for trouble in told[case.stem] if trouble.rule == rule]
    assert found, [str(trouble) for trouble in told[case.stem]]
    severity = RULES[rule].severity
    assert {trouble.severity for trouble in found} == {severity}
    assert all(trouble.help for trouble in found)


@pytest.mark.parametrize("case", WRONG, ids=lambda case: case.stem)
def test_a_wrong_project_is_told_of_nothing_else(case: Path, told: dict[str, list[Trouble]]) -> None:
    rule = header(case, "rule")
    assert [str(trouble) for trouble in told[case.stem] if trouble.rule != rule] == []


@pytest.mark.parametrize("case", HONEST, ids=lambda case: case.stem)
def test_nothing_is_said_of_an_honest_project(case: Path, told: dict[str, list[Trouble]]) -> None:
    assert [str(trouble) for trouble in told[case.stem]] == []
