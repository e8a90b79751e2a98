"""Where a word stands in a file, so that a trouble can point at it."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Self


@dataclass(frozen=True, slots=True)
class Source:
    """The text of one file, by line, under the name a person would type."""

    name: str
    text: str = field(default="", repr=False)

    def line(self, number: int) -> str:
        """Line `number` (from 1), empty past the end."""
        lines = self.text.split("\n")
        return lines[number - 1].rstrip("\r") if 1 <= number <= len(lines) else ""


@dataclass(frozen=True, slots=True)
class Place:
    """A stretch of one line: file, line and column (both from 1), width in characters."""

    source: Source
    line: int = 1
    column: int = 1
    width: int = 1

    def __str__(self) -> str:
        return f"{self.source.name}:{self.line}:{self.column}"

    def shifted(self, offset: int, width: int = 1) -> Place:
        """The place `offset` characters further on the same line."""
        return Place(self.source, self.line, self.column + offset, max(1, width))


class Word(str):
    """A scalar of a file that knows its place; equal to the plain string."""

    __slots__ = ("block", "place")
    place: Place
    block: str

    def __new__(cls, text: str, place: Place, block: str = "") -> Self:
        """`block` is the raw source behind a block or quoted scalar, from `place` on."""
        word = super().__new__(cls, text)
        word.place = place
        word.block = block
        return word

    def __getnewargs__(self) -> tuple[str, Place, str]:  # type: ignore[override]  # it is made from more than a str
        """What a copy is made from."""
        return str(self), self.place, self.block

    def place_of(self, offset: int, width: int = 1) -> Place:
        """The place of character `offset`: exact on one line, by search in a block."""
        if not self.block:
            return self.place.shifted(offset, width)
        wanted = self[offset : offset + width]
        nth = self[:offset].count(wanted)
        at = -1
        for _ in range(nth + 1):
            at = self.block.find(wanted, at + 1)
            if at < 0:
                return self.place
        before = self.block[:at]
        line = before.count("\n")
        column = at - (before.rfind("\n") + 1) if line else at + self.place.column - 1
        return Place(self.place.source, self.place.line + line, column + 1, max(1, width))


def place_of(word: object) -> Place | None:
    """The place of a word, or nothing for text that no file holds."""
    return word.place if isinstance(word, Word) else None
