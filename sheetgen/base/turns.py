"""Several works at once that wait for others' hands: the next are begun before the first is waited for."""

from __future__ import annotations

from collections import deque
from typing import TYPE_CHECKING, TypeVar

if TYPE_CHECKING:
    from collections.abc import Generator, Iterable

Made = TypeVar("Made")


def in_turn(works: Iterable[Generator[None, None, None]], most: int) -> None:
    """Do them all, of which at most so many are under way. Each yields where it would wait for what it has begun.

    When one is begun, one before it goes a step further, and the oldest is done to its end: so there is always
    something begun that nobody waits for yet. They end in the order in which they come.
    """
    begun: deque[Generator[None, None, None]] = deque()
    further: deque[Generator[None, None, None]] = deque()

    def step(works: deque[Generator[None, None, None]]) -> None:
        work = works.popleft()
        if goes_on(work):
            further.append(work)

    for work in works:
        if goes_on(work):
            begun.append(work)
        if len(further) >= most // 2:
            through(further.popleft())
        if len(begun) >= most - most // 2:
            step(begun)
    while begun:
        step(begun)
    while further:
        through(further.popleft())


def goes_on(work: Generator[None, None, None]) -> bool:
    """Do a step of a work; whether another follows."""
    try:
        next(work)
    except StopIteration:
        return False
    return True


def through(work: Generator[None, None, Made]) -> Made:
    """Do a work to its end, and give what it comes to."""
    while True:
        try:
            next(work)
        except StopIteration as end:
            made: Made = end.value
            return made
