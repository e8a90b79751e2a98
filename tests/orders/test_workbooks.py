"""Workbooks of orders: what people typed is read, cells are named by their letters, hostile files are told."""

from __future__ import annotations

import datetime as dt
import io
import random
import zipfile
from typing import TYPE_CHECKING, Any

import pytest

if TYPE_CHECKING:
    from collections.abc import Callable

HEAD = ["order", "name", "design", "version", "count", "choices", "due"]
GOOD = ["Q-2601", "Wren Tidewell", "buoy-drops", None, 2, "size=US 8\nlength=182,5 mm", None]


def test_cells_are_read_as_people_typed_them(workbooks: Any, read_bytes: Callable[..., Any]) -> None:
    value = workbooks.Value
    rows = [
        HEAD,
        GOOD,
        [2602, "Käthe Möwe", "shingle-keeper", None, "3.0", None, value(46357, workbooks.DAY)],
        [value(42, workbooks.NOUGHTS), "Odo Marsh", "tideline-band", "US 8", 1, None, value(46358.5, workbooks.DAY)],
        [
            value(42, workbooks.LETTERED),
            "Ida Knot",
            "tideline-band",
            "US 8",
            value(4, formula="2*2"),
            None,
            "1.12.2026",
        ],
        [None, None, None],
        [260.5, "Bo Tern", value("buoy-drops", formula='LOWER("X")'), value("", formula='""'), 1, None, None],
    ]
    found = read_bytes(workbooks.packed(workbooks.parts(rows)), "orders.xlsx")
    assert found.told == []
    # 46357 days after the end of 1899, less the day that there never was in 1900: 1 December 2026
    day = dt.date(1899, 12, 30) + dt.timedelta(46357)
    assert [(line.order, line.design, line.count, line.due) for line in found.orders.lines] == [
        ("Q-2601", "buoy-drops", 2, None),
        ("2602", "shingle-keeper", 3, day),
        ("0042", "tideline-band", 1, day + dt.timedelta(1)),
        ("Q-0042", "tideline-band", 4, day),
        ("260.5", "buoy-drops", 1, None),
    ]
    assert found.orders.lines[0].choices == (("size", "US 8"), ("length", "182,5 mm"))


def test_a_trouble_names_the_cell_by_its_letter(workbooks: Any, read_bytes: Callable[..., Any]) -> None:
    rows = [HEAD, GOOD, ["Q-2602", "Odo Marsh", "buoy-drops", None, 1.5, "size US 8", "12/01/2026"], []]
    found = read_bytes(workbooks.packed(workbooks.parts([*rows, *[[None]] * 26, [*GOOD[:4], 0]])), "orders.xlsx")
    assert [told.split(": ")[0] for told in found.told] == [f"orders.xlsx:{at}" for at in ("E3", "F3", "G3", "E31")]
    assert found.told[0].split("\n")[1:] == [
        "    3 | Q-2602│·········│buoy-drops││1.5│size US 8│12/01/2026",
        "      |" + " " * 30 + "^^^",
        "   help: write 1, 2, 3 …",
    ]
    assert len(found.orders.lines) == 1


def test_columns_past_z_have_two_letters(workbooks: Any, read_bytes: Callable[..., Any]) -> None:
    head = ["order", "name", "design", *[f"own {n}" for n in range(25)], "count"]
    found = read_bytes(
        workbooks.packed(workbooks.parts([head, ["Q-1", "Odo", "buoy-drops", *["x"] * 25, 0]])), "a.xlsx"
    )
    assert found.told[-1].startswith("a.xlsx:AC2: error: order Q-1: '0' kits")


def test_the_first_sheet_that_is_seen_is_read_and_others_are_warned_of(
    workbooks: Any, read_bytes: Callable[..., Any]
) -> None:
    rows = [HEAD, GOOD]
    found = read_bytes(workbooks.packed(workbooks.parts([["secret"]], rows, [["prices"]], hidden=1)), "a.xlsx")
    assert len(found.orders.lines) == 1
    [trouble] = found.troubles
    assert (trouble.severity, trouble.message) == ("warning", "the workbook has 2 sheets; the first is read")


