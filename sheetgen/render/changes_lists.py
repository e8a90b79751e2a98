"""What moved, and who holds another sheet, as lists for a spreadsheet."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.spelling import bare, in_turn
from sheetgen.model.fingerprint import FIGURES
from sheetgen.model.moved import edits, moved, prices_moved
from sheetgen.model.sheets import Sheet
from sheetgen.render.changes_told import HEADS, is_below, told_below

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.model.another import Another
    from sheetgen.model.ledger import Kept
    from sheetgen.model.moved import Moved
    from sheetgen.model.sheets import Cell
    from sheetgen.render.changes_told import Change

CHANGES = ("design", "version", "part", "figure", "was", "is", "cause", "orders")
WRITE_TO = ("order", "date", "design", "version", "choices", "colourway", "fingerprint", "revision", "why")
Row = tuple["Cell", ...]


def changes_lists(changes: Sequence[Change], found: Sequence[Another]) -> list[Sheet]:
    """The orders to write to, an order and kind of kit a line; and what moved, a number a line."""
    below = told_below(changes)
    with_version = [one for one in found if is_below(one, below)]
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
        )
        for one in found
        for kit in (one.holding.kit,)
        for order, day in one.holding.orders
    ]
    return [
        Sheet("write to", WRITE_TO, tuple(sorted(people, key=lambda row: in_turn(str(row[0]))))),
        Sheet("changes", CHANGES, tuple(rows)),
    ]


def _design(change: Change, found: Sequence[Another], with_version: Sequence[Another]) -> Iterator[Row]:
    """What moved of a design; of the orders found those whose numbers are all told `with_version` stand beside it."""
    was, now, design = change.was, change.now, change.design
    own = [one for one in found if one.holding.kit.design == design]
    for error in change.errors:
        yield design, "", "", "", "", "", f"no longer passes: {error}", _orders(own)
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
