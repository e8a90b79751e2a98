"""The timetable of a class: an evening after the other, a row a slot, its least time black and its most open."""

from __future__ import annotations

import textwrap
from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.base.clock import MINUTES_PER_HOUR, clock
from sheetgen.base.interval import ceil, floor
from sheetgen.draw.paper import Paper

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.model.drawing import Drawing
    from sheetgen.model.plan import ClassPlan, Evening, Slot
    from sheetgen.model.worked import WorkedVersion

WIDE = 180.0  # mm
TITLES, CHART = 14.0, 76.0  # where the titles and the bars begin
MARGIN = 6.0  # right of the bars, for half of the last hour's words
WORDS, HEAD = 3.2, 4.4  # mm high: 9 pt and 12.5 pt
CHARACTER = 0.5  # of its height: what a character of a title takes along the line, semibold
LINE, ROW, BAR = 3.9, 5.4, 3.0  # from one line of a title to the next; the least of a row; a bar
UNDER = 1.0  # mm under the last line of an evening
APART = 12.0  # at least between two hours


@dataclass(frozen=True, slots=True)
class Scale:
    """Minutes of a day to mm along the page: one for all evenings, each from its own begin."""

    minutes: float
    apart: int

    def x(self, minute: float, begin: float) -> float:
        """Where a minute of an evening stands."""
        return CHART + (minute - begin) / self.minutes * (WIDE - MARGIN - CHART)


def timetable(version: WorkedVersion) -> tuple[Drawing, ...]:
    """Each evening of a version's class, so that a page may end between two; none where there is no class."""
    plan = version.plan.class_plan
    if plan is None or not plan.evenings:
        return ()
    scale = _scale(plan.evenings)
    return tuple(_drawn(evening, plan, version, scale) for evening in plan.evenings)


def _drawn(evening: Evening, plan: ClassPlan, version: WorkedVersion, scale: Scale) -> Drawing:
    pen = Paper()
    y = _evening(pen, 0.0, evening, version, scale)
    return pen.drawing((0, 0), WIDE, y, _says(evening, plan, version))


def _scale(evenings: Sequence[Evening]) -> Scale:
    """As long as the longest evening, or what runs over its end; hours as near to each other as can be read."""
    longest = max(max(one.end, one.over, *(slot.end for slot in one.slots)) - one.begin for one in evenings)
    apart = next((m for m in (30, 60, 120) if m / longest * (WIDE - MARGIN - CHART) >= APART), 4 * MINUTES_PER_HOUR)
    return Scale(longest, apart)


def _evening(pen: Paper, y: float, evening: Evening, version: WorkedVersion, scale: Scale) -> float:
    """One evening from y down; where it ends."""
    y += HEAD
    pen.text((0, y), _called(evening, version), size=HEAD)
    hours = list(_hours(evening, scale))
    for minute in hours:
        pen.text((scale.x(minute, evening.begin), y), clock(minute), size=WORDS, anchor="middle")
    y += 1.6
    top = y
    bars = []
    for slot in evening.slots:
        pen.line([(0, y), (WIDE, y)], "thin")
        words = _words(slot, evening, version)
        pen.text((0, y + ROW - 1.6), clock(slot.begin), size=WORDS)
        bars.append((y + (ROW - BAR) / 2, slot))
        y = _lines(pen, (TITLES, y), words, CHART - TITLES - 2)
    for minute in hours:
        x = scale.x(minute, evening.begin)
        pen.line([(x, top), (x, y)], "fired")
    for at, slot in bars:  # over the lines of the hours
        _bar(pen, at, slot, evening.begin, scale)
    pen.line([(0, y), (WIDE, y)], "thin")
    return y + UNDER


def _hours(evening: Evening, scale: Scale) -> Iterator[int]:
    """The full and half hours that are told."""
    first, last = ceil(evening.begin / scale.apart), floor((evening.begin + scale.minutes) / scale.apart)
    yield from (n * scale.apart for n in range(first, last + 1))


def _bar(pen: Paper, y: float, slot: Slot, begin: float, scale: Scale) -> None:
    """Black for the least, open for what the most adds; what is waited for is dashed."""
    left, middle, right = (scale.x(slot.begin + m, begin) for m in (0, slot.minutes.low, slot.minutes.high))
    pen.cover([[(left, y), (right, y), (right, y + BAR), (left, y + BAR)]])
    if slot.waits:
        pen.box((left, y), right - left, BAR, "fold")
        return
    if right > middle:
        pen.box((middle, y), right - middle, BAR, "cut")
    if middle > left:
        pen.box((left, y), middle - left, BAR, "solid")


def _words(slot: Slot, evening: Evening, version: WorkedVersion) -> str:
    """What a row is; the last also says when the evening is over."""
    words = slot.words if slot.step is None else _title(slot.step, version, slot)
    return f"{words}; end {clock(evening.over)}" if slot is evening.slots[-1] else words


def _title(step: int, version: WorkedVersion, slot: Slot | None = None) -> str:
    """A step by its number and its short title; who does it where that is the teacher, and in how many rounds."""
    number, title = version.numbers[step], version.steps[step].short
    words = f"{number} {title}" if number else title
    if slot is not None and slot.by == "teacher":
        words += " (you)"
    return words if slot is None or slot.rounds == 1 else f"{words}, in {slot.rounds} rounds"


def _called(evening: Evening, version: WorkedVersion) -> str:
    """Its number; and its day, where an evening before it is left free."""
    plan = version.plan.class_plan
    usual = (evening.number - 1) * plan.held.days_between if plan else evening.day
    return f"Evening {evening.number}" + (f", on day {evening.day + 1}" if evening.day != usual else "")


def _lines(pen: Paper, corner: tuple[float, float], words: str, wide: float) -> float:
    """Words broken into lines of so many mm; where the row ends."""
    x, y = corner
    lines = textwrap.wrap(words, floor(wide / (CHARACTER * WORDS)))
    for n, line in enumerate(lines):
        pen.text((x, y + ROW - 1.6 + n * LINE), line, size=WORDS)
    return y + ROW + max(0, len(lines) - 1) * LINE


def _says(one: Evening, plan: ClassPlan, version: WorkedVersion) -> str:
    """The same in words."""
    rows = (f"{clock(s.begin)} {_words(s, one, version)}" for s in one.slots)
    return f"{_called(one, version)}, for {plan.held.people} people: {'; '.join(rows)}"
