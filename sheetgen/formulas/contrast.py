"""How well one colour stands out on another."""

from __future__ import annotations

import math
import re

from sheetgen.base.trouble import CannotBe
from sheetgen.facts import paper as facts
from sheetgen.formulas import guard
from sheetgen.formulas.formula import numeric

_WCAG = "W3C, WCAG 2.2, relative luminance"


def _light(value: float) -> float:
    guard.share(value, "a colour value")
    if value <= facts.LINEAR_TO:
        return value / facts.LINEAR_BY
    return math.pow((value + facts.CURVE_OFFSET) / (1 + facts.CURVE_OFFSET), facts.CURVE_POWER)


@numeric("luminance = 0.2126 R + 0.7152 G + 0.0722 B, each made linear", source=_WCAG)
def luminance(red: float, green: float, blue: float) -> float:
    """Relative luminance of a screen colour, each part 0 to 1. CannotBe off 0 to 1."""
    return facts.RED * _light(red) + facts.GREEN * _light(green) + facts.BLUE * _light(blue)


@numeric("contrast = (lighter + 0.05) ÷ (darker + 0.05)", source=_WCAG)
def contrast_of_luminances(one: float, other: float) -> float:
    """Contrast of two luminances, 1 to 21, in either order. CannotBe off 0 to 1."""
    guard.share(one, "a luminance")
    guard.share(other, "a luminance")
    return (max(one, other) + facts.FLARE) / (min(one, other) + facts.FLARE)


def contrast(one: str, other: str) -> float:
    """Contrast of two colours such as '#767676' and '#fff'. CannotBe for what is no such colour. W3C, WCAG 2.2."""
    return contrast_of_luminances.pure(luminance.pure(*_parts(one)), luminance.pure(*_parts(other)))


def _parts(colour: str) -> tuple[float, float, float]:
    text = colour.strip().removeprefix("#")
    if re.fullmatch(r"[0-9a-fA-F]{3}", text):
        text = "".join(2 * c for c in text)
    if not re.fullmatch(r"[0-9a-fA-F]{6}", text):
        raise CannotBe(
            f"'{colour}' is not a colour", help="# and six hexadecimal digits, such as #595959", field="colour"
        )
    red, green, blue = (part / facts.COLOUR_STEPS for part in bytes.fromhex(text))
    return red, green, blue
