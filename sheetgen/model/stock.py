"""Stock as its files write it: clays, wires, stones and the rest, each with where its data comes from."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from sheetgen.model.written import Lines, OneOrMore, Text, Texts, Written


class WrittenSpread(Written):
    """A range with its usual value."""

    low: Text
    usual: Text
    high: Text


class WrittenAhead(Written):
    """What is done to an item in a wait before its first step: how long before at the least, and with which tools."""

    do: Text
    before: Text | None = None
    with_: Texts = Field(default_factory=list, alias="with")


class WrittenPack(Written):
    """A size that a shop sells."""

    holds: Text
    price: Text | None = None
    at_least: Text | None = None


class WrittenItem(Written):
    """What every item of stock may say."""

    name: Text
    note: Text | None = None
    at_the_bench: Text | None = None
    ahead: WrittenAhead | None = None
    pack: Text | None = None
    price: Text | None = None
    packs: Annotated[list[WrittenPack], OneOrMore] = Field(default_factory=list)
    shop: Text | None = None
    have: Texts = Field(default_factory=list)
    given_out: Text | None = None
    saw_cut: Text | None = None
    keep_ends_from: Text | None = None
    spares: Text | None = None
    post: Text | None = None
    a_pack_does: Text | None = None
    allowance: Text | None = None
    cautions: Texts = Field(default_factory=list)
    acts_as: Texts = Field(default_factory=list)
    metal: Text | None = None
    coated_with: Text | None = None
    temper: Text | None = None
    kiln: Text | None = None
    torch: Text | None = None
    quench: Text | None = None
    tumbler: Text | None = None
    pickle: Text | None = None
    solvent: Text | None = None
    water: Text | None = None
    sources: dict[Text, Text] = Field(default_factory=dict)


class WrittenPhase(Written):
    """One phase of a firing."""

    to: Text
    hold: Text
    rate: Text | None = None
    bed: Text | None = None
    bed_depth: Text | None = None
    cool_below: Text | None = None


class WrittenProgram(Written):
    """One of a clay's firing programs, and how the clay shrinks by it."""

    shrinkage: Text | WrittenSpread | None = None
    drying_shrinkage: Text | WrittenSpread | None = None
    firing_shrinkage: Text | WrittenSpread | None = None
    thickness_shrinkage: Text | WrittenSpread | None = None
    test_strips: Lines = Field(default_factory=list)
    firing: Annotated[list[WrittenPhase], OneOrMore] = Field(default_factory=list)
    strength: Text | None = None
    good_for: Text | None = None


class WrittenClay(WrittenItem, WrittenProgram):
    """A metal clay: with one program, which has no name, or with several under `programs`."""

    programs: dict[Text, WrittenProgram] = Field(default_factory=dict)
    wet_density: Text
    metal_share: Text
    solid_density: Text | None = None
    melting: Text | None = None
    drying: Text | None = None
    drying_thickness: Text | None = None


class WrittenWire(WrittenItem):
    """Round wire."""

    thickness: Text
    density: Text


class WrittenStone(WrittenItem):
    """A stone, by its size name or its width."""

    size: Text
    width: Text | None = None
    height: Text | None = None
    density: Text | None = None


class WrittenSheet(WrittenItem):
    """Sheet metal."""

    thickness: Text
    density: Text
    long: Text | None = None
    wide: Text | None = None


class WrittenMetal(WrittenItem):
    """Metal to be melted."""

    density: Text


class WrittenBead(WrittenItem):
    """A bead."""

    size: Text
    length: Text | None = None
    hole: Text | None = None


class WrittenFibre(WrittenItem):
    """Cord, thread, ribbon or stringing wire."""

    thickness: Text
    width: Text | None = None


class WrittenFinding(WrittenItem):
    """A bought-in part."""

    inside: Text | None = None
    length: Text | None = None
    depth: Text | None = None
    width: Text | None = None
    wire: Text | None = None
    drawn_as: Text | None = None


class WrittenAdhesive(WrittenItem):
    """An adhesive."""

    cure: Text
    pot_life: Text | None = None
    pot_temperature: Text | None = None
    part_b: Text | None = None
    density: Text | None = None
    density_b: Text | None = None
    least: Text | None = None


class WrittenConsumable(WrittenItem):
    """What is used up."""

    flows_at: Text | None = None
    across: Text | None = None
    bulk_density: Text | None = None


class WrittenTool(WrittenItem):
    """A tool, or a set in several sizes."""

    kind: Text | None = None
    group: Text | None = None
    owned: Text | None = None
    singular: Text | None = None
    sizes: Texts = Field(default_factory=list)
    full_rate: Text | None = None
    cooling: Text | None = None
    chamber_wide: Text | None = None
    chamber_deep: Text | None = None
    chamber_high: Text | None = None
    shelf_wide: Text | None = None
    shelf_deep: Text | None = None
    shelf_gap: Text | None = None
    inside_wide: Text | None = None
    inside_deep: Text | None = None
    inside_high: Text | None = None


class WrittenCaution(Written):
    """A caution of the studio's own."""

    word: Text
    hazard: Text
    consequence: Text
    avoid: Text
    source: Text | None = None
    wear: Texts = Field(default_factory=list)
    signs: Texts = Field(default_factory=list)
    short: Text | None = None
    told: Text | None = None


class WrittenFault(Written):
    """A fault that the studio knows, by its name."""

    seen: Text
    why: Text
    mend: Text


class StockFile(Written):
    """One file of projects/stock/."""

    clays: dict[Text, WrittenClay] = Field(default_factory=dict)
    wires: dict[Text, WrittenWire] = Field(default_factory=dict)
    stones: dict[Text, WrittenStone] = Field(default_factory=dict)
    sheets: dict[Text, WrittenSheet] = Field(default_factory=dict)
    metals: dict[Text, WrittenMetal] = Field(default_factory=dict)
    beads: dict[Text, WrittenBead] = Field(default_factory=dict)
    fibres: dict[Text, WrittenFibre] = Field(default_factory=dict)
    findings: dict[Text, WrittenFinding] = Field(default_factory=dict)
    adhesives: dict[Text, WrittenAdhesive] = Field(default_factory=dict)
    consumables: dict[Text, WrittenConsumable] = Field(default_factory=dict)
    tools: dict[Text, WrittenTool] = Field(default_factory=dict)
    cautions: dict[Text, WrittenCaution] = Field(default_factory=dict)
    faults: dict[Text, WrittenFault] = Field(default_factory=dict)


SOURCED = {
    "clays": ("shrinkage", "wet density", "metal share", "firing", "drying thickness"),
    "wires": ("density",),
    "sheets": ("density",),
    "metals": ("density",),
    "stones": ("size",),
    "adhesives": ("cure",),
}
"""Which data of an item must name where it comes from."""
