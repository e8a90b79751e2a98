"""Chain run: links and rings to a finished length: how many, and how long it really comes out."""

from __future__ import annotations

from sheetgen.parts import field
from sheetgen.parts.figure import aside, figure, need, size
from sheetgen.parts.strand import Clasped


# fmt: off
class ChainRun(Clasped):
    """Taut, touching inner walls coincide, so inside lengths add up: links, rings between them, rings at the ends, clasp.

    A chain that hangs loose, or whose links are hammered, is another length: how much is not known here.
    """

    kind = "chain run"

    length = field.length("finished length, clasp counted in", above=0)
    measured = field.one_of("laid flat over all, or inside of the end links, as round a wrist", "over all", "inside")
    comes = field.one_of("whole links make it a little off: to which side", "no shorter", "no longer", "nearest")
    link = field.length("inside length of one link, such as links.pitch", above=0, role="link of")
    ring = field.length("inside length of the ring between two links; 0 where they hook into each other", default="0 mm", at_least=0, role="ring of")
    wire = field.length("thickness of the end links' wire, such as links.wire.thickness", above=0)
    ring_wire = field.length("thickness of the rings' wire", default="0 mm", at_least=0)
    link_width = field.maybe_length("inside width of a link, for the drawings, such as links.peg_used", above=0)
    end_rings = field.count("rings at the ends, for clasp or drop", default="0", at_least=0, at_most=20)

    ends = aside("mm", "2 × wire if measured is over_all else 0 mm")
    found = aside("mm", "over_all if measured is over_all else inside")
    across = aside("mm", "link_width or max(0.45 × link, 2 × (wire + ring_wire))")
    """Inside width a link is drawn with: where it is not given, slim, and so that a ring goes through."""

    fittings = figure("Clasp and end rings", "mm", "clasp_length + end_rings × ring",
                      about="What stands at the ends beside the links and the rings between them.")
    room = figure("Room for links", "mm", "length − fittings − ends", about="Length left for links and the rings between them.",
                  needs=(need("room > 0 mm", "leaves no room for a link beside clasp and end rings", at="length", least="fittings + ends + link"),))
    links = figure("Links", "",
                   "links_for(room, link, ring) if comes is no_shorter else links_in(room, link, ring) if comes is no_longer else links_near(room, link, ring)",
                   "whole", about="How many links.", role="links wanted",
                   needs=(need("links ≥ 1", "is too short for one link", at="length", least="fittings + ends + link"),))
    rings = figure("Rings", "", "rings_between(links, end_rings)", "whole", about="Between the links, and at the ends.", when="ring",
                   role="rings wanted")
    inside = figure("Inside, end to end", "mm", "chain_inside(links, link, ring) + fittings", "out",
                    about="Taut, inside the end links, the clasp counted in: round a wrist or neck when it is closed.")
    over_all = figure("Length over all", "mm", "inside + 2 × wire", "out", about="Taut and laid flat, the clasp counted in.")
    over = figure("Longer than asked", "mm", "found − length", "out", about="How much it is off, shorter with a minus.")
    unit = figure("One link more or less", "mm", "link + ring", "out", about="What a link with its ring adds or takes.")

    sizes = (size("{measured}, taut", "links", finished="length", fires="found", tool="ruler", counted="links"),)
    needs = (
        need("ring ≥ 2 × wire", "does not take the wires of two links", at="ring", least="2 × wire", when="ring"),
        need("ring", "is given, and there are no rings", at="ring wire", help="give ring: their inside length", when="ring_wire"),
        need("ring", "are given, and their size is not", at="end rings", help="give ring: their inside length", when="end_rings"),
        need("ring_wire + wire ≤ link", "does not go through a link beside its wire", at="ring wire", most="max(link − wire, 0.1 mm)"),
    )
