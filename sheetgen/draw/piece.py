"""One template: the part's own drawing, its ghost, and the words under it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.base.material import Clay
from sheetgen.base.pen import Extent, Pen, Recorder
from sheetgen.base.spread import Spread
from sheetgen.draw.ghost import SIZE, WORDS, cut_marks, extent_of, fired, room_for_words
from sheetgen.draw.paper import Paper

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from sheetgen.base.figure import Size
    from sheetgen.model.drawing import Drawing
    from sheetgen.model.worked import Worked, WorkedVersion
    from sheetgen.parts.kind import Part

TITLE = 3.6
NOTE = 2.6
LINE = 3.4
LETTER = 0.5 * NOTE  # width of a letter of a note, as reckoned for its lines
NARROW, WIDE = 34, 60  # letters in a line of a note


@dataclass(frozen=True, slots=True)
class Piece:
    """One template with the room it takes: `flat` as recorded, `draw` with the words under it, `bare` without."""

    part: Part
    flat: Recorder
    draw: Callable[[Pen], None]
    bare: Callable[[Pen], None]
    title: str
    note: tuple[str, ...]
    extent: Extent
    says: str

    @property
    def clay(self) -> Clay | None:
        """The clay it is cut from, if it is cut from clay."""
        clay = getattr(self.part, "clay", None)
        return clay if isinstance(clay, Clay) else None

    @property
    def thickness(self) -> float | None:
        """What that clay is rolled to, mm."""
        thickness = getattr(self.part, "thickness", None)
        return thickness.usual if isinstance(thickness, Spread) else None

    @property
    def cut(self) -> Recorder:
        """Its cut lines alone; none if it is not a closed piece."""
        return cut_marks(self.flat)


def pieces(worked: Worked, version: WorkedVersion) -> list[Piece]:
    """The template of every flat part."""
    return [_piece(part, worked, version) for part in version.parts.values() if type(part).flat()]


def _piece(part: Part, worked: Worked, version: WorkedVersion) -> Piece:
    def size(name: str) -> Size:
        return worked.rounder.size(version.figures[f"{part.name}.{name}"])

    unit = worked.rounder.unit("mm")
    flat = Recorder()
    part.template(flat, size)
    clay = getattr(part, "clay", None)
    ghost = fired(flat, clay.shrinkage.usual) if isinstance(clay, Clay) and cut_marks(flat) != Recorder() else Recorder()
    around = Extent()
    part.template(around, size)
    title = f"{part.name.replace('_', ' ').capitalize()} ×{part.count.usual:g}"
    version_name = worked.called(version.name) if len(worked.versions) > 1 else ""
    note = part.template_note(size)
    ends = extent_of(ghost)
    if ends.width:
        wide, tall = (worked.rounder.words(x, "mm", "tenth") for x in (ends.width, ends.height))
        note = f"{note}; dotted: {WORDS} about {wide} × {tall} {unit}"
    lines = _lines(note, around.right - max(around.left, 0))
    words_at = room_for_words(flat, ghost)

    def bare(pen: Pen) -> None:
        part.template(pen, size)
        for kind, points, closed in ghost.lines:
            pen.line(points, kind, closed=closed)
        for kind, centre, width, height in ghost.ovals:
            pen.oval(centre, width, height, kind)
        if words_at:
            pen.text(words_at, WORDS, size=SIZE)

    heads = (title, f"Version: {version_name}") if version_name else (title,)

    def onto(pen: Pen) -> None:
        bare(pen)
        words_under(pen, (max(around.left, 0), around.bottom + 5), heads, lines)

    extent = Extent()
    onto(extent)
    made = {m.figure: m.label for m in part.made()}
    sizes = ", ".join(f"{label} {size(figure).words} {unit}" for figure, label in made.items())
    says = f"Template of {', '.join(heads)}: {sizes}; {note}"
    return Piece(part, flat, onto, bare, ", ".join(heads), lines, extent, says)


def words_under(pen: Pen, at: tuple[float, float], heads: Sequence[str], lines: Sequence[str]) -> float:
    """Name and note from a baseline down; returns the last baseline."""
    x, y = at
    pen.text((x, y), heads[0], size=TITLE)
    for line in (*heads[1:], *lines):
        y += LINE + (0.4 if y == at[1] else 0)
        pen.text((x, y), line, size=NOTE)
    return y


def _lines(note: str, wide: float) -> tuple[str, ...]:
    """The note in lines of a template's width."""
    most = min(WIDE, max(NARROW, int(wide / LETTER)))
    lines = [""]
    for word in note.split():
        if len(lines[-1]) + len(word) >= most and lines[-1]:
            lines.append(word)
        else:
            lines[-1] = f"{lines[-1]} {word}".strip()
    return tuple(lines)


def alone(piece: Piece) -> Drawing:
    """A template by itself, for the page on a screen."""
    pen = Paper()
    piece.draw(pen)
    e = piece.extent
    return pen.drawing((e.left - 1, e.top - 1), e.width + 2, e.height + 2, piece.says)
