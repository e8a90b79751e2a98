"""How long the demonstration library takes, stage by stage: .ci/with --tests python tests/benchmark.py.

Seconds of processors, those of other processes too: the clock is less where several print at once, and more where the
machine has other work. Figures to compare on one machine before and after a change. No test asserts them.
"""

from __future__ import annotations

import datetime as dt
import io
import os
import random
import resource
import runpy
import sys
import tempfile
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING
from unittest import mock

import pikepdf

from sheetgen import pipeline, publishing
from sheetgen.base.packing import pack
from sheetgen.draw.templates import draw
from sheetgen.model.cards import BagLabel, Card
from sheetgen.model.kit_cards_view import KitCard, Label, OrderHead, Ticked
from sheetgen.model.labels import LabelGrid
from sheetgen.model.stack import Document, Stacked
from sheetgen.publish.stack import stack
from sheetgen.render.kit_cards import kit_cards_pdf
from sheetgen.render.kit_sheets import KitSheet, KitSheets, Printing
from sheetgen.render.labels import labels_pdf
from sheetgen.render.pdf import Printer, font_files
from sheetgen.render.theme import Theme
from sheetgen.runs import documents as documents_of_a_run
from sheetgen.runs.order_files import Wanted
from sheetgen.runs.orders import orders

if TYPE_CHECKING:
    from collections.abc import Callable

    from sheetgen.render.pdf_pool import PdfPool

ROOT = Path(__file__).parents[1]
INVENTED = runpy.run_path(str(ROOT / "tests/runs/invented_orders.py"))
ONE = "towline-bracelet"


def publish_one() -> None:
    """Every sheet of one project, into a folder that is thrown away."""
    with tempfile.TemporaryDirectory() as folder:
        publishing.publish(ROOT, Path(folder), [ONE])


KINDS, SIDES = 20, (6, 1, 2)  # kinds of kit, each with a handout, a bench card and templates of so many pages
SIDE = (
    "<div style='break-after: page'><h1>Kind {kind}, side {side}</h1><p>{words}</p>"
    "<svg xmlns='http://www.w3.org/2000/svg' width='80mm' height='40mm'><title>A ring</title>{rings}</svg></div>"
)


def kinds(printer: Printer) -> list[Document]:
    """The sheets of invented kits, each page full of words and with a drawing."""
    words = "Roll the clay to three cards and cut the disc with the round cutter of 11 mm. " * 24
    found = []
    for kind in range(KINDS):
        for sheet, sides in enumerate(SIDES):
            rings = "".join(f"<circle cx='{9 * at + 9}' cy='40' r='{kind + at + 1}' fill='none'/>" for at in range(30))
            body = "".join(SIDE.format(kind=kind, side=side, words=words, rings=rings) for side in range(sides))
            html = f"<!doctype html><html lang='en'><head><title>Kind {kind}</title></head><body>{body}</body></html>"
            found.append(Document(f"{kind} {sheet}", printer.pdf(html, str(kind)), one_sided=sheet == len(SIDES) - 1))
    return found


def stacked(many: int, documents: list[Document], face: bytes) -> bytes:
    """The stack of so many orders, kind by kind."""
    keys = [tuple((f"{kind} {sheet}", 1) for sheet in range(len(SIDES))) for kind in range(KINDS)]
    return stack(documents, [Stacked(f"Q-{at}", keys[at % KINDS]) for at in range(many)], face)


def told_of(many: int, documents: list[Document], face: bytes) -> tuple[str, float]:
    """How long a stack takes, how many pages it has, how large it is, and the most memory of this whole process."""
    seconds = best(lambda: stacked(many, documents, face), times=1)
    memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    pdf = stacked(many, documents, face)
    with pikepdf.open(io.BytesIO(pdf)) as book:
        label = f"stack {many} orders: {len(book.pages)} pages, {len(pdf) / 1e6:.1f} MB, {memory:.0f} MB used"
    return label, seconds


