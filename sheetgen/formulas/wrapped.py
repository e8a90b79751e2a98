"""Loops turned and wrapped at the end of a wire: head pins, eye pins, bead links."""

from __future__ import annotations

import math

from sheetgen.formulas import guard
from sheetgen.formulas.formula import formula
from sheetgen.formulas.loops import ring_wire
from sheetgen.formulas.wrap import inside_of_strip

_HELIX = "length of a helix on the mean diameter"
_LOOP = "metalsmiths' forum: length of material = (inside diameter + thickness) × π"
_END = "sum of its parts; trade rule of thumb: bend 3 cm from the end"


@formula("wire = π × (jaw + wire thickness)", source=_LOOP)
def turned_loop(jaw: float, d: float) -> float:
    """Wire (mm) in a simple loop turned on a jaw (mm). CannotBe for sizes of 0 or less."""
    return ring_wire.pure(jaw, d)


@formula("jaw = wire ÷ π − wire thickness", source=_LOOP)
def jaw_for_loop(length: float, d: float) -> float:
    """Jaw (mm) whose loop takes up a cut length (mm). CannotBe if it is too short for a loop."""
    return inside_of_strip.pure(length, d)


@formula("one wrap = √((π × (stem + wire))² + pitch²)", source=_HELIX)
def wrap_turn(stem: float, wire: float, pitch: float) -> float:
    """Wire (mm) in one turn round a stem (mm); close wraps have a pitch of one wire. CannotBe for 0 or less."""
    guard.above_zero(stem, "a stem", "stem")
    guard.above_zero(wire, "a wire", "wire")
    guard.not_below_zero(pitch, "a pitch", "pitch")
    return math.hypot(math.pi * (stem + wire), pitch)


@formula("one wrap = √(4π² + 1) × wire thickness", source=_HELIX, valid="a wire wrapped close round itself")
def close_wrap(d: float) -> float:
    """Wire (mm) in one close turn round a stem of the same wire. CannotBe for 0 or less."""
    return wrap_turn.pure(d, d, d)


@formula("neck = wraps × wire thickness", source="close wraps lie side by side")
def wrapped_neck(wraps: float, d: float) -> float:
    """Stem (mm) hidden under so many close wraps. CannotBe for negative numbers."""
    guard.not_below_zero(wraps, "a number of wraps", "wraps", "")
    guard.above_zero(d, "a wire", "wire")
    return wraps * d


@formula("end = π × (jaw + d) + wraps × √(4π² + 1) × d + wraps × d + tail", source=_END)
def wrapped_end(jaw: float, d: float, wraps: float, tail: float) -> float:
    """Wire (mm) in one wrapped loop with its neck and the tail cut off. CannotBe for negative sizes."""
    guard.not_below_zero(tail, "a tail", "tail")
    return turned_loop.pure(jaw, d) + wraps * close_wrap.pure(d) + wrapped_neck.pure(wraps, d) + tail


@formula("wire = beads + ends × one end", source=_END, valid="1 end on a head pin, 2 on a link")
def wrapped_wire(beads: float, ends: float, one_end: float) -> float:
    """Wire (mm) to cut for a wrapped head pin or link. CannotBe for negative sizes."""
    guard.not_below_zero(beads, "the beads on a wire", "beads")
    guard.above_zero(ends, "a number of ends", "ends", "")
    guard.above_zero(one_end, "a wrapped end", "tail")
    return beads + ends * one_end


@formula("inside length = beads + 2 × (wraps × d + d + jaw)", source="sum of its parts")
def wrapped_link_inside(beads: float, jaw: float, d: float, wraps: float) -> float:
    """Length (mm) that a link with two wrapped ends adds to a chain. CannotBe for negative sizes."""
    guard.not_below_zero(beads, "the beads on a wire", "beads")
    guard.above_zero(jaw, "a jaw", "jaw")
    return beads + 2 * (wrapped_neck.pure(wraps, d) + d + jaw)
