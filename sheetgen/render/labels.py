"""The labels of a run on the studio's sheet of them, at fixed positions; each piece is laid out once."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, NamedTuple

from sheetgen.base.trouble import CannotBe, Trouble
from sheetgen.facts.paper import LABEL_CODE, PAPERS
from sheetgen.model.kit_cards_view import Piece
from sheetgen.render.composed import Stamp, composed
from sheetgen.render.faceless import without_letter
from sheetgen.render.pieces import TIGHTEST, Box, Layout, order_head, shorter_name
from sheetgen.render.qr import code
from sheetgen.render.shorter_labels import shorter_label

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from sheetgen.model.cards import BagLabel
    from sheetgen.model.kit_cards_view import Label
    from sheetgen.model.labels import LabelGrid
    from sheetgen.render.pdf import Printer
    from sheetgen.render.pdf_pool import PdfPool
    from sheetgen.render.pieces import Laid
    from sheetgen.render.qr import Code
    from sheetgen.render.theme import Theme

EDGE = 1.5  # mm round the words of a label
ROOMY = 25  # mm: a label so high has its number at 17 pt, and its name on two lines where it wants them
NUMBER, ONE, TWO = 6.2, 10.3, 13.6  # mm: the number alone, with a name on one line, on two
FOOT = 0.5  # mm: under its last letters a line is blank, and what stands below may begin there
LOW, LINES = 8.6, 7.2  # mm: the number of a lower label at 12 pt and its name; two lines below them
WORDS = 24  # mm: what stands beside a code wants so much
APART, WHICH = 45, 16  # mm: a label so wide has room to say in its upper right corner which kit it is of
WIDE, LARGE = 60, 23  # mm: a label so wide has room to say it at 12 pt


class Labels(NamedTuple):
    """A PDF for one paper, and what is to be told of it; of an order only its number."""

    pdf: bytes
    troubles: tuple[Trouble, ...]


class _Put(NamedTuple):
    """Where on every label the pieces are put: the box of number and name, and how large a code is with its edge."""

    head: Box
    code: float


def labels_pdf(  # noqa: PLR0913, PLR0917 - what labels are made of, and by what
    labels: Sequence[BagLabel],
    grid: LabelGrid,
    theme: Theme,
    printer: Printer | PdfPool,
    language: str = "en",
    skip: int = 0,
) -> Labels:
    """A page for each sheet of labels; the first `skip` labels of the first sheet are gone already.

    CannotBe for a sheet of which all labels are gone, or labels with too little room.
    """
    if not 0 <= skip < grid.many:
        helped = f"0 to {grid.many - 1}: a sheet has {grid.many} labels"
        raise CannotBe(f"{skip} labels cannot be gone of a sheet that is begun", helped)
    layout = Layout(printer, theme, language)
    wanted = {url: code(url) for url in dict.fromkeys(one.url for one in labels) if url}
    codes = {url: made for url, made in wanted.items() if made is not None}
    put = _put(grid, codes.values(), apart=any(one.label.which for one in labels))
    heads = [(put.head, order_head(one.head, put.head.column, _first_step(grid))) for one in labels]
    laid = layout.each_once("label-head.html.j2", heads, shorter_name)
    tops = [EDGE + _used(laid[head], grid) for head in heads]
    bodies = [
        (_body(put, grid, top, code=bool(codes.get(one.url))), _label(one.label, grid))
        for one, top in zip(labels, tops, strict=True)
    ]
    laid_bodies = layout.each_once("label.html.j2", bodies, shorter_label)
    beside = _which(grid)
    corner, step = Box(beside, NUMBER, beside, beside), 0 if beside == LARGE else TIGHTEST
    apart = [one.label.which if beside else "" for one in labels]
    which = layout.each_once("label-which.html.j2", [(corner, Piece(step, which=one)) for one in apart if one])
    drawn = layout.drawings([made.svg for made in codes.values()], float(LABEL_CODE)) if put.code else []
    squares = dict(zip(codes, drawn, strict=bool(put.code)))
    pages: list[list[Stamp]] = []
    for nth, (one, head, body, top, kit) in enumerate(zip(labels, heads, bodies, tops, apart, strict=True), skip):
        if nth % grid.many == 0 or not pages:
            pages.append([])
        x, y = grid.spot(nth % grid.many)
        pages[-1] += [_stamp(laid[head], x + EDGE, y + EDGE), _stamp(laid_bodies[body], x + EDGE, y + top)]
        if kit:
            right = x + grid.wide - EDGE - beside
            pages[-1].append(_stamp(which[corner, Piece(step, which=kit)], right, y + EDGE))
        if one.url in squares:
            side = codes[one.url].side + codes[one.url].quiet
            pages[-1].append(_stamp(squares[one.url], x + grid.wide - side, y + grid.tall - side))
    bare = dict.fromkeys(one.head.order for one, head in zip(labels, heads, strict=True) if laid[head].bare)
    nameless = dict.fromkeys(
        one.head.order
        for one, head in zip(labels, heads, strict=True)
        if head[1].head and head[1].head.name and not (laid[head].shown.head or one.head).name
    )
    troubles = (
        *_without_code(grid, wanted, put),
        *(without_letter(order, "name") for order in bare),
        *(_nameless(order) for order in nameless),
    )
    wide, tall = map(float, PAPERS[grid.paper])
    return Labels(composed(layout.raws, pages, wide, tall), troubles)


def _put(grid: LabelGrid, codes: Iterable[Code], *, apart: bool) -> _Put:
    """Codes stand in the lower right corner, quiet edge and all, where the label has room for them and for words."""
    whole, tall = grid.wide - 2 * EDGE, TWO if grid.tall >= ROOMY else grid.tall - 2 * EDGE - LINES
    first = whole - (_which(grid) if apart else 0)
    taken = max((made.side + 2 * made.quiet for made in codes), default=0.0)
    beside = grid.wide - EDGE - taken
    if not taken or taken > grid.tall or beside < WORDS:
        return _Put(Box(whole, tall, first, whole), 0.0)
    over = grid.tall - taken >= EDGE + NUMBER  # the number goes on above the code
    return _Put(Box(whole, tall, first if over else min(first, beside), beside), taken)


def _first_step(grid: LabelGrid) -> int:
    return 0 if grid.tall >= ROOMY else TIGHTEST + 1


def _which(grid: LabelGrid) -> float:
    """How wide the corner is in which a label says which kit it is of, mm; 0 where it has none."""
    return (LARGE if grid.wide >= WIDE else WHICH) if grid.wide >= APART else 0


def _body(put: _Put, grid: LabelGrid, top: float, *, code: bool) -> Box:
    """What stands below number and name; without a code of its own it has the whole width."""
    column = put.head.column if code else put.head.wide
    return Box(column, grid.tall - EDGE - top, column, column)


def _label(label: Label, grid: LabelGrid) -> Piece:
    """Without which kit it is where that stands apart, so that there are fewer of them."""
    return Piece(0, label=replace(label, which="") if grid.wide >= APART else label)


def _used(laid: Laid, grid: LabelGrid) -> float:
    """How much of a label number and name take, of the few heights that there are."""
    tiers = (NUMBER, ONE, TWO) if grid.tall >= ROOMY else (LOW, grid.tall - 2 * EDGE - LINES)
    return next((high for high in tiers if laid.high <= high + FOOT), tiers[-1])


def _stamp(laid: Laid, x: float, y: float) -> Stamp:
    return Stamp(laid.source, laid.pages[0], x, y)


def _nameless(order: str) -> Trouble:
    told = f"order {order}: beside its number a label has no room for its name"
    return Trouble(told, None, "write it by hand, or a shorter number, or larger labels", "warning")


def _without_code(grid: LabelGrid, wanted: Mapping[str, Code | None], put: _Put) -> list[Trouble]:
    """Said once of all labels that have no code though they have an address."""
    found = []
    if any(made is None for made in wanted.values()):
        told = "the address of a page is too long for a code on a label, and none is printed"
        found.append(Trouble(told, None, "a shorter address of the studio", "warning"))
    sides = [made.side + 2 * made.quiet for made in wanted.values() if made]
    if sides and not put.code:
        told = f"no code is printed: with its blank edge it takes {max(sides):.1f} mm,"
        helped = f"labels of {max(sides) + WORDS + EDGE:.1f} × {max(sides):.1f} mm or larger"
        found.append(Trouble(f"{told} and a label is {grid.wide:g} × {grid.tall:g} mm", None, helped, "warning"))
    return found
