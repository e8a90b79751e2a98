"""What a piece, a run of kits and a class cost: each followed with a pencil, from the printed sheets and the stock."""

from __future__ import annotations

import csv
import io
import re
import shutil
import stat
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction
from pathlib import Path
from typing import Any

import openpyxl
import pytest
from click.testing import CliRunner

from sheetgen.cli import main
from sheetgen.render.job import Printout

ROOT = Path(__file__).parents[2]
WELL, TROUBLES, USAGE = 0, 1, 2
D = Decimal
TILL = """\
rate an hour: 32 EUR
packing: {a kit: 2.5 min, a run: 20 min}
overhead: 15 % of labour
cost of a load: 6.50 EUR
pieces a load: 8
wrapping:
  a kit: {box: 1.20 EUR, tissue: 0.15 EUR}
  with sheets: {sheets printed: 0.40 EUR}
  a run: {tape: 2.40 EUR}
replacements: 2 %
markup: 120 %
margin: 55 %
tax: 19 %
price step: 0.50 EUR
class:
  room an evening: 40 EUR
  teaching an evening: 110 EUR
  fee: 100.50 EUR
"""
Amounts = dict[str, str]


def costed(private: Path, *words: str, till: str = TILL, root: Path = ROOT) -> Any:
    """The command in the demonstration, or another library, with a till; none where it is empty."""
    private.mkdir(exist_ok=True)
    if till:
        (private / "till.yaml").write_text(till, "utf-8")
    result = CliRunner().invoke(main, ["cost", *words, "--library", str(root), "--private", str(private)])
    if result.exception and not isinstance(result.exception, SystemExit):
        raise result.exception
    return result


def rows(private: Path, name: str) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO((private / "cost" / f"{name}.csv").read_text("utf-8-sig"))))


def amounts(private: Path, name: str) -> Amounts:
    return {row["line"]: row["amount"] for row in rows(private, name)}


# With a pencil


def test_a_piece_is_costed_line_by_line(tmp_path: Path) -> None:
    """A ring in US 7 uses 4.2 g of clay (10 to have, 60 in the drawer), a plug, 25 mm of sheet, 0.5 g of balm.

    Clay 4.2 ÷ 25 × 38 = 6.384, plug 12 ÷ 10 = 1.20, sheet 25 ÷ 5000 × 4.80 = 0.024, balm 0.5 ÷ 30 × 5.50 = 0.092; a
    part of what a pack does: tape 2.20 ÷ 80 = 0.0275, film 2.40 ÷ 60 = 0.04, fibre of a firing that eight share 11 ÷
    60 ÷ 8 = 0.023, pads 7.20 ÷ 12 = 0.60, cloth 6 ÷ 20 = 0.30. Together 8.68. 135 min at the bench: 72.00. A load of
    eight: 6.50 ÷ 8 = 0.8125. 15 % of 72.00 = 10.80. 2 % of 92.29 = 1.846. In all 94.14.
    Bought are a packet of each but of clay and sheet: 46.30, and so 132.51 in all; 46.30 − 8.68 = 37.62 lie over.
    """
    result = costed(tmp_path / "p", "tideline-band")
    assert result.exit_code == WELL, result.output
    assert list(amounts(tmp_path / "p", "tideline-band-us-7-used").values()) == [
        "6.38", "1.20", "0.02", "0.09", "0.03", "0.04", "0.02", "0.60", "0.30", "72.00", "0.81", "10.80", "1.85",
        "94.14",
    ]  # fmt: skip
    assert list(amounts(tmp_path / "p", "tideline-band-us-7-bought").values()) == [
        "0.00", "12.00", "0.00", "5.50", "2.20", "2.40", "11.00", "7.20", "6.00", "72.00", "0.81", "10.80", "2.60",
        "132.51",
    ]  # fmt: skip
    assert amounts(tmp_path / "p", "tideline-band-us-7-drawer")["More in the drawer"] == "37.62"
    assert "Work at the bench, the usual of 120 to 150 min" in result.stdout
    assert "1 load × 6.50 ÷ 8 pieces to a load" in result.stdout


def test_the_piece_is_priced_by_markup_and_by_margin(tmp_path: Path) -> None:
    """By markup 94.14 × 2.2 = 207.108; 19 % of it 39.351; 246.46, up to 246.50; ÷ 1.19 = 207.143, and 39.36 of tax.

    (207.14 − 94.14) ÷ 94.14 = 120.03 %, ÷ 207.14 = 54.55 %. By margin 94.14 ÷ 0.45 = 209.20; 39.748; 248.95, up to
    249.00; ÷ 1.19 = 209.244, and 39.76 of tax; 115.10 ÷ 94.14 = 122.26 %, ÷ 209.24 = 55.01 %.
    """
    costed(tmp_path / "p", "tideline-band")
    found = [row["amount"] for row in rows(tmp_path / "p", "tideline-band-us-7-price")[1:]]
    assert found == [
        "207.11", "39.35", "246.46", "246.50", "207.14", "39.36", "120.03 %", "54.55 %",
        "209.20", "39.75", "248.95", "249.00", "209.24", "39.76", "122.26 %", "55.01 %",
    ]  # fmt: skip


