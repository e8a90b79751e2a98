"""The layers: who may know whom. Every import of every module is read, and one that points up fails."""

from __future__ import annotations

import ast
import importlib
import pkgutil
import re
import sys
from collections import defaultdict
from pathlib import Path
from typing import NamedTuple

import pytest

import sheetgen
from sheetgen import parts
from sheetgen.parts.catalogue import kinds
from sheetgen.parts.kind import Part

PACKAGE = Path(sheetgen.__file__).parent
NOUNS = {"base", "facts", "formulas", "parts", "model"}
VERBS = {"read", "work", "check", "kits", "draw", "render", "publish"}
# What each layer may import besides itself (the table in section 4 of the design).
MAY = {
    "base": set(),
    "facts": {"base"},
    "formulas": {"base", "facts"},
    "parts": {"base", "facts", "formulas"},
    "model": {"base", "facts", "formulas", "parts"},
    **dict.fromkeys(VERBS, NOUNS),
    "read": NOUNS | {"pictures"},
    "render": NOUNS | {"pictures"},
    "kits": {"base", "facts", "formulas", "model"},
    "pictures": {"base"},
    "editions": NOUNS | VERBS,
    "pipeline": NOUNS | VERBS | {"editions"},
    "progress": set(),
    "other_units": NOUNS | VERBS,
    "publishing_one": NOUNS | VERBS | {"editions", "other_units", "pipeline", "progress"},
    "unchanged": NOUNS | VERBS,
    "checking": NOUNS | VERBS | {"other_units", "pipeline", "unchanged"},
    "publishing": NOUNS | VERBS | {"editions", "pipeline", "progress", "publishing_one", "unchanged"},
    "telling": NOUNS | VERBS | {"pipeline"},
    "upgrading": NOUNS | VERBS | {"pipeline"},
    "preview": NOUNS | VERBS | {"pipeline"},
    "runs": NOUNS | VERBS | {"editions", "pipeline", "progress", "unchanged"},
    "cli": {"base", "checking", "pipeline", "preview", "progress", "publishing", "runs", "telling", "upgrading"},
    "__main__": {"cli"},
    "": set(),
}
# Exceptions, each with its reason: (module, what it imports).
ALLOWED = {
    # where the package lies, for the themes that travel in it
    ("sheetgen.render.theme", "sheetgen"),
}
# Third parties that live in one file each.
ONE_PLACE = {
    "yaml": "sheetgen.read.yaml_words",
    "markdown": "sheetgen.render.words",
    "nh3": "sheetgen.render.words",
    "PIL": "sheetgen.pictures.bitmap",
    "lxml": "sheetgen.pictures.drawing",
    "segno": "sheetgen.render.qr",
    "pypdfium2": "sheetgen.pictures.from_pdf",
}
# And those that live in a few.
FEW_PLACES = {
    "click": {f"sheetgen.cli.{name}" for name in ("group", "library", "look", "private", "terminal")},
    "jinja2": {"sheetgen.render.theme", "sheetgen.render.sandbox"},
    "weasyprint": {"sheetgen.render.pdf", "sheetgen.render.quick"},
    "pydyf": {"sheetgen.render.quick"},
    "openpyxl": {"sheetgen.read.workbook", "sheetgen.publish.workbook"},
    "fontTools": {"sheetgen.read.paths", "sheetgen.publish.letters", "sheetgen.render.faces"},
    "pikepdf": {
        *(f"sheetgen.publish.{name}" for name in ("stamp", "stack", "apart", "tagged")),
        "sheetgen.render.composed",
    },
}
# The words of the gestures, what drawings of several gestures share, and what is made of parts.
GESTURING = {
    "sheetgen.facts.gestures", "sheetgen.draw.bezels", "sheetgen.draw.turning",
    "sheetgen.facts.made", "sheetgen.draw.made",
}  # fmt: skip
PLAIN_NOUNS = {"base", "facts", "formulas", "parts"}


class Arrow(NamedTuple):
    module: str
    line: int
    target: str


def modules() -> dict[str, Path]:
    found = {}
    for path in sorted(PACKAGE.rglob("*.py")):
        name = ".".join(("sheetgen", *path.relative_to(PACKAGE).with_suffix("").parts))
        found[name.removesuffix(".__init__")] = path
    return found


MODULES = modules()


