"""Stone sizes by name (PP and SS), what stones weigh, and how they are seated."""

from __future__ import annotations

import itertools

from sheetgen.facts.fact import Fact

_TABLE = "a supplier's size conversion reference, PP 1 to 20 and SS 21 to 39"
_NOTE = "a costume-stone shop's note on SS sizes"
_GIA = "gemmology course pages on mounted diamond weight; a diamond forum post quoting GIA's formulas"

LEAST_FLOOR = Fact(
    0.5, "fired metal under a stone, least", unit="mm", source="common practice", grade="common practice"
)
LEAST_WEB = Fact(
    0.5,
    "wet clay between and beside seats, least",
    unit="mm",
    source="common practice",
    grade="common practice",
)
HIGH_BEZEL = Fact(
    2, "bezel wall past which it buckles, in thirds of the stone's height", unit="thirds",
    source="common practice; a jeweller's page has a third as the least", grade="common practice",
)  # fmt: skip

Class = tuple[Fact, Fact]


def _class(name: str, row: str, source: str) -> Class:
    low, high = row.split()
    return (
        Fact(float(low), f"{name}, smallest", unit="mm", source=source, grade="seen"),
        Fact(float(high), f"{name}, largest", unit="mm", source=source, grade="seen"),
    )


# PP 21 to 32 were not read: they are not here, and nothing is extrapolated.
_PP = "0.80 0.90 1.00 1.10 1.20 1.30 1.35 1.40 1.50 1.60 1.70 1.80 1.90 2.00 2.10 2.20 2.30 2.40 2.50 2.60 2.70"
PP = {
    n: _class(f"PP {n}", f"{low} {high}", _TABLE)
    for n, (low, high) in enumerate(itertools.pairwise(_PP.split(" ")), start=1)
}
_SS_OF_PP = {
    "000": "0.80 0.90", "00": "0.90 1.00", "0": "1.00 1.10", "1": "1.10 1.20", "2": "1.20 1.35", "3": "1.35 1.50",
    "4": "1.50 1.70", "5": "1.70 1.90", "6": "1.90 2.10", "7": "2.10 2.30", "8": "2.30 2.50", "9": "2.50 2.70",
    "21": "4.80 4.90", "24": "5.27 5.44", "26": "5.61 5.78", "28": "5.96 6.14", "29": "6.14 6.32", "30": "6.32 6.50",
    "32": "6.68 6.87", "34": "7.07 7.27", "36": "7.48 7.70", "39": "8.16 8.41",
}  # fmt: skip
_SS_OF_NOTE = {"12": "3.0 3.2", "16": "3.8 4.0", "20": "4.6 4.8"}
SS = {
    **{n: _class(f"SS {n}", row, _TABLE) for n, row in _SS_OF_PP.items()},
    **{n: _class(f"SS {n}", row, _NOTE) for n, row in _SS_OF_NOTE.items()},
}


def _weight(value: float, name: str) -> Fact:
    return Fact(value, name, unit="ct/mm³", source=_GIA, grade="seen")


ROUND_WEIGHT = _weight(0.0061, "weight factor, round brilliant diamond")
OVAL_WEIGHT = _weight(0.0062, "weight factor, oval diamond")
DIAMOND = Fact(3.52, "density of diamond", unit="g/cm³", source=_GIA, grade="seen")
