"""Money as files write it: one amount in the studio's currency, exact; of what is written amiss, how to write it."""

from __future__ import annotations

import re
from decimal import Decimal
from typing import TYPE_CHECKING

from sheetgen.base.dimension import MONEY
from sheetgen.base.exact import exact

if TYPE_CHECKING:
    from sheetgen.base.place import Word
    from sheetgen.read.measures import Measures

# A sign or a word for a currency, and what it may stand for (ISO 4217).
SIGNS = {
    "€": ("EUR",), "euro": ("EUR",), "euros": ("EUR",), "£": ("GBP",),
    "$": ("USD", "AUD", "CAD", "NZD"), "¥": ("JPY", "CNY"),
}  # fmt: skip
_MARK = r"[.,'’ \u00a0\u202f]"
_AMOUNT = re.compile(
    rf"(?P<before>[^\d\s+-]*)\s*(?:(?P<thousands>\d{{1,3}}(?:{_MARK}\d{{3}})+)(?P<cents>[.,]\d{{1,2}})?"
    r"|(?P<number>\d+(?:[.,]\d+)?))(?P<dash>[.,][-–—])?\s*(?P<after>[^\d\s]*)"
)
_TWO_WAYS = re.compile(r"[1-9]\d{0,2}[.,]\d{3}")
_UNDER_ONE = re.compile(r"0[.,]\d{3}")


def money(word: Word, name: str, measures: Measures) -> Decimal | None:
    """An amount of the studio's money, 0 or more; None with a trouble. `name` is what it is: a price."""
    currency, troubles = measures.currency, measures.troubles
    example = f"12.50 {currency}"
    if amiss := _amiss(word, name, currency):
        troubles.add(amiss[0], word.place, amiss[1])
        return None
    if not any(map(str.isdigit, word)):
        troubles.add(f"{name} is an amount of money, and '{word}' is not", word.place, example)
        return None
    found = measures.quantity(word)
    if found is None:
        return None
    if found.dimension != MONEY:
        troubles.add(f"{name} is an amount of money, and '{word}' is {found.dimension}", word.place, example)
    elif found.unit != ((currency, 1),):
        troubles.add(f"{name} is in the studio's currency, and '{word}' is not", word.place, example)
    elif not found.value.exact:
        troubles.add(f"{name} is one amount, and '{word}' are several", word.place, f"what is paid, such as {example}")
    elif found.value.usual < 0:
        troubles.add(f"{name} cannot be {word}", word.place, f"0 or more, such as {example}")
    else:
        amount = exact(found.value.usual)
        return Decimal(amount.numerator) / Decimal(amount.denominator)
    return None


def _amiss(word: str, name: str, currency: str) -> tuple[str, str] | None:
    """What is wrong with an amount that a person can read, and how it is written; None where nothing is."""
    found = _AMOUNT.fullmatch(word.strip())
    if found is None:
        return None
    mark, parted, plain = found["before"] + found["after"], found["thousands"], _plain(found)
    sign = mark.lower()
    ours = mark.upper() in {"", currency} or currency in SIGNS.get(sign, ())
    written = f"write {plain} {currency}"
    amiss = None
    if not ours:  # another currency, or no money at all: the reader of measures tells what it is
        if sign in SIGNS:
            amiss = f"{name} is in the studio's currency, and '{word}' is not", f"12.50 {currency}"
    elif parted and _TWO_WAYS.fullmatch(parted) and not found["cents"]:
        less = parted.replace(",", ".").rstrip("0").rstrip(".")
        amiss = f"'{word}' can be read two ways", f"{written}, or {less} {currency}"
    elif parted and not _UNDER_ONE.fullmatch(parted):
        amiss = f"the thousands of '{word}' are parted", written
    elif sign in SIGNS:
        amiss = f"'{word}' has a sign or a word for its currency, which is written in three letters", written
    elif not mark:
        amiss = f"{name} is an amount of money, and '{word}' is a bare number", written
    elif found["dash"] or found["before"] or mark != currency:
        amiss = f"'{word}' is no amount as it is written", written
    return amiss


def _plain(found: re.Match[str]) -> str:
    """Its number as it is written here: a point before the cents, and nothing at the thousands."""
    if found["thousands"]:
        return re.sub(r"\D", "", found["thousands"]) + (found["cents"] or "").replace(",", ".")
    return found["number"].replace(",", ".")
