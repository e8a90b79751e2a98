"""What a design says of its kits: bags, what is left out, what lies in the box, and in which colours it comes."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from fractions import Fraction

    from sheetgen.base.material import Item
    from sheetgen.base.place import Place

By = Literal["counts", "shares", "parts"]


@dataclass(frozen=True, slots=True)
class Colourway:
    """A mix of colours on the seats of one item: each colour by its id, with its count, share of the whole, or part.

    Shares are fractions that come to 1, and counts come to the seats. `items` are the colours themselves, in their
    order; each fits the seat of `of`.
    """

    name: str
    of: Item
    seats: int
    by: By
    colours: tuple[tuple[str, Fraction], ...]
    items: tuple[Item, ...]
    place: Place | None = field(default=None, compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class KitBag:
    """A bag of a kit, and what of the list of materials goes into it."""

    name: str
    items: tuple[Item, ...]


@dataclass(frozen=True, slots=True)
class Kit:
    """What a kit of a version holds: its bags, what is left out of it, and the tools that lie in the box."""

    bags: tuple[KitBag, ...] = ()
    leave_out: tuple[Item, ...] = ()
    in_the_box: tuple[Item, ...] = ()
