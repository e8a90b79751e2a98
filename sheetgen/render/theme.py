"""Themes: templates and CSS by name; the one module that knows jinja2."""

from __future__ import annotations

import functools
import os
import traceback
from pathlib import Path
from typing import TYPE_CHECKING, Any

import jinja2
from jinja2.sandbox import SandboxedEnvironment
from markupsafe import Markup

import sheetgen
from sheetgen.base.place import Place, Source
from sheetgen.base.trouble import Misplaced, Trouble
from sheetgen.render.words import kept

if TYPE_CHECKING:
    from collections.abc import Sequence

HERE = Path(sheetgen.__file__).parent


def shipped(name: str) -> Path:
    """A folder that travels with the program (themes, projects): in the package, or beside it in a checkout."""
    inside = HERE / name
    return inside if inside.is_dir() else HERE.parent / name


class Theme:
    """A theme found in the library's own themes first, then in ours."""

    def __init__(self, name: str, roots: Sequence[Path]) -> None:
        folders = [root / name for root in (*roots, shipped("themes")) if (root / name).is_dir()]
        self.root = roots[0].parent if roots else Path()
        self.environment = SandboxedEnvironment(
            loader=jinja2.FileSystemLoader([str(f) for f in folders]),
            autoescape=True,
            undefined=jinja2.StrictUndefined,
            trim_blocks=True,
            lstrip_blocks=True,
            finalize=kept,
        )
        self.folders = folders

    def page(self, template: str, **values: Any) -> str:  # noqa: ANN401 - whatever the template wants
        """A template filled in. Misplaced for a fault in a file of the theme, at its line."""
        try:
            return self.environment.get_template(template).render(style=self.style, **values)
        except Exception as fault:
            if (place := self._blamed(fault)) is None:
                raise
            message = f"the theme cannot be used ({type(fault).__name__}: {str(fault)[:200]})"
            raise Misplaced(Trouble(message, place, "mend this line of the theme")) from fault

    def place(self, template: str) -> Place:
        """The beginning of a template's file."""
        path = next(folder / template for folder in self.folders if (folder / template).is_file())
        return Place(Source(os.path.relpath(path, self.root), path.read_text("utf-8")), 1)

    def _blamed(self, fault: Exception) -> Place | None:
        """The line of a theme's file that a fault came from: jinja2 puts its templates into the traceback."""
        lines = [(frame.filename, frame.lineno or 1) for frame in traceback.extract_tb(fault.__traceback__)]
        if isinstance(fault, jinja2.TemplateSyntaxError) and fault.filename:
            lines.append((fault.filename, fault.lineno))
        for name, line in reversed(lines):
            if any(Path(name).is_relative_to(folder) for folder in self.folders):
                return Place(Source(os.path.relpath(name, self.root), Path(name).read_text("utf-8")), line)
        return None

    @functools.cache  # noqa: B019 - a theme lives as long as one run
    def style(self, name: str) -> Markup:
        """A style sheet of the theme, as it is."""
        for folder in self.folders:
            if (folder / name).is_file():
                return Markup((folder / name).read_text("utf-8"))  # noqa: S704 - the theme's own file
        raise FileNotFoundError(name)
