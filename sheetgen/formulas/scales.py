"""Trade names of sizes, each mapped to millimetres through one table or formula, made known to arithmetic."""

from __future__ import annotations

import math
import re

from sheetgen.base.interval import Interval, interval
from sheetgen.base.literals import GAUGES, SCALES
from sheetgen.base.tree import Wrong
from sheetgen.facts.gauges import CARD
from sheetgen.formulas.gauges import awg, swg
from sheetgen.formulas.rings import iso_diameter, jp_diameter, uk_mm, us_diameter
from sheetgen.formulas.stones import pp_mm, ss_mm


def _number(scale: str, text: str) -> float:
    plain = text.replace("½", ".5").replace(" 1/2", ".5").replace("1/2", ".5").replace(",", ".").strip()
    if not re.fullmatch(r"\d+(\.\d+)?", plain):
        raise Wrong(f"'{scale} {text}' is not a size", -1, 1, f"write {scale} 7 or {scale} 7½")
    return float(plain)


def _ss(text: str) -> Interval:
    if not re.fullmatch(r"\d+", text):
        raise Wrong(f"'SS {text}' is not a size", -1, 1, "write SS 16")
    return interval(ss_mm(_number("SS", text)))


SCALES |= {
    "US": lambda text: interval(us_diameter.pure(_number("US", text))),
    "UK": lambda text: interval(uk_mm(text.replace(" 1/2", "½")) / math.pi),
    "ISO": lambda text: interval(iso_diameter.pure(_number("ISO", text))),
    "JP": lambda text: interval(jp_diameter.pure(_number("JP", text))),
    "PP": lambda text: interval(pp_mm(_number("PP", text))),
    "SS": _ss,
}
GAUGES |= {"awg": awg.pure, "swg": swg, "card": lambda n: n * float(CARD), "cards": lambda n: n * float(CARD)}
