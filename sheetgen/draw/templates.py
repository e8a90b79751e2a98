"""Templates at true size, alone and laid out on pages with a check bar in both directions."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import rectpack

from sheetgen.base.pen import Extent, Moved, Pen
from sheetgen.base.trouble import CannotBe
from sheetgen.draw.diagrams import diagrams, kiln_curves
from sheetgen.draw.finished import finished
from sheetgen.draw.paper import Paper
from sheetgen.model.drawing import Drawing, Drawings, TemplatePage

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from sheetgen.base.figure import Size
    from sheetgen.model.worked import Worked, WorkedVersion
    from sheetgen.parts.kind import Part

# The room for templates on each paper, mm: the paper less the margins, the heading and the foot of the page.
ROOMS = {"A4": (180.0, 244.0), "Letter": (185.9, 226.0)}
BAR = 100.0
BAR_ROOM = 14.0
GAP = 5.0
NOTE = 2.6
NOTE_WIDE = 46


@dataclass(frozen=True, slots=True)
class _Piece:
    """One template with the room it takes."""

    part: Part
    draw: Callable[[Pen], None]
    extent: Extent
    says: str


def draw(worked: Worked, version: WorkedVersion, papers: Sequence[str]) -> Drawings:
    """Every template of a version, and its pages for each paper."""
    pieces = [_piece(part, worked, version) for part in version.parts.values() if type(part).flat()]
    templates = {piece.part.name: _alone(piece) for piece in pieces}
    pages = {paper: tuple(_pages(pieces, paper)) for paper in papers} if pieces else {}
    return Drawings(templates, pages, diagrams(worked, version), kiln_curves(version), finished(version))


def _piece(part: Part, worked: Worked, version: WorkedVersion) -> _Piece:
    def size(name: str) -> Size:
        return worked.rounder.size(version.figures[f"{part.name}.{name}"])

    title = f"{part.name.replace('_', ' ').capitalize()} ×{part.count.usual:g}"
    note = part.template_note(size)
    flat = Extent()
    part.template(flat, size)

    def onto(pen: Pen) -> None:
        part.template(pen, size)
        y = flat.bottom + 5
        pen.text((max(flat.left, 0), y), title, size=3.6)
        for i, line in enumerate(_lines(note)):
            pen.text((max(flat.left, 0), y + 3.8 + i * 3.4), line, size=NOTE)

    extent = Extent()
    onto(extent)
    made = {m.figure: m.label for m in part.made()}
    sizes = ", ".join(f"{label} {size(figure).words} {worked.rounder.unit('mm')}" for figure, label in made.items())
    return _Piece(part, onto, extent, f"Template of {title}: {sizes}; {note}")


def _lines(note: str) -> list[str]:
    """The note in lines of a template's width."""
    lines = [""]
    for word in note.split():
        if len(lines[-1]) + len(word) > NOTE_WIDE and lines[-1]:
            lines.append(word)
        else:
            lines[-1] = f"{lines[-1]} {word}".strip()
    return lines


def _alone(piece: _Piece) -> Drawing:
    pen = Paper()
    piece.draw(pen)
    e = piece.extent
    return pen.drawing((e.left - 1, e.top - 1), e.width + 2, e.height + 2, piece.says)


def _pages(pieces: Sequence[_Piece], paper: str) -> list[TemplatePage]:
    """Shapes packed on pages beside an upright bar and above a level one; never across an edge."""
    wide, tall = ROOMS[paper]
    room = (wide - BAR_ROOM, tall - BAR_ROOM)
    for piece in pieces:
        if piece.extent.width + GAP > room[0] or piece.extent.height + GAP > room[1]:
            message = f"the template of '{piece.part.name}' is larger than a page of {paper}"
            raise CannotBe(message, f"{room[0] - GAP - 10:.0f} × {room[1] - GAP - 20:.0f} mm is the room there is")
    packer = rectpack.newPacker(rotation=False, sort_algo=rectpack.SORT_LSIDE, pack_algo=rectpack.SkylineBl)
    for i, piece in enumerate(pieces):
        packer.add_rect(round((piece.extent.width + GAP) * 100) + 1, round((piece.extent.height + GAP) * 100) + 1, i)
    for _ in pieces:
        packer.add_bin(int(room[0] * 100), int(room[1] * 100))
    packer.pack()
    pages = []
    for sheet in packer:
        pen = Paper()
        bottom = BAR + 8
        used = 0.0
        placed = []
        for rect in sheet:
            piece = pieces[rect.rid]
            x, y = rect.x / 100 + BAR_ROOM, rect.y / 100
            piece.draw(Moved(pen, (x - piece.extent.left, y - piece.extent.top)))
            bottom = max(bottom, y + piece.extent.height)
            used += piece.extent.width * piece.extent.height
            placed.append(piece)
        bars(pen, bottom + GAP)
        says = "Templates at true size with a 100 mm bar both ways. " + ". ".join(p.says for p in placed)
        drawing = pen.drawing((0, 0), wide, bottom + BAR_ROOM, says)
        pages.append(TemplatePage(paper, drawing, tuple(p.part.name for p in placed), used / (room[0] * room[1])))
    return pages


def bars(pen: Pen, level: float) -> None:
    """Two bars of 100 mm: one upright at the left, one level at height `level`, a tick every 10 mm."""
    x, top = 2.0, 2.0
    pen.line([(x, top), (x, top + BAR)], "cut")
    for i in range(11):
        pen.line([(x, top + i * 10), (x + (4 if i in {0, 5, 10} else 2), top + i * 10)], "thin")
    pen.text((x + 6.5, top + BAR / 2), "100 mm", anchor="middle", turn=-90)
    left, y = BAR_ROOM + 10, level + 5
    pen.line([(left, y), (left + BAR, y)], "cut")
    for i in range(11):
        pen.line([(left + i * 10, y), (left + i * 10, y - (4 if i in {0, 5, 10} else 2))], "thin")
    pen.text((left + BAR + 3, y), "100 mm")
