"""Parameters put in place in a step's words: each character keeps the place that it comes from."""

from __future__ import annotations

import re
from itertools import chain, islice
from typing import TYPE_CHECKING, Any

from sheetgen.base.heads import heads, is_name, stands_alone
from sheetgen.base.place import Joined, Place, Stretch, Word
from sheetgen.base.spelling import plain
from sheetgen.facts.gestures import OF
from sheetgen.model.project import Step
from sheetgen.model.written import LISTED, LONGEST, MOST_LISTED, lists
from sheetgen.read.bounds import too_long
from sheetgen.read.yaml_words import Mapping, Sequence

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from sheetgen.base.trouble import Troubles
    from sheetgen.read.yaml_words import Words

IN_WORDS = {  # a parameter stands in single braces
    "title", "short", "text", "expect", "label", "meanwhile", "seen", "why", "mend", "caption", "shows",
}  # fmt: skip
WHOLE = {"firing", "faces", "file"}  # an item or a word, and no arithmetic
WITH_FIELDS = {"show", "on the card", "if it goes wrong"}  # lists whose entries have fields of their own
WITH_PARTS = {"diagram"}  # a list of parts, and of gestures of parts
LISTS = lists(Step)
_BRACES = re.compile(r"\{\{(.*?)\}\}|\{([^{}]*)\}", re.DOTALL)
_SINGLE = re.compile(r"((?!))?\{([^{}]*)\}")  # the same after the last double ones that close


def alone(key: Word, value: Words) -> Words:
    """A field's list: of one, where a word alone stands for it."""
    if key not in LISTS or not isinstance(value, Word) or not value.strip() or LISTED.search(value):
        return value
    found = Sequence([value])
    found.place = value.place
    return found


def used(written: Words, at: Place) -> Words:
    """Fields as they are used at a place: every word of them tells both."""
    if isinstance(written, Word):
        return written.used(at)
    found: Any = Sequence(used(one, at) for one in written) if isinstance(written, list) else Mapping()
    if isinstance(written, dict):
        found.update((used(key, at), used(value, at)) for key, value in written.items())
    found.place = _used(written.place, at)
    return found


def _used(place: Place, at: Place) -> Place:
    return Word("", place).used(at).place


