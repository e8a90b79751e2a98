"""What stock says that a design's things cost, pack by pack: on no sheet, and so in no fingerprint."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.exact import plain
from sheetgen.model.fingerprint import Number
from sheetgen.model.inputs import used

if TYPE_CHECKING:
    from decimal import Decimal

    from sheetgen.base.material import Item
    from sheetgen.base.supply import Pack
    from sheetgen.model.worked import Worked

PRICES = "prices"
METRE = 1000  # mm


def prices(worked: Worked) -> tuple[Number, ...]:
    """The price of each pack of all that the versions use and come in, so far as it is known."""
    items = {item.id: item for version in worked.versions.values() for item in used(version)}
    items |= {item.id: item for one in worked.versions.values() for way in one.colourways for item in way.items}
    found = {}
    for item in items.values():
        for pack in item.supply.packs:
            if pack.price is not None:
                size = _holds(pack, item)
                told = f"{_amount(pack.price)} {worked.studio.currency}"
                found[item.id, size] = Number(PRICES, f"{item.id}, {size}", f"{item.name}: {size}", told)
    return tuple(found[key] for key in sorted(found))


def _amount(price: Decimal) -> str:
    """38, and 2.40: no digit of cents by itself."""
    whole, point, cents = f"{price:f}".partition(".")
    cents = cents.rstrip("0")
    return f"{whole}{point}{cents:0<2}" if cents else whole


def _holds(pack: Pack, item: Item) -> str:
    many, unit = pack.holds, item.unit
    if unit == "mm" and many >= METRE:
        many, unit = many / METRE, "m"
    least = f", from {pack.at_least} on" if pack.at_least > 1 else ""
    if unit == "piece":
        return f"{plain(many)} piece{'s' * (many != 1)}{least}"
    return f"{plain(many)} {unit}{least}"