def test_a_run_of_kits_is_packed_and_wrapped_and_fires_nothing(tmp_path: Path) -> None:
    """Twelve rings: bags of 10 g of clay, 60 g there, 60 bought as 3 × 25 g for 114: both by that price, 182.40.

    Plugs 12 ÷ 20 × 24 = 14.40; sheet, twelve abreast, 60 ÷ 5000 × 4.80 = 0.0576: 196.86. What lies in no bag (tape,
    pads, cloth) is not sent, and not paid for. Boxes 14.40, tissue 1.80, sheets 4.80, tape 2.40. Packing
    12 × 2.5 ÷ 60 × 32 = 16.00 and 20 ÷ 60 × 32 = 10.667. 15 % of 26.67 = 4.0005. 2 % of 250.93 = 5.0186. In all
    255.95. A kit is 21.3292, times 2.2 is 46.924, with 19 % 55.83: 56.00.
    """
    result = costed(tmp_path / "p", "tideline-band=12")
    assert result.exit_code == WELL, result.output
    assert list(amounts(tmp_path / "p", "kits-used").values()) == [
        "182.40", "14.40", "0.06", "14.40", "1.80", "4.80", "2.40", "16.00", "10.67", "4.00", "5.02", "255.95",
    ]  # fmt: skip
    price = rows(tmp_path / "p", "kits-price")
    assert [row["amount"] for row in price[1:5]] == ["46.92", "8.91", "55.83", "56.00"]
    assert price[1]["working"] == "255.95 ÷ 12 × (1 + 120 %)"
    assert not [row for row in rows(tmp_path / "p", "kits-used") if row["line"] == "Firing" or "load" in row["working"]]


CLASS = "tideline-band-sterling-clay-us-7-class"


def test_a_class_is_costed_by_its_pot_and_its_loads_with_the_teachers_piece_and_a_spare_set(tmp_path: Path) -> None:
    """Twelve rings of sterling clay, the teacher's and a spare set: fourteen sets out of one pot.

    A ring uses 4.625 g: 14 × 4.625 = 64.76, so 65 g of 150 bought for 196. The pupils' part is twelve fourteenths:
    12 ÷ 14 × 65 ÷ 150 × 196 = 72.80. Plugs 12 ÷ 14 × 14 ÷ 15 × 42 = 33.60. Sheet of 62.5 mm, four of them across the
    roll and four rows of 25: 12 ÷ 14 × 100 ÷ 5000 × 4.80 = 0.082. Balm 6 ÷ 30 × 5.50 = 1.10,
    carbon none (one packet for 16.00 must be there),
    tape 0.33, film 0.48, pads 7.20, cloth 3.60: 119.19. A set more is what a head takes, 119.19 ÷ 12 = 9.93, twice.
    Teaching 4 × 110, room 4 × 40. Eight rings lie in a box of carbon: thirteen are two loads, 180.00; the spare set is
    fired only for a ring that is lost. 15 % of 440 = 66. In all 119.19 + 9.93 + 9.93 + 440 + 180 + 160 + 66 = 985.05.
    """
    result = costed(
        tmp_path / "p", "tideline-band:Sterling clay, US 7", "--class", till=TILL.replace("load: 6.50", "load: 90")
    )
    assert result.exit_code == WELL, result.output
    assert list(amounts(tmp_path / "p", f"{CLASS}-used").values()) == [
        "72.80", "33.60", "0.08", "1.10", "0.00", "0.33", "0.48", "7.20", "3.60", "9.93", "9.93", "440.00", "180.00",
        "160.00", "66.00", "985.05",
    ]  # fmt: skip
    bought = amounts(tmp_path / "p", f"{CLASS}-bought")
    assert bought["Activated carbon, for a firing box"] == "16.00"
    assert bought["Sterling-silver clay, two-phase"] == "196.00"
    assert [bought[name] for name in ("The teacher’s piece", "Spare sets")] == ["0.00", "0.00"]  # in those packs
    used = {row["line"]: row["working"] for row in rows(tmp_path / "p", f"{CLASS}-used")}
    assert used["The teacher’s piece"] == "119.19 ÷ 12"
    assert "a class of 12 + 1 teacher’s piece + 1 spare set" in result.stdout
    assert "common practice; class: in studio.yaml may say otherwise" in result.stdout


def test_the_teachers_piece_is_in_the_load_that_a_class_pays_for(tmp_path: Path) -> None:
    """A fee of 151.13 is 127 without its tax. Once 440 × 1.15 + 160 + 9.93 = 675.93; a head 119.19 ÷ 12; a load 130.

    Seven and the teacher's are eight, one load: 7 × 127 − (675.93 + 69.5275 + 130 + 9.93) = 3.61. With eight they are
    nine: 1016 − (675.93 + 79.46 + 260 + 9.93) = −9.32. With nine 1143 − 1035.2525 = 107.75, with twelve 458.95.
    """
    till = TILL.replace("load: 6.50", "load: 130").replace("100.50", "151.13")
    result = costed(tmp_path / "p", "tideline-band:Sterling clay, US 7", "--class", till=till)
    fee = amounts(tmp_path / "p", f"{CLASS}-fee")
    assert (fee["Once, however many come"], fee["For each spare set"]) == ("675.93", "9.93")
    assert [fee[f"Left with {n}"] for n in (7, 8, 9, 12)] == ["3.61", "-9.32", "107.75", "458.95"]
    assert "The class pays with 7, not with 8 (a second load), and from 9 on" in result.stdout


