"""What pieces cut from rolled clay share: what is common practice of edges and holes, and the clay they take."""

from __future__ import annotations

from sheetgen.parts.figure import TakeSpec, take

SAME_HOLE = 0.06  # mm between a hole and its drill: less than dry clay lets one tell
LEAST_EDGE = 1.0  # mm of finished metal outside a hole that something hangs from: common practice
CLOSE = 0.1  # mm round a wire: in less than that a ring binds (common practice)
STRAW = 2.5  # mm: a narrower hole is drilled, since no straw and few cutters are so small

# fmt: off
CLAY_AS_CUT: TakeSpec = take("clay", "count × clay_mass", each="clay_mass")
