"""The names that an expression of a project's file may use: choices, own figures, and the parts' fields and figures."""

from __future__ import annotations

from typing import TYPE_CHECKING, NoReturn

from sheetgen.base.binding import Named
from sheetgen.base.cases import Cases
from sheetgen.base.dimension import unit
from sheetgen.base.material import NUMBERS, TOOL_KINDS, Item
from sheetgen.base.spelling import plain, suggest
from sheetgen.base.tree import Wrong
from sheetgen.parts.field import Field
from sheetgen.parts.figure import FigureSpec

if TYPE_CHECKING:
    from collections.abc import Iterable

    from sheetgen.work.evaluator import Evaluator
    from sheetgen.work.part import PartSource


class Names:
    """The scope of a project's expressions."""

    def __init__(self, evaluator: Evaluator) -> None:
        self.evaluator = evaluator

    def named(self, path: str) -> Named:
        """A choice, one of the project's own figures, or a part's field or figure."""
        head, _, rest = path.partition(".")
        if rest in {"low", "high", "usual"}:
            return self.named(head)
        if head in self.evaluator.choices:
            return self._choice_named(head, rest, path)
        if path in self.evaluator.own:
            return Named(self.evaluator.unit_of(path))
        if head in self.evaluator.parts and rest:
            return self._part_named(self.evaluator.parts[head], rest, path)
        if head in self.evaluator.parts:
            some = next(iter(self.evaluator.parts[head].kind.figures()), "count")
            raise Wrong(f"'{path}' is a part, not a number", -1, 1, f"name one of its figures, such as {path}.{some}")
        raise Wrong(f"'{path}' is not known", -1, 1, suggest(path, self.all_names()))

    def _choice_named(self, head: str, rest: str, path: str) -> Named:
        value = self.evaluator.choice(head)
        if isinstance(value, Item):
            return self._item_named(value, rest, path) if rest else Named(None, "item")
        if rest:
            raise Wrong(f"'{path}' is not known: '{head}' is a number", -1, 1)
        return Named(value.unit)

    def _item_named(self, item: Item, rest: str, path: str) -> Named:
        below = rest.removesuffix(".low").removesuffix(".high").removesuffix(".usual")
        known = NUMBERS[type(item).__name__]
        if below not in known or getattr(item, below) is None:
            some = [k for k in known if getattr(item, k) is not None]
            raise Wrong(f"'{path}' is not known: {item.name} has no '{below}'", -1, 1, suggest(below, some))
        return Named(unit(known[below][0]))

    def _part_named(self, part: PartSource, rest: str, path: str) -> Named:
        head, _, below = rest.partition(".")
        owner = part.kind.names.get(head)
        if below in {"low", "high", "usual"}:
            return self._part_named(part, head, path)
        if isinstance(owner, FigureSpec):
            if not part.has(owner):
                raise Wrong(f"'{part.name}' has no {rest} as it is given here", -1, 1, owner.about or owner.label)
            return Named(unit(owner.unit))
        if not isinstance(owner, Field):
            names = [k for k, v in part.kind.names.items() if isinstance(v, FigureSpec | Field)]
            raise Wrong(f"'{part.name}' has no figure '{rest}'", -1, 1, suggest(rest, names))
        value = part.field(owner)
        if value is None:
            raise Wrong(f"'{part.name}' is given no {owner.name}", -1, 1, "give it, or name another figure")
        if isinstance(value, Item):
            return self._item_named(value, below, path) if below else Named(None, "item")
        if isinstance(value, Cases) and not below:
            return Named(part.unit(owner))
        if isinstance(value, str):
            return Named(
                None, "words", tuple(plain(str(w)) for w in owner.sort) if isinstance(owner.sort, tuple) else ()
            )
        raise Wrong(f"'{path}' is not a number", -1, 1, "name a figure or a measure")

    def same(self, path: str, word: str) -> None:
        """An item is compared with one that is in stock; a word with those that it may be."""
        found = self.named(path)
        if found.what == "item":
            known = {plain(i): i for i in (*self.evaluator.library.stock.items, *self.evaluator.choices)}
            if word not in known and not self.evaluator.withheld(word):
                raise Wrong(f"'{word}' is not in stock", -1, 1, suggest(word, self.evaluator.library.stock.items))
        elif word not in found.words:
            raise Wrong(f"'{path}' is never '{word}'", -1, 1, "one of: " + ", ".join(found.words))

    def each(self, path: str) -> NoReturn:
        """A project has no lists to sum."""
        raise Wrong(f"'{path}' is no list", -1, 1)

    def tools(self) -> Iterable[str]:
        """What a drawer may hold."""
        return TOOL_KINDS

    def all_names(self) -> list[str]:
        """Every name that an expression could use."""
        names = [*self.evaluator.choices, *self.evaluator.own]
        for name, part in self.evaluator.parts.items():
            names += [f"{name}.{k}" for k, v in part.kind.names.items() if isinstance(v, FigureSpec | Field)]
        return names
