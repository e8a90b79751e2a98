"""Mixes of colours as a project writes them: by counts, by shares or by parts, and what is wrong with their numbers."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING

from sheetgen.base.place import Word

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from sheetgen.base.trouble import Troubles
    from sheetgen.model.kit import By

OF = "of"
_COUNT = re.compile(r"\d{1,6}", re.ASCII)
_SHARE = re.compile(r"(\d{1,3}(?:[.,]\d{1,6})?) ?%", re.ASCII)
_PART = re.compile(r"(\s*)(\d{1,6})(\s+)(\S.*)", re.ASCII)
WAYS = '{stone-a: 7, stone-b: 5}, {stone-a: 60 %, stone-b: 40 %} or "7 stone-a : 5 stone-b"'


@dataclass(frozen=True, slots=True)
class Mix:
    """One colourway as it is written."""

    name: Word
    by: By
    colours: tuple[tuple[Word, Fraction], ...]

    @property
    def whole(self) -> Fraction:
        """All counts, shares or parts together."""
        return sum((number for _, number in self.colours), Fraction(0))

    @property
    def as_parts(self) -> str:
        """The same numbers as parts, as a file writes them."""
        scale = 1
        if self.by == "shares":
            scale = 100 * max((number * 100).denominator for _, number in self.colours)
        return '"' + " : ".join(f"{round(number * scale)} {name}" for name, number in self.colours) + '"'


def mixes(written: Mapping[Word, Word | Mapping[Word, Word]], troubles: Troubles) -> list[Mix]:
    """Every mix whose numbers are well; the others are noted."""
    found: dict[str, Mix] = {}
    for name, words in written.items():
        if name == OF:
            continue
        one = _parts(name, words, troubles) if isinstance(words, Word) else _numbers(name, words, troubles)
        same = next((other.name for key, other in found.items() if key == name.casefold()), None)
        if same is not None:
            troubles.add(f"another colourway is called '{same}' too", name.place, "give one of them another name")
        elif one is not None and _well(one, troubles):
            found[name.casefold()] = one
    return list(found.values())


def _parts(name: Word, word: Word, troubles: Troubles) -> Mix | None:
    """In one line: 7 clear : 5 smoke."""
    colours = []
    at = 0
    for one in word.split(":"):
        part = _PART.fullmatch(one.rstrip())
        if part is None:
            told = f"'{word}' does not say which colour has which part"
            troubles.add(told, word.place, 'write "7 stone-a : 5 stone-b", or {stone-a: 7, stone-b: 5}')
            return None
        start = at + part.start(4)
        colours.append((word.cut(start, start + len(part[4])), Fraction(int(part[2]))))
        at += len(one) + 1
    return Mix(name, "parts", tuple(colours))


def _numbers(name: Word, words: Mapping[Word, Word], troubles: Troubles) -> Mix | None:
    """Counts or shares, a colour each."""
    if not words:
        troubles.add(f"the colourway '{name}' names no colour", name.place, WAYS)
        return None
    shares = [bool(_SHARE.fullmatch(word.strip())) for word in words.values()]
    for word, share in zip(words.values(), shares, strict=True):
        if not share and not _COUNT.fullmatch(word.strip()):
            troubles.add(f"'{word}' is neither a count nor a share", word.place, WAYS)
            return None
        if share != shares[0]:
            told = f"'{name}' is by counts and by shares at once"
            troubles.add(told, word.place, "write all of it in one way: 7 and 5, or 60 % and 40 %")
            return None
    return Mix(name, "shares" if shares[0] else "counts", tuple(_each(words)))


def _each(words: Mapping[Word, Word]) -> Iterator[tuple[Word, Fraction]]:
    for colour, word in words.items():
        share = _SHARE.fullmatch(word.strip())
        yield colour, Fraction(share[1].replace(",", ".")) / 100 if share else Fraction(int(word))


def _well(mix: Mix, troubles: Troubles) -> bool:
    before = len(troubles.errors)
    for colour, number in mix.colours:
        if not number:
            told = f"'{mix.name}' has none of {colour}"
            troubles.add(told, colour.place, "take it out, or say how many")
    if mix.by == "shares" and mix.whole != 1:
        told = f"the shares of '{mix.name}' come to {float(mix.whole * 100):g} %"
        troubles.add(told, mix.name.place, f"100 %, or parts: {mix.as_parts}")
    return len(troubles.errors) == before
