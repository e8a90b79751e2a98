"""The studio's sheet of labels: one that does not lie on its paper is told with the sum, as are words that say none."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest

from sheetgen.base.trouble import Troubles
from sheetgen.read.library import read_library

if TYPE_CHECKING:
    from sheetgen.model.labels import LabelGrid

HERE = Path(__file__).parent / "labels"


def read(libraries: Any, folder: Path, labels: str) -> tuple[LabelGrid | None, Troubles]:
    library = libraries.Library(folder)
    library.write("studio.yaml", libraries.STUDIO + labels)
    troubles = Troubles()
    found = read_library(library.root, troubles)
    return found.labels if found else None, troubles


def cases(kind: str) -> list[Any]:
    return [pytest.param(path, id=path.stem) for path in sorted((HERE / kind).glob("*.yaml"))]


@pytest.mark.parametrize("path", cases("wrong"))
def test_a_sheet_of_labels_that_there_cannot_be_is_told(path: Path, libraries: Any, tmp_path: Path) -> None:
    """`# says:` is what must stand in the troubles; each stands at a line of the studio's file, and helps."""
    text = path.read_text("utf-8")
    grid, troubles = read(libraries, tmp_path, text)
    assert grid is None
    assert troubles.errors
    for trouble in troubles.errors:
        assert trouble.place
        assert trouble.place.source.name == "projects/studio.yaml"
        assert "labels" in trouble.place.source.line(trouble.place.line)
        assert trouble.help
    told = "\n".join(map(str, troubles.errors))
    for words in text.splitlines()[0].removeprefix("# says: ").split(" | "):
        assert words in told


@pytest.mark.parametrize("path", cases("honest"))
def test_a_sheet_of_labels_that_looks_like_it_is_read(path: Path, libraries: Any, tmp_path: Path) -> None:
    """`# is:` how many, and where the last one begins, in mm, reckoned by hand."""
    text = path.read_text("utf-8")
    grid, troubles = read(libraries, tmp_path, text)
    assert not troubles.errors
    assert grid
    right, down = (round(mm, 4) for mm in grid.spot(grid.many - 1))
    assert text.splitlines()[0] == f"# is: {grid.many} labels, the last at {right:.7g} right and {down:.7g} down"
