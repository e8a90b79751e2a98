"""Money, followed with a pencil."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.price import margin_of, markup_of, price_by_margin, price_by_markup, printed, rounded_up
from sheetgen.kits.costs import Costed, Task, costed, priced_by
from sheetgen.kits.material import Supply, priced
from sheetgen.kits.money import Coin, Line
from sheetgen.kits.pays import ClassCost, pays
from sheetgen.kits.rates import Rates

EUR = Coin()
D = Decimal
STUDIO = Rates(
    EUR,
    hour=D("32.00"),
    load=D("6.50"),
    overhead=Fraction(20, 100),
    overhead_of=("materials", "labour"),
    replacements=Fraction(2, 100),
    tax=Fraction(19, 100),
    step=D("0.50"),
)


def amounts(lines: tuple[Line, ...]) -> list[str]:
    return [f"{line.label}: {line.working} = {line.amount}" for line in lines]


def thirty_kits(loads: int = 0) -> Costed:
    """Materials of 336.55 by used share, as the test of the materials works them."""
    return costed(
        STUDIO,
        30,
        materials=[
            EUR.line("Stones", "", D("26.91")),
            EUR.line("Clay", "", D("250.80")),
            EUR.line("Wire", "", D("58.84")),
        ],
        wrapping=[EUR.line("Bags", "30 × 0.65", D("19.50"))],
        labour=[Task("Packing, a kit", Fraction(6), 30), Task("Packing, the run", Fraction(45))],
        loads=loads,
    )


def test_keystone_doubles_a_cost_of_ten_and_half_of_that_is_margin() -> None:
    # university marketing dictionary, keystone markup
    assert price_by_markup(10, 1) == 20 == price_by_margin(10, D("0.5"))
    assert (markup_of(20, 10), margin_of(20, 10)) == (Fraction(1), Fraction(1, 2))


@pytest.mark.parametrize(("markup", "margin"), [("0.40", 28.571), ("1.00", 50), ("1.80", 64.286)])
def test_markup_and_margin_name_one_price(markup: str, margin: float) -> None:
    # identity: margin = markup ÷ (1 + markup)
    price = price_by_markup(D("12.34"), D(markup))
    assert float(margin_of(price, D("12.34")) * 100) == pytest.approx(margin, abs=0.001)
    assert price_by_margin(D("12.34"), margin_of(price, D("12.34"))) == price
    assert markup_of(price, D("12.34")) == Fraction(markup)


@pytest.mark.parametrize(
    ("amount", "step", "shown"),
    [
        ("2.675", "0.01", "2.68"),
        ("2.5", "1", "3"),
        ("0.125", "0.05", "0.15"),
        ("7", "0.01", "7.00"),
        ("-2.675", "0.01", "-2.68"),
        ("-130.685", "0.01", "-130.69"),  # a loss as a gain of as much
        ("-130.6849", "0.01", "-130.68"),
        ("-0.004", "0.01", "0.00"),
    ],
)
def test_money_is_rounded_once_halves_away_from_zero(amount: str, step: str, shown: str) -> None:
    # common practice of tills
    assert str(printed(D(amount), D(step))) == shown


def test_a_price_tag_is_rounded_up_to_its_step_and_stays_where_it_is_on_one() -> None:
    assert rounded_up(D("41.20"), D("0.50")) == D("41.50")
    assert rounded_up(D("41.50"), D("0.50")) == D("41.50")
    assert rounded_up(D("41.01"), D("5")) == 45


@given(st.lists(st.decimals(0, 1000, places=4), max_size=20))
def test_the_total_is_what_a_reader_gets_by_adding_the_printed_lines(each: list[Decimal]) -> None:
    lines = [EUR.line("x", "", one) for one in each]
    assert EUR.total("Cost", lines).amount == sum((line.amount or 0 for line in lines), D(0))


def test_a_third_of_a_cent_is_lost_in_no_line_and_found_in_no_total() -> None:
    # 3 × 3.333 = 9.999 would be 10.00; three printed lines of 3.33 are 9.99
    lines = [EUR.line("x", "", D("3.333"))] * 3
    assert EUR.total("Cost", lines) == Line("Cost", "3.33 + 3.33 + 3.33", D("9.99"))


def test_stones_from_the_drawer_cost_what_they_cost_today_and_the_rest_what_this_run_buys() -> None:
    # 390 stones, 60 of them in the drawer: 330 are wanted and 4 × 100 bought for 27.60
    # 330 ÷ 400 × 27.60 = 22.77; 60 ÷ 100 × 6.90 = 4.14; together 26.91
    # 27.60 are bought and 26.91 used up: the drawer is 0.69 richer
    stones = Supply(
        "Stones", "", Fraction(390), Fraction(60), "4 × 100", Fraction(400), D("27.60"), (Fraction(100), D("6.90"))
    )
    three = priced(stones, EUR)
    assert amounts((three.used, three.bought, three.rest)) == [
        "Stones: 330 ÷ 400 × 27.60 + 60 ÷ 100 × 6.90 from the drawer = 26.91",
        "Stones: 4 × 100 = 27.60",
        "Stones: 27.60 bought − 26.91 used = 0.69",
    ]


def test_clay_and_wire_by_the_used_share_and_by_what_is_bought_agree_to_the_cent() -> None:
    # 165 g of 7 × 25 g for 266.00: 165 ÷ 175 × 266 = 250.80, left 15.20
    clay = priced(Supply("Clay", "g", Fraction(165), Fraction(0), "7 × 25 g", Fraction(175), D("266.00")), EUR)
    assert (clay.used.amount, clay.bought.amount, clay.rest.amount) == (D("250.80"), D("266.00"), D("15.20"))
    # 14 010 mm of fifteen spools of 1 m for 63.00: 0.934 × 63 = 58.842, printed 58.84; left 4.16
    wire = priced(Supply("Wire", "mm", Fraction(14010), Fraction(0), "15 × 1 m", Fraction(15000), D("63.00")), EUR)
    assert (wire.used.amount, wire.rest.amount) == (D("58.84"), D("4.16"))
    # all of it from the drawer: nothing leaves the till, and the drawer is poorer by what it is worth
    old = priced(Supply("Wire", "mm", Fraction(500), Fraction(500), today=(Fraction(1000), D("4.20"))), EUR)
    assert (old.used.amount, old.bought.amount, old.rest.amount) == (D("2.10"), D("0.00"), D("-2.10"))


def test_glue_that_does_forty_kits_costs_thirty_kits_three_quarters_of_its_tube() -> None:
    glue = priced(Supply("Adhesive", "kits", Fraction(30), Fraction(0), "1 × 40 kits", Fraction(40), D("9.80")), EUR)
    assert (glue.used.working, glue.used.amount) == ("30 ÷ 40 kits × 9.80", D("7.35"))


def test_what_has_no_price_is_unknown_and_never_nothing_and_the_total_says_what_it_is_without() -> None:
    cord = priced(Supply("Cord", "mm", Fraction(900), Fraction(0), "1 × 1 m", Fraction(1000), None), EUR)
    beads = priced(Supply("Beads", "", Fraction(9), Fraction(9)), EUR)
    assert [cord.used.amount, cord.bought.amount, cord.rest.amount, beads.used.amount] == [None] * 4
    total = EUR.total("Cost", [EUR.line("Clay", "", D("2.50")), cord.used, beads.used])
    assert total == Line("Cost", "2.50, without 2 items: Cord, Beads", D("2.50"))


def test_a_run_of_thirty_kits_is_costed_line_by_line() -> None:
    # wrapping 30 × 0.65 = 19.50; packing 30 × 6 ÷ 60 × 32 = 96.00 and 45 ÷ 60 × 32 = 24.00; two loads 13.00
    # overhead 20 % of (336.55 + 120.00 = 456.55) = 91.31
    # replacements 2 % of (336.55 + 19.50 + 120.00 + 13.00 + 91.31 = 580.36) = 11.6072, printed 11.61
    run = thirty_kits(loads=2)
    assert amounts(run.lines)[3:] == [
        "Bags: 30 × 0.65 = 19.50",
        "Packing, a kit: 30 × 6 min ÷ 60 × 32.00 = 96.00",
        "Packing, the run: 45 min ÷ 60 × 32.00 = 24.00",
        "Firing: 2 loads × 6.50 = 13.00",
        "Overhead: 20 % of materials and labour, 456.55 = 91.31",
        "Replacements: 2 % of 580.36 = 11.61",
    ]
    assert run.cost.amount == D("591.97")  # 580.36 + 11.61
    assert run.each == Fraction(59197, 3000)  # not rounded


def test_a_kit_is_priced_by_markup_with_tax_and_on_the_step() -> None:
    # without firing the run costs 336.55 + 19.50 + 120.00 + 91.31 = 567.36 and 2 %, 11.35: 578.71
    # 578.71 ÷ 30 × 1.8 = 34.7226; 19 % of 34.72 = 6.5968; 41.32, up to 41.50
    # 41.50 ÷ 1.19 = 34.8739; 41.50 − 34.87 = 6.63
    # the run sold is 30 × 34.87 = 1046.10, of which 467.39 are no cost: 80.76 % of 578.71, 44.68 % of 1046.10
    price = priced_by(thirty_kits(), "markup", Fraction(80, 100), STUDIO)
    assert amounts(price.lines) == [
        "Price by markup of 80 %: 578.71 ÷ 30 × (1 + 80 %) = 34.72",
        "Tax: 19 % of 34.72 = 6.60",
        "With tax: 34.72 + 6.60 = 41.32",
        "Price: 41.32 up to a whole 0.5 = 41.50",
        "Net in it: 41.50 ÷ (1 + 19 %) = 34.87",
        "Tax in it: 41.50 − 34.87 = 6.63",
    ]
    assert price.tag.amount == D("41.50")
    assert price.markup == Fraction(46739, 57871)
    assert price.margin == Fraction(46739, 104610)
    assert price.markup_working == "(34.87 − 578.71 ÷ 30) ÷ (578.71 ÷ 30)"
    assert price.margin_working == "(34.87 − 578.71 ÷ 30) ÷ 34.87"


def test_a_kit_is_priced_by_margin_too() -> None:
    # 578.71 ÷ 30 ÷ 0.55 = 35.0733; 19 % of 35.07 = 6.6633; 41.73, up to 42.00; 42 ÷ 1.19 = 35.2941
    price = priced_by(thirty_kits(), "margin", Fraction(45, 100), STUDIO)
    assert [line.amount for line in price.lines] == [D(n) for n in ("35.07", "6.66", "41.73", "42.00", "35.29", "6.71")]
    assert price.lines[0].working == "578.71 ÷ 30 ÷ (1 − 45 %)"


def test_a_piece_by_itself_without_tax_or_step_sells_for_its_price_by_markup() -> None:
    plain = Rates(EUR, D(30), D(0))
    piece = costed(
        plain,
        1,
        materials=[EUR.line("Silver", "", D("4.99"))],
        wrapping=[],
        labour=[Task("Making", Fraction(50))],
        loads=0,
    )
    # 50 ÷ 60 × 30 = 25.00; 29.99 × 2 = 59.98
    price = priced_by(piece, "markup", Fraction(1), plain)
    assert piece.cost.amount == D("29.99")
    assert price.tag.amount == D("59.98")
    assert (price.markup, price.margin) == (Fraction(1), Fraction(1, 2))


def test_a_studio_that_writes_a_comma_gets_a_comma() -> None:
    comma = Coin("CHF", D("0.05"), ",")
    assert comma.told(D("12.52")) == "12,50 CHF"
    assert comma.told(D("-0.68")) == "−0,70 CHF"


@pytest.mark.parametrize(
    ("wrong", "field"),
    [
        ({"overhead": Fraction(1, 5)}, "overhead"),
        ({"tax": Fraction(119, 100)}, "tax"),
        ({"hour": D(-1)}, "rate an hour"),
        ({"replacements": Fraction(-1, 50)}, "replacements"),
    ],
)
def test_rates_that_there_cannot_be_are_refused_at_their_field(wrong: dict[str, Decimal], field: str) -> None:
    with pytest.raises(CannotBe) as refused:
        Rates(**{"coin": EUR, "hour": D(30), "load": D(0), **wrong})  # type: ignore[arg-type]
    assert refused.value.field == field
    assert refused.value.help


def test_overhead_without_a_base_is_asked_for_one() -> None:
    with pytest.raises(CannotBe) as refused:
        Rates(EUR, D(30), D(0), overhead=Fraction(1, 5))
    assert refused.value.message == "overhead of 20 %: of what?"
    assert refused.value.help == "of labour, or of materials and labour?"


def test_a_margin_of_the_whole_price_leaves_nothing_for_the_cost() -> None:
    with pytest.raises(CannotBe, match="leaves nothing for the cost") as refused:
        priced_by(thirty_kits(), "margin", Fraction(1), STUDIO)
    assert refused.value.field == "margin"


def test_less_cannot_be_bought_than_is_used() -> None:
    with pytest.raises(CannotBe) as refused:
        Supply("Clay", "g", Fraction(30), Fraction(4), "1 × 25 g", Fraction(25), D(38))
    assert refused.value.field == "packs"
    with pytest.raises(CannotBe):
        Supply("Clay", "g", Fraction(30), Fraction(31))


def test_a_class_pays_with_six_not_with_seven_for_its_second_load_and_from_eight_on() -> None:
    cost = ClassCost(D(95), D(30), D(25), tuple(-(-n // 6) for n in range(1, 13)))
    # six to a load: 20 n are left of the fees, against 95 and 25 a load: 6: 120 of 120, 7: 140 of 145, 8: 160 of 145
    found = pays(cost, D(50), EUR)
    assert found.people == (6, 8, 9, 10, 11, 12)
    assert found.told == "pays with 6, not with 7 (a second load), and from 8 on"
    assert cost.of(7) == D(355)
    assert cost.working(7, EUR) == "95.00 + 7 × 30.00 + 2 × 25.00"


def test_every_number_that_pays_is_told_and_no_other() -> None:
    # three to a load: 130 with 1 to 3, 200 with 4 to 6, 270 with 7 to 9, besides 10 a head
    # 50 a head left: 2: 100, 3: 150, 4: 200, 5: 250, 6: 300, 7: 350; 25 a head left: 225 at most
    cost = ClassCost(D(60), D(10), D(70), tuple(-(-n // 3) for n in range(1, 10)))
    assert pays(cost, D(60), EUR).told == "pays from 3 on"
    assert pays(cost, D(35), EUR).told == "does not pay, not with 9 either: 45.00 EUR are short"
    # 45 a head left: 3: 135 of 130, 4: 180 of 200, 5: 225 of 200, 6: 270, 7: 315 of 270
    assert pays(cost, D(55), EUR).told == "pays with 3, not with 4 (a second load), and from 5 on"
    # 34 a head left: 6: 204 of 200, 7: 238 of 270, 8: 272 of 270, 9: 306 of 270
    assert pays(cost, D(44), EUR).people == (6, 8, 9)
    # 44 a head left: 3: 132 of 130, 4: 176 of 200, and only four places
    few = ClassCost(D(60), D(10), D(70), (1, 1, 1, 2))
    assert pays(few, D(54), EUR).told == "pays with 3, and not with 4 (a second load)"


def test_a_spare_set_more_is_told_where_it_makes_a_class_a_loss_again() -> None:
    # a set of 30 to each six that are begun, 20 of a fee left a head: 6: 120 of 90 + 30, 7: 140 of 150, 8: 160 of 150
    cost = ClassCost(D(90), D(30), D(0), (0,) * 8, spare=D(30), spares=(1, 1, 1, 1, 1, 1, 2, 2))
    assert pays(cost, D(50), EUR).told == "pays with 6, not with 7 (a second spare set), and with 8"
    assert cost.working(7, EUR) == "90.00 + 7 × 30.00 + 2 × 30.00"


@given(st.integers(0, 300), st.integers(0, 40), st.integers(0, 90), st.integers(1, 6), st.integers(1, 60))
def test_the_set_of_numbers_that_pay_is_that_of_trying_each(
    once: int, head: int, load: int, room: int, more: int
) -> None:
    cost = ClassCost(D(once), D(head), D(load), tuple(-(-n // room) for n in range(1, 13)))
    tried = [n for n in range(1, 13) if n * (head + more) >= once + n * head + -(-n // room) * load]
    assert list(pays(cost, D(head + more), EUR).people) == tried


def test_a_fee_that_a_head_costs_never_pays() -> None:
    with pytest.raises(CannotBe) as refused:
        pays(ClassCost(D(0), D(20), D(0), (0,) * 12), D(20), EUR)
    assert refused.value.message == "a fee of 20.00 EUR never pays, whatever the number: a head costs 20.00 EUR"
    assert refused.value.field == "fee"
