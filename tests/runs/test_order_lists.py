"""The lists of a run as other programs read them: a workbook is a zip of XML, and nothing that was typed can run."""

from __future__ import annotations

import csv
import io
import zipfile
from decimal import Decimal
from typing import TYPE_CHECKING, Any
from xml.etree import ElementTree as ET

import pytest

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator
    from pathlib import Path

MAIN = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}"
LINK = "{http://schemas.openxmlformats.org/officeDocument/2006/relationships}id"
STARTS = ("=1+1", "+49 1", "-Wren", "@Wren", "\tWren", '=HYPERLINK("https://x.invalid")', "＝1+1")
NAMES = ("check", "pick", "cut", "buy", "left", "kit-cards", "labels")


@pytest.fixture(scope="module")
def typed(tmp_path_factory: pytest.TempPathFactory, makes_bench: Callable[..., Any], without_paper: None) -> Any:
    """Parts for orders whose names begin as a formula does: all lists, and no sheet to be laid out."""
    assert without_paper is None
    bench = makes_bench(tmp_path_factory.mktemp("typed"))
    table = bench.library.root / "typed.csv"
    with table.open("w", newline="", encoding="utf-8") as file:
        write = csv.writer(file)
        write.writerow(["order", "name", "design", "count", "colourway", "only", "due"])
        for number, name in enumerate(STARTS):
            write.writerow([f"=Q{number}", name, "buoy-drops", 1, "grey sea", "stones", "2026-12-01"])
            write.writerow([f"=Q{number}", "", "towline-bracelet", 2, "", "wire", ""])
    told = bench.orders(table)
    assert told.code == 0, told.said
    return bench


def read_book(path: Path) -> Iterator[tuple[str, list[list[tuple[str, str]]]]]:
    """Each sheet by its name: rows of cells, each a type and what stands in it. Fails where there is a formula."""
    with zipfile.ZipFile(path) as packet:
        assert packet.testzip() is None
        strings: list[str] = []
        if "xl/sharedStrings.xml" in packet.namelist():
            shared = ET.fromstring(packet.read("xl/sharedStrings.xml"))  # noqa: S314 - our own
            strings = ["".join(part.text or "" for part in one.iter(f"{MAIN}t")) for one in shared]
        book = ET.fromstring(packet.read("xl/workbook.xml"))  # noqa: S314
        links = ET.fromstring(packet.read("xl/_rels/workbook.xml.rels"))  # noqa: S314
        where = {link.attrib["Id"]: link.attrib["Target"].removeprefix("/xl/") for link in links}
        for sheet in book.iter(f"{MAIN}sheet"):
            page = ET.fromstring(packet.read(f"xl/{where[sheet.attrib[LINK]]}"))  # noqa: S314
            assert not list(page.iter(f"{MAIN}f")), "a formula"
            yield sheet.attrib["name"], [_row(row, strings) for row in page.iter(f"{MAIN}row")]


def _row(row: ET.Element, strings: list[str]) -> list[tuple[str, str]]:
    cells: dict[int, tuple[str, str]] = {}
    for cell in row:
        at = 0
        for letter in filter(str.isalpha, cell.attrib["r"]):
            at = at * 26 + ord(letter) - 64
        kind, value = cell.attrib.get("t", "n"), cell.findtext(f"{MAIN}v") or ""
        if kind == "s":
            value = strings[int(value)]
        elif kind == "inlineStr":
            value = "".join(part.text or "" for part in cell.iter(f"{MAIN}t"))
        cells[at] = (kind, value)
    return [cells.get(at, ("", "")) for at in range(1, max(cells, default=0) + 1)]


def csv_rows(bench: Any, name: str) -> list[list[str]]:
    text = (bench.folder("typed") / f"{name}.csv").read_text("utf-8-sig")
    return list(csv.reader(io.StringIO(text, newline="")))


def same(in_csv: str, cell: tuple[str, str]) -> bool:
    kind, value = cell
    if kind in {"n", "d"} and value:
        return in_csv.startswith("2026-") or Decimal(in_csv) == Decimal(value)
    return in_csv in {value, f"'{value}"}  # a CSV cannot say that a cell is text


def test_a_workbook_says_what_the_lists_say_by_a_reader_of_zip_and_xml(typed: Any) -> None:
    book = dict(read_book(typed.folder("typed") / "lists.xlsx"))
    assert {name.replace(" ", "-") for name in book} == set(NAMES)
    for name in NAMES:
        ours, theirs = csv_rows(typed, name), book[name.replace("-", " ")]
        assert len(ours) == len(theirs) > 1
        for row, cells in zip(ours, theirs, strict=True):
            padded = [*cells, *[("", "")] * (len(row) - len(cells))]
            assert all(map(same, row, padded)), (name, row, cells)


def test_amounts_are_numbers_and_days_are_days(typed: Any) -> None:
    book = dict(read_book(typed.folder("typed") / "lists.xlsx"))
    for name, columns in {"pick": ("bags", "together"), "buy": ("needed", "packs"), "check": ("line", "due")}.items():
        head, first = book[name][:2]
        for column in columns:
            at = next(n for n, cell in enumerate(head) if cell[1] == column)
            assert first[at][0] in {"n", "d"}, (name, column)
            assert Decimal(first[at][1]) > 0


def test_what_begins_as_a_formula_is_text_in_both(typed: Any) -> None:
    """Seven orders of three parts, a label each."""
    labels = dict(read_book(typed.folder("typed") / "lists.xlsx"))["labels"][1:]
    wanted = [name.strip() for name in STARTS for _ in range(3)]
    assert [(kind, value.strip()) for (_, (kind, value), *_) in labels] == [(labels[0][1][0], name) for name in wanted]
    assert {kind for row in labels for kind, _ in row[:2]} <= {"s", "inlineStr", "str"}
    for row in csv_rows(typed, "labels")[1:]:
        assert not row[0].startswith("=")
        assert not row[1].startswith(tuple("=+-@\t＝"))
