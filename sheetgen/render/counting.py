"""How much a page of a theme may make on its way: rounds of its loops, letters of its texts, things in its lists."""

from __future__ import annotations

from inspect import getattr_static
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

MOST_ROUNDS = 100_000
"""Rounds of loops, calls, filters and templates loaded, on one page: a check list of 1,000 orders takes 17,000."""
MOST_LETTERS = 4_000_000
"""Of one text."""
MOST_MADE = 64_000_000
"""Letters that a page makes on its way, all together."""
MOST_HELD = 50_000
"""Things in a list, with what is in them; 64 letters of a text count as one. And letters of a text that is repeated."""
MOST_BITS = 10_000
"""Of a whole number."""


class TooMuch(Exception):
    """What no page needs: rounds without end, or words without end."""


class Count:
    """What one page has made so far."""

    def __init__(self) -> None:
        self.rounds = self.letters = 0

    def tick(self) -> None:
        """One round. TooMuch after the last that a page may have."""
        self.rounds += 1
        if self.rounds > MOST_ROUNDS:
            raise TooMuch(f"more than {MOST_ROUNDS} rounds of loops and calls on a page")

    def gone_through(self, things: Iterable[Any]) -> Iterator[Any]:
        """One thing after the other, a round each."""
        for one in things:
            self.tick()
            yield one

    def text(self, letters: int) -> None:
        """So many letters. TooMuch for more than a text, or a page, holds."""
        self.letters += letters
        if letters > MOST_LETTERS or self.letters > MOST_MADE:
            raise TooMuch(f"more than {MOST_LETTERS} letters in a text, or {MOST_MADE} on a page")

    def made(self, value: Any) -> Any:  # noqa: ANN401 - whatever a template makes
        """A value that was made, counted with all that is in it. TooMuch for one that is too large."""
        if isinstance(value, str):
            self.text(len(value))
        elif isinstance(value, int):
            if value.bit_length() > MOST_BITS:
                raise TooMuch("a number too large for any page")
        else:
            self.text(_held(value))
        return value


def _held(value: Any) -> int:  # noqa: ANN401
    """How many things a value holds, and these again. TooMuch as soon as there are too many: it may hold itself."""
    held, left = 0, [value]
    while left:
        one = left.pop()
        held += 1 + (len(one) // 64 if isinstance(one, str) else 0)
        left += _within(one)
        if held + len(left) > MOST_HELD:
            raise TooMuch("a list too long for any page")
    return held


def _within(one: Any) -> Iterable[Any]:  # noqa: ANN401
    if one is None or isinstance(one, str | int | float):
        return ()
    if isinstance(one, list | tuple | set | frozenset):
        return one
    if not isinstance(one, dict):
        one = getattr_static(one, "_Namespace__attrs", {})  # of a namespace of jinja2, which hides what it holds
    return (*one.keys(), *one.values())
