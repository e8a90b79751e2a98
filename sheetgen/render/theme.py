"""Themes: templates and CSS by name; the one module that knows jinja2."""

from __future__ import annotations

import functools
from pathlib import Path
from typing import TYPE_CHECKING, Any

import jinja2
from jinja2.sandbox import SandboxedEnvironment
from markupsafe import Markup

import sheetgen
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
        """A template filled in."""
        return self.environment.get_template(template).render(style=self.style, **values)

    @functools.cache  # noqa: B019 - a theme lives as long as one run
    def style(self, name: str) -> Markup:
        """A style sheet of the theme, as it is."""
        for folder in self.folders:
            if (folder / name).is_file():
                return Markup((folder / name).read_text("utf-8"))  # noqa: S704 - the theme's own file
        raise FileNotFoundError(name)
