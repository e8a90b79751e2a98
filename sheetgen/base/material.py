"""What a part is made of, as a part sees it: clay, wire, stones and the rest, in mm and g."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from sheetgen.base.interval import Interval, interval
from sheetgen.base.supply import Supply

if TYPE_CHECKING:
    from sheetgen.base.place import Place, Word
    from sheetgen.base.room import Room


@dataclass(frozen=True, slots=True, kw_only=True)
class Item:
    """One item of stock. Amounts are in `unit`: g, mm, mL, mm² or piece. `supply` is how it is bought and kept.

    `acts_as` and `bears` are in the words of facts/bench.py; it bears heat up to so many °C, and anything else up to
    infinity or not at all. `hard` is a temper that heat takes away. `at_the_bench` is what a step that uses it says.
    `ahead` is what is done to it in the last wait that begins so many min before that step (`ahead_by`), with the
    tools of `ahead_with` by their ids.
    """

    id: str
    name: str
    unit: str = "piece"
    supply: Supply = field(default_factory=Supply)
    allowance: float = 0.0
    cautions: tuple[str, ...] = ()
    acts_as: tuple[str, ...] = ()
    metal: str = ""
    coated: str = ""
    hard: bool = False
    bears: tuple[tuple[str, float], ...] = ()
    note: str = ""
    at_the_bench: str = ""
    ahead: str = ""
    ahead_by: float = 0.0
    ahead_with: tuple[Word, ...] = ()
    sources: tuple[tuple[str, str], ...] = ()
    place: Place | None = field(default=None, compare=False, repr=False)

    @property
    def pack(self) -> float | None:
        """What its first pack holds, where stock says so."""
        return float(self.supply.packs[0].holds) if self.supply.packs else None

    @property
    def spool(self) -> float | None:
        """How much of it that pack holds, mm, where it is sold by length."""
        return self.pack if self.unit == "mm" else None

    @property
    def longest(self) -> float | None:
        """How much of it the largest pack holds, mm, where it is sold by length."""
        return float(max(pack.holds for pack in self.supply.packs)) if self.spool else None

    def acts(self, *words: str) -> bool:
        """Whether it acts as any of these."""
        return bool(self.acts_as) and any(word in self.acts_as for word in words)

    def borne(self, what: str) -> float | None:
        """How much of something stock says that it bears; None where stock is silent."""
        return next((most for word, most in self.bears if word == what), None)


ONE_SIZE = 0.005  # mm: two sizes nearer than this are one

# What a part may ask the drawer for, and the kiln.
TOOL_KINDS = (
    "former", "ring former", "dome former", "cup former", "rod", "peg", "drill", "round cutter", "disc cutter", "slat",
    "cards", "kiln",
)  # fmt: skip


BEDS = ("open shelf", "carbon")
"""What pieces lie on or in while they are fired; fibre or vermiculite under them leaves them open to the air."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Phase:
    """One phase of a firing: heating rate in °C/min (None: as fast as the kiln goes), °C, min, and a bed of BEDS.

    `bed_depth` is how much carbon, mm, its maker wants all round the pieces.
    """

    to: float
    hold: Interval
    rate: Interval | None = None
    bed: str = "open shelf"
    bed_depth: float | None = None
    cool_below: float | None = None

    @property
    def in_carbon(self) -> bool:
        """Whether it is fired in a box of carbon."""
        return self.bed == "carbon"


