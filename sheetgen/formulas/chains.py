"""A chain of links and rings: how long, and how many for a length. Inside lengths add up when it hangs taut."""

from __future__ import annotations

from sheetgen.formulas.formula import formula

_TAUT = "plane geometry: touching inner walls coincide in a taut chain"


chain_inside = formula(
    "chain_inside(links, link, ring)", "links × link + (links − 1) × ring",
    about="Length (mm) of a chain inside its end links; `link` and `ring` are inside lengths.", source=_TAUT,
    valid="links ≥ 1 and link > 0 and ring ≥ 0",
)  # fmt: skip


links_in = formula(
    "links_in(length, link, ring)", "down((length + ring) ÷ (link + ring))",
    about="Most links whose chain is no longer inside than a length (mm).", source=_TAUT,
    valid="link > 0 and ring ≥ 0 and length ≥ link",
)  # fmt: skip

links_for = formula(
    "links_for(length, link, ring)", "up((length + ring) ÷ (link + ring))",
    about="Fewest links whose chain is no shorter inside than a length (mm).", source=_TAUT,
    valid="link > 0 and ring ≥ 0 and length > 0",
)  # fmt: skip

links_near = formula(
    "links_near(length, link, ring)", "max(1, down((length + ring) ÷ (link + ring) + 0.5))",
    about="Links, one at least, whose chain is nearest inside to a length (mm).", source=_TAUT,
    valid="link > 0 and ring ≥ 0 and length > 0",
)  # fmt: skip

rings_between = formula(
    "rings_between(links, fittings)", "links − 1 + fittings",
    about="Rings that join so many links, and one more for each clasp or drop at an end.", source=_TAUT,
    valid="links ≥ 1 and fittings ≥ 0",
)  # fmt: skip

whole_links = formula(
    "whole_links(length, link)", "down(length ÷ link + 0.5)",
    about="Whole links nearest to a length (mm), halves up; none for less than half a link.", source=_TAUT,
    valid="length ≥ 0 and link > 0",
)  # fmt: skip

graded_links = formula(
    "graded_links(pieces, first, last)", "pieces × (first + last) ÷ 2",
    about="Links in a set of pieces, each as much longer than the one before.", source="sum of an even series",
    valid="pieces ≥ 1 and first > 0 and last ≥ first",
)  # fmt: skip
