"""Libraries that were made to do harm, and honest ones that look like them: in words, themes, paths and tables."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

HERE = Path(__file__).parent
FOLDERS = ("text", "themes", "paths", "tables")
WRONG = sorted(path for folder in FOLDERS for path in (HERE / folder / "wrong").glob("*.txt"))
HONEST = sorted(path for folder in FOLDERS for path in (HERE / folder / "honest").glob("*.txt"))


def named(path: Path) -> str:
    return f"{path.parts[-3]}-{path.stem}"


def test_there_are_two_hundred_and_eighty_attacks_and_more(record_property: Any) -> None:
    record_property("attacks", len(WRONG))
    record_property("honest", len(HONEST))
    assert len(WRONG) >= 280
    assert len([path for path in WRONG if path.parts[-3] == "tables"]) >= 60
    assert len(HONEST) >= 30


@pytest.mark.parametrize("path", WRONG, ids=named)
def test_a_hostile_library_is_told_and_does_no_harm(path: Path, tmp_path: Path, libraries: Any, hostile: Any) -> None:
    attack = hostile.Attack.read(path)
    assert "told" in attack.meant or "hides" in attack.meant, "an attack says what is told of it, or what is not shown"
    hostile.looked_at(attack, tmp_path, libraries)


@pytest.mark.parametrize("path", HONEST, ids=named)
def test_an_honest_library_that_looks_alike_is_well(path: Path, tmp_path: Path, libraries: Any, hostile: Any) -> None:
    attack = hostile.Attack.read(path)
    assert "told" not in attack.meant
    hostile.looked_at(attack, tmp_path, libraries)
