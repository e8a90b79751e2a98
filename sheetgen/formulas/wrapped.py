"""Loops turned and wrapped at the end of a wire: head pins, eye pins, bead links."""

from __future__ import annotations

from sheetgen.formulas.formula import formula

_HELIX = "length of a helix on the mean diameter"
_LOOP = "metalsmiths' forum: length of material = (inside diameter + thickness) × π"
_END = "sum of its parts; trade rule of thumb: bend 3 cm from the end"


turned_loop = formula(
    "turned_loop(jaw, d)", "π × (jaw + d)", about="Wire (mm) in a simple loop turned on a jaw (mm).", source=_LOOP,
    valid="jaw > 0 and d > 0",
)  # fmt: skip


close_wrap = formula(
    "close_wrap(d)", "√(4 × π² + 1) × d", about="Wire (mm) in one close turn round a stem of the same wire.",
    source=_HELIX, valid="d > 0",
)  # fmt: skip

wrapped_neck = formula(
    "wrapped_neck(wraps, d)", "wraps × d", about="Stem (mm) hidden under so many close wraps.",
    source="close wraps lie side by side", valid="wraps ≥ 0 and d > 0",
)  # fmt: skip

wrapped_end = formula(
    "wrapped_end(jaw, d, wraps, neck)", "turned_loop(jaw, d) + wraps × close_wrap(d) + neck",
    about="Wire (mm) in one wrapped loop with the neck under its wraps, its tail not counted.", source=_END,
    valid="jaw > 0 and d > 0 and wraps ≥ 0 and neck ≥ 0",
)  # fmt: skip


wrapped_link_inside = formula(
    "wrapped_link_inside(beads, jaw, d, neck)", "beads + 2 × (neck + d + jaw)",
    about="Length (mm) that a link with two wrapped ends adds to a chain.", source="sum of its parts",
    valid="beads ≥ 0 and jaw > 0 and d > 0 and neck ≥ 0",
)  # fmt: skip
