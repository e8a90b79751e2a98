"""A kind's texts read when its class is made: names, units, conditions, roles, circles, and what may be left out."""

from __future__ import annotations

import re
from contextlib import contextmanager
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING, Any, NoReturn

from sheetgen.base.arithmetic import read, read_condition
from sheetgen.base.bend import Bend
from sheetgen.base.binding import Named, become, bind, bind_condition
from sheetgen.base.dimension import (
    ANY,
    BARE,
    COUNT,
    DENSITY,
    LENGTH,
    MASS,
    TEMPERATURE,
    TIME,
    Dimension,
    Unit,
    said,
    spelled,
    unit,
)
from sheetgen.base.material import NUMBERS, TOOL_KINDS, Item
from sheetgen.base.outline import Outline
from sheetgen.base.place import Word
from sheetgen.base.spelling import plain, suggest
from sheetgen.base.spot import Spot
from sheetgen.base.tree import Node, Wrong
from sheetgen.parts.claims import EVERYTHING, Claims, unguarded
from sheetgen.parts.field import Field
from sheetgen.parts.figure import Aside, FigureSpec, Flag, Inline

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from sheetgen.parts.figure import Need
    from sheetgen.parts.kind import Part

UNITS = {DENSITY: "g/cm³", LENGTH: "mm", COUNT: "", MASS: "g", TIME: "min", TEMPERATURE: "°C"}
OWN: dict[type, dict[str, str]] = {
    Outline: {"width": "mm", "height": "mm", "area": "mm²", "room": "mm"}, Spot: {"x": "mm", "y": "mm"},
}  # fmt: skip
"""What an outline and a spot say of themselves."""
BRACES = re.compile(r"\{([^{}]+)\}")
ROLES = {
    "made of": "the clay, wire or sheet that the part is; only what is made of clay goes through the kiln",
    "made in": "the clay that a hole is drilled in",
    "holds": "the stone that is set in it",
    "strung": "beads on it",
    "strung on": "the wire or thread that beads are on",
    "bound with": "the wire or thread that holds a bundle together",
    "bonds": "the adhesive that it is set with",
    "closed by": "the ring, link or clasp that closes a chain",
    "goes into": "the cap or the bead that an end goes into",
    "lets through": "the wire that passes through it",
    "seen through": "the part whose opening it is seen through",
    "hollow of": "the part that it fills",
    "drilled in": "the part that it is drilled in",
    "hangs from": "the part that it hangs in",
    "link of": "the link that a chain is made of",
    "ring of": "the ring that a chain is made of",
    "slit as": "how a strip is slit",
    "grain": "how the grain or nap runs",
    "texture": "which texture its outer face bears",
    "rolled to": "how thick the clay is as it is cut",
    "rolled first": "how thick it is rolled before a texture is pressed in",
    "clay mass": "the clay that one piece takes; whatever is made of clay has one",
    "clay needed": "how thick the clay must be where it is drilled",
    "keeps clear": "what must stay between a hole and the edge",
    "adds": "what a clasp adds to a chain",
    "rings wanted": "how many rings a chain needs",
    "links wanted": "how many links a chain needs",
    "opens": "a finished opening through it, for air or for a wire",
    "vent": "a finished opening that lets the air out of its own hollow",
    "vent of": "the part whose hollow it lets the air out of",
    "open at both ends": "how wide it is inside, open at both its ends",
    "domed": "how high it is domed, and so open at one end",
    "covers": "how wide an end it can close",
    "ring inside": "the inside of a ring, where other things meet",
    "reaches round": "the least inside of a ring that reaches round the edge beside it",
    "on a plug": "the inside that it is finished to, where a plug may hold it in the fire",
    "metal mass": "what one piece weighs when it is finished",
    "limp": "how long the shortest piece hangs of what gives way, and so goes through the cylinder gathered",
    "span": "how far it lies free between its supports in the fire",
    "drilled with": "the drill that it is opened with",
    "begun with": "the smaller drill that it is begun with",
}
"""What a field or figure may do; lists, drying, firing, drilling and the rules of the bench ask for roles."""


