"""A worked project is plain data: sent to a process that knows neither files nor working, it makes the same pages."""

from __future__ import annotations

import pickle
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from sheetgen.base.place import Place, Source, Word

ROOT = Path(__file__).parents[2]
ELSEWHERE = """\
import pickle, sys
from pathlib import Path
from sheetgen.base.turns import through
from sheetgen.draw.templates import draw
from sheetgen.render.job import Printout
from sheetgen.render.pages import render
from sheetgen.render.theme import Theme

class Plain:
    def made(self, name, of, make):
        return list(make())

    def printed(self, jobs):
        return [[Printout(job.htmls[0].encode(), 1) for _ in job.papers] for job in jobs]

def pages(worked):
    drawings = {name: draw(worked, one, worked.studio.paper) for name, one in worked.versions.items()}
    rendered = through(render(worked, drawings, Theme("plain", []), Plain()))
    return {page.path: page.content for page in rendered.pages}
"""
AND_BACK = """
found = pages(pickle.loads(Path(sys.argv[1]).read_bytes()))
knows = [name for name in sys.modules if name.startswith(("sheetgen.read", "sheetgen.work", "sheetgen.pipeline"))]
assert not knows, knows
Path(sys.argv[2]).write_bytes(pickle.dumps(found))
"""


def through_a_process_that_cannot_work_it(worked: Any, folder: Path) -> tuple[dict[str, Any], dict[str, Any]]:
    """The pages of a worked project made here, and those made elsewhere from what was pickled."""
    here: dict[str, Any] = {}
    exec(ELSEWHERE, here)  # noqa: S102 - our own words, run here and there
    (folder / "worked").write_bytes(pickle.dumps(worked))
    command = [sys.executable, "-c", ELSEWHERE + AND_BACK, str(folder / "worked"), str(folder / "pages")]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, timeout=60, check=False)
    assert done.returncode == 0, done.stderr
    there = pickle.loads((folder / "pages").read_bytes())  # noqa: S301 - our own
    return here["pages"](worked), there


@pytest.mark.parametrize("project", ["drops", "pendant", "link"])
def test_a_worked_project_makes_the_same_pages_in_a_process_that_cannot_work_it(
    project: str, library: Any, tmp_path: Path
) -> None:
    here, there = through_a_process_that_cannot_work_it(library.worked(project), tmp_path)
    assert there == here
    assert any(path.endswith("index.html") for path in there)


@pytest.mark.parametrize("size", ["PP 14", "SS 6"])
def test_a_stone_sized_by_its_class_goes_on_its_way_as_any_other(size: str, library: Any, tmp_path: Path) -> None:
    library.change("stock/others.yaml", "    size: 1.95-2 mm\n", f"    size: {size}\n")
    library.change("drops/project.yaml", "    gap: 0.5 mm\n", "    gap: 0.8 mm\n")
    here, there = through_a_process_that_cannot_work_it(library.worked("drops"), tmp_path)
    assert there == here


def test_nothing_in_a_worked_project_can_be_changed(library: Any) -> None:
    worked = library.worked("pendant")
    version = worked.main
    part = version.parts["plate"]
    for thing, name in ((worked, "title"), (version, "parts"), (part, "kind"), (part.figures["wet_disc"], "value")):
        with pytest.raises((AttributeError, TypeError)):
            setattr(thing, name, None)
    of_part = (part.fields, part.numbers, part.figures, part.roles, part.places)
    for mapping in (worked.versions, version.parts, version.figures, *of_part):
        with pytest.raises(TypeError, match="does not change"):
            mapping["new"] = None


def test_a_word_keeps_its_place_on_its_way() -> None:
    word = Word("20 mm", Place(Source("projects/a/project.yaml", "width: 20 mm"), 1, 8, 5), "raw")
    copied = pickle.loads(pickle.dumps(word))  # noqa: S301 - our own
    assert (copied, copied.place, copied.block) == (word, word.place, "raw")
