"""What is to be done about what moved, in plain lines for a terminal."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.spelling import in_turn, slug

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from sheetgen.model.another import Another
    from sheetgen.model.change import Change


def next_told(changes: Sequence[Change], found: Sequence[Another]) -> Iterator[str]:
    """What to do, in the order in which it is done; nothing where there is nothing.

    `found` are the orders that hold another sheet than is printed now.
    """
    failing = [one.design for one in changes if one.errors]
    moved = [one.design for one in changes if one.to_be_revised]
    if failing:
        yield f"  mend, so that it passes again: {', '.join(failing)}"
    if moved:
        yield f"  write the next revision in project.yaml, then publish: {', '.join(moved)}"
    if found:
        yield "  write to the orders on top, and mail them the new sheets:"
        yield from _mailed(found)


def _mailed(found: Sequence[Another]) -> Iterator[str]:
    """The files for each order: those of its version, or its own, which a run makes."""
    of_a_version = sorted(((one, one.present.mail) for one in found), key=lambda one: one[0].design)
    for one, mail in of_a_version:
        if mail is not None:
            first = "" if mail.stand else ", once it is published"
            yield f"    {_orders([one])}: {one.design}, {one.holding.kit.version}{first}, in {mail.folder}:"
            yield from (f"      {', '.join(files)}" for files in mail.files)
    own = [one for one in found if one.now is not None and one.present.mail is None]
    if own:
        made = "as `sheetgen orders --apart` with the lines of these orders makes it, in apart/ of its folder:"
        yield f"    {_orders(own)}: what is its own, {made}"
        yield f"      {', '.join(f'{slug(order)}.pdf' for order in _numbers(own))}"
    none = [one for one in found if one.now is None]
    if none:
        yield f"    {_orders(none)}: nothing yet, for it is not made now; why stands on top"


def _orders(found: Iterable[Another]) -> str:
    """The numbers of all who hold these kits."""
    return ", ".join(_numbers(found))


def _numbers(found: Iterable[Another]) -> list[str]:
    return sorted({order for one in found for order, _ in one.holding.orders}, key=in_turn)
