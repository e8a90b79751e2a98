"""What a kind of part declares, each as a text in the arithmetic of project files: figures, needs, sizes, takings, tools."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from sheetgen.base.figure import Rounding


@dataclass(frozen=True, slots=True)
class Need:
    """What must hold: `holds` a condition, `says` what is wrong otherwise (after the field's name), `at` the field.

    `least` and `most` are numbers that would do, told as “… or more” and “… or less”; `help` stands after them. A
    `doubt` is a warning. What is refused as common practice has the name of a `rule`, by which a project may waive it.
    In braces a text names a number, which is printed with its unit. `each` is a list that it must hold of throughout.
    """

    holds: str
    says: str
    at: str
    least: str = ""
    most: str = ""
    help: str = ""
    when: str = ""
    doubt: bool = False
    rule: str = ""
    each: str = ""


def need(  # noqa: PLR0913 - what a need says of itself, most of it by name
    holds: str, says: str, *, at: str, least: str = "", most: str = "", help: str = "",  # noqa: A002
    when: str = "", doubt: bool = False, rule: str = "", each: str = "",
) -> Need:  # fmt: skip
    """Declare what must hold."""
    return Need(holds, says, at, least, most, help, when, doubt, rule, each)


class FigureSpec:
    """A figure as a kind declares it. `tree` is its text, read and bound when the class is made."""

    def __init__(  # noqa: PLR0913, PLR0917 - what a figure says of itself
        self, label: str, unit: str, says: str, rounding: Rounding, about: str, when: str,
        needs: tuple[Need, ...], at: str, role: str,
    ) -> None:  # fmt: skip
        self.label, self.unit, self.says, self.rounding = label, unit, says, rounding
        self.about, self.when, self.needs, self.at, self.role = about, when, needs, at, role
        self.name = ""

    def __set_name__(self, owner: type, name: str) -> None:
        self.name = name


def figure(  # noqa: PLR0913 - what a figure says of itself, most of it by name
    label: str, unit: str, says: str, rounding: Rounding = "fine", *, about: str = "", when: str = "",
    needs: tuple[Need, ...] = (), at: str = "", role: str = "",
) -> FigureSpec:  # fmt: skip
    """Declare a figure: `says` is worked, and is its working. `when` tells whether this part has it at all.

    `needs` hold before it is worked (those that name it, after it); where one does not, the figure stops. A trouble of
    its own, such as no tool near it, is told at the field `at`. TypeError when the class is made if it cannot be read.
    """
    return FigureSpec(label, unit, says, rounding, about, when, needs, at, role)


class Aside:
    """A number with no line of its own: printed in workings by its value."""

    def __init__(self, unit: str, says: str, *, needs: tuple[Need, ...] = (), at: str = "", role: str = "") -> None:
        self.unit, self.says, self.needs, self.at, self.role = unit, says, needs, at, role
        self.name = ""

    def __set_name__(self, owner: type, name: str) -> None:
        self.name = name


class Inline:
    """An expression that several figures use: printed as it is worked."""

    def __init__(self, says: str) -> None:
        self.says = says
        self.name = ""

    def __set_name__(self, owner: type, name: str) -> None:
        self.name = name


class Flag:
    """A condition that has a name."""

    def __init__(self, says: str) -> None:
        self.says = says
        self.name = ""

    def __set_name__(self, owner: type, name: str) -> None:
        self.name = name


def aside(unit: str, says: str, *, needs: tuple[Need, ...] = (), at: str = "", role: str = "") -> Aside:
    """Declare a number that prints by its value and has no line of its own."""
    return Aside(unit, says, needs=needs, at=at, role=role)


def inline(says: str) -> Inline:
    """Declare words used in several figures."""
    return Inline(says)


def flag(says: str) -> Flag:
    """Declare a condition used in several places."""
    return Flag(says)


@dataclass(frozen=True, slots=True)
class SizeSpec:
    """One size of a part as the bench needs it, in the order they are made.

    `figure` is what is made; `finished` what it is when finished; `fires` what the made one fires to. `counted` is what
    is counted to make it, where that is no length. Label and tool may name numbers in braces.
    """

    label: str
    figure: str
    finished: str = ""
    fires: str = ""
    tool: str = ""
    counted: str = ""
    when: str = ""


def size(  # noqa: PLR0913 - what a size says of itself, most of it by name
    label: str, figure: str, *, finished: str = "", fires: str = "", tool: str = "", counted: str = "",
    when: str = "",
) -> SizeSpec:  # fmt: skip
    """Declare a size for the bench."""
    return SizeSpec(label, figure, finished, fires, tool, counted, when)


@dataclass(frozen=True, slots=True)
class TakeSpec:
    """What all pieces of a part take together of an item: `amount` in mm, mm², mL, g or pieces.

    `grams` is the amount where stock sells the item by weight. `each` names the figure that one piece takes, `blank`
    the length and width of one blank of sheet, `spent` what is used up of the amount where the rest of it comes back.
    """

    item: str
    amount: str
    each: str = ""
    grams: str = ""
    blank: tuple[str, str] | None = None
    when: str = ""
    spent: str = ""


def take(  # noqa: PLR0913 - what a taking says of itself, most of it by name
    item: str, amount: str = "count", *, each: str = "", grams: str = "", blank: tuple[str, str] | None = None,
    when: str = "", spent: str = "",
) -> TakeSpec:  # fmt: skip
    """Declare what the pieces take from stock."""
    return TakeSpec(item, amount, each, grams, blank, when, spent)


@dataclass(frozen=True, slots=True)
class ToolSpec:
    """A tool of a size: its kind and the number that is its size, mm; `each` sums over a list's entries.

    `within`: only the owned tool that is no further from the size than that; none if there is none. `given` is the
    field that may name the tool to use, which must then be in the drawer.
    """

    kind: str
    size: str
    when: str = ""
    each: str = ""
    within: str = ""
    given: str = ""


def tool(  # noqa: PLR0913 - what a tool says of itself, most of it by name
    kind: str, size: str, *, when: str = "", each: str = "", within: str = "", given: str = ""
) -> ToolSpec:
    """Declare a tool that the part is made with."""
    return ToolSpec(kind, size, when, each, within, given)


@dataclass(frozen=True, slots=True)
class StandSpec:
    """What one of a piece takes up in the kiln as it is shaped before it shrinks, mm, as texts."""

    wide: str
    deep: str
    high: str
    when: str = ""


def stand(wide: str, deep: str, high: str, *, when: str = "") -> StandSpec:
    """Declare the room of one piece on the shelf; what is not formed takes up its template, and needs none."""
    return StandSpec(wide, deep, high, when)
