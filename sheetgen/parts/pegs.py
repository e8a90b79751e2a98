"""What links bent round two pegs share: the pegs, the gap between them, how long the link comes out."""

from __future__ import annotations

from abc import ABC, abstractmethod
from typing import TYPE_CHECKING, ClassVar

from sheetgen.base import sketches
from sheetgen.base.figure import Made
from sheetgen.base.like import said
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.pegs import inside_pitch
from sheetgen.parts.kind import Finding, figure
from sheetgen.parts.wire_piece import WirePiece, drawer_worked, from_drawer, too_tight

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from sheetgen.base.figure import Size
    from sheetgen.base.pen import Pen
    from sheetgen.base.spread import Spread
    from sheetgen.parts.given import Given


class PegPair(WirePiece, ABC):
    """A kind says how its two ends' fields are called, whether the wire crosses, and how wire and gap are worked."""

    ends: ClassVar[tuple[str, str]]
    crossed: ClassVar[bool]

    peg: Given[Spread | None]
    second_peg: Given[Spread | None]
    gap: Given[Spread | None]
    length: Given[Spread | None]

    @property
    @abstractmethod
    def insides(self) -> tuple[Spread | None, Spread | None]:
        """The insides wanted of both ends, mm."""

    @abstractmethod
    def between(self) -> Spread:
        """The gap between the pegs, given or from the length, mm. CannotBe where the wire or the pegs do not fit."""

    @abstractmethod
    def belt(self) -> Spread:
        """The wire in one link, mm."""

    @property
    @abstractmethod
    def one_worked(self) -> str:
        """How the wire of one link is worked."""

    @property
    def second(self) -> tuple[Spread | None, Spread | None]:
        """Inside wanted and peg given for the second end: as the first, when the file gives neither."""
        first, second = self.insides
        own = second is not None or self.second_peg is not None
        return (second, self.second_peg) if own else (first, self.peg)

    @property
    def first_worked(self) -> str:
        """How the first peg is worked."""
        return drawer_worked(self, "peg", self.insides[0], self.peg)

    @property
    def second_worked(self) -> str:
        """How the second peg is worked."""
        return drawer_worked(self, "peg", *self.second)

    @figure("First peg", "mm", "{first_worked}")
    def peg_used(self) -> float:
        """The first end comes out at this inside."""
        return from_drawer(self, "peg", self.insides[0], self.peg, self.ends[0])

    @figure("Second peg", "mm", "{second_worked}")
    def second_used(self) -> float:
        """The second end comes out at this inside."""
        return from_drawer(self, "peg", *self.second, self.ends[1 if self.insides[1] else 0])

    @property
    def gap_worked(self) -> str:
        """How the gap is worked."""
        if self.gap is not None:
            return f"{self.gap.usual:.6g}"
        pegs = f"{self.peg_used.usual:.6g} − {self.second_used.usual:.6g}"
        return f"{self.length.usual if self.length else 0:.6g} − 2 × {self.wire.thickness:.6g} − {pegs}"

    @figure("Gap between the pegs", "mm", "{gap_worked}", rounding="tenth")
    def clear(self) -> Spread:
        """Clear gap between the pegs."""
        if (self.gap is None) == (self.length is None):
            raise CannotBe("a link wants its gap or its length, one of the two", "give one", "gap")
        return self.between()

    @figure("Peg centres apart", "mm", "{clear} + ({peg_used} + {second_used}) ÷ 2", rounding="tenth")
    def centres(self) -> Spread:
        """Centre to centre on the jig."""
        return self.clear + (self.peg_used + self.second_used) / 2

    @figure("Wire in one link", "mm", "{one_worked}", rounding="tenth")
    def one(self) -> Spread:
        """Along the middle of the wire."""
        return self.belt()

    @figure("Inside, loop to loop", "mm", "{clear} + {peg_used} + {second_used}", rounding="tenth")
    def pitch(self) -> Spread:
        """What one link adds to a chain pulled taut."""
        return inside_pitch(self.peg_used, self.second_used, self.clear)

    @figure("Length over all", "mm", "{pitch} + 2 × {wire.thickness}", rounding="tenth")
    def outside(self) -> Spread:
        """Outside length of one link."""
        return self.pitch + 2 * self.wire.thickness

    def made(self) -> Iterator[Made]:
        """Pegs, gap and wire."""
        yield Made("wire for one", "cut", tool="ruler")
        yield Made("pegs, centre to centre", "centres", tool="jig")
        yield Made("length over all", "outside", self.length, None, "as bent, not hammered")

    def diagram(self, pen: Pen, size: Callable[[str], Size], k: float) -> str:
        """The two pegs and the wire's path."""
        first, second, apart, gap = (size(name).words for name in ("peg_used", "second_used", "centres", "clear"))
        words = (f"gap {gap}", f"{apart} apart", f"pegs {first} and {second}, cut {size('cut').words}")
        pegs = (self.peg_used.usual, self.second_used.usual, self.clear.usual)
        sketches.two_pegs(pen, *pegs, self.wire.thickness, words, k, crossed=self.crossed)
        way = "crosswise" if self.crossed else "straight"
        return said(
            size("cut"),
            f"Wire led {way} round two pegs of {first} and {second} mm, {words[1]} from centre to centre, clear {words[0]} mm",
        )

    def view(self, pen: Pen) -> float:
        """The link hanging, its first end above."""
        d = self.wire.thickness
        upper, lower = (self.peg_used.usual + d) / 2, (self.second_used.usual + d) / 2
        path, top = sketches.belt(upper, lower, self.centres.usual, crossed=self.crossed), upper + d / 2
        hung = [(-y, top + x) for x, y in path]
        sketches.wire(pen, hung, d, closed=True)
        if self.crossed:
            sketches.crossed_over(pen, hung, d)
        return self.outside.usual - d

    def tools(self) -> Iterator[tuple[str, float]]:
        """The pegs."""
        yield "peg", self.peg_used.usual
        yield "peg", self.second_used.usual

    def check(self) -> Iterator[Finding]:
        """The next link's wire goes into an end as wide as the wire, and a peg that is given is in the drawer."""
        pegs = {"peg": self.peg, "second peg": self.second_peg}
        yield from too_tight(self.wire, dict(zip(self.ends, self.insides, strict=True)) | pegs)
        for field, peg in pegs.items():
            if peg:
                yield from self.not_owned("peg", peg.usual, field)
