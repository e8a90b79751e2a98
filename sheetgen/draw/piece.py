"""One template: the flat piece as its kind draws it, its ghosts, and its name with what it is rolled to or cut from."""

from __future__ import annotations

import functools
from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.base.flat import Flat, Oval
from sheetgen.base.pen import Extent
from sheetgen.draw import kinds
from sheetgen.draw.drawn import MOST
from sheetgen.draw.ghost import WORDS, apart, ghost, room_for_words
from sheetgen.draw.kept import Kept
from sheetgen.draw.paper import Paper
from sheetgen.draw.pens import Strokes

if TYPE_CHECKING:
    from collections.abc import Callable

    from sheetgen.base.pen import Pen, Point
    from sheetgen.model.drawing import Drawing
    from sheetgen.model.worked import WorkedVersion
    from sheetgen.parts.piece import Piece

SHARED = 256  # templates that are kept for the next version
TITLE = 3.56  # mm high: 10.1 pt
LINE = 4.0
CLEAR = 3.0  # mm between a template and the label beside it
KEPT = "\u00a0"  # a space at which no line breaks


@dataclass(frozen=True, slots=True, eq=False)  # like parts share one, so that it is known by itself
class Template:
    """A part's template: `own` as its kind draws it, `bare` with its ghosts, `draw` with its label too, in `words`.

    The label is two lines: `title`, the part and how many; `label`, what it is rolled to, or which stock.
    """

    piece: Piece
    own: Callable[[Pen], None]
    bare: Callable[[Pen], None]
    draw: Callable[[Pen], None]
    extent: Extent
    words: tuple[str, ...]
    title: str
    label: str
    says: str
    deed: str


def templates(version: WorkedVersion) -> list[Template]:
    """The template of every flat part."""
    return [_template(piece, tuple(version.drilled_in(piece))) for piece in version.parts.values() if piece.flat]


@functools.lru_cache(maxsize=SHARED)
def _template(piece: Piece, drilled: tuple[Piece, ...]) -> Template:
    """With what is drilled in it. Versions that make a part alike share its template."""
    host = piece.flat[0].extent

    def own(pen: Pen) -> None:
        kinds.template(pen, piece)
        for one in drilled:
            kinds.mark(pen, one, host)

    drawn, strokes = Kept(), Strokes()
    own(drawn)
    drawn.again(strokes)
    fired = _ghosts(piece)
    shown = [one for cut, one in fired if apart(cut, one)]
    words_at = [room_for_words(one, strokes.runs()) for one in shown]
    grain = next(iter(piece.roles.get("grain", ())), "none")

    bare = Kept()
    drawn.again(bare)
    if grain != "none":
        _grain_beside(bare, strokes.extent, along=grain == "along")
    for one, at in zip(shown, words_at, strict=True):
        one.draw(bare)
        if at:
            bare.text(at, WORDS)
    around, title, label = bare.extent, _titled(piece), kinds.label(piece)

    def labelled(at: Point) -> Kept:
        kept = Kept()
        bare.again(kept)
        words_under(kept, at, title, label)
        return kept

    under, beside = (max(around.left, 0), around.bottom + 5), (around.right + CLEAR, (host.top + host.bottom) / 2 - 0.4)
    kept = min(map(labelled, (under, beside)), key=lambda one: one.extent.width * one.extent.height)
    says, deed = _says(piece, drilled, fired, dotted=bool(shown)), kinds.drawn(piece).deed(piece)
    return Template(piece, own, bare.again, kept.again, kept.extent, kept.words, title, label, says, deed)


def _titled(piece: Piece) -> str:
    """The part, and how many to cut, bend or mark; of one in several pieces how many they are in all."""
    count = piece.count * sum(one.times for one in piece.flat)
    tail = f", {kinds.drawn(piece).deed(piece)} {count}{' pieces' if len(piece.flat) > 1 else ''}"
    return piece.title[: MOST - len(tail)].rstrip() + tail


def _says(piece: Piece, drilled: tuple[Piece, ...], fired: list[tuple[Flat, Flat]], *, dotted: bool) -> str:
    """All of a template in words, for who does not see it."""
    notes = [kinds.note(piece)]
    notes += [f"{one.title.lower()} {kinds.mark(Extent(), one, piece.flat[0].extent)}" for one in drilled]
    if fired:
        sizes = ", ".join(dict.fromkeys(_measured(one, piece) for _, one in fired))
        sizes += f"{KEPT}{piece.rounder.unit('mm')}"
        flat = ", if it stayed flat" if piece.reshaped else ""
        notes.append(f"{'dotted: ' if dotted else ''}{WORDS} about {sizes}{flat}")
    made = ", ".join(f"{one.label} {one.made.told} {one.counted}".strip() for one in piece.sizes)
    return f"Template of {_titled(piece)}: {made}; {'; '.join(filter(None, notes))}"


def _ghosts(piece: Piece) -> list[tuple[Flat, Flat]]:
    """Each outline that is cut of clay, with what it fires to."""
    if piece.clay is None:
        return []
    cut = [one for one in piece.flat if one.line == "cut" and one.closed]
    return [(one, ghost(one, piece.clay.shrinkage.usual)) for one in cut]


def _measured(fired: Flat, piece: Piece) -> str:
    """The size of an outline in print, without its unit: a round one by its diameter."""
    wide, tall = piece.length(fired.extent.width), piece.length(fired.extent.height)
    return f"Ø {wide.words}" if isinstance(fired.outline, Oval) and wide == tall else f"{wide.words} × {tall.words}"


def _grain_beside(pen: Pen, around: Extent, *, along: bool) -> None:
    """An arrow both ways beside a template: how the texture's grain lies under it."""
    x, y = around.right + 4, around.top + 6
    reach = (5.0, 0.0) if along else (0.0, 5.0)
    start = (x, y) if along else (x + 1, y - 5)
    end = (start[0] + 2 * reach[0], start[1] + 2 * reach[1])
    pen.line([start, end], "thin")
    pen.arrow(start, (-reach[0], -reach[1]))
    pen.arrow(end, reach)
    pen.text((x, y - 1.8) if along else (x + 3, y + 1), "grain")


def words_under(pen: Pen, at: Point, title: str, label: str) -> None:
    """Both lines of a label, the first on a baseline."""
    pen.text(at, title, size=TITLE)
    if label:
        pen.text((at[0], at[1] + LINE), label)


@functools.lru_cache(maxsize=SHARED)
def alone(template: Template) -> Drawing:
    """A template by itself, for the page on a screen, which has room for its label over it and not beside it."""
    pen, e = Paper(), Extent()
    template.bare(pen)
    template.bare(e)
    return pen.drawing((e.left - 1, e.top - 1), e.width + 2, e.height + 2, template.says)
