"""A row of the finished piece, bit by bit: the pieces of parts, findings, and what is made of them."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sheetgen.base.material import Finding, Wire
from sheetgen.base.pen import Moved
from sheetgen.draw import findings, kinds
from sheetgen.draw.bits import Bit, between
from sheetgen.draw.made import made
from sheetgen.parts.kind import Part

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.base.pen import Pen
    from sheetgen.model.worked import Laid, WorkedVersion
    from sheetgen.parts.piece import Piece


def row(version: WorkedVersion, laid: Sequence[Laid]) -> tuple[list[Bit], int]:
    """All bits of a row, and how many are of what is named first."""
    groups = [_bits(version, one) for one in laid]
    bits = [bit for group in groups for bit in group]
    return [_beside(bits, i) for i in range(len(bits))], len(groups[0])


def _beside(bits: Sequence[Bit], i: int) -> Bit:
    """A bit as its neighbours want it: a plate outside of their rings, what clips a supple end turned towards it."""
    before, bit, after = bits[i - 1], bits[i], bits[(i + 1) % len(bits)]
    if bit.plate:
        draw, pad = bit.draw, before.wire
        padded = bit.long + pad + (after.wire if bit.hangs_on else 0.0)
        return replace(bit, draw=lambda pen: draw(Moved(pen, (0, pad))), long=padded)
    return replace(bit, turned=True) if bit.layer and before.led is not None else bit


def _bits(version: WorkedVersion, laid: Laid) -> list[Bit]:
    if laid.made:
        part = version.parts[str(laid.of[0])]
        long = version.figures[laid.made].value.usual
        return [made(laid.made, part, tuple(version.parts.values()), long)]
    each = [_own(version, one) for one in laid.of]
    if laid.how == "with":
        first = laid.of[0]
        count = int(version.parts[first][Part.count]) if isinstance(first, str) else 1
        return list(between(each[0] * count, each[1][0]))
    if laid.how == "on":
        return [_stacked([bits[0] for bits in reversed(each)])]
    return each[0]


def _own(version: WorkedVersion, one: str | Finding) -> list[Bit]:
    """The bits of one part or finding."""
    if isinstance(one, Finding):
        found = findings.bit(one)
        return [found] if found is not None else []
    piece = version.parts[one]
    bits = kinds.row(piece)
    if len(bits) == 1:
        for hole in version.drilled_in(piece):
            bits = [kinds.pierced(bits[0], hole)]
    return bits


def _stacked(bits: Sequence[Bit]) -> Bit:
    """What lies on each other, middle on middle; the lowest first, and as long as that."""
    low = bits[0]

    def draw(pen: Pen) -> None:
        for bit in bits:
            bit.draw(Moved(pen, (0, (low.end - bit.end) / 2)))

    return Bit(draw, low.end, plate=True)


def wired(piece: Piece) -> float:
    """How thick the wire is that a part is made of; 0 for another."""
    wire = piece.playing("made of", Wire)
    return wire.thickness if wire is not None else 0.0


def crossings(bits: Sequence[Bit], *, closed: bool) -> Iterator[tuple[int, int]]:
    """Which bits hang in which as wire in wire."""
    last = len(bits) if closed else len(bits) - 1
    for i in range(last):
        j = (i + 1) % len(bits)
        if bits[i].wire and bits[j].wire and bits[i].hangs_on:
            yield i, j
