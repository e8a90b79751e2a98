"""What a cut stone weighs, from its measures."""

from __future__ import annotations

from sheetgen.facts import stones as facts
from sheetgen.formulas.formula import formula

_COURSE = "gemmology course pages on mounted diamond weight"


_SPECIES = f"density ÷ {facts.DIAMOND:g} g/cm³"

round_brilliant = formula(
    "round_brilliant(diameter, depth, density)",
    f"diameter² × depth × {facts.ROUND_WEIGHT:g} ct/mm³ × {_SPECIES}",
    about="Weight (ct) of a stone cut as a round brilliant, thin at its girdle; mm and g/cm³.", source=_COURSE,
    valid="diameter > 0 and depth > 0 and density > 0",
)  # fmt: skip

oval_brilliant = formula(
    "oval_brilliant(length, width, depth, density)",
    f"((length + width) ÷ 2)² × depth × {facts.OVAL_WEIGHT:g} ct/mm³ × {_SPECIES}",
    about="Weight (ct) of a stone cut as an oval brilliant, thin at its girdle; mm and g/cm³.", source=_COURSE,
    valid="length > 0 and width > 0 and depth > 0 and density > 0",
)  # fmt: skip
