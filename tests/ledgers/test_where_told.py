"""What a ledger lacks is told at the version that lacks it, and not at the next that has it."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

import pytest

from sheetgen.base.trouble import Troubles
from sheetgen.read.ledgers import read_ledgers

ROOT = Path(__file__).parents[2]
LEDGER = "ledger/revision-2.json"


@pytest.mark.parametrize("lacking", ["title", "fingerprint", "inputs"])
def test_what_a_version_lacks_is_told_at_that_version(lacking: str, tmp_path: Path) -> None:
    project = tmp_path / "buoy-drops"
    shutil.copytree(ROOT / "projects" / "buoy-drops", project)
    path = project / LEDGER
    told = json.loads(path.read_text("utf-8"))
    name = [*told["versions"]][1]
    del told["versions"][name][lacking]
    path.write_text(json.dumps(told, indent=1, ensure_ascii=False), "utf-8")
    troubles = Troubles()
    assert read_ledgers(project, troubles) == []
    [one] = troubles
    assert one.place is not None
    assert json.dumps(name, ensure_ascii=False) in one.place.source.line(one.place.line)
