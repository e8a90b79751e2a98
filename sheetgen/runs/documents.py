"""The sheets of a run of orders: each kind of kit laid out once, then put together as the stack, or an order apart."""

from __future__ import annotations

from dataclasses import dataclass, field
from itertools import count
from math import ceil
from typing import TYPE_CHECKING

from sheetgen.base.spelling import slug
from sheetgen.base.trouble import CannotBe
from sheetgen.model.stack import Document, Stacked
from sheetgen.publish.apart import apart
from sheetgen.publish.letters import lacking
from sheetgen.publish.stack import stack
from sheetgen.render.number import number_drawn
from sheetgen.render.pdf import font_files
from sheetgen.runs.kit_sheets import sheets_of

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.base.place import Place
    from sheetgen.base.trouble import Troubles
    from sheetgen.kits.ordered import Order, Run
    from sheetgen.kits.taken import Kits, Taken
    from sheetgen.render.kit_sheets import Printing
    from sheetgen.render.pdf_pool import PdfPool
    from sheetgen.runs.press import Press

FACE = "SourceSansPro-Regular.ttf"
CUT_UP = ("templates",)
"""Sheets that are cut up, and so have blank backs."""
FRONT_AND_BACK = 2


@dataclass(slots=True)
class Documents:
    """The sheets of every kind of kit in a run, on one paper, and how many leaves each takes.

    A part that is sent after its kit has none.
    """

    paper: str
    of_kind: dict[int, tuple[Document, ...]] = field(default_factory=dict)
    leaves: dict[str, int] = field(default_factory=dict)

    def lay_out(self, run: Run, needs: Sequence[Taken], by: Press, troubles: Troubles) -> None:
        """Lay out each kind once, those of one design as its first; what jars in a sheet is a warning at its design.

        The first of all designs are begun together, and the others of one as soon as its first is done, so that no
        printer waits.
        """
        whole = [(at, kits) for at, kits in enumerate(run.kinds) if not kits.only]
        first: dict[str, tuple[Kits, Printing]] = {}
        for _, kits in whole:
            if kits.worked.name not in first:
                first[kits.worked.name] = (kits, sheets_of(kits, needs, by.theme, by.sheets))
        begun: list[Printing] = []
        for _, kits in whole:
            of, printing = first[kits.worked.name]
            by.progress.begun(kits.named)
            begun.append(printing if kits is of else sheets_of(kits, needs, by.theme, by.sheets, printing.done()))
        for nth, ((at, kits), printing) in enumerate(zip(whole, begun, strict=True)):
            laid = printing.done()
            by.progress.done((nth + 1) / len(whole))
            for doubt in laid.doubts:
                troubles.add(f"kit of {kits.named}: {doubt}", kits.worked.place, severity="warning")
            found = []
            for one in (one for one in laid.sheets if one.paper == self.paper):
                document = Document(f"{at}-{slug(one.sheet)}", one.pdf, one_sided=one.sheet in CUT_UP)
                self.leaves[document.key] = one.pages if document.one_sided else ceil(one.pages / FRONT_AND_BACK)
                found.append(document)
            self.of_kind[id(kits)] = tuple(found)

    def stacked(self, order: Order) -> Stacked:
        """What goes to one order, kit by kit."""
        kits = [part.kits for part in order.parts for _ in range(part.count) if not part.kits.only]
        each = [(nth, one) for nth, kind in enumerate(kits, 1) for one in self.of_kind.get(id(kind), ())]
        which = tuple(f"kit {nth} of {len(kits)}" for nth, _ in each) if len(kits) > 1 else ()
        return Stacked(order.number, tuple((one.key, 1) for _, one in each), which)

    def sheets(self, order: Order) -> int:
        """How many leaves of paper an order has in the stack."""
        return sum(self.leaves[key] for key, _ in self.stacked(order).documents)

    @property
    def every(self) -> tuple[Document, ...]:
        """The sheets of all kinds."""
        return tuple(one for each in self.of_kind.values() for one in each)


@dataclass(slots=True)
class Binder:
    """What puts the documents together; a number that no type face has is told at `place`, and its order left out."""

    documents: Documents
    pool: PdfPool
    place: Place
    troubles: Troubles

    def stack(self, orders: Sequence[Order]) -> dict[str, bytes]:
        """All orders for the printer, as one file by its name; nothing where none has a sheet."""
        each, drawn = self._ready(orders)
        if not each:
            return {}
        name = f"stack-{self.documents.paper.lower()}.pdf"
        return {name: stack(self.documents.every, each, _face(), drawn)}

    def apart(self, orders: Sequence[Order]) -> dict[str, bytes]:
        """A file for each order, to be mailed."""
        each, drawn = self._ready(orders)
        return {name: apart(self.documents.every, one, _face(), drawn) for name, one in _named(each)}

    def _ready(self, orders: Sequence[Order]) -> tuple[list[Stacked], dict[str, bytes]]:
        each = [one for order in orders if (one := self.documents.stacked(order)).documents]
        drawn: dict[str, bytes] = {}
        for number in lacking(_face(), [one.number for one in each]):
            try:
                drawn[number] = number_drawn(self.pool.printer, number)
            except CannotBe as fault:
                self.troubles.add(fault.message, self.place, fault.help)
                each = [one for one in each if one.number != number]
        return each, drawn


def _face() -> bytes:
    return font_files()[FACE].read_bytes()


def _named(each: Sequence[Stacked]) -> Iterator[tuple[str, Stacked]]:
    """A file's name for each order: its number as far as a file can be called so, and two alike are told apart."""
    slugs = [slug(one.number) for one in each]
    taken = set(slugs)
    seen: set[str] = set()
    for one, name in zip(each, slugs, strict=True):
        free = (f"{name}-{nth}" for nth in count(2) if f"{name}-{nth}" not in taken)
        told = name if name not in seen else next(free)
        taken.add(told)
        seen.add(name)
        yield f"{told}.pdf", one
