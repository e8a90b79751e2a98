"""A library to hold classes in: designs of the demonstration, on one paper, with words changed."""

from __future__ import annotations

import csv
import io
import shutil
from contextlib import nullcontext
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple
from unittest.mock import patch

import pypdfium2
import pytest
from click.testing import CliRunner

from sheetgen.cli import main

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping, Sequence

PROJECTS = Path(__file__).parents[2] / "projects"
HEAD = "name,design,version,choices,colourway,table\n"
Rows = list[dict[str, str]]


class Held(NamedTuple):
    """A class that was made up: how the command ended, what it said, and the folder of what it wrote."""

    code: int
    said: str
    folder: Path

    def rows(self, name: str) -> Rows:
        return list(csv.DictReader(io.StringIO((self.folder / f"{name}.csv").read_text("utf-8-sig"))))

    def pages(self, name: str) -> list[str]:
        """The words of each page of a PDF."""
        [path] = self.folder.glob(f"{name}-*.pdf")
        with pypdfium2.PdfDocument(path) as document:
            return [" ".join(page.get_textpage().get_text_bounded().split()) for page in document]


@dataclass(frozen=True)
class Bench:
    """A library and what is done with it."""

    root: Path

    def change(self, name: str, old: str, new: str) -> None:
        path = self.root / "projects" / name
        text = path.read_text("utf-8")
        assert old in text
        path.write_text(text.replace(old, new, 1), "utf-8")

    def held(self, *lines: str, printed: bool = True, name: str = "evening", options: Sequence[str] = ()) -> Held:
        """A class of these pupils; its pages take a while, and are not made where nobody asks for them."""
        table = self.root / f"{name}.csv"
        table.write_text(HEAD + "".join(f"{line}\n" for line in lines), "utf-8")
        with nullcontext() if printed else patch("sheetgen.runs.class_list.printed", return_value=[]):
            result = CliRunner().invoke(main, ["class", str(table), "--library", str(self.root), *options])
        return Held(result.exit_code, result.output, self.root / "private" / "class" / name)


@pytest.fixture(scope="module")
def bench(tmp_path_factory: pytest.TempPathFactory) -> Callable[..., Bench]:
    def make(*designs: str, changes: Mapping[str, tuple[str, str]] | None = None) -> Bench:
        root = tmp_path_factory.mktemp("library")
        for name in ("studio.yaml", "stock", "steps", *designs):
            source, target = PROJECTS / name, root / "projects" / name
            target.parent.mkdir(exist_ok=True)
            shutil.copytree(source, target) if source.is_dir() else shutil.copy(source, target)
        made = Bench(root)
        made.change("studio.yaml", "paper: [A4, Letter]", "paper: [A4]")
        for file, (old, new) in (changes or {}).items():
            made.change(file, old, new)
        return made

    return make
