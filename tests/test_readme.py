"""What the README says is what the program does."""

from __future__ import annotations

import math
import re
import shutil
from pathlib import Path
from typing import Any

import pytest

from sheetgen.base.material import TOOL_KINDS, Item
from sheetgen.base.place import Source, Word
from sheetgen.base.trouble import Troubles
from sheetgen.facts.bench import ACTS, DOES
from sheetgen.facts.cautions import CAUTIONS
from sheetgen.facts.metals import METALS
from sheetgen.model.house import HouseStep
from sheetgen.model.project import Project, Step
from sheetgen.model.stock import StockFile
from sheetgen.model.studio import Studio
from sheetgen.model.written import NOWHERE
from sheetgen.parts.catalogue import kinds
from sheetgen.read.yaml_words import words
from sheetgen.work.deeds import _plain

CONES = """\
title: Cones
revision: 1
date: 2026-01-10
summary: A cone cut {{ cone.slant }} in radius.
makes: 2 cones
level: first piece
parts:
  cone: {kind: paper cone, count: 2, clay: silver, across: 12 mm, height: 20 mm, seam: lapped, thickness: 1 mm}
steps:
  - title: Cut
    parts: [cone]
    text: Cut it.
  - title: Dry
    wait: drying
    does: [test]
  - title: Fire
    firing: silver
"""
ROOT = Path(__file__).parent.parent
BLOCKS = re.findall(r"```yaml\n(.*?)```", (ROOT / "README.md").read_text("utf-8"), re.DOTALL)
README = (ROOT / "README.md").read_text("utf-8")
FROM_NOTHING = BLOCKS[next(n for n, block in enumerate(BLOCKS) if block.startswith("name: Your bench")) :][:3]


def test_the_project_in_the_readme_can_be_made_with_the_demonstration_stock(libraries: Any, tmp_path: Path) -> None:
    example = next(block for block in BLOCKS if "Mooring ring" in block)
    library = libraries.Library(tmp_path)
    library.write("mooring-ring/project.yaml", example)
    shutil.copytree(ROOT / "projects" / "stock", tmp_path / "projects" / "stock")
    shutil.copy(ROOT / "projects" / "studio.yaml", tmp_path / "projects" / "studio.yaml")
    assert set(library.worked("mooring-ring").versions) == {"main", "US 8", "Class of twelve"}


def test_the_three_files_in_the_readme_make_a_library_from_nothing(libraries: Any, tmp_path: Path) -> None:
    studio, stock, project = FROM_NOTHING
    library = libraries.make(
        tmp_path, {"studio.yaml": studio, "stock/drawer.yaml": stock, "mooring-ring/project.yaml": project}
    )
    assert not list(library.check().troubles)
    one, twelve = (library.worked("mooring-ring").versions[name] for name in ("main", "Class of twelve"))
    clay = [next(line.net.usual for line in v.materials if line.item.id == "silver-low-fire") for v in (one, twelve)]
    assert clay[1] == pytest.approx(12 * clay[0])


def test_the_kind_in_the_readme_is_worked_and_drawn_as_any_other(libraries: Any, tmp_path: Path) -> None:
    library = libraries.make(tmp_path)
    library.write("kinds/cone.yaml", next(block for block in BLOCKS if block.startswith("kind: paper cone")))
    library.write("cones/project.yaml", CONES)
    assert not list(library.check().troubles)
    cone = library.worked("cones").main.parts["cone"]
    # the stock of these tests shrinks by 9 %: half the open end and the height, over 0.91, by Pythagoras
    assert cone.figures["slant"].printed == pytest.approx(math.hypot(6 / 0.91, 20 / 0.91), abs=0.05)
    assert cone.flat


