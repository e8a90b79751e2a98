"""Ring sizes: every system's name to and from millimetres, and the blank of a ring."""

from __future__ import annotations

import math

from sheetgen.base.trouble import CannotBe
from sheetgen.facts import rings as facts
from sheetgen.facts.units import MM_PER_INCH
from sheetgen.formulas import guard
from sheetgen.formulas.formula import formula, numeric

_CHART = "Wikipedia, Ring size"
_LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"


@numeric("inside diameter = (0.458 + 0.032 × size) in", source=_CHART, valid="size 0 or more")
def us_diameter(n: float) -> float:
    """Inside diameter (mm) of a US or Canadian size. CannotBe below size 0. Wikipedia, Ring size (first form)."""
    guard.not_below_zero(n, "a US ring size", "size", "")
    return (facts.US_BASE + facts.US_STEP * n) * MM_PER_INCH


us_size = formula(
    "us(inside)", f"(inside ÷ {MM_PER_INCH:g} mm − {facts.US_BASE:g}) ÷ {facts.US_STEP:g}",
    about="US or Canadian size of an inside diameter (mm).", source=_CHART,
    valid=f"inside ≥ {facts.US_BASE * MM_PER_INCH:.6g} mm",
)  # fmt: skip


@numeric("inside circumference = 40 + 1.25 × letters from C", source="GNU Units 2.22, after BS 6820:1987")
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


@numeric("inside diameter = size ÷ π", source="Wikipedia, Ring size (ISO 8653:2016)")
def iso_diameter(size: float) -> float:
    """Inside diameter (mm) of an ISO size, which is the inside circumference in mm. CannotBe for 0 or less."""
    guard.above_zero(size, "an ISO ring size", "size", "")
    return size / math.pi


iso_size = formula(
    "iso(inside)", "π × inside", about="ISO 8653 size, the inside circumference in mm, of an inside diameter (mm).",
    source="Wikipedia, Ring size (ISO 8653:2016)", valid="inside > 0",
)  # fmt: skip

uk_size = formula(
    "uk(inside)", f"(π × inside − {facts.UK_BASE:g} mm) ÷ {facts.UK_STEP:g} mm",
    about="UK size of an inside diameter (mm), letters counted from C.", source="GNU Units 2.22, after BS 6820:1987",
    valid="inside > 0",
)  # fmt: skip


@numeric("inside diameter = (38 + size) ÷ 3", source="GNU Units 2.22, jpringsize()", valid="size 1 or more")
def jp_diameter(n: float) -> float:
    """Inside diameter (mm) of a Japanese size. CannotBe for 0 or less."""
    guard.above_zero(n, "a Japanese ring size", "size", "")
    return (facts.JP_BASE + n) / facts.JP_PER_MM


jp_size = formula(
    "jp(inside)", f"{facts.JP_PER_MM:g} /mm × inside − {facts.JP_BASE:g}",
    about="Japanese size of an inside diameter (mm).",
    source="GNU Units 2.22, jpringsize()", valid=f"inside > {facts.JP_BASE / facts.JP_PER_MM:.6g} mm",
)  # fmt: skip
