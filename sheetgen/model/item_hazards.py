"""Which cautions an item brings wherever it comes to hand: by what it acts as, and those that stock says of it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.material import Adhesive

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from sheetgen.base.material import Item

OF_AN_ITEM: dict[str, Callable[[Item], bool]] = {
    "pickle": lambda item: item.acts("pickle", "acid"),
    "patina": lambda item: item.acts("sulphide"),
    "solvent vapour": lambda item: item.acts("solvent", "aerosol"),
    "epoxy": lambda item: isinstance(item, Adhesive) and not item.cautions,
    "fibre dust": lambda item: item.acts("support") and not item.cautions,
}
"""What is usual of an item; an adhesive's and a support's own cautions go before it."""


def brought_by(item: Item) -> Iterator[str]:
    """The cautions of an item by their names, its own first."""
    yield from item.cautions
    yield from (name for name, brings in OF_AN_ITEM.items() if brings(item))
