"""The printed numbers of a design by its revision, as they were published first and as they are now."""

from __future__ import annotations

import re
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING, NamedTuple

from sheetgen.base.frozen import Frozen
from sheetgen.base.spelling import bare, slug
from sheetgen.model.fingerprint import LISTS, Number, fingerprint
from sheetgen.model.inputs import inputs
from sheetgen.model.moved import kits_moved
from sheetgen.model.prices import prices
from sheetgen.model.printed import of_the_teacher, printed_numbers

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from sheetgen.model.worked import Worked, WorkedVersion

FOLDER = "ledger"
ALONE = "the teacher's alone"  # under which a ledger keeps what no other sheet prints
LONGEST = 40  # letters of a revision in a file's name


@dataclass(frozen=True, slots=True)
class Kept:
    """One version: its name and the one that is printed, its fingerprint, its numbers, what they were worked from.

    `teachers` are group and key of those that no sheet prints but the teacher's; None where that was not kept. `kits`
    are the lists of its posted kit in each colourway and, under no name, in none: as it is packed by itself, then with
    other packs of what is sealed. Of `a_kit` by itself there are none, and `colourway` is the one that it comes in.
    """

    name: str
    title: str
    code: str
    numbers: tuple[Number, ...]
    inputs: Mapping[str, str] = field(default_factory=Frozen)
    teachers: frozenset[tuple[str, str]] | None = None
    kits: Mapping[str, tuple[tuple[Number, ...], ...]] = field(default_factory=Frozen)
    colourway: str = ""
    a_kit: bool = False

    @property
    def each(self) -> tuple[Kept, ...]:
        """Itself, and its kits in each colourway and in none."""
        return self, *(kit for name in self.kits for kit in self.kits_in(name))

    @property
    def for_the_maker(self) -> tuple[Number, ...]:
        """The numbers that handout, bench card and templates print; all where it is not known which they are."""
        return tuple(one for one in self.numbers if (one.group, one.key) not in (self.teachers or ()))

    @property
    def of_the_maker(self) -> Kept:
        """It with those numbers alone, under its fingerprint."""
        return replace(self, numbers=self.for_the_maker)

    @property
    def lists(self) -> tuple[Number, ...]:
        """Its amounts and the sizes of tools."""
        return tuple(one for one in self.numbers if one.group == LISTS)

    def kits_in(self, colourway: str) -> list[Kept]:
        """Its posted kits in a colourway, or in none; nothing where it does not come so."""
        each = ((name, lists) for name, own in self.kits.items() for lists in own if bare(name) == bare(colourway))
        return [self.kit_with(lists, name) for name, lists in each]

    def kit_with(self, lists: Iterable[Number], colourway: str = "") -> Kept:
        """A kit of it with lists of its own. Its fingerprint is of exactly what its sheets, card and label print."""
        numbers = (*(one for one in self.for_the_maker if one.group != LISTS), *lists)
        title = ", ".join(filter(None, (self.title, colourway)))
        return Kept(
            self.name,
            title,
            fingerprint(numbers),
            numbers,
            self.inputs,
            frozenset(),
            colourway=colourway,
            a_kit=True,
        )


@dataclass(frozen=True, slots=True)
class Ledger:
    """A design at one revision of a date, with its versions in their order; the first is the main one.

    `prices` are what the stock in use cost then; None where that was not kept.
    """

    design: str
    revision: str
    date: str
    versions: tuple[Kept, ...]
    prices: tuple[Number, ...] | None = None

    @property
    def order(self) -> tuple[str, list[tuple[bool, int, str]]]:
        """What puts revisions one after the other: the date, then the revision, 9 before 10."""
        parts = re.findall(r"\d{1,18}|\D+|\d+", self.revision)
        return self.date, [(not p.isdecimal(), int(p) if p.isdecimal() and len(p) < 19 else 0, p) for p in parts]  # noqa: PLR2004 - longer ones are words


class Pair(NamedTuple):
    """A version then and now; one of the two is None where it is dropped or added."""

    was: Kept | None
    now: Kept | None


def ledger_of(worked: Worked, program: str) -> Ledger:
    """A design as it is worked now, by a version of the program."""
    versions = tuple(kept_of(worked, version, program) for version in worked.versions.values())
    return Ledger(worked.name, worked.revision, worked.date, versions, prices(worked))


def kept_of(worked: Worked, version: WorkedVersion, program: str) -> Kept:
    """A version as it is worked now, with the choices that it is worked with; nothing of its kits."""
    numbers = tuple(printed_numbers(worked, version))
    found, teachers = Frozen(inputs(worked, version, program)), of_the_teacher(worked, version)
    return Kept(version.name, version.title, fingerprint(numbers), numbers, found, teachers)


def file_name(revision: str) -> str:
    """The file of a revision, which may be any text: what no file's name may hold is left out, and told apart."""
    plain = slug(revision)[:LONGEST]
    if plain == revision:
        return f"revision-{plain}.json"
    return f"revision-{plain}-{fingerprint([Number('', '', '', revision)]).lower()}.json"


def paired(was: Ledger, now: Ledger) -> list[Pair]:
    """Each version now with what it was, then those that are dropped.

    A version is known by the name that is printed; else by its name in the file, so that the main one may be called
    anew; else by its numbers, and by what it is worked from, so that any other may.
    """
    left, found = list(was.versions), dict[str, Kept]()
    alike = (
        lambda a, b: bare(a.title) == bare(b.title),
        lambda a, b: a.name == b.name,
        lambda a, b: a.code == b.code,
        lambda a, b: bool(a.inputs) and a.inputs == b.inputs,
    )
    for same in alike:
        for one in now.versions:
            old = next((old for old in left if one.name not in found and same(old, one)), None)
            if old is not None:
                found[one.name] = old
                left.remove(old)
    return [*(Pair(found.get(one.name), one) for one in now.versions), *(Pair(old, None) for old in left)]


def last_before(ledgers: Iterable[Ledger], now: Ledger) -> Ledger | None:
    """What there is to compare with: the revision before the present one.

    If the present one's numbers have changed, or there is none before it, that one as it was published.
    """
    ledgers = list(ledgers)
    own = next((one for one in ledgers if one.revision == now.revision), None)
    if own is not None and differ(own, now):
        return own
    earlier = [one for one in ledgers if one is not own and one.order <= now.order]
    return max(earlier, key=lambda one: one.order, default=own)


def differ(was: Ledger, now: Ledger) -> bool:
    """Whether any version or kit of it prints other numbers, or a version is added or dropped."""
    pairs = paired(was, now)
    return any(old is None or new is None or old.code != new.code or kits_moved(old, new) for old, new in pairs)
