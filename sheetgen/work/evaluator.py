"""The surroundings in which one version is worked: choices, own figures and parts by name, each once, circles found."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, NoReturn

from sheetgen.base.arithmetic import read
from sheetgen.base.binding import become, bind
from sheetgen.base.cases import Cases, uncertain
from sheetgen.base.dimension import ANY, BARE, Dimension, Unit, dimension_of, unit
from sheetgen.base.interval import Interval, interval
from sheetgen.base.material import SAME_AS, Item, Tool
from sheetgen.base.place import Place, Word
from sheetgen.base.reckoning import Source, printed, reckon, settle
from sheetgen.base.rounding import told_end
from sheetgen.base.spelling import plain, suggest
from sheetgen.base.tree import Node, Wrong
from sheetgen.base.trouble import FIRST_MEND, CannotBe
from sheetgen.model.numbers import Numbers
from sheetgen.work.choices import OPEN, chosen
from sheetgen.work.memo import Memo
from sheetgen.work.names import Names
from sheetgen.work.own import own
from sheetgen.work.part import PartSource
from sheetgen.work.stopped import Stopped
from sheetgen.work.studio import rounder

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from sheetgen.base.trouble import Troubles
    from sheetgen.model.project import Library, Project


@dataclass(frozen=True, slots=True)
class Quantity:
    """A worked expression of a file: its cases, in `unit`, and its working."""

    cases: Cases
    unit: Unit
    working: str

    @property
    def interval(self) -> Interval:
        """Low, usual and high, in its unit."""
        return self.cases.interval

    @property
    def dimension(self) -> Dimension:
        """What it measures."""
        return dimension_of(self.unit)


class Evaluator:
    """One version of one project being worked: the numbers behind the names of its expressions (Source)."""

    def __init__(self, project: Project, library: Library, overrides: Mapping[str, Word], troubles: Troubles) -> None:
        self.project, self.library, self.troubles = project, library, troubles
        self.rounder = rounder(library.studio)
        self.numbers = Numbers(self.rounder)
        self.names = Names(self)
        self.choices = chosen(project.choices, overrides, library.stock.items, troubles)
        self.own = {plain(k): own(plain(k), v) for k, v in project.figures.items()}
        self.parts: dict[str, PartSource] = {}
        self.memo = Memo(troubles)
        self.waived: set[str] = set()
        self.missed: set[str] = set()  # words that name nothing in stock, or something that is in trouble
        self._withheld = {plain(name): place for name, place in library.stock.withheld.items()}
        self._keys: list[str] = [""]
        self._by_plain = {plain(name): item for name, item in library.stock.items.items()}
        self._owned: dict[str, list[float]] = {}
        for name, words in project.parts.items():
            kind = library.kinds[str(next(v for k, v in words.items() if k == "kind"))]
            written = {str(k): v for k, v in words.items() if isinstance(v, Word)}
            self.parts[plain(name)] = PartSource(self, kind, plain(name), written, name.place)

    def cases(self, path: str) -> Cases:
        """What a name comes to; of what is cut, the size that is printed."""
        head, _, rest = path.partition(".")
        if rest in {"low", "high", "usual"}:
            return Cases(getattr(self.cases(head), rest))
        if head in self.choices:
            value = self.choice(head)
            return self.item_cases(value, rest) if isinstance(value, Item) else value.cases
        if path in self.own:
            return self.own_figure(path).cases
        return self.parts[head].cases(rest)

    def item_cases(self, item: Item, below: str) -> Cases:
        """A number of an item of stock; an uncertain one is the same input wherever it turns up."""
        attr, _, end = below.partition(".")
        value = interval(getattr(item, attr))
        if end:
            return Cases(getattr(value, end))
        other = SAME_AS.get(attr)
        if other and getattr(item, other, None) == value:
            attr = other
        return uncertain(f"{item.id}.{attr}", value)

    def given(self, path: str) -> bool:
        """Whether a name stands for something."""
        if path.startswith("drawer."):
            return bool(self.owned(path.removeprefix("drawer.").replace("_", " ")))
        head, _, rest = path.partition(".")
        return self.parts[head].given(rest) if head in self.parts else True

    def true(self, path: str) -> bool:
        """Whether a name holds as a condition: given, and not nothing."""
        if not self.given(path) or path.startswith("drawer."):
            return self.given(path)
        found = self.names.named(path)
        return found.unit is None or self.cases(path).usual != 0

    def word(self, path: str) -> str:
        """A choice's item, or a part's word or item, by its name."""
        head, _, rest = path.partition(".")
        if head in self.parts:
            return self.parts[head].word(rest)
        value = self.choice(head)
        return plain(value.id) if isinstance(value, Item) else ""

    def tree(self, path: str) -> Node | None:  # noqa: ARG002 - a project has no abbreviations
        """None: only kinds abbreviate."""
        return None

    def owned(self, kind: str) -> Sequence[float]:
        """Sizes of the tools of a kind in the drawer. CannotBe where one is in trouble: it may be the nearest."""
        stock = self.library.stock
        if name := stock.lacking.get(kind):
            told = f"the {kind} '{name}' is in stock, but its own data is in trouble"
            raise CannotBe(told, f"{FIRST_MEND} {stock.withheld[name]}")
        if kind not in self._owned:
            self._owned[kind] = self.sizes(self.library, kind)
        return self._owned[kind]

    @staticmethod
    def sizes(library: Library, kind: str) -> list[float]:
        """The sizes, mm, of all the tools of a kind."""
        tools = [t for t in library.stock.items.values() if isinstance(t, Tool) and t.kind == kind]
        return sorted({size for tool in tools for size in tool.sizes})

    def series(self, path: str) -> Sequence[Source]:  # noqa: ARG002 - a project has no lists
        """None."""
        return ()

    def told(self, mm: float) -> str:
        """A length in print."""
        return self.rounder.length(mm).plain

    @property
    def key(self) -> str:
        """What a range in the expression at work is called."""
        return self._keys[-1]

    # What the rest of the stage asks for

    def choice(self, name: str) -> Quantity | Item:
        """The value of a choice: an item of stock, or a quantity. Stopped where another choice leaves it open."""
        word = self.choices[name]

        def work() -> Quantity | Item:
            if word == OPEN:
                raise Stopped
            if item := self.stocked(word):
                return item
            if self.withheld(word):
                self._not_in_stock(word, ())
            return self.worked(word, name, known=[*self.library.stock.items])

        found: Quantity | Item = self.memo.get(name, word, work)
        return found

    def stocked(self, word: str) -> Item | None:
        """An item of stock by its id, however its words are parted."""
        found = self.library.stock.items.get(str(word)) or self._by_plain.get(plain(word))
        if found is not None:
            self.library.asked.add(found.id)
        return found

    def unit_of(self, name: str) -> Unit:
        """The unit of one of the project's own figures."""
        word = self.own[name].word

        def work() -> Unit:
            try:
                found = bind(read(word), self.names)[1]
            except Wrong as wrong:
                self._noted(wrong, word)
            return BARE if found == ANY else found

        found: Unit = self.memo.get(f"the unit of {name}", word, work)
        return found

    def own_figure(self, name: str) -> Quantity:
        """One of the project's own figures, as what follows is worked from it: where it is cut, as it is printed."""
        found, rounding = self.own_worked(name), self.own[name].rounding(name, self)
        if rounding is None:
            return found
        cut = self.rounder.rounded(told_end(found.interval, rounding), rounding)
        return Quantity(Cases(cut), found.unit, found.working)

    def own_worked(self, name: str) -> Quantity:
        """The same before it is rounded."""
        word = self.own[name].word
        found: Quantity = self.memo.get(name, word, lambda: self.worked(word, name))
        return found

    def worked(
        self, word: Word, key: str, known: Sequence[str] = (), wanted: str | None = None, place: Place | None = None
    ) -> Quantity:
        """An expression of the file, in the unit `wanted` where it is of that dimension. Stopped if it cannot be."""
        self._keys.append(key)
        try:
            tree, have = bind(read(word), self.names)
            if wanted is not None and have != ANY and dimension_of(have) == dimension_of(unit(wanted)):
                tree, have = become(tree, have, unit(wanted)), unit(wanted)
            settled = settle(tree, self)
            cases = reckon(settled, self)
            cases.interval  # noqa: B018 - finite numbers only
            return Quantity(cases, BARE if have == ANY else have, printed(settled, self))
        except Wrong as wrong:
            self._noted(wrong, word, known)
        except CannotBe as fault:
            self.troubles.add(fault.message, place or word.place, fault.help)
        except ZeroDivisionError:
            self.troubles.add("a division by zero", word.place, "the divisor may not reach zero")
        except (ArithmeticError, ValueError) as fault:
            self.troubles.add(
                f"'{word}' cannot be worked ({fault})", word.place, "check its numbers against each other"
            )
        finally:
            self._keys.pop()
        raise Stopped

    def _noted(self, wrong: Wrong, word: Word, known: Sequence[str] = ()) -> NoReturn:
        """A fault of an expression, as what it most likely is."""
        if known and "not known" in wrong.message and self.library.stock.unread:
            self._not_in_stock(word, known)
        if known and "not known" in wrong.message and (near := suggest(word, known)).startswith("did you"):
            self.troubles.add(f"'{word}' is neither in stock nor a measure", word.place, near)
        else:
            self.troubles.add(wrong.message, word.place_of(max(0, wrong.at), wrong.width), wrong.help)
        raise Stopped

    def item(self, word: Word, sort: type[Item] = Item) -> Item:
        """A choice or an item of stock by its name. Raises Stopped with its trouble noted."""
        name = plain(word)
        found = self.choice(name) if name in self.choices else self.stocked(word)
        if isinstance(found, Item) and isinstance(found, sort):
            return found
        wanted = {"Item": "an item of stock"}.get(sort.__name__, f"a {sort.__name__.lower()}")
        fitting = [i.id for i in self.library.stock.items.values() if isinstance(i, sort)]
        place = self.choices[name].place if name in self.choices and found is not None else word.place
        if isinstance(found, Item):
            message = f"'{found.id}' is a {type(found).__name__.lower()}, and {wanted} is wanted"
            self.troubles.add(message, place, suggest("", fitting))
        elif found is not None:
            message = f"'{self.choices[name]}' is a number, and {wanted} is wanted"
            self.troubles.add(message, place, suggest("", fitting))
        else:
            self._not_in_stock(word, [*fitting, *self.choices])
        raise Stopped

    def waiver(self, rule: str) -> str:
        """The reason for which the project waives a rule of common practice; empty if it does not."""
        found = next((v for k, v in self.project.waive.items() if plain(k) == plain(rule)), None)
        if found is not None:
            self.waived.add(plain(rule))
        return str(found or "")

    def _not_in_stock(self, word: Word, names: Sequence[str]) -> NoReturn:
        """Whether it is misspelt, or is there and in trouble itself, which is told once; or in a file not read."""
        stock = self.library.stock
        before = plain(word) in self.missed
        self.missed.add(plain(word))
        if place := self.withheld(word):
            if not before:
                message = f"'{word}' is in stock, but its own data is in trouble"
                self.troubles.add(message, word.place, f"{FIRST_MEND} {place}")
        else:
            helped = f"{FIRST_MEND} {' and '.join(stock.unread)}" if stock.unread else suggest(word, names)
            self.troubles.add(f"'{word}' is not in stock", word.place, helped)
        raise Stopped

    def withheld(self, word: str) -> Place | None:
        """The fault of an item of stock that is in trouble itself."""
        return self._withheld.get(plain(word))
