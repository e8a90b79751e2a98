"""Figure-eight link: the wire led crosswise round its pegs."""

from sheetgen.draw.kinds.pegs import drawn
from sheetgen.parts.figure_eight import FigureEight

DRAWN = drawn(FigureEight, crossed=True)
