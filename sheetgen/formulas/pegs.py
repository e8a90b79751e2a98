"""Links bent on two pegs: figure-eights (a crossed belt) and long links (an open belt), on the wire's middle."""

from __future__ import annotations

from sheetgen.formulas.formula import formula

_CROSSED = "Britannica 1911, Mechanics, eq. (32 A), its sign put right by path length"
_OPEN = "Britannica 1911, Mechanics, eq. (32 B); Wikipedia, Belt problem"
_INSIDE = "plane geometry: touching inner walls coincide in a taut chain"

crossed_belt = formula(
    "crossed_belt(r, c)", "2 × √(c² − r²) + r × (π + 2 × asin(r ÷ c))",
    about="Length (mm) of a crossed belt over two wheels: both their radii together, and their centres apart (mm).",
    source=_CROSSED, valid="r > 0 and c ≥ r",
)  # fmt: skip

even_belt = formula(
    "even_belt(peg, c, wire)", "2 × c + π × (peg + wire)",
    about="Wire (mm) led straight round two equal pegs (mm), their centres apart (mm).", source=_OPEN,
    valid="peg > 0 and wire ≥ 0 and c > 0",
)  # fmt: skip

open_belt = formula(
    "open_belt(d1, d2, c, wire)",
    "2 × √(c² − ((d1 − d2) ÷ 2)²) + π × ((d1 + d2) ÷ 2 + wire) + 2 × (d1 − d2) ÷ 2 × asin((d1 − d2) ÷ 2 ÷ c)",
    about="Wire (mm) led straight round two pegs (mm), their centres apart (mm).", source=_OPEN,
    valid="d1 > 0 and d2 > 0 and wire ≥ 0 and 2 × c > d1 − d2 and 2 × c > d2 − d1",
)  # fmt: skip

inside_pitch = formula(
    "link_inside(d1, d2, gap)", "gap + d1 + d2",
    about="Inside length (mm) of a link bent on two pegs (mm): what it adds to a taut chain.", source=_INSIDE,
    valid="d1 > 0 and d2 > 0 and gap ≥ 0",
)  # fmt: skip
