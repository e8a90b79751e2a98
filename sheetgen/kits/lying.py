"""How blanks lie on a sheet of metal: row by row, and what of the sheet is left in one piece."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from itertools import groupby, pairwise
from math import prod
from typing import TYPE_CHECKING

from sheetgen.base.exact import exact

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence
    from fractions import Fraction

    from sheetgen.base.packing import Placed
    from sheetgen.kits.taken import Blank

Alike = tuple[int, "Lying"]


@dataclass(frozen=True, slots=True)
class Lying:
    """A blank on its sheet: its upper left corner, and its sides as they lie, mm."""

    blank: Blank
    at: Fraction
    down: Fraction
    wide: Fraction
    high: Fraction

    @property
    def foot(self) -> Fraction:
        """How far down it goes."""
        return self.down + self.high


@dataclass(frozen=True, slots=True)
class Row:
    """Blanks side by side from the sheet's left edge; `many` such rows follow each other."""

    across: tuple[Alike, ...]
    many: int


@dataclass(frozen=True, slots=True)
class Spread:
    """One sheet as it is laid out, from the top; `cut` is lost with each cut."""

    each: tuple[Lying, ...]
    sides: tuple[Fraction, Fraction]
    cut: Fraction

    @property
    def rows(self) -> tuple[Row, ...]:
        """Its rows, those alike that follow each other told once; none where blanks do not lie in rows."""
        rows = [tuple(one) for _, one in groupby(self.each, key=lambda one: one.down)]
        if any(max(one.foot for one in above) > below[0].down for above, below in pairwise(rows)):
            return ()
        told = [tuple(_alike(row)) for row in rows]
        same = [list(one) for _, one in groupby(told, key=lambda row: [(n, _told(lying)) for n, lying in row])]
        return tuple(Row(one[0], len(one)) for one in same)

    @property
    def rest(self) -> tuple[Fraction, Fraction] | None:
        """What is left in one piece, below all blanks or beside them, whichever is larger; None where nothing is."""
        return max((one for one in (self._below, self._beside) if min(one) > 0), key=prod, default=None)

    @property
    def beside(self) -> bool:
        """Whether what is left is what lies at their right: of a strip that is narrow, its length."""
        return self.rest is not None and self.rest != self._below

    @property
    def _below(self) -> tuple[Fraction, Fraction]:
        return self.sides[0], self.sides[1] - max(one.foot for one in self.each) - self.cut

    @property
    def _beside(self) -> tuple[Fraction, Fraction]:
        return self.sides[0] - max(one.at + one.wide for one in self.each) - self.cut, self.sides[1]


def spread(each: Iterable[tuple[Blank, Placed]], sides: tuple[Fraction, Fraction], cut: Fraction) -> Spread:
    """A sheet whose blanks were laid out each with a cut at its right and its foot."""
    lying = [
        Lying(blank, exact(on.x), exact(on.y), exact(on.width) - cut, exact(on.height) - cut) for blank, on in each
    ]
    return Spread(tuple(sorted(lying, key=lambda one: (one.down, one.at))), sides, cut)


def _told(one: Lying) -> tuple[object, ...]:
    return one.wide, one.high, one.blank.long, one.blank.wide, one.blank.label


def _alike(row: Sequence[Lying]) -> Iterable[Alike]:
    first = {_told(one): one for one in reversed(row)}
    return ((n, first[told]) for told, n in Counter(map(_told, row)).items())
