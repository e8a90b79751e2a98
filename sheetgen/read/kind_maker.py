"""One file of a studio's own kind, made into a kind on the engine that all kinds stand on."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any, cast

from sheetgen.base.figure import ROUNDINGS
from sheetgen.base.place import Word
from sheetgen.base.spelling import plain, suggest
from sheetgen.model import kinds as forms
from sheetgen.parts.field import Field
from sheetgen.parts.figure import Aside, FigureSpec, Need, SizeSpec, TakeSpec, ToolSpec, aside, figure
from sheetgen.parts.kind import Part
from sheetgen.parts.reading import Reader, Slip
from sheetgen.parts.template import Template, drawn_from
from sheetgen.read.forms import FormT, form
from sheetgen.read.kind_fields import own_field
from sheetgen.read.kind_outlines import template
from sheetgen.read.measures import Measures
from sheetgen.read.yaml_words import Mapping, Sequence

if TYPE_CHECKING:
    from collections.abc import Collection, Iterator

    from sheetgen.base.figure import Rounding
    from sheetgen.base.place import Place
    from sheetgen.base.trouble import Troubles

TOP = (
    "kind", "about", "fields", "either", "asides", "figures", "needs", "sizes", "takes", "tools", "outline", "dries",
    "hazards", "reshaped", "closes",
)  # fmt: skip
UNITS = (
    "mm", "mm²", "mm³", "cm³", "mL", "g", "ct", "min", "°C", "g/cm³", "g/mL", "°", "US", "UK", "ISO", "JP",
)  # fmt: skip
PAIR = 2
MOST_NAMES = 150


class KindMaker:
    """One file: its shape first, then every text by the engine, so that all its faults are told in one run."""

    def __init__(self, written: Mapping, troubles: Troubles, cautions: Collection[str]) -> None:
        self.troubles, self.cautions = troubles, cautions
        self.top: dict[str, Any] = {str(k): v for k, v in written.items()}
        self.keys: dict[str, Word] = {}  # where each name stands
        self.lost: set[str] = set()  # names whose own lines are in trouble: nobody is told that they are not known
        self.measures = Measures("", troubles)
        for key in written:
            if key not in TOP:
                inner = "it belongs to outline: indent it" if key in forms.WrittenOutline.model_fields else ""
                troubles.add(f"there is no field '{key}' here", key.place, inner or suggest(str(key), TOP))
        self.name = self._plain_word("kind")
        self.about = self._plain_word("about")
        for needed, word in (("kind", self.name), ("about", self.about)):
            if needed not in self.top:
                troubles.add(f"'{needed}' is missing", written.place, f"add {needed}: …")
            elif word and needed == "kind" and not re.fullmatch(r"[^\W\d][\w -]*", word):
                troubles.add(f"a kind cannot be called '{word}'", word.place, "letters and spaces, such as paper cone")

    def made(self) -> type[Part]:
        """The kind. It is whole only if no trouble was noted."""
        about, _, more = str(self.about or "").partition(". ")
        space: dict[str, Any] = {"about": about, "__doc__": more}
        space |= self._fields() | self._asides() | self._figures()
        space |= {
            "needs": tuple(self._need(one) for one in self._list("needs", forms.WrittenNeed)),
            "sizes": tuple(map(_size, self._list("sizes", forms.WrittenSize))),
            "takes": tuple(self._take(one) for one in self._list("takes", forms.WrittenTake)),
            "tools": tuple(ToolSpec(**_given(one)) for one in self._list("tools", forms.WrittenTool)),
            "dries": self._plain_word("dries") or "",
            "hazards": tuple(self._hazards()),
            "either": tuple(self._either(space)),
            "reshaped": self._yes(self._plain_word("reshaped"), "reshaped"),
            "closes": self._yes(self._plain_word("closes"), "closes"),
        }
        templates = list(self._templates(space))
        kind: type[Part] = type("".join(filter(str.isalnum, str(self.name).title())), (Part,), space)
        if templates:
            kind.flat = drawn_from(templates, lambda: kind)
        kind.kind = str(self.name)
        self._checked(kind, templates)
        return kind

    def _checked(self, kind: type[Part], templates: list[Template]) -> None:
        """Every text read by the engine; what it says is told at its place in the file."""
        slips: list[Slip] = []
        kind.declared(slips)
        reader = Reader(kind, slips)
        reader.texts = kind.texts
        for one in templates:
            for text, in_unit, when in one.texts():
                with reader.held():
                    reader.number(text, in_unit, "its outline", when)
        for slip in slips:
            if not self._follows(slip):
                helped = re.sub(r"when='([^']*)'", r"when: \1", slip.help)
                self.troubles.add(slip.message, self._place(slip), helped)
        for owner in kind.names.values():
            item = owner.role == "made of" if isinstance(owner, Field) else False
            if item and all(plain(taken.item) != owner.attribute for taken in kind.takes) and "takes" not in self.lost:
                told = f"it is made of '{owner.name}', and takes none of it from stock"
                helped = f"add takes: - item: {owner.name}, and its amount: count × …"
                self.troubles.add(told, self.keys[owner.attribute].place, helped)

    def _follows(self, slip: Slip) -> bool:
        """Whether a slip only follows from a name whose own lines are in trouble."""
        told = slip.message
        named = any(f"'{name}'" in told or f"'{name}." in told for name in self.lost)
        return named or (bool(self.lost) and "nothing in it" in told)

    def _place(self, slip: Slip) -> Place | None:
        if isinstance(slip.text, Word):
            if slip.wrong is None:
                return slip.text.place
            at, width = max(0, slip.wrong.at), slip.wrong.width
            if slip.text.block:  # what runs over an end of a line is shown by its first word
                width = len((slip.text[at : at + width].split() or [" "])[0])
            return slip.text.place_of(at, width)
        key = self.keys.get(slip.text) or self.name
        return key.place if key else None

    # Its lines

    def _plain_word(self, key: str) -> Word | None:
        """A line of plain words."""
        found = self.top.get(key)
        if found is None or (isinstance(found, Word) and found.strip()):
            return found
        if not isinstance(found, Word):
            self.troubles.add(f"'{key}' wants plain words", found.place, "write it on one line")
        return None  # a line with nothing after it is told as the file is read

    def _list(self, key: str, model: type[FormT]) -> list[FormT]:
        """A list of entries of one form."""
        found = self.top.get(key, [])
        if isinstance(found, Mapping):
            found = [found]
        if not isinstance(found, list):
            if found.strip():
                self.troubles.add(f"'{key}' wants a list", found.place, "a line with a dash for each")
            self.lost.add(key)
            return []
        return [one for entry in found if (one := self._form(model, entry, key)) is not None]

    def _form(self, model: type[FormT], entry: object, name: str) -> FormT | None:
        """An entry's form; None with its troubles noted."""
        if isinstance(entry, Mapping) and entry:
            found = form(model, entry, self.troubles)
        else:
            found = None
            if isinstance(entry, Word | Sequence | Mapping) and (not isinstance(entry, Word) or entry.strip()):
                told = f"'{name}' wants lines of its own"
                self.troubles.add(told, entry.place, "indent name: value lines below it")
        if found is None:
            self.lost.add(name)
        return found

    def _named(self, group: str, model: type[FormT]) -> Iterator[tuple[str, Word, FormT]]:
        """The entries of a group by their names in arithmetic."""
        found = self.top.get(group)
        if found is None:
            return
        if not isinstance(found, Mapping):
            if not isinstance(found, Word) or found.strip():
                self.troubles.add(
                    f"'{group}' wants names with lines of their own",
                    found.place,
                    f"write under {group}: name: …, its own lines below it",
                )
            return
        for key, entry in found.items():
            name = plain(key)
            if not re.fullmatch(r"[^\W\d]\w*", name) or hasattr(Part, name) or name.startswith("_"):
                told = f"'{key}' cannot be a name here"
                helped = "letters, digits and spaces, a letter first"
                if hasattr(Part, name):
                    helped = f"every part has a '{key}': indent it, if it belongs above, or take another word"
                self.troubles.add(told, key.place, helped)
                self.lost.add(name)
            elif name in self.keys:
                told = f"'{key}' is named twice; first at {self.keys[name].place}"
                self.troubles.add(told, key.place, "give one of them another name")
                self.lost.add(name)
            elif len(self.keys) == MOST_NAMES:
                self.troubles.add("a kind of so many names", key.place, f"at most {MOST_NAMES}")
                return
            else:
                self.keys[name] = key
                one = self._form(model, entry, name)
                if one is not None:
                    yield name, key, one

    def _fields(self) -> dict[str, Field[Any]]:
        found: dict[str, Field[Any]] = {}
        for name, key, one in self._named("fields", forms.WrittenField):
            made = own_field(key, one, self.measures)
            if made is None:
                self.lost.add(name)
            else:
                found[name] = made
        return found

    def _asides(self) -> dict[str, Aside]:
        return {n: aside(self._unit(one.unit), one.value) for n, _, one in self._named("asides", forms.WrittenAside)}

    def _figures(self) -> dict[str, FigureSpec]:
        found: dict[str, FigureSpec] = {}
        for name, _, one in self._named("figures", forms.WrittenFigure):
            rounding = str(one.round or "fine")
            if one.round is not None and rounding not in ROUNDINGS:
                told = f"there is no rounding '{rounding}'"
                self.troubles.add(told, one.round.place, suggest(rounding, ROUNDINGS))
            found[name] = figure(
                str(one.label),
                self._unit(one.unit),
                one.value,
                cast("Rounding", rounding),
                about=str(one.about or ""),
                when=one.when or "",
                needs=tuple(map(self._need, one.needs)),
                at=_field_name(one.at),
                role=one.role or "",
            )
        return found

    def _unit(self, word: Word | None) -> str:
        """A unit that a sheet prints; none for a bare number."""
        if word is None or word in UNITS or re.fullmatch(r"[A-Z]{3}", word):
            return str(word or "")
        told = f"one of {', '.join(UNITS)}; a sheet prints the studio's own"
        self.troubles.add(f"a figure cannot be in '{word}'", word.place, told)
        return ""

    def _need(self, one: forms.WrittenNeed) -> Need:
        given = _given(one)
        given |= {"holds": given.pop("need"), "says": given.pop("say"), "at": _field_name(one.at)}
        return Need(**given | {"doubt": self._yes(one.doubt, "doubt")})

    def _take(self, one: forms.WrittenTake) -> TakeSpec:
        name = plain(one.item)
        if name not in self.keys:
            fields = self.top.get("fields")
            known = [str(k) for k in fields] if isinstance(fields, Mapping) else []
            helped = suggest(str(one.item), known)
            self.troubles.add(f"there is no field '{one.item}' to take from", one.item.place, helped)
            self.lost.add("takes")
        if one.blank and len(one.blank) != PAIR:
            self.troubles.add("a blank has two sides", one.blank[0].place, "blank: [long, wide]")
        blank = (one.blank[0], one.blank[1]) if len(one.blank) == PAIR else None
        return TakeSpec(**_given(one) | {"item": name, "blank": blank})

    def _either(self, space: dict[str, Any]) -> Iterator[tuple[str, str]]:
        found = self.top.get("either", [])
        for pair in found if isinstance(found, list) and any(isinstance(one, list) for one in found) else [found]:
            names = [plain(word) for word in pair if isinstance(word, Word)] if isinstance(pair, list) else []
            if names and len(names) == PAIR and all(getattr(space.get(n), "optional", False) for n in names):
                yield names[0], names[1]
            elif pair:
                told = "'either' wants two fields that may be left out"
                self.troubles.add(told, pair.place, "either: [inside, former], each with optional: yes")

    def _hazards(self) -> Iterator[str]:
        found = self.top.get("hazards", [])
        for word in found if isinstance(found, list) else [found]:
            if not isinstance(word, Word) or word not in self.cautions:
                known = [str(c) for c in self.cautions]
                told = f"the caution '{word}' is not known" if isinstance(word, Word) else "a caution is a name"
                self.troubles.add(told, word.place, suggest(str(word), known))
            else:
                yield str(word)

    def _templates(self, space: dict[str, Any]) -> Iterator[Template]:
        rolled = next((n for n, f in space.items() if isinstance(f, Field) and f.role == "rolled to"), "")
        for one in self._list("outline", forms.WrittenOutline):
            found = template(one, rolled, self.troubles)
            if found is not None:
                yield found

    def _yes(self, word: Word | None, name: str) -> bool:
        if word is not None and word not in {"yes", "no"}:
            self.troubles.add(f"'{name}' is yes or no, not '{word}'", word.place, "write yes or no")
        return word == "yes"


def _given(one: Any) -> dict[str, Any]:  # noqa: ANN401 - any of the forms
    """The lines of a form that are there; words stay words, which know their places."""
    return {name: value for name, value in one if value is not None}


def _size(one: forms.WrittenSize) -> SizeSpec:
    return SizeSpec(**_given(one) | {"figure": Word(plain(one.figure), one.figure.place, one.figure.block)})


def _field_name(word: Word | None) -> str:
    """A field as it is written, however its words are parted."""
    if word is None:
        return ""
    return Word(plain(word).replace("_", " "), word.place, word.block)
