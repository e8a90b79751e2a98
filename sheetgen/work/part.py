"""One part being worked: its fields as they are given, its figures once each, and what must hold of it."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import TYPE_CHECKING, Any

from sheetgen.base.cases import Cases
from sheetgen.base.dimension import Dimension, Unit, unit
from sheetgen.base.figure import CUT, Figure
from sheetgen.base.material import Item
from sheetgen.base.outline import Outline
from sheetgen.base.place import Word
from sheetgen.base.reckoning import holds, printed, reckon, settle
from sheetgen.base.rounding import told_end
from sheetgen.base.spelling import plain
from sheetgen.base.spot import Spot
from sheetgen.base.tree import Node, named
from sheetgen.base.trouble import CannotBe, Severity, Trouble, refused
from sheetgen.facts.rules import waivable
from sheetgen.parts.field import Field
from sheetgen.parts.figure import Aside, FigureSpec, Flag, Inline
from sheetgen.parts.reading import BRACES, unit_of
from sheetgen.work import fields
from sheetgen.work.stopped import Stopped

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.base.bend import Bend
    from sheetgen.base.interval import Interval
    from sheetgen.base.place import Place
    from sheetgen.parts.figure import Need
    from sheetgen.parts.kind import Part
    from sheetgen.work.evaluator import Evaluator


class PartSource:
    """The numbers behind the names of one part's kind."""

    def __init__(self, evaluator: Evaluator, kind: type[Part], name: str, words: dict[str, Word], place: Place) -> None:
        self.evaluator, self.kind, self.name, self.written = evaluator, kind, name, words
        self.words = {plain(k): v for k, v in words.items()}
        self.home = place

    @property
    def title(self) -> str:
        """The part as a trouble names it."""
        return self.name.replace("_", " ")

    def place(self, field: str = "") -> Place:
        """Where a field is written, of several (`a or b`) the first; where the part is named, when none is given."""
        words = (self.words.get(plain(one)) for one in field.split(" or "))
        return next((word.place for word in words if word is not None), self.home)

    # Fields

    def field(self, owner: Field[Any]) -> Any:  # noqa: ANN401 - cases, words, an item, a place, an outline, or None
        """The value of a field, in the sort the kind declares."""
        word = self.words.get(owner.attribute.rstrip("_"))
        if word is None:
            if owner.default is None:
                return None
            word = Word(owner.default, self.home)
        found = word
        key = f"{self.name}.{owner.attribute}"
        return self.evaluator.memo.get(key, found, lambda: fields.read(self.evaluator, found, owner, self.name))

    @staticmethod
    def unit(owner: Field[Any]) -> Unit:
        """The unit that a field's number is in."""
        return unit(unit_of(owner))

    # Figures

    def has(self, spec: FigureSpec) -> bool:
        """Whether this part has that figure."""
        return not spec.when or holds(self.kind.texts.conditions[spec.when], self)

    def figure(self, spec: FigureSpec) -> tuple[Figure, Cases]:
        """A figure, and the number that whatever follows it is worked from. Stopped, with its trouble noted."""
        found: tuple[Figure, Cases] = self.evaluator.memo.get(
            f"{self.name}.{spec.name}", self.home, lambda: self._figure(spec)
        )
        return found

    def _figure(self, spec: FigureSpec) -> tuple[Figure, Cases]:
        own = [n for n in spec.needs if self._asks(n, spec.name)]
        self.stop_unless(n for n in spec.needs if n not in own)
        settled, cases, value = self._reckoned(spec.says, spec.label.lower(), spec.at)
        numbers = self.evaluator.numbers
        cut = spec.rounding in CUT and spec.unit == "mm"
        follows = Cases(self.evaluator.rounder.rounded(told_end(value, spec.rounding), spec.rounding)) if cut else cases
        working = printed(settled, self)
        given = bool(re.fullmatch(r"[\d.]+", working))
        shown = numbers.printed(value, spec.unit, spec.rounding, given=given)
        figure = Figure(self.name, spec.name, spec.label, value, spec.unit, working, spec.rounding, shown)
        self.evaluator.memo.known(f"{self.name}.{spec.name}", (figure, follows))
        self.stop_unless(own)
        return figure, follows

    def _reckoned(self, says: str, label: str, at: str) -> tuple[Node, Cases, Interval]:
        """A text of the kind, settled and worked. Stopped, with its trouble noted."""
        try:
            settled = settle(self.kind.texts.numbers[says], self)
            cases = reckon(settled, self)
            value = cases.interval
        except CannotBe as fault:
            field = fault.field or at
            message = f"{self.title}: {fault.message}"
            self.evaluator.troubles.add(message, self.place(field), fault.help)
        except (ArithmeticError, ValueError) as fault:
            message = f"{self.title}: {label} cannot be worked ({fault})"
            self.evaluator.troubles.add(message, self.place(at), "check the sizes of this part against each other")
        else:
            return settled, cases, value
        raise Stopped

    def _asks(self, one: Need, name: str) -> bool:
        """Whether a need asks for the number that it belongs to, and so can only be looked at after it."""
        return any(n.partition(".")[0] == name for n in named(self.kind.texts.conditions[one.holds]))

    def number(self, says: str) -> Cases:
        """Any text of the kind, in every case."""
        return self._reckoned(says, f"'{says}'", "")[1]

    # What must hold

    def stop_unless(self, needs: Iterator[Need] | Sequence[Need]) -> None:
        """Stopped where a need of a figure does not hold."""
        stop = False
        for one in needs:
            trouble = self.broken(one)
            if trouble is not None:
                self.evaluator.troubles.extend([trouble])
                stop = stop or trouble.severity == "error"
        if stop:
            raise Stopped

    def broken(self, one: Need) -> Trouble | None:
        """What a need has to say; None where it holds, or is waived."""
        if one.each:
            entries = (entry.broken(replace(one, each="")) for entry in self.series(one.each))
            return next((trouble for trouble in entries if trouble is not None), None)
        conditions = self.kind.texts.conditions
        if one.when and not holds(conditions[one.when], self):
            return None
        if one.holds and holds(conditions[one.holds], self):
            return None
        message = f"{self.title}: {one.at} {self.say(one.says)}".replace(": kind ", ": ", 1)
        may = waivable(one.rule)
        if one.rule and may and self.evaluator.waiver(one.rule):
            return None
        helps = [f"{self._enough(one.least, up=True)} or more"] if one.least else []
        if one.most and (not one.help or self.number(one.most).usual > 0):  # nothing that can be given, and another way
            helps.append(f"{self._enough(one.most, up=False)} or less")
        helps += [self.say(one.help)] if one.help else []
        severity: Severity = "warning" if one.doubt else "error"
        if not may:
            return Trouble(message, self.place(one.at), ", ".join(helps), severity, one.rule)
        return refused(one.rule, message, self.place(one.at), ", ".join(helps), severity)

    def _enough(self, text: str, *, up: bool) -> str:
        """The least or the most that would do, to what a hand can set, on the side that works."""
        value = self.number(text).usual
        return self.evaluator.rounder.bound(value, self.kind.texts.units[text], up=up)

    def say(self, text: str) -> str:
        """A text with its numbers put in, each with its unit."""

        def one(match: re.Match[str]) -> str:
            inner = match[1].strip()
            owner = self.kind.names.get(inner)
            if inner.endswith(".name"):
                item = self.field(self.kind.names[inner.removesuffix(".name")])
                return str(item.name) if item is not None else ""
            if isinstance(owner, Field) and not isinstance(owner.sort, Dimension | type):
                return str(self.field(owner))
            value = self.number(inner).interval
            told = self.evaluator.numbers.printed(value, self.kind.texts.units[inner], "fine", given=True)
            return told.plain

        return BRACES.sub(one, text)

    # The numbers behind the names (Source)

    def cases(self, path: str) -> Cases:
        """A field's or figure's number, as what follows uses it; a number of an item."""
        head, _, rest = path.partition(".")
        owner = self.kind.names[head]
        if rest in {"low", "high", "usual"}:
            return Cases(getattr(self.cases(head), rest))
        if isinstance(owner, FigureSpec):
            return self.figure(owner)[1]
        if isinstance(owner, Aside):
            found: Cases = self.evaluator.memo.get(f"{self.name}.{head}", self.home, lambda: self._aside(owner))
            return found
        value = self.field(owner)
        if isinstance(value, Item):
            return self.evaluator.item_cases(value, rest)
        if isinstance(value, Outline | Spot) and rest:
            return Cases(getattr(value, rest))
        if value is None and any(head in pair for pair in self.kind.either):
            raise Stopped  # of two fields one is wanted, which is told by itself
        if not isinstance(value, Cases):
            raise CannotBe(f"'{path}' is not given", f"add {owner.name}: …", owner.name)
        return value

    def _aside(self, owner: Aside) -> Cases:
        own = [n for n in owner.needs if self._asks(n, owner.name)]
        self.stop_unless(n for n in owner.needs if n not in own)
        cases = self._reckoned(owner.says, owner.name.replace("_", " "), owner.at)[1]
        self.evaluator.memo.known(f"{self.name}.{owner.name}", cases)
        self.stop_unless(own)
        return cases

    def given(self, path: str) -> bool:
        """Whether a field, a figure or an item's number is there; whether a flag holds; whether a tool is owned."""
        if path.startswith("drawer."):
            return self.evaluator.given(path)
        head, _, rest = path.partition(".")
        owner = self.kind.names[head]
        if isinstance(owner, Flag):
            return holds(self.kind.texts.conditions[owner.says], self)
        if isinstance(owner, FigureSpec):
            return self.has(owner)
        if isinstance(owner, Aside | Inline):
            return True
        value = self.field(owner)
        if isinstance(value, Item) and rest:
            return getattr(value, rest.split(".")[0]) is not None
        return value is not None

    def true(self, path: str) -> bool:
        """Whether a name holds as a condition: given, and not nothing."""
        if not self.given(path):
            return False
        head, _, rest = path.partition(".")
        owner = self.kind.names.get(head)
        if path.startswith("drawer.") or isinstance(owner, Flag | Inline):
            return True
        if isinstance(owner, Field) and not rest:
            value = self.field(owner)
            return not isinstance(value, Cases) or value.usual != 0
        return self.cases(path).usual != 0

    def word(self, path: str) -> str:
        """A field's word, or its item's id."""
        value = self.field(self.kind.names[path])
        return plain(value.id) if isinstance(value, Item) else plain(str(value))

    def tree(self, path: str) -> Node | None:
        """What an inline stands for."""
        owner = self.kind.names.get(path)
        return self.kind.texts.numbers[owner.says] if isinstance(owner, Inline) else None

    def owned(self, kind: str) -> Sequence[float]:
        """Sizes of the tools of a kind in the drawer."""
        return self.evaluator.owned(kind)

    def series(self, path: str) -> Sequence[PartSource]:
        """Each straight and arc of a form of bent wire."""
        return [_BendSource(self, path, bend) for bend in self.field(self.kind.names[path])]

    def told(self, mm: float) -> str:
        """A length in print."""
        return self.evaluator.told(mm)

    @property
    def key(self) -> str:
        """What a range in a text of the kind is called: it is the same for every part of the kind."""
        return self.kind.kind


class _BendSource(PartSource):
    """One straight or arc of a form, and all else of its part."""

    def __init__(self, part: PartSource, path: str, bend: Bend) -> None:
        super().__init__(part.evaluator, part.kind, part.name, part.written, part.home)
        self.path, self.bend = path, bend

    def cases(self, path: str) -> Cases:
        """Its size (inside diameter of an arc) and its degrees."""
        if path == f"{self.path}.size":
            return self.bend.size
        if path == f"{self.path}.degrees":
            return Cases(self.bend.degrees)
        return super().cases(path)

    def given(self, path: str) -> bool:
        """A straight has no degrees."""
        return bool(self.bend.degrees) if path == f"{self.path}.degrees" else super().given(path)

    def true(self, path: str) -> bool:
        """A straight has no degrees."""
        return bool(self.bend.degrees) if path == f"{self.path}.degrees" else super().true(path)
