"""A project with every number worked: plain values that do not change and ask nothing of whoever made them."""

from sheetgen.model.worked.lines import MaterialLine, ToolLine
from sheetgen.model.worked.project import (
    OF_THE_LIBRARY,
    ON_CARD,
    SHEETS,
    UNITS,
    Licence,
    Publisher,
    Shot,
    Slab,
    Waiver,
    Worked,
)
from sheetgen.model.worked.shown import Prose, Shown
from sheetgen.model.worked.step import Illustration, Load, Mishap, Walk, WorkedStep
from sheetgen.model.worked.stood import TURNED, Laid, Stood
from sheetgen.model.worked.version import Teaching, WorkedVersion

__all__ = [
    "OF_THE_LIBRARY",
    "ON_CARD",
    "SHEETS",
    "TURNED",
    "UNITS",
    "Illustration",
    "Laid",
    "Licence",
    "Load",
    "MaterialLine",
    "Mishap",
    "Prose",
    "Publisher",
    "Shot",
    "Shown",
    "Slab",
    "Stood",
    "Teaching",
    "ToolLine",
    "Waiver",
    "Walk",
    "Worked",
    "WorkedStep",
    "WorkedVersion",
]
