"""A run of kits: what each kind of bag holds of each item, and what all bags together take of it.

A bag is rounded up once, by itself, as its card prints it, and together is the sum of the bags. A pot is summed first
and rounded once. Amounts are exact, in the item's unit.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import ceil
from typing import TYPE_CHECKING, Literal

from sheetgen.base.exact import exact, plain
from sheetgen.base.interval import GRAIN
from sheetgen.base.material import Consumable
from sheetgen.base.rounding import up_for_buying
from sheetgen.kits.cutting import Wanted
from sheetgen.kits.spares import counted, sealed
from sheetgen.model.amounts import amounts, at_once

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from sheetgen.base.material import Item
    from sheetgen.base.rounding import Rounder
    from sheetgen.base.supply import Pack
    from sheetgen.model.drawing import SlabLayout
    from sheetgen.model.worked import MaterialLine, WorkedVersion

Way = Literal["bags", "sealed", "cut", "blanks", "pot", "as needed"]


@dataclass(frozen=True, slots=True)
class Kits:
    """So many bags of one version, all alike, of a design by its title; on the slabs that are drawn of the version."""

    design: str
    version: WorkedVersion
    slabs: tuple[SlabLayout, ...]
    rounder: Rounder
    bags: int

    @property
    def named(self) -> str:
        """Design and version, as a tag says them."""
        return f"{self.design}, {self.version.title}"

    @property
    def firings(self) -> int:
        """How often the makers of these kits fire a kiln: each step that is fired, once for each of its loads."""
        steps = (max((load.loads for load in step.loads), default=1) for step in self.version.steps if step.firing)
        return self.bags * sum(steps)


@dataclass(frozen=True, slots=True)
class Held:
    """What one bag of a kind holds of an item; `unit` is the item's, or names a piece by its sides."""

    kits: Kits
    each: Fraction
    spare: Fraction
    unit: str

    @property
    def together(self) -> Fraction:
        """What all bags of the kind hold."""
        return self.each * self.kits.bags


@dataclass(frozen=True, slots=True)
class Blank:
    """So many pieces of two sides, mm, and whose they are."""

    long: Fraction
    wide: Fraction
    many: int
    label: str

    @property
    def sides(self) -> str:
        """Its sides, as a list says them."""
        return f"{plain(self.long)} × {plain(self.wide)} mm"


@dataclass(frozen=True, slots=True)
class Taken:
    """Of one item: what each kind of bag holds, what the run takes, and by which way it is given out.

    `wanted` are the lengths to cut of it, `blanks` the pieces of sheet, `pack` the one that is given out sealed. It is
    `beside` what is taken of the same item by amount, for which the drawer goes: of that nothing is left for it.
    """

    item: Item
    way: Way
    need: Fraction
    held: tuple[Held, ...] = ()
    wanted: tuple[Wanted, ...] = ()
    blanks: tuple[Blank, ...] = ()
    pack: Pack | None = None
    bags: int = 0
    beside: bool = False

    @property
    def have(self) -> Fraction:
        """What the drawer has for it."""
        return Fraction(0) if self.beside else self.item.supply.have


def taken(run: Sequence[Kits]) -> tuple[Taken, ...]:
    """What a run takes of each item, in the order in which its versions name them; nothing of what is left out."""
    lines: dict[str, list[tuple[Kits, MaterialLine]]] = {}
    for kits in run:
        out = {item.id for item in kits.version.kit.leave_out} if kits.version.kit else set()
        for line in kits.version.materials:
            if line.item.id not in out:
                lines.setdefault(line.item.id, []).append((kits, line))
    return tuple(one for each in lines.values() for one in _of_item(each))


def _of_item(lines: Sequence[tuple[Kits, MaterialLine]]) -> Iterator[Taken]:
    """An item is taken by amount, or as needed; where some kits do the one and some the other, both are told."""
    amount = [(kits, line) for kits, line in lines if line.net is not None]
    if amount:
        yield _by_amount(amount)
    if loose := [(kits, line) for kits, line in lines if line.net is None]:
        yield _as_needed(loose[0][1].item, [kits for kits, _ in loose], beside=bool(amount))


