"""Two-part adhesive: what is taken for granted when none is stated."""

from __future__ import annotations

from sheetgen.facts.fact import Fact

_UNREAD = "as remembered, not read"

SEAT_FILL_LEAST = Fact(
    0.2, "share of a seat that adhesive fills, least", unit="share", source="common practice", grade="common practice"
)
SEAT_FILL_MOST = Fact(
    0.5, "share of a seat that adhesive fills, most", unit="share", source="common practice", grade="common practice"
)
LEAST_MIX = Fact(
    0.3, "least that can be mixed in proportion", unit="mL", source="common practice", grade="common practice"
)
DENSITY_LEAST = Fact(1.1, "density of mixed epoxy, least", unit="g/cm³", source=_UNREAD, grade="memory")
DENSITY_MOST = Fact(1.2, "density of mixed epoxy, most", unit="g/cm³", source=_UNREAD, grade="memory")
POT_LIFE_HALVES_PER = Fact(
    10,
    "rise in temperature that halves a pot life",
    unit="°C",
    source="rule of thumb, common practice",
    grade="common practice",
)
