"""What of the stock a design hangs on, as a key: the items that it asked for, and what every design may ask for.

Every design may ask which items there are and of what sort, for all tools of a kind (the nearest is taken), and for the
cautions and faults that the studio knows. Of any other item the value counts, and not where or how it is written.
"""

from __future__ import annotations

import functools
import hashlib
from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.base.material import Tool

if TYPE_CHECKING:
    from collections.abc import Iterable

    from sheetgen.model.project import Stock


_NOTHING = repr(None)


@dataclass(frozen=True, eq=False)
class Stocked:
    """The keys of one stock."""

    stock: Stock

    def key(self, asked: Iterable[str]) -> str:
        """Of a design that asked for these items, by their ids; of one that is no longer there its name alone."""
        told = self._told
        named = ((name, told.get(name, _NOTHING)) for name in sorted(asked))
        return _digest((self._for_all, *named))

    @functools.cached_property
    def _told(self) -> dict[str, str]:
        """Every item in words: hundreds of designs ask for the same."""
        return {name: repr(item) for name, item in self.stock.items.items()}

    @functools.cached_property
    def _for_all(self) -> str:
        stock = self.stock
        each = stock.items.items()
        kept = [one if isinstance(one, Tool) and one.kind else (name, type(one).__name__) for name, one in each]
        return _digest((kept, [*stock.cautions.values()], [*stock.faults.items()]))


def _digest(told: object) -> str:
    return hashlib.sha256(repr(told).encode("utf-8", "surrogatepass")).hexdigest()
