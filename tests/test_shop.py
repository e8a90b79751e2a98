"""The lists of a run without orders: each total is counted a second time, and nothing is asked of kits for it."""

from __future__ import annotations

import csv
import io
import re
import stat
from collections import Counter, defaultdict
from decimal import Decimal
from pathlib import Path
from typing import Any

import openpyxl
import pytest
from click.testing import CliRunner

from sheetgen import pipeline, telling
from sheetgen.cli import main

ROOT = Path(__file__).parents[1]
WELL, TROUBLES, USAGE = 0, 1, 2
LISTS = ("pick", "cut", "buy", "left")
Rows = list[dict[str, str]]


def rows(path: Path) -> Rows:
    return list(csv.DictReader(io.StringIO(path.read_text("utf-8-sig"))))


@pytest.fixture(scope="module")
def lists(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Rows]:
    """12 × the drops and 3 × the ring in US 8, of the demonstration."""
    into = tmp_path_factory.mktemp("private") / "shop"
    words = ["buoy-drops=12", "tideline-band:US 8=3"]
    result = CliRunner().invoke(main, ["shop", *words, "--library", str(ROOT), "--private", str(into.parent)])
    assert result.exit_code == WELL, result.output
    return {name: rows(into / f"{name}.csv") for name in LISTS}


def of(found: Rows, item: str) -> Rows:
    return [row for row in found if row["item"] == item]


def bought(found: Rows, item: str) -> list[tuple[str, str, str]]:
    return [(row["pack"], row["packs"], row["cost"]) for row in of(found, item)]


# With a pencil, from the printed sheets and projects/stock


def test_the_clay_of_twelve_pairs_and_three_rings(lists: dict[str, Rows]) -> None:
    """A pair 16 g (its slab; by its mass 13.1 × 1.15 = 15.1), a ring 11 g: 12 × 16 + 3 × 11 = 225 g.

    60 g lie in the drawer, 165 are bought: 7 × 25 g for 266, since of 100 g at least two must be taken, for 278.
    """
    assert [(r["bags"], r["in one bag"], r["together"]) for r in of(lists["pick"], "silver-low-fire")] == [
        ("12", "16", "192"),
        ("3", "11", "33"),
    ]
    [row] = of(lists["buy"], "silver-low-fire")
    assert (row["needed"], row["have"], row["left"]) == ("225", "60", str(60 + 7 * 25 - 225))
    assert bought(lists["buy"], "silver-low-fire") == [("25 g", "7", "266.00")]


def test_the_stones_of_twelve_pairs(lists: dict[str, Rows]) -> None:
    """12 seats and 5 % to spare, up to a whole stone: 13 a bag, 156; 40 lie there; 2 × 72 for 13.00, 28 left."""
    [row] = of(lists["pick"], "foiled-pp18")
    assert (row["station"], row["in one bag"], row["of it spare"], row["together"]) == ("stones", "13", "1", "156")
    assert bought(lists["buy"], "foiled-pp18") == [("72 piece", "2", "13.00")]
    assert of(lists["left"], "foiled-pp18")[0]["after"] == str(40 + 144 - 156)


def test_the_ring_wire_of_twelve_pairs(lists: dict[str, Rows]) -> None:
    """76.2 mm × 1.1 = 83.9, up to 84 mm a bag: 12 pieces, 1008 mm, off one spool of 8 m; no saw takes anything."""
    [row] = of(lists["cut"], "copper-20awg")
    assert (row["from"], row["length"], row["times"], row["left"], row["keep"]) == (
        "spool",
        "8000",
        "1",
        "6992",
        "keep",
    )
    assert row["pieces"] == "12 × 84 mm, tag a, Buoy drops, Silver, short, bag C metal"
    assert int(row["left"]) == 8000 - 12 * 84
    assert bought(lists["buy"], "copper-20awg") == [("8000 mm", "1", "4.90")]


def test_ear_wires_have_spares_and_eyes_have_none(lists: dict[str, Rows]) -> None:
    """2 ear wires, 1 per 10 that are begun to spare: 3 a bag. 24 eyes: three packs of ten."""
    assert [r["together"] for i in ("ear-wires", "eye-fine-silver") for r in of(lists["pick"], i)] == ["36", "24"]
    assert bought(lists["buy"], "eye-fine-silver") == [("10 piece", "3", "28.80")]


def test_adhesive_is_sealed_and_one_is_in_each_bag(lists: dict[str, Rows]) -> None:
    """12 × 4 mL cost 12 × 4.60 = 55.20, and 12 × 15 mL would cost 148.80."""
    [row] = of(lists["pick"], "stone-adhesive")
    assert (row["in one bag"], row["together"]) == ("4", "48")
    assert bought(lists["buy"], "stone-adhesive") == [("4 mL", "12", "55.20")]


