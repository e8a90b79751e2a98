"""Orders that are sent in the tests: worked, and put into the private list as a run of orders does."""

from __future__ import annotations

import datetime as dt
from typing import TYPE_CHECKING, Any, NamedTuple

import pytest

from sheetgen.base.trouble import Troubles
from sheetgen.kits.ordered import Order, Part, Run
from sheetgen.kits.taken import Kits
from sheetgen.pipeline import work_one, work_through
from sheetgen.runs.sent import keep_sent, sent_list

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from sheetgen.model.worked import Worked


class SentLine(NamedTuple):
    """So many kits of one kind for an order."""

    order: str
    design: str
    version: str = "As designed"
    choices: dict[str, str] = {}  # noqa: RUF012 - never changed
    colourway: str = ""
    many: int = 1
    only: frozenset[str] = frozenset()
    leave_out: frozenset[str] = frozenset()


@pytest.fixture(scope="session", name="line")
def one_line() -> type[SentLine]:
    return SentLine


def send(root: Path, private: Path, *lines: SentLine, day: int = 1) -> int:
    """Send what the lines say on a day of December; how many lines the list is longer by."""
    outcome = work_through(root)
    parts: dict[str, list[Part]] = {}
    for line in lines:
        troubles = Troubles()
        worked: Worked | None = next(one for one in outcome.worked if one.name == line.design)
        if line.choices:
            assert outcome.library is not None
            assert worked is not None
            filed = next(one for one in outcome.library.projects if one.name == line.design)
            name = worked.version(line.version).name
            worked, troubles = work_one(filed, outcome.library, [], line.choices, name)
        assert worked is not None, list(map(str, troubles))
        version = worked.version(line.version)
        way = next((one for one in version.colourways if one.name == line.colourway), None)
        kits = Kits(
            worked, version, line.many, tuple(line.choices.items()), way, line.leave_out, line.only, posted=True
        )
        parts.setdefault(line.order, []).append(Part(kits, line.many))
    orders = tuple(Order(number, "Ida Invented", "With love", None, tuple(each)) for number, each in parts.items())
    run = Run(orders, tuple(part.kits for each in parts.values() for part in each))
    there = sent_list(private, Troubles())
    return keep_sent(root, private, there, run, dt.date(2026, 12, day)).added


@pytest.fixture
def sends(library: Any, tmp_path: Path) -> Callable[..., int]:
    """Orders of the small library, whose drops come in two colourways."""
    library.change("stock/others.yaml", "findings:\n", SMOKE + "findings:\n")
    library.change("drops/project.yaml", "versions:\n", WAYS + "versions:\n")

    def sent(*lines: SentLine, day: int = 1) -> int:
        return send(library.root, tmp_path / "private", *lines, day=day)

    return sent


@pytest.fixture(scope="session", name="send")
def sending() -> Callable[..., int]:
    return send


SMOKE = """\
  glass-2-smoke:
    name: Glass stone, 2 mm, smoke
    size: 1.95-2 mm
    height: 1.5 mm
    kiln: no
    sources:
      size: invented
"""
WAYS = """\
colourways:
  of: stone
  grey sea: "1 glass-2 : 1 glass-2-smoke"
  dusk: "1 glass-2 : 2 glass-2-smoke"
"""
