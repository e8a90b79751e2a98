"""The drawings of each kind of part, one file a kind that is drawn; they measure and say what the worked part holds."""

from __future__ import annotations

import functools
import importlib
import pkgutil
from typing import TYPE_CHECKING

import sheetgen.draw.kinds as here
from sheetgen.base.material import Wire
from sheetgen.base.pen import Extent, Moved, Pen, Point
from sheetgen.draw.bits import Bit
from sheetgen.draw.drawn import Drawn, clay_label, clay_note
from sheetgen.draw.pens import Strokes, Turned
from sheetgen.draw.textures import texture
from sheetgen.parts.piece import Piece

if TYPE_CHECKING:
    from collections.abc import Callable

NOTHING = Drawn("")


@functools.cache
def _all() -> dict[str, Drawn]:
    modules = (importlib.import_module(f"{here.__name__}.{m.name}") for m in pkgutil.iter_modules(here.__path__))
    return {one.kind: one for module in modules if isinstance(one := getattr(module, "DRAWN", None), Drawn)}


def drawn(piece: Piece) -> Drawn:
    """How a part of its kind is drawn; nothing but its outline for a kind without a file here."""
    return _all().get(piece.kind, NOTHING)


def template(pen: Pen, piece: Piece) -> None:
    """The flat piece as it is cut, and what its kind says beside it."""
    for one in piece.flat:
        one.draw(pen)
    if (more := drawn(piece).template) is not None:
        more(pen, piece)


def note(piece: Piece) -> str:
    """What its template says to who does not see it: of clay, what it is rolled to."""
    words = drawn(piece).note
    return words(piece) if words is not None else clay_note(piece)


def label(piece: Piece) -> str:
    """What is said under its name: of clay, what it is rolled to; else which stock it is of."""
    words = drawn(piece).label
    return words(piece) if words is not None else clay_label(piece)


def view(pen: Pen, piece: Piece, turned: str = "front") -> float:
    """The finished part, the middle of its top at (0, 0); how far down it reaches, 0 for no view.

    A ring or link gives where the next part's wire lies in it. A kind that has no other side is seen from the front.
    """
    if turned == "lying":
        return _lying(pen, piece)
    seen = _seen(piece, turned)
    if seen is None:
        return 0.0
    end = seen(pen, piece)
    for run in _texture(piece, turned):
        pen.line(run, "thin")
    return end


@functools.lru_cache(maxsize=64)
def _texture(piece: Piece, turned: str) -> tuple[list[Point], ...]:
    """The lines of the texture that its outer face bears, where that is seen."""
    seen, word, outlines = _seen(piece, turned), textured(piece, turned), Strokes()
    if seen is None or not word:
        return ()
    seen(outlines, piece)
    return tuple(texture(word, outlines, turned))


def textured(piece: Piece, turned: str = "front") -> str:
    """The texture of the face that is seen of a part so turned, empty for none."""
    word = str(next(iter(piece.roles.get("texture", ())), "none"))
    return word if word != "none" and turned in drawn(piece).textured else ""


def _seen(piece: Piece, turned: str) -> Callable[[Pen, Piece], float] | None:
    """What draws a part so turned."""
    how = drawn(piece)
    return {"side": how.side, "back": how.back, "above": how.above, "sunk": how.sunk}.get(turned) or how.view


def _lying(pen: Pen, piece: Piece) -> float:
    """The front a quarter turn round."""
    own = Extent()
    view(own, piece)
    view(Turned(Moved(pen, ((own.top + own.bottom) / 2, -own.left))), piece)
    return own.width


def row(piece: Piece) -> list[Bit]:
    """What comes one after the other where the part is laid in a row; for most kinds the whole of it."""
    if (own := drawn(piece).row) is not None:
        return own(piece)
    wire = piece.playing("made of", Wire)
    reach = view(Extent(), piece)
    if wire is None:
        return [Bit(lambda pen: view(pen, piece), reach, plate=True)]
    return [Bit(lambda pen: view(pen, piece), reach - wire.thickness, wire.thickness, wire.thickness)]


def pierced(plate: Bit, hole: Piece) -> Bit:
    """A plate of a row with what is drilled in it; as it is, where that takes no ring."""
    through = drawn(hole).pierces
    return through(plate, hole) if through is not None else plate


def diagram(pen: Pen, piece: Piece, k: float) -> str:
    """How it is formed, `k` mm on paper for 1 mm of the piece; its text alternative, empty for none."""
    how = drawn(piece).diagram
    return how(pen, piece, k) if how is not None else ""


def mark(pen: Pen, piece: Piece, around: Extent) -> str:
    """What is drilled of it on its host's template, which reaches as far as `around`; what to say of it."""
    marked = drawn(piece).mark
    return marked(pen, piece, around) if marked is not None else ""
