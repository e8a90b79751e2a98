"""A design in each of the other units in which a studio has pages, and why there is no such page."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable

    from sheetgen.base.trouble import Troubles
    from sheetgen.model.project import Filed, Library
    from sheetgen.model.worked import Worked


def in_other_units(
    filed: Filed,
    library: Library,
    troubles: Troubles,
    afresh: Callable[[Filed, Library, list[str]], tuple[Worked | None, Troubles]],
) -> list[Worked]:
    """A design that is well, worked `afresh` in each of the other units in which the studio has pages.

    Where it does not come out so (a rule may leave room for half a millimetre, and none for a sixty-fourth of an inch),
    or its words say a length in another unit, that is told as a warning, and there is no such page: none has two units.
    """
    others = [units for units in map(str, library.studio.pages_in) if units != library.studio.units]
    if not others:
        return []
    from sheetgen.render.in_units import NAMES, as_written  # noqa: PLC0415 - heavy: only where there are such pages
    from sheetgen.work.studio import in_units  # noqa: PLC0415

    found: list[Worked] = []
    for units in others:
        other, own = afresh(filed, in_units(library, units), [])
        if other is None:
            first = own.errors[0]
            message = f"there is no page in {NAMES[units]}: {first.message}"
            troubles.add(message, first.place, first.help, "warning")
            continue
        other = replace(other, other_units=units)
        if said := as_written(other):
            message = f"there is no page in {NAMES[units]}: '{said[0]}' stays as it is written"
            troubles.add(
                message, said[1], f"write {{{{ {said[0]} }}}}, which each page tells in its own units", "warning"
            )
            continue
        found.append(other)
    return found
