"""Metal clays by kind: published ranges of shrinkage on the wet size. A project carries its own clay's figures."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.facts.fact import Fact

if TYPE_CHECKING:
    from sheetgen.facts.fact import Grade


def _range(low: float, high: float, name: str, source: str, grade: Grade) -> tuple[Fact, Fact]:
    return (
        Fact(low, f"shrinkage of {name}, least", unit="share", source=source, grade=grade),
        Fact(high, f"shrinkage of {name}, most", unit="share", source=source, grade=grade),
    )


LOW_FIRE_650 = _range(0.08, 0.10, "fine silver clay fired from 650 °C", "Wikipedia, Metal clay, two copies", "seen")
LOW_FIRE_600 = _range(0.10, 0.12, "fine silver clay fired from 600 °C", "two makers' blog posts, 2010 and 2011", "seen")
HIGH_FIRE = _range(0.20, 0.28, "standard fine silver clay", "common practice", "common practice")
SILVER_960 = _range(0.10, 0.11, "960 silver clay", "supplier's product text for 960 clay", "seen")
STERLING = _range(0.12, 0.15, "sterling silver clay", "common practice", "common practice")
BRONZE_QUICK = _range(0.10, 0.12, "quick-fire bronze clay", "blogs on bronze clay, 2011", "seen")
BRONZE = _range(0.17, 0.20, "bronze clay", "blogs on bronze clay, 2011", "seen")
ALL_SILVER = _range(0.08, 0.30, "all silver clays", "Wikipedia, Metal clay, two copies", "seen")