def holding(tmp_path: Path, said: str) -> Path:
    """The demonstration, its classes held otherwise."""
    root = tmp_path / "library"
    shutil.copytree(ROOT / "projects", root / "projects")
    studio = root / "projects" / "studio.yaml"
    studio.write_text(studio.read_text("utf-8").replace("  people: 12\n", f"  people: 12\n{said}"), "utf-8")
    return root


def test_a_class_with_nothing_made_up_besides_costs_its_pupils_sets_alone(tmp_path: Path) -> None:
    """56 g of 125 bought for 162: 72.576; plugs 12 ÷ 15 × 42; sheet 62.5 ÷ 5000 × 4.80: 118.95 in all.

    Teaching 4 × 110, room 4 × 40, two loads 200.00, 15 % of 440 = 66: in all 984.95.
    The fee without its tax is 126.14 ÷ 1.19 = 106. Against 440 × 1.15 + 160 = 666, 118.95 ÷ 12 a head, 100 a load:
    8 × 106 − (666 + 79.30 + 100) = 2.70; 9 × 106 − (666 + 89.2125 + 200) = −1.2125; ten leave 94.875.
    """
    root = holding(tmp_path, "  teacher's piece: no\n  a spare set for: none\n")
    till = TILL.replace("load: 6.50", "load: 100").replace("100.50 EUR", "126.14 EUR")
    result = costed(tmp_path / "p", "tideline-band:Sterling clay, US 7", "--class", till=till, root=root)
    assert list(amounts(tmp_path / "p", f"{CLASS}-used").values()) == [
        "72.58", "33.60", "0.06", "1.10", "0.00", "0.33", "0.48", "7.20", "3.60", "440.00", "200.00", "160.00",
        "66.00", "984.95",
    ]  # fmt: skip
    fee = amounts(tmp_path / "p", f"{CLASS}-fee")
    assert [fee[f"Left with {n}"] for n in (8, 9, 10, 12)] == ["2.70", "-1.21", "94.88", "287.05"]
    assert "The class pays with 8, not with 9 (a second load), and from 10 on" in result.stdout
    assert "common practice" not in result.stdout


def test_a_spare_set_for_each_four_is_paid_by_those_who_make_it_needed(tmp_path: Path) -> None:
    """Twelve have three: each is a head's part, and with five people a second one is there."""
    root = holding(tmp_path, "  teacher's piece: no\n  a spare set for: 4\n")
    costed(tmp_path / "p", "tideline-band:Sterling clay, US 7", "--class", root=root)
    used = {row["line"]: row for row in rows(tmp_path / "p", f"{CLASS}-used")}
    fee = {row["line"]: row for row in rows(tmp_path / "p", f"{CLASS}-fee")}
    spare = used["Spare sets"]["amount"]
    assert re.fullmatch(r"3 × [\d.]+ ÷ 12", used["Spare sets"]["working"])
    assert fee["For each spare set"]["working"] == f"{spare} ÷ 3"
    each = fee["For each spare set"]["amount"]
    assert [fee[f"Left with {n}"]["working"].endswith(f" + {many} × {each})") for n, many in ((4, 1), (5, 2), (9, 3))]
    assert "The teacher’s piece" not in used


def test_of_several_kinds_each_has_its_part_of_the_run(tmp_path: Path) -> None:
    """Clay for 342.00: 12 × 16 g of 225 g are 291.84, 3 × 11 g are 50.16; together again what the run has."""
    costed(tmp_path / "p", "buoy-drops=12", "tideline-band:US 8=3")
    clay = [row for row in rows(tmp_path / "p", "kits-price") if row["line"].startswith("Fine-silver clay")]
    assert [(row["working"], row["amount"]) for row in clay] == [
        ("192 ÷ 225 of 342.00", "291.84"),
        ("33 ÷ 225 of 342.00", "50.16"),
    ]
    costs = [D(row["amount"]) for row in rows(tmp_path / "p", "kits-price") if row["line"] == "Cost"]
    whole = D(amounts(tmp_path / "p", "kits-used")["Cost"])
    assert abs(sum(costs) - whole) < D("0.05")  # each line of a kind is rounded once


def test_of_wire_the_cuts_are_used_too(tmp_path: Path) -> None:
    """21 bracelets of 465 mm and a cut of 0.5 after each: 9775.5 mm of three spools of 4 m for 17.40."""
    costed(tmp_path / "p", "towline-bracelet=21")
    [wire] = [row for row in rows(tmp_path / "p", "kits-used") if row["line"] == "Copper wire, 16 AWG, soft"]
    assert (wire["working"], wire["amount"]) == ("9775.5 ÷ 12000 mm × 17.40", "14.17")


def test_of_what_is_used_as_needed_a_piece_uses_its_part_of_a_pack(tmp_path: Path) -> None:
    """A pack of six pads for 7.20 does twelve people: a piece uses half a one."""
    costed(tmp_path / "p", "tideline-band")
    assert amounts(tmp_path / "p", "tideline-band-us-7-used")["Sanding pads, 400, 800 and 1500 grit"] == "0.60"


