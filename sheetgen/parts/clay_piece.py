"""What pieces cut from rolled clay share: the clay they take."""

from __future__ import annotations

from sheetgen.parts.figure import TakeSpec, take

# fmt: off
CLAY_AS_CUT: TakeSpec = take("clay", "count × clay_mass", each="clay_mass")
