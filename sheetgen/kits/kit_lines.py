"""What a kit takes from stock, line by line: without what is left out, and with its colours in place of its stone."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sheetgen.base.interval import interval
from sheetgen.kits.colours import Colourway, in_a_bag, in_a_pot
from sheetgen.model.worked import MaterialLine

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.base.material import Item
    from sheetgen.kits.colours import Allotted
    from sheetgen.kits.taken import Kits


BOXED = "in the box"
"""Where the tools of a kit lie, as every list and card says it."""


def where_it_is_made(kits: Kits) -> Kits:
    """The same kits at a table, or at the studio's own bench: nothing of them is left out, lies in a box or is sent."""
    return replace(kits, version=replace(kits.version, kit=None), posted=False)


def lines_of(kits: Kits, run: Sequence[Kits]) -> Iterator[MaterialLine]:
    """The lines that a kit takes: its materials, of what is posted those in its bags, and the tools in its box.

    Of a mix that the whole `run` takes from one pot, a line has one kit's share of it, which need not be whole.
    """
    for line in kits.version.materials:
        if goes_in(kits, line):
            yield from (one for one in _coloured(kits, line, run) if _wanted(kits, one.item))
    yield from (MaterialLine(tool, interval(1), use="in the box") for tool in boxed(kits))


def boxed(kits: Kits) -> tuple[Item, ...]:
    """The tools that lie in its box."""
    box = kits.version.kit.in_the_box if kits.version.kit else ()
    return tuple(tool for tool in box if _wanted(kits, tool))


def bags_are_empty(kits: Kits) -> bool:
    """Whether all that would lie in its bags is left out, so that nothing but its sheets and its box is sent."""
    box = {tool.id for tool in boxed(kits)}
    return bool(kits.leave_out) and all(line.item.id in box for line in lines_of(kits, (kits,)))


def every_line(kits: Kits) -> Iterator[MaterialLine]:
    """All that the piece takes in its own colours, whether or not it comes with the kit."""
    for line in kits.version.materials:
        yield from _coloured(kits, line)


def goes_in(kits: Kits, line: MaterialLine) -> bool:
    """Whether a line of the version is taken for a kit, in its own colour or another.

    What is posted without a kit of its design is all that is told by amount; the filling of a firing box is not.
    """
    kit, sent = kits.version.kit, sent_for(kits, line.item.id)
    if kits.only:
        return bool(kits.only & sent)
    if sent <= kits.leave_out or (kit and any(one.id == line.item.id for one in kit.leave_out)):
        return False
    if not kits.posted:
        return True
    return bag_of(kits, line.item) is not None if kit and kit.bags else line.net is not None and not line.filling


def sent_for(kits: Kits, item: str) -> frozenset[str]:
    """What lies in a kit for an item of its design: of the stone whose seats a colourway fills, the colours."""
    way = kits.colourway
    return frozenset(one.id for one in way.items) if way and way.of.id == item else frozenset((item,))


def _wanted(kits: Kits, item: Item) -> bool:
    """Whether an item, in the colour that is sent, is among what is ordered."""
    return item.id not in kits.leave_out and (not kits.only or item.id in kits.only)


def bag_of(kits: Kits, item: Item) -> str | None:
    """The bag that an item lies in: of a colour, that of the design's own stone. None where it is in none."""
    way, kit = kits.colourway, kits.version.kit
    wanted = way.of.id if way and any(one.id == item.id for one in way.items) else item.id
    bags = kit.bags if kit else ()
    return next((bag.name for bag in bags if any(one.id == wanted for one in bag.items)), None)


def place_of(kits: Kits, item: Item) -> str:
    """Where in a kit an item lies: bag B stones; in the box. Empty where bags have no names, or it is sent alone."""
    if kits.only:
        return ""
    if any(tool.id == item.id for tool in boxed(kits)):
        return BOXED
    bag = bag_of(kits, item)
    return f"bag {bag}" if bag else ""


def _coloured(kits: Kits, line: MaterialLine, run: Sequence[Kits] = ()) -> Iterator[MaterialLine]:
    """The line, or of the stone whose seats a colourway fills a line for each colour, with as many as one kit gets.

    Without a `run` it is a bag by itself.
    """
    way = kits.colourway
    if way is None or way.of.id != line.item.id:
        yield line
        return
    items = {item.id: item for item in way.items}
    mates = mixed_together(kits, run)
    pot = sum(one.colourway.seats * one.bags for one in mates if one.colourway)
    for colour, many in pot_of(mates) if mates else in_a_bag(Colourway(way.by, way.colours), way.seats):
        if many:
            net = many * way.seats / pot if mates else many
            yield replace(line, item=items[colour], net=interval(net), spent=None, working=f"{way.name}: {many}")


def mixed_together(kits: Kits, run: Sequence[Kits]) -> tuple[Kits, ...]:
    """The kits of a run whose seats one mix in a pot fills, these among them; none where each is allotted by itself.

    What is counted is counted for each piece, and what is posted lies in bags, each allotted by itself.
    """
    way = kits.colourway
    if way is None or way.by == "counts":
        return ()
    found = [one for one in run if one.colourway and (one.colourway.by, one.colourway.colours) == (way.by, way.colours)]
    return () if any(one.posted for one in found) else tuple(found)


def pot_of(mates: Sequence[Kits]) -> Allotted:
    """How many of each colour stand on the table for all seats of kits that are mixed together: allotted once."""
    ways = [(one.colourway, one.bags) for one in mates if one.colourway]
    first = ways[0][0]
    return in_a_pot(Colourway(first.by, first.colours), 1, sum(way.seats * bags for way, bags in ways))
