"""A run of orders to the lines of the list of what was sent: each kind of kit, and of part, of an order once."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.kits.coded import code_of_kit
from sheetgen.kits.contents import contents
from sheetgen.model.sent import Sent, SentKit

if TYPE_CHECKING:
    import datetime as dt
    from collections.abc import Sequence

    from sheetgen.kits.ordered import Run
    from sheetgen.kits.taken import Kits, Taken


def kit_of(kits: Kits) -> SentKit:
    """A kind of kit as the list names it."""
    colourway = kits.colourway.name if kits.colourway is not None else ""
    without, only = tuple(sorted(kits.leave_out)), tuple(sorted(kits.only))
    return SentKit(kits.worked.name, kits.version.title, kits.choices, colourway, without, only)


def sent_of(run: Run, taken: Sequence[Taken], day: dt.date) -> list[Sent]:
    """What a run sends on a day. A part that is sent alone has no sheet, and so no fingerprint."""
    codes = {id(kits): code_of_kit(kits, contents(kits, taken)) for kits in run.kinds if not kits.only}
    found: dict[tuple[object, ...], Sent] = {}
    for order in run.orders:
        for part in order.parts:
            kit = kit_of(part.kits)
            before = found.get((order.number, kit.key))
            count = part.count + (before.count if before else 0)
            found[order.number, kit.key] = Sent(
                order.number, day, kit, count, codes.get(id(part.kits), ""), part.kits.worked.revision
            )
    return list(found.values())
