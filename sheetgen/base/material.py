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


# What a part may ask the drawer for, and the kiln.
TOOL_KINDS = (
    "former", "ring former", "dome former", "cup former", "rod", "peg", "drill", "round cutter", "disc cutter", "slat",
    "kiln",
)  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class Phase:
    """One phase of a firing: heating rate in °C/min (None: as fast as the kiln goes), °C, min, and the bed."""

    to: float
    hold: Spread
    rate: Spread | None = None
    bed: str = "open shelf"
    cool_below: float | None = None


@dataclass(frozen=True, slots=True)
class Pace:
    """How fast a kiln is: heating at full power in °C/min, and its cooling constant in min."""

    full: Spread
    cooling: Spread


@dataclass(frozen=True, slots=True, kw_only=True)
class Clay(Item):
    """A metal clay. Shrinkage is linear, on the wet size; density wet, g/cm³; drying in min."""

    shrinkage: Spread
    thickness_shrinkage: Spread
    density: float
    metal_share: float
    solid_density: float | None = None
    drying: Spread | None = None
    drying_thickness: float | None = None
    firing: tuple[Phase, ...] = ()
    torch: bool = False
    tested: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Wire(Item):
    """Round wire: thickness in mm, density in g/cm³."""

    thickness: float
    density: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet(Item):
    """Sheet metal: thickness in mm, density in g/cm³; bought by area, mm², in pieces `long` by `wide` mm if known."""

    thickness: float
    density: float
    long: float | None = None
    wide: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Stone(Item):
    """A stone: widest across as a range, width across the narrow way if it is oval, height, all mm."""

    size: Spread
    width: Spread | None = None
    height: Spread | None = None
    density: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Bead(Item):
    """A bead: size across, length along its hole, hole, all mm."""

    size: Spread
    length: Spread
    hole: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Fibre(Item):
    """Cord, thread, ribbon, stringing wire: thickness in mm; a width makes it flat. Bought by length, mm."""

    thickness: float
    width: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding(Item):
    """A bought-in part: its inside, its length in the finished piece and its depth, mm, where they matter."""

    inside: float | None = None
    length: float | None = None
    depth: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Adhesive(Item):
    """An adhesive: cure in min; pot life in min at a temperature in °C; parts by volume; density in g/cm³.

    `least` is the smallest mix in mL that can be measured out.
    """

    cure: Spread = field(default_factory=lambda: spread(0))
    pot_life: Spread | None = None
    pot_temperature: float = 23.0
    part_b: float = 1.0
    density: float = 1.15
    least: float = 0.3


@dataclass(frozen=True, slots=True, kw_only=True)
class Tool(Item):
    """A tool, or a set of them in several sizes. `kind` is what parts ask for: former, drill, round cutter.

    Of a kiln: heating at full power in °C/min and cooling constant in min, as the studio measured them.
    """

    kind: str = ""
    sizes: tuple[float, ...] = ()
    full_rate: Spread | None = None
    cooling: Spread | None = None
