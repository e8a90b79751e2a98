"""Lists as CSV and XLSX: what goes in comes out in another reader, and nothing that somebody typed runs."""

from __future__ import annotations

import csv
import datetime as dt
import io
import os
import re
import subprocess
import sys
import zipfile
from decimal import Decimal
from pathlib import Path
from typing import TYPE_CHECKING
from xml.etree import ElementTree as ET

import pytest
from hypothesis import given
from hypothesis import strategies as some

from sheetgen.model.sheets import Sheet
from sheetgen.publish.tables import csv_bytes
from sheetgen.publish.workbook import xlsx_bytes

if TYPE_CHECKING:
    from sheetgen.model.sheets import Cell

MAIN = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}"
# Beginnings that a spreadsheet program takes for a formula: the four signs, and what it leaves out before them.
RUNS = [
    "=1+1",
    "+1",
    "-1",
    "@sum",
    "\t=1",
    "\r=1",
    "=cmd|' /C calc'!A0",
    '=HYPERLINK("http://x.example")',
    "＝1",
    " =1",
]
PICK = Sheet(
    "pick: clay",
    ("item", "in one bag", "price", "due", "note"),
    (
        ("Silver clay, low fire", 16, Decimal("38.50"), dt.date(2026, 12, 1), "wrap at once"),
        ("Käthe's “moss” 海", -3, 0.1 + 0.2, None, 'two\nlines, "quoted"'),
        ("0042", Decimal("1E+2"), 1e-7, None, None),
    ),
)


def read_csv(content: bytes, sign: str = ",") -> list[list[str]]:
    text = content.decode("utf-8-sig")
    return list(csv.reader(io.StringIO(text, newline=""), delimiter=sign))


def read_xlsx(content: bytes, number: int = 1) -> tuple[ET.Element, list[dict[str, ET.Element]]]:
    """A sheet by ECMA-376 part 1, 18.3.1: its root, and of each row the cells by their column."""
    with zipfile.ZipFile(io.BytesIO(content)) as archive:
        root = ET.fromstring(archive.read(f"xl/worksheets/sheet{number}.xml"))  # noqa: S314 - our own
    rows = root.iter(f"{MAIN}row")
    return root, [{re.sub("[0-9]", "", cell.attrib["r"]): cell for cell in row} for row in rows]


def text_of(cell: ET.Element) -> str:
    """The text of a string cell (18.18.11: t is inlineStr), its escapes undone (22.9.2.19)."""
    assert cell.attrib["t"] == "inlineStr"
    [text] = cell.iter(f"{MAIN}t")
    return re.sub("_x([0-9A-F]{4})_", lambda found: chr(int(found[1], 16)), text.text or "")


def styles(content: bytes) -> ET.Element:
    with zipfile.ZipFile(io.BytesIO(content)) as archive:
        return ET.fromstring(archive.read("xl/styles.xml"))  # noqa: S314 - our own


def style(content: bytes, cell: ET.Element) -> ET.Element:
    formats = styles(content).find(f"{MAIN}cellXfs")
    assert formats is not None
    return formats[int(cell.attrib.get("s", "0"))]


def one(cell: Cell) -> Sheet:
    return Sheet("one", ("a", "b"), ((cell, 1),))


def test_a_csv_has_a_byte_order_mark_commas_and_the_line_ends_of_its_standard() -> None:
    content = csv_bytes(PICK)
    assert content.startswith(b"\xef\xbb\xbfitem,in one bag,price,due,note\r\n")
    assert content.endswith(b"\r\n")
    assert b'"two\nlines, ""quoted"""' in content


def test_a_csv_is_read_by_another_reader_as_it_was_meant() -> None:
    assert read_csv(csv_bytes(PICK)) == [
        ["item", "in one bag", "price", "due", "note"],
        ["Silver clay, low fire", "16", "38.50", "2026-12-01", "wrap at once"],
        ["Käthe's “moss” 海", "-3", "0.3", "", 'two\nlines, "quoted"'],
        ["0042", "100", "0.0000001", "", ""],
    ]


@pytest.mark.parametrize("typed", RUNS)
def test_text_that_would_run_has_an_apostrophe_before_it_in_a_csv(typed: str) -> None:
    [_, [cell, _]] = read_csv(csv_bytes(one(typed)))
    assert cell.lstrip(" ").startswith("'")
    assert cell.replace("'", "").lstrip() == typed.replace("'", "").lstrip()


@given(some.lists(some.text(alphabet="=+-@ab1,;\t\r\n\" '", max_size=12), min_size=3, max_size=3))
def test_no_cell_of_a_csv_runs_whatever_sign_a_program_parts_it_at(cells: list[str]) -> None:
    content = csv_bytes(Sheet("a", ("x", "y", "z"), (tuple(cells),)))
    for sign in ",;\t":
        for row in read_csv(content, sign):
            assert not [cell for cell in row if cell.lstrip(' "').startswith(("=", "+", "-", "@"))], (sign, row)


@given(some.lists(some.text(max_size=12), min_size=2, max_size=3))
def test_text_comes_out_of_a_csv_as_it_went_in_but_for_apostrophes_and_what_no_file_holds(cells: list[str]) -> None:
    sheet = Sheet("a", tuple("abc"[: len(cells)]), (tuple(cells),))
    [_, *rows] = read_csv(csv_bytes(sheet))
    plain = [re.sub("[^\\w]", "", cell) for cell in cells]
    assert [re.sub("[^\\w]", "", cell) for cell in rows[0]] == plain


