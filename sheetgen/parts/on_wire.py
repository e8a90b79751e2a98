"""What beads on a wire with a loop share: the beads they take, and whether the wire goes through."""

from __future__ import annotations

from typing import ClassVar

from sheetgen.base.material import Bead
from sheetgen.parts import field
from sheetgen.parts.figure import Need, TakeSpec, aside, figure, need, take
from sheetgen.parts.wire_piece import WirePiece, too_tight


# fmt: off
class OnWire(WirePiece):
    """Beads threaded on a wire whose end is turned into a loop, and wrapped or not."""

    bead = field.item(Bead, "the bead", role="strung")
    beads = field.count("beads on one link", default="1", at_most=100)
    caps = field.length("what caps and spacers add to the beads' length", default="0 mm", at_least=0)
    loop = field.length("inside of each loop: where it sits on the pliers' jaw", default="2.5 mm", above=0)
    wraps = field.count("turns wrapped at each end", default="3", at_most=20)

    loop_turn = aside("mm", "turned_loop(loop, wire.thickness)")

    takes: ClassVar[tuple[TakeSpec, ...]] = (take("bead", "beads_all", each="beads"),)
    needs: ClassVar[tuple[Need, ...]] = (
        need("bead.hole ≥ wire.thickness", "({wire.thickness}) does not go through the bead's hole", at="wire", most="bead.hole",
             help="or another bead", when="bead.hole"),
        too_tight("loop", "loop"),
    )


stack = figure("Beads and caps", "mm", "beads × bead.length + caps", "out", about="What sits between the two necks.")
neck = figure("Neck", "mm", "wrapped_neck(wraps, wire.thickness)", "out", about="Stem under the wraps: leave it bare between bead and loop.")
beads_all = figure("Beads for all", "", "count × beads", "whole", about="On all the pieces.")