def test_a_kit_does_not_pay_for_what_is_not_in_it(tmp_path: Path) -> None:
    costed(tmp_path / "p", "tideline-band=5")
    assert "Sanding pads, 400, 800 and 1500 grit" not in amounts(tmp_path / "p", "kits-used")


def test_a_piece_that_is_named_twice_is_one_piece(tmp_path: Path) -> None:
    costed(tmp_path / "p", "tideline-band", "tideline-band:US 7")
    assert amounts(tmp_path / "p", "tideline-band-us-7-used")["Cost"] == "94.14"


# A table of orders


HEAD = "order,name,design,version,count,choices,colourway,leave out,only,gift note,due\n"
SEASON = """\
Q-2601,Marrow Tidewell,tideline-band,US 7,10,,,,,"For your bench, with love",2026-12-10
Q-2602,Ines Sandpiper,tideline-band,US 7,2,,,,,,
Q-2603,Odo Marsh,tideline-band,US 7,3,,,,plug,,
Q-2604,Pell Quay,tideline-band,US 7,4,,,clay,,,
"""


def season(tmp_path: Path, lines: str = SEASON, name: str = "season.csv", *words: str) -> Any:
    path = tmp_path / name
    path.write_text(HEAD + lines, "utf-8")
    return costed(tmp_path / "p", str(path), *words)


def test_orders_are_costed_as_the_run_that_is_packed_of_them(tmp_path: Path) -> None:
    """Twelve rings in two orders, a kit of four without clay, three plugs sent alone: 16 kits and 3 parts, 19 parcels.

    Clay for twelve as above, 182.40; 19 plugs of the 20 bought for 24.00: 22.80; sheet in 4 rows of 12 abreast,
    100 ÷ 5000 × 4.80 = 0.096; bought are three packs of clay, two of plugs, and no sheet. Boxes 22.80, tissue 2.85,
    sheets of 16 kits 6.40, tape 2.40. Packing 19 × 2.5 ÷ 60 × 32 = 25.33 and 10.67; 15 % of 36.00 = 5.40; 2 % of 281.15
    = 5.623, and bought of 213.85 = 4.277.
    """
    result = season(tmp_path)
    assert result.exit_code == WELL, result.output
    assert list(amounts(tmp_path / "p", "season-used").values()) == [
        "182.40", "22.80", "0.10", "22.80", "2.85", "6.40", "2.40", "25.33", "10.67", "5.40", "5.62", "286.77",
    ]  # fmt: skip
    assert list(amounts(tmp_path / "p", "season-bought").values()) == [
        "114.00", "24.00", "0.00", "22.80", "2.85", "6.40", "2.40", "25.33", "10.67", "5.40", "4.28", "218.13",
    ]  # fmt: skip
    assert "season: a run of 16 kits and 3 parts of 3 kinds, in EUR" in result.stdout


def test_the_cost_of_another_table_of_this_name_does_not_take_its_place_unseen(tmp_path: Path) -> None:
    season(tmp_path)
    before = {path.name: path.read_bytes() for path in (tmp_path / "p/cost").iterdir()}
    (tmp_path / "next").mkdir()
    told = season(tmp_path, SEASON, "next/season.csv")
    assert told.exit_code == TROUBLES
    assert "season.csv:1:1: error: " in told.stderr
    assert "holds the cost of another list of this name" in told.stderr
    assert {path.name: path.read_bytes() for path in (tmp_path / "p/cost").iterdir()} == before
    assert season(tmp_path).exit_code == WELL  # the same once more


def test_each_kind_of_a_table_has_its_part_of_every_line_and_a_part_that_is_sent_alone_no_price(tmp_path: Path) -> None:
    """Of 22.80 for plugs 12, 4 and 3 of 19: 14.40, 4.80, 3.60. The sheet lies in whole kits alone: 12 and 4 of 16.

    The four without clay: 4.80 + 0.025; 4.80 + 0.60 + 1.60 and 4 ÷ 19 of 2.40 = 0.505; 4 × 2.5 ÷ 60 × 32 = 5.333 and
    4 ÷ 19 of 10.667 = 2.246; 15 % of 7.58 = 1.137; 2 % of 21.06 = 0.421: in all 21.48, and 5.37 each. Times 2.2 is
    11.814, with 19 % 14.05: 14.50. With the three plugs goes no sheet: 3.60, 3.60, 0.45, 0.38, 4.00, 1.68; 15 % of
    5.68 = 0.852; 2 % of 14.56 = 0.291: 14.85.
    """
    season(tmp_path)
    kinds: dict[str, list[tuple[str, str]]] = {}
    for row in rows(tmp_path / "p", "season-price"):
        if not row["amount"]:
            kinds[row["line"]] = []
        else:
            kinds[list(kinds)[-1]].append((row["line"], row["amount"]))
    whole, without, part = kinds.values()
    assert [name.partition(", ")[2] for name in kinds] == [
        "US 7: a kit", "US 7, without fine-silver clay: a kit", "US 7, only bag B plug: a part",
    ]  # fmt: skip
    assert [dict(each)["Firing plug US 7"] for each in (whole, without, part)] == ["14.40", "4.80", "3.60"]
    assert [amount for _, amount in without[:15]] == [
        "4.80", "0.03", "4.80", "0.60", "1.60", "0.51", "5.33", "2.25", "1.14", "0.42", "21.48",
        "11.81", "2.24", "14.05", "14.50",
    ]  # fmt: skip
    assert dict(whole)["Fine-silver clay, low fire"] == "182.40"
    assert part[-1] == ("Cost", "14.85")
    assert "Sheets printed" not in dict(part)
    assert not [line for line, _ in part if "Price" in line or "clay" in line or "Release" in line]


