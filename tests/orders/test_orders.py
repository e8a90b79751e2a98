"""Spreadsheets of orders, honest and wrong, as makers and their programs write them: what is read, and what is told."""

from __future__ import annotations

import datetime as dt
import pickle
import re
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest

if TYPE_CHECKING:
    from collections.abc import Callable

HERE = Path(__file__).parent
HONEST = sorted((HERE / "honest").iterdir())
WRONG = sorted((HERE / "wrong").iterdir())
DAY = dt.date(2026, 12, 1)
FIELDS = (
    "order",
    "name",
    "design",
    "version",
    "count",
    "choices",
    "colourway",
    "leave_out",
    "only",
    "gift_note",
    "due",
)

# Of each honest file what its lines come to, where they differ from the blank line.
BLANK: dict[str, Any] = {
    "version": "Long", "count": 1, "choices": (), "colourway": "", "leave_out": (), "only": (), "gift_note": "", "due": None,
}  # fmt: skip
COMES_TO: dict[str, list[dict[str, Any]]] = {
    "comma.csv": [
        {"order": "Q-2601", "name": "Wren Tidewell", "design": "buoy-drops", "due": DAY},
        {"order": "Q-2602", "name": "Odo Marsh", "design": "tideline-band", "version": "US 8", "count": 2, "due": dt.date(2026, 12, 2)},
        {"order": "Q-2603", "name": "Ines Sandpiper", "design": "towline-bracelet", "version": "Silver, short"},
    ],
    "semicolon-windows-1252.csv": [
        {"order": "2601", "name": "Käthe Möwe", "design": "buoy-drops", "gift_note": "Schöne Grüße – bis bald!", "due": DAY},
        {"order": "2602", "name": "Åse Tång", "design": "towline-bracelet", "version": "Silver, short", "count": 3,
         "choices": (("length", "182,5 mm"), ("stone", "moss")), "colourway": "Klar", "leave_out": ("Pliers", "thread"),
         "due": dt.date(2026, 12, 2)},
    ],
    "tab-utf-16.txt": [
        {"order": "2601", "name": "Żaneta Mewa", "design": "buoy-drops", "gift_note": "Miłego dnia", "due": DAY},
        {"order": "2602", "name": "海鳥 渚", "design": "tideline-band", "version": "US 8", "due": dt.date(2026, 12, 2)},
    ],
    "tab-utf-16-bare.txt": [
        {"order": "2601", "name": "Żaneta Mewa", "design": "buoy-drops", "gift_note": "Miłego dnia", "due": DAY},
    ],
    "bom.csv": [{"order": "Q-2601", "name": "Zoë Gannet", "design": "buoy-drops", "version": "Short", "due": DAY}],
    "line-breaks.csv": [
        {"order": "Q-2601", "name": "Tern, Bo", "design": "towline-bracelet", "version": "Silver, long", "count": 2,
         "choices": (("length", "182,5 mm"), ("stone", "moss")), "colourway": "clear", "leave_out": ("pliers", "thread"),
         "gift_note": 'For "Gull",\nfrom all of us\n\nat the pier', "due": DAY},
        {"order": "Q-2602", "name": "Ida Knot", "design": "buoy-drops", "gift_note": 'He said "ahoy"', "due": dt.date(2026, 12, 3)},
    ],
    "another-order.csv": [
        {"order": "Q-2601", "name": "", "design": "buoy-drops", "colourway": "smoke", "leave_out": ("pliers", "thread"), "due": DAY},
        {"order": "Q-2602", "name": "", "design": "shingle-keeper", "version": "Shingle keeper", "count": 12, "gift_note": "with love"},
    ],
    "a-missing-part.csv": [
        {"order": "Q-2589", "name": "Wren Tidewell", "design": "buoy-drops", "version": "Short", "colourway": "clear",
         "only": ("stones",), "due": dt.date(2026, 11, 30)},
        {"order": "Q-2590", "name": "Odo Marsh", "design": "buoy-drops", "version": "Short", "colourway": "clear",
         "only": ("stones", "ear wires"), "due": dt.date(2026, 11, 30)},
    ],
    "several-lines.csv": [
        {"order": "Q-2601", "name": "Wren Tidewell", "design": "buoy-drops", "gift_note": "Happy birthday", "due": DAY},
        {"order": "Q-2601", "name": "Wren Tidewell", "design": "tideline-band", "version": "US 5"},
        {"order": "Q-2601", "name": "Wren Tidewell", "design": "tideline-band", "version": "US 6"},
        {"order": "Q-2601", "name": "Wren Tidewell", "design": "tideline-band", "version": "US 6", "count": 2},
    ],
    "a-hall-full.csv": [
        {"order": "Q-2601", "name": "Wren Tidewell", "design": "buoy-drops", "count": 300, "due": DAY},
        {"order": "Q-2601", "name": "Wren Tidewell", "design": "buoy-drops", "count": 250, "colourway": "grey sea"},
    ],
    "sep-line.csv": [{"order": "Q-2601", "name": "Wren Tidewell", "design": "buoy-drops", "count": 12, "due": DAY}],
    "by-hand.csv": [
        {"order": "Q-2601", "name": "Wren Tidewell", "design": "buoy-drops"},
        {"order": "Q-2602", "name": "Marsh, Odo", "design": "shingle-keeper", "version": "Shingle keeper", "count": 2,
         "choices": (("size", "6,5 mm"), ("length", "40 mm"))},
        {"order": "Q-2603", "name": '6" Nell', "design": "shingle-keeper", "version": "Shingle keeper", "count": 2},
    ],
    "old-system.csv": [{"order": "Q-2601", "name": "Wren Tidewell", "design": "buoy-drops", "due": DAY}],
    "like-totals.csv": [
        {"order": "Total-1", "name": "Wren Tidewell", "design": "buoy-drops"},
        {"order": "Total", "name": "Odo Marsh", "design": "buoy-drops", "version": "Short", "count": 2},
        {"order": "Q-2602", "name": "Sum", "design": "buoy-drops", "count": 3, "gift_note": "Total surprise"},
        {"order": "Q-2603", "name": "", "design": "buoy-drops", "count": 6},
    ],
}  # fmt: skip

