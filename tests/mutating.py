"""Files as a slip of the hand, a bad disk or a strange program leaves them: one line of a whole one made otherwise."""

from __future__ import annotations

import random
import re
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

ODD = (
    "", " ", "0", "-3 mm", "-0", "999999999999 mm", "1e308", "1e-308 mm", "3 furlongs", "5 kg", "40 °C", "NaN", "inf",
    "[]", "{}", "[[[[", "{a: b}", "[a, {b: c}]", "null", "true", "no", '"', "'", '"not closed', "it's", "\t", "a\tb",
    "\0", "\x1b[2J", "\u202eabc", "\u200b", "\ufeff", "\ufffd", "½ mm", "٣ mm", "e\u0301", "1/0", "1 ÷ 0", "√(0 − 1)",
    "x" * 9000, "9" * 400, "{{ x }}", "{{", "}}", "{{ 1 ÷ 0 }}", "{% for a in b %}", "{#", "&a", "*a", "!!int 3", "|",
    ">", "- a", "a: b: c", "#", ":", "(" * 150, "-" * 200 + "1", "9 ^ 9 ^ 9", "10-5 mm", "5-10-15 mm", "20 mm 30 mm",
    "12,5 mm", "1.250,00 EUR", "$3", "120 %", "=1+1", '=HYPERLINK("x")', "@x", "+1", "../../x", "/dev/zero",
    "2026-02-30", "**a" * 60, ">" * 150, "<b>x</b>", "&lt;", "&#0;", "url(#a)", "1e400", "M0 0L", "none", "main",
    "clay", "count", "title", "self", "__class__", ";" * 30, "," * 30, '""""', '"a"b',
)  # fmt: skip
"""What stands in place of a value: nothing, too much, of another unit or kind, signs that mean something elsewhere."""
SIGNS = "\t\0\x1b\u202e\"'{}[]()<>&*!|:;,#-=%$@\\/^~×÷√²½°é\u0301\ufeff\U0001f980 0.x"
VALUE = re.compile(r"(?<=: )\S[^\n]*|(?<=- )\S[^\n]*")
PART = re.compile(r"[^\s:,;=\[\]{}()<>\"'|%]+")
KEY = re.compile(r"^(\s*)(?:- )?\{?([^\W\d_][^:#{}\[\]\"]*?):(?:\s|$)")
FIELD = re.compile(r"([^\W\d_][\w' -]*):(?=\s|$)")
WORD = re.compile(r"[^\W\d_][\w-]{2,}")


@dataclass(frozen=True)
class Mutant:
    """A text with a line made otherwise: which lines that are, from 1; `names` are those that it may have been for."""

    text: str
    way: str
    first: int
    last: int
    names: frozenset[str]


def mutant(text: str, seed: int) -> Mutant:
    """The mutant of that seed, always the same."""
    dice = random.Random(seed)  # noqa: S311 - chance, not secrecy
    lines = text.split("\n")
    told = [n for n, line in enumerate(lines) if line.strip()]
    at = dice.choice(told)
    way = dice.choice(list(WAYS))
    made, last = list(lines), at
    last += WAYS[way](made, at, dice)
    names = {name for n in {at, min(last, len(lines) - 1)} for name in names_at(lines, n)}
    names |= {name for line in made[at : last + 1] for name in words_of(line)}
    return Mutant("\n".join(made), way, at + 1, last + 1, frozenset(names))


def words_of(line: str) -> set[str]:
    """What a line may name: its fields, whole and word by word, and each word by itself that is one."""
    return {*WORD.findall(line[:2000]), *(key.strip() for key in FIELD.findall(line[:2000]))}


def names_at(lines: Sequence[str], at: int) -> set[str]:
    """The words of a line, and the names of the fields that it stands under."""
    found = words_of(lines[at])
    deep = len(lines[at]) - len(lines[at].lstrip())
    for line in reversed(lines[:at]):
        if (key := KEY.match(line)) and len(key[1]) < deep:
            deep = len(key[1])
            found |= {key[2], *WORD.findall(key[2])}
    return found


def _deleted(lines: list[str], at: int, _dice: random.Random) -> int:
    del lines[at]
    return 0


def _doubled(lines: list[str], at: int, _dice: random.Random) -> int:
    lines.insert(at, lines[at])
    return 1


def _swapped(lines: list[str], at: int, _dice: random.Random) -> int:
    other = min(at + 1, len(lines) - 1)
    lines[at], lines[other] = lines[other], lines[at]
    return other - at


def _indented(lines: list[str], at: int, dice: random.Random) -> int:
    bare = lines[at].lstrip()
    deep = len(lines[at]) - len(bare)
    lines[at] = dice.choice((" ", "  ", "    ", "\t")) + lines[at] if dice.random() < 0.6 else " " * (deep // 2) + bare
    return 0


def _dropped(lines: list[str], at: int, dice: random.Random) -> int:
    one = dice.randrange(len(lines[at]))
    lines[at] = lines[at][:one] + lines[at][one + 1 :]
    return 0


def _inserted(lines: list[str], at: int, dice: random.Random) -> int:
    one = dice.randrange(len(lines[at]) + 1)
    lines[at] = lines[at][:one] + dice.choice(SIGNS) + lines[at][one:]
    return 0


def _cut(lines: list[str], at: int, dice: random.Random) -> int:
    lines[at] = lines[at][: dice.randrange(len(lines[at]))]
    return 0


def _value(lines: list[str], at: int, dice: random.Random) -> int:
    """All that stands after a name, or else a part of the line."""
    found = list(VALUE.finditer(lines[at])) or list(PART.finditer(lines[at]))
    return _put(lines, at, dice, found, dice.choice(ODD))


def _part(lines: list[str], at: int, dice: random.Random) -> int:
    return _put(lines, at, dice, list(PART.finditer(lines[at])), dice.choice(ODD))


def _other(lines: list[str], at: int, dice: random.Random) -> int:
    """A word of another line, where it does not belong."""
    others = PART.findall(dice.choice(lines)) or ["x"]
    return _put(lines, at, dice, list(PART.finditer(lines[at])), dice.choice(others))


def _put(lines: list[str], at: int, dice: random.Random, found: list[re.Match[str]], new: str) -> int:
    if found:
        one = dice.choice(found)
        lines[at] = lines[at][: one.start()] + new + lines[at][one.end() :]
    return 0


WAYS: dict[str, Callable[[list[str], int, random.Random], int]] = {
    "deleted": _deleted, "doubled": _doubled, "swapped": _swapped, "indented": _indented, "dropped": _dropped,
    "inserted": _inserted, "cut": _cut, "value": _value, "part": _part, "other": _other,
}  # fmt: skip
"""What is done to a line; each gives how many lines further it reaches."""
