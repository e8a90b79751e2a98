"""The fingerprint of a kit: of its version with the choices that it is worked with, and with its colours."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sheetgen.base.frozen import Frozen
from sheetgen.kits.colours import Colourway, in_a_bag
from sheetgen.model.codes import page_of
from sheetgen.model.fingerprint import LISTS, Number, fingerprint, printed_numbers
from sheetgen.model.ledger import kept_of, ledger_of

if TYPE_CHECKING:
    from sheetgen.kits.taken import Kits
    from sheetgen.model import kit
    from sheetgen.model.ledger import Kept, Ledger
    from sheetgen.model.worked import Worked, WorkedVersion


def code_of_kit(kits: Kits) -> str:
    """The fingerprint that the sheets, the card and the label of a kit bear. Without a colourway, the version's."""
    numbers = printed_numbers(kits.worked, kits.version)
    return fingerprint([*numbers, *(_colours(kits.colourway) if kits.colourway is not None else ())])


def page_of_kit(published: Worked, kits: Kits) -> str:
    """The address of the page of a kit's fingerprint; empty where the site has none.

    `published` is the design as its site has it. Of a version with choices of an order no page tells, for that would
    tell what was ordered.
    """
    return "" if kits.choices else page_of(published, published.version(kits.version.title), code_of_kit(kits))


def kept_with_colours(worked: Worked, version: WorkedVersion, program: str) -> Kept:
    """A version as it is worked now, with how many of each colour go with its kits."""
    found = {way.name: _colours(way) for way in version.colourways}
    return replace(kept_of(worked, version, program), colours=Frozen(found))


def ledger_with_colours(worked: Worked, program: str) -> Ledger:
    """A design as it is worked now, by a version of the program."""
    versions = tuple(kept_with_colours(worked, version, program) for version in worked.versions.values())
    return replace(ledger_of(worked, program), versions=versions)


def _colours(way: kit.Colourway) -> tuple[Number, ...]:
    """How many of each colour are in a bag."""
    names = {item.id: item.name for item in way.items}
    allotted = in_a_bag(Colourway(way.by, way.colours), way.seats)
    return tuple(Number(LISTS, f"{way.of.id}, {item}", names[item], str(many)) for item, many in allotted)
