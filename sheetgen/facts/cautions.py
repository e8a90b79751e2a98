"""The usual cautions of the bench, built in; a studio may add its own.

Signal words: ANSI Z535.4 as quoted by a label maker (DANGER: will kill or maim; WARNING: could; CAUTION: minor or
moderate injury; NOTICE: no injury). Which word stands on which hazard is our judgement; the advice is common practice.
What comes first (the maker's directions, local rules, qualified practice) is said once a sheet and in no caution.
"""

from __future__ import annotations

from typing import NamedTuple

from sheetgen.facts.fact import Fact

SOURCE = "common practice; signal words by ANSI Z535.4 as quoted by a label maker"
LADDER = ("DANGER", "WARNING", "CAUTION", "NOTICE")
GRAVE = ("DANGER", "WARNING")


class Told(NamedTuple):
    """A caution in the order of ANSI Z535: hazard, what it does, how to avoid it.

    `signs` are numbers of ISO 7010, the hazard's first; `wear` is what to wear or to have, for the list of tools too.
    `short` is the reminder beside the title of each later step. `at_action`: it is told in full at the first step that
    brings it, since nobody keeps it in mind from the first side until then; the others stand there.
    """

    word: str
    hazard: str
    consequence: str
    avoid: str
    signs: tuple[str, ...] = ()
    wear: tuple[str, ...] = ()
    short: str = ""
    at_action: bool = False


EYES, EARS, MASK = "Eye protection", "Ear protection", "Dust mask, FFP2, N95 or better"

