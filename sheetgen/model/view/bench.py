"""The sheets for the bench: handout, bench card, templates, and the rows of their steps."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Annotated

from sheetgen.model.view.head import NOTHING

if TYPE_CHECKING:
    from sheetgen.model.view.first_side import Bag, Need, Picture, Safety, Session, Size, Told, Tools, Wear
    from sheetgen.model.view.head import Head, Html


@dataclass(frozen=True, slots=True)
class Figure:
    """A number beside a step."""

    label: str
    value: Annotated[Html, "the number"]
    unit: Annotated[Html, "of the number, or nothing"]
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
    wide: Annotated[bool, "the phases of a long firing, a row each: it wants the width of the step"] = False


@dataclass(frozen=True, slots=True)
class Clock:
    """How long is waited, for a clock that somebody starts on a screen: `most` is not before `least`."""

    least: Annotated[int, "minutes"]
    most: Annotated[int, "minutes"]


@dataclass(frozen=True, slots=True)
class Row:
    """One row of the bench: a session's head, a step, or a wait, as `kind` says."""

    kind: Annotated[str, "session, step or wait"]
    id: Annotated[str, "unlike any other row's, for links: step-3 by its number, wait-1, session-2"]
    number: Annotated[int, "of a step or a session; 0 for a wait"]
    title: str
    short: Annotated[str, "its title on the bench card"]
    minutes: Annotated[Html, "time that it takes, or is waited for, or nothing"]
    steps: Annotated[str, "of a session: its steps"] = ""
    sat: Annotated[str, "of a session: its time with the waits inside it, where that is more, or nothing"] = ""
    text: Annotated[Html, "what is done"] = NOTHING
    expect: Annotated[Html, "what is seen when it is right, or nothing"] = NOTHING
    meanwhile: Annotated[Html, "of a wait: what can be done until it is over, or nothing"] = NOTHING
    then: Annotated[str, "on the bench card, of the last row of a session: the next one and its time"] = ""
    told: Annotated[tuple[Told, ...], "cautions that stand here in full, gravest first"] = ()
    wear: Annotated[tuple[Wear, ...], "what those in full ask to be worn or had"] = ()
    reminders: Annotated[tuple[Html, ...], "cautions told before, each in a few words"] = ()
    who: Annotated[str, "who does it, where that is not whoever reads"] = ""
    notes: Annotated[tuple[str, ...], "what stock says of things that come to hand here"] = ()
    hand: Annotated[str, "what the step names to be in hand, or nothing"] = ""
    figures: tuple[Figure, ...] = ()
    matrix: Annotated[Matrix | None, "in place of figures"] = None
    card: Annotated[tuple[Figure, ...], "the figures of the bench card, three at most"] = ()
    drawings: Annotated[tuple[Html, ...], "drawings beside it, each with its text alternative"] = ()
    picture: Picture | None = None
    firing: Annotated[str, "of a firing: bed, torch or none, time, loads"] = ""
    curve: Annotated[Html, "of a firing: its program as a curve"] = NOTHING
    mishap: Annotated[Html, "if it goes wrong: what is seen, and the mend"] = NOTHING
    clock: Annotated[Clock | None, "of what is waited for"] = None


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
    needs: Annotated[tuple[Need, ...], "what to have; beside a kit what is not in it"]
    tools: Annotated[tuple[Tools, ...], "the same of tools"]
    bags: Annotated[tuple[Bag, ...], "of a posted kit: what lies in it; nothing on a sheet that is published"]
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
