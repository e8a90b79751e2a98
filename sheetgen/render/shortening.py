"""Names and notes as they are set: cleaned, read from the side that they are read from, visibly shortened."""

from __future__ import annotations

import re
import unicodedata

LESS = "…"
NO_SIGNS = {"Cc", "Cs", "Co", "Cn"}
MOVES = re.compile("[\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff\ufff9-\ufffc]")  # the line about; and no letter


def clean(text: str) -> str:
    """A text as it is set: without signs that no page shows, and without those that turn what follows round."""
    kept = "".join(c if c == "\n" or unicodedata.category(c) not in NO_SIGNS else " " for c in text)
    return "\n".join(" ".join(line.split()) for line in MOVES.sub("", kept).splitlines()).strip()


def shortened(text: str, letters: int) -> str | None:
    """A text without so many letters at its end, and a sign that it is so; None where nothing is left to take.

    No letter is parted from its marks.
    """
    whole = text.removesuffix(LESS)
    if not whole:
        return None
    kept = whole[: max(0, len(whole) - letters - 1)]
    while kept and (joined(whole[len(kept)]) or kept[-1] == "\u200d"):
        kept = kept[:-1]
    return kept.rstrip(" ,;·-\n") + LESS


def from_the_right(text: str) -> bool:
    """Whether a text is read from right to left: its first letter that is read some way is (Unicode's rule P2)."""
    ways = (unicodedata.bidirectional(letter) for letter in text)
    return next((way for way in ways if way in {"L", "R", "AL"}), "L") != "L"


def joined(letter: str) -> bool:
    """Whether a sign belongs to the letter before it."""
    return unicodedata.category(letter) in {"Mn", "Mc", "Me"} or letter in "\u200d\ufe0e\ufe0f"
