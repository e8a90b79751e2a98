"""Chain ends: a set of pieces of chain, each a step longer than the one before."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.figure import Made
from sheetgen.base.material import Fibre
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.chains import graded_links, whole_links
from sheetgen.parts import given
from sheetgen.parts.kind import Finding, Part, Take, figure

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.base.spread import Spread


class ChainEnds(Part):
    """Whole links, hanging taut: a piece of n links is n link lengths long, so first and step become whole links.

    A soldered chain loses a link at each cut; one whose links open loses none. What a chain stretches is not known here.
    """

    kind = "chain ends"

    link = given.length("what one link adds to the chain: its inside length, such as links.pitch", above=0)
    first = given.length("length of the first, shortest piece", above=0)
    step = given.length("how much longer each next one is; 0 for equal pieces", default="0 mm", at_least=0)
    pieces = given.count("how many pieces in one set", at_most=500)
    lost = given.count("links lost at each cut", default="1", at_least=0, at_most=10)
    chain = given.maybe_item(Fibre, "the chain, where stock sells it by length")

    @figure("Links in the first", "", "max(1, down({first} ÷ {link} + 0.5))", rounding="whole")
    def links_first(self) -> float:
        """The nearest whole number."""
        return max(1, whole_links(self.first.usual, self.link.usual))

    @figure("Links more in each next", "", "down({step} ÷ {link} + 0.5)", rounding="whole")
    def links_step(self) -> float:
        """The nearest whole number."""
        links = whole_links(self.step.usual, self.link.usual)
        if self.step.usual and not links:
            message = f"a step of {self.step.usual:g} mm is less than half a link"
            raise CannotBe(message, f"{self.link.usual:.4g} mm is one link", "step")
        return links

    @figure("First piece comes out", "mm", "{links_first} × {link}", rounding="tenth")
    def first_out(self) -> Spread:
        """In whole links."""
        return self.links_first * self.link

    @figure("Step comes out", "mm", "{links_step} × {link}", rounding="tenth")
    def step_out(self) -> Spread:
        """In whole links."""
        return self.links_step * self.link

    @figure("Links in the last", "", "{links_first} + ({pieces} − 1) × {links_step}", rounding="whole")
    def links_last(self) -> Spread:
        """The longest piece."""
        return self.links_first + (self.pieces - 1) * self.links_step

    @figure("Last piece comes out", "mm", "{links_last} × {link}", rounding="tenth")
    def last_out(self) -> Spread:
        """In whole links."""
        return self.links_last * self.link

    @figure("Links in one set", "", "{pieces} × ({links_first} + {links_last}) ÷ 2", rounding="whole")
    def links_set(self) -> Spread:
        """All the pieces of one set."""
        return graded_links(self.pieces, self.links_first, self.links_step)

    @figure("Links for all", "", "{count} × ({links_set} + {pieces} × {lost})", rounding="whole")
    def links_all(self) -> Spread:
        """With what the cuts lose."""
        return self.count * (self.links_set + self.pieces * self.lost)

    @figure("Chain for all", "mm", "{links_all} × {link}", rounding="length up")
    def chain_length(self) -> Spread:
        """With what the cuts lose."""
        return self.links_all * self.link

    def takes(self) -> Iterator[Take]:
        """Chain by length."""
        if self.chain:
            yield Take(self.chain, self.chain_length, "chain_length")

    def made(self) -> Iterator[Made]:
        """First and last."""
        yield Made(f"first piece, {self.links_first.usual:g} links", "first_out", self.first, None, "ruler")
        yield Made(f"last piece, {self.links_last.usual:g} links", "last_out", None, None, "ruler")

    def check(self) -> Iterator[Finding]:
        """The first piece is nearly what was asked."""
        off = abs(self.first_out.usual - self.first.usual)
        if off > self.first.usual / 4:
            near = f"{self.first_out.usual:.1f} mm is {self.links_first.usual:g} links"
            yield Finding("first", "is far from a whole number of links", near, "warning")
