"""The names in a text of arithmetic, each with where it begins: what something else may be put in place of."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from sheetgen.base.arithmetic import ITEM, TOKEN, WORDS
from sheetgen.base.spelling import plain

if TYPE_CHECKING:
    from collections.abc import Iterator

_COMPARES = {"is", ">=", "<=", "≥", "≤", "<", ">", "="}


class Head(NamedTuple):
    """A name up to its first point, as arithmetic keeps it; `item` where it stands after `is`."""

    name: str
    at: int
    end: int
    dotted: bool
    item: bool


def heads(text: str) -> Iterator[Head]:
    """Every name of an expression or a condition, those of functions, words and units left out."""
    tokens = [(m.lastgroup, m[m.lastgroup or 0], m.start(m.lastgroup or 0)) for m in TOKEN.finditer(text)]
    i, after_is = 0, False
    while i < len(tokens):
        kind, word, at = tokens[i]
        i += 1 + (word == "in")  # a unit comes after it
        if kind != "name" or word in WORDS:
            after_is = word == "is" or (after_is and word == "not")
            continue
        end = at + len(word)
        if after_is and (item := ITEM.match(text, at)):
            end = item.end()
        if i < len(tokens) and tokens[i][1] == "(":
            continue
        while i < len(tokens) and (tokens[i][2] < end or _goes_on(tokens[i : i + 2])):
            end = max(end, tokens[i][2] + len(tokens[i][1]))
            i += 1
        head, point, _ = text[at:end].partition(".")
        yield Head(plain(head), at, at + len(head.rstrip()), bool(point), after_is)
        after_is = False


def _goes_on(tokens: list[tuple[str | None, str, int]]) -> bool:
    """Whether the first is one more word of a name: no word of arithmetic, and not the name of a function."""
    kind, word, _ = tokens[0]
    return kind == "name" and word not in WORDS and not (len(tokens) > 1 and tokens[1][1] == "(")


def stands_alone(text: str) -> bool:
    """Whether a text goes into an expression without brackets: a name, a number, or a comparison."""
    tokens = [m for m in TOKEN.finditer(text) if m[0].strip()]
    said = {m["name"] or m["sign"] for m in tokens}
    return len(tokens) == 1 or is_name(text) or bool(said & _COMPARES and not said & {"if", "or", "and"})


def is_name(text: str) -> bool:
    """Whether a text is one name, which may stand before a point."""
    tokens = [m for m in TOKEN.finditer(text) if m[0].strip()]
    return bool(tokens) and all(m["name"] and m["name"] not in WORDS for m in tokens)
