"""Patterns and what they are cast into."""

from __future__ import annotations

from sheetgen.facts.fact import Fact

_FORUM = "metalsmiths' forum threads on wax to metal"

WAX_LEAST = Fact(0.95, "density of carving wax, least", unit="g/cm³", source=_FORUM, grade="seen")
WAX_MOST = Fact(0.98, "density of carving wax, most", unit="g/cm³", source=_FORUM, grade="seen")
RESIN = Fact(
    1.09, "density of printed casting resin", unit="g/cm³", source="casting notes for printed resin", grade="seen"
)
BUTTON_LEAST = Fact(
    0.10,
    "metal added for the sprue, least",
    unit="share",
    source="casting supplier, Wax weight vs. metal weight",
    grade="seen",
)
BUTTON_MOST = Fact(0.50, "metal added for the sprue, most", unit="share", source=_FORUM, grade="seen")
CLAY_LOSS_LEAST = Fact(
    0.03, "clay lost in re-rolling offcuts, least", unit="share", source="common practice", grade="common practice"
)
CLAY_LOSS_MOST = Fact(
    0.10, "clay lost in re-rolling offcuts, most", unit="share", source="common practice", grade="common practice"
)
