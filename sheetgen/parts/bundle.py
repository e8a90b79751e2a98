"""Cord bundle: cords, yarns or strips gathered and bound, and whether they go into the end and the cap."""

from __future__ import annotations

from sheetgen.base.material import Fibre, Finding
from sheetgen.facts.fibre import YARN_FILL_LEAST, YARN_FILL_MOST
from sheetgen.formulas.packing import MOST_KNOWN
from sheetgen.parts import field
from sheetgen.parts.figure import Need, aside, figure, need, take
from sheetgen.parts.kind import Part
from sheetgen.parts.strand import spool


def _goes_into(end: str) -> tuple[Need, Need]:
    """The bundle goes into its end, however loosely it lies."""
    given = f"{end} and {end}.inside"
    helped = f"{{most_in_{end}}} cords at the most, or one of {{up(whole.high, 0.1 mm)}} or more inside"
    return (
        need(
            f"room_in_{end}.high ≥ 0 mm",
            f"is {{{end}.inside}} inside, too narrow for the bundle",
            at=end,
            help=helped,
            when=given,
        ),
        need(
            f"room_in_{end}.low ≥ 0 mm or room_in_{end}.high < 0 mm",
            at=end,
            help=helped,
            when=given,
            doubt=True,
            says=f"is {{{end}.inside}} inside, and takes the bundle only if it is drawn tight",
        ),
    )


def _most_in(end: str) -> str:
    """The most cords that go into an end at their loosest."""
    inside = f"({end}.inside − bound_by)"
    strips = f"strips_in({inside}, fibre.width, fibre.thickness, fill.low)"
    cords = f"cords_in({inside} ÷ fibre.thickness, fill.low)"
    return f"({strips} if fibre.width else {cords}) if {end} and {end}.inside else 0"


def _inside(end: str) -> tuple[Need]:
    says = f"({{{end}.name}}) does not say in stock how wide it is inside"
    return (need(f"{end}.inside", says, at=end, help="add its inside to stock"),)


# fmt: off
class CordBundle(Part):
    """To 19 round cords the smallest circle round equal circles (Wikipedia, Circle packing in a circle); more by fill.

    Soft yarn is squeezed into less, by a hand and a thread: the fill is a range, and so is the bundle. Try it with the
    real cord before a dozen are cut.
    """

    kind = "cord bundle"

    fibre = field.item(Fibre, "the cord, yarn or strip", role="made of")
    cords = field.count("how many lie side by side in the bundle, a folded one counted twice", at_most=5000)
    fill = field.ratio("share of the bundle that is fibre, from 20 cords on and for strips", default=f"{YARN_FILL_LEAST:g}-{YARN_FILL_MOST:g}",
                       at_least=0.2)
    end = field.maybe_item(Finding, "the crimp end that it goes into, by its inside", role="goes into")
    cap = field.maybe_item(Finding, "the cap that it is drawn up into, by its inside", role="goes into")
    thread = field.maybe_item(Fibre, "the binding thread", role="bound with")
    turns = field.count("turns of binding thread, side by side", default="10", at_most=200)
    tails = field.length("thread left at both ends of the binding, together", default="150 mm", at_least=0)

    across = figure("Bundle, across", "mm",
                    f"strips_bundled(cords, fibre.width, fibre.thickness, fill) if fibre.width else fibre.thickness × bundle_ratio(cords) if cords ≤ {MOST_KNOWN} else cords_bundled(cords, fibre.thickness, fill)",
                    about="Diameter of the gathered bundle.")
    bound = figure("Bundle, bound", "mm", "across + 2 × thread.thickness", when="thread", about="Across the binding.")
    binding = figure("Binding thread, each", "mm", "binding_thread(across, thread.thickness, turns) + tails", "centimetre most", when="thread",
                     about="Turns side by side, and both tails.")
    wide = figure("Binding, along the bundle", "mm", "turns × thread.thickness", "out", when="thread", about="Turns side by side.")
    whole = aside("mm", "bound if thread else across")
    least_inside = figure("Inside of an end, at the least", "mm", "whole", "most",
                          about="The smallest end or cap that the bundle goes into, bound, however loosely it lies.")
    room_in_end = figure("Room in the end", "mm", "(end.inside or 0) − whole", when="end", needs=_inside("end"),
                         about="Less than nothing: it does not go in.")
    room_in_cap = figure("Room in the cap", "mm", "(cap.inside or 0) − whole", when="cap", needs=_inside("cap"),
                         about="Less than nothing: it does not go in.")
    bound_by = aside("mm", "2 × thread.thickness if thread else 0")
    most_in_end = aside("", _most_in("end"))
    most_in_cap = aside("", _most_in("cap"))

    takes = (  # the cords belong to the fringe
        take("end", when="end"),
        take("cap", when="cap"),
        take("thread", "count × binding", each="binding", when="thread"),
    )
    needs = (
        *_goes_into("end"),
        *_goes_into("cap"),
        need("wide ≤ end.depth", "reach out of the end", at="turns", doubt=True, when="thread and end and end.depth",
             help="{max(1, down(end.depth ÷ thread.thickness))} turns or fewer"),
        spool("thread", "binding", "binding", when="thread"),
    )
