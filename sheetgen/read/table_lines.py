"""The text of a CSV to its rows: which sign parts the cells, quoted cells, lines that are amiss."""

from __future__ import annotations

import re
from functools import lru_cache
from typing import TYPE_CHECKING

from sheetgen.base.place import Place
from sheetgen.base.record import Row

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.base.trouble import Troubles

SIGNS = "\t;,"  # where two are met equally often, the first of them
SAID = re.compile(r'"?sep=([\t;,|])"?', re.IGNORECASE)  # a line by which a spreadsheet program is told the sign
QUOTED = re.compile(r'"(?:[^"]+|"")*+"')
TALLEST = 50
"""Most lines of one cell: a quotation mark that is not closed costs its own line and not the rest of the file."""
MOST_BROKEN = 100
MOST_CELLS = 1_500_000
"""Of a table, and so of a line: a hundred thousand orders with all that may be said of one have fewer."""
SEEN = 20
"""Of a line with more cells, those that are looked at, so that it is known what it is a line of."""
Ends = list[tuple[int, int]]
QUOTES = "a quotation mark is opened and not closed, or text goes on after it"
QUOTES_HELP = 'close it before the next cell begins; a quotation mark inside a quoted cell is written twice, ""'


class _Broken(Exception):
    """A quoted cell that is amiss, at a character of the line; `opened`: its end may stand on a later line."""

    def __init__(self, at: int, *, opened: bool = False) -> None:
        super().__init__()
        self.at = at
        self.opened = opened


def line_rows(text: str, name: str, troubles: Troubles, dropped: list[Row]) -> Iterator[Row]:
    """The rows that hold something, in their order; each line that cannot be taken apart is told and dropped."""
    lines = text.split("\n")
    at = next((n for n, line in enumerate(lines) if line.strip()), len(lines))
    if at < len(lines) and (said := SAID.fullmatch(lines[at].strip(" "))):
        sign, at = said[1], at + 1
        head = ""
    else:
        head = re.sub(r'"(?:[^"]+|"")*+"?', "", lines[at]) if at < len(lines) else ""
        sign = max(SIGNS, key=head.count) if any(map(head.count, SIGNS)) else ","
    broken, top = 0, at
    while at < len(lines):
        line, first = lines[at], at + 1
        at += 1
        if (many := line.count(sign)) > MOST_CELLS:  # taken apart it would need more room than there may be
            begun = tuple(map(str.strip, line.split(sign, SEEN)[:SEEN]))
            dropped.append(Row(name, first, line[:1], ((0, 1),) * SEEN, begun))
            troubles.add(
                f"the line has {many + 1} cells", Place(dropped[-1].record(()), first), "is this the right file?"
            )
            if at - 1 == top:  # without the names of its columns no line can be read
                return
            continue
        if '"' not in line:
            cells = tuple(map(str.strip, line.split(sign)))
            if any(cells):
                yield Row(name, first, line, _ends(line, sign), cells)
            continue
        try:
            whole, ends, at = _over_lines(lines, first, sign)
        except _Broken as fault:
            before = line[: fault.at].split(sign)[:-1]
            dropped.append(Row(name, first, line, ((0, len(line)),), tuple(map(str.strip, before))))
            place = Place(dropped[-1].record(()), first, min(fault.at, len(line) - 1) + 1)
            troubles.add(QUOTES, place, QUOTES_HELP)
            broken += 1
            if broken == MOST_BROKEN:
                troubles.add("too many lines have quotation marks amiss: those after this one are not read", place)
                return
            continue
        cells = tuple(_value(whole, *one) for one in ends)
        if any(cells):
            yield Row(name, first, whole, tuple(ends), cells)


def _ends(line: str, sign: str) -> tuple[tuple[int, int], ...]:
    """Where each cell of a line without quotes begins and ends, the white space around it left out."""
    found, at = [], 0
    for cell in line.split(sign):
        start = at + len(cell) - len(cell.lstrip())
        found.append((start, max(start, at + len(cell.rstrip()))))
        at += len(cell) + 1
    return tuple(found)


def _over_lines(lines: Sequence[str], first: int, sign: str) -> tuple[str, Ends, int]:
    """The text of a row that begins on line `first`, its cells, and how many lines are read after it."""
    whole = lines[first - 1]
    after = first
    while True:
        try:
            return whole, _quoted(whole, sign), after
        except _Broken as fault:
            if not fault.opened:
                raise
            amiss = fault
        closing = range(after, min(first + TALLEST, len(lines)))
        upto = next((n + 1 for n in closing if '"' in lines[n]), 0)
        if not upto:
            raise amiss
        whole = "\n".join((whole, *lines[after:upto]))
        after = upto


@lru_cache(8)
def _cell(sign: str) -> re.Pattern[str]:
    """A cell with the spaces around it, in quotes or plain, and the sign after it or the end of the line."""
    sign = re.escape(sign)
    return re.compile(rf' *+(?:("(?:[^"]+|"")*+") *+|((?!")[^{sign}]*+))({sign}|\Z)')


def _quoted(text: str, sign: str) -> Ends:
    """Where each cell begins and ends, quotes included. A cell that only holds a quotation mark further on is plain."""
    cell = _cell(sign)
    found: Ends = []
    at = 0
    while True:
        one = cell.match(text, at)
        if not one:
            start = text.index('"', at)
            raise _Broken(start, opened=not QUOTED.match(text, start))
        start, end = one.span(1 if one[1] else 2)
        found.append((start, end if one[1] else start + len(one[2].rstrip())))
        if not one[3]:
            return found
        at = one.end()


def _value(text: str, start: int, end: int) -> str:
    """What a cell holds: without its quotes, and of two quotation marks one."""
    cell = text[start:end]
    return (cell[1:-1].replace('""', '"') if cell.startswith('"') else cell).strip()
