"""Patterns and what they are cast into."""

from __future__ import annotations

from sheetgen.facts.fact import Fact

_FORUM = "metalsmiths' forum threads on wax to metal"

WAX_LEAST = Fact(0.95, "density of carving wax, least", unit="g/cm³", source=_FORUM, grade="seen")
WAX_MOST = Fact(0.98, "density of carving wax, most", unit="g/cm³", source=_FORUM, grade="seen")
BUTTON_LEAST = Fact(
    0.10,
    "metal added for the sprue, least",
    unit="share",
    source="casting supplier, Wax weight vs. metal weight",
    grade="seen",
)
BUTTON_MOST = Fact(0.50, "metal added for the sprue, most", unit="share", source=_FORUM, grade="seen")
