"""The surroundings in which parts are worked: choices, fields and figures on demand, each once, circles found."""

from __future__ import annotations

import math
import re
from typing import TYPE_CHECKING, Any, NoReturn

from sheetgen.base import arithmetic
from sheetgen.base.arithmetic import Quantity, Wrong
from sheetgen.base.dimension import AREA, COUNT, LENGTH, MASS, TEMPERATURE, TIME, UNITS, VOLUME, Dimension
from sheetgen.base.figure import Figure
from sheetgen.base.material import Item, Tool
from sheetgen.base.place import Place, Word
from sheetgen.base.spelling import suggest
from sheetgen.base.spread import GRAIN, Spread, spread
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas import scales
from sheetgen.model.project import OwnFigure
from sheetgen.parts.catalogue import kinds
from sheetgen.work import fields
from sheetgen.work.once import Once
from sheetgen.work.stopped import Stopped, in_arithmetic
from sheetgen.work.studio import rounder

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from sheetgen.base.trouble import Troubles
    from sheetgen.model.project import Library, Project
    from sheetgen.parts.given import Given
    from sheetgen.parts.kind import Part, Worker

UNIT_DIMENSIONS: dict[str, Dimension] = {
    "mm": LENGTH, "mm²": AREA, "mm³": VOLUME, "mL": VOLUME, "g": MASS, "min": TIME, "°C": TEMPERATURE,
}  # fmt: skip
ITEM_NUMBERS: dict[str, Dimension] = {
    "thickness": LENGTH, "size": LENGTH, "height": LENGTH, "width": LENGTH, "length": LENGTH, "hole": LENGTH,
    "inside": LENGTH, "depth": LENGTH, "shrinkage": COUNT, "thickness_shrinkage": COUNT,
    "metal_share": COUNT, "cure": TIME, "drying": TIME,
}  # fmt: skip
PLAIN_UNITS = {v: k for k, v in UNIT_DIMENSIONS.items() if k != "mL"} | {COUNT: ""}