TOTALS = "a row of totals is not an order"
WANTED = "wanted are order, design and count"
# Of each wrong file: line, the words marked in it, what is told, what would help; and how many of its lines are kept.
TOLD: dict[str, tuple[int, list[tuple[int, str, str, str]]]] = {
    "count.csv": (1, [
        (3, '"1,5"', "order Q-2601: '1,5' is not a whole number of kits", "write 1, 2, 3"),
        (4, "0", "order Q-2602: '0' kits are none to send", "take the line out"),
        (5, ",", "order Q-2603: it is not said how many", "fill in 'count'"),
        (6, "two", "order Q-2604: 'two' is not a whole number of kits", "write 1, 2, 3"),
        (7, "3 pcs", "order Q-2605: '3 pcs' is not a whole number of kits", "write 3"),
        (8, '"1,000"', "order Q-2606: '1,000' is not a whole number of kits", "write 1000, or 1"),
        (9, "-1", "order Q-2607: '-1' is not a whole number of kits", "write 1, 2, 3"),
        (10, "20000", "order Q-2608: '20000' kits are more than anybody packs", "does it belong to another column?"),
    ]),
    "design.csv": (1, [
        (3, "bouy-drops", "order Q-2601: there is no design 'bouy-drops'", "did you mean 'buoy-drops'?"),
        (4, "earrings", "order Q-2602: there is no design 'earrings'", "buoy-drops, shingle-keeper, tideline-band, towline-bracelet"),
        (5, ",", "order Q-2603: the design is missing", "buoy-drops, shingle-keeper"),
    ]),
    "version.csv": (1, [
        (3, "US 10", "order Q-2601: tideline-band has no version 'US 10'; known: US 7, US 5, US 6, US 8", "write one of these"),
        (4, '"Silver, shrot"', "order Q-2602: towline-bracelet has no version 'Silver, shrot'", "did you mean 'Silver, short'?"),
        (5, "US 5", "order Q-2603: shingle-keeper has no version 'US 5'; known: Shingle keeper", "write one of these"),
    ]),
    "two-names.csv": (3, [(4, "········", "order Q-2601: the name is another than on line 3", "one order has one name")]),
    "many-kits.csv": (3, [
        (2, "10000", "order Q-2601: 10000 kits", "if it is a slip, mend it"),
        (3, "301", "order Q-2602: 301 kits", "if it is a slip, mend it"),
        (4, "4000", "order Q-2603: 4000 kits", "if it is a slip, mend it"),
    ]),
    "twice.csv": (3, [(4, "Q-2600", "order Q-2600: the line is the same as line 2; both are made", "take one of them out")]),
    "no-order.csv": (1, [
        (3, ",", "the order has no number", "each line of an order has its number"),
        (4, '"' + "7" * 60 + '"', f"order {'7' * 40}: the order's number has 60 letters", "at most 40"),
    ]),
    "spelt-two-ways.csv": (2, [(3, "q-2600", "order q-2600: 'Q-2600' on line 2 is taken for another order", "in one way")]),
    "choices.csv": (1, [
        (3, "US 8", "order Q-2601: the choice 'US 8' has no '='", "size=US 8; length=185 mm"),
        (4, "size=", "order Q-2602: the choice 'size=' lacks its value", "write name=value"),
        (5, "size=US 8, length=185 mm", "order Q-2603: the choice 'size=US 8, length=185 mm' has two '='", "with semicolons"),
        (6, "Size", "order Q-2604: the choice 'Size' is made twice", "keep one"),
        (8, "=US 9", "order Q-2605: the choice '=US 9' lacks its name", "write name=value"),
    ]),
    "leave-out-and-only.csv": (2, [(3, "stones", "order Q-2601: both 'leave out' and 'only' are filled in", "empty one")]),
    "due.csv": (1, [
        (3, "12/01/2026", "order Q-2601: '12/01/2026' may be two days", "write 2026-01-12 or 2026-12-01"),
        (4, "25/12/2026", "order Q-2602: '25/12/2026' is not a date", "write 2026-12-25"),
        (5, "30.02.2026", "order Q-2603: there is no day '30.02.2026'", "write it as 2026-12-01 or 1.12.2026"),
        (6, "1.12.26", "order Q-2604: '1.12.26' is not a date", "write 2026-12-01"),
        (7, "46357", "order Q-2605: '46357' is a day as a bare number", "format the cell as a date"),
        (8, "Dec 1", "order Q-2606: 'Dec 1' is not a date", "write it as 2026-12-01 or 1.12.2026"),
        (9, "2026-13-01", "order Q-2607: there is no day '2026-13-01'", "write it as"),
        (10, "12.2026", "order Q-2608: '12.2026' is not a date", "write it as"),
        (11, "13/13/2026", "order Q-2609: '13/13/2026' is not a date", "write it as"),
        (12, "1.12.1026", "order Q-2610: there is no day '1.12.1026'", "write it as"),
    ]),
    "missing-columns.csv": (0, [(1, "order", "no column is called 'design' or 'count'", WANTED)]),
    "misspelt-column.csv": (0, [(1, "desing", "there is no column 'desing'", "did you mean 'design'?")]),
    "misspelt-optional-column.csv": (0, [(1, "chioces", "there is no column 'chioces'", "did you mean 'choices'?")]),
    "double-column.csv": (0, [(1, "Count", "two columns are called 'count'", WANTED)]),
    "unknown-columns.csv": (1, [
        (1, "price", "the columns 'price' and 'street' are not read", "read are order, name, design"),
        (1, "", "column 7 has no name and is not read", "name it in the first line"),
    ]),
    "no-header.csv": (0, [(1, "······", "no column is called 'order', 'design' or 'count'", "the first line names the columns")]),
    "comma-not-quoted.csv": (2, [
        (3, "·", "the line has 12 cells, and the first line names 11 columns", "between quotation marks"),
        (4, "···", "order Q-2602: the design stands in another column than its own", "between quotation marks"),
    ]),
    "one-column-off.csv": (2, [(3, "···", "order Q-2601: the design stands in another column", "between quotation marks")]),
    "quote-not-closed.csv": (3, [
        (3, "·", "a quotation mark is opened and not closed", "close it before the next cell"),
        (5, "·", "a quotation mark is opened and not closed, or text goes on after it", "is written twice"),
    ]),
    "failed-formula.csv": (1, [
        (3, "····", "order Q-2601: 'name' is a formula that failed", "mend the formula"),
        (4, "#REF!", "order Q-2602: 'count' is a formula that failed", "mend the formula"),
    ]),
    "formula-in-order.csv": (1, [
        (3, "=buoy-drops", "order =1+1: there is no design '=buoy-drops'", "did you mean 'buoy-drops'?"),
        (3, "=2", "order =1+1: '=2' is not a whole number of kits", "write 1, 2, 3"),
    ]),
    "strange-sign.csv": (1, [(3, "·", "order Q-2601: a sign in 'name' is lost or cannot be printed", "write it once more")]),
    "long-cell.csv": (1, [(3, "·" * 2999, "order Q-2601: 'gift note' has 2999 letters", "at most 2000")]),
    "two-encodings.csv": (0, [(3, "", "the file is partly in UTF-8 and partly in another encoding", "as CSV in UTF-8")]),
    "no-text.csv": (0, [(2, "", "the file is neither UTF-8 nor Windows-1252", "save it as XLSX, or as CSV in UTF-8")]),
    "old-workbook.xls": (0, [(1, "", "the file is an old workbook, or one with a password", "save it as XLSX")]),
    "picture.csv": (0, [(1, "", "the file is a PDF, not a table", "save it as XLSX")]),
    "empty.csv": (0, [(1, "", "the file is empty", "its first line names the columns")]),
    "total.csv": (2, [(4, "Total", TOTALS, "take it out")]),
    "totals-on-the-way.csv": (3, [
        (3, "········", TOTALS, "take it out"), (6, "Sum:", TOTALS, "take it out"),
        (7, "Grand total: all orders", TOTALS, "take it out"),
    ]),
    "total-without-a-word.csv": (2, [(4, "17", TOTALS, "take it out")]),
    "total-typed-short.csv": (1, [(3, "·····", TOTALS, "take it out")]),
    "total-in-a-column-of-ones-own.csv": (2, [
        (1, "Auftrag", "the columns 'Auftrag' and 'Preis' are not read", "read are order"), (4, "·····", TOTALS, "take it out"),
    ]),
    "no-totals.csv": (2, [
        (4, ",", "order Q-2602: the design is missing", "buoy-drops"),
        (5, ",", "the order has no number", "each line of an order has its number"),
        (5, ",", "the design is missing", "buoy-drops"),
        (6, ",", "order Total-9: the design is missing", "buoy-drops"),
        (7, ",", "order Q-2603: the design is missing", "buoy-drops"),
        (8, ",", "the order has no number", "each line of an order has its number"),
        (8, ",", "the design is missing", "buoy-drops"),
    ]),
    "only-header.csv": (0, [(1, "o", "no order stands under the names of the columns", "a line for each kind of kit")]),
}  # fmt: skip
WARNED = {"many-kits.csv", "twice.csv", "spelt-two-ways.csv", "unknown-columns.csv"}
SECRETS = (
    "Wren", "Tidewell", "Odo", "Marsh", "Ida", "Knot", "Bo", "Tern", "Nell", "Auk", "Gannet", "Käthe", "ho ho", "38 EUR", "Pier Lane",
)  # fmt: skip


