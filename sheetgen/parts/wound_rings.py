"""What rings share that are wound close on a rod and cut off: how many come of a coil, and what wire they all take.

Figures stand here and are named in each kind where its own order wants them. A kind says how many rings it wants, as
`rings`, how long the wire in one of them is, as `one`, and its rod, as `rod_used`.
"""

from __future__ import annotations

from typing import ClassVar

from sheetgen.base.material import Wire
from sheetgen.facts.wires import KERF_MOST
from sheetgen.parts import field
from sheetgen.parts.figure import Need, aside, figure, need
from sheetgen.parts.kind import Part
from sheetgen.parts.wire_piece import take_wire


# fmt: off
class WoundRings(Part):
    """One coil or several, each with its two ends; wire is bought for them all."""

    hazards = ("wire ends",)

    wire = field.item(Wire, "the wire", role="made of")

    wound = aside("", "coils if coil else 1")
    longest = aside("mm", "(min(per_coil, rings) if coil else rings) × one + tails")

    takes = (take_wire("wire", "wire_length"),)
    needs: ClassVar[tuple[Need, ...]] = (
        need(f"kerf < {KERF_MOST:g} × one", "takes a quarter of the ring or more", at="kerf", help="{0.3 mm} to {0.5 mm} is a saw blade"),
        need("wire.longest ≥ one + tails", "holds {wire.longest} a pack, and one ring with its coil's ends is {one + tails}", at="wire",
             when="wire.longest"),
        need("wire.longest ≥ longest", "holds {wire.longest} a pack, and a coil with its ends is {longest}", at="wire",
             help="wind shorter coils, by coil: {down((wire.longest − tails) ÷ one) × wire.thickness} or less",
             when="wire.longest and wire.longest ≥ one + tails"),
    )


springback = field.ratio("how much the inside opens when the coil leaves the rod", default="0 %", at_most=0.3)
kerf = field.length("width of the cut; nothing for flush cutters", default="0 mm", at_least=0)
coil = field.maybe_length("length of one close coil that the rod takes, if they are wound in several", above=0)
tails = field.length("wire left over at the ends of a coil, together", default="20 mm", at_least=0)

per_coil = figure("Rings from one coil", "", "rings_from(coil, wire.thickness)", "whole", when="coil",
                  about="Whole turns of a close coil as long as the rod takes.",
                  needs=(need("per_coil ≥ 1", "is less than one turn of this wire", at="coil", least="wire.thickness"),))
coils = figure("Coils", "", "up(rings ÷ per_coil)", "whole", when="coil", about="How many coils to wind.")
wire_length = figure("Wire for all", "mm", "rings × one + wound × tails", "length up", about="All rings and the ends of the coils.")