def arrows_of(module: str, text: str) -> list[Arrow]:
    """Every import of a module, runtime and typing alike; of a package's names the module that each one is."""
    found = []
    for node in ast.walk(ast.parse(text)):
        if isinstance(node, ast.Import):
            found += [Arrow(module, node.lineno, alias.name) for alias in node.names]
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{module}:{node.lineno}: relative"
            assert node.module
            for alias in node.names:
                inner = f"{node.module}.{alias.name}"
                found.append(Arrow(module, node.lineno, inner if inner in MODULES else node.module))
    return found


ARROWS = [arrow for name, path in MODULES.items() for arrow in arrows_of(name, path.read_text("utf-8"))]


def layer(module: str) -> str:
    return [*module.split("."), ""][1]


def points_up(arrow: Arrow) -> bool:
    if not arrow.target.startswith("sheetgen") or (arrow.module, arrow.target) in ALLOWED:
        return False
    here, there = layer(arrow.module), layer(arrow.target)
    return here != there and there not in MAY[here]


def test_the_imports_are_found_at_all() -> None:
    assert len(ARROWS) > 300
    assert {layer(m) for m in MODULES} >= NOUNS | VERBS | {"pipeline", "cli"}


def test_no_import_points_up() -> None:
    assert [a for a in ARROWS if points_up(a)] == []


@pytest.mark.parametrize(
    ("module", "line"),
    [
        ("sheetgen.base.interval", "from sheetgen.facts import gauges"),
        ("sheetgen.facts.gauges", "import sheetgen.formulas.gauges"),
        ("sheetgen.formulas.gauges", "from sheetgen.parts.kind import Part"),
        ("sheetgen.parts.tube", "from sheetgen.model.worked import Worked"),
        ("sheetgen.model.worked", "from sheetgen.work.evaluator import Evaluator"),
        ("sheetgen.work.evaluator", "def f():\n    from sheetgen.read.library import read_library"),
        ("sheetgen.draw.templates", "from sheetgen import render"),
        ("sheetgen.kits.run", "from sheetgen.draw.slab import slab_layouts"),
        ("sheetgen.kits.lists", "from sheetgen.render.figures import figures_data"),
        ("sheetgen.pictures.ready", "from sheetgen.read.library import read_library"),
        ("sheetgen.pictures.ready", "from sheetgen.model.view import Picture"),
        ("sheetgen.kits.buy_list", "from sheetgen.publish.tables import csv_bytes"),
        ("sheetgen.read.library", "from sheetgen import pipeline"),
        ("sheetgen.cli", "from sheetgen.work.project import work"),
    ],
)
def test_an_import_that_points_up_is_seen(module: str, line: str) -> None:
    assert [a for a in arrows_of(module, line) if points_up(a)]


def test_every_module_has_a_layer_that_the_table_knows() -> None:
    assert {layer(name) for name in MODULES} <= MAY.keys()


def test_no_kind_of_part_knows_another() -> None:
    files = {kind.__module__ for kind in kinds().values()}
    assert len(files) == len(kinds())
    assert [a for a in ARROWS if a.module in files and a.target in files] == []


def test_what_kinds_share_knows_no_kind_and_not_the_catalogue() -> None:
    """Ground that several kinds stand on: a file without a kind of its own."""
    files = {kind.__module__ for kind in kinds().values()}
    for arrow in ARROWS:
        if layer(arrow.module) == "parts" and arrow.module not in {"sheetgen.parts.catalogue", *files}:
            assert arrow.target not in {"sheetgen.parts.catalogue", *files}, arrow


def test_nobody_names_a_kind_but_the_files_that_draw_it_and_its_gestures() -> None:
    """Adding a kind is adding a file, and one for its drawing: neither its module nor its name stands anywhere else.

    A gesture is done with certain kinds, so its file may ask them, and its words say which they are.
    """
    files = {kind.__module__ for kind in kinds().values()}
    drawing = {name for name in MODULES if name.startswith("sheetgen.draw.kinds.")}
    gestures = {name for name in MODULES if name.startswith("sheetgen.draw.gestures.")} | GESTURING
    for arrow in ARROWS:
        if arrow.target in files:
            assert arrow.module in drawing | gestures, arrow
    for name in drawing:
        assert len({a.target for a in ARROWS if a.module == name and a.target in files}) <= 1, name
    telling = {name for name in kinds() if " " in name}  # a hole or a box may be meant otherwise
    for name, path in MODULES.items():
        if name in files | GESTURING:
            continue
        words = {n.value for n in ast.walk(ast.parse(path.read_text("utf-8"))) if isinstance(n, ast.Constant)}
        assert not words & telling, name


