"""Themes: templates and CSS by name; the one module that knows jinja2."""

from __future__ import annotations

import functools
import os
import re
import traceback
from pathlib import Path
from typing import TYPE_CHECKING, Any

import jinja2
from jinja2.sandbox import ImmutableSandboxedEnvironment
from markupsafe import Markup

import sheetgen
from sheetgen.base.place import Place, Source
from sheetgen.base.trouble import Misplaced, Trouble
from sheetgen.render.words import kept

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

BARE = re.compile(r"[\w-]+(\.[\w-]+)*")
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
        self.environment = ImmutableSandboxedEnvironment(
            loader=Folders([str(f) for f in folders]),
            autoescape=True,
            undefined=jinja2.StrictUndefined,
            trim_blocks=True,
            lstrip_blocks=True,
            finalize=kept,
        )
        self.folders = folders

    def page(self, template: str, **values: Any) -> str:  # noqa: ANN401 - whatever the template wants
        """A template filled in with plain data, and the theme's style sheets by their names.

        Misplaced for a fault in a file of the theme, at its line.
        """
        try:
            return self._filled(template, values)
        except Exception as fault:
            if (told := self._misplaced(fault, f": {str(fault)[:200]}")) is None:
                raise
            raise told from fault

    def private_page(self, template: str, **values: Any) -> str:  # noqa: ANN401 - as for `page`
        """The same of what is private: a fault is told without its words, which may be of the data."""
        try:
            return self._filled(template, values)
        except Exception as fault:
            words = f": {str(fault)[:200]}" if isinstance(fault, jinja2.TemplateSyntaxError) else ""
            if (told := self._misplaced(fault, words)) is None:
                raise
            raise told from None

    def _filled(self, template: str, values: dict[str, Any]) -> str:
        return self.environment.get_template(template).render(styles=self.styles, **values)

    def _misplaced(self, fault: Exception, words: str) -> Misplaced | None:
        """The fault at its line of the theme; None where it is not the theme's."""
        if (place := self._blamed(fault)) is None:
            return None
        message = f"the theme cannot be used ({type(fault).__name__}{words})"
        return Misplaced(Trouble(message, place, "mend this line of the theme"))

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

    @functools.cached_property
    def styles(self) -> dict[str, Markup]:
        """The style sheets of the theme, each as it is; the library's own go before ours."""
        found: dict[str, Markup] = {}
        for folder in reversed(self.folders):
            for path in sorted(folder.glob("*.css")):
                if inside(path, folder):
                    found[path.name] = Markup(path.read_text("utf-8"))  # noqa: S704 - the theme's own file
        return found


def inside(path: Path, folder: Path) -> bool:
    """Whether a file really lies in a folder, and no link leads out of it."""
    return path.is_file() and path.resolve().parent == folder.resolve()


class Folders(jinja2.FileSystemLoader):
    """Templates by bare names, from the theme's own folders and nowhere else."""

    def get_source(self, environment: jinja2.Environment, template: str) -> tuple[str, str, Callable[[], bool]]:
        """The text of a template. TemplateNotFound for a name with a folder in it, or one that links elsewhere."""
        folders = [Path(path) for path in self.searchpath]
        if not BARE.fullmatch(template) or not any(inside(folder / template, folder) for folder in folders):
            raise jinja2.TemplateNotFound(template)
        return super().get_source(environment, template)
