"""One template: the part's own drawing, its ghosts, and the words under it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.base.cuts import extent_of, outlines
from sheetgen.base.material import Clay
from sheetgen.base.pen import Extent, Recorder
from sheetgen.base.spread import Spread
from sheetgen.draw.ghost import SIZE, WORDS, apart, ghosts, room_for_words
from sheetgen.draw.paper import Paper

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from sheetgen.base.figure import Size
    from sheetgen.base.pen import Pen, Point
    from sheetgen.base.rounding import Rounder
    from sheetgen.model.drawing import Drawing
    from sheetgen.model.worked import Worked, WorkedVersion
    from sheetgen.parts.kind import Part

TITLE = 3.6
NOTE = 2.6
LINE = 3.4
LETTER = 0.5 * NOTE  # width of a letter of a note, as reckoned for its lines
KEPT = "\u00a0"  # a space at which no line breaks
NARROW, WIDE = 34, 60  # letters in a line of a note


@dataclass(frozen=True, slots=True)
class Piece:
    """One template: `own` as the part draws it, `bare` with its ghosts, `draw` with the words under it too."""

    part: Part
    own: Callable[[Pen], None]
    bare: Callable[[Pen], None]
    draw: Callable[[Pen], None]
    flat: Recorder
    extent: Extent
    title: str
    note: tuple[str, ...]
    says: str

    @property
    def name(self) -> str:
        """The part as it is named on the page."""
        return named(self.part.name)

    @property
    def clay(self) -> Clay | None:
        """The clay it is cut from, if it is cut from clay."""
        return clay_of(self.part)

    @property
    def thickness(self) -> float | None:
        """What that clay is rolled to, mm."""
        thickness = getattr(self.part, "thickness", None)
        return thickness.usual if isinstance(thickness, Spread) else None


def named(part: str) -> str:
    """A part as it is named on the page."""
    return part.replace("_", " ").capitalize()


def clay_of(part: Part) -> Clay | None:
    """The clay of a part, if it has one."""
    clay = getattr(part, "clay", None)
    return clay if isinstance(clay, Clay) else None


def pieces(worked: Worked, version: WorkedVersion) -> list[Piece]:
    """The template of every flat part."""
    return [_piece(part, worked, version) for part in version.parts.values() if type(part).flat()]


def _piece(part: Part, worked: Worked, version: WorkedVersion) -> Piece:
    unit = worked.rounder.unit("mm")

    size, drilled = worked.sizes(version, part), version.drilled_in(part)

    def own(pen: Pen) -> None:
        part.template(pen, size)
        for hole in drilled:
            hole.mark(pen, worked.sizes(version, hole), _around(part, size))

    flat, around = Recorder(), Extent()
    own(flat)
    own(around)
    clay = clay_of(part)
    fired = ghosts(flat, clay.shrinkage.usual) if clay else []
    shown = [ghost for cut, ghost in zip(outlines(flat), fired, strict=False) if apart(cut, ghost)]
    words_at = [room_for_words(flat, ghost) for ghost in shown]

    grain = str(getattr(part, "grain", "none"))

    def bare(pen: Pen) -> None:
        own(pen)
        if grain != "none":
            grain_beside(pen, extent_of(flat), along=grain == "along")
        for ghost, at in zip(shown, words_at, strict=True):
            ghost.replay(pen)
            if at:
                pen.text(at, WORDS, size=SIZE)

    note = part.template_note(size)
    for hole in drilled:
        said = hole.mark(Extent(), worked.sizes(version, hole), _around(part, size))
        note += f"; {named(hole.name).lower()} {said} {unit}"
    if fired:
        sizes = (_measured(g, worked.rounder) for g in fired)
        note += f"; {'dotted: ' if shown else ''}{WORDS} about {', '.join(dict.fromkeys(sizes))} {unit}"
        note += ", if it stayed flat" if part.reshaped else ""
    heads = [f"{named(part.name)} ×{part.count.usual:g}"]
    heads += [f"Version: {worked.called(version.name)}"] if len(worked.versions) > 1 else []
    lines = _lines(note, around.right - max(around.left, 0))

    def draw(pen: Pen) -> None:
        bare(pen)
        words_under(pen, (max(around.left, 0), around.bottom + 5), heads, lines)

    extent = Extent()
    draw(extent)
    made = ", ".join(f"{m.label} {size(m.figure).words} {unit}" for m in part.made())
    says = f"Template of {', '.join(heads)}: {made}; {note}"
    return Piece(part, own, bare, draw, flat, extent, ", ".join(heads), lines, says)


def _around(part: Part, size: Callable[[str], Size]) -> Extent:
    """How far the outline of a part reaches, or its guide, its dimensions not counted."""
    flat = Recorder()
    part.template(flat, size)
    guides = Recorder([m for m in flat.lines if m[0] == "fold"], [m for m in flat.ovals if m[0] == "fold"])
    return extent_of(next(iter(outlines(flat)), guides))


def _measured(marks: Recorder, rounder: Rounder) -> str:
    """The size of an outline in print: a round one by its diameter."""
    extent = extent_of(marks)
    wide, tall = (rounder.words(x, "mm", "tenth") for x in (extent.width, extent.height))
    return f"Ø {wide}" if marks.ovals and not marks.lines and wide == tall else f"{wide} × {tall}"


def grain_beside(pen: Pen, around: Extent, *, along: bool) -> None:
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
    """The note with its units and signs kept beside their numbers."""
    for loose in (" × ", " mm", " %", "Ø "):
        note = note.replace(loose, loose.replace(" ", KEPT))
    return note


def alone(piece: Piece) -> Drawing:
    """A template by itself, for the page on a screen."""
    pen = Paper()
    piece.draw(pen)
    e = piece.extent
    return pen.drawing((e.left - 1, e.top - 1), e.width + 2, e.height + 2, piece.says)