def labels_and_cards() -> tuple[list[BagLabel], list[Card]]:
    """Of 1,000 orders, one kit each of three bags, over 20 kinds of kit."""
    labels, cards = [], []
    row = Ticked("A clay", "12", "+ 1 to spare", "Glass stone", "2 mm")
    bare = Label(slip=False, bag="", which="", title="Buoy drops", version="", colourway="", items=())
    whole = KitCard(
        slip=False, title="Buoy drops", version="", colourway="", rows=(row,) * 7, box=(), lacking=("release balm",),
        tools=True, warned=(), foot="revision 1",
    )  # fmt: skip
    for n in range(1000):
        kind = f"version {n % 20}"
        head = OrderHead(f"Q-{n:04}", f"Ottoline Fennimore-Pettigrew {n}"[: 8 + n % 24])
        for bag in ("A clay, 1 of 3", "B stones, 2 of 3", "C metal, 3 of 3"):
            one = replace(bare, bag=bag, version=kind, items=("release balm", "alcohol") if bag[0] == "C" else ())
            labels.append(BagLabel(head, one, f"https://quillmarsh.example/buoy-drops/{n % 20}.html"))
        kit = replace(whole, version=kind)
        cards.append(Card(head.order, "kit 1 of 1", kit, "With love from us all." if n % 5 == 0 else ""))
    return labels, cards


def processors() -> float:
    """Seconds that this process and those that it has ended have kept a processor busy."""
    return sum(os.times()[:4])


def beside_their_sheets() -> None:
    """1,000 orders from their table to the folder; each kind's own sheets stand for themselves as three small PDFs."""

    def small(_kits: object, _run: object, theme: Theme, pool: PdfPool, *_like: object) -> Printing:
        page = "<!doctype html><html lang='en'><head><title>Kind</title></head><body>A sheet of it.</body></html>"
        names = ("handout", "bench card", "templates")
        each = KitSheets(tuple(KitSheet(name, "A4", pool.printer.pdf(page, name), 1) for name in names), ())
        return Printing([], (), (), theme, {}, each)

    with tempfile.TemporaryDirectory() as folder, mock.patch.object(documents_of_a_run, "sheets_of", small):
        table, build = Path(folder, "season.csv"), Path(folder, "build")
        INVENTED["write"](table, 1000)
        orders(ROOT, table, Path(folder, "private"), build, Wanted(paper="A4"), dt.date(2026, 12, 1))


def best(work: Callable[[], object], times: int = 3) -> float:
    """Seconds of processors of the quickest of a few runs."""
    found = []
    for _ in range(times):
        start = processors()
        work()
        found.append(processors() - start)
    return min(found)


def main() -> None:
    """Print a table of stages and seconds."""
    # first, while the memory is that of a printer and of nothing else
    documents, face = kinds(Printer()), font_files()["SourceSansPro-Regular.ttf"].read_bytes()
    stacks = [told_of(many, documents, face) for many in (1, 1000)]
    outcome = pipeline.work_through(ROOT)
    sheets = [(worked, version) for worked in outcome.worked for version in worked.versions.values()]
    chance = random.Random(1)  # noqa: S311 - the same pieces every time
    pieces = [(chance.uniform(5, 60), chance.uniform(5, 60)) for _ in range(200)]
    labels, cards = labels_and_cards()
    printer, theme = Printer(), Theme("plain", [])
    grid = LabelGrid(3, 8, 64, 34, 6.5, 12, 2.5, 0, "A4")
    rows = [
        *stacks,
        ("read, work and check the library", best(lambda: pipeline.work_through(ROOT))),
        (
            f"draw {len(sheets)} versions for two papers",
            best(lambda: [draw(w, v, ["A4", "Letter"]) for w, v in sheets]),
        ),
        ("pack 200 pieces", best(lambda: pack(pieces, (180, 221)))),
        ("3,000 labels of 1,000 orders, on one paper", best(lambda: labels_pdf(labels, grid, theme, printer), times=1)),
        (
            "1,000 kit cards of as many orders, on two papers",
            best(lambda: kit_cards_pdf(cards, ["A4", "Letter"], theme, printer), times=1),
        ),
        ("1,000 orders of 1 to 3 kits, but for the kinds’ own sheets", best(beside_their_sheets, times=1)),
        (f"publish {ONE}, all versions, on two papers", best(publish_one, times=1)),
    ]
    for label, seconds in rows:
        sys.stdout.write(f"{label:60} {seconds:8.3f} s of CPU\n")


if __name__ == "__main__":
    main()