@pytest.mark.usefixtures("quick")
def test_the_house_steps_in_the_readme_are_published_in_its_project(libraries: Any, tmp_path: Path) -> None:
    studio, stock, project = FROM_NOTHING
    house = next(block for block in BLOCKS if block.startswith("dry:"))
    uses = next(block for block in BLOCKS if block.startswith("steps:\n  - house: dry")).removeprefix("steps:\n")
    old = project[project.index("  - title: Dry\n") :]
    library = libraries.make(tmp_path, {"studio.yaml": studio, "stock/drawer.yaml": stock, "steps/house.yaml": house})
    library.write("mooring-ring/project.yaml", project.replace(old, uses))
    outcome = library.publish()
    assert not list(outcome.troubles)
    assert outcome.published == ["mooring-ring"]
    roll, dry, fire = library.main("mooring-ring").steps
    assert (roll.title, dry.title, fire.title) == ("Roll and cut", "Dry the band, and test", "Fire in air")
    assert dry.text == ("Lay them on a rack. Turn them now and then. Laid on a cool mirror, they leave no mist.",)
    # the band is rolled at 6 cards
    said = "".join(one if isinstance(one, str) else one.printed.plain for one in fire.text)
    assert said == "Lay the band flat on the shelf. It was rolled at 6 cards."


def test_the_readme_names_every_caution_and_every_kind_of_tool() -> None:
    assert [name for name in CAUTIONS if f"`{name}`" not in README] == []
    assert [kind for kind in TOOL_KINDS if kind not in README] == []


def test_the_readme_names_every_kind_of_part() -> None:
    assert [kind for kind in kinds() if kind not in README] == []


def test_the_readme_names_every_field_of_studio_stock_project_and_step() -> None:
    fields = [
        info.alias for form in (Studio, StockFile, Project, Step, HouseStep) for info in form.model_fields.values()
    ]
    for group in StockFile.model_fields.values():
        written = group.annotation.__args__[1]  # type: ignore[union-attr]
        fields += [info.alias for info in written.model_fields.values()]
    assert [
        field for field in dict.fromkeys(fields) if field and f"`{field}" not in README and f"{field}:" not in README
    ] == []


@pytest.mark.parametrize("said", re.findall(r"`([a-z][\w -]*: [{\[][^`]*[}\]])`", README))
def test_what_the_readme_writes_on_one_line_can_be_read_as_it_stands(said: str) -> None:
    troubles = Troubles()
    if "…" not in said:
        assert words(Source("README.md", said), troubles) is not None
        assert not list(troubles)


def test_what_the_readme_calls_plain_is_what_a_step_is_found_to_do() -> None:
    rows = re.findall(
        r"^\| (.*acts as.*) \| (.*) \|$", README.split("and so it does |")[1].split("\n\n")[0], re.MULTILINE
    )
    step = Step.model_validate({Word("title", NOWHERE): Word("x", NOWHERE)})
    asked: dict[str, str] = {}
    for has, does in rows:
        found = [word for word in re.findall(r"`([a-z ]+)`", has) if word in ACTS]
        done = [
            word for word in re.findall(r"`([a-z ]+)`", does.split("; without")[0].split(", never")[0]) if word in DOES
        ]
        if "no `firing`" in has:
            assert plainly(step, ["body"], "torch", "solder") == [done[0]]
            assert plainly(step, ["body"], "torch") == [done[-1]]
        elif "parts named" in does:
            each = [plainly(step, parts, word) for word in found for parts in (["body", "lid"], ["body"], [])]
            assert each == [[done[0]], [done[1]], []] * len(found)
        else:
            asked |= dict(zip(found, done, strict=True))
    assert {word: [did] for word, did in asked.items()} == {word: plainly(step, ["body"], word) for word in asked}
    # and nothing else that an item acts as makes anything plain
    silent = set(ACTS) - set(asked) - {"slip", "paste for fired metal", "torch"}
    assert not [word for word in silent if plainly(step, ["body"], word)]


def plainly(step: Step, parts: list[str], *acts: str) -> list[str]:
    items = [Item(id=word, name=word, acts_as=(word,)) for word in acts]
    return list(_plain(step, parts, items))


def test_the_readme_names_every_metal() -> None:
    assert [metal for metal in METALS if metal not in README] == []


def test_the_first_paragraph_of_the_readme_states_the_job() -> None:
    first = README.split("\n\n")[1]
    assert "finished piece" in first
    assert "works backwards" in first
