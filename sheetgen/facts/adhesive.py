"""Two-part adhesive: what is taken for granted when none is stated."""

from __future__ import annotations

from sheetgen.facts.fact import Fact

SEAT_FILL_LEAST = Fact(
    0.2, "share of a seat that adhesive fills, least", unit="share", source="common practice", grade="common practice"
)
SEAT_FILL_MOST = Fact(
    0.5, "share of a seat that adhesive fills, most", unit="share", source="common practice", grade="common practice"
)
MIX_LEFT = Fact(
    10,
    "how many times what is needed the smallest mix may be",
    unit="times",
    source="common practice",
    grade="common practice",
)
POT_LIFE_HALVES_PER = Fact(
    10,
    "rise in temperature that halves a pot life",
    unit="°C",
    source="rule of thumb, common practice",
    grade="common practice",
)
