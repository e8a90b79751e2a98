"""What a theme gets of each sheet: words, numbers and lists, frozen, and nothing that does anything.

`Html` is text that is HTML already, made and washed by us; every other text is plain words. Each field says what it is:
`sheetgen theme` prints this as the page that a theme's author reads.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, NewType

Html = NewType("Html", str)


@dataclass(frozen=True, slots=True)
class Studio:
    """Who publishes."""

    name: Annotated[str, "its name"]
    about: Annotated[str, "one line about it, or nothing"]
    contact: Annotated[str, "how it is reached, or nothing"]
    note: Annotated[str, "what stands on every sheet, or nothing"]
    emergency: Annotated[str, "the emergency number, or nothing: then leave a line to write it on"]


@dataclass(frozen=True, slots=True)
class Head:
    """What every sheet begins with, and its foot."""

    sheet: Annotated[str, "what the sheet is called: Handout, Bench card …"]
    title: Annotated[str, "the design"]
    version: Annotated[str, "the version; nothing where the design has only one"]
    summary: Annotated[Html, "one or two sentences"]
    summary_plain: Annotated[str, "the same without marks"]
    foot: Annotated[str, "the line at the foot of each page, the fingerprint in it"]
    code: Annotated[str, "the fingerprint of the printed numbers, six letters and digits"]
    date: Annotated[str, "of the revision, as year-month-day"]
    language: Annotated[str, "by BCP 47, such as en"]
    makes: Annotated[str, "how many pieces"]
    level: Annotated[str, "for whom"]
    bench_time: Annotated[str, "time at the bench, or nothing"]
    whole_time: Annotated[str, "from the first cut to the finished piece, or nothing"]
    untimed: Annotated[str, "what to add to the times where some step says none"]
    studio: Studio


@dataclass(frozen=True, slots=True)
class Picture:
    """A picture of the piece or of a step: a file's data, or a drawing of ours."""

    source: Annotated[str, "a data: address, or nothing"]
    svg: Annotated[Html, "a drawing, or nothing"]
    alternative: Annotated[str, "what it shows, for who cannot see it"]
    caption: Annotated[str, "the words under it, or nothing"]


@dataclass(frozen=True, slots=True)
class Size:
    """A finished size."""

    label: str
    told: Annotated[Html, "number and unit"]


@dataclass(frozen=True, slots=True)
class Session:
    """What is done in one go."""

    number: int
    steps: Annotated[str, "its steps: steps 1–6"]
    minutes: Annotated[str, "time at the bench, or nothing"]
    then: Annotated[str, "what it ends with: dry 12 – 24 h"]


@dataclass(frozen=True, slots=True)
class Need:
    """Something that is taken from stock."""

    name: str
    detail: Annotated[str, "more of its name, and how much of it is used where that is less, or nothing"]
    amount: Annotated[Html, "what to have, or nothing where it is taken as needed"]


@dataclass(frozen=True, slots=True)
class Tools:
    """The tools of one place at the bench."""

    place: Annotated[
        str, "clay bench, wire, kiln, finishing, safety; without clay, bench and fire for the first and third"
    ]
    names: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Told:
    """A caution in full."""

    word: Annotated[Html, "its signal word"]
    text: Annotated[Html, "hazard, what it does, how to avoid it, what to wear"]
    sign: Annotated[Html, "its sign by ISO 7010, or nothing"]


@dataclass(frozen=True, slots=True)
class Wear:
    """What is worn, or had at hand."""

    sign: Annotated[Html, "its sign by ISO 7010, or nothing"]
    words: str


@dataclass(frozen=True, slots=True)
class Pointer:
    """Hazards that are told in full at the step of their first action."""

    names: str
    step: Annotated[int, "the step's number"]


@dataclass(frozen=True, slots=True)
class Aid:
    """First aid for one kind of hurt."""

    hurt: str
    do: str


@dataclass(frozen=True, slots=True)
class Safety:
    """What stands before the first step."""

    told: Annotated[tuple[Told, ...], "the hazards of the bench, in full"]
    wear: Annotated[tuple[Wear, ...], "what they ask to be worn or had"]
    pointers: Annotated[tuple[Pointer, ...], "those told in full at their first action"]
    aid: Annotated[tuple[tuple[Aid, ...], ...], "first aid, where a hazard is grave: the hurts of each line"]
    deference: Annotated[str, "whose directions come before the sheet"]


