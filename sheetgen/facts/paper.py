"""Paper, screens, codes and colours: what a printed page is measured by."""

from __future__ import annotations

from sheetgen.facts.fact import Fact
from sheetgen.facts.units import MM_PER_INCH

_PAPER = "ISO 216 and ANSI/ASME Y14.1 as in papersize 1.6.1"
_CSS = "CSS Values as in pint 0.24.4"
_QR = "ISO/IEC 18004 as in segno 1.6.6"
_WCAG = "W3C, WCAG 2.2, relative luminance"
_GUIDE = "ISO/IEC Guide 37:2012, read as GOST R 56018-2014"
_UNREAD = "as remembered, not read"


def _sheet(name: str, width: float, height: float) -> tuple[Fact, Fact]:
    return (
        Fact(width, f"{name}, width", unit="mm", source=_PAPER, grade="library"),
        Fact(height, f"{name}, height", unit="mm", source=_PAPER, grade="library"),
    )


PAPERS = {
    "A3": _sheet("A3", 297, 420),
    "A4": _sheet("A4", 210, 297),
    "A5": _sheet("A5", 148, 210),
    "A6": _sheet("A6", 105, 148),
    "B5": _sheet("B5", 176, 250),
    "Letter": _sheet("Letter", 8.5 * MM_PER_INCH, 11 * MM_PER_INCH),
    "Tabloid": _sheet("ANSI B", 11 * MM_PER_INCH, 17 * MM_PER_INCH),
}
CARD_WIDTH = Fact(85.60, "ID-1 card, width", unit="mm", source="ISO/IEC 7810 as remembered, not read", grade="memory")
CARD_HEIGHT = Fact(53.98, "ID-1 card, height", unit="mm", source="ISO/IEC 7810 as remembered, not read", grade="memory")
PX_PER_INCH = Fact(96, "CSS pixels in an inch", unit="px", source=_CSS, grade="library")
PT_PER_INCH = Fact(72, "points in an inch", unit="pt", source=_CSS, grade="library")
SCALE_LEAST = Fact(
    0.995, "print scale, least that passes", unit="ratio", source="common practice", grade="common practice"
)
SCALE_MOST = Fact(
    1.005, "print scale, most that passes", unit="ratio", source="common practice", grade="common practice"
)
QR_BASE = Fact(17, "QR code, modules a side before the version", unit="modules", source=_QR, grade="library")
QR_STEP = Fact(4, "QR code, modules a side for each version", unit="modules", source=_QR, grade="library")
QR_QUIET = Fact(4, "QR code, quiet modules at each edge", unit="modules", source=_QR, grade="library")
QR_LAST = Fact(40, "QR code, largest version", unit="version", source=_QR, grade="library")
QR_MODULE = Fact(0.4, "QR code, least module for a phone", unit="mm", source="common practice", grade="common practice")
LABEL_CODE = Fact(20, "QR code on a label, side", unit="mm", source="common practice", grade="common practice")
LABEL_WIDE = Fact(36, "label of a bag, width, least", unit="mm", source="common practice", grade="common practice")
LABEL_TALL = Fact(20, "label of a bag, height, least", unit="mm", source="common practice", grade="common practice")
RED = Fact(0.2126, "share of red in luminance", unit="share", source=_WCAG, grade="seen")
GREEN = Fact(0.7152, "share of green in luminance", unit="share", source=_WCAG, grade="seen")
BLUE = Fact(0.0722, "share of blue in luminance", unit="share", source=_WCAG, grade="seen")
LINEAR_TO = Fact(0.04045, "colour value up to which light goes straight", unit="share", source=_WCAG, grade="seen")
LINEAR_BY = Fact(12.92, "colour value over light on the straight part", unit="ratio", source=_WCAG, grade="seen")
CURVE_OFFSET = Fact(0.055, "colour curve, offset", unit="share", source=_WCAG, grade="seen")
CURVE_POWER = Fact(2.4, "colour curve, power", unit="power", source=_WCAG, grade="seen")
FLARE = Fact(0.05, "stray light added to both sides of a contrast", unit="share", source=_WCAG, grade="seen")
CONTRAST_TEXT = Fact(4.5, "contrast of text, least", unit="ratio", source="W3C, WCAG 2.2", grade="seen")
CONTRAST_LARGE = Fact(
    3, "contrast of large text and graphics, least", unit="ratio", source="W3C, WCAG 2.2", grade="seen"
)
LARGE_TYPE = Fact(18, "large text, least", unit="pt", source="W3C, WCAG 2.2", grade="seen")
LARGE_BOLD = Fact(14, "large text that is bold, least", unit="pt", source="W3C, WCAG 2.2", grade="seen")
CONTRAST_MOST = Fact(7, "contrast of text, enhanced", unit="ratio", source="W3C, WCAG 2.2", grade="seen")
COLOUR_STEPS = Fact(255, "steps of one colour of a screen", unit="steps", source="W3C, WCAG 2.2", grade="seen")
TYPE_BODY = Fact(10, "running text, least", unit="pt", source=_GUIDE, grade="seen")
TYPE_REVERSED = Fact(12, "white on dark text, least", unit="pt", source=_GUIDE, grade="seen")
TYPE_WARNING = Fact(12, "limits and warnings, least wanted", unit="pt", source=_GUIDE, grade="seen")
CUT_TOLERANCE_SMALL = Fact(1.5, "cutting tolerance of paper up to 150 mm", unit="mm", source=_UNREAD, grade="memory")
CUT_TOLERANCE = Fact(2, "cutting tolerance of paper up to 600 mm", unit="mm", source=_UNREAD, grade="memory")
TYPE_LEAST = Fact(6, "type that counts as printed, least", unit="pt", source="common practice", grade="common practice")
PAGE_FULL = Fact(1 / 3, "page, how full it is at least", unit="share", source="own judgement", grade="own judgement")
FIRST_FULL = Fact(
    0.8, "first side, how full it is before another way to set the sheet is tried", unit="share",
    source="own judgement", grade="own judgement",
)  # fmt: skip
TIGHTER = Fact(
    0.07, "page, what setting it tighter gives at most", unit="share",
    source="own judgement; 0.06 as measured on the demonstration", grade="own judgement",
)  # fmt: skip
LINES_OVERLAP = Fact(0.3, "lines of type, overlap that shows", unit="mm", source="own judgement", grade="own judgement")
APART_FROM_STEP = Fact(
    20,
    "caution above or under the other words of its step, most that is beside it",
    unit="mm",
    source="own judgement",
    grade="own judgement",
)
COLUMN_SPARE = Fact(
    1, "column beside what stands in it, least to spare", unit="mm", source="own judgement", grade="own judgement"
)
PRINTER_EDGE = Fact(
    0.25 * MM_PER_INCH, "edge that a printer leaves white, most", unit="mm",
    source="common practice, a quarter of an inch; 4.2 mm with most laser printers", grade="common practice",
)  # fmt: skip
STAMP_SIZE = Fact(
    9, "type of a stamp at the foot of a sheet", unit="pt", source="common practice", grade="common practice"
)
ORDER_SIZE = Fact(
    14, "type of an order's number where its sheets begin", unit="pt", source="common practice",
    grade="common practice",
)  # fmt: skip
