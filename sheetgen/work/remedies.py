"""What would make a class fit: each change tried in its degrees, and named only where it does."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sheetgen.base.clock import MINUTES_PER_DAY as DAY
from sheetgen.base.interval import ceil
from sheetgen.model.plan import Remedy

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from sheetgen.base.material import Tool
    from sheetgen.model.plan import Held
    from sheetgen.work.stations import ClassWork, Room

PAIR = 2
MORE_EVENINGS = 3  # beyond these it is another course
LONGER = (15, 30, 45, 60)  # min: beyond these it is another evening


def remedies(of_class: ClassWork, room: Room, tools: Mapping[str, Tool]) -> Iterator[Remedy]:
    """The least of each change that by itself makes everything fit; where none does, how many people would."""

    def fits(tried: Room) -> bool:
        return not of_class.way(tried)[1].left

    found = False
    for remedy, tried in _changes(of_class, room, tools):
        one = next((number for number, change in tried if fits(change)), None)
        if one is not None:
            found = True
            yield Remedy(remedy.kind, one, remedy.tool)
    if not found:
        fewer = ((n, replace(room, makers=n)) for n in range(room.makers - 1, 0, -1))
        one = next((number for number, change in fewer if fits(change)), None)
        if one is not None:
            yield Remedy("people", one)


def _changes(
    of_class: ClassWork, room: Room, tools: Mapping[str, Tool]
) -> Iterator[tuple[Remedy, Iterator[tuple[int, Room]]]]:
    """What could be changed, and each in its degrees, the least first."""
    held = room.held
    further = (replace(held, evenings=(*held.evenings, *[held.evenings[-1]] * k)) for k in range(1, MORE_EVENINGS + 1))
    yield Remedy("evenings"), ((len(one.evenings), replace(room, held=one)) for one in further)
    short = dict.fromkeys(tool for i in range(len(of_class.steps)) for tool in of_class.rounds(i, room)[1])
    for tool in short:
        numbers = range(tools[tool.id].owned + 1, room.users(tool) + 1)
        yield Remedy("tool", tool=tool), ((n, replace(room, owned={**room.owned, tool.id: n})) for n in numbers)
    if room.makers > 1:
        yield Remedy("pairs"), iter([(ceil(room.makers / PAIR), replace(room, makers=ceil(room.makers / PAIR)))])
    latest = max(end for _, end in held.evenings)
    longer = ((k, tuple((begin, end + k) for begin, end in held.evenings)) for k in LONGER if latest + k <= DAY)
    yield Remedy("minutes"), ((k, replace(room, held=replace(held, evenings=hours))) for k, hours in longer)


def worded(remedy: Remedy, held: Held) -> str:
    """A change as a trouble tells it."""
    if remedy.kind == "tool" and remedy.tool is not None:
        return f"{remedy.number} of ‘{remedy.tool.name}’ in place of {remedy.tool.owned}"
    more = remedy.number - len(held.evenings)
    evening = "one more evening" if more == 1 else f"{more} more evenings"
    pairs = f"work in pairs, {remedy.number} pieces"
    minutes = f"{remedy.number} min more each evening"
    return {"evenings": evening, "pairs": pairs, "minutes": minutes, "people": f"{remedy.number} people"}[remedy.kind]
