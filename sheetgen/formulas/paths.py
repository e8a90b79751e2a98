"""Bent wire as straights and arcs: hooks and ear wires, measured along the wire's middle."""

from __future__ import annotations

from sheetgen.formulas.formula import formula

_ARC = "length of an arc on the wire's middle"


arc_length = formula(
    "arc_length(inside, degrees, d)", "π × (inside + d) × degrees ÷ 360",
    about="Wire (mm) in a bend round an inside diameter (mm).", source=_ARC,
    valid="inside ≥ 0 and degrees ≥ 0 and d > 0",
)  # fmt: skip


ear_wire = formula(
    "ear_wire(loop, front, bend, back, d)", "π × (loop + d) + front + π × (bend + d) ÷ 2 + back",
    about="Wire (mm) in an ear hook: a turned loop, a front, a half turn over the ear, a back.", source=_ARC,
    valid="loop > 0 and front ≥ 0 and bend > 0 and back ≥ 0 and d > 0",
)  # fmt: skip
