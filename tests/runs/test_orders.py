"""A run of orders by its command, on a small library: the stack, cards, labels, lists, what is sent and what is not."""

from __future__ import annotations

import datetime as dt
import itertools
import re
import stat
from collections import Counter, defaultdict
from dataclasses import replace
from fractions import Fraction
from typing import TYPE_CHECKING, Any

import openpyxl
import page as validator
import pdfplumber
import pytest

from sheetgen.pipeline import Outcome
from sheetgen.runs.order_files import Wanted
from sheetgen.runs.orders import orders as run_orders

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

WELL, TROUBLES, USAGE = 0, 1, 2
SEASON = """\
Q-2601,Marrow Tidewell,buoy-drops,,1,,grey sea,,,"For your bench, with love",2026-12-10
Q-2602,Ines Sandpiper,tideline-band,US 8,2,,,,,,2026-12-01
Q-2602,,towline-bracelet,"Silver, short",1,,,,,,
Q-2603,Odo Marsh,buoy-drops,,1,,,,stones,,
Q-9,Pell Quay,tideline-band,,1,size=US 9,,,,,2026-12-01
"""
CHAIN = "Q-1,,towline-bracelet,,1,,,,,,\n"
STAMP = re.compile(r"^(\S+?)(?:, kit \d+ of \d+)?, sheet (\d+) of (\d+)$", re.MULTILINE)
CARD = "Bench card: handout first"
HEAD = "order,name,design,version,count,choices,colourway,leave out,only,gift note,due\n"
LISTS = {f"{name}.csv" for name in ("pick", "cut", "check", "buy", "left", "kit-cards", "labels")} | {"lists.xlsx"}
ON_PAPER = {f"{name}-a4.pdf" for name in ("pick", "cut", "check", "buy", "left")}
KINDS = (
    "Buoy drops, Long, grey sea",
    "Tideline band, size US 9",
    "Tideline band, US 8",
    "Towline bracelet, Silver, short",
)
PRINTED = {"stack-a4.pdf", "kit-cards-a4.pdf", "labels-a4.pdf"}


@pytest.fixture(scope="module")
def season(tmp_path_factory: pytest.TempPathFactory, makes_bench: Callable[..., Any]) -> Any:
    """Four orders, and a file of each to be mailed."""
    bench = makes_bench(tmp_path_factory.mktemp("season"))
    told = bench.orders(SEASON, "--apart")
    assert told.code == WELL, told.said
    assert "no page in" in told.said, "the codes of labels lead to pages, and none is published here"
    waited = [line for line in told.said.splitlines() if line.startswith("printing ")]
    assert waited == [f"printing {kit}" for kit in KINDS], "whoever waits is told of each kind that is printed, once"
    assert "sheets of labels" not in told.said
    return bench


@pytest.fixture(scope="module")
def stack(season: Any, look: Callable[..., list[str]]) -> list[str]:
    """Each page of the stack."""
    return look(season.folder() / "stack-a4.pdf")


def leaves_of(stack: list[str]) -> dict[str, int]:
    """How many leaves each order has, in the order of the stack, by what its pages say of themselves."""
    said = [STAMP.findall(page) for page in stack]
    assert all(len(stamps) == 1 for stamps in said)
    found = {}
    for number, each in itertools.groupby(enumerate(stamps[0] for stamps in said), key=lambda page: page[1][0]):
        sides = list(each)
        assert number not in found, f"{number} lies in two places"
        assert sides[0][0] % 2 == 0, f"{number} begins on a back"
        found[number] = len(sides) // 2
        leaves = [(str(n), str(found[number])) for n in range(1, found[number] + 1) for _ in range(2)]
        assert [stamp[1:] for _, stamp in sides] == leaves
    return found


def of_order(stack: list[str], number: str) -> list[str]:
    return [page for page in stack if any(stamp[0] == number for stamp in STAMP.findall(page))]


def test_every_page_says_its_order_and_which_sheet_and_each_order_begins_on_a_front(stack: list[str]) -> None:
    """By due date, then by number; two sides are one sheet, so a duplex printer collates it."""
    assert list(leaves_of(stack)) == ["Q-9", "Q-2602", "Q-2601"]


