"""Which sheets stand in the build folder as the library is now: of this revision, with these printed numbers."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.base.paths import ours_of
from sheetgen.base.trouble import Troubles
from sheetgen.model.codes import folder_of
from sheetgen.publish.standing import standing
from sheetgen.render.pages import sheet_path
from sheetgen.unchanged import settle

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence
    from pathlib import Path

    from sheetgen.model.project import Stock
    from sheetgen.model.worked import Worked, WorkedVersion


@dataclass(frozen=True, slots=True)
class Published:
    """What was published into a folder: the files of each design, and which designs are as they were then."""

    build: Path
    files: Mapping[str, frozenset[str]]
    well: frozenset[str]

    def stand(self, worked: Worked, version: WorkedVersion, sheets: Sequence[str]) -> bool:
        """Whether the PDFs of these sheets of a version stand for each paper, as the design is now."""
        folder = folder_of(worked, version.name)
        paths = [f"{folder}/{sheet_path(sheet, paper)}" for sheet in sheets for paper in worked.studio.paper]
        return worked.name in self.well and self.files[worked.name].issuperset(paths)

    def folder(self, worked: Worked, version: WorkedVersion) -> Path:
        """Where the sheets of a version lie, or will."""
        return (self.build if worked.public else ours_of(self.build)) / folder_of(worked, version.name)

    def why(self, design: str) -> str:
        """Why sheets of a design do not stand."""
        return "what is published is not as its files are now" if design in self.files else "none of it is published"


def published(root: Path, build: Path, designs: Iterable[str], stock: Stock) -> Published:
    """What stands of these designs, by all that they are made of, and by the files themselves."""
    named = list(designs)
    found = standing(root, build, named)
    there = found.record["projects"]
    settle(found, stock, Troubles())
    files = {name: frozenset((*there[name]["files"], *there[name]["ours"])) for name in named if name in there}
    return Published(build, files, frozenset(found.well))
