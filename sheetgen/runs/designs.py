"""The designs of a run of orders: each worked once, and once more for every way in which it is ordered otherwise."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING, NamedTuple

from sheetgen.base.frozen import Frozen
from sheetgen.base.spelling import plain
from sheetgen.base.trouble import Troubles
from sheetgen.editions import Editions
from sheetgen.pipeline import work_one
from sheetgen.read.library import read_library
from sheetgen.runs.to_order import printed_names

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping
    from pathlib import Path

    from sheetgen.base.place import Word
    from sheetgen.base.trouble import Trouble
    from sheetgen.model.project import Filed, Library
    from sheetgen.model.worked import Worked, WorkedVersion
    from sheetgen.pipeline import Outcome

Choices = tuple[tuple["Word", "Word"], ...]


class Refused(NamedTuple):
    """Why a choice does not pass: at its name (0) or what is chosen (1), by the name; else the trouble's place tells.

    A trouble is kept for all lines that choose so, and stands at the words of the first of them.
    """

    trouble: Trouble
    choice: str = ""
    word: int = 1


@dataclass(slots=True)
class Designs:
    """The designs of a library as orders ask for them; what is wrong with one is told once, in the outcome.

    `published` is the library by whose numbers a revision is judged, where this one is of a class of its own.
    """

    root: Path
    library: Library
    outcome: Outcome
    as_written: dict[str, Worked | None] = field(default_factory=dict)
    published: Library | None = None
    otherwise: dict[tuple[str, ...], tuple[Worked | None, tuple[Refused, ...]]] = field(default_factory=dict)

    def design(self, name: str) -> Worked | None:
        """A design as its file has it, versions marked whose numbers are no longer those of their revision."""
        if name not in self.as_written:
            self.as_written[name] = self._worked(name)
        return self.as_written[name]

    def chosen(
        self, worked: Worked, version: WorkedVersion, choices: Choices
    ) -> tuple[Worked | None, tuple[Refused, ...]]:
        """One version of a design with other choices, and its errors; None where it does not pass with them."""
        key = (worked.name, version.name, *(f"{plain(name)}={plain(value)}" for name, value in sorted(choices)))
        if key not in self.otherwise:
            found, troubles = work_one(
                _filed(self.library, worked.name), self.library, self.outcome.faults, dict(choices), version.name
            )
            if found is not None:  # the design whole, so that its sheets still say which version it is
                found = replace(worked, versions=Frozen({**worked.versions, version.name: found.main}))
            self.otherwise[key] = found, tuple(_refused(one, choices) for one in troubles.errors)
        return self.otherwise[key]

    def _worked(self, name: str) -> Worked | None:
        if name not in {filed.name for filed in self.library.projects}:
            return None
        found, troubles = work_one(_filed(self.library, name), self.library, self.outcome.faults)
        self.outcome.troubles.extend(troubles)
        if found is None:
            self.outcome.failed.append(name)
            return None
        self.outcome.worked.append(found)
        return self._marked(found)

    def _marked(self, found: Worked) -> Worked:
        """With its versions marked whose published numbers are no longer those of their revision."""
        editions = Editions(self.root)
        if self.published is None:
            return editions.of(found, self.outcome.troubles)[0]
        as_published, _ = work_one(_filed(self.published, found.name), self.published, self.outcome.faults)
        if as_published is None:
            return found
        marked = editions.of(as_published, self.outcome.troubles)[0].versions
        versions = {name: replace(one, changed=marked[name].changed) for name, one in found.versions.items()}
        return replace(found, versions=Frozen(versions))


def _filed(library: Library, name: str) -> Filed:
    return next(filed for filed in library.projects if filed.name == name)


def _refused(trouble: Trouble, choices: Choices) -> Refused:
    for pair in choices:
        for nth, word in enumerate(pair):
            if trouble.place == word.place:
                return Refused(trouble, plain(pair[0]), nth)
    return Refused(trouble)


def differing(version: WorkedVersion, choices: Choices) -> Mapping[str, str]:
    """Those choices that are other than the version's own, by their names."""
    own = {plain(name): plain(value) for name, value in version.choices.items()}
    return {str(name): str(value) for name, value in choices if own.get(plain(name)) != plain(value)}


def own_of(version: WorkedVersion, choices: Iterable[str]) -> tuple[tuple[str, str], ...]:
    """What a version has by itself of each of some choices, by the name that they are asked for."""
    own = {plain(name): str(value) for name, value in version.choices.items()}
    return tuple((name, own.get(plain(name), "")) for name in sorted(choices))


def versions_of(root: Path) -> dict[str, list[str]]:
    """The printed names of each design's versions; what is wrong with the library is told where its designs are used.

    Of a design in trouble there is none.
    """
    library = read_library(root, Troubles())
    versions = {filed.name: printed_names(filed.project) for filed in library.projects} if library else {}
    return versions | {name: [] for name in (library.failed if library else ())}
