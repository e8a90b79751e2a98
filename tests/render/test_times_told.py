"""A time is printed for as much as the steps say, and said to be so."""

from __future__ import annotations

import re
from typing import Any

import pytest

PENDANT = "pendant/project.yaml"
MINUTES = "    minutes: 10-15 min\n"


def published(library: Any) -> tuple[str, str]:
    """The sheet of the pendant, and the index."""
    library.publish("pendant")
    return tuple((library.build / name).read_text("utf-8") for name in ("pendant/index.html", "index.html"))


@pytest.mark.usefixtures("quick")
def test_where_every_step_says_how_long_it_takes_or_waits_nothing_is_added(library: Any) -> None:
    sheet, index = published(library)
    assert ">At the bench<" in sheet
    assert "so far as told" not in sheet + index


@pytest.mark.usefixtures("quick")
def test_where_some_steps_are_silent_the_time_is_so_far_as_told(library: Any, libraries: Any) -> None:
    library.change(
        PENDANT, "  - title: Dry\n", "  - title: Sand\n    does: [refine]\n    parts: [plate]\n  - title: Dry\n"
    )
    sheet, index = published(library)
    # a first piece takes half as much again as the 10 to 15 min of its step
    assert "At the bench 15 – 25 min, so far as told" in libraries.said(sheet)
    assert "min, so far as told ·" in index


@pytest.mark.usefixtures("quick")
def test_a_card_says_the_time_in_all_that_the_page_says(library: Any, libraries: Any) -> None:
    sheet, index = published(library)
    [told] = re.findall(r"In all (.*? sessions?)", libraries.said(sheet))
    assert f"· in all {told} ·" in libraries.said(index)


@pytest.mark.usefixtures("quick")
def test_where_no_step_says_how_long_it_takes_no_time_at_the_bench_is_printed(library: Any) -> None:
    library.change(PENDANT, MINUTES, "")
    sheet, index = published(library)
    assert ">At the bench" not in sheet
    assert "at the bench 0" not in index
    assert "· at the bench" not in index
    head = library.handout("pendant").head  # the drying and the kiln are known
    assert (head.bench_time, head.whole_time[-1:], head.untimed) == ("", "h", ", so far as told")


def test_a_session_is_told_with_the_waits_inside_it_too_and_with_the_one_that_it_ends_with(
    demo: Any, libraries: Any
) -> None:
    """Session 1 of the drops: 80 – 125 min of work; the tubes set 10 – 20 min, and nothing is done meanwhile."""
    first, second = [row for row in demo.handout("buoy-drops").rows if row.kind == "session"][:2]
    assert (libraries.said(first.minutes), libraries.said(first.sat)) == ("1 h 20 – 2 h 05", "1 h 30 – 2 h 25")
    assert (libraries.said(second.minutes), second.sat) == ("30 – 50 min", "")  # its wait comes at its end


def test_the_page_of_a_design_says_them_at_the_head_of_a_session(good: Any, libraries: Any) -> None:
    page = (good.build / "drops/index.html").read_text("utf-8")
    heads = [libraries.said(head) for head in re.findall(r'<h3 class="session".*?</h3>', page, re.DOTALL)]
    ends = [session.then for session in good.handout("drops").sessions]
    assert len(heads) == len(ends) > 1
    for head, end in zip(heads, ends, strict=True):
        assert head.endswith(f"then {libraries.said(end)}")
