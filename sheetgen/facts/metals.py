"""Metals of the bench: where each begins to melt, which of them belong together, and which never meet in heat."""

from __future__ import annotations

from typing import NamedTuple

from sheetgen.facts.fact import Fact, Grade

_ITS = "defining fixed point of the temperature scale ITS-90, rounded down"
_DATA = "pages of alloy data"
_UNREAD = "as remembered, not read"


class MetalFacts(NamedTuple):
    """A metal: the family of those that may meet it in the fire, and where it begins to melt, °C."""

    family: str
    solidus: Fact


def _melts(metal: str, degrees: float, source: str = _ITS, grade: Grade = "seen") -> Fact:
    return Fact(degrees, f"{metal} begins to melt", unit="°C", source=source, grade=grade)


EUTECTIC = Fact(
    779, "silver and copper in contact melt", unit="°C",
    source="an agency of measurement's page of the silver-copper phase diagram: 779.1 °C", grade="seen",
)  # fmt: skip
MARGIN = Fact(
    20, "kept below where a metal begins to melt", unit="°C", source="common practice", grade="common practice"
)
LOW_SOLDER = Fact(
    450, "below this a solder is a soft one", unit="°C", source="a welding society's glossary: soldering, up to 450 °C",
    grade="seen",
)  # fmt: skip

# Where pages print °F, it is that in °C, rounded down.
METALS = {
    "fine silver": MetalFacts("silver", _melts("fine silver", 961)),
    "sterling": MetalFacts("silver", _melts(
        "sterling silver", 802, f"handbook of alloys, {_UNREAD}; suppliers' pages have 788 °C and 805 °C", "memory",
    )),
    "silver 960": MetalFacts("silver", _melts(
        "silver 960", 880, f"handbook of alloys, {_UNREAD}; a supplier's guide has 890 °C for silver 958", "memory",
    )),
    "copper": MetalFacts("copper", _melts("copper", 1084)),
    "bronze": MetalFacts("bronze", _melts(
        "bronze with 10 % of tin", 843, f"{_DATA}, UNS C52400: 1550 °F; a welding glossary has 845 °C",
    )),
    "brass": MetalFacts("brass", _melts("brass with 30 % of zinc", 915, f"{_DATA}, UNS C26000: 1680 °F")),
    "nickel silver": MetalFacts("nickel silver", _melts(
        "nickel silver with 10 % of nickel", 970, f"{_DATA}, UNS C74500: 970 °C; C73100 and C77000 have 1000 °C",
    )),
    "gold": MetalFacts("gold", _melts("gold", 1064)),
    "steel": MetalFacts("iron", _melts("steel", 1370, "encyclopaedic page: carbon steels, 1370 °C to 1540 °C")),
    "stainless steel": MetalFacts("stainless steel", _melts(
        "stainless steel", 1375, "a trade association's page, quoting a handbook: type 316, 1375 °C",
    )),
    "aluminium": MetalFacts("aluminium", _melts("aluminium", 660)),
    "titanium": MetalFacts("titanium", _melts("titanium", 1660, f"handbook of alloys, {_UNREAD}", "memory")),
    "tin": MetalFacts("soft", _melts("tin", 231)),
    "lead": MetalFacts("soft", _melts("lead", 327, "a page of melting points of pure metals")),
    "zinc": MetalFacts("soft", _melts("zinc", 419)),
}  # fmt: skip
CALLED = {
    "fine silver": "silver 999",
    "sterling": "silver 925",
    "silver 960": "96 % silver",
    "bronze": "copper and tin",
    "brass": "copper and zinc",
    "nickel silver": "copper, nickel and zinc, and no silver",
}
"""What is in a metal whose name does not say it, or might be taken for another's."""


def named() -> str:
    """Every metal that stock may name, and which is which."""
    return ", ".join(f"{name} ({CALLED[name]})" if name in CALLED else name for name in METALS)


STRANGERS = {"bronze", "brass", "nickel silver"}
"""Families that do not meet silver in the fire unless somebody's data says that they may: common practice."""
