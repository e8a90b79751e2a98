"""What a part is made of, as a part sees it: clay, wire, stones and the rest, in mm and g."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from sheetgen.base.spread import Spread, spread

if TYPE_CHECKING:
    from decimal import Decimal

    from sheetgen.base.place import Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Item:
    """One item of stock. `pack` and amounts are in `unit`: g, mm, mL, mm² or piece."""

    id: str
    name: str
    unit: str = "piece"
    pack: float | None = None
    price: Decimal | None = None
    allowance: float = 0.0
    cautions: tuple[str, ...] = ()
    kiln: bool = True
    note: str = ""
    sources: tuple[tuple[str, str], ...] = ()
    place: Place | None = field(default=None, compare=False, repr=False)


@dataclass(frozen=True, slots=True, kw_only=True)
class Phase:
    """One phase of a firing: heating rate in °C/min (None: as fast as the kiln goes), °C, min, and the bed."""

    to: float
    hold: Spread
    rate: Spread | None = None
    bed: str = "open shelf"
    cool_below: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Clay(Item):
    """A metal clay. Shrinkage is linear, on the wet size; density wet, g/cm³; drying in min."""

    shrinkage: Spread
    thickness_shrinkage: Spread
    density: float
    metal_share: float
    solid_density: float | None = None
    drying: Spread | None = None
    firing: tuple[Phase, ...] = ()
    tested: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Wire(Item):
    """Round wire: thickness in mm, density in g/cm³."""

    thickness: float
    density: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Stone(Item):
    """A stone: widest across as a range, height, both mm."""

    size: Spread
    height: Spread | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Adhesive(Item):
    """An adhesive: cure in min at the maker's temperature."""

    cure: Spread = field(default_factory=lambda: spread(0))


@dataclass(frozen=True, slots=True, kw_only=True)
class Tool(Item):
    """A tool, or a set of them in several sizes. `kind` is what parts ask for: former, drill, round cutter."""

    kind: str = ""
    sizes: tuple[float, ...] = ()
