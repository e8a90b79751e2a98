"""Kit by kit what a run of orders sends, in the order of its stack, and what lies in each kind."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.kits.coded import code_of_kit
from sheetgen.kits.contents import contents

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.kits.contents import Contents
    from sheetgen.kits.ordered import Order, Run
    from sheetgen.kits.taken import Kits, Taken


@dataclass(frozen=True, slots=True)
class Kind:
    """A kind of kit, what one of it holds, and the fingerprint of its sheets."""

    kits: Kits
    contents: Contents
    code: str

    @property
    def slip(self) -> bool:
        """Whether only a part of a kit is sent, and no sheet."""
        return bool(self.kits.only)

    @property
    def version(self) -> str:
        """The version as its sheets call it: nothing where the design has only one, and nothing was chosen."""
        return self.kits.called if self.kits.choices or len(self.kits.worked.versions) > 1 else ""

    @property
    def colourway(self) -> str:
        """In which colours it comes, in words."""
        return self.kits.colourway.name if self.kits.colourway else ""


@dataclass(frozen=True, slots=True)
class Parcel:
    """One kit of an order, or one part that is sent by itself: the `nth` of so `many` in the order."""

    order: Order
    kind: Kind
    nth: int
    many: int

    @property
    def which(self) -> str:
        """Which it is, as its card says it."""
        what = "part" if self.kind.slip else "kit"
        return f"{what} {self.nth} of {self.many}"


def parcels(run: Run, taken: Sequence[Taken]) -> Iterator[Parcel]:
    """Every kit of a run, order by order; `taken` is what the run takes. Kits and single parts are counted apart."""
    many, seen = Counter[tuple[int, bool]](), Counter[tuple[int, bool]]()
    each = list(lots(run, taken))
    for order, kind, count in each:
        many[id(order), kind.slip] += count
    for order, kind, count in each:
        which = (id(order), kind.slip)
        for _ in range(count):
            seen[which] += 1
            yield Parcel(order, kind, seen[which], many[which])


def lots(run: Run, taken: Sequence[Taken]) -> Iterator[tuple[Order, Kind, int]]:
    """The same, kits of an order that are alike together, with how many they are."""
    held = ((kits, contents(kits, taken)) for kits in run.kinds)
    kinds = {id(kits): Kind(kits, own, code_of_kit(kits, own)) for kits, own in held}
    for order in run.orders:
        for part in order.parts:
            yield order, kinds[id(part.kits)], part.count
