"""Stock as its files write it: clays, wires, stones and the rest, each with where its data comes from."""

from __future__ import annotations

from pydantic import Field

from sheetgen.model.written import Text, Written


class WrittenSpread(Written):
    """A range with its usual value."""

    low: Text
    usual: Text
    high: Text


class WrittenItem(Written):
    """What every item of stock may say."""

    name: Text
    note: Text | None = None
    pack: Text | None = None
    price: Text | None = None
    allowance: Text | None = None
    cautions: list[Text] = Field(default_factory=list)
    kiln: Text | None = None
    sources: dict[Text, Text] = Field(default_factory=dict)


class WrittenPhase(Written):
    """One phase of a firing."""

    to: Text
    hold: Text
    rate: Text | None = None
    bed: Text | None = None
    cool_below: Text | None = None


class WrittenClay(WrittenItem):
    """A metal clay."""

    shrinkage: Text | WrittenSpread | None = None
    thickness_shrinkage: Text | WrittenSpread | None = None
    test_strips: list[Text] = Field(default_factory=list)
    wet_density: Text
    metal_share: Text
    solid_density: Text | None = None
    drying: Text | None = None
    firing: list[WrittenPhase] = Field(default_factory=list)


class WrittenWire(WrittenItem):
    """Round wire."""

    thickness: Text
    density: Text


class WrittenStone(WrittenItem):
    """A stone, by its size name or its width."""

    size: Text
    height: Text | None = None


class WrittenAdhesive(WrittenItem):
    """An adhesive."""

    cure: Text


class WrittenTool(WrittenItem):
    """A tool, or a set in several sizes."""

    kind: Text | None = None
    sizes: list[Text] = Field(default_factory=list)


class WrittenCaution(Written):
    """A caution of the studio's own."""

    word: Text
    hazard: Text
    consequence: Text
    avoid: Text
    source: Text | None = None


class StockFile(Written):
    """One file of projects/stock/."""

    clays: dict[Text, WrittenClay] = Field(default_factory=dict)
    wires: dict[Text, WrittenWire] = Field(default_factory=dict)
    stones: dict[Text, WrittenStone] = Field(default_factory=dict)
    findings: dict[Text, WrittenItem] = Field(default_factory=dict)
    adhesives: dict[Text, WrittenAdhesive] = Field(default_factory=dict)
    consumables: dict[Text, WrittenItem] = Field(default_factory=dict)
    tools: dict[Text, WrittenTool] = Field(default_factory=dict)
    cautions: dict[Text, WrittenCaution] = Field(default_factory=dict)


SOURCED = {
    "clays": ("shrinkage", "wet density", "metal share", "firing"),
    "wires": ("density",),
    "stones": ("size",),
    "adhesives": ("cure",),
}
"""Which data of an item must name where it comes from."""
