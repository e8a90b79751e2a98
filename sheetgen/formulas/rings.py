"""Ring sizes: every system's name to and from millimetres, and the blank of a ring."""

from __future__ import annotations

import math

from sheetgen.base.spread import GRAIN
from sheetgen.base.trouble import CannotBe
from sheetgen.facts import rings as facts
from sheetgen.facts.units import MM_PER_INCH
from sheetgen.formulas import guard
from sheetgen.formulas.formula import formula
from sheetgen.formulas.wrap import strip_round

_CHART = "Wikipedia, Ring size"
_UNITS = "GNU Units 2.22"
_LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"


@formula("inside diameter = (0.458 + 0.032 × size) in", source=_CHART, valid="size 0 or more")
def us_diameter(n: float) -> float:
    """Inside diameter (mm) of a US or Canadian size. CannotBe below size 0. Wikipedia, Ring size (first form)."""
    guard.not_below_zero(n, "a US ring size", "size", "")
    return (facts.US_BASE + facts.US_STEP * n) * MM_PER_INCH


@formula("size = (inside diameter in inches − 0.458) ÷ 0.032", source=_CHART, valid="size 0 or more")
def us_size(d: float) -> float:
    """US or Canadian size of an inside diameter (mm). CannotBe for what is smaller than size 0."""
    size = (d / MM_PER_INCH - facts.US_BASE) / facts.US_STEP
    if not -GRAIN <= size < math.inf:
        least = facts.US_BASE * MM_PER_INCH
        raise CannotBe(f"an inside of {guard.shown(d)} has no US size", help=guard.at_least(least), field="inside")
    return max(0.0, size)


@formula("inside diameter = (0.455 + 0.0326 × size) in", source="supplier article, Measuring a ring blank")
def us_diameter_by_table(n: float) -> float:
    """Inside diameter (mm) by a supplier's table, a second form of the US sizes. CannotBe below size 0."""
    guard.not_below_zero(n, "a US ring size", "size", "")
    return (facts.US_TABLE_BASE + facts.US_TABLE_STEP * n) * MM_PER_INCH


@formula("inside circumference = (1.4216 + 0.1018 × size) in", source=_UNITS, valid="size 2 or more")
def us_circumference_by_units(n: float) -> float:
    """Inside circumference (mm) by GNU Units, a third form of the US sizes. CannotBe below size 2."""
    if not facts.US_ROUND_LEAST <= n < math.inf:
        raise CannotBe(f"this form has no US size {guard.shown(n, '')}", help="2 or more", field="size")
    return (facts.US_ROUND_BASE + facts.US_ROUND_STEP * n) * MM_PER_INCH


@formula("inside circumference = 40 + 1.25 × letters from C", source="GNU Units 2.22, after BS 6820:1987")
def uk_circumference(k: float) -> float:
    """Inside circumference (mm) of a UK size counted in letters from C (A is −2). CannotBe before A."""
    if not facts.UK_FIRST <= k < math.inf:
        raise CannotBe("there is no UK ring size before A", help="A or later", field="size")
    return facts.UK_BASE + facts.UK_STEP * k


def uk_mm(letter: str) -> float:
    """Inside circumference (mm) of a UK, Irish, Australian size such as N or N½. CannotBe for what is no letter."""
    text = letter.strip().upper().replace(" ", "")
    for half in ("½", "1/2", ".5"):
        text = text.replace(half, "+")
    half_letter = text.endswith("+")
    name = text.removesuffix("+")
    if len(name) != 1 or name not in _LETTERS:
        raise CannotBe(f"'{letter}' is not a UK ring size", help="A to Z, with or without ½, such as N½", field="size")
    index = facts.UK_FIRST + _LETTERS.index(name) + (0.5 if half_letter else 0)
    return uk_circumference.pure(index)


