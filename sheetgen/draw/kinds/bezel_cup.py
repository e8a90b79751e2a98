"""Bezel cup: its strip with the line where the ends meet, its base with the stone on it, and the cup from above."""

from __future__ import annotations

from sheetgen.base.pen import Pen
from sheetgen.base.spelling import in_a_sentence
from sheetgen.draw import views
from sheetgen.draw.bezels import walled
from sheetgen.draw.drawn import Drawn, fitting
from sheetgen.formulas.shapes import oval_grown
from sheetgen.parts.bezel_cup import APART, BezelCup, middle
from sheetgen.parts.piece import Piece


def _template(pen: Pen, piece: Piece) -> None:
    long, high, meets = piece[BezelCup.strip_cut], piece[BezelCup.wall], piece[BezelCup.strip_meets]
    across, at = piece[BezelCup.base_across], middle(piece)
    pen.line([(meets, 0), (meets, high)], "meet")
    pen.across(-9, 0, long, f"{long.words} cut", to=0)
    pen.across(-4, 0, meets, f"{meets.words} meets here", to=0)
    pen.upright(-4, 0, high, high.words, to=0)
    pen.oval(at, piece[BezelCup.stone].size.high, piece.usual(BezelCup.narrow), "thin")
    pen.cross(at)
    top = high + APART
    bottom = 2 * at[1] - top
    pen.across(bottom + 5, 0, across, across.words, to=bottom)
    if piece.has(BezelCup.base_down):
        pen.upright(-4, top, bottom, piece[BezelCup.base_down].words, to=0)


def _note(piece: Piece) -> str:
    wall = piece[BezelCup.strip]
    strip, base = in_a_sentence(wall.name), in_a_sentence((piece[BezelCup.base] or wall).name)
    return f"wall: {strip}; base: {base}; thin line: the largest stone"


def _label(piece: Piece) -> str:
    wall = piece[BezelCup.strip]
    base = in_a_sentence((piece[BezelCup.base] or wall).name)
    strip = in_a_sentence(wall.name)
    return fitting(f"wall: {strip}; base: {base}", f"wall: {strip}", f"base: {base}")


def _view(pen: Pen, piece: Piece) -> float:
    """From above, the long way upright."""
    long, narrow = piece[BezelCup.stone].size.high, piece.usual(BezelCup.narrow)
    across, grown = piece.usual(BezelCup.base_across), piece.usual(BezelCup.grown)
    for out in (grown, grown - piece.usual(BezelCup.rim)):
        pen.line([(y, across / 2 + x) for x, y in oval_grown(long, narrow, out)], "thin", closed=True)
    views.stone(pen, (0, across / 2), narrow, long)
    return across


def _side(pen: Pen, piece: Piece) -> float:
    """From the side: its stone, the wall before it, and the base."""
    base, plate = piece.usual(BezelCup.base_across), piece.usual(BezelCup.plate_thickness)
    wall, outer = piece.usual(BezelCup.wall), base / 2 - piece.usual(BezelCup.rim)
    stone = walled(piece)
    top = max(stone.tall, wall)
    edge = stone.side(stone.long / 2, 1.0)
    pen.line([(x, top + y) for x, y in [*((-x, y) for x, y in reversed(edge)), *edge]], closed=True)
    front = [(-outer, top - wall), (outer, top - wall), (outer, top), (-outer, top)]
    pen.cover([front])
    pen.line(front, closed=True)
    pen.box((-base / 2, top), base, plate)
    return top + plate


DRAWN = Drawn(BezelCup.kind, template=_template, note=_note, label=_label, view=_view, side=_side)
