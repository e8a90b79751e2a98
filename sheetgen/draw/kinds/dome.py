"""Dome: its disc with the holes and their circle, the clay on its ball in section, the dome face on."""

from __future__ import annotations

import math

from sheetgen.base.pen import Pen, arc
from sheetgen.draw import sketches
from sheetgen.draw.drawn import Drawn, clay_note
from sheetgen.parts.dome import Dome
from sheetgen.parts.piece import Piece
from sheetgen.parts.pierced import bored, ring


def _template(pen: Pen, piece: Piece) -> None:
    wide = piece[Dome.wet_disc]
    middle = (wide / 2, wide / 2)
    pen.across(-4, 0, wide, f"Ø {wide.words}", to=0)
    pen.cross(middle)
    if piece.has(Dome.wet_around):
        pen.circle(middle, piece[Dome.wet_around], "centre")
        for centre in ring(middle, piece[Dome.wet_around], int(piece[Dome.holes])):
            pen.cross(centre)


def _note(piece: Piece) -> str:
    """Thickness, clay and holes."""
    notes = [clay_note(piece)]
    if piece.has(Dome.wet_hole):
        notes.append(f"middle hole Ø {piece[Dome.wet_hole].told}")
    if piece.has(Dome.wet_around):
        opening, circle = piece[Dome.wet_opening], piece[Dome.wet_around]
        notes.append(f"{piece[Dome.holes].words} holes Ø {opening.told} on a circle of {circle.told}")
    return "; ".join(notes)


def _diagram(pen: Pen, piece: Piece, k: float) -> str:
    """The clay on its ball or in its cup, in section, wet, by its outside."""
    ball, disc, over = piece[Dome.ball], piece[Dome.wet_disc], piece[Dome.formed] == "over"
    wide, high, tool = piece[Dome.wet_across], piece[Dome.wet_high], "ball" if over else "cup"
    words = (wide.words, high.words, f"{tool} {ball.words}")
    sketches.dome(pen, ball, piece.usual(Dome.thickness), disc, words, k, over=over)
    return (
        f"The disc {'over' if over else 'in'} a {tool} {ball.told} across, wet: {wide.told} wide outside, "
        f"{high.told} high over all"
    )


def _view(pen: Pen, piece: Piece) -> float:
    """The dome face on, with its holes."""
    across = piece.usual(Dome.across)
    middle = (0.0, across / 2)
    pen.circle(middle, across)
    holes = bored(middle, piece[Dome.hole], piece[Dome.around], piece[Dome.opening], int(piece[Dome.holes]))
    for one in holes:
        pen.circle(one.centre, one.width)
    return across


def _side(pen: Pen, piece: Piece) -> float:
    """From the side, its crown up: the outside and the line of its rim, and the holes of the ring that face us."""
    across, rise, radius = piece.usual(Dome.across), piece.usual(Dome.rise), piece.usual(Dome.radius)
    half = math.degrees(math.asin(min(1.0, across / 2 / radius)))
    half = half if rise <= radius else 180 - half
    pen.line(arc((0.0, radius), radius, -90 - half, -90 + half, 64), closed=True)
    around, opening = piece[Dome.around], piece[Dome.opening]
    for hole in bored((0.0, 0.0), None, around, opening, int(piece[Dome.holes])):
        if hole.centre[1] > hole.width / 2:
            pen.line([(x, radius - math.sqrt(max(0.0, radius**2 - x**2 - y**2))) for x, y in hole.points], closed=True)
    return rise


def _back(pen: Pen, piece: Piece) -> float:
    """Its hollow side: the rim as two circles, and the holes."""
    across = _view(pen, piece)
    pen.circle((0.0, across / 2), across - 2 * piece.usual(Dome.fired_thickness), "thin")
    return across


DRAWN = Drawn(
    Dome.kind,
    template=_template,
    note=_note,
    diagram=_diagram,
    view=_view,
    side=_side,
    back=_back,
    textured=("front", "side"),
)
