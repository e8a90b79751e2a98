"""The sheet of labels that a studio prints its bags' labels on: how many, how large, and where they begin."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class LabelGrid:
    """Labels in rows on a paper by its name; all else in mm, measured from the upper left corner of the paper."""

    across: int
    down: int
    wide: float
    tall: float
    left: float
    top: float
    gap_across: float
    gap_down: float
    paper: str

    @property
    def many(self) -> int:
        """How many labels a sheet has."""
        return self.across * self.down

    def spot(self, nth: int) -> tuple[float, float]:
        """The upper left corner of a label, counted from 0 along the rows."""
        row, column = divmod(nth, self.across)
        return self.left + column * (self.wide + self.gap_across), self.top + row * (self.tall + self.gap_down)
