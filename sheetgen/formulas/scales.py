"""Trade names of sizes, each mapped to millimetres through one table or formula."""

from __future__ import annotations

import math
import re
from typing import TYPE_CHECKING

from sheetgen.base.arithmetic import Quantity, Wrong
from sheetgen.base.dimension import LENGTH, MONEY
from sheetgen.base.spread import Spread, over, spread
from sheetgen.facts.gauges import CARD
from sheetgen.formulas.gauges import awg, swg
from sheetgen.formulas.rings import iso_diameter, jp_diameter, uk_mm, us_diameter
from sheetgen.formulas.stones import pp_mm, ss_mm

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping


def _number(scale: str, text: str) -> float:
    plain = text.replace("½", ".5").replace(" 1/2", ".5").replace("1/2", ".5").strip()
    if not re.fullmatch(r"\d+(\.\d+)?", plain):
        raise Wrong(f"'{scale} {text}' is not a size", -1, 1, f"write {scale} 7 or {scale} 7½")
    return float(plain)


def size(scale: str, text: str) -> Quantity:
    """A ring size as an inside diameter, a stone size as the range of its width. Raises Wrong for an unknown one."""
    if scale == "UK":
        return Quantity(spread(uk_mm(text.replace(" 1/2", "½")) / math.pi), LENGTH)
    if scale == "SS" and not re.fullmatch(r"\d+", text):
        raise Wrong(f"'SS {text}' is not a size", -1, 1, "write SS 16")
    found: dict[str, Callable[[float], Spread | float]] = {
        "US": us_diameter, "ISO": iso_diameter, "JP": jp_diameter, "PP": pp_mm, "SS": ss_mm,
    }  # fmt: skip
    return Quantity(spread(found[scale](_number(scale, text))), LENGTH)


def _gauge(gauge: Callable[[float], float]) -> Callable[[Spread], Quantity]:
    def thickness(number: Spread) -> Quantity:
        return Quantity(over(gauge, number), LENGTH)

    return thickness


def units(currency: str) -> Mapping[str, Callable[[Spread], Quantity]]:
    """Units beyond the plain ones: wire gauges, clay cards and the studio's currency."""
    cards = {name: lambda n: Quantity(n * float(CARD), LENGTH) for name in ("card", "cards")}
    money = {currency: lambda n: Quantity(n, MONEY)} if currency else {}
    return {"awg": _gauge(awg), "swg": _gauge(swg), **cards, **money}
