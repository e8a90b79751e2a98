"""What metals weigh: densities in g/cm³."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.facts.fact import Fact

if TYPE_CHECKING:
    from sheetgen.facts.fact import Grade


def _density(value: float, name: str, source: str, grade: Grade) -> Fact:
    return Fact(value, f"density of {name}", unit="g/cm³", source=source, grade=grade)


_ELEMENTS = "periodictable 2.1.0"
_FINDINGS = (
    "a findings supplier's table of specific gravities, 2012, and the printers' metals page on alloys; both agree"
)
_UNREAD = "alloy data as remembered, not read"

COPPER = _density(8.96, "copper", _ELEMENTS, "library")
SILVER = _density(10.5, "silver", _ELEMENTS, "library")
GOLD = _density(19.3, "gold", _ELEMENTS, "library")
ZINC = _density(7.133, "zinc", _ELEMENTS, "library")
TIN = _density(7.31, "tin", _ELEMENTS, "library")
ALUMINIUM = _density(2.699, "aluminium", _ELEMENTS, "library")
PLATINUM = _density(21.45, "platinum", _ELEMENTS, "library")
FINE_SILVER = _density(10.49, "fine silver", "xraydb 4.5.8", "library")
COPPER_WIRE = _density(8.89, "annealed copper wire", "GNU Units 2.22, copperdensity", "library")
STERLING = _density(10.36, "sterling silver", "a refiner's table of weights", "seen")
STERLING_FINDINGS = _density(10.40, "sterling silver, another table", _FINDINGS, "seen")
BRASS = _density(8.53, "brass C26000", "a mill's alloy data sheet, ASTM B36", "seen")
PHOSPHOR_BRONZE = _density(8.86, "phosphor bronze C51000", _UNREAD, "memory")
COMMERCIAL_BRONZE = _density(8.80, "commercial bronze C22000", _UNREAD, "memory")
TIN_BRONZE = _density(8.78, "phosphor bronze C52400", _UNREAD, "memory")
NICKEL_SILVER = _density(8.73, "nickel silver C75200", _UNREAD, "memory")
GOLD_10K_YELLOW = _density(11.57, "10 K yellow gold", _FINDINGS, "seen")
GOLD_14K_YELLOW = _density(13.07, "14 K yellow gold", _FINDINGS, "seen")
GOLD_14K_WHITE = _density(12.61, "14 K white gold", _FINDINGS, "seen")
GOLD_14K_RED = _density(13.26, "14 K red gold", _FINDINGS, "seen")
GOLD_18K_YELLOW = _density(15.58, "18 K yellow gold", _FINDINGS, "seen")
GOLD_18K_WHITE = _density(14.64, "18 K white gold", _FINDINGS, "seen")
GOLD_18K_RED = _density(15.18, "18 K red gold", _FINDINGS, "seen")
GOLD_18K_GREEN = _density(15.90, "18 K green gold", _FINDINGS, "seen")