class Slip(TypeError):
    """A fault of what a kind declares: `text` is the text or the name to blame, `wrong` what is wrong within a text."""

    def __init__(self, where: str, message: str, help: str = "", text: str = "", wrong: Wrong | None = None) -> None:  # noqa: A002
        lines = [f"{where}: {message}"]
        if wrong is not None:
            lines += [f"    {text}", f"    {' ' * wrong.at}{'^' * wrong.width}"]
        super().__init__("\n".join([*lines, *([help] if help else [])]))
        self.message, self.help, self.text, self.wrong = message, help, text, wrong


@dataclass(slots=True)
class Texts:
    """Every text of a kind by itself: bound trees of numbers, and conditions."""

    numbers: dict[str, Node] = field(default_factory=dict)
    conditions: dict[str, Node] = field(default_factory=dict)
    units: dict[str, str] = field(default_factory=dict)


class KindScope:
    """The names that a kind's texts may use."""

    def __init__(self, names: dict[str, Any], each: str = "") -> None:
        self.all, self.in_list = names, each
        self._known: dict[str, Named] = {}

    def named(self, path: str) -> Named:
        """A field, a figure, what an item of stock says of itself."""
        if path not in self._known:
            self._known[path] = self._named(path)
        return self._known[path]

    def forget(self, name: str) -> None:
        """A name whose unit turned out to be another."""
        self._known.pop(name, None)

    def _named(self, path: str) -> Named:
        head, _, rest = path.partition(".")
        owner = self.all.get(head)
        if owner is None:
            raise Wrong(f"'{path}' is not known", -1, 1, suggest(path, [k for k in self.all if not k.startswith("_")]))
        if rest in {"low", "high", "usual"}:
            return self.named(head)
        if isinstance(owner, FigureSpec | Aside):
            self._no(rest, path)
            return Named(unit(owner.unit), optional=bool(getattr(owner, "when", "")))
        if isinstance(owner, Inline):
            return Named(None, tree=read(owner.says))
        if isinstance(owner, Flag):
            return Named(None, "condition")
        return self._field(owner, rest, path)

    def _field(self, owner: Field[Any], rest: str, path: str) -> Named:  # noqa: PLR0911 - one a sort of field
        sort = owner.sort
        if isinstance(sort, Dimension):
            self._no(rest, path)
            return Named(unit(unit_of(owner)), optional=owner.optional)
        if isinstance(sort, tuple):
            return Named(None, "words", tuple(plain(str(w)) for w in sort))
        if sort is Bend:
            if self.in_list == owner.attribute and rest in {"size", "degrees"}:
                return Named(unit("mm") if rest == "size" else (), optional=rest == "degrees")
            return Named(None, "list")
        if isinstance(sort, type) and issubclass(sort, Item):
            below, _, end = rest.partition(".")
            if not rest:
                return Named(None, "item", optional=owner.optional)
            known = NUMBERS[sort.__name__]
            if below not in known or end not in {"", "low", "high", "usual"}:
                some = [f"{owner.attribute}.{k}" for k in known]
                raise Wrong(f"a {sort.__name__.lower()} has no '{below}'", -1, 1, suggest(path, some))
            told, may_lack = known[below]
            return Named(unit(told), optional=may_lack)
        if rest and rest in (own := OWN.get(sort, {})):
            return Named(unit(own[rest]), optional=owner.optional)
        return Named(None, "place", optional=owner.optional)

    @staticmethod
    def _no(rest: str, path: str) -> None:
        if rest:
            raise Wrong(f"'{path}' is not known: a number has low, high and usual", -1, 1)

    def same(self, path: str, word: str) -> None:
        """A field of a few words is one of them."""
        found = self.named(path)
        if found.what == "words" and word not in found.words:
            raise Wrong(f"'{path}' is never '{word}'", -1, 1, "one of: " + ", ".join(found.words))

    def each(self, path: str) -> KindScope:
        """The names inside a sum over a form of bent wire."""
        if not isinstance(self.all.get(path), Field):
            raise Wrong(f"'{path}' is no list", -1, 1)
        return KindScope(self.all, path)

    def tools(self) -> Iterable[str]:
        """What a drawer may hold."""
        return TOOL_KINDS


