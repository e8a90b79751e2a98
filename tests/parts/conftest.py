"""One part at a time, from the words of its fields to its figures and the checks on it."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest

from sheetgen.base.pen import Recorder
from sheetgen.base.place import Source
from sheetgen.base.trouble import Trouble, Troubles
from sheetgen.check.project import check
from sheetgen.draw.kinds import template
from sheetgen.model.project import Filed, Project
from sheetgen.read.forms import form
from sheetgen.read.library import read_library
from sheetgen.read.parts import check_parts
from sheetgen.read.yaml_words import words
from sheetgen.work.project import work

if TYPE_CHECKING:
    from collections.abc import Callable

HEAD = (
    "title: One part\nrevision: 1\ndate: 2026-01-10\nsummary: One part.\nmakes: 1\nlevel: experienced\nparts:\n  it:\n"
)
FOOT = (
    "steps:\n  - title: Make\n    parts: [it]\n  - title: Dry\n    wait: 1 h\n    does: [dry, test]\n"
    "  - title: Fire\n    firing: silver\n"
)
LINES_BEFORE = HEAD.count("\n")


@dataclass(frozen=True)
class Tried:
    """What came of a part: its figures, and what was found wrong with it."""

    figures: dict[str, Any]
    troubles: list[Trouble]
    text: str
    part: Any = None

    def __getitem__(self, name: str) -> Any:
        """The value of a figure, low, usual and high."""
        return self.figures[f"it.{name}"].value

    def drawn(self) -> Recorder:
        """The template's lines, at the printed sizes."""
        pen = Recorder()
        template(pen, self.part)
        return pen

    def usual(self, name: str) -> float:
        return float(self[name].usual)

    @property
    def errors(self) -> list[Trouble]:
        return [t for t in self.troubles if t.severity == "error"]

    def blamed(self, trouble: Trouble) -> str:
        """The field on whose line a trouble stands."""
        assert trouble.place
        return self.text.split("\n")[trouble.place.line - 1].split(":")[0].strip()


@pytest.fixture(scope="session")
def tried(libraries: Any, tmp_path_factory: pytest.TempPathFactory) -> Any:
    """A part made of the fields given, by the stock of the small libraries."""
    return trier(libraries.make(tmp_path_factory.mktemp("parts")).root)


@pytest.fixture(scope="session")
def stocked(libraries: Any, tmp_path_factory: pytest.TempPathFactory) -> Any:
    """The same, with the stock of tests/parts/stock.yaml beside it: sheet, stones, cutters."""
    more = (Path(__file__).parent / "stock.yaml").read_text("utf-8")
    return trier(libraries.make(tmp_path_factory.mktemp("stocked"), libraries.FILES | {"stock/more.yaml": more}).root)


@pytest.fixture(scope="session")
def inched(libraries: Any, tmp_path_factory: pytest.TempPathFactory) -> Any:
    """A part made of the fields given, in a studio that works in inches; with the stock of workbench.yaml."""
    more = (Path(__file__).parent / "workbench.yaml").read_text("utf-8")
    files = {"studio.yaml": libraries.STUDIO.replace("units: mm", "units: in"), "stock/workbench.yaml": more}
    return trier(libraries.make(tmp_path_factory.mktemp("inched"), libraries.FILES | files).root)


def trier(root: Path) -> Callable[..., Tried]:
    """What makes and works one part by the stock of a library."""
    library = read_library(root, Troubles())
    assert library is not None

    def make(kind: str, **fields: object) -> Tried:
        lines = [f"    kind: {kind}", *(f"    {k.replace('_', ' ')}: {v}" for k, v in fields.items())]
        text = HEAD + "\n".join(lines) + "\n" + FOOT
        troubles = Troubles()
        found = words(Source("projects/one/project.yaml", text), troubles)
        assert found is not None, list(map(str, troubles))
        project = form(Project, found, troubles)
        assert project is not None, list(map(str, troubles))
        check_parts(project, library.kinds, troubles)
        if troubles.errors:
            return Tried({}, list(troubles), text)
        worked = work(Filed("one", root, project), library, troubles)
        if not troubles.errors:
            check(worked, troubles)
        return Tried(dict(worked.main.figures), list(troubles), text, worked.main.parts["it"])

    return make


class Workshop:
    """Parts of wire, sheet, chain, bead, fibre and adhesive, each made well or refused."""

    def __init__(self, make: Callable[..., Tried], pencil: Any) -> None:
        self.make, self.pencil = make, pencil

    def __call__(self, kind: str, **fields: object) -> Tried:
        """A part that is well, and whose every printed working comes to its value by pencil."""
        found = self.make(kind, **fields)
        assert not found.errors, "\n".join(map(str, found.errors))
        for figure in found.figures.values():
            reckoned = self.pencil.reckon(figure.working)
            assert reckoned == pytest.approx(figure.value.usual, rel=1e-4, abs=2e-4), f"{figure.key}: {figure.working}"
        return found

    def refused(self, kind: str, **fields: object) -> list[tuple[str, str, str]]:
        """Field, message and help of every trouble and doubt."""
        found = self.make(kind, **fields)
        return [(found.blamed(t), t.message, t.help) for t in found.troubles]

    @staticmethod
    def taken(part: Tried) -> dict[str, float]:
        """What the part takes from stock, by item."""
        found: dict[str, float] = {}
        for take in part.part.takes:
            found[take.item.id] = found.get(take.item.id, 0) + take.amount.usual
        return found


@pytest.fixture(scope="session")
def workshop(libraries: Any, pencil: Any, tmp_path_factory: pytest.TempPathFactory) -> Workshop:
    """The same again, by the stock of tests/parts/workbench.yaml, with every working reckoned."""
    more = (Path(__file__).parent / "workbench.yaml").read_text("utf-8")
    files = libraries.FILES | {"stock/workbench.yaml": more}
    return Workshop(trier(libraries.make(tmp_path_factory.mktemp("workshop"), files).root), pencil)
