"""From what is bought and cut to what it costs."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

from sheetgen.base.material import Item, Sheet
from sheetgen.base.supply import Pack, Supply
from sheetgen.kits.bought import bought
from sheetgen.kits.cutting import Spool, Wanted, cutting_plan
from sheetgen.kits.material import priced
from sheetgen.kits.money import Coin
from sheetgen.kits.packs import to_buy
from sheetgen.kits.supplies import from_cutting, from_packs, supply
from sheetgen.kits.taken import Blank, Taken

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


# Of what is got for a run


def item(unit: str, **said: object) -> Item:
    return Item(id="x", name="Stuff", unit=unit, supply=Supply(**said))  # type: ignore[arg-type]


def test_a_tube_that_is_begun_is_not_given_out_sealed_and_so_none_of_it_is_used() -> None:
    # three of 4 mL wanted, 6 mL there: one whole tube goes, two are bought for 9.20; 8 ÷ 8 × 9.20 and 4 ÷ 8 × 9.20
    tube = Pack(Fraction(4), D("4.60"))
    glue = item("mL", packs=(tube,), have=Fraction(6), given_out="sealed")
    [got], _ = bought([Taken(glue, "sealed", Fraction(12), pack=tube)])
    three = priced(supply(got, Fraction(12)), EUR)
    assert (three.used.amount, three.bought.amount) == (D("13.80"), D("9.20"))
    assert three.used.working == "8 ÷ 8 mL × 9.20 + 4 ÷ 8 mL × 9.20 from the drawer"


def test_a_piece_uses_less_than_it_must_have_and_the_rest_comes_back() -> None:
    # 10 g must be there and 8 are: a packet of 25 g is bought, but the 4.2 g that stay in the piece were there
    clay = item("g", packs=(Pack(Fraction(25), D(38)),), have=Fraction(8))
    [got], _ = bought([Taken(clay, "pot", Fraction(10))])
    three = priced(supply(got, Fraction("4.2")), EUR)
    assert three.used.working == "4.2 ÷ 25 g × 38.00 from the drawer"
    assert (three.used.amount, three.bought.amount, three.rest.amount) == (D("6.38"), D("38.00"), D("31.62"))


def test_of_spools_sold_in_threes_those_that_stay_whole_are_bought_and_not_used() -> None:
    # two of 900 off two spools, three must be taken for 12.60: 2 × 1000 are gone, the ends of 100 kept: 1800 ÷ 3000
    wire = item("mm", packs=(Pack(Fraction(1000), D("4.20"), 3),), keep_from=Fraction(60), given_out="cut")
    [got], _ = bought([Taken(wire, "cut", Fraction(1800), wanted=(Wanted(Fraction(900), 2),))])
    three = priced(supply(got, got.used), EUR)
    assert three.used.working == "1800 ÷ 3000 mm × 12.60"
    assert (three.used.amount, three.bought.amount, three.rest.amount) == (D("7.56"), D("12.60"), D("5.04"))
    assert three.bought.working == "3 × 1000 mm"


def test_of_sheet_the_blanks_are_used_by_their_area() -> None:
    # four blanks of 20 × 30 off one sheet of 50 × 100 for 26.00: 2400 ÷ 5000 × 26.00
    sheet = Sheet(
        id="s", name="Silver sheet", unit="mm²", thickness=1, density=10, long=100, wide=50,
        supply=Supply(packs=(Pack(Fraction(5000), D(26)),), given_out="cut"),
    )  # fmt: skip
    blank = Blank(Fraction(30), Fraction(20), 4, "Brooch")
    [got], _ = bought([Taken(sheet, "blanks", Fraction(2400), blanks=(blank,))])
    assert priced(supply(got, got.taken.need), EUR).used.amount == D("12.48")


def test_a_sheet_that_is_begun_does_not_go_first() -> None:
    # two whole sheets of 50 × 100 wanted; in the drawer one, and 2000 mm² of another: one is bought
    sheet = Sheet(
        id="s", name="Silver sheet", unit="mm²", thickness=1, density=10, long=100, wide=50,
        supply=Supply(packs=(Pack(Fraction(5000), D(26)),), have=Fraction(7000), given_out="cut"),
    )  # fmt: skip
    blank = Blank(Fraction(100), Fraction(50), 2, "Brooch")
    [got], _ = bought([Taken(sheet, "blanks", Fraction(10000), blanks=(blank,))])
    three = priced(supply(got, got.taken.need), EUR)
    assert three.used.working == "5000 ÷ 5000 mm² × 26.00 + 5000 ÷ 5000 mm² × 26.00 from the drawer"
    assert three.bought.amount == D("26.00")
