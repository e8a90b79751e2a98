"""Breaks files of a library in one line, and asks that whatever is told of it is told there, soon, and in words.

`.ci/with --tests python tests/mutants.py NUMBER [SEED]` makes so many mutants of the demonstration's files, by a seed,
and reads, works and checks each of them. 500 of them are in the tests. Demanded of each:

- no exception but what the program tells, and no hanging (tests/hanging.py);
- nothing told (a slip may be honest), or else something told within two lines of the line that is otherwise.

Told elsewhere is right, and counted by itself, where

- a name of that line, or of what the line stands in, is told where it is used, written again, or missing;
- the signs of the file itself no longer fit (a quotation mark, a bracket, a dash, a comment that is not closed), which
  shows further on;
- the line can be read, and what it says no longer holds together with what stands elsewhere;
- the file has no lines that a person sees, or all of it is in question, and the file itself is told.
"""

from __future__ import annotations

import random
import re
import signal
import sys
import tempfile
import time
import traceback
from collections import Counter
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING

from sheetgen.base.spelling import plain
from tests.hanging import SECONDS
from tests.mutating import FIELD, WORD, Mutant, mutant
from tests.readers import Readers, Told

if TYPE_CHECKING:
    from collections.abc import Sequence
    from types import FrameType

LINES = 2
SHARES = {
    "project": 16, "stock": 5, "studio": 2, "steps": 4, "kind": 11, "picture": 16, "theme": 14, "orders": 7,
    "pupils": 2, "till": 8, "ledger": 5, "sent": 5, "book": 5,
}  # fmt: skip
"""How many of a hundred mutants are of each sort of file."""
SIGNS = re.compile(
    "quotation mark|bracket|a dash stands|a colon stands|is not text|has no colon|cannot begin a word|second document"
    "|indentation"
    "|cannot be read as YAML|begins with a figure|inside each other too deep|cut short|TemplateSyntaxError|not JSON"
)
"""What is told where the signs of a file no longer fit."""
OPEN = re.compile(r"\{#(?!.*#\})")
"""A comment of a template that swallows what the others ask it for."""
CALLS = re.compile(r"or line (\d+) of (\S+), which calls it")
SOUND, NEAR, USED, FIT, HOLD, WHOLE = "nothing told", "near", "used", "signs", "hold", "whole file"
FAULT, SLOW, FAR = "an exception", "too slow", "elsewhere"
WORDS = {
    NEAR: f"told within {LINES} lines",
    USED: "told where a name of the line is used",
    FIT: "told where the signs no longer fit",
    HOLD: "told where it no longer holds",
    WHOLE: "told of the file",
    SOUND: "well, and nothing told",
}


class Slow(BaseException):
    """Two seconds of a processor are over."""


@dataclass
class Found:
    """What came of a number of mutants: how many of each, and what must not be, in words."""

    many: Counter[str] = field(default_factory=Counter)
    wrong: list[str] = field(default_factory=list)
    slowest: float = 0.0

    def __str__(self) -> str:
        told = [f"{self.many[one]:6d} {words}" for one, words in WORDS.items()]
        wrong = f"{self.many[FAULT]} exceptions, {self.many[SLOW]} too slow, {self.many[FAR]} told elsewhere"
        head = f"{sum(self.many.values())} mutants: {wrong}; the slowest took {self.slowest:.2f} s"
        return "\n".join([head, *told])


def sort_of(dice: random.Random) -> str:
    return dice.choices(list(SHARES), list(SHARES.values()))[0]


