"""Bent wire as straights and arcs: hooks and ear wires, measured along the wire's middle."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.formulas import guard
from sheetgen.formulas.formula import formula

if TYPE_CHECKING:
    from collections.abc import Iterable

_ARC = "length of an arc on the wire's middle"


@dataclass(frozen=True, slots=True)
class Straight:
    """A straight stretch of wire (mm)."""

    length: float


@dataclass(frozen=True, slots=True)
class Arc:
    """A bend round a jaw or mandrel: inside diameter (mm) and degrees turned through."""

    inside: float
    degrees: float


@formula("arc = π × (inside + wire) × degrees ÷ 360", source=_ARC)
def arc_length(inside: float, degrees: float, wire: float) -> float:
    """Wire (mm) in a bend round an inside diameter (mm). CannotBe for negative sizes."""
    guard.not_below_zero(inside, "the inside of a bend", "inside")
    guard.not_below_zero(degrees, "a bend", "angle", "°")
    guard.above_zero(wire, "a wire", "wire")
    return math.radians(degrees) * (inside + wire) / 2


def path_length(path: Iterable[Straight | Arc], wire: float) -> float:
    """Wire (mm) in straights and arcs laid end to end. CannotBe for negative sizes."""
    guard.above_zero(wire, "a wire", "wire")
    length = 0.0
    for piece in path:
        if isinstance(piece, Arc):
            length += arc_length.pure(piece.inside, piece.degrees, wire)
        else:
            guard.not_below_zero(piece.length, "a straight", "length")
            length += piece.length
    return length


@formula("wire = middle + π × (top + wire) ÷ 2 + π × (bottom + wire) ÷ 2 + 2 × tips", source=_ARC)
def s_hook(top: float, bottom: float, middle: float, tip: float, wire: float) -> float:
    """Wire (mm) in an S of two half turns (inside diameters), a straight middle and two tips. CannotBe if negative."""
    return path_length((Straight(tip), Arc(top, 180), Straight(middle), Arc(bottom, 180), Straight(tip)), wire)


@formula("wire = π × (loop + wire) + front + π × (bend + wire) ÷ 2 + back", source=_ARC)
def ear_wire(loop: float, front: float, bend: float, back: float, wire: float) -> float:
    """Wire (mm) in an ear hook: a turned loop, a front, a half turn over the ear, a back. CannotBe if negative."""
    return path_length((Arc(loop, 360), Straight(front), Arc(bend, 180), Straight(back)), wire)
