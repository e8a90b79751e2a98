"""What the studio's file says of every project: how it rounds, and the slab that it rolls."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.arithmetic import Quantity, Wrong
from sheetgen.base.arithmetic import read as read_expression
from sheetgen.base.dimension import LENGTH
from sheetgen.base.rounding import INCH, Rounder
from sheetgen.formulas import scales
from sheetgen.model.worked import Slab

if TYPE_CHECKING:
    from sheetgen.base.place import Word
    from sheetgen.model.project import Studio


def rounder(studio: Studio) -> Rounder:
    """The studio's way of rounding."""
    step = _measure(studio.bench_step)
    inches = studio.units == "in"
    size = step.value.usual if step.dimension == LENGTH else INCH / 64
    return Rounder(size, inches, str(studio.decimal_sign))


def slab(studio: Studio) -> Slab | None:
    """The slab that the studio rolls, if it says so."""
    if studio.slab_width is None or studio.slab_length is None:
        return None
    sides = (studio.slab_width, studio.slab_length, studio.slab_gap)
    return Slab(*(_measure(word).value.usual for word in sides))


def _measure(word: Word) -> Quantity:
    """A measure of the studio's file, which reading has looked over."""

    class Plain:
        units = scales.units("")

        def name(self, name: str) -> Quantity:
            raise Wrong(f"'{name}' is not a measure")

        def scale(self, scale: str, text: str) -> Quantity:
            return scales.size(scale, text)

    return read_expression(word).work(Plain())
