"""What a person sees while pages are printed: what is begun, and how long it still takes."""

from __future__ import annotations

import pytest

from sheetgen.progress import Lines, Shown, left_told


class Clock:
    def __init__(self) -> None:
        self.now = 100.0

    def __call__(self) -> float:
        return self.now


def test_the_time_left_is_reckoned_from_what_the_first_part_took() -> None:
    clock, shown = Clock(), list[str]()
    progress = Shown(shown.append, clock)
    progress.begun("drops: main")
    assert shown == ["Printing drops: main"]  # nothing is known yet
    clock.now += 60
    progress.done(0.25)  # a quarter in a minute: three are left
    assert shown[-1] == "Printing drops: main, about 3 min left"
    clock.now += 61
    progress.begun("link")
    assert shown[-1] == "Printing link, about 2 min left"
    clock.now += 119
    progress.done(1)
    assert shown[-1] == "Printing link, less than a minute left"


def test_the_first_moments_say_nothing_of_the_whole() -> None:
    shown: list[str] = []
    progress = Shown(shown.append, Clock())
    progress.begun("drops")
    progress.done(0.01)
    assert shown[-1] == "Printing drops"


@pytest.mark.parametrize(
    ("seconds", "told"),
    [
        (-5, "less than a minute left"),
        (49, "less than a minute left"),
        (55, "about 1 min left"),
        (61, "about 2 min left"),
        (3600, "about 60 min left"),
    ],
)
def test_what_is_left_is_never_told_as_less_than_it_may_be(seconds: float, told: str) -> None:
    assert left_told(seconds) == told


def test_where_no_terminal_is_each_version_is_a_line() -> None:
    said: list[str] = []
    progress = Lines(said.append)
    progress.begun("drops: main")
    progress.done(0.5)
    progress.begun("link")
    assert said == ["printing drops: main", "printing link"]
