"""Two runs of orders into one private folder: one after the other, and what each has sent is in the list."""

from __future__ import annotations

import threading
from typing import TYPE_CHECKING, Any

import pytest

from sheetgen.publish import alone as lock
from sheetgen.publish.alone import alone

if TYPE_CHECKING:
    from pathlib import Path

WELL, USAGE = 0, 2
ONE, TWO = "Q-1,Ida Invented,towline-bracelet,,1,,,,,,\n", "Q-2,,tideline-band,US 8,1,,,,,,\n"
pytestmark = pytest.mark.usefixtures("no_paper")


def files(folder: Path) -> dict[str, bytes]:
    return {str(path): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def test_a_second_run_says_in_one_sentence_that_another_is_at_work_and_writes_nothing(
    bench: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert bench.orders(ONE).code == WELL
    before = files(bench.private)
    monkeypatch.setattr(lock, "WAIT", 0.2)
    with alone(bench.private):
        told = bench.orders(TWO)
    assert told.code == USAGE
    said = "another run is at work there; start this one again when it has ended"
    assert told.said == f"error: {bench.private} cannot be written: {said}\n"
    assert files(bench.private) == before


def test_a_second_run_that_waited_adds_to_what_the_first_has_sent(bench: Any) -> None:
    """Each begins with no list: had the second read it before the first wrote, the first's line would be lost."""
    bench.private.mkdir()
    first = alone(bench.private)
    first.__enter__()

    def ends() -> None:
        (bench.private / "sent.csv").write_text(
            "order,date,design,version,choices,colourway,count,fingerprint,revision\n"
            "Q-7,2026-11-01,tideline-band,US 8,,,1,K7M3QX,1\n",
            "utf-8",
        )
        first.__exit__(None, None, None)

    threading.Timer(0.3, ends).start()
    assert bench.orders(TWO).code == WELL
    assert [row["order"] for row in bench.sent] == ["Q-7", "Q-2"]
