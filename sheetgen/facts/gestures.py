"""The gestures that a step can have drawn: where hands are unsure, and no number tells what to do."""

from __future__ import annotations

from dataclasses import dataclass

OF = " of "


@dataclass(frozen=True, slots=True)
class GestureWords:
    """A gesture in words: what its drawing shows, and the kinds of part that it can be drawn of.

    `wants` are figures of the project, by their names in arithmetic, without which it cannot be drawn.
    """

    about: str
    of: tuple[str, ...]
    wants: tuple[str, ...] = ()


_LOOPED = ("wrapped-loop link", "head-pin drop")
_WALLS = ("bezel strip", "bezel cup")

GESTURES: dict[str, GestureWords] = {
    "bent bezel": GestureWords("A strip bent round its stone, its overlap marked and cut there.", _WALLS),
    "bridge on a rim": GestureWords(
        "A bridge laid on the rim of a dome, from behind.", ("cut shape",), ("hole_below",)
    ),
    "closed hollow": GestureWords(
        "A tube with its cap and its foot, in section, and the slip at the joins.", ("tube",)
    ),
    "cut coil": GestureWords("A coil cut one turn at a time, and both faces of the cut made flush.", ("jump ring",)),
    "crimp": GestureWords("A crimp with its two wires, open, pressed and folded, in section.", ("strung wire",)),
    "double ring": GestureWords("A ring of two turns, spread and turned on like a key ring.", ("jump ring",)),
    "eight on two pegs": GestureWords(
        "An eight bent in three moves, its ends cut at the slanting middle.", ("figure-eight link",)
    ),
    "end led back": GestureWords(
        "The end of a strand through crimp and ring, and back into the beads.", ("strung wire",)
    ),
    "eye in a cap": GestureWords(
        "An eye in the hole of a cap, its legs spread under it in slip, in section.", ("dome",)
    ),
    "eye through a cap": GestureWords(
        "A ring through two holes of a cap, its seam buried in clay, in section.", ("jump ring",)
    ),
    "first loop": GestureWords("The loop that a bent wire begins with, its neck bent back under it.", ("bent wire",)),
    "flag on the drill": GestureWords(
        "A drill with its flag of tape, in a seat, in section.", ("stone row", "stone ring", "seat", "scatter")
    ),
    "folded shank": GestureWords(
        "A strip folded over its rod on cards, its feet bent out, in section.", ("bail",), ("wet_leg", "wet_foot")
    ),
    "knot beside a bead": GestureWords("A knot led down to its bead with the awl, and drawn tight.", ("bead strand",)),
    "last loop": GestureWords("The bend and the loop that a bent wire ends with.", ("bent wire",)),
    "medal and frame": GestureWords("A disc in its frame, its bezel and its lugs, half in section.", ("metal disc",)),
    "pin on its bridge": GestureWords(
        "Adhesive through the hole of a bridge, spread behind it like a rivet, in section.", ("cut shape",)
    ),
    "plait": GestureWords("Three strips plaited: the right one over the middle, then the left one.", ("slit strips",)),
    "ring opened": GestureWords("A ring opened sideways, and never apart.", ("jump ring", "toggle clasp")),
    "seam at a slant": GestureWords(
        "An overlap cut through at a slant, and its ends fitted, in section.", ("ring band",), ("seam_face",)
    ),
    "set bezel": GestureWords(
        "A wall before and after it is pushed over its stone, and the order of the pushes.", _WALLS
    ),
    "spiral and its loop": GestureWords(
        "A flat spiral, its straight end bent upright and turned to a loop.", ("flat spiral",)
    ),
    "surgeon's knot": GestureWords(
        "The knot that closes elastic: twice round, drawn up, and once round the other way.",
        ("beads round a neck or wrist",),
    ),
    "tassel": GestureWords(
        "Cords folded in an eye and bound, and drawn up into their cap, in section.", ("cord bundle",)
    ),
    "toggle eye": GestureWords("The eye of a bar, left open for the chain and then shut.", ("toggle clasp",)),
    "wrapped loop": GestureWords("A wrapped loop in three stages: the neck, the loop, the wraps.", _LOOPED),
}
"""Every gesture by its name; `draw/gestures/` draws them, a file each."""


def keyed(gesture: str, part: str) -> str:
    """The name of a drawing: the gesture, and the part that it is drawn of."""
    return f"{gesture}{OF}{part}"
