"""What links bent round two pegs share: the pegs, the gap between them, how long the link comes out.

The gap is set on a jig, so all that follows is worked from it as it is printed. Figures stand here and are named in
each kind where its own order wants them.
"""

from __future__ import annotations

from sheetgen.parts.figure import FigureSpec, Need, aside, figure, need, size, tool
from sheetgen.parts.wire_piece import WirePiece, too_tight

_APART = "clear + (peg_used + second_used) ÷ 2"


# fmt: off
class PegPair(WirePiece):
    """A kind says how its two ends' fields are called, how the gap is worked and how the wire."""

    peg_used: FigureSpec
    second_used: FigureSpec
    clear: FigureSpec
    pitch: FigureSpec

    apart = aside("mm", _APART)

    sizes = (
        size("wire for one", "cut", tool="ruler"),
        size("pegs, centre to centre", "centres", tool="jig"),
        size("length over all", "outside", finished="length", tool="as bent, not hammered"),
    )
    tools = (
        tool("peg", "peg_used", given="peg"),
        tool("peg", "second_used", given="second_peg"),
    )


def chosen(first: str, second: str) -> tuple[FigureSpec, FigureSpec]:
    """Both pegs, by the fields that give the insides of both ends; the second is as the first unless it is given."""
    one = f"peg or nearest({first}, drawer.peg)"
    other = f"nearest({second}, drawer.peg) if {second} else second_peg or ({one})"
    named, as_named = first.replace("_", " "), second.replace("_", " ")
    return (
        figure("First peg", "mm", one, at=named, about="The first end comes out at this inside."),
        figure(
            "Second peg", "mm", other, at=f"{as_named} or {named}", about="The second end comes out at this inside."
        ),
    )


def needed(first: str, second: str) -> tuple[Need, ...]:
    """One way of giving each end; each as wide as the wire of the next link."""
    fields = (first, second, "peg", "second_peg")
    return (
        *WirePiece.needs,
        need(f"not {second}", "or second peg is wanted, one of the two", at=second.replace("_", " "), help="give one",
             when="second_peg"),
        *(too_tight(name.replace("_", " "), name, when=name) for name in fields),
    )


centres = figure("Peg centres apart", "mm", _APART, "tenth", about="Centre to centre on the jig.")
pitch = figure("Inside, loop to loop", "mm", "link_inside(peg_used, second_used, clear)", "out", role="adds",
               about="What one link adds to a chain pulled taut.")
outside = figure("Length over all", "mm", "pitch + 2 × wire.thickness", "out", about="Outside length of one link.")
