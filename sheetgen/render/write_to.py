"""To whom to write: the orders that hold another sheet than is printed now, in plain lines for a terminal."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.spelling import bare, in_turn
from sheetgen.model.moved import moved
from sheetgen.render.changes_told import rows_told

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.model.another import Another
    from sheetgen.model.moved import Moved
    from sheetgen.render.changes_told import Change


def write_to(found: Sequence[Another], changes: Sequence[Change], orders: int) -> Iterator[str]:
    """The orders on top, then by design and version with the fingerprint and day of each; `orders` is of how many.

    The numbers that differ stand under each kind, unless they stand further below, where the version's changes do.
    """
    named = sorted({order for one in found for order, _ in one.holding.orders}, key=in_turn)
    if not named:
        if orders:
            yield f"write to nobody: no order of {orders} holds another sheet than is printed now"
        return
    yield f"write to: {', '.join(named)}"
    below = {key: rows for change in changes for key, rows in _below(change)}
    for one in sorted(found, key=lambda one: (one.holding.kit.design, one.holding.kit.called)):
        kit, code = one.holding.kit, one.holding.code
        held = ", ".join(f"{order} ({code}, {day})" for order, day in one.holding.orders)
        rows = set() if kit.choices else below.get((kit.design, bare(kit.version)), set())
        known = bool(one.moved) and rows.issuperset(one.moved)
        yield f"  {kit.design}, {kit.called}: {held}: {one.told}{', as below' if known else ''}"
        if not known:
            yield from rows_told(one.moved)


def _below(change: Change) -> Iterator[tuple[tuple[str, str], set[Moved]]]:
    """The numbers that are told of each version of a design, by what it is called and was called before."""
    for was, now in change.pairs:
        if was is not None and now is not None:
            rows = set(moved(was, now))
            yield from (((change.design, bare(title)), rows) for title in (was.title, now.title))
