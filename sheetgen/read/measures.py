"""Measures in studio and stock files, where no names stand: a word to a quantity of the dimension wanted."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.dimension import COUNT, EXAMPLES, Dimension, told
from sheetgen.base.measure import measure
from sheetgen.base.tree import Wrong
from sheetgen.formulas import known

if TYPE_CHECKING:
    from sheetgen.base.interval import Interval
    from sheetgen.base.measure import Measure
    from sheetgen.base.place import Word
    from sheetgen.base.trouble import Troubles

FORMULAS = known.FORMULAS  # trade sizes are registered by their import


class Measures:
    """Reads measures and notes troubles."""

    def __init__(self, currency: str, troubles: Troubles) -> None:
        self.currency = currency
        self.troubles = troubles

    def quantity(self, word: Word) -> Measure | None:
        """What a word comes to, whatever it measures; None with a trouble."""
        try:
            return measure(word)
        except Wrong as wrong:
            self.troubles.add(wrong.message, word.place_of(max(0, wrong.at), wrong.width), wrong.help)
            return None

    def interval(  # noqa: PLR0913 - the bounds, by name
        self, word: Word, wanted: Dimension, *, least: float | None = None, above: float | None = None,
        most: float | None = None, name: str = "this",
    ) -> Interval | None:  # fmt: skip
        """A measure of one dimension within its bounds; None with a trouble."""
        found = self.quantity(word)
        if found is None:
            return None
        share = wanted == COUNT and most is not None and most <= 1
        if found.dimension != wanted:
            example = f"write it as {'8 %' if share else EXAMPLES[wanted]}" if wanted in EXAMPLES else ""
            what = "a share of the whole" if share else wanted
            self.troubles.add(f"{name} wants {what}, and '{word}' is {found.dimension}", word.place, example)
            return None
        low, high = found.value.low, found.value.high
        if (
            (least is not None and low < least)
            or (above is not None and low <= above)
            or (most is not None and high > most)
        ):
            ends = ((least, "{} or more"), (most, "{} or less"), (above, "more than {}"))
            bounds = [said.format(_bound(end, wanted, share)) for end, said in ends if end is not None]
            forgot = share and "%" not in word and found.value.low >= 1
            helped = f"write {word} %" if forgot else " and ".join(bounds)
            self.troubles.add(f"{name} cannot be {word}", word.place, helped)
            return None
        return found.value


def _bound(x: float, dimension: Dimension, share: bool) -> str:  # noqa: FBT001 - which of two ways to write it
    return f"{x * 100:g} %" if share else told(x, dimension)
