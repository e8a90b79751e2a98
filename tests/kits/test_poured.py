"""A pot given out to tables: each has what its sets take where there is so much, and all together are the pot."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sheetgen.base.interval import interval
from sheetgen.base.material import Fibre, Item, Stone
from sheetgen.base.rounding import Rounder
from sheetgen.base.supply import Supply
from sheetgen.kits.poured import poured
from sheetgen.kits.run import taken
from sheetgen.model.worked import MaterialLine
from tests import lists_made as made

if TYPE_CHECKING:
    from sheetgen.kits.taken import Kits

TABLES = st.lists(st.integers(0, 9), min_size=1, max_size=5).filter(any)
GLUE = Item(id="x", name="Glue", unit="mL", supply=Supply(given_out="sealed"))
CORD = Fibre(id="x", name="Cord", unit="mm", thickness=1, supply=Supply(given_out="from the pot"))
STONE = Stone(id="x", name="Stone", size=interval(2), supply=Supply())


def stands(kits: Kits, tables: list[int]) -> tuple[Fraction, list[Fraction], list[Fraction]]:
    """The pot; of each table what stands there, and what of that is to spare."""
    [pot] = taken([kits])
    parts = [there.get("x") for there in poured([kits], [pot], [[kits] * many for many in tables])]
    much, spare = zip(
        *((part[1].much, part[1].spare) if part else (Fraction(0), Fraction(0)) for part in parts), strict=True
    )
    return pot.need, list(much), list(spare)


@given(TABLES, st.integers(1, 400), st.sampled_from([GLUE, CORD, STONE]), st.booleans())
def test_all_that_stands_on_the_tables_is_the_pot(tables: list[int], tenths: int, item: Item, inches: bool) -> None:  # noqa: FBT001
    each = tenths if item is STONE else tenths / 10
    line = MaterialLine(item, interval(each), 0.05)
    kits = made.kits(line, bags=sum(tables), worked=made.in_units(Rounder(inches=inches)), posted=False)
    need, much, _ = stands(kits, tables)
    assert sum(much) == need
    assert all((stood > 0) == (many > 0) for stood, many in zip(much, tables, strict=True))


@given(TABLES, st.integers(1, 40))
def test_every_seat_of_a_table_has_its_stone_and_the_rest_is_to_spare(tables: list[int], seats: int) -> None:
    kits = made.kits(MaterialLine(STONE, interval(seats), 0.05), bags=sum(tables), posted=False)
    _, much, spare = stands(kits, tables)
    assert [stood - over for stood, over in zip(much, spare, strict=True)] == [many * seats for many in tables]


@pytest.mark.parametrize(("tables", "stood"), [([12, 2], ["4.3", "0.7"]), ([7, 7], ["2.5", "2.5"])])
def test_fourteen_mixes_of_adhesive_are_one_pot_of_five_millilitres(tables: list[int], stood: list[str]) -> None:
    """14 × 0.33 = 4.62, up to 5. Twelve take 3.96 and two 0.66: 4.0 and 0.7, and of 0.3 over 0.257 and 0.043."""
    kits = made.kits(MaterialLine(GLUE, interval(0.3), 0.1), bags=14, posted=False)
    assert stands(kits, tables)[:2] == (Fraction(5), [Fraction(one) for one in stood])


def test_a_pot_of_fewer_millimetres_than_tables_leaves_no_table_without() -> None:
    """Two sets of 0.105 mm are 0.21, up to 0.3: in tenths two and one, the odd one to the table named first."""
    kits = made.kits(MaterialLine(CORD, interval(0.1), 0.05), bags=2, posted=False)
    assert stands(kits, [1, 1])[:2] == (Fraction(3, 10), [Fraction(2, 10), Fraction(1, 10)])
