"""What was sent: the sheets of an order with their fingerprint, and which of them it holds now. Never a name."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, NamedTuple

from sheetgen.base.spelling import bare

if TYPE_CHECKING:
    import datetime as dt
    from collections.abc import Iterable, Sequence

FILE = "sent.csv"
FOLDER = "sent"
"""Where in the private folder the list lies, and the numbers of what no ledger of a design has."""
COLUMNS = (
    "order",
    "date",
    "design",
    "version",
    "choices",
    "colourway",
    "leave out",
    "only",
    "count",
    "fingerprint",
    "revision",
)


class SentKit(NamedTuple):
    """One kind of kit: design by its folder, version by its printed name, what was chosen otherwise, colourway.

    `leave_out` are the items that its order does without, `only` a part's that is sent by itself, by their names in
    stock.
    """

    design: str
    version: str
    choices: tuple[tuple[str, str], ...] = ()
    colourway: str = ""
    leave_out: tuple[str, ...] = ()
    only: tuple[str, ...] = ()

    @property
    def key(self) -> tuple[object, ...]:
        """What two kits of one kind have alike, however their names are spaced."""
        chosen = tuple(sorted((bare(name), " ".join(value.split())) for name, value in self.choices))
        named = bare(self.design), bare(self.version), chosen, bare(self.colourway)
        return *named, tuple(sorted(self.leave_out)), tuple(sorted(self.only))

    @property
    def chosen(self) -> str:
        """The choices as a column of orders has them."""
        return "; ".join(f"{name}={value}" for name, value in self.choices)

    @property
    def called(self) -> str:
        """All but the design, in words: what was chosen first, for the version may be called by what it is not."""
        without = f"without {' and '.join(self.leave_out)}" if self.leave_out else ""
        version = f"{self.chosen} (else as {self.version})" if self.choices else self.version
        return ", ".join(filter(None, (version, self.colourway, without)))

    @property
    def left_out(self) -> str:
        """What it does without as a column has it."""
        return "; ".join(self.leave_out)

    @property
    def alone(self) -> str:
        """The part that is sent by itself, as a column has it."""
        return "; ".join(self.only)


@dataclass(frozen=True, slots=True)
class Sent:
    """A line of the list: so many kits of one kind that went to an order on a day, and what their sheets bear.

    `code` is empty for a part that was sent by itself: no sheet went with it.
    """

    order: str
    date: dt.date
    kit: SentKit
    count: int
    code: str
    revision: str


@dataclass(frozen=True, slots=True)
class SentList:
    """The list as its file has it: the lines that can be read, and how the file is written, so that it can be added to.

    `there` are its bytes, `columns` its own in their order (an empty word for one that is not ours), `sign` what parts
    its cells. It is `whole` where every line of it can be taken apart; else what is added might be lost in one.
    """

    lines: tuple[Sent, ...] = ()
    there: bytes = b""
    columns: tuple[str, ...] = COLUMNS
    sign: str = ","
    encoding: str = "utf-8"
    whole: bool = True


class Holding(NamedTuple):
    """The orders that hold kits of one kind with one fingerprint, each with the day since which it does."""

    kit: SentKit
    code: str
    revision: str
    orders: tuple[tuple[str, dt.date], ...]


def not_there(new: Iterable[Sent], there: Iterable[Sent]) -> list[Sent]:
    """What is to be added: each line that is not there already, so that a run made twice in a day counts once."""
    known = {_whole(one) for one in there}
    found = {_whole(one): one for one in new}
    return [one for key, one in found.items() if key not in known]


def sent_again(new: Iterable[Sent], there: Iterable[Sent]) -> set[str]:
    """The orders of which something goes once more: a kit where any kit of the order went, a part where just it did."""
    there = list(there)
    kits = {one.order for one in there if not one.kit.only}
    parts = {(one.order, one.kit.key) for one in there if one.kit.only}
    return {one.order for one in new if (one.order, one.kit.key) in parts or (not one.kit.only and one.order in kits)}


def _whole(one: Sent) -> tuple[object, ...]:
    return one.order, one.date, one.kit.key, one.count, one.code, one.revision


def holdings(sent: Sequence[Sent]) -> list[Holding]:
    """What the orders hold, by kind and fingerprint in the order of the list.

    Of a kit that went to an order several times the last counts: whoever was sent the right sheet since holds it. The
    day is the first on which the order was sent what it holds.
    """
    last: dict[tuple[object, ...], list[Sent]] = {}
    sheets = [one for one in sent if not one.kit.only]
    for one in sorted(sheets, key=lambda one: one.date):
        lines = last.setdefault((one.order, one.kit.key), [])
        if lines and lines[0].code != one.code:
            lines.clear()
        lines.append(one)
    first = {id(lines[0]) for lines in last.values()}
    found: dict[tuple[object, ...], list[Sent]] = {}
    for one in sheets:
        if id(one) in first:
            found.setdefault((one.kit.key, one.code), []).append(one)
    return [
        Holding(lines[0].kit, lines[0].code, lines[0].revision, tuple((one.order, one.date) for one in lines))
        for lines in found.values()
    ]
