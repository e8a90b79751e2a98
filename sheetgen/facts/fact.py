"""A constant that cannot be made without its source, and the list of all of them."""

from __future__ import annotations

import inspect
from typing import Literal, Self

Grade = Literal["seen", "library", "memory", "common practice", "own judgement", "definition"]

ALL: list[Fact] = []


class Fact(float):
    """A number with its name, unit, source and how that source was seen; `module` is where it stands, its subject.

    `grade`: `seen` (an excerpt was read), `library` (printed by an installed package or program),
    `memory` (not read: treat as unverified), `common practice` (no source), `own judgement` (ours, and
    nobody else's: chosen, or measured on our own pages), `definition` (exact).
    """

    name: str
    unit: str
    source: str
    grade: Grade
    module: str

    def __new__(cls, value: float, name: str, *, unit: str, source: str, grade: Grade) -> Self:
        """`value` in `unit`; raises ValueError without a name or a source."""
        if not source.strip() or not name.strip():
            raise ValueError("a fact wants a name and a source")
        fact = super().__new__(cls, value)
        fact.name, fact.unit, fact.source, fact.grade = name, unit, source, grade
        frame = inspect.currentframe()
        fact.module = frame.f_back.f_globals["__name__"] if frame and frame.f_back else ""
        ALL.append(fact)
        return fact

    def __reduce__(self) -> tuple[type[float], tuple[float]]:
        """What is worked from a fact and sent on is a number."""
        return float, (float(self),)
