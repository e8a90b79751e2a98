"""A printed number, the groups of them, and the six signs that stand for numbers on the sheets that print them."""

from __future__ import annotations

import hashlib
import json
import re
from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from collections.abc import Iterable

SIGNS = "23456789ABCDEFGHJKMNPQRSTUVWXYZ"
"""Digits and capitals without those that are taken for each other: no 0 and O, no 1, I and L."""
LONG = 6
CODE = re.compile(f"[{SIGNS}]{{{LONG}}}")

FIGURES, SIZES, LISTS, TIMES, FIRING, SAID = "figures", "sizes", "lists", "times", "firing", "said"
GROUPS = (FIGURES, SIZES, LISTS, TIMES, FIRING, SAID)
"""Figures by their names; finished sizes and what pieces fire to; amounts and tools; times; firings; what texts say."""


class Number(NamedTuple):
    """One printed number: its group, the name that it goes by there, what it is called, and its words with the unit.

    A step's numbers go by its place among the steps, so that other words for a step are no other numbers.
    """

    group: str
    key: str
    label: str
    told: str


def fingerprint(numbers: Iterable[Number]) -> str:
    """Six signs for printed numbers: the same numbers, the same signs, on every machine and in every run.

    Group, name and words of each number, by group and name, as JSON in UTF-8; of its SHA-256, read as one number with
    the first byte highest, the rest by 31⁶; that in the figures of SIGNS to base 31, the highest first. What a number
    is called does not count.
    """
    rows = sorted([one.group, one.key, one.told] for one in numbers)
    text = json.dumps(rows, ensure_ascii=False, separators=(",", ":"))
    rest = int.from_bytes(hashlib.sha256(text.encode()).digest(), "big") % len(SIGNS) ** LONG
    signs = []
    for _ in range(LONG):
        rest, last = divmod(rest, len(SIGNS))
        signs.append(SIGNS[last])
    return "".join(reversed(signs))