def test_what_is_cut_up_has_a_blank_back(season: Any, stack: list[str]) -> None:
    fronts = [at for at, page in enumerate(stack) if " · Templates " in page]
    assert len(fronts) == 4  # three bands and the drops
    with pdfplumber.open(season.folder() / "stack-a4.pdf") as book:
        for at in fronts:
            assert at % 2 == 0
            back = book.pages[at + 1]
            assert STAMP.sub("", back.extract_text()).strip() == ""
            assert not [*back.lines, *back.rects, *back.curves, *back.images]


def test_each_kit_of_an_order_has_its_own_sheets(stack: list[str]) -> None:
    cards = Counter(
        (number, page.split("\n")[0], page.split("\n")[1].split(" · ")[0])
        for number in ("Q-9", "Q-2602", "Q-2601")
        for page in of_order(stack, number)
        if CARD in page
    )
    assert cards == {
        ("Q-9", "Tideline band", "size US 9"): 1,
        ("Q-2602", "Tideline band", "US 8"): 2,
        ("Q-2602", "Towline bracelet", "Silver, short"): 1,
        ("Q-2601", "Buoy drops", "Long, grey sea"): 1,
    }
    for at, page in enumerate(stack):
        if CARD in page or "Handout 1 /" in page:
            assert at % 2 == 0, "a handout and a bench card begin on a front"


def test_a_size_that_a_kit_is_not_stands_on_none_of_its_sheets_lists_and_labels(season: Any, stack: list[str]) -> None:
    """Q-9 is made from the band US 7, in size US 9: whoever packs or makes it reads one size."""
    assert not [page for page in of_order(stack, "Q-9") if re.search(r"US\s7", page)]
    for name, column in (("labels", "version"), ("pick", "version"), ("check", "kit")):
        own = [row for row in season.rows(name) if "US 9" in " ".join(row.values())]
        assert own
        assert not [row for row in own if "US 7" in " ".join(row.values())]
        assert all("size US 9" in row[column] for row in own)


def test_check_says_the_bags_and_how_much_paper_of_each_order_lies_in_the_stack(season: Any, stack: list[str]) -> None:
    rows = season.rows("check")
    drops = "A clay · B stones · C metal · D glue · in the box"
    assert [(row["order"], row["kit"], row["bags"], row["note"], row["due"]) for row in rows] == [
        ("Q-9", "1 × Tideline band, size US 9", "bag", "no", "2026-12-01"),
        ("Q-2602", "2 × Tideline band, US 8", "bag", "no", "2026-12-01"),
        ("Q-2602", "1 × Towline bracelet, Silver, short", "bag", "", ""),
        ("Q-2601", "1 × Buoy drops, Long, grey sea", drops, "yes", "2026-12-10"),
        ("Q-2603", "1 × Buoy drops, Long, only bag B stones", "B stones", "no", ""),
    ]  # fmt: skip
    said = {row["order"]: int(row["sheets"]) for row in rows if row["sheets"]}
    assert said == {**leaves_of(stack), "Q-2603": 0}


def test_a_card_a_kit_a_slip_a_part_and_a_label_a_bag(season: Any, look: Callable[..., list[str]]) -> None:
    """One, three and one kit and one part; a kit without named bags is one bag, the drops are four."""
    cards = "\n".join(look(season.folder() / "kit-cards-a4.pdf"))
    noted = Counter(["Q-2601"])  # on its gift note besides
    assert Counter(re.findall(r"Q-\d+", cards)) == noted + Counter({"Q-9": 1, "Q-2602": 3, "Q-2601": 1, "Q-2603": 1})
    assert Counter(re.findall(r"(?:kit|part) \d of \d", cards)) == {
        "kit 1 of 1": 2, "kit 1 of 3": 1, "kit 2 of 3": 1, "kit 3 of 3": 1, "part 1 of 1": 1,
    }  # fmt: skip
    labels = "\n".join(look(season.folder() / "labels-a4.pdf"))
    bags = {"Q-9": 1, "Q-2602": 3, "Q-2601": 4, "Q-2603": 1}
    assert Counter(re.findall(r"Q-\d+", labels)) == bags
    assert Counter(row["order"] for row in season.rows("labels")) == bags


