"""What moved between a ledger and now, in plain lines for a terminal."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.base.spelling import bare
from sheetgen.model.fingerprint import FIGURES, FIRING, LISTS, SAID, SIZES, TIMES
from sheetgen.model.ledger import paired
from sheetgen.model.moved import edits, moved, other_kits, prices_moved

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.model.another import Another
    from sheetgen.model.ledger import Kept, Ledger, Pair
    from sheetgen.model.moved import Edit, Moved, OtherKit

HANDFUL = 5
"""So many numbers a warning names."""
HEADS = {
    FIGURES: "Figures", SIZES: "Sizes and counts", LISTS: "Lists", TIMES: "Times", FIRING: "Firing",
    SAID: "Numbers in texts",
}  # fmt: skip
NO_EDIT = "by no edit that the ledger knows of: a step, a list or a figure of the design's own, or a formula of it"

Below = dict[tuple[str, str], "frozenset[Moved]"]


@dataclass(frozen=True, slots=True)
class Change:
    """A design: what it was at the revision asked for and is now; None is what cannot be known, or does not pass.

    `unknown` says what the ledgers do not tell; `errors` are why it does not pass.
    """

    design: str
    was: Ledger | None = None
    now: Ledger | None = None
    unknown: str = ""
    errors: tuple[str, ...] = ()

    @property
    def pairs(self) -> list[Pair]:
        """The versions that print other numbers, are added or dropped."""
        if self.was is None or self.now is None:
            return []
        both = paired(self.was, self.now)
        return [pair for pair in both if pair.was is None or pair.now is None or pair.was.code != pair.now.code]

    @property
    def to_be_revised(self) -> bool:
        """Whether other numbers stand under a revision that was published with its own."""
        if self.was is None or self.now is None or self.was.revision != self.now.revision:
            return False
        return bool(self.pairs or self.other_kits)

    @property
    def other_kits(self) -> list[OtherKit]:
        """The kits with other lists than their version tells."""
        both = paired(self.was, self.now) if self.was is not None and self.now is not None else ()
        return [one for was, now in both if was is not None and now is not None for one in other_kits(was, now)]


def changes_told(changes: Sequence[Change]) -> list[str]:
    """Each design with what moved in it, and in a line those in which nothing did."""
    lines: list[str] = []
    same, unpriced = [], []
    for change in changes:
        told = list(_design(change))
        lines += told
        if not told:
            same.append(f"{change.design} (revision {change.was.revision})" if change.was else change.design)
        if change.was is not None and change.now is not None and change.was.prices is None:
            unpriced.append(f"{change.design} (revision {change.was.revision})")
    if same:
        lines.append(f"unchanged: {', '.join(same)}")
    if unpriced:
        lines.append(f"the ledger holds no prices, and what moved of them cannot be known: {', '.join(unpriced)}")
    return lines


def told_below(changes: Sequence[Change]) -> Below:
    """The numbers that stand below the name of a version, as it is called and was called before, or of a kit of it."""
    found: dict[tuple[str, str], frozenset[Moved]] = {}
    for change in changes:
        found |= {(change.design, bare(one.title)): frozenset(one.rows) for one in change.other_kits}
        for was, now in change.pairs:
            if was is not None and now is not None:
                rows = frozenset(moved(was, now))
                found |= {(change.design, bare(title)): rows for title in (was.title, now.title)}
    return found


def is_below(one: Another, below: Below) -> bool:
    """Whether just the numbers that differ of a kit stand below its name, no fewer and no more."""
    kit = one.holding.kit
    return bool(one.moved) and below.get((kit.design, bare(kit.called))) == frozenset(one.moved)


def _design(change: Change) -> Iterator[str]:
    was, now = change.was, change.now
    if change.errors:
        since = f"no longer passes, and did at revision {was.revision}, {was.date}" if was else "does not pass"
        yield f"{change.design}: {since}; what moved is known when it does"
        yield from (f"  {error}" for error in change.errors)
        return
    if was is None or now is None:
        yield f"{change.design}: {change.unknown}"
        return
    pairs, kits, priced = change.pairs, change.other_kits, prices_moved(was, now)
    if not pairs and not kits and not priced:
        return
    yield f"{change.design}: since revision {was.revision}, {was.date}"
    by: tuple[Edit, ...] | None = None
    for old, new in pairs:
        if old is None and new is not None:
            yield f"  {new.title}: added, {new.code}"
        elif new is None and old is not None:
            yield f"  {old.title}: no longer made, was {old.code}"
        elif old is not None and new is not None:
            yield from _version(old, new, again=by == (by := tuple(edits(old, new))))
    for one in kits:
        yield f"  {one.title}: {one.was} is now {one.now}"
        yield from rows_told(one.rows)
    if priced:
        yield "  Prices of its stock, which no sheet prints"
        yield from (f"    {row.label}{_ends(row.was, row.now)}" for row in priced)


def _version(old: Kept, new: Kept, *, again: bool) -> Iterator[str]:
    """One version; edits `again` are those of the version before."""
    renamed = f", was {old.title}" if old.title != new.title else ""
    yield f"  {new.title}{renamed}: {old.code} is now {new.code}"
    rows, made = moved(old, new), edits(old, new)
    if again and made:
        yield f"    by the same edit{'s' * (len(made) > 1)}"
    else:
        yield from (f"    by {one.what}{_ends(one.was, one.now)}" for one in made)
    if not made:
        yield f"    {NO_EDIT}"
    yield from rows_told(rows)


def rows_told(rows: Sequence[Moved]) -> Iterator[str]:
    """Numbers that differ, below the head of each group."""
    for group, head in HEADS.items():
        of_group = [row for row in rows if row.group == group]
        if of_group:
            yield f"    {head}"
            yield from (f"      {number_told(row)}" for row in of_group)


def number_told(row: Moved) -> str:
    """A number by its name, with what it was and is."""
    return f"{_named(row)}{_ends(row.was, row.now)}"


def _named(row: Moved) -> str:
    return f"{row.label} ({row.key})" if row.group == FIGURES else row.label


def _ends(was: str, now: str, sign: str = ":") -> str:
    """Was and is; what there was not is new, and what there is no more is gone."""
    if not was:
        return f"{sign} new, {now}"
    return f"{sign} was {was}, is {now}" if now else f"{sign} was {was}, is gone"


def moved_told(was: Ledger, now: Ledger) -> str:
    """A handful of what differs from the ledger of a revision, in one sentence; nothing where nothing does."""
    told: list[str] = []
    for old, new in paired(was, now):
        if old is None or new is None:
            told += [f"version {one.title} is {'new' if one is new else 'gone'}" for one in (old, new) if one]
        else:
            rows = [f"{row.label}{_ends(row.was, row.now, ',')}" for row in moved(old, new)]
            named = [f"in {new.title}: {rows[0]}"] if rows and len(now.versions) > 1 else rows[:1]
            told += [*named, *rows[1:]]
    more = [f"and {len(told) - HANDFUL} more"] if len(told) > HANDFUL else []
    return "; ".join([*told[:HANDFUL], *more])
