"""A clay's firing programs: each with its phases, and the shrinkage that it brings."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING, Any

from sheetgen.base.dimension import COUNT, LENGTH, RATE, TEMPERATURE, TIME
from sheetgen.base.interval import Interval
from sheetgen.base.material import BEDS, STRENGTHS, Phase, Program
from sheetgen.base.place import Word
from sheetgen.base.spelling import suggest
from sheetgen.formulas.shrinkage import two_stage
from sheetgen.read.measured import shrunk
from sheetgen.read.measures import Measures

if TYPE_CHECKING:
    from sheetgen.base.dimension import Dimension
    from sheetgen.base.trouble import Troubles
    from sheetgen.model import stock as forms

SLOWEST = 1 / 6  # °C/min, which is 10 °C/h: no kiln program is slower
MOST_PHASES = 6
"""Of a firing: more have no room in the step of a sheet, and take long to be laid out."""
THE_PAIR = "drying shrinkage: and firing shrinkage: the one and the other, or shrinkage: for both together"


class ProgramMaker:
    """Reads programs, noting troubles; None for one that is wrong."""

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

    def program(self, key: Word, name: Word, written: forms.WrittenProgram, clay: forms.WrittenClay) -> Program | None:
        """One program of a clay; the only one of a clay has no name."""
        before = len(self.troubles.errors)
        if name and not written.firing:
            self.troubles.add(f"the program '{name}' fires nothing", name.place, "add firing: to it")
        s, dries, fires = self._shrinks(name or key, written, clay)
        thick = self._shrinkage(written.thickness_shrinkage, "thickness shrinkage")
        if len(written.firing) > MOST_PHASES:
            told = f"a firing of {len(written.firing)} phases"
            self.troubles.add(told, written.firing[MOST_PHASES].to.place, f"at most {MOST_PHASES}")
        firing = [self._phase(p) for p in written.firing]
        self._cooled(written, firing)
        self._below_melting(written, clay)
        if written.strength is not None and written.strength not in STRENGTHS:
            told = f"a program's strength cannot be '{written.strength}'"
            self.troubles.add(told, written.strength.place, suggest(written.strength, STRENGTHS))
        if s is None or len(self.troubles.errors) > before:
            return None
        return Program(
            name=str(name),
            shrinkage=s,
            thickness_shrinkage=thick or s,
            drying_shrinkage=dries,
            firing_shrinkage=fires,
            firing=tuple(p for p in firing if p),
            strength=str(written.strength or ""),
            good_for=str(written.good_for or ""),
            tested=bool(written.test_strips),
        )

    def _shrinks(
        self, name: Word, written: forms.WrittenProgram, clay: forms.WrittenClay
    ) -> tuple[Interval | None, Interval | None, Interval | None]:
        """Shrinkage in all, in drying and in the fire: by test strips, in one number, or from the two.

        How a clay shrinks in drying is the same by all its programs, which may leave it to the clay.
        """
        dried, fired = written.drying_shrinkage or clay.drying_shrinkage, written.firing_shrinkage
        dries, fires = self._shrinkage(dried, "drying shrinkage"), self._shrinkage(fired, "firing shrinkage")
        if written.test_strips:
            return shrunk(written.test_strips, self.measures), dries, None
        if written.shrinkage is not None and (dried or fired):
            self.troubles.add(f"'{name}' says twice how it shrinks", name.place, THE_PAIR)
        elif written.shrinkage is not None:
            return self._shrinkage(written.shrinkage, "shrinkage"), None, None
        elif dried and fired:
            return (two_stage(dries, fires) if dries and fires else None), dries, fires
        elif dried or fired:
            one, other = ("drying", "firing") if dried else ("firing", "drying")
            self.troubles.add(f"'{name}' has a {one} shrinkage and no {other} shrinkage", name.place, THE_PAIR)
        else:
            self.troubles.add(f"'{name}' has neither shrinkage nor test strips", name.place, "shrinkage: 8-10 %")
        return None, None, None

    def _below_melting(self, written: forms.WrittenProgram, clay: forms.WrittenClay) -> None:
        """No phase so hot that the piece is a puddle."""
        melts = self.number(clay.melting, TEMPERATURE, above=20, most=1300, name="melting") if written.firing else None
        for phase in written.firing if melts else ():
            to = self.number(phase.to, TEMPERATURE)
            if melts and to and to >= melts:
                message = f"the clay is fired at {phase.to}, and its metal melts at {clay.melting}"
                self.troubles.add(message, phase.to.place, "look at the maker's firing again")

    def _cooled(self, written: forms.WrittenProgram, firing: list[Phase | None]) -> None:
        """What is fired on an open shelf is cold before anybody packs it in carbon."""
        for word, (one, other) in zip(written.firing, pairwise(firing), strict=False):
            if one and other and not one.in_carbon and other.in_carbon and one.cool_below is None:
                told = f"the phase at {word.to} is followed by one in carbon, and nothing says how far it cools before"
                self.troubles.add(told, word.to.place, "add cool below: 50 °C to it")

    def _shrinkage(self, written: Word | forms.WrittenSpread | None, name: str) -> Interval | None:
        if written is None:
            return None
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
        deep = self.number(written.bed_depth, LENGTH, above=0, most=100, name="bed depth")
        cool = self.number(written.cool_below, TEMPERATURE, above=0, most=1300, name="cool below")
        if written.bed is not None and written.bed not in BEDS:
            helped = f"{suggest(written.bed, BEDS)}; charcoal of whatever is carbon"
            self.troubles.add(f"a bed cannot be '{written.bed}'", written.bed.place, helped)
        if to is None or hold is None:
            return None
        if cool is not None and to is not None and cool >= to:
            where = written.cool_below.place if written.cool_below else None
            self.troubles.add(
                "a kiln cannot cool below a temperature that is above its own", where, f"less than {to:g} °C"
            )
            return None
        bed = str(written.bed or "open shelf")
        return Phase(to=to, hold=hold, rate=rate, bed=bed, bed_depth=deep, cool_below=cool)
