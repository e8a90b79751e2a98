"""Figures, ranges, times and amounts as the page prints them."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from markupsafe import Markup

from sheetgen.base.rounding import told_end, up_for_buying
from sheetgen.base.spread import GRAIN, Spread, ceil, floor
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.rings import uk_letter

if TYPE_CHECKING:
    from collections.abc import Iterable

    from sheetgen.base.figure import Figure
    from sheetgen.base.material import Phase
    from sheetgen.base.rounding import Rounder
    from sheetgen.model.worked import MaterialLine

HOUR, DAY = 60, 1440
# A time up to so many minutes is printed in steps of so many.
TIME_STEPS = ((10, 1), (6 * HOUR, 5), (12 * HOUR, 30), (3 * DAY, HOUR), (float("inf"), DAY / 2))
QUARTER_INCH, METRE = 6.35, 1000
MARKS = {"US": 4, "UK": 2, "ISO": 10, "JP": 10}  # how many marks a size has on its scale
SCALES = MARKS.keys()
THIN = "\u202f"
NBSP = "\u00a0"


class Numbers:
    """How one studio's numbers read."""

    def __init__(self, rounder: Rounder) -> None:
        self.rounder = rounder

    def value(self, figure: Figure) -> str:
        """The number of a figure without its unit."""
        if figure.unit in SCALES:
            return self.scale(figure.value, figure.unit)
        if figure.unit == "min":
            return self.short(figure.value) if figure.rounding == "short" else self.time(figure.value)
        spread = figure.value
        if figure.unit == "mm" and not spread.exact and figure.rounding == "fine":
            # A fired size: only its ends can be promised. A given one, such as a stone's, is told as it is given.
            given = re.fullmatch(r"[\d.]+", figure.working) and _hundredths(spread)
            return self.rounder.range(spread, 2 if given else 1)
        rounded = self.rounder.rounded(told_end(figure), figure.rounding, figure.unit)
        return self.rounder.words(rounded, figure.unit, figure.rounding)

    def unit(self, figure: Figure) -> str:
        """The unit that stands beside it; a scale's name stands before its number and is in the value."""
        if figure.unit in SCALES or figure.unit == "min":
            return ""
        return self.rounder.unit(figure.unit)

    def words(self, figure: Figure) -> Markup:
        """A figure in a line of text: never parted from its unit."""
        value, unit = self.value(figure), self.unit(figure)
        text = f"{value}{NBSP}{unit}" if unit else value
        return Markup('<span class="n">{}</span>').format(text)

    def scale(self, value: Spread, scale: str) -> str:
        """A size of a trade scale to the nearest mark; of a range the low end down and the high end up."""
        marks = MARKS[scale]
        low, high = floor(value.low * marks) / marks, ceil(value.high * marks) / marks
        if value.exact:
            low = high = floor(value.usual * marks + 0.5) / marks
        if scale == "UK":
            try:
                ends = [uk_letter(40 + 1.25 * n) for n in (low, high)]
            except CannotBe:
                return f"outside the UK scale ({40 + 1.25 * value.usual:.1f}{NBSP}mm round)"
        elif scale == "US":
            ends = [_quarters(n, self.rounder) for n in (low, high)]
        else:
            keep = bool(low % 1 or high % 1)
            ends = [self.rounder.decimal(n, 1, keep=keep) for n in (low, high)]
        span = ends[0] if ends[0] == ends[1] else f"{ends[0]}{THIN}–{THIN}{ends[1]}"
        return f"{scale}{NBSP}{span}"

    def range(self, value: Spread, places: int = 1) -> str:
        """A range of lengths."""
        return self.rounder.range(value, places)

    def length(self, x: float) -> str:
        """A given length, as it is."""
        return self.rounder.words(x, "mm", "fine")

    def time(self, minutes: Spread) -> str:
        """A time or its range: minutes to five, hours to five minutes or halves, days to halves."""
        low, high = minutes.low, minutes.high
        if high < 2 and high % 1:  # noqa: PLR2004 - half a minute is said in seconds
            return _span(f"{low * 60:.0f}", f"{high * 60:.0f}") + f"{NBSP}s"
        if low == high and high < HOUR:
            return f"{self.rounder.decimal(high, 0)}{NBSP}min"
        low, high = _stepped(minutes)
        if high < 2 * HOUR:
            return _span(f"{low:g}", f"{high:g}") + f"{NBSP}min"
        if 6 * HOUR <= high <= 3 * DAY and low % (HOUR / 2) == 0:
            return _span(*(self.rounder.decimal(n / HOUR, 1) for n in (low, high))) + f"{NBSP}h"
        if high <= 6 * HOUR:
            return _hours_span(low, high)
        return _span(*(self.rounder.decimal(n / DAY, 1) for n in (low, high))) + f"{NBSP}days"

    def added(self, times: Iterable[Spread]) -> str:
        """Several times one after the other: the sum of what is printed of each, as a reader adds them."""
        ends = [_stepped(one) if one.low != one.high else (one.low, one.high) for one in times]
        low, high = (sum(end) for end in zip(*ends, strict=True)) if ends else (0.0, 0.0)
        return self.time(Spread((low + high) / 2, low, high))

    def short(self, minutes: Spread) -> str:
        """A time that must not be overrun: both ends down, to whole minutes."""
        return _span(f"{floor(minutes.low):g}", f"{floor(minutes.high):g}") + f"{NBSP}min"

    def amount(self, line: MaterialLine) -> str:
        """What to have: enough for the highest need and its allowance, rounded up; spare pieces shown apart."""
        if line.net is None:
            return ""
        need = max(line.net.high, line.least) * (1 + line.allowance)
        unit = line.item.unit
        if unit == "piece":
            net = ceil(line.net.high)
            spare = ceil(need) - net
            return f"{net}{THIN}+{THIN}{spare}" if spare else f"{net}"
        if unit == "mm":
            return self._long(need)
        if line.blanks:
            return ", ".join(
                f"{n} of {self._up(long)} × {self._up(wide)}{NBSP}{self.rounder.unit('mm')}"
                for n, long, wide in line.blanks
            )
        if unit == "mm²":
            return f"{self.rounder.decimal(ceil(need / 100), 0)}{NBSP}cm²"
        return f"{self.rounder.decimal(up_for_buying(need), 1)}{NBSP}{unit}"

    def _up(self, mm: float) -> str:
        """A length in print, rounded up."""
        return self.rounder.words(self.rounder.rounded(mm, "bench up"), "mm", "bench up")

    def _long(self, need: float) -> str:
        """A length to buy: quarters of an inch, or millimetres and from a metre on hundredths of one."""
        if self.rounder.inches:
            return f"{self.rounder.words(ceil(need / QUARTER_INCH) * QUARTER_INCH, 'mm', 'bench')}{NBSP}in"
        rounded = up_for_buying(need)
        if rounded < METRE:
            return f"{self.rounder.decimal(rounded, 1)}{NBSP}mm"
        return f"{self.rounder.decimal(ceil(rounded / 10) / 100, 2)}{NBSP}m"

    def firing(self, phase: Phase) -> list[tuple[str, str, str]]:
        """One phase as label, number, unit: temperature, hold, rate, bed."""
        lines = [("Heat to", self.rounder.decimal(phase.to, 0), "°C")]
        if phase.rate:
            lines.append(("Heat up at", self.rounder.decimal(phase.rate.usual * HOUR, 0), "°C/h"))
        hold, _, unit = self.time(phase.hold).rpartition(NBSP)
        lines.append(("Hold", hold, unit))
        if phase.cool_below:
            lines.append(("Cool below", self.rounder.decimal(phase.cool_below, 0), "°C"))
        return lines


def _hundredths(value: Spread) -> bool:
    """Whether a range is given to five hundredths."""
    twentieths = [x * 20 for x in (value.low, value.high)]
    return all(abs(n - round(n)) < GRAIN for n in twentieths) and any(round(n) % 2 for n in twentieths)


def _stepped(minutes: Spread) -> tuple[float, float]:
    """Both ends of a time in whole steps, outwards."""
    step = next(step for most, step in TIME_STEPS if minutes.high <= most)
    return floor(minutes.low / step) * step, ceil(minutes.high / step) * step


def _span(low: str, high: str) -> str:
    return low if low == high else f"{low}{THIN}–{THIN}{high}"


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
