"""One choice decides another: the plug of a ring goes with its size."""

from __future__ import annotations

from typing import Any

import pytest

STONE = "  stone: {by: height, 22 mm: glass-2, 30 mm: smoke-2}\n"


@pytest.fixture
def rows(library: Any) -> Any:
    """The little drops, their stone decided by their height; stones of both colours are in stock."""
    smoke = "name: Smoke stone, size: 1.95-2 mm, height: 1.5 mm, kiln: no, sources: {size: invented}"
    library.write("stock/more.yaml", f"stones:\n  smoke-2: {{{smoke}}}\n")
    library.change("drops/project.yaml", "  stone: glass-2\n", STONE)
    return library


def test_the_row_of_the_deciding_choice_is_taken(rows: Any) -> None:
    assert rows.main("drops").choices["stone"] == "glass-2"
    assert rows.main("drops", height="30 mm").choices["stone"] == "smoke-2"


def test_what_is_chosen_by_name_goes_before_what_another_choice_decides(rows: Any) -> None:
    assert rows.main("drops", stone="smoke-2").choices["stone"] == "smoke-2"


def test_a_choice_without_a_row_is_told_once_with_the_rows_there_are(rows: Any) -> None:
    [trouble, *more] = rows.check("drops", height="24 mm").troubles.errors
    assert "stone has no row for the height '24 mm'" in str(trouble)
    assert "stone: {by: height} of the design needs a row for it, 24 mm: …, or choose stone too: " in str(trouble)
    assert "; it has rows for 22 mm, 30 mm" in str(trouble)
    assert [one for one in more if "no row" not in str(one)] == []


@pytest.mark.parametrize(
    ("written", "told", "helped"),
    [
        ("{22 mm: glass-2}", "by which choice it is decided is missing", "add by:"),
        ("{by: hight, 22 mm: glass-2}", "'hight' is not a choice of this project", "did you mean 'height'?"),
        ("{by: stone, 22 mm: glass-2}", "'stone' is decided by another choice itself", "given outright"),
        ("{by: height}", "no row for the height '22 mm'", "needs a row for it, 22 mm: …"),
    ],
)
def test_a_table_that_decides_nothing_is_told_with_its_mend(written: str, told: str, helped: str, rows: Any) -> None:
    rows.change("drops/project.yaml", STONE, f"  stone: {written}\n")
    first = str(rows.check("drops").troubles.errors[0])
    assert told in first
    assert helped in first


def test_a_name_that_is_no_choice_is_told_with_all_that_are_also_where_one_is_like_it(rows: Any) -> None:
    for word, near in ("hight", "did you mean 'height'? "), ("finger", ""):
        [trouble] = rows.check("drops", **{word: "22 mm"}).troubles.errors
        known = ", ".join(sorted(rows.main("drops").choices))
        assert f"help: {near}known here: {known}" in str(trouble)


def test_where_a_choice_has_no_row_the_items_of_its_kind_in_stock_are_named_and_no_others(rows: Any) -> None:
    [trouble] = [one for one in rows.check("drops", height="24 mm").troubles.errors if "no row" in str(one)]
    named = str(trouble).partition("or choose stone too: ")[2].partition(";")[0]
    assert sorted(named.split(", ")) == ["glass-2", "smoke-2"]
