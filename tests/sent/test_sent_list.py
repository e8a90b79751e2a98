"""The private list of what was sent: read however it was saved, each bad line told, and added to without a loss."""

from __future__ import annotations

import csv
import datetime as dt
import io
import stat
from dataclasses import replace
from pathlib import Path

import pytest

from sheetgen.base.trouble import CannotBe, Troubles
from sheetgen.model.sent import COLUMNS, Sent, SentKit, SentList, holdings, not_there, sent_again
from sheetgen.model.sheets import Sheet
from sheetgen.publish.private import write_private
from sheetgen.publish.sent import added_to
from sheetgen.publish.workbook import xlsx_bytes
from sheetgen.read.sent import read_sent

HERE = Path(__file__).parent
FIRST = Sent("Q-2601", dt.date(2026, 12, 1), SentKit("drops", "Long"), 1, "K7M3QX", "1")
CHOSEN = SentKit("drops", "Long", (("height", "24 mm"), ("bore", "9 mm")))
SECOND = Sent("Q-2602", dt.date(2026, 12, 2), CHOSEN, 2, "234567", "1")


def read(path: Path) -> tuple[SentList | None, list[str]]:
    troubles = Troubles()
    found = read_sent(path, path.name, troubles)
    return found, [str(one) for one in troubles if one.severity == "error"]


def lines(path: Path) -> tuple[Sent, ...]:
    found, told = read(path)
    assert told == []
    assert found is not None
    return found.lines


@pytest.mark.parametrize("path", sorted((HERE / "honest").iterdir()), ids=lambda path: path.name)
def test_the_list_is_read_however_a_spreadsheet_program_has_saved_it(path: Path) -> None:
    found = lines(path)
    assert [(one.order, one.date, one.kit.key, one.code) for one in found] == [
        (one.order, one.date, one.kit.key, one.code) for one in (FIRST, SECOND)
    ]


WRONG = {
    # file: where it points, what is said, what would help
    "a-code-taken-for-a-number": [
        ("3:34", "order Q-2602: the fingerprint '2.3E+457' was taken for a number", "as text")
    ],
    "a-code-with-an-o": [("2:34", "order Q-2602: 'K7MOQX' is not 6 signs of 23456789", "foot of the sheet")],
    "no-code": [("2:34", "order Q-2602: the fingerprint is missing", "foot of the sheet")],
    "a-day-that-may-be-two": [("2:8", "order Q-2602: '03/04/2026' may be two days", "2026-04-03")],
    "a-day-as-a-number": [("2:8", "order Q-2602: '46357' is a day as a bare number", "as a date")],
    "no-day": [("2:8", "order Q-2602: the date is missing", "2026-12-01")],
    "half-a-kit": [("2:32", "order Q-2602: '1,5' is not a whole number of kits", "write 1, 2, 3")],
    "a-choice-without-its-value": [("2:30", "order Q-2602: the choice 'height 24 mm' has no '='", "name=value")],
    "no-version": [("2:25", "order Q-2602: the version is missing", "as it was sent")],
    "no-order": [("2:1", "the order is missing", "as it was sent")],
    "a-quotation-mark-open": [("3:25", "a quotation mark is opened and not closed", "close it")],
    "two-lines-wrong": [
        ("2:32", "order Q-2602: '0' kits are none", "1 or more"),
        ("3:8", "order Q-2603: there is no day '2026-02-30'", "2026-12-01"),
        ("3:25", "order Q-2603: the version is missing", "as it was sent"),
        ("3:30", "order Q-2603: 'K7M' is not 6 signs", "foot of the sheet"),
    ],
}


@pytest.mark.parametrize("name", WRONG)
def test_each_bad_line_is_told_with_its_place_and_mend_and_the_rest_is_read(name: str) -> None:
    found, told = read(HERE / "wrong" / f"{name}.csv")
    assert found is not None
    assert [one.order for one in found.lines] == ["Q-2601"]
    assert len(told) == len(WRONG[name])
    for said, (where, message, helped) in zip(told, WRONG[name], strict=True):
        assert said.startswith(f"{name}.csv:{where}: error: {message}")
        assert helped in said.split("help: ")[1]


