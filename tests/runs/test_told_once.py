"""A fault is told once, where it is mended: in the studio's files once for all orders, in a table once for its line."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pytest

HERE = Path(__file__).parent / "tables"
TOLD = re.compile(r"^(\S+):(\d+):(\d+): error: (.*)$", re.MULTILINE)
pytestmark = pytest.mark.usefixtures("no_paper")


def errors(said: str) -> list[tuple[str, int, str]]:
    return [(name, int(line), told) for name, line, _, told in TOLD.findall(said)]


@pytest.mark.parametrize(
    ("file", "change", "marked", "says"),
    [
        ("studio.yaml", ("across: 3", "across: 4"), "labels: {across", "the labels do not lie on the paper"),
        ("stock/clays.yaml", ("    metal share: 92 %", "    metal share: [92 %]"), "[92 %]", "'metal share' wants"),
        ("stock/others.yaml", ("    pack: 1 m\n", "    pack: 40 cm\n"), "copper-16awg:", "is longer than every length"),
    ],
)
def test_a_fault_of_studio_or_stock_is_told_once_at_its_own_line_however_many_orders_it_holds_back(
    bench: Any, file: str, change: tuple[str, str], marked: str, says: str
) -> None:
    bench.library.change(file, *change)
    text = bench.library.path(file).read_text("utf-8")
    line = 1 + text[: text.index(marked)].count("\n")
    told = bench.orders(HERE / "three-designs.csv", "--lists-alone")
    [(name, at, said)] = errors(told.said)
    assert (name, at) == (f"projects/{file}", line)
    assert says in said
    assert "held back, since something of it is in trouble: Q-" in told.said


def test_a_choice_that_means_nothing_is_told_once_a_line_at_what_is_written_there(bench: Any) -> None:
    """Whoever reads of the finger, the mandrel and the plug besides has still one cell to mend."""
    band = "tideline-band/project.yaml"
    bench.library.change(band, "size: US 7}\nparts", "size: US 7, plug: {by: size, US 7: knife, US 8: knife}}\nparts")
    for size in ("US 5", "US 6"):
        bench.library.change(band, f"size: {size}}}", f"size: {size}, plug: knife}}")
    told = bench.orders(HERE / "sizes-amiss.csv", "--lists-alone")
    assert [(line, said) for _, line, said in errors(told.said)] == [
        (2, "order Q-1: plug has no row for the size 'US 88'"),
        *((2 + n, f"order Q-{n + 1}: plug has no row for the size 'US 8,5'") for n in (1, 2, 3)),
    ]


def test_a_size_with_a_decimal_comma_is_that_with_a_point(bench: Any) -> None:
    bench.orders("Q-1,,tideline-band,,1,size=US 8.5,,,,,\n", "--lists-alone")
    point = bench.rows("pick")
    told = bench.orders('Q-1,,tideline-band,,1,"size=US 8,5",,,,,\n', "--lists-alone")
    assert not errors(told.said)
    comma = bench.rows("pick")
    assert [row["together"] for row in comma] == [row["together"] for row in point]


def test_a_kit_whose_bags_are_all_left_out_is_warned_of_by_its_order_and_sent(bench: Any) -> None:
    """Of Q-4 the glue stays, of Q-5 the glue is all that is sent; a bracelet that has no kit is its wire."""
    told = bench.orders(HERE / "nothing-left.csv", "--lists-alone")
    warned = r"^nothing-left.csv:(\d+):\d+: warning: order (Q-\d): all that its bags"
    assert re.findall(warned, told.said, re.MULTILINE) == [("2", "Q-1"), ("3", "Q-2"), ("4", "Q-3")]
    assert not errors(told.said)
    assert {row["order"] for row in bench.rows("labels", "nothing-left")} >= {"Q-1", "Q-2", "Q-3"}


def test_the_cause_is_told_before_what_is_wrong_in_a_table(bench: Any) -> None:
    bench.library.change("stock/clays.yaml", "    metal share: 92 %", "    metal share: [92 %]")
    told = bench.orders("Q-1,,tideline-band,,1,,,,,,\nQ-2,,towline-bracelet,,0,,,,,,\n", "--lists-alone")
    assert [name for name, _, _ in errors(told.said)] == ["projects/stock/clays.yaml", "season.csv"]


def test_a_count_that_means_nothing_hides_no_colourway_or_choice_that_there_is_not(bench: Any) -> None:
    """One run tells all that is wrong with a line, and nothing of its order is made."""
    told = bench.orders(
        'Q-1,,buoy-drops,Long,"1,5",,slate,,,,\nQ-2,,tideline-band,,0,size=US 88,,,,,\nQ-3,,tideline-band,,1,,,,,,\n',
        "--lists-alone",
    )
    lines = [(line, said.partition(": ")[2]) for _, line, said in errors(told.said)]
    assert [line for line, _ in lines].count(2) == 2
    assert any("no colourway 'slate'" in said for _, said in lines)
    assert {line for line, _ in lines} == {2, 3}
    assert len([line for line, _ in lines if line == 3]) > 1
    assert "held back, since something of it is in trouble: Q-1, Q-2" in told.said
