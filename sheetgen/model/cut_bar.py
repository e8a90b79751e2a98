"""A length of stock that is cut, as a bar of it is drawn: plain numbers in mm, and the words in it."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class CutBar:
    """How long it is, and its pieces in their order: the length of each, how many alike, and what it says.

    `left` says what is left of it, which is `kept` or too short for that; `says` is the text alternative.
    """

    long: float
    pieces: tuple[tuple[float, int, str], ...]
    left: str
    kept: bool
    says: str
