"""What every piece bent from one length of wire has; and a tool that is given, or chosen from the drawer."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base.material import Wire
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.buying import pieces_from_stock
from sheetgen.formulas.gauges import wire_mass
from sheetgen.formulas.loops import former_before_springback
from sheetgen.parts import given
from sheetgen.parts.drawer import neighbours
from sheetgen.parts.kind import Finding, Part, Take, Worker, figure, working_number

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from sheetgen.base.spread import Spread
    from sheetgen.parts.given import Given


def from_drawer(part: Part, tool: str, wanted: Spread | None, own: Spread | None, field: str) -> float:
    """The tool to use, mm: the one that is given, or the owned one nearest to the size wanted.

    Raises CannotBe when neither or both are given, and when none near enough is owned.
    """
    if own is not None and wanted is None:
        return own.usual
    if wanted is not None and own is None:
        return part.tool(tool, wanted.usual, field)
    raise CannotBe(f"it wants its {field} or the {tool} to use, one of the two", "give one", field)


def drawer_worked(part: Part, tool: str, wanted: Spread | None, own: Spread | None) -> str:
    """How that tool is worked."""
    if own is not None or wanted is None:
        return working_number(own or 0)
    return f"nearest({working_number(wanted)}, {neighbours(part.bench.owned(tool), wanted.usual)})"


def spool(wire: Wire) -> float:
    """How much wire one pack of it holds, mm; 0 when stock does not say, or sells it by weight."""
    return wire.pack or 0 if wire.unit == "mm" else 0


def take_wire(wire: Wire, long: Spread, figure_name: str) -> Take:
    """Wire of a length, mm, in the unit that stock sells it by: length, or weight."""
    amount = wire_mass(wire.density, wire.thickness, long) if wire.unit == "g" else long
    return Take(wire, amount, figure_name)


def too_tight(wire: Wire, sizes: Mapping[str, Spread | None]) -> Iterator[Finding]:
    """The fields whose bend or loop is narrower inside than the wire is thick."""
    least = math.ceil(wire.thickness * 2) / 2
    for field, size in sizes.items():
        if size and size.usual < wire.thickness:
            yield Finding(field, f"is less than the wire is thick ({wire.thickness:.2f} mm)", f"{least:g} mm or more")


class OnRod(Part):
    """What is wound on a rod: as given, or the owned one that leaves the inside when the coil has sprung open."""

    hazards = ("wire ends",)

    inside: Given[Spread | None]
    rod: Given[Spread | None]
    springback: Given[Spread]

    @property
    def wanted(self) -> Spread | None:
        """Rod that would leave the inside exactly, mm."""
        return former_before_springback(self.inside, self.springback) if self.inside is not None else None

    @property
    def rod_worked(self) -> str:
        """How the rod is worked."""
        return drawer_worked(self, "rod", self.wanted, self.rod)


def _of_wire(part: WirePiece) -> bool:
    return part.from_stock


class WirePiece(Part):
    """One length of wire, measured along its middle; a kind says in `one` how long the wire in a piece is."""

    hazards = ("wire ends",)

    wire = given.item(Wire, "the wire")
    trim = given.length("wire added to be trimmed off", default="2 mm", at_least=0)

    one: Worker

    @property
    def from_stock(self) -> bool:
        """Whether it is cut from wire of stock, and not bought ready."""
        return True

    @classmethod
    def workers(cls) -> dict[str, Worker]:
        """The kind's own figures first, then what every piece of wire has."""
        found = super().workers()
        common = {name: worker for name, worker in found.items() if name in vars(WirePiece)}
        return {name: worker for name, worker in found.items() if name not in common} | common

    @figure("Wire to cut for one", "mm", "{one} + {trim}", rounding="bench most", when=_of_wire)
    def cut(self) -> Spread:
        """With what is trimmed off."""
        return self.one + self.trim

    @property
    def as_cut(self) -> float:
        """The wire of one piece as it is cut, mm."""
        return self.bench.as_cut(self.cut.high)

    @figure("Wire for all", "mm", "{count} × {as_cut}", rounding="length up", when=_of_wire)
    def wire_length(self) -> Spread:
        """All pieces as they are cut, with what is trimmed off."""
        return self.count * self.as_cut

    @figure(
        "Pieces from one spool",
        "",
        "down({wire.pack} ÷ {as_cut})",
        rounding="whole",
        when=lambda p: _of_wire(p) and spool(p.wire) > 0,
    )
    def per_spool(self) -> float:
        """How many one pack of the wire gives."""
        return pieces_from_stock.pure(spool(self.wire), self.as_cut, 0)

    @figure("Weight of the wire, each", "g", "π ÷ 4 × {wire.thickness}² × {one} × {wire.density} ÷ 1000")
    def mass(self) -> Spread:
        """One piece, trimmed."""
        return wire_mass(self.wire.density, self.wire.thickness, self.one)

    def takes(self) -> Iterator[Take]:
        """Wire, trimmings included."""
        yield take_wire(self.wire, self.wire_length, "wire_length")
