"""What a printed page is checked by: a bar along its foot, and one upright beside the templates."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from sheetgen.facts.units import MM_PER_INCH

if TYPE_CHECKING:
    from sheetgen.base.pen import Pen

SIDE, FOOT = 13.0, 8.5  # the strips at the left and at the foot that the bars take, mm
X, Y = 7.0, 2.5  # where the bars stand in them, from the left and from the foot
END, MIDDLE, MARK = 2.0, 1.6, 1.1  # how far a tick reaches to both sides, mm


class Bar(NamedTuple):
    """A bar of so many steps, each so many mm, and its words."""

    steps: int
    step: float
    words: str

    @property
    def length(self) -> float:
        """From end to end, mm."""
        return self.steps * self.step


MM = (Bar(10, 10.0, "100 mm"), Bar(5, 10.0, "50 mm"))
INCHES = (Bar(8, MM_PER_INCH / 2, "4 in"), Bar(4, MM_PER_INCH / 2, "2 in"))


class Bars(NamedTuple):
    """Both bars of a page."""

    along: Bar
    upright: Bar

    @property
    def says(self) -> str:
        """In words, for who does not see them."""
        along, upright = self.along.words, self.upright.words
        return f"Two bars of {along}" if along == upright else f"Bars of {along} along and {upright} upright"

    def foot(self, tall: float) -> float:
        """Height of a drawing whose templates take so much."""
        return max(tall, self.upright.length) + FOOT


def bars_beside(tall: float, wide: float, *, inches: bool) -> Bars:
    """The bars of a page as wide as that, mm: the upright one is long where the templates are as tall anyhow."""
    long, short = INCHES if inches else MM
    return Bars(long if long.length + SIDE <= wide else short, long if tall >= long.length else short)


def draw_bars(pen: Pen, bars: Bars, foot: float) -> None:
    """Both bars, on a drawing whose foot is at `foot`."""
    y, (along, upright) = foot - Y, bars
    pen.line([(X, 0), (X, upright.length)], "cut")
    pen.line([(SIDE, y), (SIDE + along.length, y)], "cut")
    for i in range(upright.steps + 1):
        reach, at = _reach(upright, i), i * upright.step
        pen.line([(X - reach, at), (X + reach, at)], "thin")
    for i in range(along.steps + 1):
        reach, at = _reach(along, i), SIDE + i * along.step
        pen.line([(at, y - reach), (at, y + reach)], "thin")
    pen.text((X - END - 1.2, upright.length / 2), upright.words, anchor="middle", turn=-90)
    pen.text((SIDE + along.length + END, y + 1), along.words)


def _reach(bar: Bar, tick: int) -> float:
    if tick in {0, bar.steps}:
        return END
    return MIDDLE if 2 * tick == bar.steps else MARK
