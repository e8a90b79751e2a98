"""The kinds of part that the program has, found in this folder: adding a kind is adding a file."""

from __future__ import annotations

import functools
import importlib
import re
import traceback
from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING

import sheetgen.parts
from sheetgen.base.trouble import KindFault
from sheetgen.parts.kind import Part

if TYPE_CHECKING:
    from collections.abc import Iterator

NAMED = re.compile(r'^    kind = "(.+)"$', re.MULTILINE)
"""The line by which a file says what its kind is called."""


class Kinds(Mapping[str, type[Part]]):
    """Kinds by their written names, each read when it is first asked for: a design uses few of them.

    To ask for one raises KindFault where its texts cannot be read.
    """

    def __init__(self, found: Mapping[str, str | type[Part]]) -> None:
        """Kinds by their names, each as the module that holds it, or itself."""
        self._found = dict(sorted(found.items()))

    def __or__(self, own: Mapping[str, type[Part]]) -> Kinds:
        """With a library's own."""
        return Kinds({**self._found, **own})

    def __getitem__(self, name: str) -> type[Part]:
        """Have a kind, and read its file first where that is to be done."""
        found = self._found[name]
        return _read(found, name) if isinstance(found, str) else found

    def __iter__(self) -> Iterator[str]:
        """Go through the names, sorted."""
        return iter(self._found)

    def __len__(self) -> int:
        """Count them."""
        return len(self._found)


@functools.cache
def kinds() -> Kinds:
    """Every kind that the program has, by the line in which its file names it; none is read yet."""
    files = (path for folder in sheetgen.parts.__path__ for path in Path(folder).glob("*.py"))
    return Kinds(
        {
            name: f"{sheetgen.parts.__name__}.{path.stem}"
            for path in files
            for name in NAMED.findall(path.read_text("utf-8"))
        }
    )


@functools.cache
def _read(module: str, name: str) -> type[Part]:
    try:
        there = importlib.import_module(module)
    except TypeError as fault:
        file = f"{module.replace('.', '/')}.py"
        lines = [f.lineno for f in traceback.extract_tb(fault.__traceback__) if f.filename.endswith(file)]
        raise KindFault(f"{file}:{lines[-1] if lines else 1}: error: {fault}") from fault
    each = (one for one in vars(there).values() if isinstance(one, type) and issubclass(one, Part))
    return next(one for one in each if vars(one).get("kind") == name)
