"""What the studio's file says of every project: how it rounds, and the slab that it rolls."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sheetgen.base.address import folder_address
from sheetgen.base.measure import measure
from sheetgen.base.rounding import Rounder
from sheetgen.model.status import ALL
from sheetgen.model.worked import OF_THE_LIBRARY, SHEETS, Licence, Publisher, Slab
from sheetgen.model.written import default

if TYPE_CHECKING:
    from sheetgen.model.labels import LabelGrid
    from sheetgen.model.project import Library
    from sheetgen.model.studio import Studio

SAID = ("name", "about", "contact", "note", "language", "currency", "emergency")


def rounder(studio: Studio) -> Rounder:
    """The studio's way of rounding."""
    inches = studio.units == "in"
    return Rounder(measure(studio.bench_step).value.usual, inches, str(studio.decimal_sign))


def slab(studio: Studio) -> Slab | None:
    """The slab that the studio rolls, if it says so."""
    if studio.slab_width is None or studio.slab_length is None:
        return None
    sides = (studio.slab_width, studio.slab_length, studio.slab_gap)
    return Slab(*(measure(word).value.usual for word in sides))


def sheets_of_designs(studio: Studio) -> tuple[str, ...]:
    """The sheets that each design has which names none itself; where the studio names none of these, all."""
    return tuple(one for one in SHEETS if one in studio.sheets) or SHEETS


def sheets_of_library(studio: Studio) -> tuple[str, ...]:
    """The sheets of all designs together that the studio asks for."""
    return tuple(one for one in OF_THE_LIBRARY if one in studio.sheets)


def in_units(library: Library, units: str) -> Library:
    """The library as a studio has it that works in these units: all is worked afresh, with their own roundings."""
    return replace(library, studio=library.studio.model_copy(update={"units": default(units)}))


def publisher(studio: Studio, labels: LabelGrid | None = None) -> Publisher:
    """Who publishes."""
    said = {key: str(getattr(studio, key) or "") for key in SAID}
    address = folder_address(studio.address) if studio.address is not None else ""
    stated = studio.licence
    words = (stated.text, stated.pictures, stated.link) if stated else ()
    licence = Licence(*(str(one or "").strip() for one in words))
    return Publisher(
        **said,
        paper=tuple(map(str, studio.paper)),
        address=address,
        labels=labels,
        licence=licence,
        teachers_public=studio.teachers_sheets == ALL,
    )