def test_a_missing_part_has_a_slip_a_label_and_lists_and_no_sheet(season: Any, stack: list[str]) -> None:
    """Its amount is that of the bag in a whole kit, and nothing else of the kit goes."""
    assert not of_order(stack, "Q-2603")
    cards = [row for row in season.rows("kit-cards") if row["order"] == "Q-2603"]
    assert [(row["bag"], row["item"]) for row in cards] == [("B stones", "glass-2")]
    picked = [row for row in season.rows("pick") if "only" in row["choices"]]
    assert [(row["item"], row["bags"], row["together"]) for row in picked] == [("glass-2", "1", cards[0]["amount"])]
    [sent] = [row for row in season.sent if row["order"] == "Q-2603"]
    assert (sent["only"], sent["fingerprint"]) == ("glass-2", "")


def test_what_the_cards_say_is_in_the_bags_is_what_is_picked(season: Any) -> None:
    carded: defaultdict[str, Fraction] = defaultdict(Fraction)
    for row in season.rows("kit-cards"):
        carded[row["item"]] += Fraction(row["amount"] or 0)
    picked: defaultdict[str, Fraction] = defaultdict(Fraction)
    for row in season.rows("pick"):
        if row["station"] != "paper":
            picked[row["item"]] += Fraction(row["together"])
    assert {item: many for item, many in carded.items() if many} == dict(picked)


def test_a_row_of_pick_says_of_which_colours_its_bag_is(season: Any) -> None:
    rows = [row for row in season.rows("pick") if row["item"].startswith("glass-2") and "only" not in row["choices"]]
    assert [(row["item"], row["colour"]) for row in rows] == [("glass-2", "grey sea"), ("glass-2-smoke", "grey sea")]


def test_what_was_sent_is_listed_by_the_fingerprint_that_its_sheets_bear(season: Any, stack: list[str]) -> None:
    sent = season.sent
    assert [(r["order"], r["design"], r["version"], r["choices"], r["colourway"], r["count"]) for r in sent] == [
        ("Q-9", "tideline-band", "US 7", "size=US 9", "", "1"),
        ("Q-2602", "tideline-band", "US 8", "", "", "2"),
        ("Q-2602", "towline-bracelet", "Silver, short", "", "", "1"),
        ("Q-2601", "buoy-drops", "Long", "", "grey sea", "1"),
        ("Q-2603", "buoy-drops", "Long", "", "", "1"),
    ]
    for row in (row for row in sent if not row["only"]):
        title = row["design"].replace("-", " ").capitalize()
        of_kit = [page for page in of_order(stack, row["order"]) if page.startswith(title)]
        assert of_kit
        assert all(row["fingerprint"] in page for page in of_kit)


def test_each_order_apart_can_be_mailed_and_read_aloud(season: Any, look: Callable[..., list[str]]) -> None:
    """PDF/UA-1, by a validator that knows nothing of us."""
    mailed = sorted((season.folder() / "apart").iterdir())
    assert [path.name for path in mailed] == ["q-2601.pdf", "q-2602.pdf", "q-9.pdf"]
    for path in mailed:
        assert not validator.validate_pdf_bytes(path.read_bytes(), profile="ua1").failures
        said = look(path)
        number = path.stem.capitalize()
        assert all(f"{number}, page {at} of {len(said)}" in page for at, page in enumerate(said, 1))


def test_all_of_it_is_its_owners_alone(season: Any) -> None:
    for path in (season.private, *season.private.rglob("*")):
        assert stat.S_IMODE(path.stat().st_mode) == (0o700 if path.is_dir() else 0o600), path
    assert season.files() == LISTS | ON_PAPER | PRINTED


@pytest.mark.usefixtures("no_paper")
def test_the_same_orders_once_more_on_that_day_are_named_and_add_nothing_and_on_another_day_they_do(
    makes_bench: Callable[..., Any], tmp_path: Path
) -> None:
    bench = makes_bench(tmp_path)
    table = tmp_path / "one.csv"
    table.write_text("order,design,count,only\nQ-1,towline-bracelet,1,\nQ-2,buoy-drops,1,stones\n", "utf-8")
    many, named = [], []
    for day in (1, 1, 2):
        outcome = Outcome()
        outcome, told = run_orders(tmp_path, table, bench.private, tmp_path / "build", Wanted(), dt.date(2026, 12, day))
        assert not outcome.troubles.errors
        many.append([row["date"] for row in bench.sent])
        named.append([line for line in told if line.startswith("sent before")])
    first, later = ["2026-12-01"] * 2, ["2026-12-02"] * 2
    assert many == [first, first, first + later]
    assert named == [[], *[["sent before, look whether they are to go once more: Q-1, Q-2"]] * 2]
    assert not (bench.folder("one") / "apart").exists()


