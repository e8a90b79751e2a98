"""Classes: what is made up besides the pupils' own sets."""

from __future__ import annotations

from sheetgen.facts.fact import Fact

TEACHERS_PIECE = Fact(
    1,
    "pieces that a teacher makes of each design of a class, where nobody says",
    unit="piece",
    source="common practice: each step is shown before it is done",
    grade="common practice",
)
SPARE_SET_FOR = Fact(
    12,
    "pupils of a design that one spare set is made up for, where nobody says",
    unit="people",
    source="common practice: what cracks or is cut short is begun again the same evening",
    grade="common practice",
)
