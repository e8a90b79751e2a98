"""A project with every number worked: plain values that do not change and ask nothing of whoever made them."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from sheetgen.base.frozen import Frozen
from sheetgen.base.spelling import bare, suggest
from sheetgen.base.trouble import CannotBe
from sheetgen.facts.gestures import keyed
from sheetgen.model.plan import Plan

if TYPE_CHECKING:
    from collections.abc import Mapping

    from sheetgen.base.figure import Figure
    from sheetgen.base.interval import Interval
    from sheetgen.base.material import Clay, Finding, Item, Phase
    from sheetgen.base.place import Place
    from sheetgen.base.printed import Printed
    from sheetgen.base.rounding import Rounder
    from sheetgen.model.kit import Colourway, Kit
    from sheetgen.model.labels import LabelGrid
    from sheetgen.model.project import Caution
    from sheetgen.parts.piece import Piece


SHEETS = ("handout", "bench card", "teacher", "templates")
ON_CARD = 3  # numbers in a row of the bench card: as many as one takes in from an arm's length
"""The sheets of a version: for the pupil, for the hands in the clay, for the teacher, and to cut up."""


@dataclass(frozen=True, slots=True)
class Shown:
    """A number in a text or beside a step: what it is called, what it is, its part; `labelled` by the file itself."""

    label: str
    printed: Printed
    part: str = ""
    labelled: bool = False


Prose = tuple["str | Shown", ...]
"""Text as written, with a printed number wherever the file names one."""


@dataclass(frozen=True, slots=True)
class MaterialLine:
    """One line of what is taken from stock: net amount, in the item's unit, and allowance as a share of it.

    `least` must be in the hand at once, however little is used up: a piece at the thickness it is first rolled to.
    `blanks` of sheet: how many, and length and width in mm of each; `off_roll` the same of what is cut off a roll,
    along it and across. `filling`: of a firing box, the same for every load and for however many have their pieces in
    it. `spent` is what is used up of the net amount; None: all of it.
    """

    item: Item
    net: Interval | None
    allowance: float = 0.0
    working: str = ""
    use: str = ""
    least: float = 0.0
    blanks: tuple[tuple[int, float, float], ...] = ()
    off_roll: tuple[tuple[int, float, float], ...] = ()
    filling: bool = False
    spent: Interval | None = None

    @property
    def needed(self) -> float:
        """Enough for the highest need, with its allowance; 0 for what is taken as needed."""
        return max(self.net.high, self.least) * (1 + self.allowance) if self.net is not None else 0.0


@dataclass(frozen=True, slots=True)
class ToolLine:
    """One tool, with the sizes in mm that the parts of the step need of it."""

    item: Item
    sizes: tuple[float, ...] = ()


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
    """A picture of a step: its file in the project's folder, the words under it, and what it shows."""

    file: str
    caption: str
    shows: str


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


@dataclass(frozen=True, slots=True)
class Teaching:
    """What whoever teaches a design wants to know.

    What is made ready and shown, a scrap that tests the firing, how leftovers keep, what pupils bring, what comes next.
    """

    before: tuple[Prose, ...] = ()
    show: tuple[Prose, ...] = ()
    scrap: Prose = ()
    leftovers: Prose = ()
    bring: tuple[Prose, ...] = ()
    next: Prose = ()


TURNED = ("front", "side", "back", "lying", "above", "sunk")
"""How a part may be turned in the view of the finished piece; lying is its front, a quarter turn round.

From above it is seen as a tube is, a little of its upper face; of a ring that is sunk in what is below only half shows.
"""


@dataclass(frozen=True, slots=True)
class Laid:
    """What comes next in a row: a part or finding, one `with` another between its pieces or `on` another.

    What is `made` of a part: plait, tassel.
    """

    of: tuple[str | Finding, ...]
    how: str = ""
    made: str = ""


@dataclass(frozen=True, slots=True)
class Stood:
    """A part, finding or row in that view: mm to the right and down, from where it hangs if it hangs from another.

    `name` is what another hangs from. `row` is what comes one after the other, `closed` to an oval or led back beside
    itself.
    """

    part: str | Finding = ""
    right: float = 0.0
    down: float = 0.0
    hangs_from: str = ""
    turned: str = TURNED[0]
    row: tuple[Laid, ...] = ()
    closed: bool = False
    name: str = ""


