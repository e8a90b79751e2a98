"""What a strip of metal shares that is bent round and closed edge to edge."""

from __future__ import annotations

from sheetgen.parts.figure import figure
from sheetgen.parts.kind import Part


# fmt: off
class ClosedStrip(Part):
    """Worked on the middle of its thickness; a kind says in `meets` how long that is."""

    hazards = ("metal edge",)


cut = figure("Strip, cut", "mm", "meets + trim", "bench up", about="With what is filed off the ends.")
