"""What is to be done about what moved, in plain lines for a terminal."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

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
        yield "  write to the orders on top; the present sheets of each version are those published"
        yield "  for an order's own, `sheetgen orders --apart` with its lines: a PDF to mail, and whole kits again"
