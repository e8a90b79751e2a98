"""A tassel: cords folded in the eye of a stem and bound close under it, then drawn up into the cap, in section."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.pen import arc
from sheetgen.draw.cutaway import cut, laid, led, torn
from sheetgen.draw.gesture import Gesture, side_by_side
from sheetgen.parts.bent_wire import BentWire
from sheetgen.parts.bundle import CordBundle

if TYPE_CHECKING:
    from sheetgen.base.pen import Pen
    from sheetgen.draw.gesture import Scene

SHELL = 0.5  # mm: how thick the wall of a cap is drawn, of which stock says only the inside
SHOWN = 5  # cords that are drawn side by side
TAIL = 3.0  # mm of cord drawn under the binding


def _bundle(pen: Pen, across: float, levels: tuple[float, float, float], turns: int) -> None:
    """Cords over the lower wire of an eye whose middle is (0, 0): bound between two levels, drawn down to a third."""
    bound, under, end = levels
    w, fine = across / SHOWN, (under - bound) / turns
    for i in range(SHOWN):
        x = (i - (SHOWN - 1) / 2) * w
        run = [(x * 0.62, 0.0), (x * 0.9, bound * 0.6), (x, bound), (x, under), (x * 1.12, end)]
        laid(pen, run, w, begins=False, ends=False)
    torn(pen, (0, end), across * 1.25)
    pen.line(arc((0, 0), across * 0.31, 180, 360, 24))
    half = (across + fine) / 2
    for i in range(turns):
        y = bound + (i + 0.5) * fine
        laid(pen, [(-half, y), (half, y)], fine)


def _draw(pen: Pen, scene: Scene, k: float) -> str:
    piece, stem = scene.piece, scene.other(BentWire)
    cap, across = piece[CordBundle.cap], piece.usual(CordBundle.across) * k
    thread = piece[CordBundle.thread]
    turns, fine = int(piece[CordBundle.turns]), (thread.thickness if thread is not None else 0.5) * k
    d = (stem[BentWire.wire].thickness if stem is not None else 1.0) * k
    eye = (stem[BentWire.form][0].size.usual if stem is not None else 4.0) * k
    r = (eye + d) / 2
    inside, deep = ((cap.inside or 8.0) * k, (cap.depth or 10.0) * k) if cap is not None else (across * 1.3, 3 * eye)
    bound = r + d * 0.5 + 0.2 * d
    under = bound + turns * fine
    end = under + TAIL * k

    def eye_of_stem(on: Pen, up: float, *, loop: bool) -> None:
        """The eye with its cords over its lower wire, the stem standing over it."""
        ring = arc((0, 0), r, -90, 270, 64)
        laid(on, ring, d)
        laid(on, [(0.0, -r - d * 0.2), (0.0, up)], d, begins=False, ends=not loop)

    def bound_up(on: Pen) -> None:
        eye_of_stem(on, -r - 4.5 * d, loop=False)
        _bundle(on, across, (bound, under, end), turns)

    def drawn_up(on: Pen) -> None:
        """The cap in section over it: eye at its top, binding hidden."""
        top = -r - d / 2
        half, shell = inside / 2, SHELL * k
        eye_of_stem(on, top - shell - d * 1.2, loop=True)
        _bundle(on, across, (bound, under, end), turns)
        low = top + deep
        out, deep_in, neck = half + shell, top + half * 0.5, d * 0.62
        outer = [(neck, top - shell), (half * 0.7, top - shell), (out, deep_in), (out, low)]
        inner = [(half, low), (half, deep_in), (half * 0.66, top), (neck, top)]
        for way in (-1, 1):
            cut(on, [(way * x, y) for x, y in (*outer, *inner)], apart=0.7, leans=way)
        jaw = (stem[BentWire.form][-1].size.usual if stem is not None else 3.0) * k
        rr = (jaw + d) / 2
        laid(on, arc((0, top - shell - d * 0.8 - rr), rr, 90 + 20, 90 + 360 - 8, 48), d, begins=False)
        led(on, (half + shell, low - 2), (half + shell + 1.6, low + 2.5), "cap")
        led(on, (half * 0.4, under - fine), (half + shell + 1.6, low - 2.2), "binding")

    side_by_side(pen, [(bound_up, ["1 bind"]), (drawn_up, ["2 draw up, loop"])], gap=3.0)
    return (
        "A tassel in two moves: the cords lie by their middles in the eye of the stem and are bound close under it; "
        "then the stem is drawn through the top of the cap, in section, until the eye stops there and the binding is "
        "hidden, and a loop is turned over the cap"
    )


GESTURE = Gesture("tassel", _draw, most=3)