def _by_amount(lines: Sequence[tuple[Kits, MaterialLine]]) -> Taken:
    item = lines[0][1].item
    bags = sum(kits.bags for kits, _ in lines)
    given = item.supply.given_out
    if any(line.blanks for _, line in lines):
        return _blanks(item, lines, bags)
    if given == "from the pot" or any(line.filling for _, line in lines):
        return Taken(item, "pot", _pot(item, lines), bags=bags)
    if given == "sealed" and item.supply.packs:
        return _sealed(item, lines, bags)
    if item.unit == "mm":
        return _cut(item, lines, bags)
    held = tuple(_bag(kits, line) for kits, line in lines)
    return Taken(item, "bags", _together(held), held, bags=bags)


def _bag(kits: Kits, line: MaterialLine) -> Held:
    """What a card prints: of what is counted with its spares, else what to have."""
    told = amounts(line, kits.slabs, kits.rounder)
    net, have = (exact(float(told.used)), exact(float(told.have))) if told else (Fraction(0), Fraction(0))
    if line.item.unit == "piece":
        have = counted(int(net), exact(line.allowance), line.item.supply.spares).amount
    return Held(kits, have, have - net, line.item.unit)


def _sealed(item: Item, lines: Sequence[tuple[Kits, MaterialLine]], bags: int) -> Taken:
    """Whole packs, of one size for all bags: the one by which the run costs least, or where a price lacks takes least.

    Least numbers are for what is bought, and so is what they cost.
    """

    def held_of(pack: Pack) -> tuple[Held, ...]:
        found = []
        for kits, line in lines:
            least = exact(max(line.least * (1 + line.allowance), at_once(kits.slabs, item.name)))
            bag = sealed(exact(line.net.high if line.net else 0.0), exact(line.allowance), pack.holds, least)
            used = amounts(line, kits.slabs, kits.rounder)
            net = min(exact(float(used.used)) if used else Fraction(0), bag.amount)
            found.append(Held(kits, bag.amount, bag.amount - net, item.unit))
        return tuple(found)

    def weight(pack: Pack) -> tuple[Fraction, Fraction]:
        need = _together(held_of(pack))
        packs = max(need / pack.holds, Fraction(pack.at_least))
        return (packs * Fraction(pack.price) if known and pack.price is not None else need), need

    known = all(pack.price is not None for pack in item.supply.packs)
    best = min(item.supply.packs, key=weight)
    held = held_of(best)
    return Taken(item, "sealed", _together(held), held, pack=best, bags=bags)


def _pot(item: Item, lines: Sequence[tuple[Kits, MaterialLine]]) -> Fraction:
    """Summed first, then rounded once; one filling of a firing box serves all."""
    hands = [
        (max(line.needed, at_once(kits.slabs, item.name)) * (1 if line.filling else kits.bags), line.filling)
        for kits, line in lines
    ]
    whole = sum(n for n, filling in hands if not filling) + max((n for n, filling in hands if filling), default=0.0)
    if item.unit != "piece":
        return exact(float(up_for_buying(whole)))
    net = sum(ceil(line.net.high - GRAIN) * kits.bags for kits, line in lines if line.net)
    spares = item.supply.spares.of(net) if item.supply.spares else 0
    return Fraction(max(ceil(whole - GRAIN), net + spares))


