"""Adhesive mix: two-part adhesive for a number of seats: how much, in which parts, in how many batches."""

from __future__ import annotations

from sheetgen.base.material import Adhesive
from sheetgen.facts.adhesive import MIX_LEFT, SEAT_FILL_LEAST, SEAT_FILL_MOST
from sheetgen.parts import field
from sheetgen.parts.figure import aside, figure, need, take
from sheetgen.parts.kind import Part


# fmt: off
class AdhesiveMix(Part):
    """Seats as cylinders, filled to the share that the stone leaves; pot life halves for every 10 °C (rule of thumb).

    Pot life is stated for a mass of mix: a large lump closes sooner. By weight the parts are right only if stock says
    what each of them weighs, or if both weigh alike; read the maker's sheet. Never change the parts to make it cure
    faster.
    """

    kind = "adhesive mix"
    hazards = ("epoxy",)

    adhesive = field.item(Adhesive, "the adhesive", role="bonds")
    seats = field.count("seats filled in one piece")
    across = field.length("width of a seat", above=0)
    depth = field.length("depth of a seat", above=0)
    fill = field.ratio("share of a seat that adhesive fills, the stone in it", default=f"{SEAT_FILL_LEAST:g}-{SEAT_FILL_MOST:g}")
    waste = field.ratio("what stays on card and stick, as a share of what is used", default="100 %", at_most=10)
    each = field.time("time to fill one seat and set its stone", default="20 s", above=0)
    room = field.temperature("temperature of the room", default="20 °C", at_least=0, at_most=45)

    seats_all = figure("Seats, all", "", "count × seats", "whole", about="In all pieces, mixed for together.")
    one_seat = figure("Adhesive in one seat", "mm³", "seat_volume(across, depth, fill)", about="Round the stone.")
    factor = aside("", "pot_factor(adhesive.pot_temperature, room)")
    open_time = figure("Pot life in this room", "min", "adhesive.pot_life × factor", "short", when="adhesive.pot_life",
                       about="Half as long for every 10 °C warmer: the factor is 2 to the power of the difference ÷ 10.")
    shortest = aside("min", "open_time.low if adhesive.pot_life else 0")
    most_seats = figure("Seats in one batch, at most", "", "down(shortest ÷ each.high)", "whole", when="adhesive.pot_life",
                        about="By the shortest pot life.",
                        needs=(need("shortest ≥ each.high", "is longer than the mix stays open: it closes before one seat is filled", at="each", most="shortest", help="a slower adhesive or a cooler room"),))
    batches = figure("Batches", "", "up(seats_all ÷ most_seats) if adhesive.pot_life else 1", "whole", about="How many times it is mixed.")
    batch_seats = figure("Seats in each batch", "", "up(seats_all ÷ batches)", "whole", about="Shared out evenly.")
    batch = figure("Mix for each batch", "mL", "mix_volume(batch_seats, one_seat ÷ 1000 mm³/mL, waste, adhesive.least)", "most",
                   about="No less than can be measured out.")
    part_a = figure("Part A for each batch", "mL", "batch ÷ (1 + adhesive.part_b)", "most", about="By volume.")
    part_b = figure("Part B for each batch", "mL", "batch × adhesive.part_b ÷ (1 + adhesive.part_b)", "most", about="By volume.")
    mass_a = figure("Part A by weight, if both parts weigh alike", "g", "part_a × adhesive.density", "most", when="not adhesive.density_b",
                    about="On scales that show it.")
    mass_b = figure("Part B by weight, if both parts weigh alike", "g", "part_b × adhesive.density", "most", when="not adhesive.density_b",
                    about="On scales that show it.")
    weight_a = figure("Part A by weight", "g", "part_a × adhesive.density", "most", when="adhesive.density_b",
                      about="On scales that show it, where stock says what each part weighs.")
    weight_b = figure("Part B by weight", "g", "part_b × adhesive.density_b", "most", when="adhesive.density_b",
                      about="On scales that show it, where stock says what each part weighs.")
    total = figure("Mix for all", "mL", "batches × batch", "most", about="All batches.")
    weighs = aside("g", "batches × (weight_a + weight_b if adhesive.density_b else mass_a + mass_b)")
    least_fills = aside("", "down(adhesive.least × 1000 mm³/mL ÷ (one_seat.high × (1 + waste.high))) if fill.low > 0 else 0")

    takes = (take("adhesive", "total", grams="weighs"),)
    needs = (
        need("fill.low > 0", "leaves a seat without adhesive", at="fill", help="20 % to 50 % is usual"),
        need(f"{MIX_LEFT:g} × batch_seats ≥ least_fills", "are so few that most of the smallest mix is left: it fills about {least_fills}", at="seats",
             help="set several pieces at once", doubt=True),
    )