def test_pieces_of_a_wide_roll_lie_side_by_side(lists: dict[str, Rows]) -> None:
    """12 of 27 × 94 mm: 3 abreast on 300 mm, 4 rows; 3 of 25 × 63 mm in one row: 4 × 27 + 25 = 133 of 2400 mm."""
    [row] = of(lists["cut"], "release-sheet")
    assert [int(n) for n in re.findall(r"(\d+) × \d+ mm, tag", row["pieces"])] == [4, 1]
    assert (row["from"], row["left"], row["keep"]) == ("end", "2267", "keep")
    assert of(lists["left"], "release-sheet")[0]["ends"] == "2267"
    assert of(lists["buy"], "release-sheet")[0]["packs"] == "0"


def test_what_lies_in_no_bag_of_a_kit_is_neither_picked_nor_bought(lists: dict[str, Rows]) -> None:
    """Tape and pads are used as needed, and come from the bench of whoever makes the piece."""
    for item in ("masking-tape", "sanding-pads"):
        assert not [row for name in LISTS for row in lists[name] if row["item"] == item]


def test_each_kit_has_the_tool_that_lies_in_its_box(lists: dict[str, Rows]) -> None:
    """Twelve burs: two packs of six for 15.00, and not twelve for 3.20 each."""
    [row] = of(lists["pick"], "setting-bur-pp18")
    assert (row["in one bag"], row["together"]) == ("1", "12")
    assert bought(lists["buy"], "setting-bur-pp18") == [("6 piece", "2", "30.00")]


def test_what_a_kit_leaves_out_is_on_no_list(lists: dict[str, Rows]) -> None:
    assert not [row for name in LISTS for row in lists[name] if row["item"] in {"release-balm", "degreaser"}]


# A second count


def test_pick_is_the_sum_of_the_bags_as_figures_json_prints_them(lists: dict[str, Rows]) -> None:
    """Of what is neither sealed, nor has spares, nor comes off a wide roll a bag holds what its sheet says to have."""
    outcome = pipeline.work_through(ROOT, ["buoy-drops", "tideline-band"])
    told = {data["project"]: data["materials"] for data in telling.figures_as_data(outcome)}
    kinds = [(told["buoy-drops"]["main"], 12), (told["tideline-band"]["US 8"], 3)]
    otherwise = {"setting-bur-pp18", "stone-adhesive", "ear-wires", "release-sheet", "release-balm", "degreaser"}
    wanted: defaultdict[str, Decimal] = defaultdict(Decimal)
    for materials, bags in kinds:
        for item, one in materials.items():
            if item not in otherwise:
                wanted[item] += Decimal(str(one["have"])) * bags
    found: defaultdict[str, Decimal] = defaultdict(Decimal)
    for row in lists["pick"]:
        if row["item"] not in otherwise and row["station"] != "paper":
            found[row["item"]] += Decimal(row["together"])
            assert Decimal(row["in one bag"]) * int(row["bags"]) == Decimal(row["together"])
    assert dict(found) == dict(wanted)


def test_every_item_is_bought_once_and_what_is_there_is_used_or_left(lists: dict[str, Rows]) -> None:
    for row in lists["left"]:
        packs = of(lists["buy"], row["item"])
        got = sum(Decimal(p["pack"].split()[0]) * int(p["packs"]) for p in packs if p["pack"])
        assert got == Decimal(row["bought"]), row
        assert Decimal(row["before"]) + got == Decimal(row["used"]) + Decimal(row["after"]), row
        assert Decimal(row["used"]) >= Decimal(packs[0]["needed"]), row
        if row["ends"]:
            assert sum(map(Decimal, row["ends"].split(" · "))) == Decimal(row["after"])


def test_the_totals_of_the_shops_are_the_sums_of_their_rows(lists: dict[str, Rows]) -> None:
    """Two shops send for less than their delivery is free from, as projects/studio.yaml has it."""
    by_shop: defaultdict[str, Decimal] = defaultdict(Decimal)
    for row in lists["buy"]:
        if row["item"]:
            by_shop[row["shop"]] += Decimal(row["cost"])
            assert Decimal(row["cost"]) == Decimal(row["price"] or 0) * int(row["packs"])
    told = {row["shop"]: Decimal(row["cost"]) for row in lists["buy"] if row["name"].startswith("Together")}
    assert told == by_shop
    sent = {row["shop"]: (row["name"], row["cost"]) for row in lists["buy"] if row["name"].startswith("Delivery")}
    lacking = Decimal(60) - by_shop["Wherryhouse Stones"]
    assert sent == {
        "Dulsebank Supplies": ("Delivery", "4.50"),
        "Fennock Metals": ("Delivery, free from 250.00 EUR on", "0.00"),
        "Wherryhouse Stones": (f"Delivery; {lacking} EUR more and delivery is free", "3.90"),
    }
    assert lists["buy"][-1]["name"] == "Total, EUR"
    assert Decimal(lists["buy"][-1]["cost"]) == sum(by_shop.values()) + Decimal("4.50") + Decimal("3.90")


