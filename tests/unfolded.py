"""What `changes` says, taken apart again: each version and each kit by itself, with its own numbers below it."""

from __future__ import annotations

import re
from dataclasses import dataclass, field

LETTERS = r"((?:[A-Z]{1,2} )*)"
VERSION = re.compile(r"  (?:([A-Z]{1,2}) )?(\S.*: \w{6} is now \w{6}); (\d+) numbers?")
KIT = re.compile(r"  (?:([A-Z]{1,2}) )?([a-z][\w-]*, .*: \S+ \(.*)")
NUMBER = re.compile(r"      (.*?): ((?:[A-Z]{1,2} )*(?:was|new,) .*)")
DIFFER = re.compile(r"numbers? differs?\b(?!.*as below)")


@dataclass
class Column:
    """A version or kit: its letter, its head, how many numbers are said to have moved, and these below their heads."""

    letter: str
    head: str
    many: str = ""
    edits: list[str] = field(default_factory=list)
    rows: dict[str, list[str]] = field(default_factory=dict)

    def lines(self) -> list[str]:
        """As many numbers as are said, each by itself."""
        told = [row for rows in self.rows.values() for row in rows]
        assert self.many in {"", str(len(told))}, (self.head, self.many, told)
        grouped = [line for head, rows in self.rows.items() for line in (head, *(f"      {row}" for row in rows))]
        return [f"  {self.head}", *self.edits, *grouped]


class Unfolding:
    """The lines so far, and the columns whose numbers are being read."""

    def __init__(self, lines: list[str]) -> None:
        told = (re.fullmatch(r"edit (\d+): (.*)", line) for line in lines)
        self.edits = {one[1]: one[2] for one in told if one}
        self.found: list[str] = []
        self.block: list[Column] = []
        self.group = ""

    def read(self, line: str) -> None:
        column = VERSION.fullmatch(line) or KIT.fullmatch(line)
        if column:
            self.begin(column, kit=KIT.fullmatch(line) is not None)
        elif self.block and line.startswith("    ") and not line.startswith("      "):
            letters, edit = taken_apart(line.removeprefix("    "))
            self.group = line
            if edit.startswith("by "):
                said = re.sub(r"^by edit (\d+)$", lambda n: f"by {self.edits[n[1]]}", edit)
                for one in self.of(letters):
                    one.edits.append(f"    {said}")
        elif self.block and (number := NUMBER.fullmatch(line)):
            for way in number[2].split("; "):
                letters, told = taken_apart(way)
                for one in self.of(letters):
                    one.rows.setdefault(self.group, []).append(f"{number[1]}: {told}")
        else:
            self.end()
            self.found.append(line)

    def begin(self, column: re.Match[str], *, kit: bool) -> None:
        letter, head, *many = column.groups()
        design = head.partition(", ")[0]
        another = kit and bool(self.block) and design != self.block[-1].head.partition(", ")[0]
        if another or any(one.rows or one.edits for one in self.block):
            self.end()
        self.block.append(Column(letter or "", head, many[0] if many else ""))

    def end(self) -> None:
        self.found += [line for one in self.block for line in one.lines()]
        self.block = []

    def of(self, letters: str) -> list[Column]:
        """The columns of some letters; without any, all that have numbers."""
        lettered = [one for one in self.block if one.letter]
        if letters:
            return [next(one for one in lettered if one.letter == letter) for letter in letters.split()]
        return lettered or [one for one in self.block if one.many or DIFFER.search(one.head)]


def unfolded(lines: list[str]) -> list[str]:
    """The lines with every version's and kit's numbers under it, as many as are said, and its edits in words."""
    unfolding = Unfolding(lines)
    for line in joined(lines):
        unfolding.read(line)
    unfolding.end()
    return unfolding.found


def joined(lines: list[str]) -> list[str]:
    """Long lines that were broken in one again."""
    found: list[str] = []
    for line in lines:
        if line.startswith("        "):
            found[-1] += f" {line.strip()}"
        else:
            found.append(line)
    return found


def taken_apart(words: str) -> tuple[str, str]:
    """The letters that something begins with, and the rest."""
    found = re.fullmatch(rf"{LETTERS}(.*)", words)
    assert found
    return found[1], found[2]
