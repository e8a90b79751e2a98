"""Wire, chain and strands: what is too thin, too tight, too short or too far off. Common practice."""

from __future__ import annotations

from sheetgen.facts.fact import Fact

_PRACTICE = "common practice"
_GAUGE = "common practice; pages on earrings have 20 and 18 gauge (0.81 and 1.02 mm) for usual piercings"


def _practice(value: float, name: str, unit: str = "mm", source: str = _PRACTICE) -> Fact:
    return Fact(value, name, unit=unit, source=source, grade="common practice")


POST_LOBE = _practice(5, "ear lobe with room not to be pinched; with its nut, the 10 mm of bought posts")
POST_NUT = _practice(5, "what a nut takes of a post")
POST_THIN = _practice(0.7, "post that nuts still hold, thinnest", source=_GAUGE)
POST_THICK = _practice(1, "post that goes through the usual piercing, thickest", source=_GAUGE)
EAR_WIRE_THIN = _practice(0.6, "ear wire that does not open, thinnest", source=_GAUGE)
EAR_WIRE_THICK = _practice(1.1, "ear wire that goes through the usual piercing, thickest", source=_GAUGE)
KERF_MOST = _practice(0.25, "share of a ring from which a saw cut is a slip", "share")
RING_TIGHT = _practice(4, "inside of a ring of metal that can be bent, least", "thicknesses")
OFF_LINKS = _practice(0.25, "how far whole links may be off a length of chain", "share")
DISC_STRETCHES = _practice(0.25, "rise of a metal dome from which the hole in it grows, to its width", "share")
TAIL_HELD = _practice(10, "tail that can be led back through a crimp and held, least")
BEADS_ROUND = _practice(3, "girth that beads close round, least", "beads")
BEAD_STEP = _practice(0.05, "step from one bead to the next below which nobody sorts")
