"""A kind of part of a studio's own, as its file writes it: every word with its place."""

from __future__ import annotations

from pydantic import Field

from sheetgen.model.written import Text, Written


class WrittenField(Written):
    """One thing that a project gives. One of the first lines says what sort it is."""

    item: Text | None = None
    length: Text | None = None
    count: Text | None = None
    ratio: Text | None = None
    mass: Text | None = None
    density: Text | None = None
    time: Text | None = None
    temperature: Text | None = None
    one_of: list[Text] | None = None
    about: Text | None = None
    above: Text | None = None
    at_least: Text | None = None
    at_most: Text | None = None
    default: Text | None = None
    optional: Text | None = None
    role: Text | None = None


class WrittenNeed(Written):
    """What must hold, what is said otherwise, and at which field."""

    need: Text
    say: Text
    at: Text
    least: Text | None = None
    most: Text | None = None
    help: Text | None = None
    when: Text | None = None
    doubt: Text | None = None
    rule: Text | None = None


class WrittenFigure(Written):
    """A number that is worked and printed."""

    label: Text
    value: Text
    unit: Text | None = None
    round: Text | None = None
    about: Text | None = None
    when: Text | None = None
    at: Text | None = None
    role: Text | None = None
    needs: list[WrittenNeed] = Field(default_factory=list)


class WrittenAside(Written):
    """A number that has no line of its own."""

    value: Text
    unit: Text | None = None


class WrittenTake(Written):
    """What all pieces take of an item of stock."""

    item: Text
    amount: Text
    each: Text | None = None
    grams: Text | None = None
    blank: list[Text] = Field(default_factory=list)
    when: Text | None = None


class WrittenTool(Written):
    """A tool of a size."""

    kind: Text
    size: Text
    when: Text | None = None
    within: Text | None = None
    given: Text | None = None


class WrittenSize(Written):
    """A size as the bench needs it."""

    label: Text
    figure: Text
    finished: Text | None = None
    fires: Text | None = None
    tool: Text | None = None
    counted: Text | None = None
    when: Text | None = None


class WrittenArc(Written):
    """A run of an outline round a middle, from the point before it on: degrees, as a clock goes."""

    arc: Text
    around: list[Text]


class WrittenHole(Written):
    """A hole in an outline: a disc or an oval, in its middle or at a point."""

    disc: Text | None = None
    oval: list[Text] | None = None
    at: list[Text] | None = None
    when: Text | None = None


class WrittenOutline(Written):
    """A template: one shape, and the holes in it."""

    disc: Text | None = None
    rectangle: list[Text] | None = None
    oval: list[Text] | None = None
    points: list[list[Text] | WrittenArc] | None = None
    holes: list[WrittenHole] = Field(default_factory=list)
    thickness: Text | None = None
    times: Text | None = None
    what: Text | None = None
