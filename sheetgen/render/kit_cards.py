"""The kit cards and slips of a run, half a page each with a line to cut along; one that needs more takes a page.

A pile of them is cut once, at half its height: whatever is cut apart there stands wholly in one half.
"""

from __future__ import annotations

from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING, NamedTuple

from sheetgen.base.trouble import Trouble
from sheetgen.facts.paper import PAPERS
from sheetgen.model.kit_cards_view import OrderHead, Piece
from sheetgen.render.composed import Cut, Stamp, composed
from sheetgen.render.faceless import without_letter
from sheetgen.render.pieces import TIGHTEST, Box, Layout, order_head, shorter_name
from sheetgen.render.shortening import clean, from_the_right, shortened

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from sheetgen.model.cards import Card
    from sheetgen.render.pdf import Printer
    from sheetgen.render.pdf_pool import PdfPool
    from sheetgen.render.pieces import Laid
    from sheetgen.render.theme import Theme

WIDE, HALF, WHOLE = 180.0, 122.0, 247.0  # mm: a card of half a page, and of a whole one, on both papers
HEAD = 10.0  # mm: number and which kit
GAP, MARGIN = 3.0, 6.0  # mm above the line along which a note is cut off, and below it: it is given by itself
NOTE = 110.0  # mm: the most that a note may take
WHICH = 40.0  # mm: which kit it is, to the right of the number


class Cards(NamedTuple):
    """A PDF for each paper by its name, and what is to be told of them; of an order only its number."""

    pdfs: dict[str, bytes]
    troubles: tuple[Trouble, ...]


class _Card(NamedTuple):
    """The pieces of a card as they are laid out."""

    head: Laid
    kit: Laid
    body: Laid
    note: Laid | None

    @property
    def halved(self) -> bool:
        """Whether it stands on half a page, its note aside."""
        return len(self.body.pages) == 1 and HEAD + self.body.high <= HALF

    @property
    def with_note(self) -> bool:
        """Whether its note stands below it, on the same half or on its last page."""
        tall = HALF if self.halved else WHOLE
        return bool(self.note and HEAD + self.body.high + GAP + MARGIN + self.note.high <= tall)


def kit_cards_pdf(
    cards: Sequence[Card], papers: Sequence[str], theme: Theme, printer: Printer | PdfPool, language: str = "en"
) -> Cards:
    """All cards in their order, on each of the papers."""
    layout = Layout(printer, theme, language)
    heads = [(_box(HEAD, WIDE - WHICH), order_head(OrderHead(one.order, ""), WIDE)) for one in cards]
    bodies = [(_box(WHOLE - HEAD), Piece(0, card=one.kit)) for one in cards]
    notes = [(_box(NOTE), _note(clean(one.note), clean(one.order))) for one in cards]
    kits = [(Box(WHICH, HEAD, WHICH, WHICH), Piece(0, which=one.which, due=one.due)) for one in cards]
    laid_heads = layout.each_once("kit-card-head.html.j2", heads, shorter_name)
    laid_kits = layout.each_once("kit-card-which.html.j2", kits)
    laid_bodies = layout.each_once("kit-card.html.j2", bodies)
    laid_notes = layout.each_once("gift-note.html.j2", [one for one in notes if one[1].note], _shorter_note)
    laid = [
        _Card(laid_heads[head], laid_kits[kit], laid_bodies[body], laid_notes.get(note))
        for head, kit, body, note in zip(heads, kits, bodies, notes, strict=True)
    ]
    close = {nth: _closer(notes[nth]) for nth, one in enumerate(laid) if one.note and one.halved and not one.with_note}
    laid_close = layout.each_once("gift-note.html.j2", close.values(), _shorter_note)
    closer = {nth: laid[nth]._replace(note=laid_close[box]) for nth, box in close.items()}
    laid = [closer[nth] if nth in closer and closer[nth].with_note else one for nth, one in enumerate(laid)]
    bare = dict.fromkeys(card.order for card, one in zip(cards, laid, strict=True) if one.note and one.note.bare)
    troubles = [*_jars(laid_bodies.values()), *(without_letter(order, "gift note") for order in bare)]
    pdfs = {}
    for paper in papers:
        wide, tall = map(float, PAPERS[paper])
        pdfs[paper] = composed(layout.raws, _pages(laid, wide, tall), wide, tall)
    return Cards(pdfs, tuple(troubles))


