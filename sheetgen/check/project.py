"""A worked project looked over: the kinds' own checks, the project's checks, and the order of its steps."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sheetgen.base.interval import GRAIN
from sheetgen.base.reckoning import beside
from sheetgen.base.spelling import plain
from sheetgen.base.trouble import Trouble, Troubles
from sheetgen.check.bench.rules import bench
from sheetgen.check.drilled import drilled
from sheetgen.facts.gauges import CARD
from sheetgen.facts.rules import waivable
from sheetgen.facts.tools import LONGEST_TEMPLATE, SLAT_REACH

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.base.place import Place
    from sheetgen.model.worked import Worked
    from sheetgen.parts.piece import Piece


def check(worked: Worked, troubles: Troubles) -> None:
    """Note what does not fit in any version; what a version shares with the main one is told once."""
    told: set[tuple[str, Place | None]] = set()
    waived = {plain(one.rule) for one in worked.waive}
    used = {plain(one.rule) for one in worked.waive if one.used}
    for version in worked.versions.values():
        own = Troubles()
        for part in version.parts.values():
            own.extend((*_too_large(part), *_slats(part, worked), *drilled(part, version)))
        own.extend(bench(worked, version))
        for trouble in own:
            if (trouble.message, trouble.place) in told:
                continue
            if plain(trouble.rule) in waived and waivable(trouble.rule):
                used.add(plain(trouble.rule))
                continue
            told.add((trouble.message, trouble.place))
            message = trouble.message if version is worked.main else f"in version {version.name}: {trouble.message}"
            troubles.extend([replace(trouble, message=message)])
    troubles.extend(_unused(worked))
    for one in worked.waive if not troubles.errors else ():
        if plain(one.rule) not in used:
            message = f"nothing here breaks the rule '{one.rule}' that is waived"
            helped = "take it out, or write the rule as its trouble names it"
            troubles.extend([Trouble(message, one.place, helped, "warning")])


def _slats(part: Piece, worked: Worked) -> Iterator[Trouble]:
    """Whether the drawer has slats of the thicknesses the clay is rolled to; whole cards need none."""
    owned = worked.slats
    for role in ("rolled first", "rolled to"):
        for size, field in zip(part.roles.get(role, ()), part.role_fields.get(role, ()), strict=True):
            cards = abs(size.usual / CARD - round(size.usual / CARD)) < GRAIN and worked.cards
            if owned and not cards and min(abs(size.usual - one) for one in owned) > SLAT_REACH:
                near = " and ".join(part.length(one, "fine").plain for one in beside(owned, size.usual))
                rolled = part.length(size.usual, "fine").plain
                message = f"{part.title.lower()}: {field} is {rolled}, and no slat of it is in the drawer"
                place = part.places.get(field.replace(" ", "_"), part.places[""])
                yield Trouble(message, place, f"the nearest owned: {near}")


def _too_large(part: Piece) -> Iterator[Trouble]:
    """Whether the flat piece is one that pages of templates could hold."""
    extents = [one.extent for one in part.flat]
    long = max((max(e.width, e.height) for e in extents), default=0.0)
    if long > LONGEST_TEMPLATE:
        message = f"{part.title.lower()}: makes a template {long / 1000:.3g} m long"
        yield Trouble(message, part.places[""], f"pieces of up to {LONGEST_TEMPLATE / 1000:g} m")


def _unused(worked: Worked) -> Iterator[Trouble]:
    named = {part for step in worked.main.steps for part in step.parts}
    for name, part in worked.main.parts.items():
        if name not in named:
            message = f"no step makes '{part.title.lower()}'"
            yield Trouble(message, part.places[""], "name it under parts: of a step", "warning")
