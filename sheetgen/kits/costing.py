"""What a piece or a run of kits costs, line by line: by the used share, and by the packs that are bought."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.base.exact import exact
from sheetgen.base.spelling import counted, slug
from sheetgen.kits.bought import bought
from sheetgen.kits.costs import Task, costed
from sheetgen.kits.fired_told import fired_told
from sheetgen.kits.kit_lines import where_it_is_made
from sheetgen.kits.material import Priced, Sets, priced
from sheetgen.kits.posted import each_kind, packing, wrapping
from sheetgen.kits.rates import rates_of
from sheetgen.kits.run import taken
from sheetgen.kits.sold import sold_as, sold_of
from sheetgen.kits.supplies import supply

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence
    from fractions import Fraction

    from sheetgen.base.trouble import Trouble
    from sheetgen.kits.bought import Got
    from sheetgen.kits.costs import Costed
    from sheetgen.kits.money import Coin, Line
    from sheetgen.kits.sold import Sold
    from sheetgen.kits.taken import Kits
    from sheetgen.model.till import Till


@dataclass(frozen=True, slots=True)
class Fee:
    """The fee of a class: its costs by heads and loads, what is left with each number of people, and that in words."""

    lines: tuple[Line, ...]
    left: tuple[Line, ...]
    told: str


@dataclass(frozen=True, slots=True)
class Costing:
    """A costing: its title, the name of its files, and its cost both ways. `notes` is what is not in it.

    `materials` are those of the first lines of both costs, with what lies in the drawer for the difference.
    """

    title: str
    name: str
    coin: Coin
    materials: tuple[Priced, ...]
    used: Costed
    bought: Costed
    sold: tuple[Sold, ...] = ()
    fee: Fee | None = None
    notes: tuple[str, ...] = ()

    @property
    def rest(self) -> Line:
        """What lies in the drawer afterwards, more than before."""
        return self.coin.total("More in the drawer", [one.rest for one in self.materials])


def of_piece(kits: Kits, till: Till | None, coin: Coin) -> tuple[Costing, list[Trouble]]:
    """One piece that the studio makes itself: the usual bench minutes, and its part of each load that fires it."""
    rates, at_the_bench, fired = rates_of(till, coin), kits.version.plan.at_the_bench, kits.firings
    got, troubles = bought(taken([where_it_is_made(kits)]))
    share = Sets(1, till.pieces_a_load if till else 1)
    materials = tuple(_priced(one, coin, share if _by_firings(one) else None) for one in got)
    low, usual, high = (exact(round(getattr(at_the_bench, end), 1)) for end in ("low", "usual", "high"))
    span = f", the usual of {coin.number(low)} to {coin.number(high)} min" if low < high else ""
    used, by_packs = (
        costed(
            rates,
            1,
            materials=lines,
            wrapping=[],
            labour=[Task(f"Work at the bench{span}", usual)] if till and till.hour is not None else [],
            loads=fired if till and till.load is not None else 0,
            sharing=till.pieces_a_load if till else 1,
            fired=fired_told([(kits, 1)]),
        )
        for lines in both_ways(materials)
    )
    notes = [*_lacking(till, {"labour": "rate an hour", "firing": "cost of a load" if fired else ""})]
    if kits.version.untimed:
        notes.append("some steps do not say how long they take: their work is not in it")
    if fired and till and till.load and till.pieces_a_load == 1:
        notes.append(f"fired alone in its load: {till.name} does not say how many 'pieces a load' share one")
    title, name = f"{kits.named}: a piece", slug(f"{kits.worked.name} {kits.version.title}")
    sold = (sold_as(title, used, till, rates),) if till else ()
    return Costing(title, name, coin, materials, used, by_packs, sold, notes=tuple(notes)), troubles


def of_run(run: Sequence[Kits], till: Till | None, coin: Coin, table: str = "") -> tuple[Costing, list[Trouble]]:
    """A run of kits, packed and wrapped; of orders the name of their `table`. Whoever makes them fires them.

    A part that is sent by itself is packed and wrapped as a kit is, without sheets, and has no price: its kit had one.
    """
    rates, kits = rates_of(till, coin), sum(one.bags for one in run)
    got, troubles = bought(taken(run))
    materials = tuple(_priced(one, coin) for one in got)
    used, by_packs = (
        costed(
            rates,
            kits,
            materials=lines,
            wrapping=wrapping(till, coin, run, kits),
            labour=packing(till, rates, kits, kits),
            loads=0,
        )
        for lines in both_ways(materials)
    )
    several = len(run) > 1
    kinds = each_kind(run, got, materials, till, rates) if several else [(run[0], used)]
    sold = tuple(sold_of(kind, cost, till, rates, apart=several) for kind, cost in kinds) if till else ()
    notes = [*_lacking(till, {"labour": "packing", "wrapping": "wrapping"})]
    parts = sum(one.bags for one in run if one.only)
    if parts:
        notes.append(
            f"{counted(parts, 'part')} sent alone: packed and wrapped as a kit is, without sheets and without a price"
        )
    called = table or " and ".join(f"{one.bags} × {one.named}" for one in run)
    of = f" of {counted(len(run), 'kind')}" if table else ""
    many = " and ".join(counted(n, what) for n, what in ((kits - parts, "kit"), (parts, "part")) if n)
    title, name = f"{called}: a run of {many}{of}", slug(table) if table else "kits"
    return Costing(title, name, coin, materials, used, by_packs, sold, notes=tuple(notes)), troubles


def of_all(run: Sequence[Kits], coin: Coin, sets: Sets | None = None) -> tuple[tuple[Priced, ...], list[Trouble]]:
    """What is used up of each item by a run, or by these `sets` of it, and what is bought for all."""
    got, troubles = bought(taken(run))
    return tuple(_priced(one, coin, sets) for one in got), troubles


def both_ways(materials: Sequence[Priced]) -> tuple[list[Line], list[Line]]:
    """The lines by the used share, and by what is bought."""
    return [one.used for one in materials], [one.bought for one in materials]


def _by_firings(got: Got) -> bool:
    """Whether so much of it is used as the kiln is fired: all pieces of a load share it, as they share the heat."""
    does = got.taken.item.supply.a_pack_does
    return got.taken.way == "as needed" and does is not None and does.of == "firings"


def _gone(got: Got) -> Fraction:
    """What a run uses up: all that is needed, or what is left in the pieces where the rest comes back.

    Of lengths with cuts, and with ends that are too short to keep; of sheet the blanks alone.
    """
    used = got.taken.used
    if got.plan is not None:
        return got.used if used is None else min(used, got.needed) + got.used - got.needed
    if used is not None:
        return used
    return got.taken.need if got.sheets else got.needed


def _priced(got: Got, coin: Coin, sets: Sets | None = None) -> Priced:
    """Three lines of an item; of one that cannot be reckoned none is known."""
    if got.why:
        unknown = coin.line(got.taken.item.name, got.why, None)
        return Priced(unknown, unknown, unknown)
    return priced(supply(got, _gone(got), coin.point), coin, sets)


def _lacking(till: Till | None, wanted: dict[str, str]) -> Iterable[str]:
    """What is not reckoned, since the till does not say it: what it would be, by the word that it wants."""
    if till is None:
        every = ", ".join([*(what for what, word in wanted.items() if word), "overhead", "replacements", "a price"])
        yield f"not reckoned, for there is no till.yaml in the private folder: {every}"
        return
    there = {
        "rate an hour": till.hour is not None,
        "cost of a load": till.load is not None,
        "packing": bool(till.packing_a_kit or till.packing_a_run),
        "wrapping": bool(till.wrapping_a_kit or till.wrapping_with_sheets or till.wrapping_a_run),
    }
    absent = [f"{what} ('{word}')" for what, word in wanted.items() if word and not there[word]]
    absent += [] if till.overhead else ["overhead ('overhead')"]
    if absent:
        yield f"not reckoned, for {till.name} does not say it: {', '.join(absent)}"
    if till.markup is None and till.margin is None:
        yield f"no price: {till.name} has neither 'markup' nor 'margin'"