@dataclass(frozen=True, slots=True)
class Figure:
    """A number beside a step."""

    label: str
    value: Annotated[Html, "the number"]
    unit: str
    long: Annotated[bool, "whether it is too long for the largest figures"]


@dataclass(frozen=True, slots=True)
class MatrixRow:
    """One figure of several parts."""

    label: Annotated[str, "with its unit"]
    cells: Annotated[tuple[Html, ...], "a number for each column, or a dash"]


@dataclass(frozen=True, slots=True)
class Matrix:
    """Like figures of two or three parts side by side."""

    columns: tuple[str, ...]
    rows: tuple[MatrixRow, ...]


@dataclass(frozen=True, slots=True)
class Row:
    """One row of the bench: a session's head, a step, or a wait, as `kind` says."""

    kind: Annotated[str, "session, step or wait"]
    id: Annotated[str, "unlike any other row's, for links"]
    number: Annotated[int, "of a step or a session; 0 for a wait"]
    title: str
    short: Annotated[str, "its title on the bench card"]
    minutes: Annotated[str, "time that it takes, or is waited for, or nothing"]
    steps: Annotated[str, "of a session: its steps"] = ""
    text: Annotated[Html, "what is done"] = Html("")
    expect: Annotated[Html, "what is seen when it is right, or nothing"] = Html("")
    meanwhile: Annotated[Html, "of a wait: what can be done until it is over, or nothing"] = Html("")
    then: Annotated[str, "on the bench card, of the last row of a session: the next one and its time"] = ""
    told: Annotated[tuple[Told, ...], "cautions that stand here in full, gravest first"] = ()
    wear: Annotated[tuple[Wear, ...], "what those in full ask to be worn or had"] = ()
    reminders: Annotated[tuple[Html, ...], "cautions told before, each in a few words"] = ()
    who: Annotated[str, "who does it, where that is not whoever reads"] = ""
    notes: Annotated[tuple[str, ...], "what stock says of things that come to hand here"] = ()
    figures: tuple[Figure, ...] = ()
    matrix: Annotated[Matrix | None, "in place of figures"] = None
    card: Annotated[tuple[Figure, ...], "the figures of the bench card, three at most"] = ()
    drawings: Annotated[tuple[Html, ...], "drawings beside it, each with its text alternative"] = ()
    picture: Picture | None = None
    firing: Annotated[str, "of a firing: bed, torch or none, time, loads"] = ""
    curve: Annotated[Html, "of a firing: its program as a curve"] = Html("")
    mishap: Annotated[Html, "if it goes wrong: what is seen, and the mend"] = Html("")


@dataclass(frozen=True, slots=True)
class TemplatePage:
    """Templates at true size, with their bars."""

    svg: Html
    tile: Annotated[str, "which sheet of how many, of a template larger than a page"]


@dataclass(frozen=True, slots=True)
class Slab:
    """How the wet pieces lie on a rolled slab."""

    title: str
    roll: Annotated[str, "how large to roll it"]
    pieces: Annotated[str, "what the numbers in the sketch are"]
    drawings: tuple[Html, ...]


@dataclass(frozen=True, slots=True)
class Templates:
    """What is said of templates, and their pages."""

    pages: tuple[TemplatePage, ...]
    bars: Annotated[str, "how to tell that they are printed at true size"]
    lines: Annotated[str, "what the kinds of line mean"]


@dataclass(frozen=True, slots=True)
class Handout:
    """The pupil's sheet: `handout.html.j2`."""

    head: Head
    picture: Picture | None
    sessions: tuple[Session, ...]
    sizes: Annotated[tuple[Size, ...], "four to six of the finished piece"]
    needs: tuple[Need, ...]
    tools: tuple[Tools, ...]
    safety: Safety
    rows: tuple[Row, ...]
    templates: Templates | None
    slabs: tuple[Slab, ...]
    results: Annotated[tuple[str, ...], "headings of the line for own results"]


@dataclass(frozen=True, slots=True)
class BenchCard:
    """One side to prop up: `card.html.j2`."""

    head: Head
    rows: tuple[Row, ...]


