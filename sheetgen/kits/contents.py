"""What lies in one kit: its bags with what each holds, the tools in its box, and what must be to hand besides."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING

from sheetgen.base.material import Wire
from sheetgen.base.spelling import in_turn
from sheetgen.kits.kit_lines import bag_of, boxed, every_line, goes_in

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.base.material import Item
    from sheetgen.kits.taken import Kits, Taken


@dataclass(frozen=True, slots=True)
class Content:
    """One thing in a bag: how much, and how much of that is to spare; `each` is None of what is used as needed.

    `unit` is the item's, or names a piece by its `sides`, mm: a bag may hold pieces of several sizes.
    """

    item: Item
    each: Fraction | None
    spare: Fraction
    unit: str
    sides: tuple[Fraction, Fraction] | None = None


@dataclass(frozen=True, slots=True)
class Bag:
    """A bag by its name, empty where the design names none; what is in it stands in the order of the materials."""

    name: str
    contents: tuple[Content, ...]


@dataclass(frozen=True, slots=True)
class Contents:
    """All of one kit. `lacking` are the materials of the piece, and `tools` its tools, that do not come with it.

    What the piece takes is in a bag or is lacking: nothing is in neither.
    """

    bags: tuple[Bag, ...]
    in_the_box: tuple[Item, ...]
    lacking: tuple[Item, ...]
    tools: tuple[Item, ...]

    @property
    def ask(self) -> tuple[Item, ...]:
        """What is in it of which the carrier, and the local rules, must be asked first."""
        return tuple({item.id: item for item in self.inside if item.supply.post}.values())

    @property
    def inside(self) -> tuple[Item, ...]:
        """All that is in it."""
        return (*(one.item for bag in self.bags for one in bag.contents), *self.in_the_box)


def contents(kits: Kits, run: Sequence[Taken]) -> Contents:
    """One kit of a kind, out of what the `run` that it belongs to takes: its numbers are those of the run's lists."""
    version = kits.version
    box = boxed(kits)
    tools = {item.id for item in box}
    found: dict[str, list[Content]] = {bag.name: [] for bag in (version.kit.bags if version.kit else ())}
    for taken in (one for one in run if one.item.id not in tools):
        for held in (one for one in taken.held if one.kits is kits):
            content = Content(taken.item, held.each, held.spare, held.unit, held.sides)
            found.setdefault(bag_of(kits, taken.item) or "", []).append(content)
    for line in version.materials:
        if line.net is None and goes_in(kits, line):
            some = Content(line.item, None, Fraction(0), line.item.unit)
            found.setdefault(bag_of(kits, line.item) or "", []).append(some)
    lines = list(every_line(kits))
    order = {line.item.id: at for at, line in reversed(list(enumerate(lines)))}
    for each in found.values():
        each.sort(key=lambda one: order.get(one.item.id, len(lines)))
        _wires_in_turn(each)
    inside = {one.item.id for each in found.values() for one in each}
    lacking = {line.item.id: line.item for line in lines if line.item.id not in inside}
    return Contents(
        bags=tuple(Bag(name, tuple(each)) for name, each in found.items() if each),
        in_the_box=box,
        lacking=tuple(lacking.values()),
        tools=tuple(line.item for line in version.tools if line.item.id not in tools),
    )


def _wires_in_turn(each: list[Content]) -> None:
    """The wires of a bag in the order of the lists, where the first of them stands."""
    wires = sorted((one for one in each if isinstance(one.item, Wire)), key=lambda one: in_turn(one.item.name))
    if wires:
        first = next(at for at, one in enumerate(each) if isinstance(one.item, Wire))
        others = [one for one in each if not isinstance(one.item, Wire)]
        each[:] = [*others[:first], *wires, *others[first:]]