def uk_letter(circumference: float) -> str:
    """The nearest UK half letter to an inside circumference (mm). CannotBe off A to Z½. GNU Units, BS 6820:1987."""
    halves = round(2 * ((circumference - facts.UK_BASE) / facts.UK_STEP - facts.UK_FIRST))
    if not 0 <= halves < 2 * len(_LETTERS):
        raise CannotBe(
            f"an inside circumference of {guard.shown(circumference)} has no UK letter",
            help=f"{uk_mm('A'):g} to {uk_mm('Z½'):g} mm",
            field="inside",
        )
    return _LETTERS[halves // 2] + ("½" if halves % 2 else "")


@formula(
    "half spread in letters = wet circumference × (high − low) ÷ 2 ÷ 1.25", source="GNU Units 2.22, after BS 6820:1987"
)
def uk_half_spread(wet_circumference: float, s_low: float, s_high: float) -> float:
    """How many UK letters a fired ring may miss its size by, on either side. CannotBe if the range is upside down."""
    guard.above_zero(wet_circumference, "a circumference", "inside")
    if s_low > s_high:
        raise CannotBe("the lower shrinkage is above the higher one", help="low first, high second", field="shrinkage")
    return wet_circumference * (s_high - s_low) / 2 / facts.UK_STEP


@formula("inside diameter = size ÷ π", source="Wikipedia, Ring size (ISO 8653:2016)")
def iso_diameter(size: float) -> float:
    """Inside diameter (mm) of an ISO size, which is the inside circumference in mm. CannotBe for 0 or less."""
    guard.above_zero(size, "an ISO ring size", "size", "")
    return size / math.pi


@formula("size = π × inside diameter", source="Wikipedia, Ring size (ISO 8653:2016)")
def iso_size(d: float) -> float:
    """ISO size of an inside diameter (mm). CannotBe for 0 or less."""
    guard.above_zero(d, "an inside diameter", "inside")
    return math.pi * d


@formula("inside diameter = (38 + size) ÷ 3", source="GNU Units 2.22, jpringsize()", valid="size 1 or more")
def jp_diameter(n: float) -> float:
    """Inside diameter (mm) of a Japanese size. CannotBe for 0 or less."""
    guard.above_zero(n, "a Japanese ring size", "size", "")
    return (facts.JP_BASE + n) / facts.JP_PER_MM


@formula("size = 3 × inside diameter − 38", source="GNU Units 2.22, jpringsize()")
def jp_size(d: float) -> float:
    """Japanese size of an inside diameter (mm). CannotBe for what is too small to have one."""
    size = facts.JP_PER_MM * d - facts.JP_BASE
    if not 0 < size < math.inf:
        least = (facts.JP_BASE + 1) / facts.JP_PER_MM
        raise CannotBe(
            f"an inside of {guard.shown(d)} has no Japanese size", help=guard.at_least(least), field="inside"
        )
    return size


@formula("size = inside circumference − 40", source=_CHART, valid="Italy, Spain, the Netherlands, Switzerland")
def europe(circumference: float) -> float:
    """Italian, Spanish, Dutch or Swiss size of an inside circumference (mm). CannotBe for 0 or less."""
    guard.above_zero(circumference, "an inside circumference", "inside")
    return circumference - facts.EUROPE_BASE


@formula("inside circumference = 40 + size", source=_CHART, valid="Italy, Spain, the Netherlands, Switzerland")
def europe_circumference(size: float) -> float:
    """Inside circumference (mm) of an Italian, Spanish, Dutch or Swiss size. CannotBe if nothing is left."""
    guard.above_zero(facts.EUROPE_BASE + size, "an inside circumference", "size")
    return facts.EUROPE_BASE + size


@formula(
    "blank = π × (inside + thickness), and 0.5 mm more if the band is wider than 4 mm",
    source="supplier article, Measuring a ring blank",
)
def ring_blank(inside_diameter: float, thickness: float, width: float) -> float:
    """Length (mm) of a ring's strip. CannotBe for sizes of 0 or less. Supplier article, Measuring a ring blank."""
    guard.above_zero(width, "a band width", "width")
    extra = facts.WIDE_BAND_EXTRA if width > facts.WIDE_BAND else 0.0
    return strip_round.pure(inside_diameter, thickness) + extra
