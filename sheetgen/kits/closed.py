"""At which station each bag is closed: at the last one that puts something into it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.kits.kit_lines import bag_of, boxed

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from sheetgen.kits.taken import Held, Taken


def closed(at_each: Mapping[str, Sequence[Taken]]) -> dict[int, str]:
    """What is said of a bag at each thing that is put into it, by `id` of that; `at_each` is in the order of the way.

    Its last thing closes it; of the others it is said that more follows at this station, or at which it is closed.
    """
    filled: dict[tuple[int, str], list[tuple[str, Held]]] = {}
    for name, each in at_each.items():
        for one in each:
            for held in (each for each in one.held if each.kits.posted):
                if all(tool.id != one.item.id for tool in boxed(held.kits)):
                    bag = "" if held.kits.only else bag_of(held.kits, one.item) or ""
                    filled.setdefault((id(held.kits), bag), []).append((name, held))
    said: dict[int, str] = {}
    for puts in filled.values():
        last = puts[-1][0]
        said |= {id(held): f"closed at {last}" if name != last else "more follows here" for name, held in puts}
        said[id(puts[-1][1])] = "close the bag"
    return said