def test_an_order_in_trouble_is_held_back_and_the_others_are_costed_and_nobody_is_named(tmp_path: Path) -> None:
    """The twelve rings alone, as they are costed where they are named; whoever orders them stands nowhere."""
    wrong = "".join(SEASON.splitlines(keepends=True)[:2]) + "Q-2605,Bo Tern,tideline-band,US 77,1,,,,,,\n"
    result = season(tmp_path, wrong)
    assert result.exit_code == TROUBLES
    assert "season.csv:4:30: error: order Q-2605: tideline-band has no version 'US 77'" in result.stderr
    assert "held back, since something of it is in trouble: Q-2605" in result.stdout
    named = amounts(tmp_path / "p", "season-used")
    costed(tmp_path / "p", "tideline-band=12")
    assert named == amounts(tmp_path / "p", "kits-used")
    said = result.output.encode() + b"".join(path.read_bytes() for path in (tmp_path / "p" / "cost").glob("season-*"))
    assert not [name for name in (b"Marrow", b"Sandpiper", b"Tern", b"bench, with") if name in said]


@pytest.mark.parametrize("words", [("--class",), ("tideline-band=2",)])
def test_a_table_is_costed_by_itself(tmp_path: Path, words: tuple[str, ...]) -> None:
    result = season(tmp_path, SEASON, "season.csv", *words)
    assert result.exit_code == USAGE
    assert "'season.csv' is a table of orders, a run of kits, and is costed by itself" in result.stderr
    assert not (tmp_path / "p" / "cost").exists()


def test_a_table_that_is_not_there_is_told_and_no_design_is_looked_for(tmp_path: Path) -> None:
    result = costed(tmp_path / "p", str(tmp_path / "spring.xlsx"))
    assert result.exit_code != WELL
    assert "there is no such file" in result.stderr
    assert not (tmp_path / "p" / "cost").exists()


# The list of a class


PUPILS = "name,design,version,choices,colourway,table\n"
SIZES = """\
Wren Tidewell,tideline-band,US 7,,,1
Odo Marsh,tideline-band,US 9,,,1
Ines Sandpiper,tideline-band,US 7,,,1
"""


def evening(tmp_path: Path, lines: str, *words: str, till: str = TILL, root: Path = ROOT) -> Any:
    path = tmp_path / "evening.csv"
    path.write_text(PUPILS + lines, "utf-8")
    return costed(tmp_path / "p", str(path), *words, till=till, root=root)


@pytest.mark.parametrize("words", [(), ("--class",)])
def test_a_class_of_several_sizes_is_costed_as_that_class(tmp_path: Path, words: tuple[str, ...]) -> None:
    """Four sets of US 7, with the teacher's and the spare one, and one of US 9; three fifths of all are the pupils'.

    Clay in the pieces 4 × 4.116 + 4.4688 = 20.93 g, up to 21, all of it out of the drawer at 38.00 for 25 g: three
    fifths of 31.92 are 19.152. Plugs ÷ 10 × 12.00: 4 are 4.80 and one 1.20; their parts 2.88 and 0.72. The sheets of
    25 × 60 and of 25 × 66 mm do not lie in one row: 50 of 5000 mm for 4.80, 0.0288. Balm 2.5 ÷ 30 × 5.50, 0.275. Tape
    3 ÷ 80 × 2.20 = 0.0825, film 3 ÷ 60 × 2.40, fibre of one firing ÷ 60 × 11.00 × 3 ÷ 5 = 0.11, pads 3 ÷ 12 × 7.20,
    cloth 3 ÷ 20 × 6.00: 26.07 in all, and a set more is 26.07 ÷ 3 = 8.69. Four evenings are 440.00 and 160.00; a load
    6.50; 15 % of 440.00 are 66.00: in all 715.95.
    """
    result = evening(tmp_path, SIZES, *words)
    assert result.exit_code == WELL, result.output
    used = amounts(tmp_path / "p", "evening-class-used")
    assert sorted(used.values()) == sorted([
        "19.15", "2.88", "0.72", "0.03", "0.28", "0.08", "0.12", "0.11", "1.80", "0.90", "8.69", "8.69", "440.00",
        "6.50", "160.00", "66.00", "715.95",
    ])  # fmt: skip
    assert (used["Firing plug US 7"], used["Firing plug US 9"], used["Cost"]) == ("2.88", "0.72", "715.95")
    workings = {row["line"]: row["working"] for row in rows(tmp_path / "p", "evening-class-used")}
    assert workings["Fine-silver clay, low fire"] == "3 ÷ 5 × (21 ÷ 25 g × 38.00 from the drawer)"
    assert "evening: a class, 3 pupils + 1 teacher’s piece + 1 spare set, in EUR" in result.stdout
    assert "note: of these sets: 4 × Tideline band, US 7; 1 × Tideline band, US 9" in result.stdout