def marked(trouble: Any) -> str:
    """The words over the carets, by the place; what a file's name or an end of a line would mark is nothing."""
    line = trouble.place.source.line(trouble.place.line)
    start = trouble.place.column - 1
    found: str = line[start : start + trouble.place.width]
    return found


def test_every_file_here_has_its_row_in_the_table() -> None:
    assert {path.name for path in HONEST} == COMES_TO.keys()
    assert {path.name for path in WRONG} == TOLD.keys()


@pytest.mark.parametrize("path", HONEST, ids=lambda path: path.stem)
def test_an_honest_file_is_read_whole_and_nothing_is_said(path: Path, read: Any) -> None:
    found = read(path)
    assert found.told == []
    lines = [{field: getattr(line, field) for field in FIELDS} for line in found.orders.lines]
    assert lines == [BLANK | line for line in COMES_TO[path.name]]
    assert not found.orders.lacking


@pytest.mark.parametrize("path", WRONG, ids=lambda path: path.stem)
def test_what_is_wrong_is_told_where_it_stands_with_a_mend(path: Path, read: Any) -> None:
    kept, told = TOLD[path.name]
    found = read(path)
    assert [(t.place.line, marked(t)) for t in found.troubles] == [(line, words) for line, words, *_ in told]
    for trouble, (_, _, message, helped) in zip(found.troubles, told, strict=True):
        assert message in trouble.message
        assert helped in trouble.help
        warned = path.name in WARNED or "not read" in message
        assert trouble.severity == ("warning" if warned else "error")
        assert str(trouble).startswith(f"{path.name}:{trouble.place.line}:{trouble.place.column}: ")
    assert len(found.orders.lines) == kept


