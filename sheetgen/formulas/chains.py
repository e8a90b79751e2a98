"""A chain of links and rings: how long, and how many for a length. Inside lengths add up when it hangs taut."""

from __future__ import annotations

from sheetgen.base.spread import ceil, floor
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas import guard
from sheetgen.formulas.formula import formula

_TAUT = "plane geometry: touching inner walls coincide in a taut chain"


@formula("inside length = links × link + (links − 1) × ring", source=_TAUT)
def chain_inside(links: float, link: float, ring: float) -> float:
    """Length (mm) of a chain inside its end links; `link` and `ring` are inside lengths. CannotBe for 0 links."""
    guard.above_zero(links, "a number of links", "count", "")
    guard.above_zero(link, "the inside of a link", "inside")
    guard.not_below_zero(ring, "the inside of a ring", "inside")
    return links * link + (links - 1) * ring


@formula("overall length = inside length + 2 × wire", source=_TAUT)
def chain_overall(links: float, link: float, ring: float, wire: float) -> float:
    """Length (mm) of a chain over its end links. CannotBe for sizes of 0 or less."""
    guard.above_zero(wire, "a wire", "wire")
    return chain_inside.pure(links, link, ring) + 2 * wire


@formula("links = (length + ring) ÷ (link + ring), whole ones", source=_TAUT)
def links_in(length: float, link: float, ring: float) -> float:
    """Most links whose chain is no longer inside than `length` (mm). CannotBe if not even one fits."""
    guard.above_zero(link, "the inside of a link", "inside")
    guard.not_below_zero(ring, "the inside of a ring", "inside")
    count = floor((length + ring) / (link + ring))
    if count < 1:
        raise CannotBe(
            f"one link of {guard.shown(link)} is longer than the chain", help=guard.at_least(link), field="length"
        )
    return count


@formula("links = (length + ring) ÷ (link + ring), rounded up", source=_TAUT)
def links_for(length: float, link: float, ring: float) -> float:
    """Fewest links whose chain is no shorter inside than `length` (mm). CannotBe for sizes of 0 or less."""
    guard.above_zero(length, "a chain's length", "length")
    guard.above_zero(link, "the inside of a link", "inside")
    guard.not_below_zero(ring, "the inside of a ring", "inside")
    return max(1, ceil((length + ring) / (link + ring)))


@formula("rings = links − 1, and one for each fitting at an end", source=_TAUT)
def rings_between(links: float, fittings: float) -> float:
    """Rings that join so many links, and one more for each clasp or drop at an end. CannotBe for 0 links."""
    guard.above_zero(links, "a number of links", "count", "")
    guard.not_below_zero(fittings, "a number of fittings", "fittings", "")
    return links - 1 + fittings


@formula("links = length ÷ link, to the nearest whole one", source=_TAUT)
def whole_links(length: float, link: float) -> float:
    """Whole links nearest to a length (mm), halves up; none for less than half a link. CannotBe if negative."""
    guard.not_below_zero(length, "a length of chain", "length")
    guard.above_zero(link, "the inside of a link", "link")
    return floor(length / link + 0.5)


@formula("links = pieces × (2 × first + (pieces − 1) × step) ÷ 2", source="sum of an even series")
def graded_links(pieces: float, first: float, step: float) -> float:
    """Links in a set of pieces, each `step` links longer than the one before. CannotBe for negative numbers."""
    guard.above_zero(pieces, "a number of pieces", "pieces", "")
    guard.above_zero(first, "a number of links", "first", "")
    guard.not_below_zero(step, "a step", "step", "")
    return pieces * (2 * first + (pieces - 1) * step) / 2