def _cut(item: Item, lines: Sequence[tuple[Kits, MaterialLine]], bags: int) -> Taken:
    """One length for each bag, from which its maker cuts; off a roll with a width, pieces that lie side by side."""
    held: list[Held] = []
    wanted: list[Wanted] = []
    pieces: list[Blank] = []
    for kits, line in lines:
        one = _bag(kits, line)
        if (rolled := _off_roll(kits, line, one)) is None:
            held.append(one)
            wanted.append(Wanted(one.each, kits.bags, tag(item, one.each, kits.named)))
            continue
        pieces += rolled
        held += [Held(kits, Fraction(p.many, kits.bags), Fraction(0), f"piece of {p.sides}") for p in rolled]
    wanted += _rows(item, pieces)
    return Taken(
        item, "cut", sum((w.length * w.many for w in wanted), Fraction(0)), tuple(held), tuple(wanted), bags=bags
    )


def tag(item: Item, length: Fraction, whose: str) -> str:
    """The text of a bundle's tag: wire, length, design and version."""
    return f"{item.name}, {plain(length)} mm, {whose}"


def _off_roll(kits: Kits, line: MaterialLine, bag: Held) -> list[Blank] | None:
    """The pieces off a roll whose width is known; None where they are not all that the bag holds of it."""
    along = sum(many * long for many, long, _ in line.off_roll)
    if not line.off_roll or line.net is None or abs(along - line.net.high) > GRAIN:
        return None
    found = []
    for many, long, wide in line.off_roll:
        one = bag.each if len(line.off_roll) == many == 1 else exact(float(up_for_buying(long * (1 + line.allowance))))
        found.append(Blank(one, exact(wide), many * kits.bags, kits.named))
    return found


def _rows(item: Item, pieces: Iterable[Blank]) -> list[Wanted]:
    """Rows across a roll, of pieces of one size whoever's they are, each row cut off it as one length."""
    sizes: dict[tuple[Fraction, Fraction], list[Blank]] = {}
    for piece in pieces:
        sizes.setdefault((piece.long, piece.wide), []).append(piece)
    rows = []
    roll = exact(item.across) if isinstance(item, Consumable) and item.across else Fraction(0)
    for (long, wide), each in sizes.items():
        many = sum(piece.many for piece in each)
        # As formulas.buying.length_of_roll: all one way round, whichever takes less of the roll.
        ways = ((row, roll // across) for row, across in ((long, wide), (wide, long)))
        _, row, number = min(
            (row * ceil(many / abreast), row, ceil(many / abreast)) for row, abreast in ways if abreast
        )
        whose = "; ".join(dict.fromkeys(piece.label for piece in each))
        rows.append(Wanted(row, number, tag(item, row, f"for {many} of {each[0].sides}, {whose}")))
    return rows


def _blanks(item: Item, lines: Sequence[tuple[Kits, MaterialLine]], bags: int) -> Taken:
    """Sheet by its blanks, each of the size that is printed."""
    held, found = [], []
    for kits, line in lines:
        for many, long, wide in line.blanks:
            sides = (exact(float(kits.rounder.length(side, "bench up"))) for side in (long, wide))
            length, width = sides
            found.append(Blank(length, width, many * kits.bags, kits.named))
            held.append(Held(kits, Fraction(many), Fraction(0), f"blank of {found[-1].sides}"))
    area = sum((one.long * one.wide * one.many for one in found), Fraction(0))
    return Taken(item, "blanks", area, tuple(held), blanks=tuple(found), bags=bags)


def _as_needed(item: Item, run: Sequence[Kits], *, beside: bool) -> Taken:
    """By what a pack does; of a kit that is sent one person makes one. Nothing where stock does not say."""
    does, packs = item.supply.a_pack_does, item.supply.packs
    bags = sum(kits.bags for kits in run)
    if does is None or not packs:
        return Taken(item, "as needed", Fraction(0), bags=bags, beside=beside)
    many = sum(kits.firings for kits in run) if does.of == "firings" else bags
    need = Fraction(many, does.many) * packs[0].holds
    rounded = Fraction(ceil(need)) if item.unit in {"piece", "mm"} else exact(float(up_for_buying(float(need))))
    return Taken(item, "as needed", rounded, bags=bags, beside=beside)


def _together(held: Iterable[Held]) -> Fraction:
    return sum((one.together for one in held), Fraction(0))
