"""What is cut for the bags of a run: lengths of wire and cord, pieces side by side on a roll, blanks of sheet."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from math import ceil
from typing import TYPE_CHECKING

from sheetgen.base.exact import exact
from sheetgen.base.interval import GRAIN
from sheetgen.base.material import Consumable
from sheetgen.base.printed import NBSP
from sheetgen.base.rounding import up_for_buying
from sheetgen.kits import told
from sheetgen.kits.bag import bag
from sheetgen.kits.cutting import Wanted
from sheetgen.kits.kit_lines import place_of
from sheetgen.kits.taken import Blank, Held, Kits, Taken

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from sheetgen.base.material import Item
    from sheetgen.base.rounding import Rounder
    from sheetgen.kits.taken import Bundle
    from sheetgen.model.worked import MaterialLine


def lengths(item: Item, lines: Sequence[tuple[Kits, MaterialLine]], bags: int) -> Taken:
    """One length for each bag, from which its maker cuts; off a roll with a width, pieces that lie side by side."""
    held: list[Held] = []
    wanted: list[Wanted] = []
    pieces: list[Blank] = []
    for kits, line in lines:
        one = bag(kits, line)
        if (rolled := _off_roll(kits, line, one)) is None:
            wanted.append(Wanted(one.each, kits.bags, _whose(kits, item)))
            held.append(replace(one, bundle=((one.each,), wanted[-1].label)))
            continue
        pieces += rolled
        held += [_piece(kits, "piece", one) for one in rolled]
    rows = _rows(item, pieces, lines[0][0].rounder)
    wanted += rows.values()
    held = [replace(one, bundle=_strip(rows[one.sides])) if one.sides else one for one in held]
    return Taken(
        item, "cut", sum((w.length * w.many for w in wanted), Fraction(0)), tuple(held), tuple(wanted), bags=bags
    )


def blanks(item: Item, lines: Sequence[tuple[Kits, MaterialLine]], bags: int) -> Taken:
    """Sheet by its blanks, each of the size that is printed."""
    held, found = [], []
    for kits, line in lines:
        for many, long, wide in line.blanks:
            sides = (exact(float(kits.rounder.length(side, "bench up"))) for side in (long, wide))
            length, width = sides
            found.append(Blank(length, width, many * kits.bags, _whose(kits, item)))
            held.append(_piece(kits, "blank", found[-1]))
    area = sum((one.long * one.wide * one.many for one in found), Fraction(0))
    return Taken(item, "blanks", area, tuple(held), blanks=tuple(found), bags=bags)


def _piece(kits: Kits, called: str, of: Blank) -> Held:
    """What one bag holds of the pieces of one size."""
    sides, each = (of.long, of.wide), Fraction(of.many, kits.bags)
    return Held(kits, each, Fraction(0), f"{called} of {of.sides}", sides, bundle=(sides, of.label))


def _strip(row: Wanted) -> Bundle:
    """The bundle of strips across a roll."""
    return (row.length,), row.label


def _whose(kits: Kits, item: Item) -> str:
    """Into which kits a piece goes, and into which of their bags, so that nobody need look it up after the cut."""
    return ", ".join(filter(None, (kits.told, place_of(kits, item))))


def _off_roll(kits: Kits, line: MaterialLine, bag: Held) -> list[Blank] | None:
    """The pieces off a roll whose width is known; None where they are not all that the bag holds of it."""
    along = sum(many * long for many, long, _ in line.off_roll)
    if not line.off_roll or line.net is None or abs(along - line.net.high) > GRAIN:
        return None
    found = []
    for many, long, wide in line.off_roll:
        one = bag.each if len(line.off_roll) == many == 1 else exact(float(up_for_buying(long * (1 + line.allowance))))
        found.append(Blank(one, exact(wide), many * kits.bags, _whose(kits, line.item)))
    return found


def _rows(item: Item, pieces: Iterable[Blank], rounder: Rounder) -> dict[tuple[Fraction, Fraction], Wanted]:
    """Rows across a roll, of pieces of one size whoever's they are, each row cut off it as one length."""
    sizes: dict[tuple[Fraction, Fraction], list[Blank]] = {}
    for piece in pieces:
        sizes.setdefault((piece.long, piece.wide), []).append(piece)
    rows = {}
    roll = exact(item.across) if isinstance(item, Consumable) and item.across else Fraction(0)
    for (long, wide), each in sizes.items():
        many = sum(piece.many for piece in each)
        # As formulas.buying.length_of_roll: all one way round, whichever takes less of the roll.
        ways = ((row, roll // across) for row, across in ((long, wide), (wide, long)))
        _, row, number, abreast = min(
            (row * ceil(many / abreast), row, ceil(many / abreast), abreast) for row, abreast in ways if abreast
        )
        whose = "; ".join(dict.fromkeys(piece.label for piece in each))
        cut_up = f"{many} of {told.sides((long, wide), rounder).replace(NBSP, ' ')}"
        if (beside := min(many, abreast)) > 1:
            cut_up += f", {beside} across"
        rows[long, wide] = Wanted(row, number, f"{cut_up}, {whose}")
    return rows
