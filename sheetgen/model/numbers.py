"""Figures, ranges and times as the page prints them: the one place where a number gets its words and unit."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from sheetgen.base.interval import GRAIN, Interval, ceil, floor
from sheetgen.base.printed import NBSP, Printed
from sheetgen.base.rounding import told_end
from sheetgen.base.trouble import CannotBe
from sheetgen.facts.gauges import CARD
from sheetgen.formulas.rings import uk_letter

if TYPE_CHECKING:
    from collections.abc import Iterable

    from sheetgen.base.figure import Rounding
    from sheetgen.base.material import Phase
    from sheetgen.base.rounding import Rounder

HOUR, DAY = 60, 1440
# A time up to so many minutes is printed in steps of so many.
STEP, TO_STEP = 5, 6 * HOUR  # a time is told to five minutes, up to so many
TIME_STEPS = ((10, 1), (TO_STEP, STEP), (12 * HOUR, 30), (3 * DAY, HOUR), (float("inf"), DAY / 2))
MARKS = {"US": 4, "UK": 2, "ISO": 10, "JP": 10}  # how many marks a size has on its scale
SCALES = MARKS.keys()
THIN = "\u202f"
FINE_WIRE = 0.005  # g: under it a weight is told in mg
WHOLE = 1e-6
COARSE = 20.0  # of ours in a unit, such as an inch, from which a range of it wants two decimals


class Numbers:
    """How one studio's numbers read."""

    def __init__(self, rounder: Rounder) -> None:
        self.rounder = rounder

    def printed(self, value: Interval, unit: str, rounding: Rounding, *, given: bool = False) -> Printed:
        """A number of a unit as it is printed; a range of a `given` size is told as it is given."""
        rounded = self.rounder.rounded(told_end(value, rounding), rounding, unit)
        words, beside = self._words(value, rounded, unit, rounding, given=given)
        return Printed(rounded, words, beside)

    def _words(self, value: Interval, rounded: float, unit: str, rounding: Rounding, *, given: bool) -> tuple[str, str]:
        """Words and unit; a scale's name stands before its number, a degree's sign behind it, in the words."""
        if unit in SCALES or unit == "°":
            return self.scale(value, unit) if unit in SCALES else self.angle(value), ""
        if unit == "min":
            return _parted(self.short(value) if rounding == "short" else self.time(value))
        if unit == "g" and rounding == "fine" and 0 < value.high < FINE_WIRE:
            return self.rounder.words(rounded * 1000, "mg", "fine"), "mg"
        if re.fullmatch(r"[A-Z]{3}(/.+)?", unit) and unit != "ISO":
            return self.rounder.decimal(rounded, 2, keep=True), unit
        if unit == "mm" and not value.exact and rounding == "fine":
            # A fired size: only its ends can be promised. A given one, such as a stone's, is told as it is given.
            return self.rounder.range(value, 2 if given and _hundredths(value) else 1), self.rounder.unit(unit)
        return self.rounder.words(rounded, unit, rounding), self.rounder.unit(unit)

    def angle(self, value: Interval) -> str:
        """An angle or its range, its sign beside it: 30°."""
        return _span(self.rounder.decimal(value.low, 1), self.rounder.decimal(value.high, 1)) + "°"

    def in_unit(self, value: Interval, name: str, factor: float) -> Printed:
        """A number told in a unit of the reader's choice, of which one is `factor` of ours."""
        told = Interval(*(x / factor for x in (value.usual, value.low, value.high)))
        whole = abs(told.usual - round(told.usual)) < WHOLE
        words = self.rounder.decimal(round(told.usual) if whole else told.usual, 0 if whole else 2)
        if not told.exact:
            words = self.rounder.range(told, 1 if factor < COARSE else 2, "")
        plain = name.rstrip("s") if name in {"card", "cards"} else name
        unit = {"card": "card" if words == "1" else "cards"}.get(plain, name)
        return Printed(value.usual, words, unit)

    def scale(self, value: Interval, scale: str) -> str:
        """A size of a trade scale to the nearest mark; of a range the low end down and the high end up."""
        marks = MARKS[scale]
        low, high = floor(value.low * marks) / marks, ceil(value.high * marks) / marks
        if value.exact:
            low = high = floor(value.usual * marks + 0.5) / marks
        if scale == "UK":
            try:
                ends = [uk_letter(40 + 1.25 * n) for n in (low, high)]
            except CannotBe:
                round_ = self.rounder.length(40 + 1.25 * value.usual, "out").told
                return f"outside the UK scale ({round_} round)"
        elif scale == "US":
            ends = [_quarters(n, self.rounder) for n in (low, high)]
        else:
            keep = bool(low % 1 or high % 1)
            ends = [self.rounder.decimal(n, 1, keep=keep) for n in (low, high)]
        span = ends[0] if ends[0] == ends[1] else f"{ends[0]}{THIN}–{THIN}{ends[1]}"
        return f"{scale}{NBSP}{span}"

    def range(self, value: Interval, places: int = 1) -> str:
        """A range of lengths."""
        return self.rounder.range(value, places)

    def length(self, x: float) -> str:
        """A given length, as it is."""
        return self.rounder.words(x, "mm", "fine")

    def finished(self, given: Interval) -> str:
        """A finished size: as it is given; one that is worked, such as that of a ring, to what a calliper reads."""
        if not given.exact:
            return self.range(given)
        plain = abs(given.usual * 20 - round(given.usual * 20)) < GRAIN or self.rounder.inches
        return self.length(given.usual if plain else round(given.usual, 1))

    def time(self, minutes: Interval) -> str:
        """A time or its range: minutes to five, hours to five minutes or halves, days to halves."""
        low, high = minutes.low, minutes.high
        if high < 2 and high % 1:  # noqa: PLR2004 - half a minute is said in seconds
            return _span(f"{low * 60:.0f}", f"{high * 60:.0f}") + f"{NBSP}s"
        if low == high and high < HOUR:
            return f"{self.rounder.decimal(high, 0)}{NBSP}min"
        low, high = stepped(minutes)
        if high < 2 * HOUR:
            return _span(f"{low:g}", f"{high:g}") + f"{NBSP}min"
        if 6 * HOUR <= high <= 3 * DAY and low % (HOUR / 2) == 0:
            return _span(*(self.rounder.decimal(n / HOUR, 1) for n in (low, high))) + f"{NBSP}h"
        if high <= 6 * HOUR:
            return _hours_span(low, high)
        first, last = (self.rounder.decimal(n / DAY, 1) for n in (low, high))
        # Of a wait of days the least is told to the hour, for nobody waits longer than the sheet says.
        return f"{_span(_hours(low) if low % (DAY / 2) else first, last)}{NBSP}days"

    def added(self, times: Iterable[Interval]) -> str:
        """Several times one after the other: the sum of what is printed of each, as a reader adds them.

        Of hours of work it is told to the minute, so that steps, sessions and all come to the same; with a long wait,
        which is told to halves of an hour or of a day, as a time so long is.
        """
        times = list(times)
        if not times:
            return ""
        low, high = (sum(end) for end in zip(*map(_as_told, times), strict=True))
        if all(one.high <= TO_STEP for one in times):
            low, high = floor(low), ceil(high)
            return _span(f"{low:g}", f"{high:g}") + f"{NBSP}min" if high < 2 * HOUR else _hours_span(low, high)
        if high > 3 * DAY:
            low = floor(low / (DAY / 2)) * DAY / 2
        return self.time(Interval((low + high) / 2, low, high))

    def most(self, times: Iterable[Interval]) -> float:
        """The most that `added` tells of several times, min; of none 0."""
        times = list(times)
        low, high = (sum(end) for end in zip(*map(_as_told, times), strict=True)) if times else (0, 0)
        if all(one.high <= TO_STEP for one in times):
            return ceil(high)
        return _as_told(Interval((low + high) / 2, low, high))[1]

    def short(self, minutes: Interval) -> str:
        """A time that must not be overrun: both ends down, to whole minutes."""
        return _span(f"{floor(minutes.low):g}", f"{floor(minutes.high):g}") + f"{NBSP}min"

    def firing(self, phase: Phase) -> list[tuple[str, str, str]]:
        """One phase as label, number, unit: temperature, hold, rate, bed."""
        lines = [("Heat to", self.rounder.decimal(phase.to, 0), "°C")]
        if phase.rate:
            ends = [self.rounder.decimal(rate * HOUR, 0) for rate in (phase.rate.low, phase.rate.high)]
            lines.append(("Heat up at", _span(*ends), "°C/h"))
        lines.append(("Hold", *_parted(self.time(phase.hold))))
        if phase.cool_below:
            lines.append(("Cool below", self.rounder.decimal(phase.cool_below, 0), "°C"))
        return lines


