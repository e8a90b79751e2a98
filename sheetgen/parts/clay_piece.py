"""What pieces cut from rolled clay share: the clay they take, and when a round cutter is as good as a knife."""

from __future__ import annotations

from sheetgen.facts.tools import CUTTER_REACH
from sheetgen.parts.figure import TakeSpec, take

# fmt: off
CLAY_AS_CUT: TakeSpec = take("clay", "count × clay_mass", each="clay_mass")


def as_good(cutter: str, wanted: str) -> str:
    """Whether a cutter is as good as the size that a knife would cut: the clay itself is off by more, and it is near.

    A cutter between both ends of the size is what the clay wants at some shrinkage that stock says it may have.
    """
    reach = f"{CUTTER_REACH:g} mm"
    return f"{cutter} ≥ {wanted}.low and {cutter} ≤ {wanted}.high and {cutter} − {wanted}.usual ≤ {reach} and {wanted}.usual − {cutter} ≤ {reach}"
