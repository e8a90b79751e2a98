"""Metals of the bench: where each begins to melt, which of them belong together, and which never meet in heat."""

from __future__ import annotations

from typing import NamedTuple

from sheetgen.facts.fact import Fact, Grade

_ITS = "defining fixed point of the temperature scale ITS-90, rounded"
_HANDBOOK = "solidus of a handbook of alloys, as remembered, not read"


class MetalFacts(NamedTuple):
    """A metal: the family of those that may meet it in the fire, and where it begins to melt, °C."""

    family: str
    solidus: Fact


def _melts(metal: str, degrees: float, source: str = _ITS) -> Fact:
    grade: Grade = "seen" if source == _ITS else "memory"
    return Fact(degrees, f"{metal} begins to melt", unit="°C", source=source, grade=grade)


EUTECTIC = Fact(
    779,
    "silver and copper in contact melt",
    unit="°C",
    source="silver-copper eutectic, published as 779 °C; as remembered",
    grade="memory",
)
MARGIN = Fact(
    20, "kept below where a metal begins to melt", unit="°C", source="common practice", grade="common practice"
)
LOW_SOLDER = Fact(
    450, "below this a solder is a soft one", unit="°C",
    source="brazing and soldering parted at 450 °C, as standards of welding do; as remembered", grade="memory",
)  # fmt: skip

METALS = {
    "fine silver": MetalFacts("silver", _melts("fine silver", 961)),
    "sterling": MetalFacts("silver", _melts("sterling silver", 802, _HANDBOOK)),
    "silver 960": MetalFacts("silver", _melts("silver 960", 880, _HANDBOOK)),
    "copper": MetalFacts("copper", _melts("copper", 1084)),
    "bronze": MetalFacts("bronze", _melts("bronze with 10 % of tin", 830, _HANDBOOK)),
    "brass": MetalFacts("brass", _melts("brass with 30 % of zinc", 915, _HANDBOOK)),
    "nickel silver": MetalFacts("nickel silver", _melts("nickel silver", 1020, _HANDBOOK)),
    "gold": MetalFacts("gold", _melts("gold", 1064)),
    "steel": MetalFacts("iron", _melts("steel", 1400, _HANDBOOK)),
    "stainless steel": MetalFacts("stainless steel", _melts("stainless steel", 1400, _HANDBOOK)),
    "aluminium": MetalFacts("aluminium", _melts("aluminium", 660)),
    "titanium": MetalFacts("titanium", _melts("titanium", 1660, _HANDBOOK)),
    "tin": MetalFacts("soft", _melts("tin", 231)),
    "lead": MetalFacts("soft", _melts("lead", 327, _HANDBOOK)),
    "zinc": MetalFacts("soft", _melts("zinc", 419)),
}
STRANGERS = {"bronze", "brass", "nickel silver"}
"""Families that do not meet silver in the fire unless somebody's data says that they may: common practice."""
