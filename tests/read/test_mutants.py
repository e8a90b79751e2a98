"""Five hundred files broken in one line: whatever is told of one is told there, soon, and in words."""

from __future__ import annotations

from typing import TYPE_CHECKING

from tests import mutants

if TYPE_CHECKING:
    from pathlib import Path

    import pytest

MANY, SEED = 500, 20
FEW = ("buoy-drops", "limpet-buttons", "slackwater-strand", "tideline-band", "towline-bracelet")


def test_of_five_hundred_broken_files_each_is_well_or_told_where_it_is_broken(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    found = mutants.run(MANY, SEED, tmp_path, FEW)
    with capsys.disabled():
        print(f"\n{found}")  # noqa: T201 - the figures
    assert not found.wrong, "\n".join(found.wrong)
    told = sum(found.many.values()) - found.many[mutants.SOUND]
    assert told > MANY / 3
    assert found.many[mutants.NEAR] > 0.85 * told
