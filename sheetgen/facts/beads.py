"""Beads and strands: lengths by name, and what a dealer counts on a strand."""

from __future__ import annotations

from sheetgen.facts.fact import Fact
from sheetgen.facts.units import MM_PER_INCH

_NAMES = "eight necklace-length pages, which differ"

STRAND = Fact(16 * MM_PER_INCH, "strand of 16 in", unit="mm", source="supplier's beads-per-inch chart", grade="seen")


def _length(inches: str, name: str) -> tuple[Fact, Fact]:
    low, high = (float(i) * MM_PER_INCH for i in inches.split())
    return (
        Fact(low, f"{name}, least", unit="mm", source=_NAMES, grade="seen"),
        Fact(high, f"{name}, most", unit="mm", source=_NAMES, grade="seen"),
    )


NECKLACES = {
    "collar": _length("12 14", "collar"),
    "choker": _length("14 16", "choker"),
    "princess": _length("16 20", "princess necklace"),
    "matinee": _length("20 24", "matinee necklace"),
    "opera": _length("28 36", "opera necklace"),
}
ROPE = Fact(45 * MM_PER_INCH, "rope necklace, least", unit="mm", source=_NAMES, grade="seen")
BRACELET = Fact(7 * MM_PER_INCH, "bracelet", unit="mm", source=_NAMES, grade="seen")
ANKLET = Fact(9 * MM_PER_INCH, "anklet", unit="mm", source=_NAMES, grade="seen")

# A real strand holds fewer than division says: knots, and beads that vary.
DEALER_COUNTS = {
    bead: Fact(
        count, f"beads of {bead} mm on a 16 in strand", unit="beads", source="a bead dealer's blog, 2008", grade="seen"
    )
    for bead, count in {4: 94, 6: 66, 8: 50, 10: 40, 12: 32}.items()
}
BEAD_TOLERANCE = Fact(
    0.5, "how far a bead may miss its size", unit="mm", source="a bead dealer's blog, 2008", grade="seen"
)
BEADS_PER_MASS = Fact(
    1200, "mass of beads, never to be inferred", unit="beads", source="as remembered, not read", grade="memory"
)
