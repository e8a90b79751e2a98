"""Rounding for the page: what is printed is what is made, so the drawing and the words share this."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING

from sheetgen.base.figure import TO_ITS_MOST
from sheetgen.base.interval import GRAIN, ceil, floor
from sheetgen.base.printed import Printed

if TYPE_CHECKING:
    from collections.abc import Callable

    from sheetgen.base.figure import Rounding
    from sheetgen.base.interval import Interval

INCH = 25.4
INCHES = {"mm": INCH, "mm²": INCH**2, "mm³": INCH**3}
SMALL, LARGE = 10.0, 100.0  # mm: from here on a size is cut finer or coarser than the bench step
LARGE_STEP = 1.0  # mm
NARROW = "\u202f"
COARSE = {"millimetre": (1.0, INCH / 32), "centimetre": (10.0, INCH / 2)}  # wire and cord: steps of a ruler, mm


def to_step(x: float, step: float, rounding: Rounding = "bench") -> float:
    """X to a whole number of steps: nearest, up or down."""
    end = rounding.rpartition(" ")[2]
    turn = {"up": ceil, "most": ceil, "down": floor}.get(end, lambda n: floor(n + 0.5))
    return round(turn(x / step) * step, 9)  # 32.8, and not 32.800000000000004


def told_end(value: Interval, rounding: Rounding) -> float:
    """The end of a figure's range that is printed: the usual one, or the high one of what must be enough."""
    return value.high if rounding in TO_ITS_MOST else value.usual


def up_for_buying(x: float) -> float:
    """Up to a figure a scale or ruler can show: 0.1 under 1, a half under 10, then whole ones, then fives."""
    step = 0.1 if x < 1 else 0.5 if x < 10 else 1 if x < 100 else 5  # noqa: PLR2004 - steps of a bench scale
    return ceil(x / step) * step


def up_for_weighing(g: float) -> float:
    """Up to what a bench scale shows of a piece's own clay: tenths to 10 g, halves to 100 g, then whole grams."""
    step = 0.1 if g < 10 else 0.5 if g < 100 else 1  # noqa: PLR2004 - steps of a bench scale
    return ceil(g / step) * step


