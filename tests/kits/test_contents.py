"""What lies in one kit: nothing is lost between bag and bench, and each number is that of the run's lists."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from sheetgen.base.frozen import Frozen
from sheetgen.base.interval import interval
from sheetgen.base.material import Consumable, Item, Stone, Tool
from sheetgen.base.place import Place, Source
from sheetgen.base.rounding import Rounder
from sheetgen.base.supply import Spares, Supply
from sheetgen.kits.contents import contents
from sheetgen.kits.packed import packed
from sheetgen.kits.run import taken
from sheetgen.kits.taken import Kits
from sheetgen.model.kit import Colourway, Kit, KitBag
from sheetgen.model.worked import MaterialLine, Publisher, ToolLine, Worked, WorkedVersion


def stone(name: str, **supply: Any) -> Stone:
    return Stone(id=name, name=name, size=interval(2.45), supply=Supply(**supply))


def stuff(name: str, unit: str = "g", **supply: Any) -> Item:
    return Item(id=name, name=name, unit=unit, supply=Supply(**supply))


CLEAR, SMOKE = stone("clear", spares=Spares(1, 10)), stone("smoke", spares=Spares(1, 10))
GREY = Colourway("grey sea", CLEAR, 12, "parts", (("clear", Fraction(7)), ("smoke", Fraction(5))), (CLEAR, SMOKE))
CLAY, BALM, FILM = stuff("clay"), stuff("balm"), stuff("film", "mm")
BUR, KNIFE = (Tool(id=name, name=name, unit="piece", kind="other") for name in ("bur", "knife"))
LINES = (
    MaterialLine(CLAY, interval(13.2)), MaterialLine(CLEAR, interval(12)), MaterialLine(BALM, interval(0.5)),
    MaterialLine(FILM, None),
)  # fmt: skip
KIT = Kit((KitBag("B stones", (CLEAR,)), KitBag("A clay", (CLAY,))), (BALM,), (BUR,))


def one(
    lines: Any = LINES, kit: Kit | None = KIT, before: Any = (), rounder: Rounder | None = None, **more: Any
) -> Any:
    """One kit of three, in a run that takes other things `before` it."""
    worked = Worked(
        name="drops", folder="", title="Drops", revision="1", date="2026-05-01", level="Beginner",
        place=Place(Source("", ""), 1), worn_by="adult", worn_at="ear", worn_places=Frozen(),
        studio=Publisher("Anybench"), rounder=rounder or Rounder(),
    )  # fmt: skip
    version = WorkedVersion("main", "Long", materials=lines, tools=(ToolLine(BUR), ToolLine(KNIFE)), kit=kit)
    kits = Kits(worked, version, 3, posted=True, **more)
    others = Kits(worked, WorkedVersion("other", "Other", materials=before), 1, posted=True)
    return packed(kits, contents(kits, taken([others, kits])))


def bags(kit: Any) -> dict[str, list[str]]:
    """Each bag with its things in words, as a person reads them out."""
    said = {bag.name: [f"{lot.item.id} {lot.amount}".strip() for lot in bag.lots] for bag in kit.bags}
    return {
        name: [words.replace("\u202f", " ").replace("\u00a0", " ") for words in each] for name, each in said.items()
    }


def test_each_colour_has_its_own_number_with_its_own_spare_ones() -> None:
    """12 seats by 7 to 5: seven and one, five and one; a spare for each ten that are begun."""
    assert bags(one(colourway=GREY))["B stones"] == ["clear 7 + 1", "smoke 5 + 1"]


def test_bags_stand_in_the_order_of_the_design() -> None:
    """13.2 g are 14 on a scale that shows whole grams from ten on."""
    assert list(bags(one()).items()) == [("B stones", ["clear 12 + 2"]), ("A clay", ["clay 14 g"])]


def test_what_a_kit_leaves_out_and_what_it_names_in_no_bag_comes_from_the_bench() -> None:
    kit = one()
    assert [line.item.id for line in kit.bench] == ["balm", "film"]
    assert [line.item.id for line in kit.box] == ["bur"]
    assert [line.item.id for line in kit.tools] == ["knife"]


def test_what_the_order_leaves_out_comes_from_the_bench_one_colour_and_a_tool_too() -> None:
    kit = one(colourway=GREY, leave_out=frozenset({"smoke", "clay", "bur"}))
    assert bags(kit) == {"B stones": ["clear 7 + 1"]}
    assert [(line.item.id, line.net and line.net.usual) for line in kit.bench] == [
        ("clay", 13.2), ("smoke", 5), ("balm", 0.5), ("film", None),
    ]  # fmt: skip
    assert kit.box == ()
    assert [line.item.id for line in kit.tools] == ["bur", "knife"]


def test_without_a_kit_of_the_design_all_with_an_amount_lies_in_one_bag() -> None:
    kit = one(kit=None)
    assert bags(kit) == {"": ["clay 14 g", "clear 12 + 2", "balm 0.5 g"]}
    assert [line.item.id for line in kit.bench] == ["film"]


def test_the_filling_of_a_firing_box_comes_from_the_bench_even_where_a_bag_names_it() -> None:
    """It is the same for all loads, and no bag is filled with it: so it must not be in neither."""
    carbon = stuff("carbon", "mL")
    kit = one((*LINES, MaterialLine(carbon, interval(400), filling=True)), Kit((KitBag("A", (CLAY, CLEAR, carbon)),)))
    assert [line.item.id for line in kit.bench] == ["balm", "film", "carbon"]


def test_things_of_a_bag_stand_in_the_order_of_the_list_whatever_else_the_run_has() -> None:
    kit = Kit((KitBag("A", (CLEAR, CLAY, FILM)),), (BALM,))
    assert bags(one(kit=kit, before=LINES[1::-1])) == {"A": ["clay 14 g", "clear 12 + 2", "film"]}


def test_a_piece_off_a_roll_is_told_by_its_two_sides() -> None:
    """27 mm along the roll and 94 mm across it; of two pieces how many."""
    roll = Consumable(id="roll", name="roll", unit="mm", across=300.0, supply=Supply(given_out="cut"))
    single = MaterialLine(roll, interval(27), off_roll=((1, 27.0, 94.0),))
    assert bags(one((single,), None)) == {"": ["roll 27 × 94 mm"]}
    double = MaterialLine(roll, interval(54), off_roll=((2, 27.0, 94.0),))
    assert bags(one((double,), None)) == {"": ["roll 2 of 27 × 94 mm"]}


def test_in_a_studio_of_inches_no_bag_is_told_in_millimetres() -> None:
    """84 mm are 3.31 in, up to the next quarter; a piece of 12.7 by 41.275 mm is 1/2 by 1 5/8 in."""
    wire = stuff("wire", "mm", given_out="cut")
    roll = Consumable(id="roll", name="roll", unit="mm", across=300.0, supply=Supply(given_out="cut"))
    lines = (MaterialLine(wire, interval(84)), MaterialLine(roll, interval(12.7), off_roll=((1, 12.7, 41.275),)))
    assert bags(one(lines, None, rounder=Rounder(inches=True))) == {"": ["wire 3 1/2 in", "roll 1/2 × 1 5/8 in"]}
