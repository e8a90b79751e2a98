"""How an item is bought, kept and given out: packs, shop, what lies in the drawer. Exact, in the item's unit."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from decimal import Decimal

_FINEST = 9  # decimals: nobody writes finer, and the dust of a conversion lies beyond


def exact(number: float) -> Fraction:
    """A number as a person wrote it: 0.1 is a tenth."""
    return Fraction(repr(round(number, _FINEST)))


def counted_in(unit: str) -> str:
    """In what an item is counted, as a sentence says it: by the piece, in g."""
    return "by the piece" if unit == "piece" else f"in {unit}"


@dataclass(frozen=True, slots=True)
class Pack:
    """A size that a shop sells: what it holds, its price if known, and the least number sold."""

    holds: Fraction
    price: Decimal | None = None
    at_least: int = 1


@dataclass(frozen=True, slots=True)
class Shop:
    """Where things are bought: the least order, what delivery costs, and from which order on it is free."""

    name: str
    least_order: Decimal | None = None
    delivery: Decimal | None = None
    free_from: Decimal | None = None


@dataclass(frozen=True, slots=True)
class Spares:
    """So many to spare for each ten, or another number, that are begun."""

    many: int
    per: int


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
