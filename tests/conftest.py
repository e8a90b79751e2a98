"""What several tests share: libraries on disk, and one library of every flat kind published once for all of them."""

from __future__ import annotations

import importlib.util
import shutil
import subprocess
import sys
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest
from click.testing import CliRunner
from hypothesis import HealthCheck, settings

from sheetgen.cli import main

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator
    from types import ModuleType

    from click.testing import Result
    from playwright.sync_api import Browser

HERE = Path(__file__).parent
ROOT = HERE.parent
FLAGS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]

settings.register_profile("bench", deadline=None, suppress_health_check=[HealthCheck.too_slow])
settings.load_profile("bench")


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption("--kills", default="30", help="how often a run is killed in tests/publish/test_killed.py")


@pytest.hookimpl(optionalhook=True)
def pytest_xdist_make_scheduler(config: pytest.Config, log: Any) -> Any:
    """How tests are shared out where several processes run them (`-n`)."""
    config.option.loadscopereorder = False
    return helper("shared_out").LongestFirst(config, log)


def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    """Such a process has the longest tests first."""
    if hasattr(config, "workerinput"):
        items[:] = [items[at] for at in helper("shared_out").in_turn(item.nodeid for item in items)]


def helper(name: str) -> ModuleType:
    """A module of plain functions beside this file; tests are no package, so it is found by its path."""
    known = f"tests_{name}"
    if known not in sys.modules:
        spec = importlib.util.spec_from_file_location(known, HERE / f"{name}.py")
        assert spec
        assert spec.loader
        module = importlib.util.module_from_spec(spec)
        sys.modules[known] = module
        spec.loader.exec_module(module)
    return sys.modules[known]


@pytest.fixture(autouse=True, scope="session")
def _kept() -> Iterator[None]:
    """The printers and the compiled templates of tests/kept.py."""
    kept = helper("kept")
    with kept.compiled(), kept.printers():
        yield


@pytest.fixture(scope="session")
def libraries() -> Any:
    """The module tests/library.py."""
    return helper("library")


@pytest.fixture(scope="session")
def edits() -> Any:
    """The module tests/edits.py, which edits every field of a library."""
    return helper("edits")


@pytest.fixture(scope="session")
def paper() -> Any:
    """The module tests/paper.py, which measures PDFs."""
    return helper("paper")


@pytest.fixture(scope="session")
def made() -> Any:
    """The module tests/lists_made.py, which makes up runs of kits."""
    return helper("lists_made")


@pytest.fixture(scope="session")
def pencil() -> Any:
    """The module tests/pencil.py, which reckons a printed working."""
    return helper("pencil")


@pytest.fixture(scope="session")
def workbooks() -> Any:
    """The module tests/workbooks.py, which packs workbooks as spreadsheet programs do."""
    return helper("workbooks")


@pytest.fixture
def library(tmp_path: Path, libraries: Any) -> Any:
    """A fresh small library: two plain projects and the drops, which tests may break."""
    return libraries.make(tmp_path)


@pytest.fixture(scope="session")
def good(libraries: Any, tmp_path_factory: pytest.TempPathFactory) -> Any:
    """The small library as it was published without WeasyPrint when all was well; no test changes it."""
    made = libraries.make(tmp_path_factory.mktemp("good"))
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("sheetgen.render.pdf_pool.PdfPool", libraries.QuickPool)
        outcome = made.publish()
    assert sorted(outcome.published) == ["drops", "link", "pendant"]
    assert not outcome.troubles.errors
    return made


@pytest.fixture
def standing(good: Any, tmp_path: Path, libraries: Any, quick: None) -> Any:  # noqa: ARG001
    """A copy of it with all that was published, which tests may break and publish again without WeasyPrint."""
    shutil.copytree(good.root, tmp_path, dirs_exist_ok=True)
    return libraries.Library(tmp_path)


@pytest.fixture
def run(library: Any) -> Any:
    """A command in the small library."""

    def ran(*words: str) -> Result:
        # rich measures a terminal that is none; COLUMNS must not change what is printed
        result = CliRunner().invoke(main, [words[0], "--library", str(library.root), *words[1:]])
        if result.exception and not isinstance(result.exception, SystemExit):
            raise result.exception
        return result

    return ran


@pytest.fixture
def quick(monkeypatch: pytest.MonkeyPatch, libraries: Any) -> None:
    """Publishing without WeasyPrint."""
    monkeypatch.setattr("sheetgen.render.pdf_pool.PdfPool", libraries.QuickPool)


@pytest.fixture(scope="session")
def gnu_units() -> Callable[[str, str], float]:
    """A second opinion from outside: what GNU Units converts one expression to."""
    program = shutil.which("units")
    assert program, "install GNU Units: apt-get install units"

    def convert(have: str, want: str) -> float:
        done = subprocess.run(
            [program, "-t", "-o", "%.12g", have, want], capture_output=True, text=True, check=True, timeout=20
        )
        return float(done.stdout.strip())

    return convert


@pytest.fixture(scope="session")
def demo() -> Any:
    """The demonstration library, each question of it worked once, and not published."""
    return helper("library").Unchanged(ROOT)


@pytest.fixture(scope="session")
def flats(tmp_path_factory: pytest.TempPathFactory) -> Any:
    """A library with one part of every flat kind, published for both papers."""
    library = helper("library").make(tmp_path_factory.mktemp("flats"), helper("library").FLAT_FILES)
    outcome = library.publish()
    assert not outcome.troubles.errors, "\n".join(map(str, outcome.troubles))
    return library


@pytest.fixture(scope="session")
def chromium() -> Iterator[Callable[..., Browser]]:
    """Begins Debian's Chromium, with more said to it; nothing is fetched."""
    from playwright.sync_api import sync_playwright  # noqa: PLC0415 - only where a browser is asked

    program = shutil.which("chromium")
    assert program, "install Chromium: apt-get install chromium"
    with sync_playwright() as started:
        yield lambda *more: started.chromium.launch(executable_path=program, args=[*FLAGS, *more])


@pytest.fixture(scope="session")
def browser(chromium: Callable[..., Browser]) -> Iterator[Browser]:
    """Debian's Chromium as it comes."""
    opened = chromium()
    yield opened
    opened.close()
