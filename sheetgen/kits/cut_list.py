"""The list of what is cut: by item every way in which a length or a sheet is cut, and how many are cut so."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.base.exact import plain
from sheetgen.kits.lists import DOT, number
from sheetgen.kits.tags import tags
from sheetgen.model.sheets import Sheet

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping, Sequence
    from fractions import Fraction

    from sheetgen.kits.bought import Got
    from sheetgen.kits.cutting import Cut
    from sheetgen.kits.lying import Spread
    from sheetgen.kits.tags import Tagged
    from sheetgen.kits.taken import Bundle
    from sheetgen.model.sheets import Cell

CUT = ("item", "from", "number", "length", "unit", "pieces", "times", "left", "keep")
SIDES = " × "


@dataclass(frozen=True, slots=True)
class Pieces:
    """So many alike: their length or two sides, mm, and whose they are."""

    sides: tuple[Fraction, ...]
    whose: str
    many: int

    @property
    def bundle(self) -> Bundle:
        """The bundle that they go into."""
        return self.sides, self.whose


@dataclass(frozen=True, slots=True)
class Opened:
    """A way in which a length or sheet is cut: which is the first of them by number, and how many are cut so.

    `source` is end, spool or sheet; or why it is not known from what, and then nothing but the pieces is told. Of a
    sheet `spread` says how they lie.
    """

    source: str
    pieces: tuple[Pieces, ...]
    times: int
    first: int | None = None
    sides: tuple[Fraction, ...] = ()
    left: Fraction | None = None
    kept: bool = False
    spread: Spread | None = None


@dataclass(frozen=True, slots=True)
class Cutting:
    """All that is cut of one item."""

    got: Got
    ways: tuple[Opened, ...]

    @property
    def bundles(self) -> tuple[Pieces, ...]:
        """Every bundle, the longest pieces first, and all pieces that are cut for it."""
        many: Counter[Bundle] = Counter()
        for way in self.ways:
            for one in way.pieces:
                many[one.bundle] += one.many * way.times
        ordered = sorted(many.items(), key=lambda one: [-side for side in one[0][0]])
        return tuple(Pieces(*bundle, n) for bundle, n in ordered)


def cuttings(got: Iterable[Got]) -> tuple[Cutting, ...]:
    """Of each item that is cut every way in which it is: kept ends first, the longest pieces first."""
    found = (Cutting(one, (*_lengths(one), *_sheets(one), *_not_known(one))) for one in got)
    return tuple(one for one in found if one.ways)


def cut(cuttings: Sequence[Cutting]) -> Sheet:
    """A row for every way in which a length is cut."""
    marks = tags(cuttings)
    return Sheet("cut", CUT, tuple(row for one in cuttings for row in _rows(one, marks)))


def _rows(one: Cutting, marks: Mapping[Tagged, str]) -> Iterator[tuple[Cell, ...]]:
    for way in one.ways:
        long: Cell = number(way.sides[0]) if len(way.sides) == 1 else SIDES.join(map(plain, way.sides)) or None
        pieces = DOT.join(
            f"{piece.many} × {SIDES.join(map(plain, piece.sides))} mm, "
            f"tag {marks[one.got.taken.item.id, piece.bundle]}, {piece.whose}"
            for piece in way.pieces
        )
        left: Cell = None if way.left is None else number(way.left)
        if way.spread:
            left = SIDES.join(map(plain, way.spread.rest)) if way.spread.rest else 0
        yield (
            one.got.taken.item.id, way.source, way.first, long, "mm", pieces, way.times, left,
            "keep" if way.kept else None,
        )  # fmt: skip


def _lengths(one: Got) -> Iterator[Opened]:
    if one.plan is None:
        return
    for source, cuts in (
        ("end", [made for made in one.plan.cuts if made.bought is None]),
        ("spool", list(one.plan.spools)),
    ):
        at = 1
        for (length, pieces, left, kept), times in Counter(map(_alike, cuts)).items():
            yield Opened(source, pieces, times, at, (length,), left, kept)
            at += times


def _alike(made: Cut) -> tuple[Fraction, tuple[Pieces, ...], Fraction, bool]:
    """What two lengths have in common that are cut alike: their pieces, the longest first."""
    told = Counter(((length,), label) for length, label in made.pieces)
    return made.length, tuple(Pieces(*one, n) for one, n in told.items()), made.left, made.kept


def _sheets(one: Got) -> Iterator[Opened]:
    at = 1
    for spread, times in Counter(one.sheets).items():
        told = Counter(((lying.blank.long, lying.blank.wide), lying.blank.label) for lying in spread.each)
        pieces = tuple(Pieces(*alike, n) for alike, n in told.items())
        yield Opened("sheet", pieces, times, at, spread.sides, spread=spread)
        at += times


def _not_known(one: Got) -> Iterator[Opened]:
    """Of what stock names no length, the pieces alone."""
    if one.why:
        for wanted in one.taken.wanted:
            yield Opened(one.why, (Pieces((wanted.length,), wanted.label, 1),), wanted.many)
        for blank in one.taken.blanks:
            yield Opened(one.why, (Pieces((blank.long, blank.wide), blank.label, 1),), blank.many)
