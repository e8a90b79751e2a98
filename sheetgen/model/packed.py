"""One posted kit as its paper prints it: what is in which bag, what in the box, and what comes from the own bench."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from sheetgen.base.material import Item
    from sheetgen.model.fingerprint import Number
    from sheetgen.model.worked import MaterialLine, ToolLine, WorkedVersion


@dataclass(frozen=True, slots=True)
class Lot:
    """One thing in a bag, and how much of it in words, those to spare apart; no words where it is used as needed."""

    item: Item
    amount: str


@dataclass(frozen=True, slots=True)
class PackedBag:
    """A bag by its name, empty where the design names none; what is in it stands in the order of the materials."""

    name: str
    lots: tuple[Lot, ...]


@dataclass(frozen=True, slots=True)
class Packed:
    """What a version takes, each thing in one place: in a bag, in the box, or from the maker's own bench.

    `called` is the version in words where something was chosen otherwise, `colourway` in which colours it comes. `code`
    is the fingerprint that its sheets bear, or empty where it is that of the version. `lists` are the numbers of what
    it holds and what it lacks, as its sheets, card and label print them.
    """

    called: str
    colourway: str
    bags: tuple[PackedBag, ...]
    box: tuple[ToolLine, ...]
    bench: tuple[MaterialLine, ...]
    tools: tuple[ToolLine, ...]
    code: str = ""
    lists: tuple[Number, ...] = ()


def nothing_packed(version: WorkedVersion) -> Packed:
    """Of a sheet that is published and goes with no kit: all comes from the bench."""
    return Packed("", "", (), (), version.materials, version.tools)
