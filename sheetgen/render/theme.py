"""Themes: templates and CSS by name, from a theme's own folders and nowhere else."""

from __future__ import annotations

import functools
import os
import re
import traceback
from pathlib import Path
from typing import TYPE_CHECKING, Any

import jinja2
from markupsafe import Markup

import sheetgen
from sheetgen.base.paths import COPIED, OUTSIDE, leads_out
from sheetgen.base.place import Place, Source
from sheetgen.base.trouble import Misplaced, Trouble
from sheetgen.render.counting import Count, TooMuch
from sheetgen.render.sandbox import Sandbox

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

MOST_TEMPLATE = 200_000
"""Letters of a template or a style sheet: ours have 16,000 at most."""
BARE = re.compile(r"[\w-]+(\.[\w-]+)*")
HERE = Path(sheetgen.__file__).parent
BOUNDS = {HERE / "render" / one for one in ("sandbox.py", "counting.py", "theme.py")}


def shipped(name: str) -> Path:
    """A folder that travels with the program (themes, projects): in the package, or beside it in a checkout."""
    inside = HERE / name
    return inside if inside.is_dir() else HERE.parent / name


class Theme:
    """A theme found in the library's own themes first, then in ours."""

    def __init__(self, name: str, roots: Sequence[Path]) -> None:
        self.root = roots[0].parent if roots else Path()
        self.linked = [one for root in roots for one in (root, root / name) if leads_out(one, self.root)]
        found = [root / name for root in roots] if not self.linked else []
        folders = [folder for folder in (*found, shipped("themes") / name) if folder.is_dir()]
        self.own = folders[:-1]
        self.environment = Sandbox(Folders(folders, self.root))
        self.folders = folders

    def page(self, template: str, **values: Any) -> str:  # noqa: ANN401 - whatever the template wants
        """A template filled in with plain data, and the theme's style sheets by their names.

        Misplaced for a fault in a file of the theme, at its line.
        """
        try:
            return self._filled(template, values)
        except Misplaced:
            raise
        except Exception as fault:
            if (told := self._misplaced(fault, f": {str(fault)[:200]}")) is None:
                raise
            raise told from fault

    def private_page(self, template: str, **values: Any) -> str:  # noqa: ANN401 - as for `page`
        """The same of what is private: a fault is told without its words, which may be of the data."""
        try:
            return self._filled(template, values)
        except Misplaced:
            raise
        except Exception as fault:  # noqa: BLE001 - told without its words
            words = f": {str(fault)[:200]}" if isinstance(fault, jinja2.TemplateSyntaxError) else ""
            if (told := self._misplaced(fault, words)) is None:
                raise RuntimeError(type(fault).__name__) from None
            raise told from None

    def _filled(self, template: str, values: dict[str, Any]) -> str:
        if self.linked:
            place = Place(Source(os.path.relpath(self.linked[0], self.root)))
            raise Misplaced(Trouble(f"the folder of themes {OUTSIDE}", place, COPIED))
        self.environment.count = Count()
        return self.environment.get_template(template).render(styles=self.styles, **values)

    def _misplaced(self, fault: Exception, words: str) -> Misplaced | None:
        """The fault at its line of the theme; None where it is a fault of the program."""
        if self._of_the_program(fault) or (place := self._blamed(fault)) is None:
            return None
        message = f"the theme cannot be used ({type(fault).__name__}{words})"
        return Misplaced(Trouble(message, place, f"mend this line of the theme{self._called_from(fault, place)}"))

    def place(self, template: str) -> Place:
        """The beginning of a template's file."""
        path = next(folder / template for folder in self.folders if (folder / template).is_file())
        return _line(path, self.root, 1)

    def _of_the_program(self, fault: Exception) -> bool:
        """Whether nothing of the library's own had a part in it, or what the templates call of the program broke.

        What goes through all that a page makes (`BOUNDS`) meets whatever a theme does with it.
        """
        if isinstance(fault, TooMuch | RecursionError | MemoryError):
            return False
        last = Path(traceback.extract_tb(fault.__traceback__)[-1].filename)
        broke = last.is_relative_to(HERE) and last.suffix == ".py" and last not in BOUNDS
        return broke or not any(any(folder.glob("*.j2")) for folder in self.own)

    def _blamed(self, fault: Exception) -> Place | None:
        """The line of a theme's file that a fault came from."""
        if isinstance(fault, jinja2.TemplateSyntaxError) and fault.filename and self._has(fault.filename):
            return _line(Path(fault.filename), self.root, fault.lineno)
        lines = self._lines(fault)
        return _line(Path(lines[-1][0]), self.root, lines[-1][1]) if lines else None

    def _called_from(self, fault: Exception, place: Place) -> str:
        """Which line calls the one that is blamed, in words, where one does."""
        lines = [(os.path.relpath(name, self.root), line) for name, line in self._lines(fault)]
        found = next((one for one in reversed(lines) if one != (place.source.name, place.line)), None)
        return f", or line {found[1]} of {found[0]}, which calls it" if found else ""

    def _lines(self, fault: Exception) -> list[tuple[str, int]]:
        """The lines of the theme's files that a fault came through: jinja2 puts its templates into the traceback."""
        frames = traceback.extract_tb(fault.__traceback__)
        return [(frame.filename, frame.lineno or 1) for frame in frames if self._has(frame.filename)]

    def _has(self, name: str) -> bool:
        return any(Path(name).is_relative_to(folder) for folder in self.folders)

    @functools.cached_property
    def styles(self) -> dict[str, Markup]:
        """The style sheets of the theme, each as it is; the library's own go before ours."""
        found: dict[str, Markup] = {}
        for folder in reversed(self.folders):
            for path in sorted(folder.glob("*.css")):
                found[path.name] = Markup(_text(path, folder, self.root))  # noqa: S704 - the theme's own file
        return found


