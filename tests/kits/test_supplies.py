"""From what is bought and cut to what it costs."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

from sheetgen.base.supply import Pack
from sheetgen.kits.cutting import Spool, Wanted, cutting_plan
from sheetgen.kits.material import priced
from sheetgen.kits.money import Coin
from sheetgen.kits.packs import to_buy
from sheetgen.kits.supplies import from_cutting, from_packs

D = Decimal
EUR = Coin()
STONES = [Pack(Fraction(100), D("6.90"))]
METRE = Spool(Fraction(1000), D("4.20"))


def test_stones_that_lie_in_the_drawer_cost_what_the_run_pays_for_more_of_them() -> None:
    # 390 wanted, 60 there: four packs of 100 for 27.60; 330 ÷ 400 × 27.60 = 22.77, and 60 at the same price 4.14
    three = priced(from_packs("Stones", "", to_buy(390, 60, STONES), STONES), EUR)
    assert three.used.working == "330 ÷ 400 × 27.60 + 60 ÷ 400 × 27.60 from the drawer"
    assert (three.used.amount, three.bought.amount, three.rest.amount) == (D("26.91"), D("27.60"), D("0.69"))
    assert three.bought.working == "4 × 100"


def test_stones_that_all_lie_in_the_drawer_cost_what_a_pack_costs_today() -> None:
    three = priced(from_packs("Stones", "", to_buy(50, 60, STONES), STONES), EUR)
    assert (three.used.working, three.used.amount) == ("50 ÷ 100 × 6.90 from the drawer", D("3.45"))
    assert (three.bought.amount, three.rest.amount) == (D("0.00"), D("-3.45"))


def test_of_a_spool_the_end_that_is_kept_is_not_used_up_and_what_is_too_short_is() -> None:
    # two of 465 out of the spool leave 70, kept; one of 465 out of the end of 500 leaves 35, lost
    plan = cutting_plan([Wanted(Fraction(465), 3)], [METRE], [Fraction(500)], keep=Fraction(60))
    supply = from_cutting("Sterling", plan, [METRE])
    assert (int(supply.used), int(supply.drawer), supply.bought) == (930 + 500, 500, "1 × 1000 mm")
    # 930 ÷ 1000 × 4.20 = 3.906 and 500 ÷ 1000 × 4.20 = 2.10: 6.006
    three = priced(supply, EUR)
    assert (three.used.amount, three.bought.amount, three.rest.amount) == (D("6.01"), D("4.20"), D("-1.81"))


def test_wire_that_is_cut_from_ends_alone_costs_what_the_cheapest_spool_would() -> None:
    long = Spool(Fraction(5000), D("17.50"))
    plan = cutting_plan([Wanted(Fraction(400), 1)], [METRE, long], [Fraction(500)], keep=Fraction(60))
    # 400 ÷ 5000 × 17.50
    assert priced(from_cutting("Sterling", plan, [METRE, long]), EUR).used.amount == D("1.40")


def test_wire_without_a_price_is_not_reckoned_as_nothing() -> None:
    bare = [Spool(Fraction(1000))]
    plan = cutting_plan([Wanted(Fraction(400), 1)], bare)
    assert priced(from_cutting("Sterling", plan, bare), EUR).used.amount is None
    nothing = priced(from_packs("Beads", "", to_buy(4, 9, []), []), EUR)
    assert (nothing.used.amount, nothing.bought.amount) == (None, D("0.00"))
