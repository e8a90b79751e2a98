"""The lists of a run without orders: pick, cut and left. What is bought has a list of its own (kits/buy_list.py)."""

from __future__ import annotations

from collections import Counter
from decimal import Decimal
from fractions import Fraction
from typing import TYPE_CHECKING

from sheetgen.base.exact import plain
from sheetgen.base.material import Bead, Clay, Fibre, Stone, Wire
from sheetgen.base.material import Sheet as SheetMetal
from sheetgen.base.spelling import counted
from sheetgen.model.sheets import Sheet

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from sheetgen.base.exact import Exact
    from sheetgen.base.material import Item
    from sheetgen.kits.bought import Got
    from sheetgen.kits.cutting import Cut
    from sheetgen.kits.taken import Taken
    from sheetgen.model.sheets import Cell

STATIONS: tuple[tuple[str, tuple[type[Item], ...]], ...] = (
    ("clay", (Clay,)),
    ("wire", (Wire, SheetMetal, Fibre)),
    ("stones", (Stone, Bead)),
)
REST = "findings"
"""Where everything else is picked."""
PICK = (
    "station", "item", "name", "colour", "design", "version", "choices", "bags", "in one bag", "of it spare", "unit",
    "together",
)  # fmt: skip
CUT = ("item", "from", "number", "length", "unit", "pieces", "times", "left", "keep")
LEFT = ("item", "unit", "before", "bought", "used", "after", "ends")
PLACES = 4  # decimals of an amount that no decimal writes
DOT = " · "


def number(amount: Exact) -> int | Decimal:
    """An amount as a cell holds it: whole numbers whole."""
    exact = Fraction(amount)
    return int(exact) if exact.denominator == 1 else Decimal(plain(exact, places=PLACES).replace("−", "-"))


def station(item: Item) -> str:
    """Where a person stands who picks it."""
    return next((name for name, kinds in STATIONS if isinstance(item, kinds)), REST)


def pick(taken: Sequence[Taken]) -> Sheet:
    """By station: what goes into each kind of bag. Of a pot the whole; what is used as needed is in no bag."""
    order = [*(name for name, _ in STATIONS), REST]
    rows: list[tuple[Cell, ...]] = []
    for one in sorted(taken, key=lambda one: order.index(station(one.item))):
        item = (station(one.item), one.item.id, one.item.name, None)
        if one.way == "pot":
            rows.append((*item, None, None, None, one.bags, None, None, one.item.unit, number(one.need)))
        rows += [
            (
                *item, held.kits.design, held.kits.version.title, None, held.kits.bags, number(held.each),
                number(held.spare), held.unit, number(held.together),
            )
            for held in one.held
        ]  # fmt: skip
    return Sheet("pick", PICK, tuple(rows))


def cut(got: Sequence[Got]) -> Sheet:
    """A row for every way in which a length is cut: the first of them by number, its pieces, how many are cut so."""
    return Sheet("cut", CUT, tuple(row for one in got for row in (*_lengths(one), *_sheets(one), *_not_cut(one))))


def _lengths(one: Got) -> Iterator[tuple[Cell, ...]]:
    if one.plan is None:
        return
    for source, cuts in (
        ("end", [made for made in one.plan.cuts if made.bought is None]),
        ("spool", list(one.plan.spools)),
    ):
        at = 1
        for made, times in Counter(map(_alike, cuts)).items():
            length, pieces, left, kept = made
            yield (
                one.taken.item.id, source, at, number(length), "mm", pieces, times, number(left),
                "keep" if kept else None,
            )  # fmt: skip
            at += times


def _alike(made: Cut) -> tuple[Fraction, str, Fraction, bool]:
    """What two lengths have in common that are cut alike: the pieces in words, the longest first."""
    told = Counter(label for _, label in made.pieces)
    return made.length, DOT.join(f"{n} × {label}" for label, n in told.items()), made.left, made.kept


def _sheets(one: Got) -> Iterator[tuple[Cell, ...]]:
    at, metal = 1, one.taken.item
    if not isinstance(metal, SheetMetal):
        return
    for pieces, times in Counter(_told(Counter(f"{b.sides}, {b.label}" for b in each)) for each in one.sheets).items():
        yield metal.id, "sheet", at, f"{metal.long:g} × {metal.wide:g}", "mm", pieces, times, None, None
        at += times


def _told(labels: Counter[str]) -> str:
    return DOT.join(f"{n} × {label}" for label, n in labels.items())


def _not_cut(one: Got) -> Iterator[tuple[Cell, ...]]:
    """Of what stock names no length, the pieces alone."""
    if not one.why:
        return
    for wanted in one.taken.wanted:
        yield one.taken.item.id, one.why, None, None, "mm", f"1 × {wanted.label}", wanted.many, None, None
    for blank in one.taken.blanks:
        yield one.taken.item.id, one.why, None, None, "mm", f"1 × {blank.sides}, {blank.label}", blank.many, None, None


def left(got: Iterable[Got]) -> Sheet:
    """The drawer as it should look afterwards; of what cannot be reckoned only what was there.

    A sheet that is cut into counts as used.
    """
    rows: list[tuple[Cell, ...]] = []
    for one in got:
        head = (one.taken.item.id, one.unit, number(one.have))
        if one.why:
            rows.append((*head, None, None, None, None))
            continue
        ends = DOT.join(plain(end) for end in one.ends) or None
        if one.sheets:
            ends = f"and what is left of {counted(len(one.sheets), 'sheet')}"
        rows.append((*head, number(one.bought), number(one.used), number(one.left), ends))
    return Sheet("left", LEFT, tuple(rows))