def _jars(bodies: Iterable[Laid]) -> list[Trouble]:
    """What jars in the layout of a kind's card: the theme's fault, or of a name too long for its column."""
    found: dict[str, None] = {}
    for one in bodies:
        card = one.shown.card
        named = ", ".join(filter(None, (card.title, card.version))) if card else ""
        found |= dict.fromkeys(f"the kit card of {named}: {jar}" for jar in one.jars)
    return [Trouble(told, None, "a shorter name, or mend the theme", "warning") for told in found]


def _box(tall: float, first: float = WIDE) -> Box:
    return Box(WIDE, tall, first, WIDE)


def _pages(cards: Sequence[_Card], wide: float, tall: float) -> list[list[Stamp | Cut]]:
    """Two of half a page on one, each in the middle of its half, in their order.

    A note that has no room below its card takes the other half of the page: the two are never on two sheets, if the
    card is not a page itself.
    """
    left, pages, free = (wide - WIDE) / 2, list[list[Stamp | Cut]](), False
    for card in cards:
        if not card.halved:
            pages += _whole(card, left, (tall - WHOLE) / 2)
            free = False
        halves = [partial(_half, card)] if card.halved else []
        if card.note and not card.with_note:
            halves.append(partial(_alone, card.note))
            free = free and not card.halved
        for put in halves:
            if not free:
                pages.append([Cut(tall / 2)])
            pages[-1] += put(left, (tall / 2 - HALF) / 2 + (tall / 2 if free else 0))
            free = not free
    return pages


def _half(card: _Card, left: float, top: float) -> list[Stamp | Cut]:
    """A card on its half of a page, its note at the foot where it has room for it."""
    found: list[Stamp | Cut] = [*_head(card, left, top), _stamp(card.body, 0, left, top + HEAD)]
    if card.note and card.with_note:
        found += _cut_off(card.note, left, top + HALF - card.note.high)
    return found


def _alone(note: Laid, left: float, top: float) -> list[Stamp | Cut]:
    """A note that has half a page to itself."""
    return [_stamp(note, 0, left, top)]


def _whole(card: _Card, left: float, top: float) -> list[list[Stamp | Cut]]:
    """A card on as many pages as its body has, its number on each; at the foot of the last its note, if it has room."""
    pages: list[list[Stamp | Cut]] = [
        [*_head(card, left, top), _stamp(card.body, nth, left, top + HEAD)] for nth in range(len(card.body.pages))
    ]
    if card.note and card.with_note:
        pages[-1] += _cut_off(card.note, left, top + WHOLE - card.note.high)
    return pages


def _cut_off(note: Laid, left: float, top: float) -> list[Stamp | Cut]:
    """A note under the line along which it is cut off its card."""
    return [Cut(top - MARGIN), _stamp(note, 0, left, top)]


def _head(card: _Card, left: float, top: float) -> list[Stamp]:
    return [_stamp(card.head, 0, left, top), _stamp(card.kit, 0, left + WIDE - WHICH, top)]


def _stamp(laid: Laid, nth: int, x: float, y: float) -> Stamp:
    return Stamp(laid.source, laid.pages[nth], x, y)


def _note(note: str, order: str) -> Piece:
    """A note, with the number of its order above it: cut off, it is put back by it."""
    return Piece(0, note=note, head=OrderHead(order, ""), rtl=from_the_right(note))


def _closer(note: tuple[Box, Piece]) -> tuple[Box, Piece]:
    """A note set as closely as may be, to stand below its card after all."""
    return note[0], replace(note[1], step=TIGHTEST)


def _shorter_note(piece: Piece, letters: int) -> Piece | None:
    less = shortened(piece.note, letters)
    return replace(piece, note=less) if less is not None else None
