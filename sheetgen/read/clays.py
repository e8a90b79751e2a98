"""Metal clays of stock: densities that fit each other and every way the clay is fired, and how it dries."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING, Any

from sheetgen.base.dimension import COUNT, DENSITY, LENGTH, TIME
from sheetgen.base.material import Clay
from sheetgen.base.place import Word
from sheetgen.base.spelling import plain
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.shrinkage import relative_density
from sheetgen.read.programs import ProgramMaker

if TYPE_CHECKING:
    from sheetgen.base.material import Program
    from sheetgen.model import stock as forms

PER_CM3 = 1000
HEAVIEST = 0.0226  # g/mm³: osmium, the densest metal (periodictable 2.1.0)
OF_ONE_PROGRAM = (
    "shrinkage", "firing_shrinkage", "thickness_shrinkage", "test_strips", "firing", "strength", "good_for",
)  # fmt: skip


class ClayMaker(ProgramMaker):
    """Makes clays, noting troubles; None for one that is wrong."""

    def clay(self, key: Word, written: forms.WrittenClay, common: dict[str, Any]) -> Clay | None:
        """A clay of a stock file, by its strongest program; None for one that is wrong."""
        density = self.number(written.wet_density, DENSITY, above=0, most=0.02, name="wet density")
        share = self.number(written.metal_share, COUNT, above=0, most=1, name="metal share")
        solid = self.number(written.solid_density, DENSITY, above=0, most=HEAVIEST, name="solid density")
        drying = self.measures.interval(written.drying, TIME, above=0, name="drying") if written.drying else None
        at = self.number(written.drying_thickness, LENGTH, above=0, most=20, name="drying thickness")
        torch = self.yes_no(written.torch, "torch", otherwise=False)
        programs = [self.program(key, name, one, written) for name, one in self._written_programs(key, written)]
        known = [program for program in programs if program is not None]
        if len(known) < len(programs) or not known or density is None or share is None:
            return None
        density, solid = density * PER_CM3, solid * PER_CM3 if solid else None
        if solid and not all([self._possible(key, written, one, density, share, solid) for one in known]):  # noqa: C419 - each is told
            return None
        strongest = max(known, key=lambda program: program.rank)
        clay = Clay(
            **common,
            shrinkage=strongest.shrinkage,
            thickness_shrinkage=strongest.thickness_shrinkage,
            density=density,
            metal_share=share,
            solid_density=solid,
            drying=drying,
            drying_thickness=at,
            torch=torch,
            programs=tuple(known),
        )
        return clay.fired_by(strongest)

    def _written_programs(self, key: Word, written: forms.WrittenClay) -> list[tuple[Word, forms.WrittenProgram]]:
        """Every program by its name, or the clay's own one, which has none; what several may not share is told."""
        if not written.programs:
            return [(Word("", key.place), written)]
        for name in OF_ONE_PROGRAM:
            if getattr(written, name):
                told = f"'{key}' has programs, and its {name.replace('_', ' ')} would belong to none of them"
                self.troubles.add(told, key.place, "write it below the program that it belongs to")
        for one, other in pairwise(sorted(written.programs, key=plain)):
            if plain(one) == plain(other):
                self.troubles.add(f"'{key}' has two programs called '{other}'", other.place, "give one another name")
        return list(written.programs.items())

    def _possible(  # noqa: PLR0913, PLR0917 - what the balance of mass weighs against each other
        self, key: Word, written: forms.WrittenClay, by: Program, density: float, share: float, solid: float
    ) -> bool:
        """Whether the clay's data leave less than solid metal, however much it shrinks: nothing fires denser."""
        s, thick = by.shrinkage, by.thickness_shrinkage
        for plane, deep in ((s.low, thick.low), (s.high, thick.high)):  # it is densest where it shrinks most
            try:
                relative_density.pure(density, share, plane, deep, solid)
            except CannotBe as fault:
                program = f", program '{by.name}'," if by.name else ""
                told = f"the data of '{key}'{program} cannot be: at {plane * 100:.3g} % shrinkage {fault.message}"
                helped = "check shrinkage, wet density and metal share against each other"
                self.troubles.add(told, written.wet_density.place, helped)
                return False
        return True
