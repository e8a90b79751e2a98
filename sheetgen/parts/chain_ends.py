"""Chain ends: a set of pieces of chain, each a step longer than the one before."""

from __future__ import annotations

from sheetgen.base.material import Fibre
from sheetgen.facts.wires import OFF_LINKS
from sheetgen.parts import field
from sheetgen.parts.figure import figure, need, size, take
from sheetgen.parts.kind import Part
from sheetgen.parts.strand import spool


# fmt: off
class ChainEnds(Part):
    """Whole links, hanging taut: a piece of n links is n link lengths long, so first and step become whole links.

    A soldered chain loses a link at each cut; one whose links open loses none. What a chain stretches is not known here.
    """

    kind = "chain ends"

    link = field.length("what one link adds to the chain: its inside length, such as links.pitch", above=0)
    first = field.length("length of the first, shortest piece", above=0)
    step = field.length("how much longer each next one is; 0 for equal pieces", default="0 mm", at_least=0)
    pieces = field.count("how many pieces in one set", at_most=500)
    lost = field.count("links lost at each cut", default="1", at_least=0, at_most=10)
    chain = field.maybe_item(Fibre, "the chain, where stock sells it by length", role="made of")

    links_first = figure("Links in the first", "", "max(1, whole_links(first, link))", "whole", about="The nearest whole number.")
    links_step = figure("Links more in each next", "", "whole_links(step, link)", "whole", about="The nearest whole number.",
                        needs=(need("step = 0 mm or links_step ≥ 1", "is less than half a link", at="step", help="{link} is one link"),))
    first_out = figure("First piece comes out", "mm", "links_first × link", "out", about="In whole links.", role="limp")
    step_out = figure("Step comes out", "mm", "links_step × link", "out", about="In whole links.")
    links_last = figure("Links in the last", "", "links_first + (pieces − 1) × links_step", "whole", about="The longest piece.")
    last_out = figure("Last piece comes out", "mm", "links_last × link", "out", about="In whole links.")
    links_set = figure("Links in one set", "", "graded_links(pieces, links_first, links_last)", "whole", about="All the pieces of one set.")
    links_all = figure("Links for all", "", "count × (links_set + pieces × lost)", "whole", about="With what the cuts lose.")
    chain_length = figure("Chain for all", "mm", "links_all × link", "length up", about="With what the cuts lose.")

    sizes = (
        size("first piece, {links_first} links", "first_out", finished="first", tool="ruler"),
        size("last piece, {links_last} links", "last_out", tool="ruler"),
    )
    takes = (take("chain", "chain_length", when="chain"),)
    needs = (
        spool("chain", "last_out", "piece", when="chain"),
        need(f"max(first_out − first, first − first_out) ≤ {OFF_LINKS:g} × first", "is far from a whole number of links", at="first",
             help="{first_out} is {links_first} links", doubt=True),
    )
