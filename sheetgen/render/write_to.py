"""To whom to write: the orders that hold another sheet than is printed now, in plain lines for a terminal."""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

from sheetgen.base.spelling import in_turn
from sheetgen.render.changes_told import is_below, told_below
from sheetgen.render.moved_folded import folded, letters

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.model.another import Another
    from sheetgen.model.change import Change
    from sheetgen.render.changes_told import Below


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
    held = sorted(found, key=lambda one: (one.holding.kit.design, one.holding.kit.called))
    for _, kits in groupby(held, key=lambda one: one.holding.kit.design):
        yield from _design(list(kits), below)


def _design(kits: Sequence[Another], below: Below) -> Iterator[str]:
    """The kits of a design, a letter each, and the numbers that differ of those that have no block of their own."""
    own = [one for one in kits if one.moved and not is_below(one, below)]
    marks = dict(zip(map(id, own), letters(len(own)), strict=True))
    for one in kits:
        kit, code, mark = one.holding.kit, one.holding.code, marks.get(id(one), "")
        held = ", ".join(f"{order} ({code}, {day})" for order, day in one.holding.orders)
        known = ", as below" if is_below(one, below) else ""
        yield f"  {mark}{' ' * bool(mark)}{kit.design}, {kit.called}: {held}: {one.told}{known}"
    yield from folded({marks[id(one)]: one.moved for one in own})
