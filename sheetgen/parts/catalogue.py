"""The kinds of part that there are, found in this folder: adding a kind is adding a file."""

from __future__ import annotations

import functools
import importlib
import pkgutil

import sheetgen.parts
from sheetgen.parts.kind import Part


@functools.cache
def kinds() -> dict[str, type[Part]]:
    """Every kind by its written name."""
    for module in pkgutil.iter_modules(sheetgen.parts.__path__):
        importlib.import_module(f"sheetgen.parts.{module.name}")
    found: dict[str, type[Part]] = {}
    waiting = list(Part.__subclasses__())
    while waiting:
        kind = waiting.pop()
        waiting += kind.__subclasses__()
        if kind.kind and kind.__module__.startswith("sheetgen.parts."):
            found[kind.kind] = kind
    return dict(sorted(found.items()))