@pytest.mark.parametrize("path", WRONG, ids=lambda path: path.stem)
def test_no_trouble_shows_a_name_a_note_or_a_price(path: Path, read: Any) -> None:
    found = read(path)
    for told in (*found.told, *map(repr, found.troubles), *map(repr, found.orders.lines), *found.orders.lacking):
        assert not [secret for secret in SECRETS if re.search(rf"\b{secret}\b", told)], told


@pytest.mark.parametrize("path", WRONG, ids=lambda path: path.stem)
def test_an_order_that_lacks_a_line_is_named(path: Path, read: Any) -> None:
    found = read(path)
    told = {
        number[1] for t in found.troubles if t.severity == "error" and (number := re.match(r"order (\S+):", t.message))
    }
    assert told <= found.orders.lacking
    assert found.orders.lacking <= told | {"Q-2601", "Q-2603"}  # of a line that cannot be taken apart


def test_a_line_knows_where_each_of_its_words_stands(read: Any) -> None:
    [first, _] = read(HERE / "honest" / "line-breaks.csv").orders.lines
    assert [str(word.place) for choice in first.choices for word in choice] == [
        "line-breaks.csv:3:56", "line-breaks.csv:3:63", "line-breaks.csv:4:1", "line-breaks.csv:4:9",
    ]  # fmt: skip
    assert (str(first.place), str(first.colourway.place)) == ("line-breaks.csv:3:1", "line-breaks.csv:4:15")


