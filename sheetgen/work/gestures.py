"""What a step has drawn: parts as they are formed, and gestures of parts."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.spelling import nearest, plain, suggest
from sheetgen.facts.gestures import GESTURES, OF, keyed

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.base.place import Word
    from sheetgen.work.evaluator import Evaluator


def parted(word: Word) -> tuple[str, Word] | None:
    """The gesture that a word begins with, known or not, and the part that it ends with; None for a part alone."""
    head, of, _ = word.partition(OF)
    return (head.strip(), word.cut(len(head) + len(of), len(word))) if of else None


def drawn(words: Sequence[Word], evaluator: Evaluator) -> tuple[tuple[str, ...], tuple[tuple[str, str], ...]]:
    """The names of all drawings in their order, and of those that are gestures the gesture and its part."""
    found = list(dict.fromkeys(_resolved(words, evaluator)))
    names = tuple(keyed(gesture, part) if gesture else part for gesture, part in found)
    return names, tuple(one for one in found if one[0])


def of_parts(words: Sequence[Word]) -> list[str]:
    """The parts that are named, each once."""
    return list(dict.fromkeys(plain(asked[1] if (asked := parted(word)) else word) for word in words))


def _resolved(words: Sequence[Word], evaluator: Evaluator) -> Iterator[tuple[str, str]]:
    """Gesture and part of each word; no gesture for a part as it is formed."""
    troubles, parts = evaluator.troubles, evaluator.parts
    for word in words:
        if plain(word) in parts:
            yield "", plain(word)
            continue
        asked = parted(word)
        if asked is None:
            if nearest(word, GESTURES) == word.strip():
                helped = f"say of which part: {word.strip()} of {next(iter(parts), 'it').replace('_', ' ')}"
                troubles.add(f"'{word}' is a gesture, and no part", word.place, helped)
            else:
                troubles.add(f"there is no part '{word}'", word.place, suggest(word, parts))
            continue
        gesture, of = asked
        told = GESTURES.get(gesture)
        if told is None:
            troubles.add(f"there is no gesture '{gesture}'", word.place, suggest(gesture, GESTURES))
        elif plain(of) not in parts:
            troubles.add(f"there is no part '{of.strip()}'", of.place, suggest(of, parts))
        elif (kind := parts[plain(of)].kind.kind) not in told.of:
            message = f"'{gesture}' cannot be drawn of a {kind}"
            troubles.add(message, word.place, f"of a part of kind {' or '.join(told.of)}")
        elif missing := [name for name in told.wants if name not in evaluator.own]:
            names = " and ".join(f"'{name.replace('_', ' ')}'" for name in missing)
            troubles.add(f"'{gesture}' is drawn by the figure {names}", word.place, "add it under figures:")
        else:
            yield gesture, plain(of)