def test_lengths_are_cut_from_kept_ends_first_and_every_bag_has_its_piece(tmp_path: Path) -> None:
    """21 bracelets of one spool length want 465 mm each, by tags; eight a spool of 4 m, which has 3720 + 8 cuts."""
    into = tmp_path / "p" / "shop"
    CliRunner().invoke(main, ["shop", "towline-bracelet=21", "--library", str(ROOT), "--private", str(into.parent)])
    cut = of(rows(into / "cut.csv"), "copper-16awg")
    each = [int(re.match(r"(\d+) × ", row["pieces"])[1]) for row in cut]  # type: ignore[index]
    assert sum(n * int(row["times"]) for n, row in zip(each, cut, strict=True)) == 21
    for n, row in zip(each, cut, strict=True):
        assert Decimal(row["left"]) == 4000 - n * (465 + Decimal("0.5"))
    assert sum(int(row["times"]) for row in cut) == 3


def test_every_bag_of_wire_and_cord_is_cut_and_no_length_gives_more_than_it_has(tmp_path: Path) -> None:
    """All designs of wire and cord, three of each: what pick hands out is what cut lists, tag by tag."""
    designs = ("eddy-earrings", "lantern-pull", "sedge-bookmark", "slackwater-strand", "sounding-bracelet")
    into = tmp_path / "p" / "shop"
    words = [f"{design}=3" for design in designs]
    result = CliRunner().invoke(main, ["shop", *words, "--library", str(ROOT), "--private", str(into.parent)])
    assert result.exit_code == WELL, result.output
    wanted: Counter[tuple[str, str]] = Counter()
    for row in rows(into / "pick.csv"):
        if row["unit"] == "mm":
            tag = f"{row['in one bag']} mm, tag {row['tag']}, {row['design']}, {row['version']}"
            wanted[row["item"], tag] += int(row["bags"])
    found: Counter[tuple[str, str]] = Counter()
    for row in rows(into / "cut.csv"):
        pieces = [piece.partition(" × ") for piece in row["pieces"].split(" · ")]
        if row["from"] == "sheet" or any(re.search(r"tag \w+, \d+ of ", tag) for _, _, tag in pieces):
            continue
        for many, _, tag in pieces:
            found[row["item"], tag.partition(", bag ")[0]] += int(many) * int(row["times"])
        each = [(int(many), re.match(r"([\d.]+) mm, ", tag)) for many, _, tag in pieces]
        long = sum((many * Decimal(length[1]) for many, length in each if length), Decimal(0))
        assert long + Decimal(row["left"]) <= Decimal(row["length"]), row
    assert found == wanted
    assert len(found) > 10


# Prices that are not known, least orders


DROPS = "drops/project.yaml"


def shopped(run: Any, library: Any, *words: str) -> dict[str, Rows]:
    result = run("shop", *words)
    assert result.exit_code == WELL, result.output
    return {name: rows(library.root / "private" / "shop" / f"{name}.csv") for name in LISTS}


def test_an_item_without_a_price_costs_unknown_and_the_total_says_so(run: Any, library: Any) -> None:
    library.change("stock/others.yaml", "    size: 1.95-2 mm\n", "    size: 1.95-2 mm\n    pack: 100\n")
    found = shopped(run, library, "drops=2")
    [stone] = of(found["buy"], "glass-2")
    assert (stone["packs"], stone["cost"]) == ("1", "unknown")
    unknown = sum(row["cost"] == "unknown" for row in found["buy"])
    assert found["buy"][-1]["name"] == f"Total, EUR, without {unknown} items"


def test_the_least_order_of_a_shop_is_told_and_nothing_is_bought_for_it(run: Any, library: Any) -> None:
    library.write(
        "studio.yaml", library.path("studio.yaml").read_text("utf-8") + "shops: {Tide: {least order: 40 EUR}}\n"
    )
    words = "    size: 1.95-2 mm\n    pack: 100\n    price: 7.50 EUR\n    shop: Tide\n"
    library.change("stock/others.yaml", "    size: 1.95-2 mm\n", words)
    told = [(r["name"], r["cost"]) for r in shopped(run, library, "drops=2")["buy"] if r["shop"] == "Tide"]
    assert told == [
        ("Glass stone, 2 mm", "7.50"),
        ("Together at Tide", "7.50"),
        ("Least order 40.00 EUR: 32.50 EUR are lacking", ""),
    ]


