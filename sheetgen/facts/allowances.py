"""What is cut longer or left free on purpose: seams, tails, trims, clearances. Mostly common practice."""

from __future__ import annotations

from sheetgen.facts.fact import Fact

_PRACTICE = "common practice"


def _practice(value: float, name: str, unit: str = "mm") -> Fact:
    return Fact(value, name, unit=unit, source=_PRACTICE, grade="common practice")


STRINGING_TAIL = _practice(150, "thread beyond a strand's length, both ends together")
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
TOGGLE_EYE = _practice(2, "inside of an eye wound in a toggle's bar, so that what hangs in it turns", "thicknesses")