@dataclass(frozen=True, slots=True)
class TemplateSheet:
    """Templates to cut up, printed on one side: `templates.html.j2`."""

    head: Head
    templates: Templates


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
    quantities_for: Annotated[str, "for whom these are: 12 people"]
    aid: Annotated[tuple[tuple[Aid, ...], ...], "first aid, where a hazard is grave: the hurts of each line"]
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
    makes: Annotated[str, "version, and what is chosen otherwise; the design too where a class has several"]
    colours: Annotated[str, "the colourway, or nothing"]


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


@dataclass(frozen=True, slots=True)
class SheetLink:
    """A published sheet."""

    path: str
    label: Annotated[str, "Handout A4, 4 pages"]


@dataclass(frozen=True, slots=True)
class VersionLink:
    """A version of the design."""

    name: str
    path: Annotated[str, "nothing for this one"]


@dataclass(frozen=True, slots=True)
class CutterLink:
    """A template's shape, and its file for a cutter."""

    part: str
    svg: Html
    path: Annotated[str, "nothing where there is none"]


@dataclass(frozen=True, slots=True)
class Screen:
    """The page of a design on a screen: `project.html.j2`."""

    handout: Handout
    sheets: tuple[SheetLink, ...]
    versions: tuple[VersionLink, ...]
    cutters: tuple[CutterLink, ...]
    older: Annotated[tuple[SheetLink, ...], "the pages of sheets that were printed before, with other numbers"]
    home: Annotated[str, "the way up to the library's page"]


@dataclass(frozen=True, slots=True)
class MovedNumber:
    """A number that an older sheet prints otherwise."""

    label: str
    was: Annotated[str, "number and unit there, or nothing"]
    now: Annotated[str, "number and unit today, or nothing"]


@dataclass(frozen=True, slots=True)
class CodePage:
    """Where the fingerprint on a sheet leads: `code.html.j2`."""

    studio: Studio
    language: str
    code: Annotated[str, "the fingerprint"]
    title: Annotated[str, "the design"]
    version: Annotated[str, "the version as it was printed there; nothing where the design had only one"]
    revisions: Annotated[tuple[str, ...], "what the sheet was: revision 2, 2026-03-14"]
    present: Annotated[bool, "whether the sheets bear it today"]
    path: Annotated[str, "the page of today's sheet; of a version that is no longer made, that of the design"]
    made: Annotated[bool, "whether the version is still made"]
    called: Annotated[str, "what the version is called today, where that is another name, or nothing"]
    revision: Annotated[str, "of today's sheet: revision 3, 2026-05-02"]
    moved: Annotated[tuple[MovedNumber, ...], "the numbers that differ"]
    home: Annotated[str, "the way up to the library's page"]


@dataclass(frozen=True, slots=True)
class Design:
    """A design in the library's list."""

    path: str
    title: str
    summary: str
    said: Annotated[str, "level, time, revision, tags"]
    versions: tuple[str, ...]
    sheets: tuple[SheetLink, ...]


@dataclass(frozen=True, slots=True)
class Index:
    """The library's list: `index.html.j2`."""

    studio: Studio
    language: str
    designs: tuple[Design, ...]


@dataclass(frozen=True, slots=True)
class FormulaRow:
    """A formula of the program."""

    about: Annotated[Html, "what it is"]
    says: Annotated[str, "the formula"]
    source: str
    valid: Annotated[str, "where it holds, or nothing"]


@dataclass(frozen=True, slots=True)
class RuleRow:
    """A rule of the bench."""

    name: str
    reason: str
    told: Annotated[str, "error or warning, and whether it is never waived"]
    source: str


@dataclass(frozen=True, slots=True)
class ConstantRow:
    """A constant behind the numbers."""

    name: str
    value: str
    unit: str
    source: str
    grade: Annotated[str, "how its source was seen"]


@dataclass(frozen=True, slots=True)
class Formulas:
    """The formulas of one subject."""

    subject: str
    rows: tuple[FormulaRow, ...]


@dataclass(frozen=True, slots=True)
class Rules:
    """The rules of one family, errors first."""

    subject: str
    rows: tuple[RuleRow, ...]


@dataclass(frozen=True, slots=True)
class Constants:
    """The constants of one subject."""

    subject: str
    rows: tuple[ConstantRow, ...]


@dataclass(frozen=True, slots=True)
class Facts:
    """What is behind every number: `facts.html.j2`."""

    studio: Studio
    language: str
    formulas: tuple[Formulas, ...]
    rules: tuple[Rules, ...]
    constants: tuple[Constants, ...]
