"""The gestures that the steps of a version show, each scaled to stand beside its step."""

from __future__ import annotations

import functools
from contextlib import contextmanager
from typing import TYPE_CHECKING

from sheetgen.base.pen import Extent
from sheetgen.base.trouble import CannotBe, Misplaced, Trouble
from sheetgen.draw.gesture import Scene
from sheetgen.draw.gestures import gestures
from sheetgen.draw.kept import Fitted, Kept, TooLarge
from sheetgen.facts.gestures import keyed

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from sheetgen.base.pen import Pen
    from sheetgen.model.worked import WorkedVersion

WIDE, TALL = 55.0, 35.0
SCALES = (10.0, 8.0, 6.0, 5.0, 4.0, 3.0, 2.5, 2.0, 1.5, 1.0, 2 / 3, 0.5, 0.4, 1 / 3, 0.25, 0.2, 0.1)
EDGE = 0.5  # mm left round a drawing, so that no line is cut off
SHARED = 256  # drawings that are kept, from the check to the page


def gestured(version: WorkedVersion) -> dict[str, Fitted]:
    """The drawing of every gesture that a step shows, by its name and its part's."""
    wanted = sorted({one for step in version.steps for one in step.gestures})
    drawn = ((keyed(*one), _drawn(*one, scene_of(*one, version))) for one in wanted)
    return {name: drawing for name, drawing in drawn if drawing is not None}


@functools.lru_cache(maxsize=SHARED)
def _drawn(name: str, part: str, scene: Scene) -> Fitted | None:
    """At the largest scale that helps and fits the column."""
    gesture = gestures()[name]

    def draw(on: Pen, k: float) -> str:
        return gesture.draw(on, scene, k)

    with _told(name, part, scene):
        return fitted(draw, [k for k in SCALES if k <= gesture.most])


def try_gestures(version: WorkedVersion) -> None:
    """Draw each gesture that a step shows once, for what cannot be drawn is told at whatever scale. Misplaced then."""
    for name, part in {one for step in version.steps for one in step.gestures}:
        scene = scene_of(name, part, version)
        with _told(name, part, scene):
            gestures()[name].draw(Extent(), scene, 1.0)


@contextmanager
def _told(name: str, part: str, scene: Scene) -> Iterator[None]:
    """What cannot be drawn is told at the part."""
    try:
        yield
    except CannotBe as fault:
        message = f"'{name}' cannot be drawn of '{part.replace('_', ' ')}': {fault.message}"
        raise Misplaced(Trouble(message, scene.piece.places.get(""), fault.help)) from fault


def fitted(draw: Callable[[Pen, float], str], scales: list[float]) -> Fitted | None:
    """A drawing at the first scale at which it fits; None where it fits at none. CannotBe where it cannot be drawn."""
    for k in scales:
        kept = Kept((WIDE, TALL))
        try:
            says = draw(kept, k)
        except TooLarge:
            continue
        extent = kept.extent
        corner = (extent.left - EDGE, extent.top - EDGE)
        return Fitted(kept, corner, extent.width + 2 * EDGE, extent.height + 2 * EDGE, says, k == 1)
    for k in scales[-1:]:  # to its end, for what cannot be is told all the same
        draw(Extent(), k)
    return None


def scene_of(name: str, part: str, version: WorkedVersion) -> Scene:
    """What a gesture may ask: of the steps that show it, what they name and use."""
    steps = [step for step in version.steps if (name, part) in step.gestures]
    near = dict.fromkeys(one for step in steps for one in (*step.parts, *step.pictured))
    others = dict.fromkeys([*near, *version.parts])
    others.pop(part)
    uses = dict.fromkeys(item for step in steps for item in step.uses)
    return Scene(version.parts[part], tuple(version.parts[one] for one in others), tuple(uses), version.figures)
