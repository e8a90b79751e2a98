"""What is closed with a clasp, a chain or a strand of beads: how much the clasp adds, and the clasp that is taken."""

from __future__ import annotations

from typing import ClassVar

from sheetgen.base.material import Fibre, Finding
from sheetgen.facts.allowances import STRINGING_TAIL
from sheetgen.parts import field
from sheetgen.parts.figure import Need, SizeSpec, TakeSpec, aside, need, size, take
from sheetgen.parts.kind import Part

ROUND = 120.0  # mm: a strand as long as that is worn closed, round the smallest wrist


# fmt: off
class Clasped(Part):
    """What is closed with a bought clasp, with one made as a part, or with none."""

    clasp = field.maybe_item(Finding, "the clasp; its length in stock is what it adds when closed", role="closed by")
    closing = field.length("what a clasp made as a part adds when closed, such as hook.pitch", default="0 mm", at_least=0, role="closed by")

    clasp_length = aside("mm", "closing + (clasp.length if clasp)", at="clasp",
                         needs=(need("clasp.length", "({clasp.name}) has no length in stock", at="clasp", when="clasp", help="add its length to stock"),))

    takes: ClassVar[tuple[TakeSpec, ...]] = (take("clasp", when="clasp"),)


def spool(item: str, long: str, one: str, *, when: str = "") -> Need:
    """What is cut in one piece is no longer than a pack of it, where stock sells it by length and says so."""
    says = f"holds {{{item}.longest}} a pack, and one {one} is {{{long}}}"
    return need(f"{item}.longest ≥ {long}", says, at=item.replace("_", " "), when=f"{when} and {item}.longest" if when else f"{item}.longest")


class Strand(Clasped):
    """Beads on a thread. A kind says how long it comes out, as `comes_out`, and what thread is cut, as `thread_cut`."""

    thread = field.maybe_item(Fibre, "the thread", role="strung on")
    ends = field.one_of("the ends of the thread: trimmed, or led back through the beads beside them", "trimmed", "back through")
    drawn_in = field.maybe_length("how wide a knot or crimp is that is drawn into the bead beside it", above=0)
    tails = field.length("thread beyond the strand, both ends together", default=f"{STRINGING_TAIL:g} mm", at_least=0)

    takes: ClassVar[tuple[TakeSpec, ...]] = (
        take("thread", "count × thread_cut", each="thread_cut", when="thread"),
        *Clasped.takes,
    )
    sizes: ClassVar[tuple[SizeSpec, ...]] = (
        size("strand, clasp counted in", "comes_out", fires="comes_out", tool="ruler", when="clasp_length > 0 mm"),
        size("strand", "comes_out", fires="comes_out", tool="ruler", when="clasp_length = 0 mm"),
    )
    needs: ClassVar[tuple[Need, ...]] = (spool("thread", "thread_cut", "strand", when="thread"),)


GOES_THROUGH = need("thread.thickness ≤ bead.hole", "({thread.thickness}) does not go through the bead's hole", at="thread", most="bead.hole",
                    help="or a bead with a larger hole", when="thread and bead.hole")
HIDDEN = (
    need("2 × thread.thickness ≤ bead.hole", "are led back, and two threads of {thread.thickness} do not go through the bead's hole ({bead.hole})", at="ends",
         help="trim them at the knot, a thinner thread, or a bead with a larger hole at each end", when="thread and bead.hole and ends is back_through and thread.thickness ≤ bead.hole",
         doubt=True, rule="thread-twice"),
    need("drawn_in ≤ bead.hole", "does not go into the bead's hole ({bead.hole})", at="drawn in", help="leave it beside the bead, under a cover, or take a bead with a larger hole",
         when="drawn_in and bead.hole", doubt=True, rule="knot-in-bead"),
)