def unit_of(owner: Field[Any]) -> str:
    """The unit that a field's number is in."""
    return UNITS[owner.sort] if isinstance(owner.sort, Dimension) else ""


def blamed(kind: type[Part], where: str, text: str, wrong: Wrong) -> Slip:
    """A fault within a text: the text, a caret, and the likely mend."""
    return Slip(f"{kind.__name__}.{where}", wrong.message, wrong.help, text, wrong)


class Reader:
    """Reads the texts of one kind; slips are raised, or gathered."""

    def __init__(self, kind: type[Part], slips: list[Slip] | None) -> None:
        self.kind, self.names, self.slips = kind, kind.names, slips
        self.scope = KindScope(kind.names)
        self.texts = Texts()
        self.claims = Claims(kind.names, kind.either)

    @contextmanager
    def held(self) -> Iterator[None]:
        """Slips are gathered where somebody gathers them, so that all of them are told at once."""
        try:
            yield
        except Slip as slip:
            if self.slips is None:
                raise
            self.slips.append(slip)

    def number(self, text: str, wanted: str | None, where: str, when: str = "") -> None:
        """A text that comes to a number of a unit."""
        sure = EVERYTHING if when == "*" else self.claims.of(self.condition(when, where))
        try:
            tree, comes = bind(read(text), self.scope, strict=True)
            if (
                wanted == ""
                and comes not in {ANY, BARE}
                and isinstance(owner := self.names.get(where), FigureSpec | Aside)
            ):
                owner.unit = spelled(comes)  # what follows from it is not told too
                self.scope.forget(where)
                _no_unit(tree, comes)
            if wanted is not None:
                become(tree, comes, unit(wanted), strict=True)
            unguarded(tree, self.names, sure, self.claims)
        except Wrong as wrong:
            raise blamed(self.kind, where, text, wrong) from None
        self.texts.numbers[text] = tree
        self.texts.units[text] = wanted if wanted is not None else "" if comes == ANY else spelled(comes)

    def condition(self, text: str, where: str) -> Node | None:
        """A condition's text."""
        if not text:
            return None
        try:
            tree = self._condition(text)
        except Wrong as wrong:
            raise blamed(self.kind, where, text, wrong) from None
        return tree

    def _condition(self, text: str) -> Node | None:
        if not text:
            return None
        if text not in self.texts.conditions:
            self.texts.conditions[text] = bind_condition(read_condition(text), self.scope, strict=True)
        return self.texts.conditions[text]

    def words(self, text: str, where: str, when: str = "") -> None:
        """A text with numbers in braces."""
        for match in BRACES.finditer(text):
            inner = match[1].strip()
            if inner.endswith(".name") or _is_words(self.names.get(inner)):
                continue
            if isinstance(text, Word):
                inner = Word(inner, text.place_of(match.start(1), len(inner)))
            self.number(inner, None, f"{where}, in braces", when)

    def need(self, one: Need, where: str) -> None:
        """A need's condition, its texts, and the numbers that would do."""
        if one.each:
            whole, self.scope = self.scope, self.scope.each(one.each)
            self.need(replace(one, each=""), where)
            self.scope = whole
            return
        self.condition(one.when, where)
        if one.holds:
            self.condition(one.holds, where)
        if one.at and one.at not in {f.name for f in self.names.values() if isinstance(f, Field)} | {"kind"}:
            told = f"there is no field '{one.at}' to blame"
            raise Slip(f"{self.kind.__name__}, {where}", told, suggest(one.at, self.kind.fields()), one.at)
        for text in (one.least, one.most):
            if text:
                self.number(text, None, where, one.when)
        for text in (one.says, one.help):
            self.words(text, where, one.when)


def _is_words(owner: Any) -> bool:  # noqa: ANN401 - whatever a kind declares
    return isinstance(owner, Field) and not isinstance(owner.sort, Dimension | type)


def _no_unit(tree: Node, comes: Unit) -> NoReturn:
    raise Wrong(f"comes to {said(comes)}, and no unit is told", tree.at, tree.width, f"unit: {spelled(comes)}")