class Filler:
    """Fills in parameters.

    `look` gives what a name stands for, None where it is no parameter; `strange` is told of a name in single braces
    that is none.
    """

    def __init__(
        self, look: Callable[[str], Words | None], strange: Callable[[Word], None], troubles: Troubles
    ) -> None:
        self.look, self.strange, self.troubles = look, strange, troubles

    def step(self, written: Mapping) -> Mapping:
        """A step's fields; what a parameter alone fills, and fills with nothing, is left out."""
        found = Mapping()
        found.place = written.place
        for key, value in written.items():
            filled = self.field(str(key), alone(key, value))
            if not isinstance(filled, Word) or filled or not value:
                found[key] = filled
        return found

    def field(self, key: str, value: Words) -> Words:
        """One field."""
        if isinstance(value, list):
            entries = (one for each in value for one in self._entries(key, each))
            listed = Sequence(islice(entries, MOST_LISTED + 1))
            listed.place = getattr(value, "place", None) or value[0].place
            if len(listed) > MOST_LISTED:
                self.troubles.add("this list is too long", listed.place, f"at most {MOST_LISTED}")
            return listed
        if isinstance(value, dict):
            shown = Mapping()
            shown.update((name, self.field(str(name), one)) for name, one in value.items())
            shown.place = getattr(value, "place", None) or next(iter(value)).place
            return shown
        if isinstance(value, Word) and too_long(value, LONGEST, self.troubles):
            return Word("-", value.place)
        return self._word(key, value) if isinstance(value, Word) else value

    def _word(self, key: str, value: Word) -> Word:
        if key in IN_WORDS:
            return self._words(value)
        whole = self._one(plain(value), value)
        if whole is not None or key in WHOLE:
            return value if whole is None else whole
        return self._joined(value, list(self._reckoned(value, 0, len(value))))

    def _entries(self, key: str, entry: Words) -> list[Words]:
        """What stands for an entry of a list: another list is put in whole, and nothing is left out."""
        found = self.look(plain(entry)) if isinstance(entry, Word) else None
        if found is None and key in WITH_PARTS and isinstance(entry, Word) and OF in entry:
            return [self._of_part(entry)]
        if found is None:
            return [self.field(key, entry) if key in WITH_FIELDS else entry]
        return list(found) if isinstance(found, list) else [found] if found.strip() else []

    def _of_part(self, word: Word) -> Word:
        """A gesture, and the part that it is drawn of: the part may be a parameter."""
        at = word.index(OF) + len(OF)
        given = self._one(plain(word[at:]), word)
        return word if given is None else self._joined(word, [Stretch(word, 0, at), _trimmed(given)])

    def _one(self, name: str, asks: Word) -> Word | None:
        """The one thing that a name stands for; None where it is no parameter."""
        found = self.look(name)
        if found is None or isinstance(found, Word):
            return found
        place = found.place if isinstance(found, Sequence) else asks.place
        self.troubles.add(f"'{name.replace('_', ' ')}' stands for one thing, and this is a list", place, "give one")
        return None

    def _words(self, word: Word) -> Word:
        """A text with words in single braces, and names in what double braces reckon."""
        found: list[Stretch] = []
        at = 0
        # What opens after the last that closes would be looked for to the end each time.
        last = word.rfind("}}") + 2 if "}}" in word else 0
        for braces in chain(_BRACES.finditer(word, 0, last), _SINGLE.finditer(word, last)):
            if braces[2] is None:
                found += [Stretch(word, at, braces.start(1)), *self._reckoned(word, *braces.span(1))]
                at = braces.end(1)
                continue
            given = self._one(plain(braces[2]), word)
            if given is None:
                if self.look(plain(braces[2])) is None:
                    self.strange(word.cut(braces.start(2), braces.end(2), braces.start()))
                continue
            found.append(Stretch(word, at, braces.start()))
            at = braces.end()
            if given.strip():
                found.append(_trimmed(given))
            else:  # nothing takes the space before it along, or at the very beginning the one after it
                found, at = _without_space(found, word, at)
        return self._joined(word, [*found, Stretch(word, at, len(word))])

    def _reckoned(self, word: Word, start: int, end: int) -> Iterator[Stretch]:
        """A stretch that is reckoned; what is put in keeps together in brackets where it must."""
        text, at = str(word)[start:end], start
        for head in heads(text):
            given = self._one(head.name, word)
            if given is None:
                continue
            if head.dotted and not is_name(given):
                told = f"'{head.name.replace('_', ' ')}' is a part or an item here, and '{given}' is none"
                self.troubles.add(told, given.place, "give its name")
                continue
            yield Stretch(word, at, start + head.at)
            alone = len(text.strip()) == head.end - head.at
            brackets = not (alone or head.dotted or head.item or stands_alone(given))
            yield from [Stretch(Word("(", given.place), 0, 1)] * brackets
            yield _trimmed(given)
            yield from [Stretch(Word(")", given.place), 0, 1)] * brackets
            at = start + head.end
        yield Stretch(word, at, end)

    def _joined(self, word: Word, stretches: list[Stretch]) -> Word:
        long = sum(one.end - one.start for one in stretches)
        if all(one.word is word for one in stretches) and long == len(word):
            return word
        if long > LONGEST:
            told = f"a text of {long} characters, with what is put into it, is too long"
            self.troubles.add(told, word.place, f"at most {LONGEST}")
            return Word("-", word.place)
        return Joined([one for one in stretches if one.start < one.end], word.place)


def _trimmed(word: Word) -> Stretch:
    return Stretch(word, len(word) - len(word.lstrip()), len(word.rstrip()))


def _without_space(found: list[Stretch], word: Word, at: int) -> tuple[list[Stretch], int]:
    kept = list(found)
    while kept and not (text := kept[-1].word[kept[-1].start : kept[-1].end].rstrip()):
        kept.pop()
    if kept:
        kept[-1] = kept[-1]._replace(end=kept[-1].start + len(text))
        return kept, at
    return [], at + len(word[at:]) - len(word[at:].lstrip())
