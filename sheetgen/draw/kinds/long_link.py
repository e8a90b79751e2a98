"""Long link: the wire led straight round its pegs."""

from sheetgen.draw.kinds.pegs import drawn
from sheetgen.parts.long_link import LongLink

DRAWN = drawn(LongLink, crossed=False)