def test_the_lists_alone_are_made_before_anything_is_printed_and_nothing_is_sent(bench: Any, season: Any) -> None:
    told = bench.orders(SEASON, "--lists-alone")
    assert told.code == WELL
    assert bench.files() == (LISTS | ON_PAPER) - {"check.csv", "check-a4.pdf"}, "nothing to check is printed yet"
    assert not bench.sent
    assert "not published" not in told.said
    assert "earlier run" not in told.said
    for name in ("pick", "buy", "cut", "left", "kit-cards", "labels"):
        assert bench.rows(name) == season.rows(name)


@pytest.mark.usefixtures("no_paper")
def test_lists_alone_leave_what_was_printed_before_as_it_is(bench: Any) -> None:
    bench.orders(CHAIN, "--apart")
    before = {path: path.read_bytes() for path in bench.folder().rglob("*.pdf")}
    assert len(before) == 4
    told = bench.orders(CHAIN, "--lists-alone")
    assert told.code == WELL
    assert {path: path.read_bytes() for path in bench.folder().rglob("*.pdf")} == before
    assert "stack, cards and labels that lie there are of an earlier run" in told.said
    assert not (bench.folder() / "check.csv").exists(), "it would be ticked beside other lists"


@pytest.mark.usefixtures("no_paper")
def test_a_slip_of_the_hand_is_told_and_made_and_what_is_too_long_for_a_workbook_is_a_csv(
    bench: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    """2000 kits are typed for 1: each has its rows and its label, and those are too many for a workbook of 1000."""
    monkeypatch.setattr("sheetgen.runs.press.MOST_ROWS", 1000)
    told = bench.orders(CHAIN.replace(",1,", ",2000,") + SEASON, "--lists-alone")
    assert told.code == WELL
    assert "season.csv:2:24: warning: order Q-1: 2000 kits" in told.said
    each = Counter(tuple(row.values()) for row in bench.rows("kit-cards") if row["order"] == "Q-1")
    assert set(each.values()) == {2000}
    assert sum(row["order"] == "Q-1" for row in bench.rows("labels")) == 2000
    book = openpyxl.load_workbook(bench.folder() / "lists.xlsx", read_only=True)
    assert set(book.sheetnames) == {"pick", "cut", "buy", "left"}
    assert re.search(r"^labels: 2\d\d\d rows, as CSV alone", told.said, re.MULTILINE)


def test_another_paper_is_what_all_of_it_is_printed_on_and_the_labels_that_are_gone_stay_empty(
    season: Any, tmp_path: Path
) -> None:
    """Five labels of three across are gone: the first one stands in the second row, last of three."""
    other = season.into(tmp_path / "private")
    told = other.orders(SEASON, "--paper", "Letter", "--labels-gone", "5")
    assert told.code == WELL
    assert "labels-a4.pdf: put in the studio's sheets of labels, which are A4; all else is Letter" in told.said
    assert other.files() == LISTS | {name.replace("a4", "letter") for name in ON_PAPER | PRINTED} - {
        "labels-letter.pdf"
    } | {"labels-a4.pdf"}  # the sheet of labels is what the studio states
    for name in ("stack", "kit-cards", "pick", "check"):
        with pdfplumber.open(other.folder() / f"{name}-letter.pdf") as book:
            assert {(page.width, page.height) for page in book.pages} == {(612, 792)}
    across, down = (at - was for at, was in zip(first_label(other), first_label(season), strict=True))
    assert (across, down) == pytest.approx((2 * 66.5, 34), abs=0.2)


def first_label(bench: Any) -> tuple[float, float]:
    """Where the number of the first order stands on its labels, mm from the upper left."""
    with pdfplumber.open(bench.folder() / "labels-a4.pdf") as book:
        word = next(word for word in book.pages[0].extract_words() if word["text"] == "Q-9")
    return word["x0"] * 25.4 / 72, word["top"] * 25.4 / 72


@pytest.mark.usefixtures("no_paper")
def test_what_another_run_of_the_table_printed_does_not_lie_beside_the_new_one(bench: Any) -> None:
    """An order that is now only a part has no stack, and yesterday's would be packed from."""
    bench.orders(CHAIN, "--apart")
    mine = bench.folder() / "notes-of-mine.pdf"
    mine.write_bytes(b"mine")
    assert (bench.folder() / "apart" / "q-1.pdf").exists()
    assert bench.orders("Q-1,,buoy-drops,,1,,,,stones,,\n", "--paper", "Letter").code == WELL
    assert {name for name in bench.files() if name.endswith(".pdf")} == {
        "kit-cards-letter.pdf", "labels-a4.pdf", "notes-of-mine.pdf",
    }  # fmt: skip
    assert not list((bench.folder() / "apart").iterdir())


# The demonstration

SIX = """\
Q-1,Ines Sandpiper,tideline-band,US 8,2,,,,,,2026-12-03
Q-2,Odo Marsh,eddy-earrings,,1,,,,,,2026-12-01
Q-3,Wren Tidewell,buoy-drops,,2,,grey sea,,stones,,
Q-4,Bo Tern,eddy-earrings,,1,,,,,"Happy solstice",2026-12-02
Q-4,,tideline-band,US 8,1,,,,,,
Q-5,Nell Auk,towline-bracelet,,1,,,,A wire,,2026-12-01
Q-6,Ida Knot,tideline-band,US 8,1,,,,,,
"""


@pytest.fixture(scope="module")
def six(tmp_path_factory: pytest.TempPathFactory, demo: Any, makes_bench: Callable[..., Any]) -> Any:
    """Six orders of the demonstration: two kinds of kit, and two parts."""
    home = tmp_path_factory.mktemp("six")
    table = home / "season.csv"
    table.write_text(HEAD + SIX, "utf-8")
    bench = replace(makes_bench(home / "unused"), library=demo, private=home / "private")
    told = bench.orders(table)
    assert told.code == WELL, told.said
    assert "sheets of labels" not in told.said
    return bench


def test_six_orders_of_the_demonstration_lie_in_the_stack_as_they_are_due(
    six: Any, look: Callable[..., list[str]]
) -> None:
    """A kit has the same sheets in every order: two bands take twice those of one."""
    leaves = leaves_of(look(six.folder() / "stack-a4.pdf"))
    assert list(leaves) == ["Q-2", "Q-4", "Q-1", "Q-6"]
    assert leaves["Q-1"] == 2 * leaves["Q-6"]
    assert leaves["Q-4"] == leaves["Q-2"] + leaves["Q-6"]
    assert {row["order"]: int(row["sheets"]) for row in six.rows("check")if row["sheets"]} == {
        "Q-2": leaves["Q-2"], "Q-5": 0, "Q-4": leaves["Q-4"], "Q-1": leaves["Q-1"], "Q-3": 0, "Q-6": leaves["Q-6"],
    }  # fmt: skip


def test_six_orders_of_the_demonstration_with_a_pencil(six: Any) -> None:
    """Four bands: 4 × 11 g, 60 g lie in the drawer. Two bags of 7 : 5 stones and one each to spare: 16 and 12."""
    pick = six.rows("pick")
    assert [(r["bags"], r["in one bag"], r["together"]) for r in pick if r["item"] == "silver-low-fire"] == [
        ("4", "11", "44")
    ]
    assert [(r["item"], r["together"]) for r in pick if r["colour"] == "grey sea"] == [
        ("foiled-pp18", "16"), ("foiled-pp18-smoke", "12"),
    ]  # fmt: skip
    assert [r["together"] for r in pick if r["item"] == "bench card"] == ["2", "4"]
    [clay] = [r for r in six.rows("left") if r["item"] == "silver-low-fire"]
    assert (clay["before"], clay["bought"], clay["used"], clay["after"]) == ("60", "0", "44", "16")
    assert len(six.rows("labels")) == 4 * 2 + 2 * 2 + 2 + 1
    assert [row["order"] for row in six.sent if row["only"]] == ["Q-5", "Q-3"]
    assert {row["order"] for row in six.sent if not row["only"]} == {"Q-1", "Q-2", "Q-4", "Q-6"}
