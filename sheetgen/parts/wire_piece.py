"""What every piece bent from one length of wire has: what is cut for one and for all, a spool's worth, its weight."""

from __future__ import annotations

from typing import ClassVar

from sheetgen.base.material import Wire
from sheetgen.parts import field
from sheetgen.parts.figure import Need, TakeSpec, figure, need, take
from sheetgen.parts.kind import Part


def take_wire(item: str, long: str, *, each: str = "", when: str = "") -> TakeSpec:
    """Wire of a length, in the unit that stock sells it by: length, or weight."""
    grams = f"wire_grams({item}.thickness, {long}, {item}.density)"
    return take(item, long, each=each, grams=grams, when=when)


def too_tight(field_name: str, size: str, wire: str = "wire", *, when: str = "") -> Need:
    """A bend or loop is no narrower inside than the wire is thick."""
    says = f"is less than the wire is thick ({{{wire}.thickness}})"
    return need(f"{size} ≥ {wire}.thickness", says, at=field_name, least=f"{wire}.thickness", when=when)


# fmt: off
class WirePiece(Part):
    """One length of wire, measured along its middle; a kind says in `one` how long the wire in a piece is."""

    hazards: ClassVar[tuple[str, ...]] = ("wire ends",)
    last = True

    wire = field.item(Wire, "the wire", role="made of")
    trim = field.length("wire added to be trimmed off", default="2 mm", at_least=0)

    cut = figure("Wire to cut for one", "mm", "one + trim", "millimetre most", about="With what is trimmed off.")
    wire_length = figure("Wire for all", "mm", "count × cut", "length up", about="All pieces as they are cut, with what is trimmed off.")
    per_spool = figure("Pieces from one spool", "", "down(wire.spool ÷ cut)", "whole", when="wire.spool",
                       about="How many one pack of the wire gives.")
    mass = figure("Weight of the wire, each", "g", "wire_grams(wire.thickness, one, wire.density)", about="One piece, trimmed.", role="metal mass")

    takes: ClassVar[tuple[TakeSpec, ...]] = (take_wire("wire", "wire_length", each="cut"),)
    needs: ClassVar[tuple[Need, ...]] = (need("wire.longest ≥ cut", "holds {wire.longest} a pack, and one piece is {cut}", at="wire", when="wire.longest"),)