def test_the_fee_of_a_list_is_held_against_every_number_up_to_those_on_it(tmp_path: Path) -> None:
    """100.50 ÷ 1.19 = 84.45. Once 440 × 1.15 + 160 + 8.69 = 674.69; 3 × 84.45 − (674.69 + 26.07 + 6.50 + 8.69)."""
    evening(tmp_path, SIZES)
    fee = amounts(tmp_path / "p", "evening-class-fee")
    assert (fee["Once, however many come"], fee["Left with 3"]) == ("674.69", "-462.60")
    assert "Left with 4" not in fee


def test_of_several_designs_all_sets_are_one_cost_and_each_design_has_its_fee(tmp_path: Path) -> None:
    """Two who make drops and one who makes a ring; with the teacher's and the spare sets four and three.

    Clay in the pieces 4 × 13.1139 + 3 × 4.116 = 64.80 g, up to 65; to have 4 × 15.081 + 3 × 9.576 = 89.05, up to 90:
    60 are there, and two packs of 25 for 76.00 are bought: 65 ÷ 50 × 76.00 = 98.80. Drops take five evenings, 550.00.
    Fees 2 × 165 + 100.50 = 430.50, without their tax 361.76.
    """
    till = TILL.replace("fee: 100.50 EUR", "fee: {tideline-band: 100.50 EUR, buoy-drops: 165 EUR}")
    lines = "Wren,buoy-drops,,,,1\nOdo,buoy-drops,,,,1\nIda,tideline-band,US 7,,,2\n"
    result = evening(tmp_path, lines, till=till)
    assert result.exit_code == WELL, result.output
    used = amounts(tmp_path / "p", "evening-class-used")
    bought = amounts(tmp_path / "p", "evening-class-bought")
    assert (used["Fine-silver clay, low fire"], bought["Fine-silver clay, low fire"]) == ("98.80", "76.00")
    assert used["Teaching"] == "550.00"
    assert "The teacher’s piece" not in used
    assert "3 pupils + 2 teacher’s pieces + 2 spare sets" in result.stdout
    fee = amounts(tmp_path / "p", "evening-class-fee")
    assert (fee["Fees, Buoy drops"], fee["Fees, Tideline band"]) == ("330.00", "100.50")
    assert fee["Fees without their tax"] == "361.76"
    short = D(used["Cost"]) - D("361.76")
    assert fee["Left with these 3"] == f"{-short}"
    assert f"The class does not pay: {short} EUR are short" in result.stdout


def test_metals_that_do_not_go_into_the_kiln_together_are_each_fired(tmp_path: Path) -> None:
    """Two bands of fine silver, with the teacher's, are one load in air; one of sterling clay is another in carbon."""
    lines = SIZES.replace("US 9", '"Sterling clay, US 7"')
    result = evening(tmp_path, lines, till=TILL.replace("load: 6.50", "load: 90"))
    assert result.exit_code == WELL, result.output
    assert amounts(tmp_path / "p", "evening-class-used")["Firing"] == "180.00"
    workings = {row["line"]: row["working"] for row in rows(tmp_path / "p", "evening-class-used")}
    by_air, by_carbon = workings["Firing"].removeprefix("2 loads × 90.00: ").split("; ")
    assert re.fullmatch(r"1 by Fine-silver clay, low fire.*, 3 pieces", by_air)
    assert re.fullmatch(r"1 by Sterling.*, 1 piece", by_carbon)


def test_a_bad_line_of_a_class_is_told_without_a_name_and_the_others_are_costed(tmp_path: Path) -> None:
    result = evening(tmp_path, SIZES + "Nell Auk,tideline-band,US 77,,,1\n")
    assert result.exit_code == TROUBLES
    assert "evening.csv:5:24: error: tideline-band has no version 'US 77'" in result.stderr
    assert amounts(tmp_path / "p", "evening-class-used")["Cost"] == "715.95"
    written = b"".join(path.read_bytes() for path in (tmp_path / "p" / "cost").glob("evening-*"))
    said = result.output.encode() + written
    assert not [name for name in (b"Wren", b"Tidewell", b"Odo", b"Marsh", b"Ines", b"Nell", b"Auk") if name in said]


def test_the_list_of_a_class_is_costed_by_itself(tmp_path: Path) -> None:
    result = evening(tmp_path, SIZES, "tideline-band=2")
    assert result.exit_code == USAGE
    assert "'evening.csv' is the list of a class, and is costed by itself" in result.stderr
    assert not (tmp_path / "p" / "cost").exists()


# Every line of every design


DESIGNS = [path.parent.name for path in sorted((ROOT / "projects").glob("*/project.yaml"))]
NUMBER = re.compile(r"\d+(?:\.\d+)?")
PART = re.compile(r"([\d.]+) % of .*?([\d.]+)$")


