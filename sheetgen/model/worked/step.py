"""A step with its numbers, its firing, what can go wrong, its picture."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from sheetgen.base.frozen import Frozen
from sheetgen.facts.gestures import keyed

if TYPE_CHECKING:
    from collections.abc import Mapping

    from sheetgen.base.interval import Interval
    from sheetgen.base.material import Clay, Item, Phase
    from sheetgen.base.place import Place
    from sheetgen.model.project import Caution
    from sheetgen.model.worked.shown import Prose, Shown


@dataclass(frozen=True, slots=True)
class Walk:
    """A firing walked through once: its time, min, how that was worked, and its quickest and slowest curve.

    Points of a curve are minutes and °C.
    """

    minutes: Interval
    working: str
    quick: tuple[tuple[float, float], ...]
    slow: tuple[tuple[float, float], ...]


@dataclass(frozen=True, slots=True)
class Load:
    """How the pieces of a firing go into the kiln: on its shelves, or with carbon in a box, one box to a load.

    `places` are shelves, or fillings of the box, and `fullest` is the most pieces in one of them. `carbon` is what one
    filling takes, mL, with how it was worked, and `fill` the carbon that it is filled with.
    """

    pieces: int
    fullest: int
    places: int
    loads: int
    boxed: bool = False
    carbon: float = 0.0
    working: str = ""
    fill: Item | None = None


@dataclass(frozen=True, slots=True)
class Mishap:
    """What can go wrong at a step: what is seen, why, and how it is mended; `name` where the studio knows it by one."""

    seen: Prose
    why: Prose
    mend: Prose
    name: str = ""


@dataclass(frozen=True, slots=True)
class Illustration:
    """A picture of a step: its file in the project's folder, the words under it, what it shows, and who made it."""

    file: str
    caption: str
    shows: str
    credit: str = ""


@dataclass(frozen=True, slots=True)
class WorkedStep:
    """One step with its numbers; times in min.

    `short` is its title on the bench card, `card` the numbers there; `meanwhile` is what can be done while it waits.

    `diagrams` are the names of its drawings in their order: a part as it is formed, or a gesture and its part, which
    `gestures` tells apart.

    `does` is what is done, in the words of facts/bench.py and in its order. `clay` is the clay that is fired, by its
    own program; `opened_at` how hot the kiln is opened, °C, where the project says so. `loads` is how its pieces go
    into the kiln, on shelves and in carbon, where stock knows the kiln. `places` is where its fields are written, and
    by their ids the items that it uses.

    `cautions` are all its hazards, gravest first. `who` does it, where that is not whoever reads; `notes` is what stock
    says of the things that come to hand here first.
    """

    title: str
    text: Prose
    expect: Prose
    show: tuple[Shown, ...]
    parts: tuple[str, ...]
    uses: tuple[Item, ...]
    minutes: Interval | None = None
    wait: Interval | None = None
    wait_for: str = ""
    wait_working: str = ""
    torch: str = ""
    diagrams: tuple[str, ...] = ()
    gestures: tuple[tuple[str, str], ...] = ()
    does: tuple[str, ...] = ()
    clay: Clay | None = None
    walk: Walk | None = None
    loads: tuple[Load, ...] = ()
    opened_at: float | None = None
    places: Mapping[str, Place] = field(default_factory=Frozen)
    cautions: tuple[Caution, ...] = ()
    who: str = ""
    notes: tuple[str, ...] = ()
    place: Place | None = None
    short: str = ""
    card: tuple[Shown, ...] = ()
    meanwhile: Prose = ()
    mishaps: tuple[Mishap, ...] = ()
    picture: Illustration | None = None

    @property
    def pictured(self) -> tuple[str, ...]:
        """The parts that it draws, as they are formed or in a gesture."""
        of = {keyed(gesture, part): part for gesture, part in self.gestures}
        return tuple(dict.fromkeys(of.get(name, name) for name in self.diagrams))

    @property
    def waits(self) -> bool:
        """Whether it is only waited for: a row with a clock, and no number."""
        return self.wait is not None and not self.firing and self.minutes is None

    @property
    def by_torch(self) -> bool:
        """Whether it is fired with a flame: a torch is used, and no kiln."""
        return self.clay is not None and self.acts("torch") and not self.acts("kiln")

    @property
    def firing(self) -> tuple[Phase, ...]:
        """The phases of its firing in a kiln."""
        return self.clay.firing if self.clay is not None and not self.by_torch else ()

    @property
    def whole_wait(self) -> Interval | None:
        """Its wait, min; a firing in several loads is waited for as often, one load after the other."""
        return self.wait * max((load.loads for load in self.loads), default=1) if self.wait else None

    def acts(self, *words: str) -> bool:
        """Whether something that it uses acts as any of these."""
        return any(item.acts(*words) for item in self.uses)
