"""Lengths that are no figures, in the words of one that is: millimetres or inches, with the studio's decimal sign."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.rounding import INCH, Rounder

if TYPE_CHECKING:
    from sheetgen.base.figure import Rounding, Size


def in_inches(like: Size) -> bool:
    """Whether a size is printed in inches."""
    try:
        return abs(float(like.words.replace(",", ".").replace("−", "-")) * INCH - like) < abs(float(like)) / 2
    except ValueError:
        return True  # a fraction


def worded(mm: float, like: Size, rounding: Rounding = "tenth") -> str:
    """A length in print, without its unit, as the size beside it is printed."""
    return Rounder(inches=in_inches(like), point="," if "," in like.words else ".").words(mm, "mm", rounding)


def said(like: Size, text: str) -> str:
    """A sentence of sizes in their own unit: it is written with mm."""
    return text.replace(" mm", " in") if in_inches(like) else text
