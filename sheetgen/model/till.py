"""What a studio reckons its costs and prices with: as till.yaml writes it, and as it is read. Private."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction
from typing import TYPE_CHECKING, Literal

from pydantic import Field

from sheetgen.base.frozen import Frozen
from sheetgen.model.written import Text, Written

if TYPE_CHECKING:
    from collections.abc import Mapping
    from decimal import Decimal

    from sheetgen.base.place import Place


class WrittenPacking(Written):
    """How long it takes to pack."""

    a_kit: Text | None = None
    a_run: Text | None = None


class WrittenWrapping(Written):
    """What is wrapped in, each thing with its price; `with_sheets`: a kit with its sheets, and no part alone."""

    a_kit: dict[Text, Text] = Field(default_factory=dict)
    with_sheets: dict[Text, Text] = Field(default_factory=dict)
    a_run: dict[Text, Text] = Field(default_factory=dict)


class WrittenClass(Written):
    """What a class costs by the evening, and its fee: one, or one for each design."""

    room_an_evening: Text | None = None
    teaching_an_evening: Text | None = None
    fee: Text | dict[Text, Text] | None = None


class WrittenTill(Written):
    """The whole file; everything may be left out."""

    rate_an_hour: Text | None = None
    packing: WrittenPacking = Field(default_factory=WrittenPacking)
    overhead: Text | None = None
    cost_of_a_load: Text | None = None
    pieces_a_load: Text | None = None
    wrapping: WrittenWrapping = Field(default_factory=WrittenWrapping)
    replacements: Text | None = None
    markup: Text | None = None
    margin: Text | None = None
    tax: Text | None = None
    price_step: Text | None = None
    class_: WrittenClass = Field(default_factory=WrittenClass)


Part = Literal["materials", "wrapping", "labour", "firing"]
PARTS: tuple[Part, ...] = ("materials", "wrapping", "labour", "firing")
"""The parts of a cost, in their order; of each of them an overhead may be stated."""
Prices = tuple[tuple[str, "Decimal"], ...]


@dataclass(frozen=True, slots=True)
class Till:
    """Money in the studio's currency, times in minutes, shares as fractions of the whole; None where nothing is said.

    `room` and `teaching` are for one evening. `fees` are by the name of the design, "" for all others, and
    `fee_places` where they are written.
    """

    name: str
    hour: Decimal | None = None
    packing_a_kit: Fraction = Fraction(0)
    packing_a_run: Fraction = Fraction(0)
    overhead: Fraction = Fraction(0)
    overhead_of: tuple[Part, ...] = ()
    load: Decimal | None = None
    pieces_a_load: int = 1
    wrapping_a_kit: Prices = ()
    wrapping_with_sheets: Prices = ()
    wrapping_a_run: Prices = ()
    replacements: Fraction = Fraction(0)
    markup: Fraction | None = None
    margin: Fraction | None = None
    tax: Fraction = Fraction(0)
    step: Decimal | None = None
    room: Decimal | None = None
    teaching: Decimal | None = None
    fees: Mapping[str, Decimal] = field(default_factory=Frozen)
    fee_places: Mapping[str, Place] = field(default_factory=Frozen)

    def fee(self, design: str) -> Decimal | None:
        """The fee of a class that makes a design."""
        return self.fees.get(design, self.fees.get(""))

    def fee_place(self, design: str) -> Place | None:
        """Where it is written."""
        return self.fee_places.get(design, self.fee_places.get(""))
