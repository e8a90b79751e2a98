"""Which way a language is written: the subtags of those that are read from right to left."""

from __future__ import annotations

RIGHT_TO_LEFT = frozenset(
    {"ar", "arc", "azb", "bal", "bqi", "ckb", "dv", "fa", "glk", "he", "iw", "ji", "khw", "ks", "lrc", "mzn", "nqo",
     "pnb", "ps", "rhg", "sd", "sdh", "skr", "syr", "ug", "ur", "yi"}
)  # fmt: skip
"""By their usual script. BCP 47 and the order of characters in the Unicode CLDR, written down from memory."""
SCRIPTS = frozenset({"adlm", "arab", "hebr", "mand", "mend", "nkoo", "rohg", "samr", "syrc", "thaa"})
"""ISO 15924: scripts written from right to left; a subtag of four letters goes before the language's usual one."""
SCRIPT = 4


def direction(language: str) -> str:
    """`rtl` or `ltr`, of a language by BCP 47 such as `en`, `he-IL` or `az-Arab`."""
    first, *more = language.lower().replace("_", "-").split("-")
    script = next((one for one in more if len(one) == SCRIPT and one.isalpha()), "")
    return "rtl" if (script in SCRIPTS if script else first in RIGHT_TO_LEFT) else "ltr"
