"""What pieces cut from rolled clay share: the clay they take, the texture they bear, when a cutter is as good as a knife."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.facts.tools import CUTTER_REACH
from sheetgen.parts import field
from sheetgen.parts.figure import TakeSpec, take

if TYPE_CHECKING:
    from sheetgen.parts.field import Field

TEXTURES = ("lines across", "lines down", "waves across", "waves down", "cracks", "dots")

# fmt: off
CLAY_AS_CUT: TakeSpec = take("clay", "count × clay_mass", each="clay_mass")


def bears(*more: str) -> Field[str]:
    """The texture of its outer face, for the finished view; `more` are those that only some kinds can bear."""
    return field.one_of("the texture of its outer face, for which a sign is drawn in the finished view", "none", *TEXTURES, *more, role="texture")


def as_good(cutter: str, wanted: str) -> str:
    """Whether a cutter is as good as the size that a knife would cut: the clay itself is off by more, and it is near.

    A cutter between both ends of the size is what the clay wants at some shrinkage that stock says it may have.
    """
    reach = f"{CUTTER_REACH:g} mm"
    return f"{cutter} ≥ {wanted}.low and {cutter} ≤ {wanted}.high and {cutter} − {wanted}.usual ≤ {reach} and {wanted}.usual − {cutter} ≤ {reach}"