def test_what_is_read_can_be_kept_and_compared(read: Any) -> None:
    orders = read(HERE / "honest" / "line-breaks.csv").orders
    assert pickle.loads(pickle.dumps(orders)) == orders  # noqa: S301 - our own


def test_the_places_of_a_line_do_not_hold_its_name_or_note(read: Any) -> None:
    for path in HONEST:
        for line in read(path).orders.lines:
            for word in (line.order, line.design, line.version, line.colourway, *line.leave_out, *line.only):
                kept = word.place.source.text + word.block
                assert not [w for w in (*line.name.split(), line.gift_note) if w and w in kept], path.name


@pytest.mark.parametrize("design", ["Buoy drops", "BUOY_DROPS", " buoy-drops "])
def test_a_design_and_a_version_are_known_however_they_are_spaced(design: str, read_bytes: Callable[..., Any]) -> None:
    found = read_bytes(f"order,design,version,count\nQ-1,{design},short,1\nQ-2,tideline band,us8,1\n")
    assert found.told == []
    assert [(line.design, line.version) for line in found.orders.lines] == [
        ("buoy-drops", "Short"),
        ("tideline-band", "US 8"),
    ]


def test_a_file_that_is_not_there_or_is_a_folder_is_told(read: Any, tmp_path: Path) -> None:
    assert "there is no such file" in read(tmp_path / "orders.csv").told[0]
    assert "is not a file" in read(tmp_path).told[0]
    assert read(tmp_path / ("o" * 300)).troubles
