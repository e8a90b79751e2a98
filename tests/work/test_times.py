"""Minutes grow with what is made, and with who makes it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import pytest

if TYPE_CHECKING:
    from sheetgen.base.interval import Interval

PENDANT, LINK = "pendant/project.yaml", "link/project.yaml"


def minutes(library: Any, name: str = "link", step: int = 0) -> Interval | None:
    found: Interval | None = library.main(name).steps[step].minutes
    return found


def ends(found: Interval | None) -> tuple[float, float]:
    assert found is not None
    return found.low, found.high


def test_what_is_done_once_takes_as_long_for_twelve_links_as_for_one(library: Any) -> None:
    assert ends(minutes(library)) == (30, 30)
    library.change(LINK, "count: 12", "count: 1")
    assert ends(minutes(library)) == (30, 30)


def test_what_each_link_takes_is_taken_as_often_as_there_are_links(library: Any) -> None:
    library.change(LINK, "minutes: 30 min", "minutes each: 2-3 min")
    assert ends(minutes(library)) == (24, 36)
    library.change(LINK, "count: 12", "count: 5")
    assert ends(minutes(library)) == (10, 15)


def test_setting_up_once_and_each_piece_are_both_counted(library: Any) -> None:
    library.change(LINK, "minutes: 30 min", "minutes: 5 min\n    minutes each: 2-3 min")
    assert ends(minutes(library)) == (5 + 12 * 2, 5 + 12 * 3)


def test_of_several_parts_in_one_step_the_most_pieces_count(library: Any) -> None:
    more = "  rings: {kind: jump ring, wire: copper-16awg, inside: 4 mm, count: 3}\nsteps:\n"
    library.change(LINK, "steps:\n", more)
    library.change(LINK, "parts: [links]", "parts: [links, rings]")
    library.change(LINK, "minutes: 30 min", "minutes each: 1 min")
    assert ends(minutes(library)) == (12, 12)


def test_minutes_each_of_nothing_that_is_named_are_refused_with_what_to_write(library: Any) -> None:
    library.change(LINK, "    parts: [links]\n", "")
    library.change(LINK, "minutes: 30 min", "minutes each: 2 min")
    [trouble] = library.check("link").troubles.errors
    assert "minutes each" in trouble.message
    assert (trouble.place.line, trouble.help) == (17, "name it: parts: [body], or write minutes:")


def test_a_beginner_takes_half_as_long_again_and_a_practised_hand_does_not(library: Any) -> None:
    assert ends(minutes(library, "pendant")) == (15, 22.5)  # a first piece, of 10 to 15 min
    library.change(PENDANT, "level: first piece", "level: some practice")
    assert ends(minutes(library, "pendant")) == (10, 15)


def test_a_project_says_itself_how_much_longer_its_makers_take(library: Any) -> None:
    library.change(PENDANT, "level: first piece\n", "level: first piece\nbeginners take: 200 %\n")
    assert ends(minutes(library, "pendant")) == (20, 30)
    library.change(LINK, "level: some practice\n", "level: some practice\nbeginners take: 120 %\n")
    assert ends(minutes(library)) == pytest.approx((36, 36))


@pytest.mark.parametrize("share", ["50 %", "150", "3 mm", "600 %"])
def test_nobody_is_quicker_for_being_a_beginner_nor_a_hundred_times_as_slow(share: str, library: Any) -> None:
    library.change(PENDANT, "level: first piece\n", f"level: first piece\nbeginners take: {share}\n")
    [trouble] = library.check("pendant").troubles.errors
    assert (trouble.place.line, trouble.help) == (7, "a share such as 150 %")


def test_a_wait_is_no_longer_for_a_beginner(library: Any) -> None:
    wait = library.main("pendant").steps[1].wait
    library.change(PENDANT, "level: first piece", "level: experienced")
    assert library.main("pendant").steps[1].wait == wait
