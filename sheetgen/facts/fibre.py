"""Cords and fibres: how tightly they lie together."""

from __future__ import annotations

from sheetgen.facts.fact import Fact

PACK_10 = Fact(
    3.8130,
    "circle round 10 unit circles, radius",
    unit="ratio",
    source="Wikipedia, Circle packing in a circle",
    grade="seen",
)
YARN_FILL_LEAST = Fact(
    0.5, "share of a bundle that is yarn, least", unit="share", source="common practice", grade="common practice"
)
YARN_FILL_MOST = Fact(
    0.75, "share of a bundle that is yarn, most", unit="share", source="common practice", grade="common practice"
)