# The order of a step's cautions of one signal word: the graver or the sooner first.
CAUTIONS = {
    "carbon box": Told(
        "WARNING", "Carbon monoxide.",
        "Has no smell and kills.",
        "Vent the kiln outdoors, alarm on. If it sounds or heads ache: everybody out, call for help. Open only when cold.",
        ("W041",), ("Alarm for carbon monoxide",),
        short="Monoxide: vent, alarm", at_action=True,
    ),
    "torch": Told(
        "WARNING", "Open flame and gas.",
        "Burns, fire, explosion.",
        "Look for leaks with soapy water. Heat-proof board, nothing near that burns, hair and sleeves tied back, gloves for acid off; shut the valve before you set it down.",
        ("W021", "M004"), (EYES, "Fire extinguisher, or water"),
        short="Flame: eyes, hair back", at_action=True,
    ),
    "kiln": Told(
        "WARNING", "Hot kiln.",
        "Burns deeply and at once, through thin gloves too.",
        "Long cotton sleeves, nothing near that burns, somebody within call. Shut until cold; switched off at the wall before you reach in.",
        ("W017", "M009", "M004"), ("Heat-proof gloves, dry", EYES),
        short="Hot kiln: keep it shut", at_action=True,
    ),
    "hot metal": Told(
        "WARNING", "Metal from the flame.",
        "Looks cold while it still burns; spits when quenched.",
        "Touch it with tweezers only. Quench it in water, never in pickle.",
        ("W017", "M004"), (EYES,),
        short="Hot metal: tweezers", at_action=True,
    ),
    "solder fumes": Told(
        "WARNING", "Fumes of flux and solder.",
        "Harm eyes and lungs.",
        "Extraction or an open window, your head out of the smoke; solder without cadmium or lead.",
        ("W016",),
        short="Fumes: extraction on", at_action=True,
    ),
    "melt": Told(
        "WARNING", "Molten metal and its fumes.",
        "Burns to the bone, and spits where it meets damp.",
        "Everything dry and warm, apron and boots on, nobody before the flask, extraction on.",
        ("W017", "M004", "M009"), (EYES, "Heat-proof gloves, dry"),
        short="Melt: dry, eyes, gloves", at_action=True,
    ),
    "pickle": Told(
        "WARNING", "Pickling acid.",
        "Burns eyes and skin; warm, its vapour burns lungs.",
        "Moving air; acid into water, never water into acid. Tongs of copper or plastic: iron stays out. Gloves on at the pickle only.",
        ("W023", "M004", "M009"), (EYES, "Gloves for acid"),
        short="Acid: eyes, acid gloves", at_action=True,
    ),
    "patina": Told(
        "WARNING", "Patina solution.",
        "Its vapour harms lungs; it burns and stains skin.",
        "Outdoors or under extraction. With acid or bleach it gives off a gas that can kill: keep them apart.",
        ("W016", "M004", "M009"), (EYES, "Gloves for chemicals"),
        short="Patina: air, gloves", at_action=True,
    ),
    "solvent vapour": Told(
        "WARNING", "Solvent vapour.",
        "Catches fire, makes you dizzy.",
        "Window open, no flame or hot kiln near, bottle capped.",
        ("W021",),
        short="Vapour: air, no flame", at_action=True,
    ),
    "epoxy": Told(
        "WARNING", "Uncured adhesive.",
        "Irritates skin and eyes, and can make you allergic for good.",
        "Moving air, nothing on bare skin. Wash it off with soap, never with solvent.",
        ("W001", "M009"), ("Nitrile gloves, or those that the adhesive's maker names",),
        short="Adhesive: gloves", at_action=True,
    ),
    "rotary tool": Told(
        "WARNING", "Turning wheel, shaft or tumbler.",
        "Catches hair, sleeves, chains and gloves, and throws what it catches.",
        "No gloves; hair and sleeves tied back; work held low on the wheel.",
        ("W001", "M004"), (EYES,),
        short="Turning: eyes, no gloves", at_action=True,
    ),
    "clay dust": Told(
        "WARNING", "Dust of dry clay.",
        "Fine metal harms the lungs over the years.",
        "Mask on. Sand dry over a tray, never under water, which softens it. Wipe up wet; do not blow or sweep.",
        ("W001", "M016"), (MASK,),
        short="Clay dust: mask",
    ),
    "metal dust": Told(
        "WARNING", "Metal dust.",
        "Harms the lungs over the years.",
        "Sand under water or on a wet cloth, otherwise mask on. Wipe up wet; wash your hands.",
        ("W001", "M016"), (MASK,),
        short="Metal dust: wet or mask",
    ),
    "fibre dust": Told(
        "WARNING", "Dust of kiln fibre, carbon, bed or plug.",
        "Harms the lungs over the years.",
        "Mask on; slowly, damp where it may be, and never what comes into the fire. Wipe up wet; do not blow or sweep.",
        ("W001", "M016"), (MASK,),
        short="Fibre, firing bed: mask",
    ),
    "strand": Told(
        "WARNING", "Strand round the neck.",
        "Catches, and can strangle a child.",
        "Not for a small child; off for sleep, for play and at machines.",
        ("W001",),
        short="Strand: no child",
    ),
    "small parts": Told(
        "WARNING", "Small parts.",
        "Choke a small child.",
        "Keep them, and the piece, from under-threes.",
        ("W001",),
        short="Small parts",
    ),
    "damp clay": Told(
        "CAUTION", "Damp clay.",
        "Steam bursts it in the fire and throws bits.",
        "Fire only what the mirror passed; start from cold.",
        ("W001", "M004"),
        short="Damp clay: test first", at_action=True,
    ),
    "binder smoke": Told(
        "CAUTION", "Smoke of burning binder.",
        "Irritates eyes and lungs.",
        "Vent the room, and do not sit beside it.",
        ("W001",),
        short="Smoke: vent", at_action=True,
    ),
    "kiln glow": Told(
        "CAUTION", "Glow of a hot kiln.",
        "Its infra-red clouds the eyes over the years.",
        "Do not look in; where you must, briefly and in shaded glasses made for it.",
        ("W001", "M004"),
        short="Glow: look away", at_action=True,
    ),
    "hot plate": Told(
        "CAUTION", "Hot plate.",
        "Burns unseen; water left in a hollow spits.",
        "Eye protection, tweezers, hole up; let it cool before you touch it.",
        ("W017",), ("Tweezers", EYES),
        short="Plate: eyes, tweezers", at_action=True,
    ),
    "blade": Told(
        "CAUTION", "Bare blade.",
        "Cuts before you feel it.",
        "Fingers behind the edge, the cut down or away from you; cap it when you set it down.",
        ("W022",),
        short="Blade: fingers behind",
    ),
    "metal edge": Told(
        "CAUTION", "Edges of cut metal.",
        "They slice skin, and offcuts spring.",
        "Eye protection on. Hold sheet flat, not by its corners; file each edge at once; brush offcuts up.",
        ("W022",), (EYES,),
        short="Cut edges: eyes, file",
    ),
    "saw blade": Told(
        "CAUTION", "Saw blade.",
        "Slices skin; it snaps, and the end flies.",
        "Eye protection on. Fingers beside the line and not in front of the blade; upright, without force, on the bench pin.",
        ("W022", "M004"), (EYES,),
        short="Saw: eyes, fingers",
    ),
    "pin": Told(
        "CAUTION", "Sharp point.",
        "Pricks deeply, and a prick can fester.",
        "Point it away from the hand that holds; close or cork it when you set it down.",
        ("W022",),
        short="Point: away from hand",
    ),
    "burnisher": Told(
        "CAUTION", "Slipping burnisher.",
        "Runs off the edge and into the hand.",
        "Rest the work on a block; short strokes, away from the hand that holds it.",
        ("W022",),
        short="Burnisher: away from hand",
    ),
    "drilling": Told(
        "CAUTION", "Turning drill.",
        "Pierces the hand behind the work.",
        "Back it with a block, not a finger.",
        ("W022",),
        short="Drill: back the work",
    ),
    "hammering": Told(
        "CAUTION", "Hammer blows.",
        "Crush fingers, hurt eyes, ears.",
        "Cover eyes and ears; small work in pliers or tape; hammer's head tight.",
        ("W024", "M004", "M003"), (EYES, EARS),
        short="Hammer: eyes, ears",
    ),
    "wire ends": Told(
        "CAUTION", "Flying wire ends.",
        "Can hit an eye.",
        "Eye protection for all at the table; hold both sides, cut downwards.",
        ("W001", "M004"), (EYES,),
        short="Wire ends: eyes",
    ),
    "nickel": Told(
        "CAUTION", "Nickel.",
        "Can make skin allergic for good.",
        "Not in a pierced ear, nor on skin that it ever made itch; take a finding known to hold none.",
        ("W001",),
        short="Nickel: not in an ear", at_action=True,
    ),
    "metals apart": Told(
        "NOTICE", "Silver and copper apart.",
        "A trace spoils.",
        "Own pads, brushes, slip and carbon for each.",
        short="Own tools each metal",
    ),
}  # fmt: skip

