"""Parcels: what a studio sends."""

from __future__ import annotations

from sheetgen.facts.fact import Fact

MOST_ON_A_LINE = Fact(
    300,
    "kits alike for one order, most, before it looks like a slip of the hand",
    unit="kits",
    source="common practice: a studio posts 50 to 300 kits a run",
    grade="common practice",
)

BY_ITSELF = ("solvent", "aerosol", "acid", "pickle", "sulphide", "bleach", "ammonia", "flux", "carbon")
"""What lies loose in no bag with other things, by what it acts as: it burns, eats, stains or dusts. Common practice."""