STRENGTHS = ("least", "full")
"""How strong a program leaves the metal, as its maker says."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Program:
    """One of a clay's firing programs, with the shrinkage that belongs to it: linear, on the wet size.

    What shrinks in drying and what shrinks in the fire after it are apart where the maker gives both. `good_for` is
    the maker's word of what it does for; `tested` whether the studio's own strips say how it shrinks.
    """

    name: str = ""
    shrinkage: Interval
    thickness_shrinkage: Interval
    drying_shrinkage: Interval | None = None
    firing_shrinkage: Interval | None = None
    firing: tuple[Phase, ...] = ()
    strength: str = ""
    good_for: str = ""
    tested: bool = False

    @property
    def peak(self) -> float:
        """How hot it gets, °C."""
        return max((phase.to for phase in self.firing), default=0.0)

    @property
    def rank(self) -> tuple[int, float]:
        """The stronger, the more: full strength before what the maker is silent on, that before least; then by heat."""
        return {"least": 0, "full": 2}.get(self.strength, 1), self.peak


@dataclass(frozen=True, slots=True, kw_only=True)
class Clay(Item):
    """A metal clay, by one of its programs. Shrinkage is linear, on the wet size; density wet, g/cm³; drying in min.

    What belongs to the program stands here too, so that whoever works with a clay knows nothing of programs.
    `drying_thickness` is the thickness, mm, that the maker's drying is meant for. `because` says, where it is fired by
    a weaker program than it could be, on account of what.
    """

    shrinkage: Interval
    thickness_shrinkage: Interval
    drying_shrinkage: Interval | None = None
    firing_shrinkage: Interval | None = None
    density: float
    metal_share: float
    solid_density: float | None = None
    drying: Interval | None = None
    drying_thickness: float | None = None
    firing: tuple[Phase, ...] = ()
    torch: bool = False
    tested: bool = False
    program: str = ""
    strength: str = ""
    good_for: str = ""
    because: str = ""
    programs: tuple[Program, ...] = ()

    def fired_by(self, program: Program, because: str = "") -> Clay:
        """The same clay, fired by one of its programs."""
        return replace(
            self, program=program.name, because=because, **{name: getattr(program, name) for name in OF_A_PROGRAM}
        )


OF_A_PROGRAM = (
    "shrinkage", "thickness_shrinkage", "drying_shrinkage", "firing_shrinkage", "firing", "tested", "strength",
    "good_for",
)  # fmt: skip
"""What a clay has by its program."""


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
class Metal(Item):
    """Metal to be melted, as grain or scrap, bought by weight: density in g/cm³."""

    density: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Stone(Item):
    """A stone: widest across as a range, width across the narrow way if it is oval, height, all mm."""

    size: Interval
    width: Interval | None = None
    height: Interval | None = None
    density: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Bead(Item):
    """A bead: size across, length along its hole, hole, all mm."""

    size: Interval
    length: Interval
    hole: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Fibre(Item):
    """Cord, thread, ribbon, stringing wire: thickness in mm; a width makes it flat. Bought by length, mm."""

    thickness: float
    width: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding(Item):
    """A bought-in part: its inside, its length in the finished piece, its depth, width and wire or stem, mm.

    `form` is what it is drawn as (facts/findings.py).
    """

    form: str = ""
    inside: float | None = None
    wire: float | None = None
    length: float | None = None
    depth: float | None = None
    width: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Adhesive(Item):
    """An adhesive: cure in min; pot life in min at a temperature in °C; parts by volume; density in g/cm³.

    `least` is the smallest mix in mL that can be measured out. `mixed` where stock says how much of a part B it takes.
    """

    cure: Interval = field(default_factory=lambda: interval(0))
    pot_life: Interval | None = None
    pot_temperature: float = 23.0
    part_b: float = 1.0
    mixed: bool = False
    density: float = 1.15
    density_b: float | None = None
    least: float = 0.3


@dataclass(frozen=True, slots=True, kw_only=True)
class Consumable(Item):
    """What is used up: where a solder flows, °C; a plug or roll across, mm; what a mL weighs as it is poured, g."""

    flows_at: float | None = None
    across: float | None = None
    bulk_density: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Tool(Item):
    """A tool, or a set of them in several sizes. `kind` is what parts ask for: former, drill, round cutter.

    `engraved` is each size as stock writes it, such as 1/16 in. Of a kiln: heating at full power in °C/min and cooling
    constant in min, as the studio measured them; its chamber and shelf, and the room from one shelf to the next, mm.
    Of a firing box: its inside, mm. `group` is where the list of tools has it, and `owned` how many there are, 0 where
    stock does not say. `singular` is what a set is called where one size of it is wanted.
    """

    kind: str = ""
    group: str = ""
    owned: int = 0
    singular: str = ""
    sizes: tuple[float, ...] = ()
    engraved: tuple[str, ...] = ()
    full_rate: Interval | None = None
    cooling: Interval | None = None
    chamber: Room | None = None
    shelf: tuple[float, float] | None = None
    shelf_gap: float | None = None
    inside: Room | None = None

    def engraved_as(self, size: float) -> str:
        """What is engraved on the one of so many mm; empty where none of it is so near that it is the one."""
        found = zip(self.sizes, self.engraved, strict=False)
        return next((said for one, said in found if abs(one - size) < ONE_SIZE), "")


NUMBERS: dict[str, dict[str, tuple[str, bool]]] = {
    "Clay": {
        "shrinkage": ("", False), "thickness_shrinkage": ("", False), "density": ("g/cm³", False),
        "metal_share": ("", False), "allowance": ("", False), "solid_density": ("g/cm³", True),
        "pack": ("g", True), "drying": ("min", True),
    },
    "Wire": {
        "thickness": ("mm", False), "density": ("g/cm³", False), "spool": ("mm", True), "longest": ("mm", True),
    },
    "Sheet": {"thickness": ("mm", False), "density": ("g/cm³", False), "long": ("mm", True), "wide": ("mm", True)},
    "Stone": {"size": ("mm", False), "width": ("mm", True), "height": ("mm", True), "density": ("g/cm³", True)},
    "Bead": {"size": ("mm", False), "length": ("mm", False), "hole": ("mm", True)},
    "Fibre": {"thickness": ("mm", False), "width": ("mm", True), "spool": ("mm", True), "longest": ("mm", True)},
    "Finding": {
        "inside": ("mm", True), "length": ("mm", True), "depth": ("mm", True), "width": ("mm", True),
        "wire": ("mm", True),
    },
    "Adhesive": {
        "cure": ("min", False), "pot_life": ("min", True), "pot_temperature": ("°C", False), "part_b": ("", False),
        "density": ("g/mL", False), "density_b": ("g/mL", True), "least": ("mL", False),
    },
    "Metal": {"density": ("g/cm³", False)}, "Consumable": {"across": ("mm", True)}, "Item": {}, "Tool": {},
}  # fmt: skip
"""What arithmetic may ask of an item: its unit, and whether stock may be silent on it."""

# What varies with another number of the same item, where stock does not say otherwise.
SAME_AS = {"thickness_shrinkage": "shrinkage", "length": "size"}
