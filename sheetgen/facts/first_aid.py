"""First aid for the hurts of the bench, told in at most three lines; whatever is grave is for the emergency number."""

from __future__ import annotations

from typing import NamedTuple

from sheetgen.facts.fact import Fact

SOURCE = "a surgery's page on burns, and a burns centre's on chemicals"
COOLED = Fact(20, "Cool a burn under running water", unit="min", source=SOURCE, grade="seen")
RINSED = Fact(15, "Rinse an eye, at the least", unit="min", source="a set of first-aid questions", grade="seen")


class Aid(NamedTuple):
    """What is done first for a hurt: where the sheet has a caution of such a sign or id; always where it names none."""

    hurt: str
    do: str
    signs: tuple[str, ...] = ()
    ids: tuple[str, ...] = ()


FIRST_AID = (
    (
        Aid(
            "Burn",
            f"Cool running water at once, {COOLED:g} min, rings off; cling film, no ice or ointment. Large: call.",
            ("W017", "W021"),
        ),
    ),
    (
        Aid("Eye", f"Rinse {RINSED:g} min, lids apart. Doctor. Stuck in it: do not touch or rinse; call."),
        Aid("Cut", "Press a cloth on it.", ("W022", "W024"), ("rotary tool",)),
    ),
    (
        Aid("Skin", f"Soaked clothes off, rinse {COOLED:g} min.", ("W016", "W023"), ("solvent vapour",)),
        Aid("Skin", "Soap for adhesive.", ids=("epoxy",)),
        Aid(
            "Dizzy, headache",
            "Everybody out; call.",
            ids=("carbon box", "solvent vapour", "solder fumes", "patina", "melt"),
        ),
    ),
)
"""What is done first, a line each of 180 mm. Each clause stands by itself: a sheet has those that its hazards need."""
