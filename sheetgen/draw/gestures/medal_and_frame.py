"""A medal from its middle outwards, in section: disc in its frame, bezel on the disc, lug on the frame."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.material import Finding
from sheetgen.base.pen import arc
from sheetgen.draw.bezels import walled
from sheetgen.draw.cutaway import cut, led, solder, stroke
from sheetgen.draw.gesture import LABEL, Gesture
from sheetgen.parts.bezel_cup import BezelCup
from sheetgen.parts.bezel_strip import BezelStrip
from sheetgen.parts.metal_disc import MetalDisc
from sheetgen.parts.ring_blank import RingBlank

if TYPE_CHECKING:
    from sheetgen.base.pen import Pen
    from sheetgen.draw.gesture import Scene

CORNER = 1.0  # mm on paper: how large solder is drawn in a corner


def _draw(pen: Pen, scene: Scene, k: float) -> str:
    piece, frame, bezel = scene.piece, scene.other(RingBlank), scene.other(BezelStrip, BezelCup)
    t, r = piece[MetalDisc.sheet].thickness * k, float(piece[MetalDisc.disc]) / 2 * k
    board = 0.0
    cut(pen, [(0, -t), (r, -t), (r, 0), (0, 0)])
    pen.line([(0, -t - 9), (0, 3.0)], "centre")
    top = -t - 9.0
    far = r
    if bezel is not None:
        stone = walled(bezel)
        wall, thick = stone.wall * k, max(stone.sheet * k, 0.9)
        x = (stone.long / 2 + stone.room) * k
        cut(pen, [(x, -t), (x, -t - wall), (x + thick, -t - wall), (x + thick, -t)], apart=0.7, leans=-1)
        solder(pen, (x, -t), -CORNER, -CORNER)
        top = min(top, -t - wall - 3.0)
        led(pen, (x + thick / 2, -t - wall), (x + 1.6, top), "bezel: solder from inside")
    if frame is not None:
        wire = frame.usual(RingBlank.thick) * k
        far = r + 0.05 * k + wire
        cut(pen, arc((far - wire / 2, -wire / 2), wire / 2, 0, 360, 48)[:-1], leans=-1, apart=0.8)
        # Above and below where the round of the wire leaves the edge of the disc.
        solder(pen, (r + 0.1, -t), -CORNER * 0.9, -CORNER * 0.9)
        led(pen, (far - wire / 2, -wire * 0.15), (far - wire * 1.2, LABEL + 3.0), "frame", "end")
    lug = scene.using(Finding, "inside", "length")
    if lug is not None and lug.inside is not None:
        thin = (lug.wire or lug.inside / 4) * k
        for middle in (far + thin / 2, far + thin * 1.5 + lug.inside * k):
            cut(pen, arc((middle, -thin / 2), thin / 2, 0, 360, 40)[:-1], apart=0.8)
        for y in (-thin, 0.0):
            pen.line([(far + thin * 0.5, y), (far + thin * 1.5 + lug.inside * k, y)], "fold")
        solder(pen, (far - 0.1, -thin * 0.86), -CORNER * 0.8, -CORNER * 0.6)
        led(pen, (far + thin + lug.inside * k * 0.4, 0.0), (far + 1.0, LABEL + 3.0), "lug, flat here")
        board = far + thin * 2 + lug.inside * k
    stroke(pen, (0, 0.25), (max(board, far) + 1.0, 0.25))
    led(pen, (r * 0.25, -t / 2), (1.6, LABEL + 3.0), "disc")
    return (
        "Half of the medal in section, lying on the board: the disc in its frame, the bezel on the disc, and a lug "
        "lying flat against the frame; solder, black, runs into the corners between them"
    )


GESTURE = Gesture("medal and frame", _draw, most=3)
