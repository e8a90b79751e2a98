"""Forming diagrams, each scaled to stand beside its step."""

from __future__ import annotations

import functools
import math
from typing import TYPE_CHECKING

from sheetgen.base.pen import Extent
from sheetgen.draw import kinds
from sheetgen.draw.gestured import gestured
from sheetgen.draw.kept import NO_END, Fitted, Kept, TooLarge
from sheetgen.draw.pens import Scaled
from sheetgen.model.drawing import SCALED

if TYPE_CHECKING:
    from sheetgen.base.pen import Pen
    from sheetgen.model.drawing import Drawing
    from sheetgen.model.worked import WorkedVersion
    from sheetgen.parts.piece import Piece

WIDE, TALL, ENLARGED = 56.0, 60.0, 46.0  # mm: the column beside a step; how tall, and how tall for an enlargement
SCALES = (4.0, 3.0, 2.0, 1.5, 1.0, 2 / 3, 0.5, 0.4, 1 / 3, 0.25, 0.2, 0.1, 0.05)
NEAR = 0.01  # mm: on one middle
KEPT = 256  # drawings that are kept for the next version


def diagrams(version: WorkedVersion) -> dict[str, Drawing]:
    """The diagram of every part that a step shows, and every gesture, by their names."""
    return {name: one.drawing() for name, one in fitted_diagrams(version).items()}


def fitted_diagrams(version: WorkedVersion) -> dict[str, Fitted]:
    """The same before they are put on paper."""
    wanted = sorted({name for step in version.steps for name in step.diagrams if name in version.parts})
    drawn = ((name, _diagram(part, _inside(part, version))) for name in wanted for part in (version.parts[name],))
    return {name: drawing for name, drawing in drawn if drawing is not None} | gestured(version)


def _inside(part: Piece, version: WorkedVersion) -> tuple[Piece, ...]:
    """What is drilled in the middle of a part and is drawn with it."""
    if not kinds.drawn(part).centred:
        return ()
    return tuple(one for one in version.drilled_in(part) if _in_the_middle(one, part))


@functools.lru_cache(maxsize=KEPT)
def _diagram(part: Piece, inside: tuple[Piece, ...]) -> Fitted | None:
    """At the largest plain scale that fits the column; true size is preferred to a larger one that is not needed.

    Versions that make a part alike share its drawing.
    """

    def mark(one: Piece, on: Pen) -> str:
        return f"{one.title.lower()} {kinds.mark(on, one, Extent(0, 0, 0, 0))}"

    def draw(on: Pen, k: float) -> str:
        said = kinds.diagram(on, part, k)
        return ", ".join((said, *(mark(one, Scaled(on, k)) for one in inside))) if said else ""

    for k in SCALES:
        kept = Kept(_most(k))
        try:
            says = draw(kept, k)
        except TooLarge:
            continue
        if not says:
            return None
        kept.most, extent = NO_END, kept.extent
        for words in (mark(one, Extent()) for one in inside):
            kept.text(((extent.left + extent.right) / 2, extent.bottom + 4.2), words, anchor="middle")
        corner, wide, tall = (extent.left - 0.5, extent.top - 0.5), max(extent.width, 22.0) + 1, extent.height + 6
        kept.text((extent.left, extent.bottom + 4.2), scale_words(k))
        return Fitted(kept, corner, wide, tall, f"{says}{SCALED}{scale_words(k)}", true=True)
    return None


def fits(extent: Extent, k: float) -> bool:
    """Whether a diagram at a scale stands beside its step, with its scale under it.

    An enlargement that made the step taller than its words would cost more than it shows.
    """
    wide, tall = _most(k)
    return extent.width <= wide and extent.height <= tall


def _most(k: float) -> tuple[float, float]:
    return WIDE, (ENLARGED if k > 1 else TALL) - 4


def scale_words(k: float) -> str:
    """A scale as a technical drawing names it (ISO 5455: enlargement X : 1, reduction 1 : X)."""
    if k == 1:
        return "scale 1 : 1"
    return f"scale {k:g} : 1" if k > 1 else f"scale 1 : {round(1 / k, 1):g}"


def _in_the_middle(hole: Piece, host: Piece) -> bool:
    """Whether a hole or seat stands in the middle of its host, and not beside an edge."""
    around = host.flat[0].extent
    middle = ((around.left + around.right) / 2, (around.top + around.bottom) / 2)
    return all(math.dist(one.centre, middle) < NEAR for one in hole.drilled)