WORN = {"M003": ("ear",), "M004": ("eye", "goggles", "glasses"), "M009": ("glove",), "M016": ("mask", "respirator")}
"""How the words of what is worn begin to which a sign belongs."""

FLAMES = ("torch", "hot metal", "melt")
OFF_AT_A_FLAME = {
    "Gloves for acid": "Gloves for acid at the pickle only, off before the flame",
    "Gloves for chemicals": "Gloves for chemicals at the solution only, off before the flame",
}
"""What is not worn at a flame, and how it is told at a step that has a flame too: a thin glove melts on the hand."""

AT_HOME = (
    "metal dust", "strand", "small parts", "damp clay", "blade", "metal edge", "pin", "burnisher", "drilling",
    "hammering", "wire ends", "nickel", "metals apart",
)  # fmt: skip
"""With which hazards a pupil may go on at home; never with flames, acid, adhesive, or the dust of clay and fibre."""

DEFERENCE = (
    "Makers' directions and safety data sheets come before this sheet,",
    "local rules before both.",
    "What you were not taught, do beside somebody qualified.",
)
"""Said once a sheet, so that no caution needs to."""

_QUALIFIED = "a qualified person or a firing service"
TAUGHT = f"In a class the teacher does this; otherwise {_QUALIFIED}."
"""Who does what is too much for a first piece."""
OUT_OF_CLASS = {TAUGHT: f"{_QUALIFIED.capitalize()} does this."}
"""The same to whoever works from a kit, and is in no class."""

# Common practice: what whoever opens a kit must know before its sheets are read, and what its sender must ask.
OF_A_KIT = ("small parts",)
AS_THE_SHEET_SAYS = "Open and use it as the sheet says."
"""On the label of a bag, after the hazard of what lies in it."""
ASK_FIRST = Told(
    "NOTICE", "In it: {}.", "What may be sent hangs on what is in it.",
    "Ask the carrier, and the local rules, before it is posted.",
)  # fmt: skip
GLOWS = Fact(
    525, "What is hotter glows (Draper point)", unit="°C", source="encyclopedia entries on the Draper point",
    grade="seen",
)  # fmt: skip
