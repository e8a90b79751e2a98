"""What is asked of others: two designs of the demonstration and one of long words, published, and a browser."""

from __future__ import annotations

import functools
import http.server
import shutil
import threading
from typing import TYPE_CHECKING, Any

import pytest

from sheetgen import publishing
from sheetgen.render.job import Printout

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from sheetgen.render.job import Job, Paper

DESIGNS = ("buoy-drops", "shingle-keeper")  # stones, clay, a torch, a matrix, templates, versions
LONG = "Ringriegelverschlussösenbiegezangenaufbewahrungskästchen"


@pytest.fixture(scope="session")
def site(tmp_path_factory: pytest.TempPathFactory, demo: Any, libraries: Any) -> Path:
    """The folder with everything published: the demonstration's two designs, and `long`, whose words are very long."""
    build: Path = tmp_path_factory.mktemp("site")

    class FourPages(libraries.QuickPool):  # type: ignore[misc]  # found by its path
        """Here the pages on a screen are asked for, and what they link to is empty."""

        @staticmethod
        def printout(_job: Job, _paper: Paper) -> Printout:
            return Printout(b"%PDF", 4)

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("sheetgen.render.pdf_pool.PdfPool", FourPages)
        outcome = publishing.publish(demo.root, build, DESIGNS)
        assert not outcome.troubles.errors, "\n".join(map(str, outcome.troubles))
        library = libraries.make(tmp_path_factory.mktemp("long"))
        library.change("stock/clays.yaml", "name: Test silver", f"name: {LONG}")
        library.change("stock/others.yaml", "name: Craft knife", f"name: {LONG}")
        text = libraries.DROPS.replace("title: Roll\n", f"title: {LONG}\n").replace("Long\n", f"{LONG}\n")
        text = text.replace("title: Little drops", f"title: {LONG}")
        text = text.replace('expect: "The ends meet."', f'expect: "{LONG}."').replace("Set all", f"{LONG}. Set all")
        library.write("drops/project.yaml", text)
        for name, title in (("pendant", f"{LONG * 3} {LONG[:31]}"), ("odd", "טבעת הים <b>&amp;</b>")):
            library.write(f"{name}/project.yaml", libraries.PENDANT.replace("Round pendant", f"'{title}'"))
        outcome = library.publish("drops", "pendant", "odd")
        assert not outcome.troubles.errors, "\n".join(map(str, outcome.troubles))
    shutil.copytree(library.build, build / "long")
    return build


@pytest.fixture(scope="session")
def pages(site: Path) -> list[Path]:
    """The kinds of page on a screen: designs, one in a second clay and one in inches, the list, formulas and facts."""
    designs = ("buoy-drops", "shingle-keeper", "shingle-keeper/bronze-clay", "long/drops")
    more = [site / "buoy-drops" / "in-inches.html", site / "index.html", site / "facts.html"]
    more += [site / "library" / name for name in ("index.html", "technique-metal-clay.html")]
    return [*(site / name / "index.html" for name in designs), *more]


class Host:
    """A host of a folder of its own, whose net can be pulled."""

    def __init__(self, folder: Path) -> None:
        self.folder, self.down = folder, False
        host = self

        class Quiet(http.server.SimpleHTTPRequestHandler):
            def log_message(self, *_said: Any) -> None:
                pass

            def do_GET(self) -> None:
                if host.down:
                    self.close_connection = True
                    self.connection.close()
                    return
                super().do_GET()

        handler = functools.partial(Quiet, directory=str(folder))
        self.server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler)
        self.at = f"http://127.0.0.1:{self.server.server_port}"
        threading.Thread(target=self.server.serve_forever, daemon=True).start()


@pytest.fixture
def host(site: Path, tmp_path: Path) -> Iterator[Host]:
    shutil.copytree(site, tmp_path / "site" / "sheets")
    one = Host(tmp_path / "site")
    yield one
    one.server.shutdown()
    one.server.server_close()
