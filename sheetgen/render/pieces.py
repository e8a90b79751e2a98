"""Lays out small pieces, a page each, set as tightly as each needs; what still does not fit is visibly shortened.

Names and notes are private: nothing here quotes one.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from itertools import pairwise
from typing import TYPE_CHECKING, NamedTuple

from sheetgen.base.trouble import CannotBe
from sheetgen.model.kit_cards_view import OrderHead, Piece, Pieces
from sheetgen.render.doubts import misplaced
from sheetgen.render.faceless import NO_LETTER
from sheetgen.render.seen import BACKWARDS
from sheetgen.render.shortening import clean, from_the_right, shortened

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from sheetgen.render.laid import LaidOut
    from sheetgen.render.pdf import Printer
    from sheetgen.render.pdf_pool import PdfPool
    from sheetgen.render.theme import Theme

TIGHTEST = 2  # the last step that is taken for want of room alone
NARROWEST = 4  # the last step that is taken so that a number stands on one line
ROUNDS = 60
AT_ONCE = 100  # for each page WeasyPrint goes through the styles of all others of its document
OPEN = "kit-card.html.j2"  # of which the layout may be told: nothing of an order stands on it
SIZES, ROWS = (12, 10.1), (1, 1)  # pt, and lines, of a name at the first steps
NARROW = 0.46 * 25.4 / 72  # mm a letter takes for each pt of its size, in a narrow script
NAME_ELSEWHERE, NOTE_ELSEWHERE = "name: see the order", "(see the order)"


class Box(NamedTuple):
    """The size of a piece, mm; `first` is how wide a number may be, `column` how wide all else may be."""

    wide: float
    tall: float
    first: float
    column: float


class Laid(NamedTuple):
    """A piece as it is laid out: its source, its pages there from 0, how high the last one is filled, mm; as it is set.

    It is `bare` where no type face on this machine has one of its letters: of a name or note stands that the order has
    it, and nothing of it is printed. `jars` is what is told of its layout, where it holds nothing private.
    """

    source: int
    pages: tuple[int, ...]
    high: float
    bare: bool
    shown: Piece
    jars: tuple[str, ...] = ()


Shorter = Callable[[Piece, int], Piece | None]
"""Takes so many letters off the end of a piece; None where there are no more."""


class Layout:
    """Lays out pieces by the templates of a theme; `raws` are the PDFs in which they stand."""

    def __init__(self, printer: Printer | PdfPool, theme: Theme, language: str) -> None:
        self.printer, self.theme, self.language = printer, theme, language
        self.raws: list[bytes] = []

    def each_once(
        self, template: str, wanted: Iterable[tuple[Box, Piece]], shorter: Shorter | None = None
    ) -> dict[tuple[Box, Piece], Laid]:
        """Every piece that is wanted in a box, laid out once, on one page; without `shorter` it may go on on others.

        CannotBe where a box has no room for what must stand in it.
        """
        boxes: dict[Box, dict[Piece, None]] = {}
        for box, piece in wanted:
            boxes.setdefault(box, {})[piece] = None
        return {
            (box, piece): laid
            for box, pieces in boxes.items()
            for piece, laid in zip(pieces, self._fitted(template, box, list(pieces), shorter), strict=True)
        }

    def drawings(self, svgs: Sequence[str], side: float) -> list[Laid]:
        """Drawings of our own, a page each."""
        style = f"@page {{ size: {side:g}mm {side:g}mm; margin: 0 }} body {{ margin: 0 }} svg {{ display: block }}"
        breaks = "section { break-after: page } section:last-child { break-after: auto }"
        each = "".join(f"<section>{svg}</section>" for svg in svgs)
        page = f"<html><head><style>{style} {breaks}</style></head><body>{each}</body></html>"
        [(raw, _, _)] = self.printer.each_in_pieces([page])
        self.raws.append(raw)
        return [Laid(len(self.raws) - 1, (i,), side, bare=False, shown=Piece(0)) for i in range(len(svgs))]

    def _fitted(self, template: str, box: Box, shown: list[Piece], shorter: Shorter | None) -> list[Laid]:
        """Sets each piece as tightly as it needs, and shortens it if need be; what fits is laid out no more."""
        told = f"{template}: {box.wide:.1f} × {box.tall:.1f} mm has no room for what must stand there"
        done: dict[int, Laid] = {}
        bare: set[int] = set()
        waiting = list(range(len(shown)))
        for _ in range(ROUNDS):
            found = self._lay(template, box, [shown[i] for i in waiting])
            again = []
            for i, (laid, over, lines) in zip(waiting, found, strict=True):
                if laid.bare and i not in bare:
                    bare.add(i)
                    shown[i] = _written_elsewhere(shown[i])
                    again.append(i)
                    continue
                after = shown[i] if shorter is None else _next(shown[i], over, lines, shorter)
                if after is None:
                    raise CannotBe(told, "a larger label, or a theme that says less")
                if after is shown[i]:
                    done[i] = laid._replace(bare=i in bare)
                else:
                    shown[i] = after
                    again.append(i)
            waiting = again
            if not waiting:
                return [done[i] for i in range(len(shown))]
        raise CannotBe(told, "a larger label, or a theme that says less")

    def _lay(self, template: str, box: Box, pieces: Sequence[Piece]) -> list[tuple[Laid, int, int]]:
        """Each as it is laid out, the letters beyond its page, and the lines of its number.

        CannotBe where the theme leaves out, hides or cuts off some of it.
        """
        wide, tall, first, column = (f"{mm:.4f}" for mm in box)
        batches = [tuple(pieces[at : at + AT_ONCE]) for at in range(0, len(pieces), AT_ONCE)]
        sheets = [Pieces(wide, tall, first, column, self.language, batch) for batch in batches]
        printed = self.printer.each_in_pieces([self.theme.private_page(template, sheet=sheet) for sheet in sheets])
        return [
            one for batch, found in zip(batches, printed, strict=True) for one in self._read(template, batch, *found)
        ]

    def _read(
        self, template: str, pieces: Sequence[Piece], raw: bytes, laid: LaidOut, said: Sequence[str]
    ) -> list[tuple[Laid, int, int]]:
        if not all(map(NO_LETTER.search, said)):  # not quoted: a link may be made of a name
            raise CannotBe(f"{template} could not be printed as it should", "mend the theme: its CSS, its links")
        missing = {chr(int(found[1], 16)) for line in said if (found := NO_LETTER.search(line))}
        words = {int(one.id): one.words for one in laid.marked if one.kind == "piece"}
        numbers = {int(one.id): one.words for one in laid.marked if one.kind == "number"}
        if why := next((w.unseen for each in words.values() for w in each if w.unseen not in {"", BACKWARDS}), ""):
            raise CannotBe(f"{template}: not all of a piece can be read: {why}", "mend the theme")
        if not all(words.get(i) and (one.head is None or numbers.get(i)) for i, one in enumerate(pieces)):
            raise CannotBe(f"{template}: a piece, or the number of its order, does not stand there", "mend the theme")
        starts = [min(word.page for word in words[i]) for i in range(len(pieces))]
        self.raws.append(raw)
        told = misplaced(laid) if template == OPEN else ()
        found_all = []
        for i, (start, after) in enumerate(pairwise([*starts, len(laid.pages) + 1])):
            bare = any(missing.intersection(word.text) for word in words[i])
            last = laid.pages[after - 2]
            low = max((word.y + word.h for word in words[i] if word.page == after - 1), default=0.0)
            high = max(last.full * last.h, low)  # a page does not count words that are read from the right
            own = Laid(len(self.raws) - 1, tuple(range(start - 1, after - 1)), high, bare, pieces[i])
            own = own._replace(jars=tuple(jar for page, jar in told if page - 1 in own.pages))
            over = sum(len(word.text.strip()) for word in words[i] if word.page != start)
            found_all.append((own, over, len({word.line for word in numbers.get(i, ())})))
        return found_all


def _next(piece: Piece, over: int, lines: int, shorter: Shorter) -> Piece | None:
    """The next way to set a piece; the same where it fits, None where there is no other."""
    if lines > 1 and piece.step < NARROWEST:
        return replace(piece, step=max(TIGHTEST, piece.step) + 1)
    if not over:
        return piece
    return replace(piece, step=piece.step + 1) if piece.step < TIGHTEST else shorter(piece, over)


def _written_elsewhere(piece: Piece) -> Piece:
    """A piece whose name or note has letters that no face has: where it is to be found stands in its place."""
    head = piece.head and replace(piece.head, name=NAME_ELSEWHERE if piece.head.name else "")
    return replace(piece, head=head, note=NOTE_ELSEWHERE if piece.note else "", rtl=False)


def order_head(head: OrderHead, column: float, step: int = 0) -> Piece:
    """Number and name, cleaned; a name that surely does not fit a roomier way begins with a tighter one."""
    name = " ".join(clean(head.name).split())
    while step < TIGHTEST and len(name) * NARROW * SIZES[step] > ROWS[step] * column:
        step += 1
    return Piece(step, head=OrderHead(clean(head.order), name), rtl=from_the_right(name))


def shorter_name(piece: Piece, letters: int) -> Piece | None:
    """The name gives, in the end all of it; the number is never shortened."""
    head = piece.head
    if head is None or not head.name:
        return None
    return replace(piece, head=replace(head, name=shortened(head.name, letters) or ""))