def test_a_formula_that_failed_or_was_never_worked_is_told(workbooks: Any, read_bytes: Callable[..., Any]) -> None:
    value = workbooks.Value
    never = value(None, formula="A1*2")
    rows = [HEAD, GOOD, [*GOOD[:4], never], ["Q-2602", never, "buoy-drops", None, 1], ["Q-2603", "#REF!", *GOOD[2:5]]]
    found = read_bytes(workbooks.packed(workbooks.parts(rows)), "a.xlsx")
    assert [(t.message, t.severity) for t in found.troubles] == [
        (f"order {order}: '{column}' is a formula that failed", "error")
        for order, column in (("Q-2601", "count"), ("Q-2602", "name"), ("Q-2603", "name"))
    ]
    assert "no results" in found.troubles[0].help


def test_what_stands_beside_the_table_is_warned_of_once(workbooks: Any, read_bytes: Callable[..., Any]) -> None:
    found = read_bytes(
        workbooks.packed(workbooks.parts([HEAD, [*GOOD, None, "paid"], [*GOOD, None, "paid"]])), "a.xlsx"
    )
    messages = [t.message for t in found.troubles]
    assert messages == [
        "column I has no name and is not read",
        "order Q-2601: the line is the same as line 2; both are made",
    ]


def test_values_from_other_files_are_read_as_kept_and_warned_of(workbooks: Any, read_bytes: Callable[..., Any]) -> None:
    rows = [HEAD, [*GOOD[:4], workbooks.Value(3, formula="[1]Sheet1!A1")]]
    files = workbooks.parts(rows)
    files["xl/externalLinks/externalLink1.xml"] = '<externalLink xmlns="x"/>'
    found = read_bytes(workbooks.packed(files), "a.xlsx")
    [trouble] = found.troubles
    assert trouble.severity == "warning"
    assert "other files" in trouble.message
    assert found.orders.lines[0].count == 3


def test_the_name_in_a_cell_of_several_lines_is_hidden(workbooks: Any, read_bytes: Callable[..., Any]) -> None:
    rows = [HEAD, ["Q-1", "Odo│Marsh\nIda", "bouy-drops", None, 1]]
    [told] = read_bytes(workbooks.packed(workbooks.parts(rows)), "a.xlsx").told
    assert told.startswith("a.xlsx:C2: ")
    assert not [name for name in ("Odo", "Marsh", "Ida") if name in told]


ENTITIES = '<!DOCTYPE a [<!ENTITY b "x"><!ENTITY c "&b;&b;&b;&b;">]>'


def bomb(workbooks: Any) -> dict[str, str]:
    files: dict[str, str] = workbooks.parts([HEAD, GOOD])
    sheet = files["xl/worksheets/sheet1.xml"]
    files["xl/worksheets/sheet1.xml"] = sheet.replace("<sheetData>", "<sheetData>" + " " * 60_000_000)
    return files


def changed(part: str, old: str, new: str) -> Any:
    def files(workbooks: Any) -> dict[str, str]:
        found: dict[str, str] = workbooks.parts([HEAD, GOOD])
        assert old in found[part]
        return found | {part: found[part].replace(old, new)}

    return files


