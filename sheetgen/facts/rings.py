"""Ring-size systems: their straight lines from a size to millimetres or inches."""

from __future__ import annotations

from sheetgen.facts.fact import Fact

_A = "Wikipedia, Ring size, citing the Bureau of Standards circular"
_UK = "GNU Units 2.22, size?ring, after BS 6820:1987"

US_BASE = Fact(0.458, "US ring size 0, inside diameter", unit="in", source=_A, grade="seen")
US_STEP = Fact(0.032, "US ring size, one size of diameter", unit="in", source=_A, grade="seen")
UK_BASE = Fact(40, "UK ring size C, inside circumference", unit="mm", source=_UK, grade="library")
UK_STEP = Fact(1.25, "UK ring size, one letter of circumference", unit="mm", source=_UK, grade="library")
UK_FIRST = Fact(-2, "UK ring size A, letters from C", unit="letters", source=_UK, grade="library")
JP_BASE = Fact(
    38, "Japanese ring size, offset", unit="thirds of a mm", source="GNU Units 2.22, jpringsize()", grade="library"
)
JP_PER_MM = Fact(
    3,
    "Japanese ring sizes to a millimetre of diameter",
    unit="1/mm",
    source="GNU Units 2.22, jpringsize()",
    grade="library",
)
WIDE_BAND = Fact(
    4,
    "band width above which a ring blank is lengthened",
    unit="mm",
    source="supplier article, Measuring a ring blank",
    grade="seen",
)
WIDE_BAND_EXTRA = Fact(
    0.5, "extra length of a wide ring blank", unit="mm", source="supplier article, Measuring a ring blank", grade="seen"
)
WIDE_BAND_SIZE_FROM = Fact(
    6, "band width from which half a US size is added", unit="mm", source="common practice", grade="common practice"
)
WIDE_BAND_SIZES_UP = Fact(
    0.5, "US sizes added to a wide band", unit="size", source="common practice", grade="common practice"
)
LARGEST_FORMER = Fact(
    16, "US size at the end of a ring former", unit="size", source="common practice", grade="common practice"
)
FORMER_OFF = Fact(
    0.5, "how far off the former of a ring may be, US", unit="size", source="common practice", grade="common practice"
)
FIRED_OFF = Fact(1, "how unevenly a ring may fire, US", unit="size", source="common practice", grade="common practice")
FINGER = Fact(26, "widest inside of a ring for a finger", unit="mm", source="common practice", grade="common practice")
THUMB = Fact(30, "widest inside of a ring for a thumb", unit="mm", source="common practice", grade="common practice")
LEAST_BAND = Fact(1.3, "thinnest band, fired", unit="mm", source="common practice", grade="common practice")
BROAD_BAND = Fact(
    8, "band width from which it must be made larger", unit="mm", source="common practice", grade="common practice"
)
