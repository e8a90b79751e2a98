"""A number in print and a text with numbers in it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from sheetgen.base.printed import Printed


@dataclass(frozen=True, slots=True)
class Shown:
    """A number in a text or beside a step: what it is called, what it is, its part; `labelled` by the file itself.

    `figure` is the figure of the version that it is, by its name; empty for one that the text works for itself.
    """

    label: str
    printed: Printed
    part: str = ""
    labelled: bool = False
    figure: str = ""


Prose = tuple["str | Shown", ...]
"""Text as written, with a printed number wherever the file names one."""
