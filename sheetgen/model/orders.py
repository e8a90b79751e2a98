"""Orders as a spreadsheet gives them: which kits go to whom. Names and notes are private, and no repr shows them."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import datetime as dt

    from sheetgen.base.place import Place, Word


@dataclass(frozen=True, slots=True)
class OrderLine:
    """One line of an order: so many kits of one version, all alike.

    `name` is that of the order, also where its line has none. `version` is a printed name, of the main version too.
    `leave_out` is what does not go into the bag; of a line with `only`, nothing else is sent and no sheet. What may
    still turn out wrong is a `Word` and knows its place; `place` is that of the order's number.
    """

    order: Word
    name: str = field(repr=False)
    design: Word
    version: Word
    count: int
    choices: tuple[tuple[Word, Word], ...]
    colourway: Word
    leave_out: tuple[Word, ...]
    only: tuple[Word, ...]
    gift_note: str = field(repr=False)
    due: dt.date | None
    place: Place

    @property
    def whose(self) -> str:
        """What a trouble of it begins with."""
        return f"order {self.order}: "

    @property
    def posted(self) -> bool:
        """Whether its kits are sent."""
        return True


@dataclass(frozen=True, slots=True)
class Orders:
    """The lines that can be made, and the numbers of the orders that lack one, since another line is in trouble.

    `asked`: lines of these of which the kit can be asked, so that all that is wrong with them is told at once.
    """

    lines: tuple[OrderLine, ...]
    lacking: frozenset[str] = frozenset()
    asked: tuple[OrderLine, ...] = ()
