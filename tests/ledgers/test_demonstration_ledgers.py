"""The ledgers of the demonstration, as they are kept, agree with what its sheets print."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from sheetgen.base.trouble import Troubles
from sheetgen.model.ledger import ledger_of
from sheetgen.model.moved import moved
from sheetgen.publish.ledgers import ledger_text
from sheetgen.read.ledgers import read_ledgers

PROJECTS = Path(__file__).parents[2] / "projects"


def test_every_design_has_a_ledger_of_its_revision_with_the_numbers_it_prints(demo: Any) -> None:
    outcome = demo.check()
    assert len(outcome.worked) == len(list(PROJECTS.glob("*/project.yaml")))
    differ = {}
    for worked in outcome.worked:
        troubles = Troubles()
        ledgers = {one.revision: one for one in read_ledgers(PROJECTS / worked.name, troubles)}
        assert list(troubles) == []
        was, now = ledgers[worked.revision], ledger_of(worked, "")
        assert [one.title for one in was.versions] == [one.title for one in now.versions]
        rows = [row for old, new in zip(was.versions, now.versions, strict=True) for row in moved(old, new)]
        if rows or [one.code for one in was.versions] != [one.code for one in now.versions]:
            differ[worked.name] = rows
    assert differ == {}


def test_a_ledger_that_is_read_and_written_again_is_the_same_to_the_letter() -> None:
    paths = sorted(PROJECTS.glob("*/ledger/*.json"))
    assert paths
    for path in paths:
        [one] = [one for one in read_ledgers(path.parents[1], Troubles()) if f"-{one.revision}." in path.name]
        assert ledger_text(one) == path.read_text("utf-8")
