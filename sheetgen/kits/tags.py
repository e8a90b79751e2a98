"""The tag of every bundle that is cut: a letter, by which the cutting table and the pick list call it."""

from __future__ import annotations

from itertools import count, product
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

    from sheetgen.base.material import Item
    from sheetgen.kits.cut_list import Cutting
    from sheetgen.kits.taken import Bundle, Held

LETTERS = "abcdefghjkmnpqrstuvwxyz"
"""Without what reads as a figure beside a length."""
Tagged = tuple[str, "Bundle"]
"""An item by its name in stock, and the bundle."""


def tags(cuttings: Iterable[Cutting]) -> dict[Tagged, str]:
    """The letter that each bundle's tag bears, no two alike in a run, by its item's name in stock and the bundle."""
    bundles = [(one.got.taken.item.id, bundle.bundle) for one in cuttings for bundle in one.bundles]
    return dict(zip(bundles, _letters(), strict=False))


def tag_of(item: Item, held: Held, marks: Mapping[Tagged, str]) -> str:
    """The letter under which what a bag holds comes from the cutting table; nothing of what is not cut."""
    return marks.get((item.id, held.bundle), "") if held.bundle else ""


def _letters() -> Iterator[str]:
    """One letter each as long as they last, then aa, ab …."""
    for many in count(1):
        yield from map("".join, product(LETTERS, repeat=many))
