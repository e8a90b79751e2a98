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
            f"Cool running water at once, for {COOLED:g} min, rings off; then cling film. No ice, no ointment.",
            ("W017", "W021"),
        ),
    ),
    (
        Aid("Eye", f"Running water, lids apart, {RINSED:g} min at least; do not rub. Doctor."),
        Aid("Cut", "Press a clean cloth on it.", ("W022", "W024"), ("rotary tool",)),
    ),
    (
        Aid("Skin", "Soaked clothes off, much water.", ("W016", "W023"), ("solvent vapour",)),
        Aid("Skin", "Soap for adhesive.", ids=("epoxy",)),
        Aid(
            "Dizzy, headache",
            "Out to fresh air; call.",
            ids=("carbon box", "solvent vapour", "solder fumes"),
        ),
    ),
)
"""What is done first, a line each of 180 mm. Each clause stands by itself: a sheet has those that its hazards need."""
