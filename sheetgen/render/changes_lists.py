"""What moved, and who holds another sheet, as lists for a spreadsheet."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.spelling import bare, in_turn
from sheetgen.model.fingerprint import FIGURES
from sheetgen.model.moved import edits, moved, prices_moved
from sheetgen.model.sheets import Sheet
from sheetgen.render.moved_folded import HEADS, number_told

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from sheetgen.model.another import Another
    from sheetgen.model.change import Change
    from sheetgen.model.ledger import Kept
    from sheetgen.model.moved import Moved
    from sheetgen.model.sheets import Cell

CHANGES = ("design", "version", "part", "figure", "was", "is", "cause", "orders")
WRITE_TO = ("order", "date", "design", "version", "choices", "colourway", "fingerprint", "revision", "why", "numbers")
Row = tuple["Cell", ...]


def changes_lists(changes: Sequence[Change], found: Sequence[Another]) -> list[Sheet]:
    """The orders to write to, an order and kind of kit a line with its own numbers; and what moved, a number a line."""
    told = _told_of_versions(changes)
    with_version = [one for one in found if _with_version(one, told)]
    rows = [row for change in changes for row in _design(change, found, with_version)]
    for one in found:
        kit, code = one.holding.kit, one.holding.code
        if one not in with_version:
            rows += _numbers(kit.design, kit.called, one.moved, _cause(one.was, one.now), [one])
            if not one.moved:
                rows.append((kit.design, kit.called, "", "", code, "", one.told, _orders([one])))
    people = [
        (
            order,
            day,
            kit.design,
            kit.version,
            kit.chosen,
            kit.colourway,
            one.holding.code,
            one.holding.revision,
            one.told,
            "; ".join(map(number_told, one.moved)),
        )
        for one in found
        for kit in (one.holding.kit,)
        for order, day in one.holding.orders
    ]
    return [
        Sheet("write to", WRITE_TO, tuple(sorted(people, key=lambda row: in_turn(str(row[0]))))),
        Sheet("changes", CHANGES, tuple(rows)),
    ]


def _told_of_versions(changes: Sequence[Change]) -> dict[tuple[str, str], frozenset[Moved]]:
    """The numbers that are told of each version of a design, by what it is called and was called before.

    Also those of who makes it, which a figure of the teacher's workings may tell for them.
    """
    pairs = ((change.design, was, now) for change in changes for was, now in change.pairs)
    return {
        (design, bare(title)): frozenset((*moved(was, now), *moved(was.of_the_maker, now.of_the_maker)))
        for design, was, now in pairs
        if was is not None and now is not None
        for title in (was.title, now.title)
    }


def _with_version(one: Another, told: Mapping[tuple[str, str], frozenset[Moved]]) -> bool:
    """Whether all that differs of a kit has its line at the version, so that the order can stand beside those lines."""
    kit = one.holding.kit
    of_version = told.get((kit.design, bare(kit.version)), frozenset())
    return bool(one.moved) and not kit.choices and of_version.issuperset(one.moved)


def _design(change: Change, found: Sequence[Another], with_version: Sequence[Another]) -> Iterator[Row]:
    """What moved of a design; of the orders found those whose numbers are all told `with_version` stand beside it."""
    was, now, design = change.was, change.now, change.design
    own = [one for one in found if one.holding.kit.design == design]
    for error in change.errors:
        told = "; ".join(filter(None, (error.message, error.where, error.help)))
        yield design, "", "", "", "", "", f"no longer passes: {told}", _orders(own)
    if was is None or now is None:
        return
    for old, new in change.pairs:
        if new is None and old is not None:
            yield design, old.title, "", "", old.code, "", "no longer made", ""
        elif old is None and new is not None:
            yield design, new.title, "", "", "", new.code, "added", ""
        elif old is not None and new is not None:
            titles = {bare(old.title), bare(new.title)}
            holding = [one for one in with_version if one.design == design and bare(one.holding.kit.version) in titles]
            yield from _numbers(design, new.title, moved(old, new), _cause(old, new), holding)
    for one in change.other_kits:
        yield from _numbers(design, one.title, one.rows, "the colourway")
    yield from _numbers(design, "", prices_moved(was, now), "the stock")


def _numbers(
    design: str, version: str, rows: Sequence[Moved], cause: str, found: Sequence[Another] = ()
) -> Iterator[Row]:
    """A line for each number, with the orders among those found whose sheets print it."""
    # A size that who makes it reads may be told by a figure of the workings that moves as it does.
    own = set(rows)
    printed = [(one, {(r if r in own else (r.was, r.now)) for r in one.moved}) for one in found]
    for row in rows:
        part, _, figure = row.label.rpartition(": ")
        named = f"{figure} ({row.key})" if row.group == FIGURES else figure
        orders = _orders([one for one, its in printed if row in its or (row.was, row.now) in its])
        yield design, version, part or HEADS.get(row.group, ""), named, row.was, row.now, cause, orders


def _cause(was: Kept | None, now: Kept | None) -> str:
    made = edits(was, now) if was is not None and now is not None else []
    return "; ".join(f"{one.what}: was {one.was or 'none'}, is {one.now or 'none'}" for one in made)


def _orders(found: Sequence[Another]) -> str:
    return "; ".join(dict.fromkeys(order for one in found for order, _ in one.holding.orders))