@pytest.mark.parametrize(("package", "home"), ONE_PLACE.items())
def test_each_third_party_lives_in_one_file(package: str, home: str) -> None:
    assert {a.module for a in ARROWS if a.target.split(".")[0] == package} == {home}


@pytest.mark.parametrize(("package", "homes"), FEW_PLACES.items())
def test_what_several_files_use_is_used_in_no_other(package: str, homes: set[str]) -> None:
    assert {a.module for a in ARROWS if a.target.split(".")[0] == package} == homes


def test_the_nouns_know_neither_files_nor_third_parties() -> None:
    """Pure vocabulary: no noun knows a third party, and none reads or writes."""
    doing = {"os", "io", "shutil", "subprocess", "tempfile", "socket", "urllib", "http"}
    for arrow in ARROWS:
        if layer(arrow.module) in PLAIN_NOUNS:
            root = arrow.target.split(".")[0]
            assert root == "sheetgen" or root in sys.stdlib_module_names, arrow
            assert root not in doing, arrow


def test_the_heavy_packages_are_not_imported_until_a_page_is_made() -> None:
    """A slip in a file is told in less than a second: no stage before rendering waits for the printer."""
    heavy = {"weasyprint", "PIL", "lxml", "markdown", "jinja2", "openpyxl", "pikepdf", "segno"}
    seen: set[str] = set()
    waiting = ["sheetgen.pipeline"]
    tops: dict[str, list[str]] = defaultdict(list)
    for name, path in MODULES.items():
        for node in ast.parse(path.read_text("utf-8")).body:
            if isinstance(node, ast.Import | ast.ImportFrom):
                tops[name] += [a.target for a in arrows_of(name, ast.unparse(node))]
    while waiting:
        name = waiting.pop()
        if name not in seen:
            seen.add(name)
            waiting += tops.get(name, [])
    assert not heavy & seen


def test_what_makes_pictures_anew_opens_no_file_and_asks_nobody() -> None:
    """Bytes in, bytes out: whatever a picture names, nothing here could fetch it."""
    doing = {"os", "shutil", "subprocess", "tempfile", "socket", "urllib", "http", "requests"}
    of_pictures = [a for a in ARROWS if layer(a.module) == "pictures"]
    assert of_pictures
    assert not [a for a in of_pictures if a.target.split(".")[0] in doing or a.target == "pathlib.Path"]
    texts = (path.read_text("utf-8") for name, path in MODULES.items() if layer(name) == "pictures")
    assert not [text for text in texts if re.search(r"(?<![.\w])open\(|\.read_bytes\(|\.read_text\(|\bPath\(", text)]


def test_no_kind_hides_what_every_part_has() -> None:
    """A field or figure called as something that every part has would silently break it."""
    own = {name for name in dir(Part) if not name.startswith("_")} - {"count", "at", "hangs_from"}
    declared = set(Part.__annotations__)
    for name, kind in kinds().items():
        hidden = own & kind.names.keys() - {"last"}
        assert not hidden, f"{name}: {hidden}"
        for owner in kind.__mro__:
            if vars(owner).get("kind"):
                assert not {n for n in vars(owner) if n in own} - declared - {"last"}, name
        assert not {f.attribute for f in kind.fields().values()} & kind.figures().keys(), name


def test_every_kind_says_what_it_is() -> None:
    for name, kind in kinds().items():
        assert (kind.__doc__ or "").strip(), name
        for figure in kind.figures().values():
            assert figure.about, f"{name}.{figure.name}"
            assert figure.label, f"{name}.{figure.name}"
        for field in kind.fields().values():
            assert field.about, f"{name}.{field.name}"


def test_every_file_that_draws_is_of_a_kind_that_there_is() -> None:
    modules = (importlib.import_module(name) for name in MODULES if name.startswith("sheetgen.draw.kinds."))
    drawn = {module.DRAWN.kind for module in modules if hasattr(module, "DRAWN")}  # the others are shared by several
    assert drawn <= kinds().keys()


def test_every_kind_is_found_by_the_line_that_names_it() -> None:
    """Kinds are read when they are asked for, and so found without being read."""
    modules = [importlib.import_module(f"sheetgen.parts.{one.name}") for one in pkgutil.iter_modules(parts.__path__)]
    each = [one for there in modules for one in vars(there).values() if isinstance(one, type) and issubclass(one, Part)]
    assert {one.kind: one for one in each if one.kind} == dict(kinds())