def _line(path: Path, root: Path, line: int) -> Place:
    return Place(Source(os.path.relpath(path, root), path.read_text("utf-8", "replace")), line)


def _text(path: Path, folder: Path, root: Path) -> str:
    """The text of a file of a theme. Misplaced for a link that leads out of its folder, and for what is no text."""
    place = Place(Source(os.path.relpath(path, root)))
    if not path.resolve().is_relative_to(folder.resolve()):
        raise Misplaced(Trouble("the file is a link to one outside the theme", place, "copy it here"))
    if not path.is_file():
        raise Misplaced(Trouble("this is not a file", place, "a template or a style sheet is wanted here"))
    if path.stat().st_size > MOST_TEMPLATE:
        told = f"the file is {path.stat().st_size} bytes long"
        raise Misplaced(Trouble(told, place, f"a theme's file has {MOST_TEMPLATE} at most"))
    try:
        return path.read_text("utf-8")
    except UnicodeDecodeError as fault:
        line = path.read_bytes()[: fault.start].count(b"\n") + 1
        helped = "open it in a text editor and save it with the encoding UTF-8"
        raise Misplaced(Trouble("the file is not in UTF-8", _line(path, root, line), helped)) from None


class Folders(jinja2.BaseLoader):
    """Templates by bare names, from the theme's own folders and nowhere else."""

    def __init__(self, folders: Sequence[Path], root: Path) -> None:
        self.folders, self.root = folders, root

    def get_source(self, _environment: jinja2.Environment, template: str) -> tuple[str, str, Callable[[], bool]]:
        """The text of a template. TemplateNotFound for a name with a folder in it, Misplaced for one that links out."""
        if (path := self.path_of(template)) is None:
            raise jinja2.TemplateNotFound(template)
        return _text(Path(path), Path(path).parent, self.root), path, lambda: True

    def path_of(self, name: str) -> str | None:
        """The file of a template, in the first folder that has one."""
        paths = (folder / name for folder in self.folders if BARE.fullmatch(name))
        return next((str(path) for path in paths if path.exists() or path.is_symlink()), None)
