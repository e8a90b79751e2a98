"""Every module of formulas, imported, so that what a text may call is there."""

from __future__ import annotations

import importlib
import pkgutil

import sheetgen.formulas
from sheetgen.base.arithmetic import FORMULAS

for _module in pkgutil.iter_modules(sheetgen.formulas.__path__):
    if _module.name not in {"known", "every"}:
        importlib.import_module(f"sheetgen.formulas.{_module.name}")

__all__ = ["FORMULAS"]
