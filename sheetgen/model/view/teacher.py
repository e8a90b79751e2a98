"""The teacher's sheet and what it is made of."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Annotated

if TYPE_CHECKING:
    from sheetgen.model.view.first_side import Aid, Need
    from sheetgen.model.view.head import Head, Html


@dataclass(frozen=True, slots=True)
class AllSizes:
    """A row of all sizes."""

    part: Annotated[str, "its part, where it is the first of that part"]
    label: str
    finished: str
    make: Html
    fires: str
    tool: str


@dataclass(frozen=True, slots=True)
class VersionTable:
    """What differs between some of the versions, as made."""

    names: tuple[str, ...]
    rows: tuple[tuple[str, tuple[str, ...]], ...]


@dataclass(frozen=True, slots=True)
class Working:
    """How one number was worked."""

    label: str
    working: str
    comes_to: str


@dataclass(frozen=True, slots=True)
class Workings:
    """The workings of one part."""

    part: str
    rows: tuple[Working, ...]


@dataclass(frozen=True, slots=True)
class Risk:
    """A hazard for the teacher."""

    word: str
    hazard: str
    steps: str
    can_do: str
    see_to: str


@dataclass(frozen=True, slots=True)
class Mend:
    """A fault, why, and its mend."""

    seen: Html
    why: Html
    mend: Html
    steps: str


@dataclass(frozen=True, slots=True)
class Homework:
    """What is done between the evenings."""

    when: Annotated[str, "after which evening, and how many days"]
    who: str
    what: str
    time: str


@dataclass(frozen=True, slots=True)
class TeacherSheet:
    """The teacher's sheet: `teacher.html.j2`."""

    head: Head
    people: Annotated[int, "of the class; 0 where none is planned"]
    plan_says: Annotated[tuple[str, ...], "what the plan comes to, and where it does not fit"]
    timetable: Annotated[tuple[Html, ...], "each evening drawn"]
    between: tuple[Homework, ...]
    stations: Annotated[tuple[str, ...], "shared tools, each with the rounds that it takes"]
    before: tuple[Html, ...]
    show: tuple[Html, ...]
    others: Annotated[tuple[tuple[str, Html], ...], "scrap, leftovers, what to bring, what comes next: label and words"]
    quantities: Annotated[tuple[Need, ...], "for the class"]
    quantities_for: Annotated[str, "for whom these are: 12 pupils, without a teacher’s piece or a spare set"]
    aid: Annotated[tuple[tuple[Aid, ...], ...], "first aid, where a hazard is grave: the hurts of each line"]
    emergency: Annotated[Html, "the emergency number, or nothing: then leave a line to write it on"]
    risks: tuple[Risk, ...]
    waived: Annotated[tuple[tuple[str, str], ...], "rules that the design waives, each with its reason"]
    mends: tuple[Mend, ...]
    sizes: tuple[AllSizes, ...]
    unit: Annotated[str, "of all sizes"]
    shrinkage: Annotated[tuple[str, ...], "how each clay shrinks"]
    versions: tuple[VersionTable, ...]
    workings: tuple[Workings, ...]
    signs: Annotated[str, "what the signs of the workings mean, and how numbers are rounded"]
    results: Annotated[tuple[str, ...], "headings of the boxes for own results"]


@dataclass(frozen=True, slots=True)
class Seat:
    """A pupil at a table."""

    name: str
    makes: Annotated[str, "the version, what is chosen otherwise first; the design too where a class has several"]
    clay: Annotated[str, "what is weighed out of the clay on the table, or nothing"]
    colours: Annotated[str, "the colourway with how many of each colour: grey sea: clear 7, smoke 5; or nothing"]


@dataclass(frozen=True, slots=True)
class Lying:
    """What lies at some places of a table, at each of them the same."""

    where: Annotated[str, "at which: At each of 4 places; US 8, 2 places"]
    things: tuple[Need, ...]
    tools: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class LaidTable:
    """A table as it is laid out."""

    name: Annotated[str, "as the class list calls it"]
    seats: tuple[Seat, ...]
    places: tuple[Lying, ...]
    shared: Annotated[tuple[Need, ...], "what stands on it for all: pots, and what is taken as needed"]
    tools: Annotated[tuple[str, ...], "shared ones: Piercing saw: 2 of 6"]


@dataclass(frozen=True, slots=True)
class TablesSheet:
    """The tables of a class, a page each, for the studio alone: `tables.html.j2`."""

    head: Head
    counted: Annotated[str, "12 pupils + 1 teacher’s piece + 1 spare set"]
    tables: tuple[LaidTable, ...]
    teacher: Annotated[LaidTable, "what the teacher has: his pieces and the spare sets; nobody sits there"]
    alone: Annotated[tuple[str, ...], "tools of which there are fewer than tables, each with how many share it"]
    kiln: Annotated[tuple[Need, ...], "what is used by kiln and torch"]
    kiln_tools: Annotated[tuple[str, ...], "what stands there, with how many there are where stock says it"]
