"""What is told together where a sheet has several cautions of one kind of harm, and how dust of the fire is called."""

from __future__ import annotations

from typing import NamedTuple


class Joint(NamedTuple):
    """Cautions of one kind of harm told as one: `each` is how it is named there, and what holds for it alone."""

    hazard: str
    consequence: str
    avoid: str
    each: dict[str, tuple[str, str]]


class Dust(NamedTuple):
    """What gives dust about the fire: what it acts as, how it is called; and as what it is tipped out, if it is."""

    acts: str
    name: str
    tipped: str = ""


FIBRE = Dust("fibre", "kiln fibre")
FIBRE_IS = "cut fibre damp, fire it dry"
TIP = "tip {} slowly"
DUSTS_OF_THE_FIRE = (
    FIBRE,
    Dust("carbon", "carbon", "carbon"),
    Dust("support", "firing bed", "the bed"),
    Dust("plug", "plug", "the plug"),
)
"""An item is called by the first that it acts as; what acts as none by its own name. Common practice."""

JOINTS = (
    Joint(
        "Dust of {}",
        "Harms the lungs over the years.",
        "Mask on; wipe up wet, never blow or sweep; wash hands.",
        {
            "fibre dust": (
                "kiln fibre, firing bed, plug",
                "Cut fibre damp, fire it dry; tip bed or plug slowly.",
            ),
            "clay dust": ("dry clay", "Sand clay dry, over a tray."),
            "metal dust": ("metal", "Metal sanded wet needs no mask."),
        },
    ),
    Joint(
        "{}",
        "Cut or pierce before you feel it.",
        "Work away from the hand that holds.",
        {
            "blade": (
                "bare blade",
                "Fingers behind the edge, cut downwards or away, then cap it.",
            ),
            "pin": ("sharp point", "A prick can fester: cork the point."),
            "burnisher": ("slipping burnisher", "Burnish on a block, short strokes."),
            "drilling": ("turning drill", "Back drilled work with a block, not a finger."),
        },
    ),
    Joint(
        "{}",
        "Harm skin, lungs and eyes.",
        "Somebody within call.",
        {
            "kiln": (
                "hot kiln",
                (
                    "The kiln burns at once, through thin gloves: long cotton sleeves, nothing near that burns. "
                    "Shut until cold; off at the wall before you reach in."
                ),
            ),
            "damp clay": ("damp clay", "Steam bursts damp clay: fire only what the mirror passed, from cold."),
            "binder smoke": ("binder smoke", "Vent the room, do not sit beside it."),
            "kiln glow": ("glow", "Do not look in; if you must, briefly, in shaded glasses made for it."),
        },
    ),
    Joint(
        "{}",
        "Hurt eyes, ears and fingers.",
        "Eye protection for all at the table.",
        {
            "wire ends": ("flying wire ends", "Hold both sides of the cut, cut downwards."),
            "hammering": ("hammer blows", "Ears covered, small work held in pliers or tape, hammer's head fast."),
        },
    ),
    Joint(
        "{}",
        "Slice skin; offcuts and blade ends fly.",
        "Eye protection on.",
        {
            "metal edge": (
                "edges of cut metal",
                "Hold sheet flat, not by its corners; file each edge at once; brush offcuts up.",
            ),
            "saw blade": ("saw blade", "Saw upright on the bench pin, unforced, fingers beside the line."),
        },
    ),
)
"""What is told together where a sheet has several, in this order: three dusts are one harm, and one box is read."""
