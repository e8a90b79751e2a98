"""Toggle clasp: a ring, and a bar that goes through it end first and then lies across it."""

from __future__ import annotations

from sheetgen.base.material import Wire
from sheetgen.facts.allowances import TOGGLE_BEYOND, TOGGLE_EYE
from sheetgen.parts import field
from sheetgen.parts.figure import aside, figure, need, size, tool
from sheetgen.parts.kind import Part
from sheetgen.parts.strand import spool
from sheetgen.parts.wire_piece import take_wire

NO_ROOM = "leaves no room beside the bar for what it hangs on"


# fmt: off
class Toggle(Part):
    """The bar is as long as the ring is across outside, and reaches `beyond` it at both ends (common practice).

    A beading site asks for 10 mm more than the ring is across, which is 5 mm an end. To go through, the bar folds
    beside what it hangs on: that must be slim for half a bar (common practice). No figure knows how a clasp wears.
    """

    kind = "toggle clasp"
    hazards = ("wire ends",)
    closes = True

    wire = field.item(Wire, "the wire of the ring", role="made of")
    bar_wire = field.maybe_item(Wire, "the wire of the bar, if it differs", role="made of")
    inside = field.maybe_length("inside diameter of the ring; or give the rod", above=0)
    rod = field.maybe_length("the rod to wind the ring on, when the tool decides", above=0)
    bar = field.maybe_length("finished length of the bar, if it is not to be worked", above=0)
    beyond = field.length("how far the bar reaches past the ring's outside at each end", default=f"{TOGGLE_BEYOND:g} mm", at_least=0)
    bar_eye = field.one_of("how the bar comes by the eye in its middle: a turn of its own wire, or a ring", "wound", "soldered")
    eye = field.maybe_length(f"inside of an eye wound in the middle of the bar; left out, {TOGGLE_EYE:g} × as wide as its wire is thick", at_least=0)
    trim = field.length("wire added to each piece to be trimmed off", default="2 mm", at_least=0)

    either = (("inside", "rod"),)
    staff = aside("mm", "bar_wire.thickness if bar_wire else wire.thickness")
    heavy = aside("g/cm³", "bar_wire.density if bar_wire else wire.density")

    rod_used = figure("Rod", "mm", "rod or nearest(inside, drawer.rod)", about="The ring comes out at this inside.", at="inside", role="adds")
    ring = figure("Wire in the ring", "mm", "π × (rod_used + wire.thickness)", "out", about="Along the middle of the wire, its ends meeting.")
    outside = figure("Ring, outside", "mm", "rod_used + 2 × wire.thickness",
                     about="Outside diameter: the least that a bar must be long to lie on the ring at both sides.")
    bar_made = figure("Bar, end to end", "mm", "bar or (outside + 2 × beyond)", "bench", about="Finished length of the bar.")
    eye_used = figure("Eye of the bar, inside", "mm", f"eye or {TOGGLE_EYE:g} × staff", when="bar_eye is wound",
                      about="What hangs in it must be able to turn.",
                      needs=(need("eye_used ≥ staff", "is less than the wire is thick ({staff})", at="eye", least="staff", help="or for an eye soldered on, bar eye: soldered"),))
    bar_one = figure("Wire in the bar", "mm", "bar_made + (turned_loop(eye_used, staff) if bar_eye is wound)", "out",
                     about="Along the middle of the wire, a full turn in its middle where the bar has an eye of its own.")
    ring_cut = figure("Ring, wire to cut", "mm", "ring + trim", "millimetre up", about="With what is trimmed off.")
    bar_cut = figure("Bar, wire to cut", "mm", "bar_one + trim", "millimetre up", about="With what is trimmed off.")
    room = figure("Room beside the bar in the ring", "mm", "rod_used − staff",
                  about="What the slim end may measure that goes through the ring beside the bar.")
    slim = figure("Slim before the bar", "mm", "bar_made ÷ 2", "bench up",
                  about="Chain or small beads next to the bar, so that half the bar can go through the ring.")
    mass = figure("Weight, ring and bar", "g", "wire_grams(wire.thickness, ring, wire.density) + wire_grams(staff, bar_one, heavy)",
                  about="Both pieces, trimmed.", role="metal mass")

    takes = (
        take_wire("wire", "count × ring_cut", each="ring_cut"),
        take_wire("wire", "count × bar_cut", each="bar_cut", when="not bar_wire"),
        take_wire("bar_wire", "count × bar_cut", each="bar_cut", when="bar_wire"),
    )
    sizes = (
        size("ring, wire", "ring_cut", tool="ruler"),
        size("ring, inside", "rod_used", finished="inside", tool="rod"),
        size("bar, wire", "bar_cut", tool="ruler"),
        size("bar, end to end", "bar_made", finished="bar", tool="ruler"),
        size("bar, inside of its eye", "eye_used", finished="eye", tool="pliers", when="bar_eye is wound"),
    )
    tools = (tool("rod", "rod_used", given="rod"),)
    needs = (
        spool("wire", "ring_cut", "ring"),
        spool("wire", "bar_cut", "bar", when="not bar_wire"),
        spool("bar_wire", "bar_cut", "bar", when="bar_wire"),
        need("bar ≥ outside", "is shorter than the ring is across, and slips through", at="bar", least="outside", when="bar"),
        need("room ≥ staff", NO_ROOM, at="inside", least="2 × staff", when="inside"),
        need("room ≥ staff", NO_ROOM, at="rod", least="2 × staff", when="rod"),
        need("not eye or bar_eye is wound", "is given, and the bar's eye is a ring soldered on", at="eye",
             help="leave it out, or write bar eye: wound", doubt=True),
    )
