"""How much room, thickness and weight decide whether a piece holds: common practice."""

from __future__ import annotations

from sheetgen.facts.fact import Fact

_PRACTICE = "common practice"

CLOSE = Fact(0.1, "room round a wire in which a ring binds", unit="mm", source=_PRACTICE, grade="common practice")
PLUG = Fact(0.1, "how much wider than its ring a plug may be", unit="mm", source=_PRACTICE, grade="common practice")
EAR = Fact(8, "heaviest earring, each side", unit="g", source=_PRACTICE, grade="common practice")
SPAN = Fact(
    12,
    "span of unfired clay that carries itself in the fire",
    unit="thicknesses",
    source=_PRACTICE,
    grade="common practice",
)
ONE_GO = Fact(
    1.5, "widest drill to begin a hole with in unfired clay", unit="mm", source=_PRACTICE, grade="common practice"
)
SWALLOWED = Fact(
    31.7, "cylinder across: what goes in can choke a small child", unit="mm",
    source="test cylinder for small parts of toy safety standards, as remembered, not read", grade="memory",
)  # fmt: skip
LOOSE = Fact(0.75, "share of a bundle that many wires fill", unit="share", source=_PRACTICE, grade="common practice")
