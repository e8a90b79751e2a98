"""Metal clays of stock: shrinkage, densities that fit each other, and the phases of their firing."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING, Any

from sheetgen.base.dimension import COUNT, DENSITY, LENGTH, RATE, TEMPERATURE, TIME
from sheetgen.base.interval import Interval
from sheetgen.base.material import Clay, Phase
from sheetgen.base.place import Word
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.shrinkage import relative_density
from sheetgen.read.measured import shrunk
from sheetgen.read.measures import Measures

if TYPE_CHECKING:
    from sheetgen.base.dimension import Dimension
    from sheetgen.base.trouble import Troubles
    from sheetgen.model import stock as forms

SLOWEST = 1 / 6  # °C/min, which is 10 °C/h: no kiln program is slower
PER_CM3 = 1000
HEAVIEST = 0.0226  # g/mm³: osmium, the densest metal (periodictable 2.1.0)


class ClayMaker:
    """Makes clays, noting troubles; None for one that is wrong."""

    def __init__(self, currency: str, troubles: Troubles) -> None:
        self.troubles, self.currency = troubles, currency
        self.measures = Measures(currency, troubles)

    def number(self, word: Word | None, wanted: Dimension, **bounds: Any) -> float | None:  # noqa: ANN401
        """A measure's usual value; None for none, or with a trouble."""
        if word is None:
            return None
        found = self.measures.interval(word, wanted, **bounds)
        return found.usual if found else None

    def yes_no(self, word: Word | None, name: str, *, otherwise: bool) -> bool:
        """Yes or no."""
        if word is None:
            return otherwise
        if word not in {"yes", "no"}:
            self.troubles.add(f"'{name}' is yes or no, not '{word}'", word.place, "write yes or no")
        return word == "yes"

    def clay(self, key: Word, written: forms.WrittenClay, common: dict[str, Any]) -> Clay | None:
        """A clay of a stock file; None for one that is wrong."""
        if written.test_strips:
            s: Interval | None = shrunk(written.test_strips, self.measures)
        elif written.shrinkage is None:
            self.troubles.add(f"'{key}' has neither shrinkage nor test strips", key.place, "shrinkage: 8-10 %")
            return None
        else:
            s = self._shrinkage(written.shrinkage, "shrinkage")
        thick = (
            self._shrinkage(written.thickness_shrinkage, "thickness shrinkage") if written.thickness_shrinkage else s
        )
        density = self.number(written.wet_density, DENSITY, above=0, most=0.02, name="wet density")
        share = self.number(written.metal_share, COUNT, above=0, most=1, name="metal share")
        solid = self.number(written.solid_density, DENSITY, above=0, most=HEAVIEST, name="solid density")
        drying = self.measures.interval(written.drying, TIME, above=0, name="drying") if written.drying else None
        at = self.number(written.drying_thickness, LENGTH, above=0, name="drying thickness")
        torch = self.yes_no(written.torch, "torch", otherwise=False)
        firing = [self._phase(p) for p in written.firing]
        self._cooled(written, firing)
        self._below_melting(written)
        if s is None or thick is None or density is None or share is None:
            return None
        density, solid = density * PER_CM3, solid * PER_CM3 if solid else None
        if solid and not self._possible(key, written, s, thick, density, share, solid):
            return None
        return Clay(
            **common,
            shrinkage=s,
            thickness_shrinkage=thick,
            density=density,
            metal_share=share,
            solid_density=solid,
            drying=drying,
            drying_thickness=at,
            torch=torch,
            firing=tuple(p for p in firing if p),
            tested=bool(written.test_strips),
        )

    def _below_melting(self, written: forms.WrittenClay) -> None:
        """No phase so hot that the piece is a puddle."""
        melts = self.number(written.melting, TEMPERATURE, above=20, most=1300, name="melting")
        for phase in written.firing if melts else ():
            to = self.number(phase.to, TEMPERATURE)
            if melts and to and to >= melts:
                message = f"the clay is fired at {phase.to}, and its metal melts at {written.melting}"
                self.troubles.add(message, phase.to.place, "look at the maker's firing again")

    def _cooled(self, written: forms.WrittenClay, firing: list[Phase | None]) -> None:
        """What is fired on an open shelf is cold before anybody packs it in carbon."""
        for word, (one, other) in zip(written.firing, pairwise(firing), strict=False):
            if one and other and "carbon" not in one.bed and "carbon" in other.bed and one.cool_below is None:
                told = f"the phase at {word.to} is followed by one in carbon, and nothing says how far it cools before"
                self.troubles.add(told, word.to.place, "add cool below: 50 °C to it")

    def _possible(  # noqa: PLR0913, PLR0917 - what the balance of mass weighs against each other
        self,
        key: Word,
        written: forms.WrittenClay,
        s: Interval,
        thick: Interval,
        density: float,
        share: float,
        solid: float,
    ) -> bool:
        """Whether the clay's data leave less than solid metal, however much it shrinks: nothing fires denser."""
        for plane, deep in ((s.low, thick.low), (s.high, thick.high)):  # it is densest where it shrinks most
            try:
                relative_density.pure(density, share, plane, deep, solid)
            except CannotBe as fault:
                told = f"the data of '{key}' cannot be: at {plane * 100:.3g} % shrinkage {fault.message}"
                helped = "check shrinkage, wet density and metal share against each other"
                self.troubles.add(told, written.wet_density.place, helped)
                return False
        return True

    def _shrinkage(self, written: Word | forms.WrittenSpread, name: str) -> Interval | None:
        if isinstance(written, Word):
            return self.measures.interval(written, COUNT, least=0, most=0.6, name=name)
        ends = [
            self.number(word, COUNT, least=0, most=0.6, name=name)
            for word in (written.usual, written.low, written.high)
        ]
        usual, low, high = ends
        if usual is None or low is None or high is None:
            return None
        if not low <= usual <= high:
            self.troubles.add(
                f"the {name} is upside down", written.usual.place, "low, usual, high, from small to large"
            )
            return None
        return Interval(usual, low, high)

    def _phase(self, written: forms.WrittenPhase) -> Phase | None:
        to = self.number(written.to, TEMPERATURE, above=20, most=1300, name="a firing temperature")
        hold = self.measures.interval(written.hold, TIME, least=0, most=1440, name="a hold")
        rate = (
            self.measures.interval(written.rate, RATE, least=SLOWEST, name="a heating rate") if written.rate else None
        )
        cool = self.number(written.cool_below, TEMPERATURE, above=0, most=1300, name="cool below")
        if to is None or hold is None:
            return None
        if cool is not None and to is not None and cool >= to:
            where = written.cool_below.place if written.cool_below else None
            self.troubles.add(
                "a kiln cannot cool below a temperature that is above its own", where, f"less than {to:g} °C"
            )
            return None
        return Phase(to=to, hold=hold, rate=rate, bed=str(written.bed or "open shelf"), cool_below=cool)