def _hundredths(value: Interval) -> bool:
    """Whether a range is given to five hundredths."""
    twentieths = [x * 20 for x in (value.low, value.high)]
    return all(abs(n - round(n)) < GRAIN for n in twentieths) and any(round(n) % 2 for n in twentieths)


def whole_cards(thickness: float) -> int:
    """How many cards a thickness is; 0 where it is no whole number of them."""
    cards = thickness / float(CARD)
    return round(cards) if abs(cards - round(cards)) < GRAIN * cards else 0


def stepped(minutes: Interval) -> tuple[float, float]:
    """Both ends of a time in whole steps, outwards."""
    step = next(step for most, step in TIME_STEPS if minutes.high <= most)
    least = HOUR if step > HOUR and minutes.low <= 3 * DAY else step
    return floor(minutes.low / least) * least, ceil(minutes.high / step) * step


def _as_told(minutes: Interval) -> tuple[float, float]:
    """Both ends of a time as `Numbers.time` tells it: under two minutes in seconds, one number to the minute."""
    if minutes.high < 2 and minutes.high % 1:  # noqa: PLR2004
        return minutes.low, minutes.high
    if minutes.low == minutes.high < HOUR:
        return (floor(minutes.high + 0.5),) * 2
    return stepped(minutes)


def _span(low: str, high: str) -> str:
    return low if low == high else f"{low}{THIN}–{THIN}{high}"


def _parted(told: str) -> tuple[str, str]:
    """A time as its number and its unit; one told in two units is all words."""
    words, _, unit = told.rpartition(NBSP)
    return (told, "") if re.search(r"[a-z]", words) or not words else (words, unit)


def _hours_span(low: float, high: float) -> str:
    """Two times in hours and minutes, the unit once where both are whole hours."""
    if low < high and low % HOUR == high % HOUR == 0:
        return _span(f"{low / HOUR:g}", f"{high / HOUR:g}") + f"{NBSP}h"
    return _span(_hours(low), _hours(high))


def _hours(minutes: float) -> str:
    hours, rest = divmod(int(minutes), HOUR)
    if not hours:
        return f"{rest}{NBSP}min"
    return f"{hours}{NBSP}h{NBSP}{rest:02d}" if rest else f"{hours}{NBSP}h"


def _quarters(n: float, rounder: Rounder) -> str:
    """A US size to the nearest quarter, as mandrels are marked."""
    quarters = floor(n * 4 + 0.5)
    whole, part = divmod(quarters, 4)
    if n < 0:
        return rounder.decimal(n, 2)
    return f"{whole or ''}{['', '¼', '½', '¾'][part]}" or "0"