def reckoned(working: str) -> Fraction:
    """What a working comes to: its numbers and signs, whatever they are called."""
    working = working.partition(": ")[0]  # why it is so stands behind it
    if part := PART.fullmatch(working):
        return Fraction(part[1]) / 100 * Fraction(part[2])
    bare = re.sub(r"[^\d.+×÷−() ]", "", working).translate(str.maketrans("×÷−", "*/-"))
    return Fraction(eval(NUMBER.sub(lambda n: f"Fraction('{n[0]}')", bare), {"Fraction": Fraction}))  # noqa: S307


@pytest.mark.parametrize(
    "words", [DESIGNS, [*DESIGNS, "--class"], [f"{one}=3" for one in DESIGNS]], ids=["pieces", "classes", "kits"]
)
def test_every_used_share_is_what_its_working_comes_to_and_every_total_the_sum_of_its_lines(
    tmp_path: Path, words: list[str]
) -> None:
    assert costed(tmp_path / "p", *words).exit_code == WELL
    lists = sorted(path.stem for path in (tmp_path / "p" / "cost").glob("*.csv"))
    assert len([name for name in lists if name.endswith("-used")]) == (1 if "=" in words[0] else len(DESIGNS))
    for name in lists:
        if name.endswith(("price", "fee")):
            continue
        *lines, total = rows(tmp_path / "p", name)
        known = [D(line["amount"]) for line in lines if line["amount"] != "unknown"]
        assert D(total["amount"]) == sum(known), name
        assert ("without" in total["working"]) == (len(known) < len(lines)), name
        for line in lines:
            nothing = line["amount"] == "unknown" or line["working"] == "none of it is used up"
            if name.endswith("-used") and not nothing:
                worked = reckoned(line["working"])
                cents = D(worked.numerator) / D(worked.denominator)
                assert D(line["amount"]) == cents.quantize(D("0.01"), ROUND_HALF_UP), (name, line)


def test_bought_less_used_is_what_lies_in_the_drawer_to_the_cent(tmp_path: Path) -> None:
    costed(tmp_path / "p", *(f"{one}=7" for one in DESIGNS))
    used, bought, drawer = (rows(tmp_path / "p", f"kits-{name}") for name in ("used", "bought", "drawer"))
    for one, other, rest in zip(used, bought, drawer[:-1], strict=False):
        assert one["line"] == other["line"] == rest["line"]
        if rest["amount"] != "unknown":
            assert D(rest["amount"]) == D(other["amount"]) - D(one["amount"])


# What is not known


def test_an_item_without_a_price_is_unknown_and_the_cost_says_of_how_many_it_is_without(tmp_path: Path) -> None:
    result = costed(tmp_path / "p", "eddy-earrings")
    assert amounts(tmp_path / "p", "eddy-earrings-sterling-used")["Isopropyl alcohol, for degreasing"] == "unknown"
    assert rows(tmp_path / "p", "eddy-earrings-sterling-used")[-1]["working"].endswith(
        "without 1 item: Isopropyl alcohol, for degreasing"
    )
    assert "Cost, without 1 item" in result.stdout


def test_without_a_till_the_materials_are_told_and_what_is_not_reckoned(tmp_path: Path) -> None:
    result = costed(tmp_path / "p", "tideline-band", till="")
    assert result.exit_code == WELL
    assert amounts(tmp_path / "p", "tideline-band-us-7-used")["Cost"] == "8.84"
    assert "no till.yaml in the private folder: labour, firing, overhead, replacements, a price" in result.stdout
    assert not (tmp_path / "p" / "cost" / "tideline-band-us-7-price.csv").exists()


def test_a_till_that_does_not_say_everything_says_what_is_lacking(tmp_path: Path) -> None:
    result = costed(tmp_path / "p", "tideline-band", till="cost of a load: 6 EUR\n")
    assert amounts(tmp_path / "p", "tideline-band-us-7-used")["Cost"] == "14.84"
    assert "p/till.yaml does not say it: labour ('rate an hour'), overhead ('overhead')" in result.stdout
    assert "fired alone in its load" in result.stdout
    assert "neither 'markup' nor 'margin'" in result.stdout


def test_a_fee_that_a_head_costs_never_pays_and_is_told_where_it_stands(tmp_path: Path) -> None:
    """119.19 ÷ 12 = 9.9325 a head."""
    till = TILL.replace("100.50 EUR", "9.90 EUR").replace("tax: 19 %\n", "")
    result = costed(tmp_path / "p", "tideline-band:Sterling clay, US 7", "--class", till=till)
    assert result.exit_code == TROUBLES
    assert "p/till.yaml:17:8: error: Tideline band: a fee of 9.90 EUR never pays, whatever the number" in result.stderr
    assert "more than 9.93 EUR\n" in result.stderr
    assert not (tmp_path / "p" / "cost").exists()


def test_a_fee_that_is_too_low_with_its_tax_names_its_design_and_says_that_tax_comes_on_top(tmp_path: Path) -> None:
    """11.90 ÷ 1.19 = 10.00, and 119.19 ÷ 12 = 9.9325 a head is paid; 11.70 ÷ 1.19 = 9.83 is not."""
    words = ("tideline-band:Sterling clay, US 7", "--class")
    assert costed(tmp_path / "p", *words, till=TILL.replace("100.50 EUR", "11.90 EUR")).exit_code == WELL
    result = costed(tmp_path / "q", *words, till=TILL.replace("100.50 EUR", "11.70 EUR"))
    assert "q/till.yaml:18:8: error: Tideline band: a fee of 9.83 EUR never pays" in result.stderr
    assert "more than 9.93 EUR, and 19 % tax on it" in result.stderr


