"""Something wrong or doubtful: where, what was found, what would help."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING, Literal

from sheetgen.base.record import Record

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from sheetgen.base.place import Place

Severity = Literal["error", "warning"]
PROJECT = "/project.yaml"
"""How the name of a project's own file ends."""
FIRST_MEND = "first mend"
"""How the help begins of what only follows from another trouble."""
MOST_TOLD = 100
"""Troubles of one file that are told one by one: who has read so many mends those first."""
SPACES = dict.fromkeys("\u00a0\u2009\u202f", " ") | {"\u2060": ""}


def printable(line: str) -> str:
    """A line for a terminal: a name or a word of a file may hold what would move it about."""
    return line if line.isprintable() else "".join(c if c.isprintable() else SPACES.get(c, "·") for c in line)


@dataclass(frozen=True, slots=True)
class Trouble:
    """One fault, or one doubt, at one place. What is refused as common practice names its `rule`, to be waived by."""

    message: str
    place: Place | None = None
    help: str = ""
    severity: Severity = "error"
    rule: str = ""

    @property
    def follows(self) -> bool:
        """Whether it only follows from a trouble that is told at its own place."""
        return self.help.startswith(FIRST_MEND)

    def __str__(self) -> str:
        head = f"{self.place}: " if self.place else ""
        lines = [f"{head}{self.severity}: {self.message}".replace("\n", " ")]
        if self.place and (text := self.place.source.line(self.place.line)).strip():
            lines += _excerpt(text, self.place)
        lines += [f"   used at {use}" for use in (self.place.used_at if self.place else ())]
        if self.help:
            lines.append(f"   help: {self.help}")
        return "\n".join(map(printable, lines))


def refused(rule: str, message: str, place: Place | None, help: str, severity: Severity = "error") -> Trouble:  # noqa: A002
    """What common practice refuses, and a project may waive by the name of the rule; what nobody may waive has none."""
    waiver = [f"or, if you know better, waive: {{{rule}: your reason}}"] if rule else []
    return Trouble(message, place, ", ".join([*filter(None, [help]), *waiver]), severity, rule)


def _excerpt(text: str, place: Place, most: int = 100) -> list[str]:
    """The line and a row of carets under the word; a long line is shown round the word."""
    start = 0 if place.column <= most - 20 else place.column - 40
    shown = "".join(c if c.isprintable() else " " for c in text[start : start + most])
    caret = max(0, place.column - 1 - start)
    width = max(1, min(place.width, len(shown) - caret))
    number = f"{place.line:5d} | "
    return [f"{number}{shown}".rstrip(), f"{'':5} | {'':{caret}}{'^' * width}"]


class CannotBe(ValueError):
    """A number that cannot be made; `field` names the field to mend, if one is to blame."""

    def __init__(self, message: str, help: str = "", field: str = "") -> None:  # noqa: A002 - the word a reader sees
        super().__init__(message)
        self.message = message
        self.help = help
        self.field = field


class Misplaced(Exception):
    """A trouble found where only an exception gets out, such as in a theme's file."""

    def __init__(self, trouble: Trouble) -> None:
        super().__init__(trouble.message)
        self.trouble = trouble


class KindFault(Exception):
    """A kind of part that cannot be made; the message is for its author: file and line, the text and a caret."""


@dataclass(slots=True)
class Troubles:
    """All troubles of one run, each once, in the order of the files: what is shared, the projects, then tables."""

    found: list[Trouble] = field(default_factory=list)
    _known: set[Trouble] = field(default_factory=set, init=False, compare=False, repr=False)

    def add(self, message: str, place: Place | None = None, help: str = "", severity: Severity = "error") -> None:  # noqa: A002
        """Note one trouble."""
        self.extend([Trouble(message, place, help, severity)])

    def extend(self, troubles: Iterable[Trouble]) -> None:
        """Note several; what is already noted stays once."""
        if len(self._known) != len(self.found):  # somebody took some away again
            self._known = set(self.found)
        for trouble in troubles:
            if trouble not in self._known:
                self._known.add(trouble)
                self.found.append(trouble)

    @property
    def errors(self) -> list[Trouble]:
        """Those that stop a project."""
        return [t for t in self.found if t.severity == "error"]

    def __iter__(self) -> Iterator[Trouble]:
        def order(trouble: Trouble) -> tuple[bool, bool, str, int, int]:
            place = trouble.place
            if place is None:
                return False, False, "", 0, 0
            name, of_a_table = place.source.name, isinstance(place.source, Record)
            return of_a_table, name.endswith(PROJECT), name, place.line, place.column  # causes before what they lead to

        return iter(sorted(self.found, key=order))

    def __len__(self) -> int:
        return len(self.found)

    def keep_causes(self) -> None:
        """Let go of what only follows from a trouble that is told at its own place."""
        self.found = [one for one in self.found if not one.follows]

    def gathered(self) -> list[Trouble]:
        """Those in their order; what goes wrong at several uses of one thing is one, and names every use."""
        found: dict[Trouble, list[Place]] = {}
        for trouble in self:
            place = trouble.place
            bare = replace(trouble, place=replace(place, used_at=())) if place else trouble
            found.setdefault(bare, []).extend(place.used_at if place else ())
        return [
            replace(one, place=replace(one.place, used_at=tuple(uses))) if one.place and uses else one
            for one, uses in found.items()
        ]


def cut(troubles: Iterable[Trouble]) -> Iterator[Trouble]:
    """Troubles of which no file has too many; how many more it has is told where the first of those stands.

    Of a table every line is told: each is another order, and somebody waits for it.
    """
    told: Counter[str] = Counter()
    more: dict[str, list[Trouble]] = {}
    for trouble in troubles:
        name = trouble.place.source.name if trouble.place else ""
        told[name] += 1
        of_table = trouble.place is not None and trouble.place.source.by_line
        if told[name] <= MOST_TOLD or of_table:
            yield trouble
        else:
            more.setdefault(name, []).append(trouble)
    for left in more.values():
        severity: Severity = "error" if any(one.severity == "error" for one in left) else "warning"
        yield Trouble(f"{len(left)} more troubles from here on", left[0].place, "mend those above first", severity)