SHEET, WORDS, BOOK = "xl/worksheets/sheet1.xml", "xl/sharedStrings.xml", "xl/workbook.xml"
HOSTILE = {
    "unpacks to very much": (bomb, "unpacks to more than a table ever holds"),
    "declares entities": (changed(SHEET, "<worksheet", ENTITIES + "<worksheet"), "declares XML of its own"),
    "declares entities in its words": (changed(WORDS, "<sst", ENTITIES + "<sst"), "declares XML of its own"),
    "has millions of empty cells": (changed(SHEET, "<sheetData>", "<sheetData>" + "<row>" + "<c/>" * 4_100_000 + "</row>"), "unpacks to more"),
    "has a line far down": (changed(SHEET, "</sheetData>", '<row r="99999999999"><c r="A9"><v>1</v></c></row></sheetData>'), "more than 1048576 lines"),
    "has a formula far down": (changed(SHEET, "</sheetData>", '<row r="99999999999"><c r="A9"><f>1+1</f><v>2</v></c></row></sheetData>'), "more than 1048576 lines"),
    "has no sheet": (changed(BOOK, "<sheets>", "<sheets/><!--") , "cannot be read"),
    "breaks off": (changed(SHEET, "</sheetData>", ""), "cannot be read"),
    "asks for a word that is not there": (changed(SHEET, "<v>0</v>", "<v>999</v>"), "cannot be read"),
    "has a number that is none": (changed(SHEET, "<v>2</v></c><c", "<v>two</v></c><c"), "cannot be read"),
    "has a cell without end": (changed(SHEET, 'r="A2"', f'r="{"Z" * 5000}2"'), "cannot be read"),
    "has its sheet elsewhere": (changed("xl/_rels/workbook.xml.rels", "worksheets/sheet1.xml", "../../../etc/passwd"), "no sheet to read"),
    "is a document": (lambda _: {"[Content_Types].xml": "<Types/>", "word/document.xml": "<a/>"}, "cannot be read"),
    "is a packet of files": (lambda _: {"a.txt": "a"}, "is a packet, and not an XLSX"),
    "is an open document": (lambda w: {"mimetype": "application/vnd.oasis.opendocument.spreadsheet"} | w.parts([HEAD]), "is a packet, and not an XLSX"),
    "has very many parts": (lambda w: w.parts([HEAD]) | {f"a{n}.xml": "" for n in range(2001)}, "is a packet of 20"),
}  # fmt: skip


@pytest.mark.parametrize(("files", "says"), HOSTILE.values(), ids=HOSTILE.keys())
def test_a_hostile_workbook_is_told_and_breaks_nothing(
    files: Any, says: str, workbooks: Any, read_bytes: Callable[..., Any]
) -> None:
    found = read_bytes(workbooks.packed(files(workbooks)), "a.xlsx")
    assert any(says in t.message for t in found.troubles if t.severity == "error"), found.told
    assert all(t.help for t in found.troubles)


def test_a_packet_that_lies_about_its_size_is_told(workbooks: Any, read_bytes: Callable[..., Any]) -> None:
    honest = workbooks.packed(workbooks.parts([HEAD, GOOD]))
    with zipfile.ZipFile(io.BytesIO(honest)) as archive:
        size = archive.getinfo(SHEET).file_size
    found = read_bytes(honest.replace(size.to_bytes(4, "little"), (9).to_bytes(4, "little")), "a.xlsx")
    assert "the workbook is broken" in found.told[0]


def test_a_packet_with_a_password_or_an_unknown_packing_is_told(workbooks: Any, read_bytes: Callable[..., Any]) -> None:
    honest = bytearray(workbooks.packed(workbooks.parts([HEAD, GOOD])))
    at = honest.find(b"PK\x01\x02")
    locked = bytes(honest[: at + 8]) + b"\x01" + bytes(honest[at + 9 :])  # the flag of encryption, APPNOTE 4.4.4
    assert "has a password" in read_bytes(locked, "a.xlsx").told[0]


def test_no_torn_workbook_breaks_the_reader(workbooks: Any, read_bytes: Callable[..., Any]) -> None:
    whole = workbooks.packed(workbooks.parts([HEAD, GOOD]))
    dice = random.Random(7)  # noqa: S311 - where a file is torn is no secret
    for _ in range(150):
        torn = bytearray(whole)
        for _ in range(dice.randrange(1, 6)):
            torn[dice.randrange(4, len(torn))] = dice.randrange(256)
        read_bytes(bytes(torn), "a.xlsx")
        read_bytes(whole[: dice.randrange(4, len(whole))], "a.xlsx")