def test_a_fault_in_the_till_is_told_with_those_of_the_library_and_nothing_is_written(run: Any, library: Any) -> None:
    private = library.root / "private"
    private.mkdir()
    (private / "till.yaml").write_text("margin: 100 %\n", "utf-8")
    library.change("drops/project.yaml", "inside: bore", "inside: boar")
    result = run("cost", "drops")
    assert result.exit_code == TROUBLES
    assert "private/till.yaml:1:9: error: a margin of 100 % leaves nothing for the cost" in result.stderr
    assert "drops/project.yaml" in result.stderr
    assert not (private / "cost").exists()


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (["drops", "link=2"], "'drops' does not say how many of what"),
        (["drops=2", "--class"], "'drops=2' says how many, and a class has as many as its class plan"),
        (["drop"], "there is no project 'drop'"),
        (["drops:Lang"], "there is no version 'Lang' of drops"),
        (["drops:"], "'drops:' does not say which"),
        (["drops=0"], "a count cannot be 0"),
    ],
)
def test_what_is_typed_wrong_is_told(run: Any, words: list[str], says: str) -> None:
    result = run("cost", *words)
    assert result.exit_code == USAGE
    assert says in result.stderr


def test_a_class_that_nobody_has_planned_is_told(run: Any) -> None:
    result = run("cost", "drops", "--class")
    assert result.exit_code == TROUBLES
    assert "nobody says how a class makes Little drops" in result.stderr
    assert "people: 12" in result.stderr
    assert re.search(r"^projects/drops/project.yaml:[0-9]+:[0-9]+: error: nobody says", result.stderr, re.MULTILINE)
    assert "till.yaml" not in result.stderr


# Private


def test_the_lists_are_their_owners_alone_and_the_workbook_holds_them_all(tmp_path: Path) -> None:
    costed(tmp_path / "p", "tideline-band")
    folder = tmp_path / "p" / "cost"
    assert {stat.S_IMODE(one.stat().st_mode) for one in folder.iterdir()} == {0o600}
    assert {stat.S_IMODE(one.stat().st_mode) for one in (folder, folder.parent)} == {0o700}
    book = openpyxl.load_workbook(folder / "tideline-band-us-7.xlsx")
    assert book.sheetnames == ["used", "bought", "drawer", "price"]
    assert [cell.value for cell in book["used"][1]] == ["line", "working", "amount", "currency"]
    assert book["used"][2][2].value == pytest.approx(6.38)


def test_costs_are_on_no_public_sheet(run: Any, library: Any, libraries: Any, monkeypatch: pytest.MonkeyPatch) -> None:
    """What only a till says, and what was costed by it: none stands in a byte of what is published or told."""

    class AsHtml(libraries.QuickPool):  # type: ignore[misc]
        """Leaves a sheet to be read as it goes to the printer."""

        @staticmethod
        def printout(job: Any, _paper: Any) -> Printout:
            return Printout("".join(job.htmls).encode(), 1)

    monkeypatch.setattr("sheetgen.render.pdf_pool.PdfPool", AsHtml)
    private = library.root / "private"
    till = TILL.replace("32 EUR", "37.13 EUR").replace("tissue", "zanzibar paper").replace("110 EUR", "187.91 EUR")
    private.mkdir()
    (private / "till.yaml").write_text(till, "utf-8")
    assert run("cost", "drops").exit_code == WELL
    assert run("cost", "drops=3").exit_code == WELL
    cost = {row["amount"] for name in ("drops-as-designed-used", "kits-used") for row in rows(private, name)[-4:]}
    words = {
        "37.13",
        "zanzibar",
        "187.91",
        "till.yaml",
        "120 %",
        "markup",
        *(one for one in cost if len(one) > len("9.99")),
    }
    assert len(words) > 8
    result = run("publish")
    assert result.exit_code == WELL, result.output
    published = [path for path in library.build.rglob("*") if path.is_file()]
    assert len([path for path in published if path.suffix == ".pdf"]) > 5
    for path in published:
        content = path.read_bytes().decode("utf-8", "replace")
        assert not [word for word in words if word in content], path
    assert not [word for word in words if word in result.output]


def test_a_till_among_what_is_handed_on_is_told(run: Any, library: Any) -> None:
    library.write("till.yaml", "rate an hour: 32 EUR\n")
    result = run("cost", "drops")
    assert "projects/till.yaml:1:1: warning: the till is not read here" in result.stderr
    assert "move it into the private folder" in result.stderr


@pytest.mark.parametrize("private", ["projects/x", ".", "build"])
def test_costs_are_written_into_no_public_folder(run: Any, library: Any, private: str) -> None:
    result = run("cost", "drops", "--private", str(library.root / private))
    assert result.exit_code == USAGE
    assert "lists with prices cannot be written" in result.stderr
