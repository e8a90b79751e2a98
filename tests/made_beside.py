"""Makes what the demonstration has none of and no hand writes: a list of what was sent, and a workbook as text."""

from __future__ import annotations

import csv
import json
import zlib
from typing import TYPE_CHECKING

from tests import workbooks

if TYPE_CHECKING:
    from collections.abc import Sequence
    from pathlib import Path

PART = "=== "
SENT = "order,date,design,version,choices,colourway,leave out,count,fingerprint,revision\r\n"


def sent_list(projects: Path, designs: Sequence[str]) -> str:
    """A line of every version of these designs as its ledger has it, and of each design one with other numbers."""
    lines: list[str] = []
    for name in designs:
        ledger = json.loads(next((projects / name / "ledger").glob("*.json")).read_text("utf-8"))
        kits = [(one["title"], "", one["fingerprint"]) for one in ledger["versions"].values()]
        kits.append((kits[0][0], "wrist=165 mm", kits[0][2][::-1]))
        lines += [
            f'Q-{len(lines) + n},2026-11-0{n},{name},"{title}",{chosen},,,{n},{code},{ledger["revision"]}\r\n'
            for n, (title, chosen, code) in enumerate(kits, 1)
        ]
    return "".join([SENT, *lines])


def book_text(table: Path) -> str:
    """The parts of a workbook of a table, each after its name, an element a line."""
    with table.open(encoding="utf-8", newline="") as file:
        rows: workbooks.Cells = [[word or None for word in line] for line in csv.reader(file)]
    return "".join(
        f"{PART}{name}\n{text.replace('><', '>' + chr(10) + '<')}\n" for name, text in workbooks.parts(rows).items()
    )


def packed(text: str) -> bytes:
    """The workbook of such a text; of every fourth a byte of the packet itself is another."""
    parts = dict(one.partition("\n")[::2] for one in text.split(PART)[1:])
    parts = {name: said for name, said in parts.items() if name.partition("\0")[0]}  # a part wants a name
    whole = bytearray(workbooks.packed(parts))
    chance = zlib.crc32(text.encode("utf-8", "surrogatepass"))
    if chance % 4 == 0:
        whole[chance // 4 % len(whole)] ^= 1 + chance // 7 % 255
    return bytes(whole)
