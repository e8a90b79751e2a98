"""What stands where in the view of the finished piece."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from sheetgen.base.material import Finding


TURNED = ("front", "side", "back", "lying", "above", "sunk")
"""How a part may be turned in the view of the finished piece; lying is its front, a quarter turn round.

From above it is seen as a tube is, a little of its upper face; of a ring that is sunk in what is below only half shows.
"""


@dataclass(frozen=True, slots=True)
class Laid:
    """What comes next in a row: a part or finding, one `with` another between its pieces or `on` another.

    What is `made` of a part: plait, tassel.
    """

    of: tuple[str | Finding, ...]
    how: str = ""
    made: str = ""


@dataclass(frozen=True, slots=True)
class Stood:
    """A part, finding or row in that view: mm to the right and down, from where it hangs if it hangs from another.

    `name` is what another hangs from. `row` is what comes one after the other, `closed` to an oval or led back beside
    itself.
    """

    part: str | Finding = ""
    right: float = 0.0
    down: float = 0.0
    hangs_from: str = ""
    turned: str = TURNED[0]
    row: tuple[Laid, ...] = ()
    closed: bool = False
    name: str = ""