@dataclass(frozen=True, slots=True)
class WorkedVersion:
    """One version: its choices, parts, figures, lists and steps.

    `finished` are the finished sizes that the first side names; `plan` is what its times come to; `kit` and
    `colourways` are what the design says of kits, as far as it holds for this version;
    `view` is what stands where in the view of the finished piece, beside the parts that say so themselves, and
    `view_shows` what is seen there, for who cannot see it. `changed`: its revision was published with other numbers.
    """

    name: str
    title: str
    choices: Mapping[str, str] = field(default_factory=Frozen)
    parts: Mapping[str, Piece] = field(default_factory=Frozen)
    figures: Mapping[str, Figure] = field(default_factory=Frozen)
    materials: tuple[MaterialLine, ...] = ()
    tools: tuple[ToolLine, ...] = ()
    steps: tuple[WorkedStep, ...] = ()
    summary: Prose = ()
    makes: Prose = ()
    finished: tuple[Shown, ...] = ()
    teaching: Teaching = Teaching()
    plan: Plan = field(default_factory=Plan)
    view: tuple[Stood, ...] = ()
    view_shows: Prose = ()
    kit: Kit | None = None
    colourways: tuple[Colourway, ...] = ()
    changed: bool = False

    @property
    def numbers(self) -> list[int]:
        """The number of each step; 0 for what is only waited for."""
        counted = 0
        numbers = []
        for step in self.steps:
            counted += not step.waits
            numbers.append(0 if step.waits else counted)
        return numbers

    def drilled_in(self, part: Piece) -> list[Piece]:
        """The holes and seats that are drilled in a part."""
        return [one for one in self.parts.values() if part.name in one.roles.get("drilled in", ())]

    @property
    def bench_times(self) -> list[Interval]:
        """Minutes of work at the bench, step by step."""
        return [s.minutes for s in self.steps if s.minutes]

    @property
    def untimed(self) -> bool:
        """Whether some step says neither how long it takes nor what it waits for."""
        return any(s.minutes is None and s.wait is None for s in self.steps)

    @property
    def whole_times(self) -> list[Interval]:
        """Those and the waits, one after the other."""
        return [*self.bench_times, *(wait for s in self.steps if (wait := s.whole_wait))]


@dataclass(frozen=True, slots=True)
class Slab:
    """The slab of clay that the studio rolls, and the gap it keeps between pieces and at the edge, mm."""

    width: float
    length: float
    gap: float


@dataclass(frozen=True, slots=True)
class Publisher:
    """Who publishes, as the sheets say it, and the labels that it prints on."""

    name: str
    about: str = ""
    contact: str = ""
    note: str = ""
    emergency: str = ""
    language: str = "en"
    currency: str = "EUR"
    paper: tuple[str, ...] = ("A4", "Letter")
    labels: LabelGrid | None = None


@dataclass(frozen=True, slots=True)
class Waiver:
    """A rule of common practice that the project waives, and why; `used` where a number of some part broke it."""

    rule: str
    reason: str
    place: Place
    used: bool


@dataclass(frozen=True, slots=True)
class Worked:
    """A project with all its versions; the first is `main`.

    `folder` is where its pictures lie; `slats` and `cards` say what is owned to roll on.
    """

    name: str
    folder: str
    title: str
    revision: str
    date: str
    level: str
    place: Place
    worn_by: str
    worn_at: str
    worn_places: Mapping[str, Place]
    studio: Publisher
    rounder: Rounder
    tags: tuple[str, ...] = ()
    pictures: tuple[str, ...] = ()
    versions: Mapping[str, WorkedVersion] = field(default_factory=Frozen)
    waive: tuple[Waiver, ...] = ()
    slab: Slab | None = None
    slats: tuple[float, ...] = ()
    cards: bool = False
    sheets: tuple[str, ...] = SHEETS

    def version(self, called: str) -> WorkedVersion:
        """The version that is printed under a name, however that is spaced. CannotBe for one that there is not."""
        found = next((one for one in self.versions.values() if bare(called) == bare(one.title)), None)
        if found is None:
            titles = [one.title for one in self.versions.values()]
            raise CannotBe(f"there is no version '{called}' of {self.name}", suggest(called, titles))
        return found

    def revised(self, version: WorkedVersion) -> str:
        """The revision as a version's sheets print it."""
        return f"revision {self.revision}{', changed' if version.changed else ''}"

    @property
    def main(self) -> WorkedVersion:
        """The project as its file gives it, no choice changed."""
        return next(iter(self.versions.values()))
