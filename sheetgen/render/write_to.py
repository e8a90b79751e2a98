"""To whom to write: the orders that hold another sheet than is printed now, in plain lines for a terminal."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.spelling import in_turn
from sheetgen.render.changes_told import is_below, rows_told, told_below

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.model.another import Another
    from sheetgen.render.changes_told import Change


def write_to(found: Sequence[Another], changes: Sequence[Change], orders: int) -> Iterator[str]:
    """The orders on top, then by design and version with the fingerprint and day of each; `orders` is of how many.

    The numbers that differ stand under each kind, unless just those stand further below, under its own name.
    """
    named = sorted({order for one in found for order, _ in one.holding.orders}, key=in_turn)
    if not named:
        if orders:
            yield f"write to nobody: no order of {orders} holds another sheet than is printed now"
        return
    yield f"write to: {', '.join(named)}"
    below = told_below(changes)
    for one in sorted(found, key=lambda one: (one.holding.kit.design, one.holding.kit.called)):
        kit, code = one.holding.kit, one.holding.code
        held = ", ".join(f"{order} ({code}, {day})" for order, day in one.holding.orders)
        known = is_below(one, below)
        yield f"  {kit.design}, {kit.called}: {held}: {one.told}{', as below' if known else ''}"
        if not known:
            yield from rows_told(one.moved)
