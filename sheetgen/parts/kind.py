"""What a kind of part is: fields given in the file, figures worked from them, checks and drawings."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, ClassVar, Protocol, Self, TypeVar, overload

from sheetgen.base.figure import Figure, Made, Rounding, Size
from sheetgen.base.spread import GRAIN, Spread
from sheetgen.parts import given
from sheetgen.parts.drawer import Drawer, Owner, beside
from sheetgen.parts.given import Given

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator, Mapping

    from sheetgen.base.material import Item
    from sheetgen.base.pen import Extent, Pen
    from sheetgen.base.trouble import Severity


class Bench(Owner, Protocol):
    """What a part may ask of its surroundings while it is worked."""

    def given(self, part: Part, field: Given[Any]) -> object:
        """The value of a field."""

    def figure(self, part: Part, worker: Worker) -> Spread:
        """The value of a figure, worked once."""


PartT = TypeVar("PartT", bound="Part")


class Worker:
    """A figure as a kind declares it: what it is called, how it is worked and how its working reads."""

    def __init__(  # noqa: PLR0913, PLR0917 - what a figure says of itself
        self,
        function: Callable[[Any], Spread | float],
        label: str,
        unit: str,
        working: str,
        rounding: Rounding | Callable[[Any], Rounding],
        when: Callable[[Any], bool] | None,
    ) -> None:
        self.function, self.label, self.unit = function, label, unit
        self.working, self.rounding, self.when = working, rounding, when
        self.about = (function.__doc__ or "").strip().split("\n")[0]

    def __set_name__(self, owner: type, name: str) -> None:
        self.name = name

    @overload
    def __get__(self, part: None, owner: type) -> Self: ...
    @overload
    def __get__(self, part: Part, owner: type) -> Spread: ...
    def __get__(self, part: Part | None, owner: type) -> Self | Spread:
        return self if part is None else part.bench.figure(part, self)


def figure(
    label: str,
    unit: str,
    working: str,
    *,
    rounding: Rounding | Callable[[Any], Rounding] = "fine",
    when: Callable[[Any], bool] | None = None,
) -> Callable[[Callable[[PartT], Spread | float]], Worker]:
    """Declare a figure. `{name}` in the working is the value of a field or figure of the part, or of what it names.

    `when` says whether this part has the figure at all. The working must come to the value when reckoned by hand.
    """

    def declare(function: Callable[[PartT], Spread | float]) -> Worker:
        return Worker(function, label, unit, working, rounding, when)

    return declare


@dataclass(frozen=True, slots=True)
class Finding:
    """What a check found: the field to blame, what is wrong, what would help."""

    field: str
    message: str
    help: str = ""
    severity: Severity = "error"


@dataclass(frozen=True, slots=True)
class Take:
    """What all pieces of a part take from stock together, in the item's unit; `figure` names the figure it comes from.

    `blank` is the length and width in mm of one blank of sheet.
    """

    item: Item
    amount: Spread
    figure: str = ""
    blank: tuple[float, float] | None = None


class Part(Drawer):
    """A computed piece of a project. A kind subclasses it in a file of its own."""

    kind: ClassVar[str] = ""
    reshaped: ClassVar[bool] = False  # bent or domed after it is cut
    centred: ClassVar[bool] = False  # the middle of its diagram is at (0, 0), where what is drilled there is drawn too
    hazards: ClassVar[tuple[str, ...]] = ()  # cautions that working the part always calls for
    count = given.count("how many of these the project needs", default="1")
    at = given.spot("where the middle of its top stands in the finished view, as 5 mm, 12 mm: right and down")
    hangs_from = given.neighbour("the part it hangs from in the finished view")

    def __init__(self, name: str, bench: Bench) -> None:
        self.name = name
        self.bench: Bench = bench

    @classmethod
    def fields(cls) -> dict[str, Given[Any]]:
        """Every field by its written name, in the order of the file."""
        found: dict[str, Given[Any]] = {}
        for owner in [Part, *[c for c in reversed(cls.__mro__) if c is not Part]]:
            found |= {v.name: v for v in vars(owner).values() if isinstance(v, Given)}
        return found

    @classmethod
    def workers(cls) -> dict[str, Worker]:
        """Every figure by name, in the order of the file."""
        found: dict[str, Worker] = {}
        for owner in reversed(cls.__mro__):
            found |= {v.name: v for v in vars(owner).values() if isinstance(v, Worker)}
        return found

    def has(self, worker: Worker) -> bool:
        """Whether this part has that figure."""
        return worker.when is None or worker.when(self)

    def figures(self) -> list[Figure]:
        """All figures of this part, worked."""
        return [self.worked(w) for w in type(self).workers().values() if self.has(w)]

    def worked(self, worker: Worker) -> Figure:
        """One figure with its working."""
        value: Spread = getattr(self, worker.name)
        rounding = worker.rounding if isinstance(worker.rounding, str) else worker.rounding(self)
        return Figure(self.name, worker.name, worker.label, value, worker.unit, self.working_of(worker), rounding)

    def working_of(self, worker: Worker) -> str:
        """The working with its numbers in it."""

        def number(match: re.Match[str]) -> str:
            value: object = self
            for name in match[1].split("."):
                value = getattr(value, name)
            return working_number(value)

        return re.sub(r"\{([\w.]+)\}", number, worker.working)

    def not_owned(self, kind: str, size: float, field: str) -> Iterator[Finding]:
        """A tool given by its size that is not in the drawer, when the stock lists any of its kind."""
        owned = self.bench.owned(kind)
        if owned and all(abs(size - one) > GRAIN for one in owned):
            near = " and ".join(f"{one:g} mm" for one in beside(owned, size))
            yield Finding(field, f"of {size:g} mm is not in the drawer", f"the nearest owned: {near}; or add to stock")

    def misfits(self, told: str, wanted: Mapping[str, str], unwanted: Iterable[str] = ()) -> Iterator[Finding]:
        """Fields left out that `told` asks for, each with an example, and fields given that it does not."""
        for field in (f for f in type(self).fields().values() if getattr(self, f.attribute) is None):
            if field.attribute in wanted:
                yield Finding(field.name, f"is not given, and {told} wants it", wanted[field.attribute])
        for field in (f for f in type(self).fields().values() if f.attribute in unwanted):
            if getattr(self, field.attribute) is not None:
                yield Finding(field.name, f"is given, and {told} has none", "take it out")

    def takes(self) -> Iterator[Take]:
        """What all the pieces together take from stock."""
        return iter(())

    def made(self) -> Iterator[Made]:
        """The sizes the bench needs, in the order they are made."""
        return iter(())

    def tools(self) -> Iterator[tuple[str, float]]:
        """Tools of a size that the part is made with: kind and mm."""
        return iter(())

    def slats(self) -> Iterator[tuple[str, float]]:
        """Thicknesses the clay is rolled to: the field that says so, and mm."""
        fields = type(self).fields()
        for name in ("rolled first", "thickness") if "clay" in fields else ():
            value = self.bench.given(self, fields[name]) if name in fields else None
            if isinstance(value, Spread):
                yield name, value.usual

    def check(self) -> Iterator[Finding]:
        """What does not fit, or is doubtful."""
        return iter(())

    def template(self, pen: Pen, size: Callable[[str], Size]) -> None:
        """Draw the flat piece as it is cut; `size` gives the printed size of a figure by name."""

    def mark(self, pen: Pen, size: Callable[[str], Size], around: Extent) -> str:  # noqa: ARG002 - what is drilled uses them
        """Mark on the template of the part that it is drilled in, whose outline reaches as far as `around`.

        Returns what to say of it under that template.
        """
        return ""

    def template_note(self, size: Callable[[str], Size]) -> str:  # noqa: ARG002 - kinds with a template use it
        """What to say under the template: thickness, holes."""
        return ""

    def diagram(self, pen: Pen, size: Callable[[str], Size], k: float) -> str:  # noqa: ARG002 - kinds with a diagram use them
        """Draw how it is formed, `k` mm on paper for 1 mm of the piece; returns the text alternative, empty for none."""
        return ""

    def view(self, pen: Pen) -> float:  # noqa: ARG002 - kinds with a front view use it
        """Draw the finished part from the front, mm, the middle of its top at (0, 0); returns how far down it reaches.

        A ring or link returns where the next part's wire lies in it. 0 for a kind that has no front view.
        """
        return 0.0

    def deep(self) -> Spread | None:
        """How thick the clay is where it is thickest, wet, mm: what drying waits for. None of a part without clay."""
        fields = type(self).fields()
        found = self.bench.given(self, fields["thickness"]) if "clay" in fields and "thickness" in fields else None
        return found if isinstance(found, Spread) else None

    def outlines(self) -> Iterator[tuple[int, float, str]]:
        """Of each outline of the template, as drawn: how many one piece takes, mm its clay is rolled to, what it is."""
        return iter(())

    @classmethod
    def flat(cls) -> bool:
        """Whether there is a template to cut by."""
        return cls.template is not Part.template


def working_number(value: object) -> str:
    """A number inside a working: enough figures that a pencil gets the printed value."""
    if isinstance(value, Spread):
        value = value.usual
    if isinstance(value, int | float):
        text = f"{value:.6g}" if abs(value) >= 1e-4 or not value else f"{value:.8f}"  # noqa: PLR2004 - no powers of ten in a working
        return text.replace("-", "−")
    return str(value)
