"""Whether a table holds orders or the pupils of a class, by the names of its columns."""

from __future__ import annotations

from pathlib import Path

import pytest

from sheetgen.read.table_kind import CLASS, ORDERS, UNKNOWN, held_in

TESTS = Path(__file__).parents[1]
CLASSES = sorted((TESTS / "classes" / "honest").iterdir())
OF_ORDERS = sorted((TESTS / "orders" / "honest").iterdir())


@pytest.mark.parametrize(
    ("path", "kind"),
    [*((path, CLASS) for path in CLASSES), *((path, ORDERS) for path in OF_ORDERS)],
    ids=lambda one: one.name if isinstance(one, Path) else one,
)
def test_what_makers_write_is_known_in_whatever_order_and_case(path: Path, kind: str) -> None:
    assert held_in(path) == kind


@pytest.mark.parametrize(
    ("head", "kind"),
    [
        ("order,design,count", ORDERS),
        ("Gift note;NAME;Design;Count;ORDER", ORDERS),
        ("ordr,name,design,version,count", ORDERS),  # a slip is told by who reads orders: a class counts nothing
        ("name,design", CLASS),
        ("Table\tDesign\tName", CLASS),
        ("nmae,design,table", CLASS),
        ("Wren Tidewell,tideline-band,US 8", UNKNOWN),
        ("", UNKNOWN),
    ],
)
def test_a_column_that_only_orders_have_makes_it_orders(head: str, kind: str, tmp_path: Path) -> None:
    path = tmp_path / "table.csv"
    path.write_text(f"{head}\n", "utf-8")
    assert held_in(path) == kind


def test_a_table_that_is_not_there_is_of_no_kind(tmp_path: Path) -> None:
    assert held_in(tmp_path / "spring.csv") == UNKNOWN
