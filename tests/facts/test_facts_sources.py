"""Facts: each with its source, and the same as elsewhere."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, get_args

import pytest

from sheetgen.facts import adhesive, gauges, paper, stones, times
from sheetgen.facts.fact import Fact, Grade
from sheetgen.formulas.every import every

if TYPE_CHECKING:
    from types import ModuleType

_, FACTS = every()


@pytest.mark.parametrize("fact", FACTS, ids=lambda f: f.name)
def test_a_fact_has_a_name_a_unit_a_source_and_a_grade(fact: Fact) -> None:
    assert fact.name
    assert fact.unit
    assert fact.source
    assert fact.grade in get_args(Grade)


def test_a_fact_without_a_source_cannot_be_made() -> None:
    for name, source in (("card", ""), ("", "a chart"), ("card", "  ")):
        with pytest.raises(ValueError, match="source"):
            Fact(0.25, name, unit="mm", source=source, grade="seen")


def test_what_was_only_remembered_says_so() -> None:
    for fact in FACTS:
        if fact.grade == "memory":
            assert re.search(r"remember|not read", fact.source), fact.name
        if fact.grade == "common practice":
            assert "common practice" in fact.source, fact.name
        assert ("own judgement" in fact.source) == (fact.grade == "own judgement"), fact.name


def test_how_full_a_page_is_to_be_is_nobody_s_practice_but_ours() -> None:
    ours = {fact.name for fact in FACTS if fact.grade == "own judgement"}
    assert {paper.FIRST_FULL.name, paper.TIGHTER.name, paper.PAGE_FULL.name} <= ours


def test_no_source_is_a_code_that_only_its_author_can_read() -> None:
    assert not [fact for fact in FACTS if re.search(r"\bS\d\d\b", fact.source)]


def test_a_name_stands_for_one_fact() -> None:
    names = [fact.name for fact in FACTS]
    assert sorted(names) == sorted(set(names))


def test_paper_is_of_the_standard_sizes() -> None:
    # papersize 1.6.1
    assert paper.PAPERS["A4"] == pytest.approx((210, 297))
    assert paper.PAPERS["Letter"] == pytest.approx((215.9, 279.4))
    for large, small in (("A3", "A4"), ("A4", "A5"), ("A5", "A6")):
        assert paper.PAPERS[large][0] == paper.PAPERS[small][1]


@pytest.mark.parametrize("sizes", [stones.PP, stones.SS], ids=["PP", "SS"])
def test_stone_classes_run_upwards(sizes: dict[int | str, tuple[Fact, Fact]]) -> None:
    # a supplier's size conversion reference
    for low, high in sizes.values():
        assert low < high


def test_pp_sizes_touch_and_stop_at_twenty() -> None:
    # a supplier's size conversion reference; PP 21 to 32 were never read
    assert sorted(stones.PP) == list(range(1, 21))
    for n in range(1, 20):
        assert stones.PP[n][1] == stones.PP[n + 1][0]


def test_british_gauges_get_thinner_as_they_count_up() -> None:
    # BS 3737:1964
    inches = [gauges.SWG_INCHES[n] for n in sorted(gauges.SWG_INCHES)]
    assert inches == sorted(inches, reverse=True)


@pytest.mark.parametrize("module", [adhesive, times], ids=lambda m: m.__name__.rsplit(".", 1)[-1])
def test_ranges_run_from_least_to_most(module: ModuleType) -> None:
    for pair in (value for value in vars(module).values() if isinstance(value, tuple) and len(value) == 2):
        assert pair[0] < pair[1]
    named = {name: value for name, value in vars(module).items() if isinstance(value, Fact)}
    for name, value in named.items():
        if name.endswith("_LEAST"):
            assert value < named[name.removesuffix("_LEAST") + "_MOST"]
