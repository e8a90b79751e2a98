"""Fringe: strips or cords hanging side by side, folded over a bar or held at one end, of one length or several."""

from __future__ import annotations

from sheetgen.base.material import Fibre
from sheetgen.parts import field
from sheetgen.parts.figure import aside, figure, inline, need, size, take
from sheetgen.parts.kind import Part
from sheetgen.parts.strand import spool


# fmt: off
class Fringe(Part):
    """Drops grow in even steps; a folded strip is two drops and half a turn over the bar, on its middle.

    So do the strands as they are cut, from the first to the last as both are printed: cut to a ruler's marks, one is as
    much longer as another is shorter, and together they take the same. Fibre stretches, frays and curls as it pleases,
    and knots take up length: trim the finished fringe by eye. What is trimmed is cut to 10 mm, up; else to 1 mm.
    """

    kind = "fringe"

    fibre = field.item(Fibre, "the strip, ribbon or cord", role="made of")
    width = field.maybe_length("width of one strip, when it is slit from a wider ribbon", above=0)
    strips_of = field.neighbour("the slit strips that it is made of, which count the ribbon", role="slit as")
    strands = field.maybe_count("how many side by side; or give the edge they fill", at_most=2000)
    along = field.maybe_length("edge that they hang from", above=0)
    margin = field.length("edge left free at each of its ends", default="0 mm", at_least=0)
    gap = field.length("gap between two strips", default="0 mm", at_least=0)
    first = field.length("finished drop of the first; in a point, of both outer ones", above=0)
    last = field.maybe_length(  # type: ignore[assignment]  # not `Part.last`: files have always called it so
        "finished drop of the last; in a point, of the middle; all alike if left out", above=0
    )
    shape = field.one_of("how the drops run from first to last", "slope", "point")
    bar = field.maybe_length("diameter of the bar they are folded over; held at one end if left out", above=0)
    held = field.length("length held in the end or seam, of strips that are not folded", default="10 mm", at_least=0)
    trim = field.length("length added at each hanging end to trim even", default="0 mm", at_least=0)

    wide = aside("mm", "width or (fibre.width or fibre.thickness)")
    room = inline("(along − 2 × margin if margin else along) if along else wide")
    fit = inline("down((room + gap) ÷ (wide + gap))")
    strips = figure("Strands", "", "strands or fit", "whole", about="Side by side.",
                    needs=(need("strands or along", "are not given, and a fringe wants how many, or the edge they fill", at="strands", help="strands: 12"), need("along ≥ wide + 2 × margin", "is narrower than one strip and the margins", at="along", least="wide + 2 × margin", when="along and not strands")))
    longest = inline("last or first")
    pointed = aside("", "1 if shape is point else 0")
    steps = aside("", "fringe_steps(strips, pointed)")
    step = figure("Step, strand to strand", "mm", "(longest − first) ÷ steps", when="last and steps > 0",
                  about="How much longer each next strip hangs; shorter with a minus.")
    mean = figure("Drop, on the mean", "mm", "fringe_mean(strips, first, longest, pointed)", "out", about="Of all strips.")
    first_long = inline("(folded_strip(first, bar, fibre.thickness) + 2 × trim if bar else first + held + trim)")
    last_long = inline("(folded_strip(longest, bar, fibre.thickness) + 2 × trim if bar else longest + held + trim)")
    first_cut = figure("First strand, cut", "mm", "up(first_long, 10 mm) if trim else first_long", "millimetre up",
                       about="With what is held or goes over the bar.")
    last_cut = figure("Last strand, cut", "mm", "up(last_long, 10 mm) if trim else last_long", "millimetre up",
                      when="last", about="With what is held or goes over the bar.")
    cut_step = figure("Step as they are cut, strand to strand", "mm", "(last_cut − first_cut) ÷ steps", when="last and steps > 0",
                      about="How much longer each next strip is cut; shorter with a minus.")
    longest_cut = aside("mm", "max(first_cut, last_cut) if last else first_cut")
    per_roll = figure("Strands from one roll", "", "down(fibre.spool ÷ longest_cut)", "whole", when="fibre.spool and not strips_of",
                      about="How many of the longest one pack of the fibre gives.")
    total = figure("Fibre for one fringe", "mm", "fringe_sum(strips, first_cut, last_cut, pointed) if last else strips × first_cut", "length up",
                   about="All its strips as they are cut, in even steps from the first to the last.")
    each = aside("", "2 if bar else 1")
    ends = figure("Hanging ends", "", "strips × each", "whole", about="Two of each folded strip.")
    fills = figure("Edge that they fill", "mm", "strips × wide + (strips − 1) × gap", "out", about="Side by side, not overlapping.")
    even_gap = figure("Gap, evened out", "mm", "(room − strips × wide) ÷ (strips − 1)", when="along and strips > 1",
                      about="Between two strips, when the outer ones stand at the ends of the edge or at its margins.")

    least_strands = aside("", "3 if shape is point else 2")
    sizes = (
        size("strand, {strips} in each", "first_cut", tool="ruler", when="not last"),
        size("first strand", "first_cut", tool="ruler", when="last"),
        size("last strand", "last_cut", tool="ruler", when="last"),
    )
    takes = (take("fibre", "count × total", each="total", when="not strips_of"),)
    needs = (
        need("fibre.width", "cannot be slit from {fibre.name}", at="width", when="width", help="take it out: stock gives it no width"),
        need("width ≤ fibre.width", "cannot be slit from {fibre.name}", at="width", most="fibre.width", when="width and fibre.width"),
        need("width", "wants the width of one strip", at="strips of", when="strips_of", help="width: {strips_of.name}.width"),
        need("strips_of", "is of slit strips, and nothing says how many come out of a ribbon", at="width", when="width",
             help="add a part of kind slit strips, and name it here as strips of"),
        need("fills + 2 × margin ≤ along", "take {fills + 2 × margin}, more than the edge", at="strands", help="{max(1, fit)} or fewer",
             when="along and strands"),
        need("last = first or strips ≥ least_strands", "are too few for a {shape}", at="strands", help="{least_strands} strands or more",
             when="last and strands"),
        need("last = first or strips ≥ least_strands", "holds too few strands for a {shape}", at="along",
             help="room for {least_strands} strands or more", when="last and not strands"),
        spool("fibre", "longest_cut", "strand", when="not strips_of"),
    )
