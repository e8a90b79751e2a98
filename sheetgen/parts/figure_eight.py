"""Figure-eight link: wire led crosswise round two pegs, two loops on one line."""

from __future__ import annotations

from sheetgen.parts import field, pegs
from sheetgen.parts.figure import aside, figure, need
from sheetgen.parts.pegs import PegPair

_NO_ROOM = "leaves {clear} between the pegs, where the wire ({wire.thickness}) is to cross"


# fmt: off
class FigureEight(PegPair):
    """A crossed belt, exact: handbooks' series is 1 to 2 % short where pegs stand as close as here.

    The two strands cross one on top of the other; hammering lengthens a link, and no figure here knows by how much.
    """

    kind = "figure-eight link"

    loop = field.maybe_length("inside diameter of the first loop; or give the peg", above=0)
    second_loop = field.maybe_length("inside diameter of the second loop, if it differs", above=0)
    peg = field.maybe_length("the first peg, when the tool decides", above=0)
    second_peg = field.maybe_length("the second peg, when the tool decides and it differs", above=0)
    gap = field.maybe_length("clear gap between the pegs; or give the length", above=0)
    length = field.maybe_length("finished length over all; or give the gap", above=0)

    either = (("loop", "peg"), ("gap", "length"))

    peg_used, second_used = pegs.chosen("loop", "second_loop")
    clear = figure("Gap between the pegs", "mm", "gap or length − 2 × wire.thickness − peg_used − second_used", "tenth",
                   about="Clear gap between the pegs.",
                   needs=(need("clear ≥ wire.thickness", _NO_ROOM, at="gap", when="gap", least="up(wire.thickness, 0.1 mm)"), need("clear ≥ wire.thickness", _NO_ROOM, at="length", when="not gap", least="2 × wire.thickness + peg_used + second_used + up(wire.thickness, 0.1 mm)")))
    centres = pegs.centres
    radii = aside("mm", "(peg_used + second_used) ÷ 2 + wire.thickness")
    one = figure("Wire in one link", "mm", "crossed_belt(radii, apart)", "out", about="Along the middle of the wire.")
    pitch = pegs.pitch
    outside = pegs.outside

    needs = pegs.needed("loop", "second_loop")
