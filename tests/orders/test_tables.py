"""Tables as text: encodings, the sign between cells, quotes; and files that no person means."""

from __future__ import annotations

import csv
import io
import time
from typing import TYPE_CHECKING, Any

import pytest
from hypothesis import given
from hypothesis import strategies as some

from sheetgen.base.trouble import Troubles
from sheetgen.read.table_lines import line_rows
from sheetgen.read.tables import MOST_COLUMNS, MOST_ROWS, read_table

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

HEAD = "order,name,design,count\n"


def table(path: Path, content: bytes) -> tuple[Any, list[str]]:
    path.write_bytes(content)
    troubles = Troubles()
    return read_table(path, path.name, troubles), list(map(str, troubles))


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", "utf-32", "cp1252"])
@pytest.mark.parametrize("ends", ["\n", "\r\n", "\r"], ids=["lf", "crlf", "cr"])
def test_each_encoding_and_end_of_line_gives_the_same_cells(encoding: str, ends: str, tmp_path: Path) -> None:
    text = "order,name,design,count\nQ-1,Käthe Möwe – Tång,buoy-drops,1\n"
    found, told = table(tmp_path / "a.csv", text.replace("\n", ends).encode(encoding))
    assert told == []
    assert [row.cells for row in (found.head, *found.rows)] == [
        ("order", "name", "design", "count"),
        ("Q-1", "Käthe Möwe – Tång", "buoy-drops", "1"),
    ]


@pytest.mark.parametrize("sign", [",", ";", "\t"])
def test_the_sign_between_cells_is_that_of_the_first_line_outside_of_quotes(sign: str, tmp_path: Path) -> None:
    other = "," if sign == ";" else ";"
    head = sign.join(["order", f'"a{other}b{other}c{other}d"', "count"])
    found, told = table(tmp_path / "a.csv", f'{head}\n1{sign}x{other}y{sign}"2{sign}3"\n'.encode())
    assert told == []
    assert found.head.cells == ("order", f"a{other}b{other}c{other}d", "count")
    assert found.rows[0].cells == ("1", f"x{other}y", f"2{sign}3")


@given(
    some.lists(
        some.lists(some.text(alphabet='ab,;\t"\n =é', max_size=8), min_size=2, max_size=4), min_size=1, max_size=6
    ),
    some.sampled_from(",;\t"),
    some.sampled_from([csv.QUOTE_MINIMAL, csv.QUOTE_ALL]),
)
def test_whatever_another_program_writes_is_read_as_it_was_meant(
    rows: list[list[str]], sign: str, quoting: Any
) -> None:
    rows = [["order", "name"], *rows]
    written = io.StringIO()
    csv.writer(written, delimiter=sign, quoting=quoting, lineterminator="\n").writerows(rows)
    troubles = Troubles()
    found = [row.cells for row in line_rows(written.getvalue(), "a.csv", troubles, [])]
    meant = [tuple(cell.strip() for cell in row) for row in rows]
    assert not list(troubles)
    assert found == [row for row in meant if any(row)]


def test_each_cell_stands_where_it_is_written(tmp_path: Path) -> None:
    text = 'order,name\nQ-1,  Wren\n"Q\n2","a ""b"""\n'
    found, _ = table(tmp_path / "a.csv", text.encode())
    lines = text.split("\n")
    for row in (found.head, *found.rows):
        record = row.record(range(9))
        for column, cell in enumerate(row.cells):
            place = row.place(column, record)
            start = lines[place.line - 1][place.column - 1 :]
            assert start.startswith((cell[:1], '"'))
    assert [row.first for row in found.rows] == [2, 3]


def test_a_hidden_cell_is_dots_and_the_others_stay_in_their_columns(tmp_path: Path) -> None:
    found, _ = table(tmp_path / "a.csv", b'order,note,count\nQ-1,"with love,\nfrom us",3\n')
    record = found.rows[0].record({0, 2})
    assert [record.line(n) for n in (1, 2, 3, 4)] == ["", "Q-1,···········", "········,3", ""]


def test_a_quotation_mark_that_is_not_closed_costs_its_own_line_only(read_bytes: Callable[..., Any]) -> None:
    lines = "".join(f"Q-{n},Wren Tidewell,buoy-drops,1\n" for n in range(200))
    found = read_bytes(HEAD + 'Q-x1,"Wren,buoy-drops,1\n' + lines)
    assert len(found.orders.lines) == 200
    assert [t.place.line for t in found.troubles] == [2]
    assert found.orders.lacking == {"Q-x1"}


@pytest.mark.parametrize(
    "content",
    [
        b"\xff\xfe\x00\xd8" * 20,  # half a pair in UTF-16
        b"\xef\xbb\xbf\xff\xff",
        b"\xff\xfea",
        b"PK\x03\x04",
        b"",
        b"\xef\xbb\xbf",
        b"sep=;",
        b'"',
        b'"' * 1001,
        b",,,,,\n;;;;",
        b"\0\0\0\0",
        b"<html><table>",
        b"order,design,count\n" + b'x","' * 3000,
        b"order,design,count\n" + b'x","\n' * 20_000,
        b"order,design,count\n" + b"1," * 300_000,
        b"," * 300_000,
        b'order,design,count\n"' + b'"' * 400_000,
    ],
)  # fmt: skip
def test_a_file_that_no_person_means_is_told_and_breaks_nothing(content: bytes, read_bytes: Callable[..., Any]) -> None:
    begun = time.process_time()
    found = read_bytes(content)
    assert any(trouble.severity == "error" for trouble in found.troubles)
    assert not found.orders.lines
    assert time.process_time() - begun < 20


@given(some.binary(max_size=400))
def test_no_bytes_break_the_reader(tmp_path_factory: pytest.TempPathFactory, content: bytes) -> None:
    path = tmp_path_factory.getbasetemp() / "bytes.csv"
    table(path, content)
    table(path, b"order,design,count\n" + content)
    table(path, b"PK\x03\x04" + content)


def test_a_table_of_very_many_columns_is_told_and_not_gone_through(tmp_path: Path) -> None:
    too_many = "the first line names 400003 columns, and a table has 200 at most"
    for columns, says in ((MOST_COLUMNS, []), (400_003, [too_many])):
        found, told = table(tmp_path / "a.csv", b"order" + b",x" * (columns - 1) + b"\nQ\n")
        assert [line for line in told if says and says[0] in line] == told
        assert (found is None) == bool(says)


def test_a_table_of_too_many_lines_is_read_up_to_the_bound(tmp_path: Path) -> None:
    found, told = table(tmp_path / "a.csv", b"order\n" + b"Q\n" * (MOST_ROWS + 5))
    assert len(found.rows) == MOST_ROWS
    assert f"more than {MOST_ROWS} lines" in told[0]


def test_a_note_torn_by_a_missing_quote_is_not_shown(read_bytes: Callable[..., Any]) -> None:
    # the second line of a note, opened on a line that is dropped, stands where numbers of orders do
    found = read_bytes(HEAD.strip() + ',gift note\nQ-1,Odo,buoy-drops,1,"To my love" said\nhe, from Ida\n')
    assert len(found.troubles) >= 2
    for told in found.told:
        assert "Ida" not in told
        assert "order he" not in told
    assert found.orders.lacking <= {"Q-1"}


def test_fifty_thousand_lines_are_read_whole(read_bytes: Callable[..., Any]) -> None:
    text = "".join(f"Q-{n // 2},Wren {n // 2},tideline-band,{1 + n % 9}\n" for n in range(50_000))
    found = read_bytes(HEAD + text)
    assert len(found.orders.lines) == 50_000
    assert found.told == []
