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
MOST_IN_A_RUN = Fact(
    100_000,
    "kits and parts that one run of orders is printed for",
    unit="kits",
    source="own judgement: 100,000 kits of eight pages take 145 s of a processor and 2.3 GB, in step with their number",
    grade="own judgement",
)

BY_ITSELF = ("solvent", "aerosol", "acid", "pickle", "sulphide", "bleach", "ammonia", "flux", "carbon")
"""What lies loose in no bag with other things, by what it acts as: it burns, eats, stains or dusts. Common practice."""
