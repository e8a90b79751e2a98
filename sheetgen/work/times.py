"""Minutes of work: once, and for each piece that a step makes; a beginner takes longer."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.dimension import COUNT
from sheetgen.facts.times import BEGINNERS_TAKE
from sheetgen.model.project import LEVELS
from sheetgen.work.stopped import Stopped
from sheetgen.work.waits import time

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from sheetgen.base.interval import Interval
    from sheetgen.model.project import Step
    from sheetgen.parts.piece import Piece
    from sheetgen.work.evaluator import Evaluator

MOST = 5.0  # times as long: nobody is slower, and a slip such as 150 for 150 % is


def minutes(step: Step, evaluator: Evaluator, pieces: Mapping[str, Piece], named: Sequence[str]) -> Interval | None:
    """How long a step takes, min: what is done once, and what each piece of the parts that it names takes."""
    once = time(step.minutes, evaluator, "minutes")
    each = time(step.minutes_each, evaluator, "minutes")
    found = once
    if each is not None:
        if not named and step.minutes_each is not None:
            told = "minutes each are of the pieces of a part, and this step names none"
            evaluator.troubles.add(told, step.minutes_each.place, "name it: parts: [body], or write minutes:")
        all_of_them = each * max((pieces[name].count for name in named), default=1)
        found = all_of_them if once is None else once + all_of_them
    return found if found is None else found * _slower(evaluator)


def _slower(evaluator: Evaluator) -> float:
    """How many times as long whoever makes it takes: a beginner half as much again, unless the project says."""
    written = evaluator.project.beginners_take
    usual = float(BEGINNERS_TAKE) if evaluator.project.level == LEVELS[0] else 1.0
    if written is None:
        return usual
    try:
        share = evaluator.worked(written, "beginners take")
    except Stopped:
        return usual
    if share.dimension != COUNT or not 1 <= share.cases.usual <= MOST:
        evaluator.troubles.add(f"beginners cannot take {written}", written.place, "a share such as 150 %")
        return usual
    return share.cases.usual
