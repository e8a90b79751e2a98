"""Adhesive mix: two-part adhesive for a number of seats: how much, in which parts, in how many batches."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base.material import Adhesive
from sheetgen.base.spread import Spread, ceil, spread
from sheetgen.base.trouble import CannotBe
from sheetgen.facts.adhesive import POT_LIFE_HALVES_PER, SEAT_FILL_LEAST, SEAT_FILL_MOST
from sheetgen.facts.units import MM3_PER_CM3, SECONDS_PER_MINUTE
from sheetgen.formulas.adhesive import mix_mass, mix_volume, mixes, part_of_mix, pot_life, seat_volume, seats_per_mix
from sheetgen.parts import given
from sheetgen.parts.kind import Finding, Part, Take, figure

if TYPE_CHECKING:
    from collections.abc import Iterator


def _closes(part: AdhesiveMix) -> bool:
    return part.adhesive.pot_life is not None


class AdhesiveMix(Part):
    """Seats as cylinders, filled to the share that the stone leaves; pot life halves for every 10 °C (rule of thumb).

    Pot life is stated for a mass of mix: a large lump closes sooner. By weight the parts are right only if both weigh
    alike; read the maker's sheet. Never change the parts to make it cure faster.
    """

    hazards = ("epoxy",)

    kind = "adhesive mix"

    adhesive = given.item(Adhesive, "the adhesive")
    seats = given.count("seats filled in one piece")
    across = given.length("width of a seat", above=0)
    depth = given.length("depth of a seat", above=0)
    fill = given.ratio(
        "share of a seat that adhesive fills, the stone in it",
        default=f"{SEAT_FILL_LEAST:g}-{SEAT_FILL_MOST:g}",
    )  # fmt: skip
    waste = given.ratio("what stays on card and stick, as a share of what is used", default="100 %", at_most=10)
    each = given.time("time to fill one seat and set its stone", default="20 s", above=0)
    room = given.temperature("temperature of the room", default="20 °C", at_least=0, at_most=45)

    @figure("Seats, all", "", "{count} × {seats}", rounding="whole")
    def seats_all(self) -> Spread:
        """In all pieces, mixed for together."""
        return self.count * self.seats

    @figure("Adhesive in one seat", "mm³", "π ÷ 4 × {across}² × {depth} × {fill}")
    def one_seat(self) -> Spread:
        """Round the stone."""
        return seat_volume(self.across, self.depth, self.fill) * float(MM3_PER_CM3)

    @property
    def factor(self) -> float:
        """2 to the power of (reference − room) ÷ 10."""
        return 2 ** ((self.adhesive.pot_temperature - self.room.usual) / POT_LIFE_HALVES_PER)

    @figure("Pot life in this room", "min", "{adhesive.pot_life} × {factor}", rounding="short", when=_closes)
    def open_time(self) -> Spread:
        """Half as long for every 10 °C warmer: the factor is 2 to the power of the difference ÷ 10."""
        life = self.adhesive.pot_life or spread(0)
        return pot_life(life, self.adhesive.pot_temperature, self.room)

    @property
    def shortest(self) -> float:
        """The shortest pot life, which is the one to work by, min."""
        return self.open_time.low

    @figure("Seats in one batch, at most", "", "down({shortest} ÷ {each})", rounding="whole", when=_closes)
    def most_seats(self) -> float:
        """By the shortest pot life."""
        if self.shortest < self.each.high:
            message = f"the mix closes after {self.shortest:.3g} min, before one seat is filled"
            raise CannotBe(message, f"{self.shortest:.3g} min or less, a slower adhesive or a cooler room", "each")
        return seats_per_mix(self.shortest, self.each.high * SECONDS_PER_MINUTE)

    @property
    def batches_worked(self) -> str:
        """How the batches are worked."""
        return f"up({self.seats_all.usual:g} ÷ {self.most_seats.usual:g})" if _closes(self) else "1"

    @figure("Batches", "", "{batches_worked}", rounding="whole")
    def batches(self) -> float:
        """How many times it is mixed."""
        if not _closes(self):
            return 1
        return mixes(self.seats_all.usual, self.shortest, self.each.high * SECONDS_PER_MINUTE)

    @figure("Seats in each batch", "", "up({seats_all} ÷ {batches})", rounding="whole")
    def batch_seats(self) -> float:
        """Shared out evenly."""
        return ceil(self.seats_all.usual / self.batches.usual)

    @figure(
        "Mix for each batch",
        "mL",
        "max({adhesive.least}, {batch_seats} × {one_seat} ÷ 1000 × (1 + {waste}))",
        rounding="most",
    )
    def batch(self) -> Spread:
        """No less than can be measured out."""
        return mix_volume(self.batch_seats, self.one_seat / float(MM3_PER_CM3), self.waste, self.adhesive.least)

    @figure("Part A for each batch", "mL", "{batch} ÷ (1 + {adhesive.part_b})", rounding="most")
    def part_a(self) -> Spread:
        """By volume."""
        return part_of_mix(self.batch, 1, self.adhesive.part_b)

    @figure("Part B for each batch", "mL", "{batch} × {adhesive.part_b} ÷ (1 + {adhesive.part_b})", rounding="most")
    def part_b(self) -> Spread:
        """By volume."""
        return part_of_mix(self.batch, self.adhesive.part_b, 1)

    @figure("Part A by weight, if both parts weigh alike", "g", "{part_a} × {adhesive.density}", rounding="most")
    def mass_a(self) -> Spread:
        """On scales that show it."""
        return mix_mass(self.part_a, self.adhesive.density)

    @figure("Part B by weight, if both parts weigh alike", "g", "{part_b} × {adhesive.density}", rounding="most")
    def mass_b(self) -> Spread:
        """On scales that show it."""
        return mix_mass(self.part_b, self.adhesive.density)

    @figure("Mix for all", "mL", "{batches} × {batch}", rounding="most")
    def total(self) -> Spread:
        """All batches."""
        return self.batches * self.batch

    @property
    def taken(self) -> Spread:
        """What stock gives, in the unit it is sold by."""
        return mix_mass(self.total, self.adhesive.density) if self.adhesive.unit == "g" else self.total

    def takes(self) -> Iterator[Take]:
        """All batches."""
        yield Take(self.adhesive, self.taken, "total")

    def check(self) -> Iterator[Finding]:
        """A fill of nothing sticks nothing; every batch can be measured out."""
        if self.fill.low <= 0:
            yield Finding("fill", "leaves a seat without adhesive", "20 % to 50 % is usual")
            return
        most = math.floor(self.adhesive.least * float(MM3_PER_CM3) / (self.one_seat.high * (1 + self.waste.high)))
        if 10 * self.batch_seats.usual < most:
            message = f"are so few that most of the smallest mix is left: it fills about {most}"
            yield Finding("seats", message, "set several pieces at once", "warning")