class Workbench:
    """One version of one project being worked."""

    def __init__(self, project: Project, library: Library, overrides: Mapping[str, Word], troubles: Troubles) -> None:
        self.project, self.library, self.troubles = project, library, troubles
        self.rounder = rounder(library.studio)
        self.units = scales.units(str(library.studio.currency))
        self.choices = {in_arithmetic(k): v for k, v in project.choices.items()}
        self.choices |= {in_arithmetic(k): v for k, v in overrides.items()}
        self.own = {in_arithmetic(k): v for k, v in project.figures.items()}
        self.parts: dict[str, Part] = {}
        self.words: dict[str, dict[str, Word]] = {}
        self.places: dict[str, Place] = {}
        for name, words in project.parts.items():
            kind = kinds()[str(next(v for k, v in words.items() if k == "kind"))]
            plain = in_arithmetic(name)
            self.parts[plain] = kind(plain, self)
            self.words[plain] = {str(k): v for k, v in words.items() if isinstance(v, Word)}
            self.places[plain] = name.place
        self.once = Once(troubles)

    # What parts ask for (the Bench of parts/kind.py)

    def given(self, part: Part, field: Given[Any]) -> object:
        """The value of a field, in the sort the kind declares."""
        word = self.words[part.name].get(field.name)
        if word is None:
            if field.default is None:
                return None
            word = Word(field.default, self.places[part.name])
        found: Word = word
        return self.once.get(
            f"{part.name}.{in_arithmetic(field.name)}", found, lambda: fields.read(self, found, field, part.name)
        )

    def figure(self, part: Part, worker: Worker) -> Spread:
        """The value of a figure."""
        key = f"{part.name}.{worker.name}"

        def work() -> Spread:
            try:
                return spread(worker.function(part))
            except CannotBe as fault:
                self.troubles.add(f"{part.name}: {fault.message}", self.place(part.name, fault.field), fault.help)
            except (ArithmeticError, ValueError) as fault:
                message = f"{part.name}: {worker.label.lower()} cannot be worked ({fault})"
                self.troubles.add(message, self.place(part.name), "check the sizes of this part against each other")
            raise Stopped

        value: Spread = self.once.get(key, self.places[part.name], work)
        return value

    def owned(self, kind: str) -> Sequence[float]:
        """Sizes of the tools of a kind in the drawer."""
        tools = [t for t in self.library.stock.items.values() if isinstance(t, Tool) and t.kind == kind]
        return sorted({size for tool in tools for size in tool.sizes})

    def as_cut(self, size: float) -> float:
        """A size in mm as the bench cuts it: up to the studio's step."""
        return self.rounder.rounded(size, "bench up")

    # What expressions ask for (the Names of base/arithmetic.py)

    def name(self, name: str) -> Quantity:
        """A choice, a part's field or figure, or one of the project's own figures."""
        if name in self.choices:
            value = self.choice(name)
            if isinstance(value, Item):
                raise Wrong(f"'{name}' is {value.name}, not a number", -1, 1, "name a number")
            return value
        if name in self.own:
            return self.own_figure(name)
        if name in {"π", "pi"}:
            return Quantity(spread(math.pi))
        head, _, rest = name.partition(".")
        if head in self.choices and rest:
            value = self.choice(head)
            if isinstance(value, Item):
                return self._of_item(value, rest, name)
        if head in self.parts and rest:
            return self._of_part(self.parts[head], rest, name)
        if head in self.parts:
            some = sorted(type(self.parts[head]).workers())
            raise Wrong(
                f"'{name}' is a part, not a number", -1, 1, f"name one of its figures, such as {name}.{some[0]}"
            )
        raise Wrong(f"'{name}' is not known", -1, 1, suggest(name, self.all_names()))

    def scale(self, scale: str, text: str) -> Quantity:
        """Ring and stone sizes."""
        return scales.size(scale, text)

    # What the rest of the stage asks for

    def all_names(self) -> list[str]:
        """Every name that an expression could use."""
        names = [*self.choices, *self.own]
        for name, part in self.parts.items():
            names += [f"{name}.{w}" for w in type(part).workers()]
            names += [f"{name}.{in_arithmetic(f)}" for f in type(part).fields()]
        return names

    def place(self, part: str, field: str = "") -> Place:
        """Where a part's field is written; where the part is named, when the file does not give the field."""
        word = self.words[part].get(field)
        return word.place if word is not None else self.places[part]

    def choice(self, name: str) -> Quantity | Item:
        """The value of a choice: an item of stock, or a quantity."""
        word = self.choices[name]

        def work() -> Quantity | Item:
            if item := self.library.stock.items.get(str(word)):
                return item
            if str(word) in self.library.stock.withheld:
                self._not_in_stock(word, ())
            return self.worked(word, known=[*self.library.stock.items])

        found: Quantity | Item = self.once.get(name, word, work)
        return found

    def own_figure(self, name: str) -> Quantity:
        """One of the project's own figures."""
        written = self.own[name]
        word = written.value if isinstance(written, OwnFigure) else written
        found: Quantity = self.once.get(name, word, lambda: self.worked(word))
        return found

    def worked(self, word: Word, known: Sequence[str] = ()) -> Quantity:
        """An expression of the file worked. Raises Stopped with its trouble noted."""
        try:
            return arithmetic.read(word).work(self)
        except Wrong as wrong:
            if known and "not known" in wrong.message and self.library.stock.unread:
                self._not_in_stock(word, known)
            if known and "not known" in wrong.message and (near := suggest(word, known)).startswith("did you"):
                self.troubles.add(f"'{word}' is neither in stock nor a measure", word.place, near)
            else:
                self.troubles.add(wrong.message, word.place_of(max(0, wrong.at), wrong.width), wrong.help)
            raise Stopped from None

    def item(self, word: Word, sort: type[Item] = Item) -> Item:
        """A choice or an item of stock by its name. Raises Stopped with its trouble noted."""
        plain = in_arithmetic(word)
        found = self.choice(plain) if plain in self.choices else self.library.stock.items.get(str(word))
        if isinstance(found, Item) and isinstance(found, sort):
            return found
        wanted = {"Item": "an item of stock"}.get(sort.__name__, f"a {sort.__name__.lower()}")
        fitting = [i.id for i in self.library.stock.items.values() if isinstance(i, sort)]
        names = [*fitting, *self.choices]
        place = self.choices[plain].place if plain in self.choices and found is not None else word.place
        if isinstance(found, Item):
            self.troubles.add(
                f"'{found.id}' is a {type(found).__name__.lower()}, and {wanted} is wanted", place, suggest("", fitting)
            )
        elif found is not None:
            self.troubles.add(
                f"'{self.choices[plain]}' is a number, and {wanted} is wanted", place, suggest("", fitting)
            )
        else:
            self._not_in_stock(word, names)
        raise Stopped

    def _not_in_stock(self, word: Word, names: Sequence[str]) -> NoReturn:
        """Whether it is misspelt, or is there and in trouble itself, or in a file that could not be read."""
        stock = self.library.stock
        if place := stock.withheld.get(str(word)):
            self.troubles.add(
                f"'{word}' is in stock, but its own data is in trouble", word.place, f"first mend {place}"
            )
        else:
            helped = f"first mend {' and '.join(stock.unread)}" if stock.unread else suggest(word, names)
            self.troubles.add(f"'{word}' is not in stock", word.place, helped)
        raise Stopped

    def figure_named(self, name: str) -> Figure | None:
        """The figure behind a plain name, with its label and rounding, if the name is one."""
        head, _, rest = name.partition(".")
        part = self.parts.get(head)
        if part is not None and (worker := type(part).workers().get(rest)):
            return part.worked(worker) if part.has(worker) else None
        if name in self.own:
            written, value = self.own[name], self.own_figure(name)
            label = str(written.label) if isinstance(written, OwnFigure) else name.replace("_", " ").capitalize()
            return self.as_figure(name, label, value, str(written.value if isinstance(written, OwnFigure) else written))
        return None

    def as_figure(self, name: str, label: str, value: Quantity, written: str) -> Figure:
        """A figure made from an expression of the file, its working the expression with its numbers in it."""
        if value.dimension not in PLAIN_UNITS:
            unit = str(self.library.studio.currency) if value.dimension.money else str(value.dimension)
        else:
            unit = PLAIN_UNITS[value.dimension]
        # A thickness in whole cards keeps its hundredths; of any other length no bench shows them.
        cards = abs(value.value.usual * 20 - round(value.value.usual * 20)) < GRAIN
        tenth = unit == "mm" and value.value.exact and not cards
        return Figure("", name, label, value.value, unit, self.working(written), "tenth" if tenth else "fine")

    def working(self, written: str) -> str:
        """An expression with its names replaced by their numbers, in mm, g and min."""
        from sheetgen.parts.kind import working_number  # noqa: PLC0415

        expression = arithmetic.read(written)
        for name, at in reversed(expression.names()):
            value = working_number(self.name(name).value)
            written = written[:at] + value + written[at + len(name) :]
        written = re.sub(r"\busual\(", "(", written)  # as every number of a working is
        return written.replace("*", "×").replace("/", "÷").replace(" - ", " − ")

    # How it is done

    def _of_part(self, part: Part, rest: str, name: str) -> Quantity:
        workers, given = type(part).workers(), type(part).fields()
        if rest in workers:
            worker = workers[rest]
            if not part.has(worker):
                raise Wrong(f"'{part.name}' has no {rest} as it is given here", -1, 1, worker.about)
            worked: Spread = getattr(part, rest)
            plain = worked * UNITS[worker.unit].factor if worker.unit in {"mL", "%"} else worked
            return Quantity(plain, UNIT_DIMENSIONS.get(worker.unit, COUNT))
        head, _, below = rest.partition(".")
        field = next((f for f in given.values() if in_arithmetic(f.name) == head), None)
        if field is None:
            names = [*workers, *map(in_arithmetic, given)]
            raise Wrong(f"'{part.name}' has no figure '{rest}'", -1, 1, suggest(rest, names))
        value = self.given(part, field)
        if isinstance(value, Item) and below:
            return self._of_item(value, below, name)
        if isinstance(value, Spread) and isinstance(field.sort, Dimension) and not below:
            return Quantity(value, field.sort)
        if value is None:
            raise Wrong(f"'{part.name}' is given no {field.name}", -1, 1, "give it, or name another figure")
        raise Wrong(f"'{name}' is not a number", -1, 1, "name a figure or a measure")

    def _of_item(self, item: Item, below: str, name: str) -> Quantity:
        value = getattr(item, below, None) if below in ITEM_NUMBERS else None
        if value is None:
            some = [k for k in ITEM_NUMBERS if getattr(item, k, None) is not None]
            raise Wrong(f"'{name}' is not known: {item.name} has no '{below}'", -1, 1, suggest(below, some))
        return Quantity(spread(value), ITEM_NUMBERS[below])
