"""What is cut longer or left free on purpose: seams, tails, trims, clearances. Mostly common practice."""

from __future__ import annotations

from sheetgen.facts.fact import Fact

_PRACTICE = "common practice"


def _practice(value: float, name: str, unit: str = "mm") -> Fact:
    return Fact(value, name, unit=unit, source=_PRACTICE, grade="common practice")


OVERLAP_LEAST = _practice(3, "seam overlap of a wrapped strip, least")
OVERLAP_MOST = _practice(6, "seam overlap of a wrapped strip, most")
COIL_TAIL_LEAST = _practice(20, "wire left over from a coil of rings, least")
COIL_TAIL_MOST = _practice(50, "wire left over from a coil of rings, most")
LINK_TRIM_LEAST = _practice(1, "trim on a link bent on pegs, least")
LINK_TRIM_MOST = _practice(3, "trim on a link bent on pegs, most")
STRINGING_TAIL = _practice(150, "thread beyond a strand's length, both ends together")
SEAT_CLEARANCE_LEAST = _practice(0.1, "clearance of a stone in its seat, least")
SEAT_CLEARANCE_MOST = _practice(0.2, "clearance of a stone in its seat, most")
SPRINGBACK_MOST = _practice(0.05, "springback of a wound ring, share of its inside, most", "share")
RING_NEUTRAL = Fact(
    0.5,
    "neutral layer of soft clay, wire and metal bent at twice its thickness or more",
    unit="share",
    source="supplier article, Measuring a ring blank",
    grade="seen",
)
_HANDBOOK = "Machinery's Handbook, 90° bend lengths as remembered, not read"
SHARP_BEND_SOFT = Fact(0.55, "sharp bend, soft brass and copper", unit="thicknesses", source=_HANDBOOK, grade="memory")
SHARP_BEND_HALF_HARD = Fact(
    0.64, "sharp bend, half-hard copper, brass, mild steel", unit="thicknesses", source=_HANDBOOK, grade="memory"
)
SHARP_BEND_HARD = Fact(
    0.71, "sharp bend, bronze and spring metal", unit="thicknesses", source=_HANDBOOK, grade="memory"
)
SAW_KERF = _practice(0.4, "width of a saw cut")
OFFCUT_LOSS_LEAST = _practice(0.03, "loss when offcut clay is gathered and rolled again, least", "share")
OFFCUT_LOSS_MOST = _practice(0.10, "loss when offcut clay is gathered and rolled again, most", "share")
TOGGLE_BEYOND = Fact(
    5,
    "how far a toggle's bar reaches past its ring, each end",
    unit="mm",
    source="a beading site's page, Basic toggle ring and bar clasp: at least 10 mm longer than the ring is across",
    grade="seen",
)
