"""What moved between a ledger and now, in plain lines for a terminal."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.spelling import bare, counted
from sheetgen.model.ledger import paired
from sheetgen.model.moved import edits, moved, other_kits, prices_moved
from sheetgen.render.moved_folded import ends, folded, letters, of

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.model.another import Another
    from sheetgen.model.change import Change
    from sheetgen.model.ledger import Kept, Ledger
    from sheetgen.model.moved import Edit, Moved

HANDFUL = 5
"""So many numbers a warning names."""
NO_EDIT = "by no edit that the ledger knows of: a step, a list or a figure of the design's own, or a formula of it"

Below = dict[tuple[str, str], "frozenset[Moved]"]


def _summed(changes: Sequence[Change]) -> Iterator[str]:
    """How much moved, in a line; nothing where nothing did."""
    many = [sum(map(len, one.rows)) for one in changes if one.rows]
    failing = [one.design for one in changes if one.errors]
    told = [f"{counted(sum(many), 'printed number')} of {counted(len(many), 'design')} moved"] * bool(many)
    told += [
        f"{counted(len(failing), 'design')} no longer pass{'es' * (len(failing) == 1)}: {', '.join(failing)}"
    ] * bool(failing)
    if told and len(changes) > 1:
        yield "; ".join(told)


def changes_told(changes: Sequence[Change]) -> list[str]:
    """What came to what, each design with what moved in it, and in a line those in which nothing did.

    An edit by which several designs moved is told once, with a number by which they name it.
    """
    shared = shared_edits(changes)
    lines = list(_summed(changes))
    for nth, (one, designs) in enumerate(shared.items(), 1):
        lines += [f"edit {nth}: {edit_told(one)}", f"  moved {', '.join(designs)}"]
    same, unpriced = [], []
    for change in sorted(changes, key=lambda one: not one.errors):  # what no longer passes is read first
        told = list(_design(change, list(shared)))
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


def _design(change: Change, shared: Sequence[Edit]) -> Iterator[str]:
    """A design; edits that are `shared` with others are named by their number."""
    was, now = change.was, change.now
    if change.errors:
        since = f"no longer passes, and did at revision {was.revision}, {was.date}" if was else "does not pass"
        yield f"{change.design}: {since}; what moved is known when it does"
        for error in change.errors:
            yield f"  {error.where}: {error.message}" if error.where else f"  {error.message}"
            yield from [f"    help: {error.help}"] if error.help else ()
        return
    if was is None or now is None:
        yield f"{change.design}: {change.unknown}"
        return
    pairs, kits, priced = change.pairs, change.other_kits, prices_moved(was, now)
    if not pairs and not kits and not priced:
        return
    both, rows = change.both, change.rows
    many = counted(sum(map(len, rows)), "number")
    yield f"{change.design}: since revision {was.revision}, {was.date}" + (f"; {many}" if rows else "")
    marks = letters(len(rows))
    heads = [*(f"{_named(old, new)}: {old.code} is now {new.code}" for old, new in both)]
    heads += [f"{kit.title}: {kit.was} is now {kit.now}" for kit in kits]
    for mark, head, own in zip(marks, heads, rows, strict=True):
        yield f"  {mark}{' ' * bool(mark)}{head}; {counted(len(own), 'number')}"
    yield from _edits(marks, both, shared)
    yield from folded(dict(zip(marks, rows, strict=True)))
    yield from (f"  {new.title}: added, {new.code}" for old, new in pairs if old is None and new is not None)
    yield from (
        f"  {old.title}: no longer made, was {old.code}" for old, new in pairs if new is None and old is not None
    )
    if priced:
        yield "  Prices of its stock, which no sheet prints"
        yield from (f"    {row.label}: {ends(row.was, row.now)}" for row in priced)


def _named(old: Kept, new: Kept) -> str:
    return f"{new.title}, was {old.title}" if old.title != new.title else new.title


def _edits(marks: Sequence[str], both: Sequence[tuple[Kept, Kept]], shared: Sequence[Edit]) -> Iterator[str]:
    """By which edits the versions moved, each once, with whose it is where it is not that of all."""
    by: dict[str, list[str]] = {}
    for mark, (old, new) in zip(marks, both, strict=False):  # kits move as their versions do
        made = edits(old, new)
        told = [f"by edit {shared.index(one) + 1}" if one in shared else f"by {edit_told(one)}" for one in made]
        for one in told or [NO_EDIT]:
            by.setdefault(one, []).append(mark)
    for edit, whose in by.items():
        yield f"    {of(whose, len(both))}{edit}"


def edit_told(one: Edit) -> str:
    """An edit with what was written and is."""
    return f"{one.what}: {ends(one.was, one.now)}"


def shared_edits(changes: Sequence[Change]) -> dict[Edit, list[str]]:
    """The edits by which several designs moved, with those designs."""
    found: dict[Edit, list[str]] = {}
    for change in changes:
        for one in dict.fromkeys(edit for old, new in change.both for edit in edits(old, new)):
            found.setdefault(one, []).append(change.design)
    return {one: designs for one, designs in found.items() if len(designs) > 1}


def _in_one(where: str, rows: Sequence[Moved]) -> list[str]:
    """Numbers that differ, for a sentence: where they do is said at the first of them."""
    return [f"{where if nth == 0 else ''}{row.label}, {ends(row.was, row.now)}" for nth, row in enumerate(rows)]


def moved_told(was: Ledger, now: Ledger) -> str:
    """A handful of what differs from the ledger of a revision, in one sentence; nothing where nothing does."""
    told: list[str] = []
    for old, new in paired(was, now):
        if old is None or new is None:
            told += [f"version {one.title} is {'new' if one is new else 'gone'}" for one in (old, new) if one]
        else:
            told += _in_one(f"in {new.title}: " if len(now.versions) > 1 else "", moved(old, new))
            for one in other_kits(old, new):
                told += _in_one(f"in {one.title}: ", one.rows)
    more = [f"and {len(told) - HANDFUL} more"] if len(told) > HANDFUL else []
    return "; ".join([*told[:HANDFUL], *more])
