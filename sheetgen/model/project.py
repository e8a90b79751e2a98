"""A project as its file writes it: every word still a word, every word with its place."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Annotated

from pydantic import Field

from sheetgen.model.written import LineOrMore, OneOrMore, Text, Texts, Written, default

if TYPE_CHECKING:
    from collections.abc import Mapping
    from pathlib import Path

    from sheetgen.base.material import Item
    from sheetgen.base.place import Place
    from sheetgen.model.labels import LabelGrid
    from sheetgen.model.studio import Studio
    from sheetgen.parts.kind import Part

LEVELS = ("first piece", "some practice", "experienced")
PartWords = dict[Text, Text | list[Text]]


class Material(Written):
    """Something bought in that no part works out: an ear wire, a pin back. Off a roll it is so `wide` across."""

    item: Text
    amount: Text = Field(default_factory=lambda: default("1"))
    wide: Text | None = None
    for_: Text | None = None


class Showing(Written):
    """A number printed large beside a step, with a label of its own."""

    what: Text
    label: Text


class OwnFigure(Written):
    """A figure of the project's own, with a label; of a length that is cut, how it is rounded."""

    label: Text
    value: Text
    round: Text | None = None


class Check(Written):
    """A comparison that must hold, and what to say when it does not."""

    need: Text
    say: Text


class Fault(Written):
    """What can go wrong: what is seen, why, and how it is mended."""

    seen: Text
    why: Text
    mend: Text


class StepPicture(Written):
    """A picture of a step: its file, the words under it, what it shows for who cannot see it, and who made it."""

    file: Text
    caption: Text
    shows: Text
    credit: Text | None = None


class Pictured(Written):
    """A picture of the piece, and who made it."""

    file: Text
    credit: Text


class Step(Written):
    """One action at the bench, or a wait."""

    title: Text
    short: Text | None = None
    text: Text | None = None
    expect: Text | None = None
    parts: Texts = Field(default_factory=list)
    uses: Texts = Field(default_factory=list)
    show: Annotated[list[Text | Showing], OneOrMore] = Field(default_factory=list)
    diagram: Texts = Field(default_factory=list)
    caution: Texts = Field(default_factory=list)
    minutes: Text | None = None
    minutes_each: Text | None = None
    wait: Text | None = None
    meanwhile: Text | None = None
    if_it_goes_wrong: Annotated[list[Text | Fault], OneOrMore] = Field(default_factory=list)
    picture: StepPicture | None = None
    on_the_card: Annotated[list[Text | Showing], OneOrMore] = Field(default_factory=list)
    when: Text | None = None
    faces: Text = Field(default_factory=lambda: default("both"))
    thick: Text | None = None
    firing: Text | None = None
    does: Texts = Field(default_factory=list)
    opened_at: Text | None = None


class Standing(Written):
    """What stands in the view of the finished piece: a part or finding, or a row; where, and how it is turned.

    Of a part or finding `at` is the middle of its top; of a row that is closed its middle, of one led back its start.
    """

    part: Text | None = None
    finding: Text | None = None
    closed: Texts = Field(default_factory=list)
    led_back: Texts = Field(default_factory=list)
    at: Text | None = None
    hangs_from: Text | None = None
    turned: Text = Field(default_factory=lambda: default("front"))


class Said(Written):
    """A line that is told only of the versions for which a condition holds."""

    say: Text
    when: Text


Sayings = Annotated[list[Text | Said], LineOrMore]


class ForTeacher(Written):
    """What whoever teaches a design wants to know, and nobody else."""

    before: Sayings = Field(default_factory=list)
    show: Sayings = Field(default_factory=list)
    scrap: Text | None = None
    leftovers: Text | None = None
    bring: Sayings = Field(default_factory=list)
    next: Text | None = None


class Class(Written):
    """How a class is held: people, the evenings from when to when, and what is made up besides the pupils' sets."""

    people: Text | None = None
    evenings: Texts = Field(default_factory=list)
    days_between: Text | None = None
    set_up: Text | None = None
    clear_up: Text | None = None
    teachers_piece: Text | None = Field(None, alias="teacher's piece")
    a_spare_set_for: Text | None = None


class WrittenKit(Written):
    """What goes into a kit of a design: bags with their items, what is left out, and which tools lie in the box."""

    bags: dict[Text, Texts] = Field(default_factory=dict)
    leave_out: Texts = Field(default_factory=list)
    in_the_box: Texts = Field(default_factory=list)


