"""The styles of a drawing: what its style sheet and its elements say, as plain properties of each element."""

from __future__ import annotations

import functools
import re
from collections import defaultdict
from typing import TYPE_CHECKING, NamedTuple

import tinycss2

from sheetgen.base.trouble import CannotBe

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

LONGEST = 5000  # characters of the style of one element
LONGEST_SHEET = 60_000
MOST_CLASSES = 20
MOST_QUOTED = 300_000  # characters of styles that are more than names and values, and slow to read
MOST_RULED = 100_000  # declarations that rules bring to elements
DEEPEST = 10  # brackets in brackets
PLAIN = re.compile(r"[^\\\"'{}@!/()]*(?:(?:rgb|url)\([\w#%., \t-]*\)[^\\\"'{}@!/()]*)*")
SIMPLE = re.compile(r"(\*|[a-zA-Z][\w-]{0,60})?((?:[.#][\w-]{1,100}){0,3})")
OUTSIDE = {"import": "fetches a style sheet", "font-face": "brings a type face of its own"}
AS_ATTRIBUTES = "save it with its styles as attributes"


class Said(NamedTuple):
    """A property, as it is written."""

    name: str
    value: str
    important: bool = False


class _Rule(NamedTuple):
    tag: str
    names: frozenset[str]
    weight: tuple[int, int, int]
    order: int
    said: tuple[Said, ...]


@functools.lru_cache(1024)
def declared(text: str) -> tuple[Said, ...]:
    """What a style says. Raises CannotBe."""
    if len(text) > LONGEST:
        raise CannotBe("has a style that is too long", AS_ATTRIBUTES)
    if PLAIN.fullmatch(text):
        pairs = (one.partition(":") for one in text.split(";"))
        return tuple(Said(name.strip().lower(), value.strip()) for name, colon, value in pairs if colon)
    _not_too_deep(text)
    return tuple(_declarations(tinycss2.parse_blocks_contents(text, skip_comments=True, skip_whitespace=True)))


def _declarations(found: Iterable[object]) -> Iterator[Said]:
    for one in found:
        if one.type == "declaration":  # type: ignore[attr-defined]  # tinycss2 is not typed
            yield Said(one.lower_name, tinycss2.serialize(one.value).strip(), bool(one.important))  # type: ignore[attr-defined]


def _not_too_deep(text: str) -> None:
    """Raises CannotBe for brackets in brackets: what reads them calls itself for each."""
    deep = 0
    for sign in re.findall(r"[({\[\])}]", text):
        deep += 1 if sign in "({[" else -1 if deep else 0
        if deep > DEEPEST:
            raise CannotBe("has a style that cannot be read", AS_ATTRIBUTES)


class Sheet:
    """The rules of a drawing's style sheets, found by what they ask for."""

    def __init__(self, texts: Iterable[str]) -> None:
        """Raises CannotBe for a rule that fetches, or that cannot be followed here."""
        self._by: dict[str, list[_Rule]] = defaultdict(list)
        self._ruled = self._rules = self._quoted = 0
        whole = list(texts)
        if sum(map(len, whole)) > LONGEST_SHEET:
            raise CannotBe("has a style sheet that is too long", AS_ATTRIBUTES)
        for text in whole:
            _not_too_deep(text)
            for rule in tinycss2.parse_stylesheet(text, skip_comments=True, skip_whitespace=True):
                if rule.type == "at-rule" and rule.lower_at_keyword in OUTSIDE:
                    raise CannotBe(OUTSIDE[rule.lower_at_keyword], "save it as a plain SVG, its text as paths")
                if rule.type != "qualified-rule":
                    raise CannotBe("has a style sheet that cannot be followed", AS_ATTRIBUTES)
                content = tinycss2.parse_blocks_contents(rule.content, skip_comments=True, skip_whitespace=True)
                self._add(tinycss2.serialize(rule.prelude), tuple(_declarations(content)))

    def _add(self, selectors: str, said: tuple[Said, ...]) -> None:
        for selector in selectors.split(","):
            found = SIMPLE.fullmatch(selector.strip())
            if not found or not selector.strip():
                raise CannotBe(f"has a style sheet that asks for '{selector.strip()[:40]}'", AS_ATTRIBUTES)
            names = frozenset(re.findall(r"[.#][\w-]+", found[2]))
            tag = "" if found[1] in {None, "*"} else found[1]
            ids = sum(name.startswith("#") for name in names)
            rule = _Rule(tag, names, (ids, len(names) - ids, int(bool(tag))), self._rules, said)
            self._by[min(names, default=tag)].append(rule)
            self._rules += 1

    def of(self, tag: str, identity: str, classes: str, style: str) -> dict[str, str]:
        """What holds for an element: its rules by their weight, then its own style. Raises CannotBe."""
        own = declared(style) if style else ()
        self._quoted += len(style) if style and not PLAIN.fullmatch(style) else 0
        if self._quoted > MOST_QUOTED:
            raise CannotBe("has too many styles", AS_ATTRIBUTES)
        if not self._by:
            return {one.name: one.value for one in sorted(own, key=lambda one: one.important)}
        listed = classes.split(None, MOST_CLASSES)
        if len(listed) > MOST_CLASSES:
            raise CannotBe("has an element of too many classes", AS_ATTRIBUTES)
        names = {f"#{identity}", *(f".{one}" for one in listed)}
        found = []
        for name in ("", tag, *names):
            for rule in self._by.get(name, ()):
                self._ruled += 1 + len(rule.said)
                if rule.tag in {"", tag} and rule.names <= names:
                    found.append(rule)
        if self._ruled > MOST_RULED:
            raise CannotBe("has too many styles", AS_ATTRIBUTES)
        found.sort(key=lambda rule: (rule.weight, rule.order))
        said = [*(one for rule in found for one in rule.said), *own]
        return {one.name: one.value for one in sorted(said, key=lambda one: one.important)}
