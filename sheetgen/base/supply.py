"""How an item is bought, kept and given out: packs, shop, what lies in the drawer. Exact, in the item's unit."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import ceil
from typing import TYPE_CHECKING

from sheetgen.base.trouble import CannotBe

if TYPE_CHECKING:
    from decimal import Decimal


def counted_in(unit: str) -> str:
    """In what an item is counted, as a sentence says it: by the piece, in g."""
    return "by the piece" if unit == "piece" else f"in {unit}"


@dataclass(frozen=True, slots=True)
class Pack:
    """A size that a shop sells: what it holds, its price if known, and the least number sold."""

    holds: Fraction
    price: Decimal | None = None
    at_least: int = 1

    def __post_init__(self) -> None:
        if self.holds <= 0:
            raise CannotBe("a pack holds something", help="more than nothing", field="packs")
        if self.price is not None and self.price <= 0:
            raise CannotBe(
                f"a pack cannot cost {self.price}", help="its price, or none if it is not known", field="price"
            )
        if self.at_least < 1:
            raise CannotBe(f"a least number of {self.at_least} packs", help="1 or more", field="at least")


@dataclass(frozen=True, slots=True)
class Shop:
    """Where things are bought: the least order, what delivery costs, and from which order on it is free."""

    name: str
    least_order: Decimal | None = None
    delivery: Decimal | None = None
    free_from: Decimal | None = None


@dataclass(frozen=True, slots=True)
class Spares:
    """`1 per 10`: so many for each ten that are begun. Common practice."""

    many: int
    per: int

    def __post_init__(self) -> None:
        if self.many < 1 or self.per < 1:
            raise CannotBe(f"spares cannot be {self}", help="1 per 10: for each ten that are begun", field="spares")

    def __str__(self) -> str:
        return f"{self.many} per {self.per}"

    def of(self, net: int) -> int:
        """How many go with so many of one colour."""
        return self.many * ceil(Fraction(net, self.per))


GIVEN_OUT = {
    "sealed": ("g", "mL", "mm", "mm²", "piece"),
    "weighed": ("g", "mL"),
    "counted": ("piece",),
    "cut": ("mm", "mm²"),
    "from the pot": ("g", "mL", "mm", "mm²", "piece"),
}
"""How a thing gets into a bag or onto a table, and in which units a thing is that can be given out so."""
GIVEN_OUT_BY_UNIT = {"piece": "counted", "g": "weighed", "mL": "from the pot", "mm": "cut", "mm²": "cut"}
"""Where stock does not say."""
DOES = ("kits", "people", "firings")
"""What a pack of something that is used as needed is enough for."""
ASK = "ask"


@dataclass(frozen=True, slots=True)
class Does:
    """A pack of it is enough for so many kits, people or firings."""

    many: int
    of: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Supply:
    """How one item is bought, kept and given out. Amounts are in its unit.

    The first of the packs is the one that the sheets reckon with. `have` is all that lies in the drawer; `ends` are the
    lengths of it, mm, of what is sold by length. `saw_cut` is lost between two pieces, mm; `keep_from` is the shortest
    end that is kept, mm, None where none is. `post` is "ask" where the carrier is to be asked whether it takes it.
    """

    packs: tuple[Pack, ...] = ()
    shop: Shop | None = None
    have: Fraction = Fraction(0)
    ends: tuple[Fraction, ...] = ()
    given_out: str = GIVEN_OUT_BY_UNIT["piece"]
    saw_cut: Fraction = Fraction(0)
    keep_from: Fraction | None = None
    spares: Spares | None = None
    post: str = ""
    a_pack_does: Does | None = None