@pytest.mark.parametrize(
    ("name", "says"),
    [
        ("no-column-of-fingerprints", "no column is called 'fingerprint'"),
        ("a-misspelt-column", "there is no column 'fingerprnt'"),
        ("two-columns-alike", "two columns are called 'order'"),
    ],
)
def test_columns_that_cannot_be_trusted_are_told_and_nothing_is_guessed(name: str, says: str) -> None:
    found, [told] = read(HERE / "wrong" / f"{name}.csv")
    assert found is None
    assert says in told


def test_every_wrong_file_has_its_row() -> None:
    others = {"no-column-of-fingerprints", "a-misspelt-column", "two-columns-alike"}
    assert {path.stem for path in (HERE / "wrong").iterdir()} == WRONG.keys() | others


THIRD = Sent(
    "Q-2603", dt.date(2026, 12, 3), SentKit("drops", "Long", (("height", "24 mm"),), "grey, sea"), 3, "ABCDEF", "2"
)


@pytest.mark.parametrize("path", sorted(HERE.glob("*/*.csv")), ids=lambda path: path.name)
def test_what_is_added_is_read_back_and_no_byte_that_stood_there_is_lost(path: Path, tmp_path: Path) -> None:
    there, told = read(path)
    if there is None:
        return
    if not there.whole:
        with pytest.raises(CannotBe, match="nothing can be added"):
            added_to(there, [THIRD])
        return
    content = added_to(there, [THIRD])
    assert content.startswith(path.read_bytes())
    again = tmp_path / path.name
    again.write_bytes(content)
    found, told_again = read(again)
    assert found is not None
    assert [(one.order, one.date, one.kit, one.code, one.revision) for one in found.lines[len(there.lines) :]] == [
        (THIRD.order, THIRD.date, THIRD.kit, THIRD.code, THIRD.revision)
    ]
    assert told_again == told


def test_a_new_list_opens_in_a_spreadsheet_with_a_column_for_each_thing(tmp_path: Path) -> None:
    write_private(tmp_path / "private", "", {"sent.csv": added_to(SentList(), [FIRST, SECOND])})
    path = tmp_path / "private/sent.csv"
    assert stat.S_IMODE(path.stat().st_mode) == 0o600
    table = list(csv.reader(io.StringIO(path.read_text("utf-8-sig"))))
    assert table == [
        list(COLUMNS),
        ["Q-2601", "2026-12-01", "drops", "Long", "", "", "", "", "1", "K7M3QX", "1"],
        ["Q-2602", "2026-12-02", "drops", "Long", "height=24 mm; bore=9 mm", "", "", "", "2", "234567", "1"],
    ]
    assert lines(path) == (FIRST, SECOND)


@pytest.mark.parametrize("order", ["=1+1", "-12", "@7", "+4"])
def test_an_order_number_that_would_run_as_a_formula_is_the_same_when_it_is_read_back(
    order: str, tmp_path: Path
) -> None:
    path = tmp_path / "sent.csv"
    path.write_bytes(added_to(SentList(), [replace(FIRST, order=order)]))
    assert f"'{order}" in path.read_text("utf-8")
    assert [one.order for one in lines(path)] == [order]


def sent(order: str, day: int, code: str, kit: SentKit = FIRST.kit, count: int = 1) -> Sent:
    return Sent(order, dt.date(2026, 12, day), kit, count, code, "1")


def test_the_same_orders_made_twice_in_a_day_are_in_the_list_once() -> None:
    there = [sent("Q-2601", 1, "K7M3QX")]
    spaced = SentKit("Drops", "long")
    new = [
        sent("Q-2601", 1, "K7M3QX", spaced),  # the same again
        sent("Q-2601", 1, "ABCDEF"),  # its numbers have moved since the morning
        sent("Q-2601", 1, "K7M3QX", CHOSEN),  # another kind of kit
        sent("Q-2601", 2, "K7M3QX"),  # sent again the day after
        sent("Q-2602", 1, "K7M3QX"),
        sent("Q-2602", 1, "K7M3QX"),
    ]
    assert not_there(new, there) == new[1:5]


