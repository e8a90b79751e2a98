"""One template: the flat piece as its kind draws it, its ghosts, and the words under it."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.base.flat import Flat, Oval
from sheetgen.base.pen import Extent
from sheetgen.draw import kinds
from sheetgen.draw.ghost import SIZE, WORDS, apart, ghost, room_for_words
from sheetgen.draw.paper import Paper
from sheetgen.draw.pens import Strokes

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from sheetgen.base.pen import Pen, Point
    from sheetgen.model.drawing import Drawing
    from sheetgen.model.worked import Worked, WorkedVersion
    from sheetgen.parts.piece import Piece

TITLE = 3.6
NOTE = 2.6
LINE = 3.4
LETTER = 0.5 * NOTE  # width of a letter of a note, as reckoned for its lines
KEPT = "\u00a0"  # a space at which no line breaks
NARROW, WIDE = 34, 60  # letters in a line of a note
FRACTION = re.compile(r"(?<=\d) (?=\d+/\d)")  # of a mixed number


@dataclass(frozen=True, slots=True)
class Template:
    """A part's template: `own` as its kind draws it, `bare` with its ghosts, `draw` with the words under it too."""

    piece: Piece
    own: Callable[[Pen], None]
    bare: Callable[[Pen], None]
    draw: Callable[[Pen], None]
    extent: Extent
    title: str
    note: tuple[str, ...]
    says: str


def templates(worked: Worked, version: WorkedVersion) -> list[Template]:
    """The template of every flat part."""
    return [_template(piece, worked, version) for piece in version.parts.values() if piece.flat]


def _template(piece: Piece, worked: Worked, version: WorkedVersion) -> Template:
    drilled, host = version.drilled_in(piece), piece.flat[0].extent

    def own(pen: Pen) -> None:
        kinds.template(pen, piece)
        for one in drilled:
            kinds.mark(pen, one, host)

    around, strokes = Extent(), Strokes()
    own(around)
    own(strokes)
    fired = _ghosts(piece)
    shown = [one for cut, one in fired if apart(cut, one)]
    words_at = [room_for_words(one, strokes.runs()) for one in shown]
    grain = next(iter(piece.roles.get("grain", ())), "none")

    def bare(pen: Pen) -> None:
        own(pen)
        if grain != "none":
            _grain_beside(pen, strokes.extent, along=grain == "along")
        for one, at in zip(shown, words_at, strict=True):
            one.draw(pen)
            if at:
                pen.text(at, WORDS, size=SIZE)

    notes = [kinds.note(piece)]
    notes += [f"{one.title.lower()} {kinds.mark(Extent(), one, host)}" for one in drilled]
    if fired:
        sizes = ", ".join(dict.fromkeys(_measured(one, piece) for _, one in fired))
        sizes += f"{KEPT}{piece.rounder.unit('mm')}"
        flat = ", if it stayed flat" if piece.reshaped else ""
        notes.append(f"{'dotted: ' if shown else ''}{WORDS} about {sizes}{flat}")
    note = "; ".join(filter(None, notes))
    heads = [f"{piece.title} ×{piece.count}"]
    heads += [f"Version: {version.title}"] if len(worked.versions) > 1 else []
    lines = _lines(note, around.right - max(around.left, 0))

    def draw(pen: Pen) -> None:
        bare(pen)
        words_under(pen, (max(around.left, 0), around.bottom + 5), heads, lines)

    extent = Extent()
    draw(extent)
    made = ", ".join(f"{one.label} {one.made.told} {one.counted}".strip() for one in piece.sizes)
    says = f"Template of {', '.join(heads)}: {made}; {note}"
    return Template(piece, own, bare, draw, extent, ", ".join(heads), lines, says)


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
    pen.text((x, y - 1.2) if along else (x + 3, y + 1), "grain")


def words_under(pen: Pen, at: Point, heads: Sequence[str], lines: Sequence[str]) -> None:
    """Name and note, from a baseline down."""
    x, y = at
    pen.text((x, y), heads[0], size=TITLE)
    for i, line in enumerate((*heads[1:], *lines)):
        pen.text((x, y + 0.4 + (i + 1) * LINE), line, size=NOTE)


def _lines(note: str, wide: float) -> tuple[str, ...]:
    """The note in lines of a template's width."""
    most = min(WIDE, max(NARROW, int(wide / LETTER)))
    lines = [""]
    for word in _kept(note).split(" "):
        if len(lines[-1]) + len(word) >= most and lines[-1]:
            lines.append(word)
        else:
            lines[-1] = f"{lines[-1]} {word}".strip()
    return tuple(lines)


def _kept(note: str) -> str:
    """The note with its signs kept beside their numbers, as units are already."""
    for loose in (" × ", " %", "Ø "):
        note = note.replace(loose, loose.replace(" ", KEPT))
    return FRACTION.sub(KEPT, note)


def alone(template: Template) -> Drawing:
    """A template by itself, for the page on a screen."""
    pen = Paper()
    template.draw(pen)
    e = template.extent
    return pen.drawing((e.left - 1, e.top - 1), e.width + 2, e.height + 2, template.says)