def tried(readers: Readers, number: int, seed: int, found: Found, files: dict[str, list[str]]) -> None:
    """Make one mutant, have it read, and note what came of it."""
    dice = random.Random(f"{seed} {number}")  # noqa: S311 - chance, not secrecy
    sort = sort_of(dice)
    path = dice.choice(files[sort])
    made = mutant((readers.root / path).read_text("utf-8"), dice.randrange(1 << 60))
    began = time.process_time()
    try:
        told = limited(readers, sort, path, made)
    except Slow:
        came, words = SLOW, f"more than {SECONDS} s"
    except Exception:  # noqa: BLE001 - this is what is looked for
        came, words = FAULT, traceback.format_exc()[-1500:]
    else:
        came = judged(path, made, told)
        words = "\n".join(f"      {one.file}:{one.line}: {one.words[:300]}" for one in told[:4])
    found.slowest = max(found.slowest, time.process_time() - began)
    found.many[came] += 1
    if came in {FAULT, SLOW, FAR}:
        line = made.text.split("\n")[made.first - 1 :][:1]
        found.wrong.append(f"{number}: {came}: {path}:{made.first}: {made.way}: {line!a:.300}\n{words}")


def limited(readers: Readers, sort: str, path: str, made: Mutant) -> list[Told]:
    """What is told of a mutant; Slow past the limit."""

    def over(_signal: int, _frame: FrameType | None) -> None:
        raise Slow

    before = signal.signal(signal.SIGPROF, over)
    signal.setitimer(signal.ITIMER_PROF, SECONDS)
    try:
        return readers.told(sort, path, made.text, set(made.names))
    finally:
        signal.setitimer(signal.ITIMER_PROF, 0)
        signal.signal(signal.SIGPROF, before)


def judged(path: str, made: Mutant, told: Sequence[Told]) -> str:
    """Whether what is told is told where it should be."""
    here = [one for one in told if path.endswith(one.file) and one.file]
    came = {
        SOUND: not told,
        NEAR: any(_is_near(made, one.line) for one in here) or any(_calls(path, made, one.words) for one in told),
        USED: any(set(map(plain, made.names)) & named(one.words) for one in told),
        FIT: any(_become_one(one.words, made, one.line) or SIGNS.search(one.words) for one in here)
        or any("UndefinedError" in one.words and OPEN.search(_line_of(made)) for one in told),
        HOLD: not any(one.by_reader for one in told),
        WHOLE: any(one.line <= 1 for one in here),
    }
    return next((way for way, so in came.items() if so), FAR)


def _is_near(made: Mutant, line: int) -> bool:
    return made.first - LINES <= line <= made.last + LINES


def _calls(path: str, made: Mutant, words: str) -> bool:
    """Whether the line is told as the one that calls another, which is blamed."""
    found = CALLS.search(words)
    return found is not None and path.endswith(found[2]) and _is_near(made, int(found[1]))


def _line_of(made: Mutant) -> str:
    return "".join(made.text.split("\n")[made.first - 1 : made.first])


def _become_one(words: str, made: Mutant, line: int) -> bool:
    """Whether something is told twice, and what parted the two was the line that is otherwise."""
    first = [int(one) for one in re.findall(r"first on line (\d+)", words)]
    return any(one <= made.last and made.first <= line for one in first)


def named(words: str) -> set[str]:
    """What a trouble names: what it quotes, whole and by its words, and fields with their colon."""
    fields = {" ".join(one.split()[-n:]) for one in FIELD.findall(words) for n in (1, 2, 3)}
    quoted = re.findall(r"'([^'\n]{1,200})'", words)
    return {*map(plain, (*quoted, *(word for one in quoted for word in WORD.findall(one)), *fields))}


def run(many: int, seed: int, root: Path, designs: Sequence[str] = ()) -> Found:
    """So many mutants of a copy of the demonstration in a folder that is empty yet; of a few of its designs, or all."""
    readers, found = Readers(root, designs), Found()
    files = readers.files()
    for number in range(many):
        tried(readers, number, seed, found, files)
    return found


if __name__ == "__main__":
    asked = [int(word) for word in sys.argv[1:]] + [500, 1][len(sys.argv) - 1 :]
    with tempfile.TemporaryDirectory() as folder:
        came_out = run(asked[0], asked[1], Path(folder))
    sys.stdout.write("\n".join([*came_out.wrong, str(came_out), ""]))
    sys.exit(bool(came_out.wrong))