def test_of_a_kit_that_went_out_twice_the_last_counts_and_the_day_is_the_first_it_was_held() -> None:
    found = holdings(
        [
            sent("Q-2601", 1, "K7M3QX"),
            sent("Q-2602", 1, "K7M3QX"),
            sent("Q-2602", 5, "ABCDEF"),  # was sent another sheet
            sent("Q-2601", 7, "K7M3QX"),  # was sent the same one again
            sent("Q-2603", 9, "ABCDEF"),
            sent("Q-2603", 8, "K7M3QX"),  # a list that somebody has sorted otherwise
        ]
    )
    assert [(one.code, one.orders) for one in found] == [
        ("K7M3QX", (("Q-2601", dt.date(2026, 12, 1)),)),
        ("ABCDEF", (("Q-2602", dt.date(2026, 12, 5)), ("Q-2603", dt.date(2026, 12, 9)))),
    ]


PART = SentKit("drops", "Long", only=("glass-2", "glass-3"))


def test_a_part_sent_by_itself_stands_in_the_list_without_a_fingerprint_and_is_read_back(tmp_path: Path) -> None:
    path = tmp_path / "sent.csv"
    path.write_bytes(added_to(SentList(), [FIRST, sent("Q-2601", 3, "", PART)]))
    assert lines(path) == (FIRST, sent("Q-2601", 3, "", PART))
    assert [one.orders for one in holdings(lines(path))] == [(("Q-2601", FIRST.date),)]


def test_a_part_is_told_as_sent_before_where_just_it_went_and_a_kit_where_any_kit_of_its_order_went() -> None:
    there = [FIRST, sent("Q-2602", 3, "", PART)]
    other = SentKit("drops", "Long", only=("glass-2",))
    assert sent_again([sent("Q-2601", 9, "", PART)], there) == set()  # a part goes where its kit has gone
    assert sent_again([sent("Q-2602", 9, "", other)], there) == set()
    assert sent_again([sent("Q-2602", 9, "", PART)], there) == {"Q-2602"}
    assert sent_again([sent("Q-2602", 9, "K7M3QX")], there) == set()  # its kit goes for the first time
    assert sent_again([sent("Q-2601", 9, "K7M3QX", CHOSEN)], there) == {"Q-2601"}


def test_a_list_without_a_column_for_parts_is_not_given_one_as_a_whole_kit(tmp_path: Path) -> None:
    path = tmp_path / "sent.csv"
    path.write_text("order,date,design,version,choices,colourway,count,fingerprint\n", "utf-8")
    there, _ = read(path)
    assert there is not None
    assert added_to(there, [FIRST]).decode("utf-8").endswith("Q-2601,2026-12-01,drops,Long,,,1,K7M3QX\n")
    with pytest.raises(CannotBe, match="no column 'only'"):
        added_to(there, [sent("Q-2601", 3, "", PART)])
    with pytest.raises(CannotBe, match="no column 'leave out'"):
        added_to(there, [sent("Q-2601", 3, "K7M3QX", SentKit("drops", "Long", leave_out=("glass-2",)))])


def test_a_workbook_in_place_of_the_list_is_told(tmp_path: Path) -> None:
    row = ("Q-2601", "2026-12-01", "drops", "Long", "", "", 1, "K7M3QX", "1")
    path = tmp_path / "sent.csv"
    path.write_bytes(xlsx_bytes([Sheet("sent", COLUMNS, (row,))]))
    found, [told] = read(path)
    assert found is None
    assert "is a workbook" in told
    assert "save it as CSV" in told


@pytest.mark.parametrize("number", ["=1+1", "'=1+1", "''-rf", "@7", "＝9", "'Q-1", '"=2', "Q-1"])
def test_an_order_sent_again_the_same_day_is_known_again_whatever_its_number_begins_with(
    tmp_path: Path, number: str
) -> None:
    """The apostrophe before what looks like a formula is taken off again; the number's own stays."""
    (tmp_path / "sent.csv").write_bytes(added_to(SentList(), [replace(FIRST, order=number)]))
    assert [one.order for one in lines(tmp_path / "sent.csv")] == [number]
