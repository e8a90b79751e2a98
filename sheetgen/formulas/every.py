"""Every formula and every fact there is, for pages and tests that list them all."""

from __future__ import annotations

import importlib
import pkgutil
from typing import TYPE_CHECKING

import sheetgen.facts
import sheetgen.formulas
from sheetgen.facts import fact
from sheetgen.formulas import formula

if TYPE_CHECKING:
    from sheetgen.facts.fact import Fact
    from sheetgen.formulas.formula import Formula


def every() -> tuple[list[Formula], list[Fact]]:
    """All formulas and all facts, in the order of their modules' names; facts of one as they stand there."""
    for package in (sheetgen.facts, sheetgen.formulas):
        for module in sorted(m.name for m in pkgutil.iter_modules(package.__path__)):
            importlib.import_module(f"{package.__name__}.{module}")
    return sorted(formula.ALL, key=lambda f: (f.module, f.name)), sorted(fact.ALL, key=lambda f: f.module)
