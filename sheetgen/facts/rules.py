"""Every rule of the bench by its name: what it is for, where it comes from, and whether a project may waive it."""

from __future__ import annotations

from typing import NamedTuple

from sheetgen.facts.fit import CLOSE, EAR
from sheetgen.facts.metals import EUTECTIC
from sheetgen.facts.rings import BROAD_BAND, LEAST_BAND
from sheetgen.facts.times import TORCH_ACROSS, TORCH_MASS

PRACTICE = "common practice"


class Rule(NamedTuple):
    """One rule: family, reason in a sentence, source, `error` or `warning`, and whether a project may waive it."""

    family: str
    reason: str
    source: str = PRACTICE
    severity: str = "error"
    waivable: bool = True


def _rules(family: str, severity: str = "error", *, waivable: bool = True, **reasons: str) -> dict[str, Rule]:
    return {
        name.replace("_", "-"): Rule(family, reason, PRACTICE, severity, waivable) for name, reason in reasons.items()
    }


RULES: dict[str, Rule] = {
    **_rules(
        "order",
        survives_kiln="What does not bear the kiln melts, burns or cracks there, and goes wherever it is attached.",
        survives_flame="A flame spoils what does not bear it, however far it is held away.",
        survives_quench="What is heated and cooled at once cracks unless it bears it.",
        survives_pickle="Acid eats pearl, shell, many stones, adhesive and plating.",
        survives_tumbler="Shot chips stones and tears what is strung or glued.",
        survives_solvent="A solvent creeps under foils and softens adhesive that has not cured.",
        survives_water="Water swells, loosens or spots what does not bear it.",
        dry_before_fire="Water in the clay turns to steam in the fire and bursts the piece.",
        after_firing="Clay that is never fired again stays clay, and crumbles.",
        wet_on_fired="Plain slip does not hold on metal: it shrinks away from what shrinks no more.",
        not_there_yet="Nothing can be hung on, or drilled into, what is not made.",
        seat_fired="A seat shrinks in the fire, and a stone that is glued in before it does not.",
        cure_time="Adhesive that is moved before it has cured lets go, some of it weeks later.",
    ),
    **_rules(
        "order", "warning",
        dry_test="Dryness is known by a test, and not by the clock.",
        temper="Heat takes away the hardness that hammering gave.",
    ),
    **_rules(
        "fire",
        inner_join="A join that is shut in wet cannot dry, and steams open in the fire.",
        program="A clay sinters by its own program; another leaves it weak, or melts it.",
        one_load="Clays whose programs differ cannot both come right in one load.",
        never_fired="Clay that is never fired stays clay, and crumbles.",
        strange_metals="Silver and bronze, brass or nickel silver can melt into each other where they touch.",
        melts="A piece slumps, or what is soldered falls apart, above what goes along with it bears.",
    ),
    **_rules(
        "fire", "warning", strength="What is hammered, stretched or pulled breaks unless it is fired to full strength."
    ),
    "eutectic": Rule(
        "fire", "Silver and copper that touch melt together far below either's own melting point.",
        EUTECTIC.source,
    ),
    "torch-firing": Rule(
        "fire", "A flame heats a small piece of fine silver through, and nothing larger or of another sort.",
        f"{TORCH_MASS.source}: up to {TORCH_MASS:g} g, and a 2-euro coin ({TORCH_ACROSS:g} mm) across",
    ),
    **_rules(
        "fire", waivable=False,
        vent="Air and steam shut in a hollow burst it when it is heated.",
        least_vent="Too small a hole lets too little out in the kiln.",
        carbon_box="Carbon outside a closed box burns away, and fills the room with carbon monoxide.",
        opened_hot="Hot carbon flares and gives off carbon monoxide when its box is opened; hot pieces crack and burn.",
    ),
    **_rules(
        "chemistry", waivable=False,
        flame_and_vapour="Vapour of solvents and spray catches fire from a flame or a hot piece.",
        hot_into_pickle="A hot piece throws acid out of the pickle, into eyes and lungs.",
        never_meet="Acid drives poison gas out of sulphide and bleach, and bleach out of ammonia.",
        coating_heated="Zinc, nickel and other coatings give off fumes that harm when they are heated.",
        lead_under_silver="Tin and lead eat into silver at the heat of silver solder, and lead fumes are poison.",
    ),
    **_rules("chemistry", aluminium_under_clay="Aluminium eats into silver clay, wet or in the fire."),
    **_rules("chemistry", "warning", steel_in_pickle="Iron in the pickle lays copper on everything in the bath."),
    **_rules(
        "fit",
        least_edge="Too little metal beside a hole pulls out.",
        passes="A wire that does not pass when the clay shrinks most cannot be hung.",
        reaches="A ring that is too small does not go round the edge.",
        two_wires="More wire than a ring's inside holds does not go in.",
        plug="A ring cannot shrink past its plug: one that is too large splits it or leaves it too large.",
        grips="A hole that shrinks on to a solid wire or stem cracks round it.",
        shrink_alike="Clays that shrink unlike tear each other apart where they are joined.",
        least_floor="Too little clay under a seat breaks through.",
        least_rim="Too narrow a rim drags as it is cut, and breaks when it is worn.",
        least_web="Too little metal between two holes breaks.",
        least_inside="A box with too little room inside holds nothing.",
        post_wire="A post that is too thin lets go of its nut, and one that is too thick hurts the ear.",
        ear_wire="A wire that is too thin cuts the ear, and one that is too thick does not go through it.",
    ),
    **_rules(
        "people", waivable=False,
        caught="A turning wheel catches gloves, cloth and strands, and pulls the hand in.",
        child_neck="A strand round a small child's neck can strangle.",
        child_swallows="A small child puts small parts into the mouth, and can choke on them.",
    ),
    **_rules(
        "fit", "warning",
        no_overlap="Ends that are cut to meet leave a gap; an overlap cut through leaves none.",
        thin_band=f"A band of less than {LEAST_BAND:g} mm bends on the finger.",
        wide_band=f"A band of more than {BROAD_BAND:g} mm feels tighter than its size.",
        heavy_earring=f"More than {EAR:g} g pulls at an ear.",
        close_fit=f"A ring in a hole with less than {CLOSE:g} mm of room binds.",
        sags="Thin clay that lies free sags in the heat.",
        high_bezel="A wall of more than two thirds of the stone's height buckles as it is pressed over.",
        knot_in_bead="A knot that is larger than the bead's hole does not draw in.",
        thread_twice="A hole that just takes a thread once does not take it twice.",
        open_ring="A ring that is not soldered opens when it is pulled.",
        one_go="A hole drilled in unfired clay in one go breaks out; a small drill first leaves it whole.",
        one_solder="The first join flows again when the next is made with the same solder.",
    ),
}  # fmt: skip


def waivable(rule: str) -> bool:
    """Whether a project may waive a rule; those of the library's own kinds are common practice, and may be."""
    return rule not in RULES or RULES[rule].waivable
