"""Waits: drying by clay, thickness, open faces and air; curing by adhesive; or a time as written."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.base.dimension import COUNT, LENGTH, TIME
from sheetgen.base.heads import is_name
from sheetgen.base.interval import Interval, interval, over
from sheetgen.base.material import Adhesive
from sheetgen.base.spelling import nearest, plain
from sheetgen.base.tree import number as working_number
from sheetgen.facts.bench import WAITS
from sheetgen.facts.times import DRYING_THICKNESS, USUAL_HUMIDITY
from sheetgen.formulas.drying import drying_range, humidity_slowdown
from sheetgen.work.stopped import Stopped

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from sheetgen.base.material import Item
    from sheetgen.base.place import Word
    from sheetgen.model.project import Step
    from sheetgen.parts.piece import Piece
    from sheetgen.work.evaluator import Evaluator


@dataclass(frozen=True, slots=True)
class Wait:
    """How long, for what, and how it was worked; min."""

    minutes: Interval
    what: str = ""
    working: str = ""


def time(word: Word | None, evaluator: Evaluator, name: str) -> Interval | None:
    """A time; where `name` is minutes a bare number stands for those."""
    if word is None:
        return None
    if _in_words(word, evaluator):
        helped = (
            f"{', '.join(WAITS)}, or a time such as 12 h" if name == "wait" else "a time such as 10 min or 10-15 min"
        )
        evaluator.troubles.add(f"'{word}' is not a time", word.place, helped)
        return None
    try:
        found = evaluator.worked(word, name, wanted="min")
    except Stopped:
        return None
    bare = name == "minutes" and not any(found.dimension)
    if (found.dimension != TIME and not bare) or found.interval.low < 0:
        evaluator.troubles.add(f"'{word}' is not a time", word.place, "write it as 10 min or 12-24 h")
        return None
    return found.interval


def _in_words(word: Word, evaluator: Evaluator) -> bool:
    """Whether a time is told in plain words, such as overnight: no name of the project, nor nearly one."""
    known = (evaluator.choices, evaluator.own, evaluator.parts)
    if not is_name(word) or "." in word or any(plain(word) in names for names in known):
        return False
    return not nearest(str(word), evaluator.names.all_names())


def waiting(
    step: Step, evaluator: Evaluator, parts: Mapping[str, Piece], named: tuple[str, ...], glues: Sequence[Adhesive]
) -> Wait | None:
    """What a step waits for, if it waits; `glues` are its own adhesives, and those before it that have not cured."""
    if step.wait is None:
        return None
    if step.wait == "drying":
        return _drying(step, evaluator, [parts[name] for name in named] or list(parts.values()))
    if step.wait == "curing":
        return _curing(step.wait, evaluator, list(dict.fromkeys(glues)))
    if near := nearest(str(step.wait), WAITS):
        evaluator.troubles.add(f"'{step.wait}' is not a wait", step.wait.place, f"did you mean '{near}'?")
        return None
    minutes = time(step.wait, evaluator, "wait")
    return Wait(minutes) if minutes else None


def _curing(word: Word, evaluator: Evaluator, glues: Sequence[Adhesive]) -> Wait:
    """Until the slowest of them has cured."""
    if not glues and evaluator.missed:  # one of these may have been it
        return Wait(interval(0), "curing")
    if not glues:
        told = "no adhesive is used before this that has not cured"
        evaluator.troubles.add(told, word.place, "name it under uses:, here or where it is used")
        return Wait(interval(0), "curing")
    usual, low, high = (max(getattr(glue.cure, end) for glue in glues) for end in ("usual", "low", "high"))
    cures = [f"{glue.name} {_ends(glue.cure)} min" for glue in glues]
    return Wait(Interval(usual, low, high), "curing", f"the longest of: {'; '.join(cures)}" if len(cures) > 1 else "")


def adhesives(parts: Mapping[str, Piece], named: Sequence[str], uses: Sequence[Item]) -> list[Adhesive]:
    """What a step glues with: what it uses, and what bonds a part that it names."""
    bonding = (one for name in named if name in parts for one in parts[name].roles.get("bonds", ()))
    return [item for item in (*uses, *bonding) if isinstance(item, Adhesive)]


def _drying(step: Step, evaluator: Evaluator, in_hand: Sequence[Piece]) -> Wait:
    """The slowest of the clay parts in hand; of all clay parts where the step names none."""
    times = [found for part in in_hand if (found := _part_dries(step, part, evaluator))]
    if times:
        return max(times, key=lambda wait: wait.minutes.high)
    helped = "add drying: 12-24 h to the clay, or write the time here"
    if step.wait is not None and not evaluator.troubles.errors:
        evaluator.troubles.add("no clay here says how long it dries", step.wait.place, helped)
    return Wait(interval(0), "drying")


def _part_dries(step: Step, part: Piece, evaluator: Evaluator) -> Wait | None:
    """The maker's time, stretched by thickness (to a power of 1 to 2), by a covered face, and by damp air."""
    clay, thickness = part.clay, _thick(step, evaluator) or part.deep
    if clay is None or clay.drying is None:
        return None
    minutes, working = clay.drying, f"{_ends(clay.drying)} min"
    one_face = step.faces == "one"
    if thickness is not None:
        # A slab that dries from one face only is as slow as one of twice its thickness.
        deep = thickness.usual * (2 if one_face else 1)
        meant = clay.drying_thickness or float(DRYING_THICKNESS)
        minutes = drying_range(minutes, deep, meant)
        twice = "2 × " if one_face else ""
        working += f" × ({twice}{working_number(thickness.usual)} ÷ {working_number(meant)}) to the power of 1 to 2"
    elif one_face:
        minutes = over(lambda t, power: t * 2**power, minutes, Interval(1.5, 1, 2))
        working += " × 2 to the power of 1 to 2, for one open face"
    air = _humidity(evaluator)
    if air is not None:
        minutes = minutes * humidity_slowdown(air, float(USUAL_HUMIDITY))
        working += f" × (1 − {float(USUAL_HUMIDITY):g}) ÷ (1 − {_ends(air)})"
    if clay.drying_thickness is None and thickness is not None:
        working += f", the maker’s time taken as meant for {float(DRYING_THICKNESS):g} mm, as is common practice"
    return Wait(minutes, "drying", working)


def _thick(step: Step, evaluator: Evaluator) -> Interval | None:
    """How thick what dries is, mm, where the project says it of parts that lie on each other."""
    if step.thick is None:
        return None
    try:
        found = evaluator.worked(step.thick, "thick", wanted="mm")
    except Stopped:
        return None
    if found.dimension != LENGTH or found.interval.low <= 0:
        evaluator.troubles.add(f"'{step.thick}' is not a thickness", step.thick.place, "write it as 2 mm or 8 cards")
        return None
    return found.interval


def _humidity(evaluator: Evaluator) -> Interval | None:
    word = evaluator.library.studio.humidity
    if word is None:
        return None
    try:
        found = evaluator.worked(word, "humidity")
    except Stopped:
        return None
    if found.dimension != COUNT or not 0 <= found.interval.low <= found.interval.high < 1:
        evaluator.troubles.add(f"a relative humidity cannot be {word}", word.place, "a share such as 40-60 %")
        return None
    return found.interval


def _ends(value: Interval) -> str:
    low, high = working_number(value.low), working_number(value.high)
    return low if low == high else f"{low} to {high}"