def test_a_piece_longer_than_every_spool_is_told_and_nothing_is_written(run: Any, library: Any) -> None:
    library.change(
        "stock/others.yaml",
        "    thickness: 16 awg\n",
        "    thickness: 16 awg\n    packs: [{holds: 300 mm}, {holds: 200 mm}]\n",
    )
    result = run("shop", "link=2")
    assert result.exit_code == TROUBLES
    assert "Copper wire, 16 AWG: 490 mm, Wire link, As designed, is longer than every length" in result.stderr
    assert "(200 mm, 300 mm)" in result.stderr
    assert "stock/others.yaml" in result.stderr
    assert not (library.root / "private" / "shop").exists()


# What is typed


@pytest.mark.parametrize(
    ("word", "says", "helps"),
    [
        ("drops=0", "'drops=0': a count cannot be 0", "a whole number from 1"),
        ("drops=1.5", "a count cannot be 1.5", "a whole number from 1"),
        ("drops=-3", "a count cannot be -3", "a whole number from 1"),
        ("drops=1000000", "a count cannot be 1000000", "100000"),
        ("drops", "does not say how many", "buoy-drops=12"),
        ("drops:=2", "does not say how many", "buoy-drops=12"),
        ("drop=2", "there is no project 'drop'", "did you mean 'drops'?"),
        ("drops:Lang=2", "there is no version 'Lang' of drops", "did you mean 'Long'?"),
    ],
)
def test_what_is_typed_wrong_is_told_and_nothing_is_written(
    run: Any, library: Any, word: str, says: str, helps: str
) -> None:
    result = run("shop", word, "link=1")
    assert result.exit_code == USAGE
    assert says in result.stderr
    assert helps in result.stderr
    assert result.stdout == ""
    assert not (library.root / "private" / "shop").exists()


def test_a_version_that_is_named_twice_is_one_run(run: Any, library: Any) -> None:
    found = shopped(run, library, "drops:long=2", "drops:Long=3")
    assert {row["bags"] for row in of(found["pick"], "silver")} == {"5"}


@pytest.mark.parametrize("private", ["projects/x", "projects", ".", "build", "build/shop", "site/lists"])
def test_prices_are_written_neither_into_the_library_nor_into_what_is_published(
    run: Any, library: Any, private: str
) -> None:
    (library.root / "site").mkdir()
    (library.root / "site" / ".published.json").write_text("{}")
    before = sorted(library.root.rglob("*"))
    result = run("shop", "drops=1", "--private", str(library.root / private))
    assert result.exit_code == USAGE
    assert "lists with prices cannot be written" in result.stderr
    assert sorted(library.root.rglob("*")) == before


def test_the_lists_are_their_owners_alone_and_the_workbook_holds_them_all(run: Any, library: Any) -> None:
    shopped(run, library, "drops=2", "link=1")
    folder = library.root / "private" / "shop"
    assert {stat.S_IMODE(one.stat().st_mode) for one in folder.iterdir()} == {0o600}
    assert stat.S_IMODE(folder.stat().st_mode) == 0o700
    assert stat.S_IMODE(folder.parent.stat().st_mode) == 0o700
    book = openpyxl.load_workbook(folder / "lists.xlsx")
    assert tuple(book.sheetnames) == LISTS
    for name in LISTS:
        told = [["" if cell is None else str(cell) for cell in row] for row in book[name].iter_rows(values_only=True)]
        read = list(csv.reader(io.StringIO((folder / f"{name}.csv").read_text("utf-8-sig"))))
        assert len(told) == len(read)
        assert told[0] == read[0]


def test_a_private_folder_that_others_may_read_is_closed_to_them(run: Any, library: Any) -> None:
    (library.root / "private").mkdir(mode=0o755)
    shopped(run, library, "drops=2")
    assert stat.S_IMODE((library.root / "private").stat().st_mode) == 0o700


def test_a_folder_that_cannot_be_written_is_wrong_usage(run: Any, library: Any) -> None:
    (library.root / "file").write_text("")
    result = run("shop", "drops=1", "--private", str(library.root / "file" / "lists"))
    assert result.exit_code == USAGE
    assert "cannot be written" in result.stderr


def test_a_project_in_trouble_stops_the_lists(run: Any, library: Any) -> None:
    library.write(DROPS, "title: [")
    assert run("shop", "drops=1", "link=1").exit_code == TROUBLES
    assert not (library.root / "private" / "shop").exists()