class Project(Written):
    """project.yaml."""

    format_: Text | None = None
    title: Text
    revision: Text
    date: Text
    summary: Text
    makes: Text
    level: Text
    was: Texts = Field(default_factory=list)
    status: Text = Field(default_factory=lambda: default("public"))
    instead: Text | None = None
    worn_by: Text = Field(default_factory=lambda: default("adult"))
    worn_at: Text | None = None
    tags: Texts = Field(default_factory=list)
    pictures: Annotated[list[Text | Pictured], OneOrMore] = Field(default_factory=list)
    main_version: Text | None = None
    choices: dict[Text, Text | dict[Text, Text]] = Field(default_factory=dict)
    programs: dict[Text, Text] = Field(default_factory=dict)
    parts: dict[Text, PartWords] = Field(default_factory=dict)
    waive: dict[Text, Text] = Field(default_factory=dict)
    materials: list[Material] = Field(default_factory=list)
    allowance: dict[Text, Text] = Field(default_factory=dict)
    figures: dict[Text, Text | OwnFigure] = Field(default_factory=dict)
    checks: list[Check] = Field(default_factory=list)
    view: list[Standing] = Field(default_factory=list)
    view_shows: Text | None = None
    finished_sizes: Annotated[list[Text | Showing], OneOrMore] = Field(default_factory=list)
    beginners_take: Text | None = None
    sheets: Texts = Field(default_factory=list)
    class_: Class | None = None
    for_the_teacher: ForTeacher | None = None
    versions: list[dict[Text, Text]] = Field(default_factory=list)
    kit: WrittenKit | None = None
    colourways: dict[Text, Text | dict[Text, Text]] = Field(default_factory=dict)
    steps: list[Step]


@dataclass(frozen=True, slots=True)
class Caution:
    """A safety message in the order hazard, consequence, how to avoid it; `word` is its signal word.

    `short` is the reminder of a few words beside a title. `at_action`: it is told in full at the first step that brings
    it, and not among the hazards of the bench. `wear` is what it tells to wear or to have at hand, `signs` are numbers
    of ISO 7010, the hazard's first. `joined` is how it is called among others of one kind of harm, and what holds for
    it alone, where that hangs on what a version uses.
    """

    id: str
    word: str
    hazard: str
    consequence: str
    avoid: str
    source: str = ""
    wear: tuple[str, ...] = ()
    signs: tuple[str, ...] = ()
    short: str = ""
    at_action: bool = False
    joined: tuple[str, str] | None = None

    @property
    def name(self) -> str:
        """The hazard as a short line names it."""
        return self.hazard.rstrip(".")


@dataclass(frozen=True, slots=True)
class KnownFault:
    """A fault that a studio knows by name: what is seen, why, and how it is mended."""

    name: str
    seen: str
    why: str
    mend: str


@dataclass(slots=True)
class Stock:
    """Everything the studio uses, by its id, and the cautions it may name.

    `withheld` are items whose own data is in trouble, each with its fault, and `lacking` names one of the tools of
    each kind that are; `unread` are the files that could not be read at all.
    """

    items: dict[str, Item] = field(default_factory=dict)
    withheld: dict[str, Place] = field(default_factory=dict)
    lacking: dict[str, str] = field(default_factory=dict)
    unread: list[str] = field(default_factory=list)
    cautions: dict[str, Caution] = field(default_factory=dict)
    faults: dict[str, KnownFault] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Filed:
    """A project that could be read, with its folder's name and place; `instead` is the title of what it leads on to."""

    name: str
    folder: Path
    project: Project
    instead: str = ""


@dataclass(slots=True)
class Library:
    """All that was read: studio, stock, kinds, and the projects that could be read; `failed` names the others.

    `withheld` are kinds of the library's own that are in trouble themselves. `asked` are the items of stock that a
    design was found to hang on while it was worked.
    """

    studio: Studio
    stock: Stock
    projects: list[Filed] = field(default_factory=list)
    failed: list[str] = field(default_factory=list)
    kinds: Mapping[str, type[Part]] = field(default_factory=dict)
    withheld: dict[str, Place] = field(default_factory=dict)
    labels: LabelGrid | None = None
    asked: set[str] = field(default_factory=set)
