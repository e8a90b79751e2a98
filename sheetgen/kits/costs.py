"""What a run costs and what a piece of it is sold for, line by line, in the one order of costs.

Materials, wrapping, labour, firing; overhead on what it is stated of; replacements; the cost. From the cost of a piece,
which is the run's divided and not rounded again: a price by markup or by margin, tax, the price step, and what the
price on that step comes to.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING, Literal

from sheetgen.base.exact import exact, percent
from sheetgen.base.spelling import counted
from sheetgen.base.trouble import CannotBe
from sheetgen.facts.units import MINUTES_PER_HOUR
from sheetgen.formulas.price import margin_of, markup_of, price_by_margin, price_by_markup, rounded_up
from sheetgen.kits.money import Coin, Line, known
from sheetgen.model.till import PARTS

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.base.exact import Exact
    from sheetgen.kits.rates import Rates
    from sheetgen.model.till import Part


@dataclass(frozen=True, slots=True)
class Task:
    """Work that is paid: so many minutes, so many times."""

    label: str
    minutes: Fraction
    times: int = 1


@dataclass(frozen=True, slots=True)
class Costed:
    """A run's lines in their order, their total, and how many pieces or kits it is divided by."""

    lines: tuple[Line, ...]
    cost: Line
    pieces: int

    @property
    def each(self) -> Fraction:
        """The cost of one: the run's divided, not rounded."""
        return Fraction(self.cost.amount or 0) / self.pieces


@dataclass(frozen=True, slots=True)
class Price:
    """A price by markup or by margin, and what it comes to with tax and on the price step.

    `lines`: the price; tax; with tax; on the step; the net in it; the tax in it. `markup` and `margin` are those that
    the net price on the step comes to, exact, with their workings.
    """

    by: Literal["markup", "margin"]
    lines: tuple[Line, ...]
    markup: Fraction
    margin: Fraction
    markup_working: str
    margin_working: str

    @property
    def tag(self) -> Line:
        """What is asked for one."""
        return self.lines[3]


def costed(  # noqa: PLR0913 - a run in the order of its costs
    rates: Rates,
    pieces: int,
    *,
    materials: Sequence[Line],
    wrapping: Sequence[Line],
    labour: Sequence[Task | Line],
    loads: int,
    sharing: int = 1,
    fired: str = "",
    room: Sequence[Line] = (),
) -> Costed:
    """The cost of a run of so many. `materials` by the used share or by what is bought, as the caller chooses.

    `sharing`: how many pieces share a load; `fired`: why there are so many.
    No overhead is of a `room` that is hired: it is part of one.

    CannotBe for a run of none, or for negative work or loads.
    """
    if pieces < 1:
        raise CannotBe(f"a run of {pieces}", help="1 or more", field="count")
    tasks = [task for task in labour if isinstance(task, Task)]
    if loads < 0 or any(task.minutes < 0 or task.times < 0 for task in tasks):
        raise CannotBe("work and loads cannot be under 0", help="0 or more", field="minutes" if loads >= 0 else "loads")
    coin = rates.coin
    groups: dict[Part, list[Line]] = {
        "materials": list(materials),
        "wrapping": list(wrapping),
        "labour": [line for one in labour for line in _labour(one, rates)],
        "firing": [],
    }
    if loads:
        told = f"{counted(loads, 'load')} × {coin.bare(rates.load)}"
        shared = f" ÷ {sharing} pieces to a load" if sharing > 1 else ""
        why = f": {fired}" if fired else ""
        groups["firing"].append(coin.line("Firing", told + shared + why, Fraction(loads * rates.load) / sharing))
    lines = [*(line for name in PARTS for line in groups[name]), *room]
    if rates.overhead:
        base = known(line for name in rates.overhead_of for line in groups[name])
        of = " and ".join([", ".join(rates.overhead_of[:-1]), rates.overhead_of[-1]]).removeprefix(" and ")
        lines.append(_part("Overhead", rates.overhead, base, f"of {of}, {coin.bare(base)}", coin))
    if rates.replacements:
        so_far = known(lines)
        lines.append(_part("Replacements", rates.replacements, so_far, f"of {coin.bare(so_far)}", coin))
    return Costed(tuple(lines), coin.total("Cost", lines), pieces)


def priced_by(run: Costed, by: Literal["markup", "margin"], share: Fraction, rates: Rates) -> Price:
    """What one piece of a run is sold for. CannotBe for a margin of 100 %, or a run that costs nothing."""
    coin, each = rates.coin, run.each
    cost = f"{coin.bare(run.cost.amount or 0)} ÷ {run.pieces}" if run.pieces > 1 else coin.bare(run.cost.amount or 0)
    named = percent(share, coin.point)
    if by == "markup":
        first = coin.line(f"Price by markup of {named}", f"{cost} × (1 + {named})", price_by_markup(each, share))
    else:
        first = coin.line(f"Price by margin of {named}", f"{cost} ÷ (1 − {named})", price_by_margin(each, share))
    net = first.amount or coin.least * 0
    tax = _part("Tax", rates.tax, net, f"of {coin.bare(net)}", coin)
    gross = coin.total("With tax", (first, tax))
    whole = gross.amount or coin.least * 0
    on_step = rounded_up(whole, rates.step) if rates.step else whole
    up = f"{coin.bare(whole)} up to a whole {coin.number(rates.step)}" if rates.step else "as it is"
    tag = coin.line("Price", up, on_step)
    net_in_it = coin.line(
        "Net in it",
        f"{coin.bare(on_step)} ÷ (1 + {percent(rates.tax, coin.point)})",
        Fraction(on_step) / (1 + rates.tax),
    )
    got = net_in_it.amount or coin.least * 0
    tax_in_it = coin.line("Tax in it", f"{coin.bare(on_step)} − {coin.bare(got)}", on_step - got)
    gain = f"({coin.bare(got)} − {cost})"
    return Price(
        by,
        (first, tax, gross, tag, net_in_it, tax_in_it),
        markup_of(got, each),
        margin_of(got, each),
        f"{gain} ÷ ({cost})" if run.pieces > 1 else f"{gain} ÷ {cost}",
        f"{gain} ÷ {coin.bare(got)}",
    )


def _labour(task: Task | Line, rates: Rates) -> Iterator[Line]:
    """The line of a task; none of one that takes no time."""
    if isinstance(task, Line):
        yield task
        return
    if not task.minutes or not task.times:
        return
    hour = exact(MINUTES_PER_HOUR)
    many = f"{task.times} × " if task.times > 1 else ""
    working = f"{many}{rates.coin.number(task.minutes)} min ÷ {rates.coin.number(hour)} × {rates.coin.bare(rates.hour)}"
    yield rates.coin.line(task.label, working, task.times * task.minutes / hour * Fraction(rates.hour))


def _part(label: str, share: Fraction, base: Exact, of: str, coin: Coin) -> Line:
    """A share of what is printed."""
    return coin.line(label, f"{percent(share, coin.point)} {of}", share * Fraction(base))
