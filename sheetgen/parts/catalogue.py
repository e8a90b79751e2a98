"""The kinds of part that the program has, found in this folder: adding a kind is adding a file."""

from __future__ import annotations

import functools
import importlib
import pkgutil
import traceback

import sheetgen.parts
from sheetgen.base.trouble import KindFault
from sheetgen.parts.kind import Part


@functools.cache
def kinds() -> dict[str, type[Part]]:
    """Every kind by its written name. Raises KindFault for one whose texts cannot be read."""
    for module in pkgutil.iter_modules(sheetgen.parts.__path__):
        name = f"sheetgen.parts.{module.name}"
        try:
            importlib.import_module(name)
        except TypeError as fault:
            file = f"{name.replace('.', '/')}.py"
            lines = [f.lineno for f in traceback.extract_tb(fault.__traceback__) if f.filename.endswith(file)]
            raise KindFault(f"{file}:{lines[-1] if lines else 1}: error: {fault}") from fault
    found: dict[str, type[Part]] = {}
    waiting = list(Part.__subclasses__())
    while waiting:
        kind = waiting.pop()
        waiting += kind.__subclasses__()
        if kind.kind and kind.__module__.startswith("sheetgen.parts."):
            found[kind.kind] = kind
    return dict(sorted(found.items()))