@dataclass(frozen=True, slots=True)
class Rounder:
    """The studio's way of rounding: millimetres to a bench step, or inches to sixty-fourths."""

    step: float = 0.5
    inches: bool = False
    point: str = "."

    def rounded(self, x: float, rounding: Rounding, unit: str = "mm") -> float:
        """The number that is printed, still in the figure's own unit."""
        if rounding.startswith("bench") and unit == "mm":
            return to_step(x, INCH / 64 if self.inches else self.bench_step(x), rounding)
        if (steps := _coarse(rounding)) and unit == "mm":
            return to_step(x, steps[self.inches], rounding)
        if rounding in {"tenth", "out"} and unit == "mm":
            return to_step(x, INCH / 64 if self.inches else 0.1)
        if rounding == "length up" and unit == "mm" and self.inches:
            return to_step(x, INCH / 4, "bench up")  # as the list of what is bought
        if rounding == "most":
            return to_step(x, self.shown_step(x, unit), "bench up")  # up to the last place that is printed
        turns: dict[str, Callable[[float], float]] = {
            "mass up": up_for_weighing, "length up": up_for_buying,
            "whole": lambda n: floor(n + 0.5), "whole up": ceil,
        }  # fmt: skip
        return turns.get(rounding, float)(x)

    def bench_step(self, x: float) -> float:
        """The step for a size of x mm: a fifth of the bench step for small ones, a millimetre for large ones.

        Half a millimetre of a 4 mm strip is more than any clay's range of shrinkage, and a calliper reads tenths.
        """
        if abs(x) < SMALL:
            return self.step / 5
        return self.step if abs(x) < LARGE else max(self.step, LARGE_STEP)

    def shown_step(self, x: float, unit: str) -> float:
        """One in the last place that a number as it comes out is printed to."""
        if self.inches and unit in INCHES:
            return INCHES[unit] / 1000
        return 10.0 ** -self.places(x, unit)

    @staticmethod
    def places(x: float, unit: str) -> int:
        """Decimals of what comes out: a pocket scale reads tenths of a gram, a calliper no hundredths of 100 mm."""
        return 1 if abs(x) >= (1 if unit == "g" else LARGE) else 2

    def told(self) -> str:
        """How sizes to cut are rounded, in a sentence."""
        if self.inches:
            return "Sizes to cut are rounded to 1/64 in; wire is cut to 1/32 in, cord to 1/2 in, up."
        steps = (self.step / 5, self.step, max(self.step, LARGE_STEP))
        small, step, large = (f"{self.decimal(n, 3)} mm" for n in steps)
        wire, cord = (f"{step:g} mm" for step, _ in COARSE.values())
        return (
            f"Sizes to cut are rounded to {step}, from {LARGE:g} mm on to {large}; under {SMALL:g} mm, and where a fit "
            f"or a template hangs on them, to {small}. Wire is cut to {wire}, cord to {cord}, up. What is bought is "
            "rounded up."
        )

    def length(self, mm: float, rounding: Rounding = "fine") -> Printed:
        """A length as it is printed."""
        value = self.rounded(mm, rounding)
        return Printed(value, self.words(value, "mm", rounding), self.unit("mm"))

    def bound(self, x: float, unit: str, *, up: bool) -> str:
        """A least or a most that would do, with its unit, rounded to the side that works: what a hand can set."""
        step = 1.0 if not unit else INCH / 64 if self.inches and unit == "mm" else 0.1 if abs(x) >= 1 else 0.01
        value = (ceil if up else floor)(x / step) * step
        words = _inches(value) if self.inches and unit == "mm" else self.decimal(value, 2)
        return f"{words} {self.unit(unit)}".strip()

    def words(self, x: float, unit: str, rounding: Rounding = "fine") -> str:
        """A rounded number in print, without its unit."""
        if self.inches and unit == "mm":
            ruled = rounding.startswith(("bench", "millimetre", "centimetre", "tenth", "out", "length"))
            return _inches(x) if ruled else self.decimal(x / INCH, 3)
        if rounding.startswith("bench"):
            return self.decimal(x, _places(self.bench_step(x)))
        if rounding.startswith(("whole", "millimetre", "centimetre")):
            return self.decimal(x, 0)
        if rounding in {"tenth", "out"}:
            return self.decimal(x, 1)
        if self.inches and unit in INCHES:
            return self.decimal(x / INCHES[unit], 3)
        return self.decimal(x, self.places(x, unit))

    def decimal(self, x: float, places: int, *, keep: bool = False) -> str:
        """A decimal in the studio's notation; needless zeros go unless kept."""
        text = f"{abs(x) + GRAIN * 0.01:.{places}f}"
        if not keep and "." in text:
            text = text.rstrip("0").rstrip(".")
        sign = "−" if x < 0 and text.strip("0.") else ""
        return sign + text.replace(".", self.point)

    def range(self, value: Interval, places: int, unit: str = "mm") -> str:
        """A range in print: the low end rounded down, the high end up."""
        scale = 10**places
        if self.inches and unit == "mm":
            low, high, places = value.low / INCH, value.high / INCH, places + 2
            scale = 10**places
        else:
            low, high = value.low, value.high
            if unit == "mm" and low >= LARGE and high - low >= LARGE_STEP:
                scale, places = 1, 0  # tenths of such a length say more than is known
        ends = [
            self.decimal(n, places, keep=places > 0) for n in (floor(low * scale) / scale, ceil(high * scale) / scale)
        ]
        if ends[0] == ends[1]:
            return self.decimal(low, places) if unit == "mm" and low >= LARGE and not self.inches else ends[0]
        # A dash before a minus sign would be read as two minus signs.
        return f"{ends[0]} to {ends[1]}" if low < 0 else f"{ends[0]} – {ends[1]}"

    def unit(self, unit: str) -> str:
        """The unit as printed beside `words`."""
        return unit.replace("mm", "in") if self.inches and unit in INCHES else unit


def _coarse(rounding: Rounding) -> tuple[float, float] | None:
    """The step of wire or cord, mm, for a studio in mm and for one in inches; None for what is cut finer."""
    return COARSE.get(rounding.partition(" ")[0])


def _places(step: float) -> int:
    """Decimals that write every multiple of a step: two for 0.25, and three at most."""
    return next((n for n in range(3) if abs(step * 10**n - round(step * 10**n)) < GRAIN), 3)


def _inches(x: float) -> str:
    """Millimetres as a mixed fraction of an inch to 1/64."""
    whole = Fraction(round(x / INCH * 64), 64)
    inches, part = divmod(whole, 1)
    if not part:
        return str(inches)
    return f"{inches} {part}" if inches else str(part)
