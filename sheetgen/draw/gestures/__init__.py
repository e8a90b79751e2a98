"""The gestures that are drawn, one file each: adding a gesture is adding a file, and its words in facts/gestures.py."""

from __future__ import annotations

import functools
import importlib
import pkgutil

import sheetgen.draw.gestures as here
from sheetgen.draw.gesture import Gesture


@functools.cache
def gestures() -> dict[str, Gesture]:
    """Every gesture by its name."""
    modules = (importlib.import_module(f"{here.__name__}.{m.name}") for m in pkgutil.iter_modules(here.__path__))
    return {one.name: one for module in modules if isinstance(one := getattr(module, "GESTURE", None), Gesture)}