@pytest.mark.parametrize("typed", [*RUNS, "#N/A", "TRUE", "12", "2026-12-01", "_x000D_", "it's _x0041_ and =1"])
def test_text_in_a_workbook_is_text_and_as_it_was_typed(typed: str) -> None:
    content = xlsx_bytes([one(typed)])
    _, rows = read_xlsx(content)
    assert text_of(rows[1]["A"]) == typed.replace("\r", "\n")
    assert not list(read_xlsx(content)[0].iter(f"{MAIN}f"))


@pytest.mark.parametrize("typed", [text for text in RUNS if text[0] != " "])
def test_text_that_would_run_stays_text_in_a_workbook_when_it_is_edited(typed: str) -> None:
    # 18.8.45: quotePrefix, by which the program keeps an entered text as text
    content = xlsx_bytes([one(typed), one("plain")])
    assert style(content, read_xlsx(content)[1][1]["A"]).attrib["quotePrefix"] == "1"
    assert style(content, read_xlsx(content, 2)[1][1]["A"]).attrib["quotePrefix"] == "0"


def test_numbers_in_a_workbook_are_numbers_and_dates_are_days() -> None:
    content = xlsx_bytes([PICK])
    _, rows = read_xlsx(content)
    values = [[(row[c].attrib["t"], float(row[c].findtext(f"{MAIN}v") or "")) for c in "BC"] for row in rows[1:]]
    assert values == [[("n", 16.0), ("n", 38.5)], [("n", -3.0), ("n", pytest.approx(0.3))], [("n", 100.0), ("n", 1e-7)]]
    day = rows[1]["D"]
    # days since the end of 1899, less the leap day that 1900 never had (18.17.4.1)
    assert float(day.findtext(f"{MAIN}v") or "") == (dt.date(2026, 12, 1) - dt.date(1899, 12, 30)).days
    formats = {f.attrib["numFmtId"]: f.attrib["formatCode"] for f in styles(content).iter(f"{MAIN}numFmt")}
    assert formats[style(content, day).attrib["numFmtId"]] == "yyyy-mm-dd"
    assert text_of(rows[3]["A"]) == "0042"


def test_the_head_is_bold_and_stays_in_sight_and_columns_fit() -> None:
    content = xlsx_bytes([PICK])
    root, rows = read_xlsx(content)
    fonts = styles(content).find(f"{MAIN}fonts")
    assert fonts is not None
    for cell, bold in ((rows[0]["A"], True), (rows[1]["A"], False)):
        font = fonts[int(style(content, cell).attrib["fontId"])]
        assert (font.find(f"{MAIN}b") is not None) is bold
    [pane] = root.iter(f"{MAIN}pane")
    assert (pane.attrib["ySplit"], pane.attrib["state"]) == ("1", "frozen")
    widths = [float(column.attrib["width"]) for column in root.iter(f"{MAIN}col")]
    assert len(widths) == 5
    assert all(8 <= width <= 62 for width in widths)
    assert widths[0] >= len("Silver clay, low fire")


def test_each_list_is_a_sheet_with_a_name_that_a_sheet_may_have() -> None:
    content = xlsx_bytes(
        [PICK, PICK, Sheet("[a]*?/\\'", ("a",), ()), Sheet("b" * 80, ("a",), ()), Sheet("", ("a",), ())]
    )
    with zipfile.ZipFile(io.BytesIO(content)) as archive:
        book = ET.fromstring(archive.read("xl/workbook.xml"))  # noqa: S314 - our own
    names = [sheet.attrib["name"] for sheet in book.iter(f"{MAIN}sheet")]
    assert len(names) == len(set(names)) == 5
    assert not [name for name in names if re.search(r"[\[\]:*?/\\]", name) or not 1 <= len(name) <= 31]


def test_signs_that_no_file_holds_are_replaced() -> None:
    typed = "a\x00b\x0bc\ud800d\uffffe"
    [_, [cell, _]] = read_csv(csv_bytes(one(typed)))
    assert cell == "a b c\ufffdd\ufffde"
    assert text_of(read_xlsx(xlsx_bytes([one(typed)]))[1][1]["A"]) == "a b c\ufffdd\ufffde"


@pytest.mark.parametrize("number", [float("nan"), float("inf"), Decimal("NaN")])
def test_a_number_that_is_none_is_refused_and_not_printed(number: Cell) -> None:
    with pytest.raises(ValueError, match="cannot stand in a list"):
        csv_bytes(one(number))
    with pytest.raises(ValueError, match="cannot stand in a list"):
        xlsx_bytes([one(number)])


def test_the_same_lists_give_the_same_bytes_on_another_day_and_in_another_run() -> None:
    content = xlsx_bytes([PICK, one("=1")])
    with zipfile.ZipFile(io.BytesIO(content)) as archive:
        assert {part.date_time for part in archive.infolist()} == {(1980, 1, 1, 0, 0, 0)}
        core = archive.read("docProps/core.xml").decode()
    assert re.findall(r"\d{4}-\d\d-\d\dT", core) == ["2000-01-01T"] * 2
    here = Path(__file__).parent
    again = (
        "import sys; sys.path[:0] = sys.argv[1:]; import importlib.util as u;"
        "s = u.spec_from_file_location('t', sys.argv[1] + '/test_tables.py'); m = u.module_from_spec(s);"
        "s.loader.exec_module(m); sys.stdout.buffer.write(m.xlsx_bytes([m.PICK, m.one('=1')]))"
    )
    ran = subprocess.run(
        [sys.executable, "-c", again, str(here), str(here.parent.parent)],
        capture_output=True, check=True, env=os.environ | {"PYTHONHASHSEED": "7", "TZ": "Asia/Tokyo"},
    )  # fmt: skip
    assert ran.stdout == content
