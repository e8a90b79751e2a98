"""Where a word stands in a file, so that a trouble can point at it."""

from __future__ import annotations

import functools
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING, NamedTuple, Self

if TYPE_CHECKING:
    from collections.abc import Sequence


@functools.lru_cache(16)
def lines(text: str) -> tuple[str, ...]:
    """The lines of a text, parted once however often they are asked for."""
    return tuple(text.split("\n"))


@dataclass(frozen=True, slots=True)
class Source:
    """The text of one file, by line, under the name a person would type."""

    name: str
    text: str = field(default="", repr=False)

    @property
    def by_line(self) -> bool:
        """Whether it is one line of a file, which stands by itself."""
        return False

    def line(self, number: int) -> str:
        """Line `number` (from 1), empty past the end."""
        found = lines(self.text)
        return found[number - 1].rstrip("\r") if 1 <= number <= len(found) else ""

    def spot(self, line: int, column: int) -> str:
        """How a person is told where in the file."""
        return f"{line}:{column}"


@dataclass(frozen=True, slots=True)
class Place:
    """A stretch of one line: file, line and column (both from 1), width in characters.

    `used_at` says where something written once is used: what goes wrong with it there is told with both places.
    """

    source: Source
    line: int = 1
    column: int = 1
    width: int = 1
    used_at: tuple[Place, ...] = ()

    def __str__(self) -> str:
        return f"{self.source.name}:{self.source.spot(self.line, self.column)}"

    def shifted(self, offset: int, width: int = 1) -> Place:
        """The place `offset` characters further on the same line."""
        return Place(self.source, self.line, self.column + offset, max(1, width), self.used_at)

    @property
    def where_used(self) -> Place:
        """Where the thing itself stands: of what is written once, its use."""
        return self.used_at[0] if self.used_at else self


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
        return Place(self.place.source, self.place.line + line, column + 1, max(1, width), self.place.used_at)

    def cut(self, start: int, end: int, since: int | None = None) -> Word:
        """A stretch of it as a word of its own; `since`: where two signs stand that a block is searched for instead."""
        width = max(1, end - start)
        if self.block and since is not None:
            return Word(self[start:end], self.place_of(since, 2).shifted(start - since, width))
        return Word(self[start:end], self.place_of(start, width))

    def used(self, at: Place) -> Word:
        """The same word, as it is used at a place."""
        return Word(self, replace(self.place, used_at=(at,)), self.block)


class Stretch(NamedTuple):
    """Characters `start` to `end` of a word."""

    word: Word
    start: int
    end: int


class Joined(Word):
    """A word put together from stretches of others: each character keeps the place where it is written."""

    __slots__ = ("stretches",)
    stretches: tuple[Stretch, ...]

    def __new__(cls, stretches: Sequence[Stretch], place: Place) -> Self:
        """`place` is that of the whole."""
        word = super().__new__(cls, "".join(one.word[one.start : one.end] for one in stretches), place)
        whole: list[Stretch] = []
        for one in stretches:
            if whole and whole[-1].word is one.word and whole[-1].end == one.start:
                one = whole.pop()._replace(end=one.end)  # noqa: PLW2901 - the two are one
            whole.append(one)
        word.stretches = tuple(whole)
        return word

    def __getnewargs__(self) -> tuple[tuple[Stretch, ...], Place]:  # type: ignore[override]
        """What a copy is made from."""
        return self.stretches, self.place

    def place_of(self, offset: int, width: int = 1) -> Place:
        """The place of character `offset` in the file that it comes from.

        What goes over a seam may be amiss on either side of it: the place is in what is used, and the use is what
        was put in.
        """
        covered = [one.word.place_of(one.start, one.end - one.start) for one in self._between(offset, offset + width)]
        shared = [place for place in covered if place.used_at]
        given = [place for place in covered if not place.used_at]
        if shared and given:
            return replace(shared[0], used_at=(given[0],))
        return covered[0] if covered else self.place

    def cut(self, start: int, end: int, since: int | None = None) -> Word:
        """A stretch of it as a word of its own."""
        found = self._between(start, end)
        if len(found) == 1:
            [one] = found
            before = one.start - (start - since) if since is not None else -1
            inside = any(w.word is one.word and w.start <= before and one.end <= w.end for w in self.stretches)
            return one.word.cut(one.start, one.end, before if inside else None)
        return Joined(found, self.place_of(start, max(1, end - start)))

    def _between(self, start: int, end: int) -> list[Stretch]:
        """The stretches of characters `start` to `end`."""
        found, at = [], 0
        for one in self.stretches:
            first, last = max(start, at), min(end, at + one.end - one.start)
            if first < last:
                found.append(Stretch(one.word, one.start + first - at, one.start + last - at))
            at += one.end - one.start
        return found


def place_of(word: object) -> Place | None:
    """The place of a word, or nothing for text that no file holds."""
    return word.place if isinstance(word, Word) else None
