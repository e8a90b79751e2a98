"""A project with all its versions, and who publishes it."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from sheetgen.base.frozen import Frozen
from sheetgen.base.spelling import bare, suggest
from sheetgen.base.trouble import CannotBe
from sheetgen.model.status import PUBLIC, SEEN

if TYPE_CHECKING:
    from collections.abc import Mapping

    from sheetgen.base.place import Place
    from sheetgen.base.rounding import Rounder
    from sheetgen.model.labels import LabelGrid
    from sheetgen.model.worked.version import WorkedVersion


SHEETS = ("handout", "bench card", "teacher", "templates")
"""The sheets of a version: for the pupil, for the hands in the clay, for the teacher, and to cut up."""

OF_THE_LIBRARY = ("catalogue", "programme")
"""The sheets of all designs together: half a page each, and four classes a side."""

UNITS = ("mm", "in")
"""What lengths are told in: millimetres to a bench step, or inches to sixty-fourths."""

ON_CARD = 3  # numbers in a row of the bench card: as many as one takes in from an arm's length


@dataclass(frozen=True, slots=True)
class Slab:
    """The slab of clay that the studio rolls, and the gap it keeps between pieces and at the edge, mm."""

    width: float
    length: float
    gap: float


@dataclass(frozen=True, slots=True)
class Licence:
    """What may be done with the words and with the pictures, in a few words each, and the address that tells all."""

    text: str = ""
    pictures: str = ""
    link: str = ""


@dataclass(frozen=True, slots=True)
class Shot:
    """A picture of the piece: its file in the project's folder, and who made it."""

    file: str
    credit: str = ""


@dataclass(frozen=True, slots=True)
class Publisher:
    """Who publishes, as the sheets say it.

    `address` is that of the folder in which the site is published, or empty; `labels` the sheet that labels are on.
    `teachers_public`: whether teacher's sheets are published with the others.
    """

    name: str
    about: str = ""
    contact: str = ""
    note: str = ""
    emergency: str = ""
    language: str = "en"
    currency: str = "EUR"
    paper: tuple[str, ...] = ("A4", "Letter")
    address: str = ""
    labels: LabelGrid | None = None
    licence: Licence = Licence()
    teachers_public: bool = False


@dataclass(frozen=True, slots=True)
class Waiver:
    """A rule of common practice that the project waives, and why; `used` where a number of some part broke it."""

    rule: str
    reason: str
    place: Place
    used: bool


@dataclass(frozen=True, slots=True)
class Worked:
    """A project with all its versions; the first is `main`.

    `folder` is where its pictures lie, and `was` what that was called before; `slats` and `cards` say what is owned to
    roll on; `asked` are the ids of the items of stock that it was found to hang on. `other_units` are those in which it
    is worked for pages beside the studio's own, or empty. `status` says who sees it (`STATUS`), and `instead` is the
    design that a retired one leads on to, with its title.
    """

    name: str
    folder: str
    title: str
    revision: str
    date: str
    level: str
    place: Place
    worn_by: str
    worn_at: str
    worn_places: Mapping[str, Place]
    studio: Publisher
    rounder: Rounder
    tags: tuple[str, ...] = ()
    pictures: tuple[Shot, ...] = ()
    versions: Mapping[str, WorkedVersion] = field(default_factory=Frozen)
    waive: tuple[Waiver, ...] = ()
    slab: Slab | None = None
    slats: tuple[float, ...] = ()
    cards: bool = False
    asked: frozenset[str] = frozenset()
    sheets: tuple[str, ...] = SHEETS
    was: tuple[str, ...] = ()
    other_units: str = ""
    status: str = PUBLIC
    instead: tuple[str, str] = ("", "")

    def version(self, called: str) -> WorkedVersion:
        """The version that is printed under a name, however that is spaced. CannotBe for one that there is not."""
        found = next((one for one in self.versions.values() if bare(called) == bare(one.title)), None)
        if found is None:
            titles = [one.title for one in self.versions.values()]
            raise CannotBe(f"there is no version '{called}' of {self.name}", suggest(called, titles))
        return found

    def revised(self, version: WorkedVersion) -> str:
        """The revision as a version's sheets print it."""
        return f"revision {self.revision}{', changed' if version.changed else ''}"

    @property
    def public(self) -> bool:
        """Whether it has a page that everybody may see."""
        return self.status in SEEN

    @property
    def main(self) -> WorkedVersion:
        """The project as its file gives it, no choice changed."""
        return next(iter(self.versions.values()))
