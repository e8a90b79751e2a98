"""A run of kits, on small drawers made up here: what each bag holds, what is bought and cut, and what is left."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest

from sheetgen.base.frozen import Frozen
from sheetgen.base.interval import interval
from sheetgen.base.material import Clay, Consumable, Fibre, Item, Sheet, Stone, Wire
from sheetgen.base.place import Place, Source
from sheetgen.base.rounding import Rounder
from sheetgen.base.supply import Does, Pack, Shop, Spares, Supply
from sheetgen.base.trouble import Trouble
from sheetgen.formulas.buying import length_of_roll
from sheetgen.kits import buy_list, cut_list
from sheetgen.kits.bought import bought
from sheetgen.kits.lists import left, pick
from sheetgen.kits.money import Coin
from sheetgen.kits.run import taken
from sheetgen.kits.taken import Kits
from sheetgen.model.drawing import SlabLayout
from sheetgen.model.kit import Kit
from sheetgen.model.worked import MaterialLine, Publisher, Worked, WorkedVersion

DROPS = Worked(
    name="drops", folder="", title="Drops", revision="1", date="2026-05-01", level="Beginner",
    place=Place(Source("", ""), 1), worn_by="wearer", worn_at="ear", worn_places=Frozen(),
    studio=Publisher("Anybench"), rounder=Rounder(),
)  # fmt: skip


def pack(holds: str | int, price: str | None = None, at_least: int = 1) -> Pack:
    return Pack(Fraction(holds), None if price is None else Decimal(price), at_least)


def wire(**supply: Any) -> Wire:
    return Wire(id="w", name="Wire", unit="mm", thickness=1, density=9, supply=Supply(given_out="cut", **supply))


def stuff(unit: str, **supply: Any) -> Item:
    return Item(id="x", name="Stuff", unit=unit, supply=Supply(**supply))


def kits(*lines: MaterialLine, bags: int = 1, posted: bool = True, **more: Any) -> Kits:
    return Kits(DROPS, WorkedVersion("main", "Long", materials=lines, **more), bags, posted=posted)


def line(item: Item, net: float | None, allowance: float = 0.0, **more: Any) -> MaterialLine:
    return MaterialLine(item, None if net is None else interval(net), allowance, **more)


def got(*run: Kits) -> Any:
    found, troubles = bought(taken(run))
    assert troubles == []
    return found


def buy(found: Any, coin: Coin) -> tuple[Any, Any]:
    whole = buy_list.shopping(found, coin)
    return buy_list.buy(whole), whole.total


def cut(found: Any) -> Any:
    return cut_list.cut(cut_list.cuttings(found))


def rows(sheet: Any) -> list[dict[str, Any]]:
    return [dict(zip(sheet.head, row, strict=True)) for row in sheet.rows]


@pytest.mark.parametrize("given", ["weighed", "sealed", "from the pot", ""])
def test_a_bag_is_rounded_by_itself_and_the_pot_of_a_class_is_summed_first(given: str) -> None:
    """3.1 g up to 3.5 g a bag: 7 bags 24.5 g, and sealed 7 packs of 4 g. In a pot 21.7 g, up to 22 g.

    It is so however stock says that it is given out: a class takes from a pot what a kit would have in a bag.
    """
    some = line(stuff("g", given_out=given, packs=(pack(4),)), 3.1)
    bags = 28 if given == "sealed" else Fraction(49, 2)
    assert taken([kits(some, bags=7)])[0].need == bags
    assert taken([kits(some, bags=7, posted=False)])[0].need == 22
    [row] = rows(pick(taken([kits(some, bags=7, posted=False)])))
    assert (row["bags"], row["in one bag"], row["design"], row["together"]) == (7, None, None, 22)


def test_a_pot_of_two_kinds_is_summed_over_both_and_what_comes_back_is_told() -> None:
    """5 × 12 and 3 × 16 stones are 108; 1 per 10 to spare 11, and 5 % 6: 119. Bag by bag 5 × 14 + 3 × 18 = 124."""
    stone = Stone(id="s", name="Stone", size=interval(2), supply=Supply(spares=Spares(1, 10)))
    run = [kits(line(stone, many, 0.05), bags=bags, posted=False) for many, bags in ((12, 5), (16, 3))]
    [row] = rows(pick(taken(run)))
    assert (row["bags"], row["of it spare"], row["together"]) == (8, 11, 119)
    assert taken([replace(one, posted=True) for one in run])[0].need == 124


def test_the_clay_of_a_pot_is_enough_for_all_to_roll_at_once_and_what_is_not_in_the_pieces_is_left() -> None:
    """Seven slabs of 12.3 g are 86.1 g, up to 87; the pieces weigh 56 g, and with 60 there and 50 bought 54 g stay."""
    clay = Clay(
        id="c", name="Clay", unit="g", shrinkage=interval(0.1), thickness_shrinkage=interval(0.1), density=7,
        metal_share=0.9, supply=Supply(given_out="weighed", packs=(pack(25, "38"),), have=Fraction(60)),
    )  # fmt: skip
    slab = SlabLayout("Clay", 1, 0, ((1.0, 1.0),), 12.3, 8, (), (), ())  # type: ignore[arg-type]
    found = got(kits(line(clay, 8, 0.15), bags=7, posted=False, slabs=(slab,)))
    assert [(one.needed, one.bought) for one in found] == [(87, 50)]
    [row] = rows(left(found))
    assert (row["before"], row["bought"], row["used"], row["after"]) == (60, 50, 56, 54)


def test_of_clay_a_bag_holds_no_less_than_its_slab() -> None:
    """8 g with 15 % are 9.2 g, and the slab of 12.3 g is rolled at once: 13 g."""
    clay = Clay(
        id="c", name="Clay", unit="g", shrinkage=interval(0.1), thickness_shrinkage=interval(0.1), density=7,
        metal_share=0.9, supply=Supply(given_out="weighed"),
    )  # fmt: skip
    slab = SlabLayout("Clay", 1, 0, ((1.0, 1.0),), 12.3, 8, (), (), ())  # type: ignore[arg-type]
    [row] = rows(pick(taken([kits(line(clay, 8, 0.15), bags=3, slabs=(slab,))])))
    assert (row["station"], row["in one bag"], row["of it spare"], row["together"]) == ("clay", 13, 5, 39)


def test_stones_take_the_larger_of_spares_and_allowance() -> None:
    """12 with 5 % are 13, with 1 per 10 that are begun 14."""
    for spares, many in ((None, 13), (Spares(1, 10), 14)):
        stone = Stone(id="s", name="Stone", size=interval(2), supply=Supply(spares=spares))
        [row] = rows(pick(taken([kits(line(stone, 12, 0.05), bags=30)])))
        assert (row["station"], row["in one bag"], row["together"]) == ("stones", many, 30 * many)


def test_sealed_packs_are_of_the_size_by_which_the_run_costs_least() -> None:
    """0.4 mL: for two bags 2 × 15 mL cost 24.80 and the least five of 4 mL 23.00; for one bag 12.40 and 23.00."""
    glue = stuff("mL", given_out="sealed", packs=(pack(15, "12.40"), pack(4, "4.60", 5)), have=Fraction(5))
    [two] = got(kits(line(glue, 0.3, 0.1), bags=2))
    assert [(p.holds, many) for p, many in two.packs] == [(4, 5)]  # one of 4 lies there, and five must be taken
    assert (two.needed, two.left) == (8, 5 + 20 - 8)
    [one] = got(kits(line(glue, 0.3, 0.1)))
    assert [(p.holds, many) for p, many in one.packs] == [(15, 1)]


def test_what_is_left_out_of_the_kit_is_not_taken() -> None:
    balm = stuff("g", given_out="weighed")
    assert taken([kits(line(balm, 3), kit=Kit(leave_out=(balm,)))]) == ()


def test_the_drawer_goes_once_where_some_take_an_amount_and_some_what_they_need() -> None:
    """10 mL lie there: 8 by amount come out of them; a pack of 30 mL does 6 kits, and 3 kits take 15 of a new one."""
    alcohol = stuff(
        "mL", given_out="from the pot", packs=(pack(30, "2"),), have=Fraction(10), a_pack_does=Does(6, "kits")
    )
    run = (kits(line(alcohol, 8), posted=False), kits(line(alcohol, None), bags=3, posted=False))
    assert [(one.needed, one.have, one.left, one.bought) for one in got(*run)] == [(8, 10, 2, 0), (15, 0, 15, 30)]


def test_as_needed_of_which_stock_says_nothing_is_told_and_not_reckoned() -> None:
    tape = stuff("mm", given_out="cut", packs=(pack(1000, "2"),))
    found = got(kits(line(tape, None), posted=False))
    sheet, total = buy(found, Coin())
    assert (rows(sheet)[0]["cost"], rows(sheet)[0]["packs"]) == ("unknown", None)
    assert "does not say what a pack does" in rows(sheet)[0]["pack"]
    assert rows(sheet)[-1]["name"] == "Total, EUR, without 1 item"
    assert total.amount == 0


def test_one_length_a_bag_is_cut_from_the_kept_end_first() -> None:
    """460 mm with 10 % are 506, up to 510: out of 520 one, and of two spools of 1 m the other two."""
    w = wire(packs=(pack(1000, "24"),), ends=(Fraction(520),), have=Fraction(520), keep_from=Fraction(60))
    found = got(kits(line(w, 460, 0.1), bags=3))
    told = [(r["from"], r["number"], r["length"], r["times"], r["left"], r["keep"]) for r in rows(cut(found))]
    assert told == [("end", 1, 520, 1, 10, None), ("spool", 1, 1000, 2, 490, "keep")]
    assert {r["pieces"] for r in rows(cut(found))} == {"1 × 510 mm, tag a, Drops, Long"}
    [row] = rows(left(found))
    assert (row["before"], row["bought"], row["after"], row["ends"]) == (520, 2000, 980, "490 · 490")


def test_of_a_spool_that_is_sold_by_twos_the_second_stays_whole() -> None:
    [one] = got(kits(line(wire(packs=(pack(1000, "24", 2),), keep_from=Fraction(60)), 460)))
    assert [many for _, many in one.packs] == [2]
    assert one.ends == (1000, 540)


def test_a_cheap_spool_that_is_sold_by_tens_is_not_taken_for_one_piece() -> None:
    """Ten at 20 are 200, one at 24 is 24; of 25 metres thirteen at 20 are 260, and at 24 they are 312."""
    w = wire(packs=(pack(1000, "24"), pack(1000, "20", 10)), keep_from=Fraction(60))
    for bags, cost in ((1, "24"), (25, "260")):
        found = got(kits(line(w, 460), bags=bags))
        assert buy(found, Coin())[1].amount == Decimal(cost)


def test_ends_that_are_not_enough_where_nothing_is_sold_are_told() -> None:
    w = wire(ends=(Fraction(500),), have=Fraction(500))
    assert [got(kits(line(w, 460), bags=n))[0].why for n in (1, 2)] == ["", "stock names no pack"]


def test_where_no_end_is_said_to_be_kept_one_that_does_for_a_piece_is() -> None:
    """2 of 400 mm leave 200 of a metre, which does for none; 1 leaves 600, which does."""
    cord = Fibre(id="f", name="Cord", unit="mm", thickness=1, supply=Supply(given_out="cut", packs=(pack(1000, "3"),)))
    assert [got(kits(line(cord, 400), bags=n))[0].ends for n in (1, 2)] == [(600,), ()]


@pytest.mark.parametrize(
    ("many", "long", "wide"), [(12, 27.0, 94.0), (1, 94.0, 27.0), (25, 40.0, 151.0), (7, 60.0, 310.0)]
)
def test_pieces_off_a_roll_take_the_length_that_the_formula_says(many: int, long: float, wide: float) -> None:
    roll = Consumable(id="r", name="Roll", unit="mm", across=300, supply=Supply(given_out="cut", packs=(pack(9000),)))
    [one] = taken([kits(line(roll, long, off_roll=((1, long, wide),)), bags=many)])
    assert float(one.need) == length_of_roll.pure(many, long, wide, 300)
    [row] = rows(pick([one]))
    assert (row["in one bag"], row["together"], row["unit"]) == (1, many, f"piece of {long:g} × {wide:g} mm")


def test_sheet_is_bought_by_its_blanks_and_not_by_area() -> None:
    """Of 40 × 22 mm one comes out of 50 × 50 mm, and a strip of 50 × 22 beside it: two blanks a sheet, so three of 5.

    By area 5 × 880 = 4400 mm² would be two sheets of 2500.
    """
    metal = Sheet(
        id="m", name="Sheet", unit="mm²", thickness=0.6, density=10, long=50, wide=50,
        supply=Supply(given_out="cut", packs=(pack(2500, "26"),)),
    )  # fmt: skip
    found = got(kits(line(metal, 880, blanks=((1, 40.0, 22.0),)), bags=5))
    assert [many for _, many in found[0].packs] == [3]
    assert [(r["from"], r["times"], r["pieces"][:1]) for r in rows(cut(found))] == [
        ("sheet", 2, "2"),
        ("sheet", 1, "1"),
    ]
    [row] = rows(pick([found[0].taken]))
    assert (row["in one bag"], row["unit"], row["together"]) == (1, "blank of 40 × 22 mm", 5)


def test_a_blank_larger_than_a_sheet_is_told() -> None:
    metal = Sheet(
        id="m", name="Sheet", unit="mm²", thickness=0.6, density=10, long=50, wide=50,
        supply=Supply(given_out="cut", packs=(pack(2500, "26"),)),
    )  # fmt: skip
    _, [trouble] = bought(taken([kits(line(metal, 1200, blanks=((1, 60.0, 20.0),)))]))
    assert trouble == Trouble(
        "Sheet: a blank of 60 × 20 mm for Drops, Long is larger than a sheet, 50 × 50 mm",
        None,
        "a larger sheet, or a smaller piece",
    )


def test_pieces_of_which_stock_names_no_length_are_on_the_cutting_list_all_the_same() -> None:
    found = got(kits(line(wire(), 40), bags=3))
    [row] = rows(cut(found))
    assert (row["from"], row["length"], row["pieces"], row["times"]) == (
        "stock names no pack", None, "1 × 40 mm, tag a, Drops, Long", 3,
    )  # fmt: skip
    assert rows(buy(found, Coin())[0])[0]["cost"] == "unknown"


def test_delivery_is_paid_only_where_something_is_bought() -> None:
    shop = Shop("Tide", delivery=Decimal(6), free_from=Decimal(20))
    for have, cost, said in ((9, "0", None), (0, "11", "Delivery; 15.00 EUR more and delivery is free")):
        clasp = stuff("piece", packs=(pack(5, "5"),), have=Fraction(have), shop=shop)
        sheet, total = buy(got(kits(line(clasp, 1), bags=4)), Coin())
        assert total.amount == Decimal(cost)
        assert [r["name"] for r in rows(sheet) if "elivery" in r["name"]] == ([said] if said else [])
    clasp = replace(clasp, supply=replace(clasp.supply, packs=(pack(5, "20"),)))
    sheet, total = buy(got(kits(line(clasp, 1), bags=4)), Coin())
    assert total.amount == 20
    assert rows(sheet)[2]["name"] == "Delivery, free from 20.00 EUR on"
