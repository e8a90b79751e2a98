"""Stud post: a wire soldered upright behind a stud, long enough for the lobe and for the nut that holds it."""

from __future__ import annotations

from sheetgen.facts.wires import POST_LOBE, POST_NUT, POST_THICK, POST_THIN
from sheetgen.parts import field
from sheetgen.parts.figure import figure, need, size
from sheetgen.parts.wire_piece import WirePiece


# fmt: off
class StudPost(WirePiece):
    """What goes through the lobe and what the nut takes; and what stands in a seat drilled for it, which holds better.

    It is cut longer than it is, to be held while it is soldered, and trimmed and rounded after.
    """

    kind = "stud post"
    hazards = ("wire ends", "torch", "pickle")

    pad = field.neighbour("the part it is soldered to", role="goes into")
    lobe = field.length("how thick the ear lobe is, with room not to be pinched", default=f"{POST_LOBE:g} mm", above=0)
    nut = field.length("what the nut takes of the post", default=f"{POST_NUT:g} mm", above=0)
    seat = field.length("how deep it stands in a seat drilled in the pad", default="0 mm", at_least=0)

    stands = figure("Post, finished", "mm", "lobe + nut", "bench", about="How far it stands out of the pad when it is trimmed.")
    one = figure("Wire in one post", "mm", "stands + seat", "out", about="With what stands in its seat.")

    sizes = (
        size("wire for one", "cut", tool="ruler"),
        size("post out of the pad", "stands", tool="ruler"),
    )
    needs = (
        *WirePiece.needs,
        need(f"wire.thickness ≥ {POST_THIN:g} mm", "({wire.thickness}) is thinner than nuts hold", at="wire", least=f"{POST_THIN:g} mm", rule="post-wire"),
        need(f"wire.thickness ≤ {POST_THICK:g} mm", "({wire.thickness}) is too thick for the usual piercing", at="wire", most=f"{POST_THICK:g} mm",
             rule="post-wire"),
    )
