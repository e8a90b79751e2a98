"""A small library whose designs are ordered in the tests, what a table of orders comes to, and how it is looked at."""

from __future__ import annotations

import csv
import io
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any, NamedTuple

import pdfplumber
import pytest
from click.testing import CliRunner

from sheetgen.cli import main
from sheetgen.render.lists import Printed

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator
    from pathlib import Path

HEAD = "order,name,design,version,count,choices,colourway,leave out,only,gift note,due\n"
Rows = list[dict[str, str]]

STUDIO = """\
address: https://testbench.example/sheets/
labels: {across: 3, down: 8, size: 64 × 34 mm, left: 6.5 mm, top: 12 mm, gap across: 2.5 mm, gap down: 0 mm, paper: A4}
"""
SMOKE = """\
  glass-2-smoke:
    name: Glass stone, 2 mm, smoke
    size: 1.95-2 mm
    height: 1.5 mm
    kiln: no
    allowance: 5 %
    pack: 40
    price: 9 EUR
    sources:
      size: invented
"""
PACKS = {
    "    thickness: 16 awg\n": "    pack: 1 m\n    price: 3.20 EUR\n",
    "    name: Ear wire\n": "    pack: 10\n    price: 2.40 EUR\n    spares: 1 per 10\n",
    "    name: Glass stone, 2 mm\n": "    pack: 72\n    price: 6.50 EUR\n",
    "    name: Test epoxy\n": "    price: 5 EUR\n    given out: sealed\n",
    "    name: Roller\n": "    pack: 1\n    price: 4 EUR\n",
}
KIT = """\
main version: Long
kit:
  bags: {A clay: clay, B stones: stone, C metal: ear-wire, D glue: epoxy}
  in the box: [roller]
colourways:
  of: stone
  grey sea: "3 glass-2 : 1 glass-2-smoke"
versions:
  - {name: Short, height: 22 mm}
"""
BAND = """\
title: Tideline band
revision: 1
date: 2026-01-10
summary: A plain band.
makes: 1 ring
level: some practice
main version: US 7
choices: {clay: silver, size: US 7}
parts:
  band: {kind: ring band, clay: clay, size: size, width: 5 mm, thickness: 9 cards}
checks:
  - {need: band.fired_inside <= 20 mm, say: No mandrel of ours is so thick.}
versions:
  - {name: US 5, size: US 5}
  - {name: US 6, size: US 6}
  - {name: US 8, size: US 8}
steps:
  - {title: Cut, parts: [band], uses: [clay, roller, knife], minutes: 20 min, text: "Cut {{ band.wet_width }} wide."}
  - {title: Dry, wait: drying, does: [test]}
  - {title: Fire, firing: clay, uses: [firing-box, carbon]}
"""
CHAIN = 'main version: Silver, long\nversions:\n  - name: "Silver, short"\n'


class Told(NamedTuple):
    """How a command ended, and all that it said."""

    code: int
    said: str


@dataclass(frozen=True)
class Bench:
    """A library, its private folder, and the orders of both."""

    library: Any
    private: Path

    def orders(self, table: str | Path, *words: str) -> Told:
        """The command, by a table that is there or lines under the usual head."""
        if isinstance(table, str):
            path = self.library.root / "season.csv"
            path.write_text(HEAD + table, "utf-8")
        else:
            path = table
        given = ["--library", str(self.library.root), "--private", str(self.private), *words]
        done = CliRunner().invoke(main, ["orders", str(path), *given])
        if done.exception and not isinstance(done.exception, SystemExit):
            raise done.exception
        return Told(done.exit_code, done.output)

    def into(self, other: Path) -> Bench:
        """The same library with another private folder."""
        return replace(self, private=other)

    def folder(self, table: str = "season") -> Path:
        return self.private / "orders" / table

    def rows(self, name: str, table: str = "season") -> Rows:
        return read_rows(self.folder(table) / f"{name}.csv")

    def files(self, table: str = "season") -> set[str]:
        """What a run wrote."""
        return {path.name for path in self.folder(table).glob("*") if path.is_file()}

    @property
    def sent(self) -> Rows:
        path = self.private / "sent.csv"
        return read_rows(path) if path.exists() else []


def read_rows(path: Path) -> Rows:
    return list(csv.DictReader(io.StringIO(path.read_text("utf-8-sig"), newline="")))


def pages(path: Path) -> list[str]:
    """What stands on each page of a PDF."""
    with pdfplumber.open(path) as book:
        return [page.extract_text() or "" for page in book.pages]


@pytest.fixture(scope="session")
def look() -> Callable[[Path], list[str]]:
    return pages


@pytest.fixture(scope="session", name="rows")
def reading() -> Callable[[Path], Rows]:
    return read_rows


@pytest.fixture(scope="session")
def makes_bench(libraries: Any) -> Callable[[Path], Bench]:
    """A small library of three designs that are ordered, and a fourth; everything has a pack and a price."""

    def made(root: Path) -> Bench:
        library = libraries.make(root, {name: libraries.FILES[name] for name in BARE})
        library.write("studio.yaml", libraries.STUDIO + STUDIO)
        library.change("stock/others.yaml", "findings:\n", SMOKE + "findings:\n")
        for name, pack in PACKS.items():
            library.change("stock/others.yaml", name, name + pack)
        silver = "    name: Test silver\n"
        library.change("stock/clays.yaml", silver, f"{silver}    pack: 25 g\n    price: 38 EUR\n")
        drops = libraries.DROPS.replace("Little", "Buoy").replace("versions:\n  - name: Long\n    height: 30 mm\n", KIT)
        drops = drops.replace("  height: 22 mm\n", "  height: 30 mm\n")
        library.write("buoy-drops/project.yaml", drops)
        library.write("buoy-drops/finished.svg", libraries.PICTURE)
        library.write("tideline-band/project.yaml", BAND)
        library.write("towline-bracelet/project.yaml", libraries.LINK.replace("Wire link", "Towline bracelet") + CHAIN)
        library.write("shingle-keeper/project.yaml", libraries.PENDANT.replace("Round pendant", "Shingle keeper"))
        return Bench(library, root / "private")

    return made


BARE = ("stock/clays.yaml", "stock/others.yaml")


@pytest.fixture
def bench(tmp_path: Path, makes_bench: Callable[[Path], Bench]) -> Bench:
    return makes_bench(tmp_path)


@pytest.fixture
def no_paper() -> Iterator[None]:
    """Lists without their PDFs, where a test asks what stands in them and not how they are printed."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("sheetgen.runs.press.on_paper", lambda *_: lambda: Printed({}, {}, []))
        yield


@pytest.fixture(scope="module", name="without_paper")
def no_paper_of_a_module() -> Iterator[None]:
    """The same for all tests of a module."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("sheetgen.runs.press.on_paper", lambda *_: lambda: Printed({}, {}, []))
        yield
