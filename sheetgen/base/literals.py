"""Numbers as people write them: 1 1/2 in, 2,5 mm, 8-10 %, ±, vulgar fractions; trade sizes through their tables."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from sheetgen.base.dimension import UNITS, unit
from sheetgen.base.spelling import suggest
from sheetgen.base.tree import Number, Wrong

if TYPE_CHECKING:
    from collections.abc import Callable

    from sheetgen.base.interval import Interval

GAUGES: dict[str, Callable[[float], float]] = {}
"""Units whose steps are a table or a formula: awg, swg, cards; a number to mm. Registered by formulas/scales.py."""
SCALES: dict[str, Callable[[str], Interval]] = {}
"""Trade sizes: US, UK, ISO, JP, PP, SS; the text after the name to mm. Registered by formulas/scales.py."""

_VULGAR = {"½": 1 / 2, "¼": 1 / 4, "¾": 3 / 4, "⅓": 1 / 3, "⅔": 2 / 3, "⅛": 1 / 8, "⅜": 3 / 8, "⅝": 5 / 8, "⅞": 7 / 8}
_RANGE = re.compile(r"( *– *|-| to | *± *)")


def amount(text: str, at: int, unit_text: str = "", unit_at: int = 0) -> Number:
    """A number or range with its unit, in ours. Raises Wrong with the character to blame."""
    usual, low, high = _ends(text.strip(), at)
    if not unit_text:
        return Number(usual, (), *((low, high) if low != high else (None, None)))
    written = UNITS.get(unit_text)
    if written is not None:
        told = [(x + written.zero) * written.factor for x in (usual, low, high)]
        return Number(told[0], written.unit, *(told[1:] if low != high else (None, None)))
    if gauge := GAUGES.get(unit_text.lower()):
        try:
            each = [gauge(x) for x in (usual, low, high)]
        except ValueError as fault:
            raise Wrong(str(fault), unit_at, len(unit_text), getattr(fault, "help", "")) from None
        return Number(each[0], unit("mm"), *((min(each), max(each)) if low != high else (None, None)))
    try:
        plain = unit(unit_text)
    except KeyError:
        helped = suggest(unit_text, [*UNITS, *GAUGES], 60)
        raise Wrong(f"the unit '{unit_text}' is not known", unit_at, len(unit_text), helped) from None
    return Number(usual, plain, *((low, high) if low != high else (None, None)))


def named_size(scale: str, text: str, at: int) -> Number:
    """A ring or stone size by its name. Raises Wrong for one that there is not."""
    try:
        found = SCALES[scale](text[len(scale) :].strip())
    except Wrong as wrong:
        raise Wrong(wrong.message, at, len(text), wrong.help) from None
    except ValueError as fault:
        raise Wrong(str(fault), at, len(text), getattr(fault, "help", "")) from None
    return Number(found.usual, unit("mm"), *((found.low, found.high) if found.low != found.high else (None, None)))


def _ends(text: str, at: int) -> tuple[float, float, float]:
    """Usual, low and high of a number, a mixed number or a range."""
    if text[-1] in _VULGAR or re.fullmatch(r"(\d+ +)?\d+/\d+", text):
        plain = _mixed(text, at)
        return plain, plain, plain
    parts = _RANGE.split(text, maxsplit=1)
    if len(parts) == 1:
        plain = _decimal(text, text, at)
        return plain, plain, plain
    low_text, sign, high_text = parts
    if "/" in high_text:
        raise Wrong(f"'{text}' can be read three ways", at, len(text), "write 1 1/2, or 1 - 1/2")
    first, second = _decimal(low_text, text, at), _decimal(high_text, text, at)
    if "±" in sign:
        return first, first - second, first + second
    if first > second:
        helped = f"write {high_text}-{low_text} for a range, or {low_text} - {high_text} to subtract"
        raise Wrong(f"the range '{text}' is upside down", at, len(text), helped)
    return (first + second) / 2, first, second


def _decimal(text: str, whole: str, at: int) -> float:
    """A plain decimal with point or comma; what two people would read two ways is refused."""

    def wrong(message: str, helped: str) -> Wrong:
        return Wrong(message, at, len(whole), helped)

    if re.fullmatch(r"[1-9]\d{0,2},\d{3}", text):
        plain = text.replace(",", "")
        raise wrong(f"'{text}' can be read two ways", f"write {plain}, or {text.replace(',', '.')}")
    if re.match(r"0\d", text):
        raise wrong(f"'{text}' begins with a zero", f"write {text.lstrip('0') or '0'}")
    if not re.fullmatch(r"\d+([.,]\d+)?|\.\d+", text):
        raise wrong(f"'{text}' is not a number", "write 2.5 or 2,5; put a space after a comma that parts two numbers")
    return float(text.replace(",", "."))


def _mixed(text: str, at: int) -> float:
    """A whole number and a fraction: 1 1/2, 3/4, 1½."""
    if text[-1] in _VULGAR:
        whole = text[:-1].strip()
        return (_decimal(whole, text, at) if whole else 0) + _VULGAR[text[-1]]
    *whole_part, fraction = text.split()
    top, bottom = fraction.split("/")
    if not float(bottom):
        raise Wrong("a fraction over zero", at, len(text), "write the part over 2, 4, 8 …")
    return (_decimal(whole_part[0], text, at) if whole_part else 0) + float(top) / float(bottom)
