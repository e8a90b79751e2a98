"""The colourways of a version: each colour fits the seat of the design's own, and counts fill the seats."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from sheetgen.base.interval import ceil
from sheetgen.base.material import ONE_SIZE, Bead, Stone
from sheetgen.base.supply import counted_in
from sheetgen.base.trouble import Trouble
from sheetgen.model.kit import Colourway
from sheetgen.work.stopped import Stopped

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.base.interval import Interval
    from sheetgen.base.material import Item
    from sheetgen.base.place import Word
    from sheetgen.model.worked import WorkedVersion
    from sheetgen.work.evaluator import Evaluator
    from sheetgen.work.mixes import Mix

SIZES = {"size": "across", "width": "wide", "length": "long", "height": "high"}


class Seat(NamedTuple):
    """The item whose seats are filled, and how many there are."""

    item: Item
    many: int


class Colours(NamedTuple):
    """A mix, and its colours in stock."""

    mix: Mix
    items: tuple[Item, ...]


def seated(of: Word, version: WorkedVersion, evaluator: Evaluator) -> Seat | None:
    """The item whose seats are filled, and how many; None with its trouble noted, or where its number is in trouble."""
    try:
        item = evaluator.item(of)
    except Stopped:
        return None
    if evaluator.troubles.errors:
        return None
    line = next((line for line in version.materials if line.item.id == item.id), None)
    if line is None or line.net is None:
        evaluator.troubles.add(f"nothing here takes {item.name}, and so it has no seats", of.place, "name what is set")
        return None
    if item.unit != "piece":
        told = f"a colourway is of what is counted, and {item.name} is counted {counted_in(item.unit)}"
        evaluator.troubles.add(told, of.place, "name a stone or a bead of the design")
        return None
    return Seat(item, ceil(line.net.high))


def colours(mix: Mix, evaluator: Evaluator) -> Colours | None:
    """Its colours in stock; None with the trouble noted."""
    found = []
    for word, _ in mix.colours:
        try:
            found.append(evaluator.item(word))
        except Stopped:
            continue
    twice = next((item for i, item in enumerate(found) if item in found[:i]), None)
    if twice is not None:
        evaluator.troubles.add(f"{twice.name} is in '{mix.name}' twice", mix.name.place, "name each colour once")
        return None
    return Colours(mix, tuple(found)) if len(found) == len(mix.colours) else None


def misfits(of: Colours, seat: Item) -> list[Trouble]:
    """Which colours are of another sort or size than the design's own, both sizes named."""
    found = []
    for (word, _), item in zip(of.mix.colours, of.items, strict=True):
        if type(item) is not type(seat):
            told = f"{item.name} is a {type(item).__name__.lower()}, and the seat is for {seat.name}"
            found.append(Trouble(told, word.place, "name an item of the same sort and size"))
        else:
            told = " and ".join(
                f"is {mine} {name}, and the seat is for {own}" for name, mine, own in _apart(item, seat)
            )
            helped = f"name one of the size of {seat.name}"
            found += [Trouble(f"{item.name} {told}", word.place, helped)] if told else []
    return found


def colourway(of: Colours, seat: Seat, version: WorkedVersion, evaluator: Evaluator) -> Colourway | None:
    """The mix on these seats; None with its trouble noted."""
    (mix, items), before = of, len(evaluator.troubles.errors)
    if mix.by == "counts" and mix.whole != seat.many:
        told = f"'{mix.name}' counts {mix.whole}, and there are {seat.many} seats"
        evaluator.troubles.add(told, mix.name.place, f"{seat.many} in all, or parts: {mix.as_parts}")
    for (word, _), item in zip(mix.colours, items, strict=True):
        if _fired(seat.item, version) and (item.borne("kiln") or 0) < (seat.item.borne("kiln") or 0):
            told = f"{item.name} goes through the fire in the seat of {seat.item.name}, and does not bear as much"
            evaluator.troubles.add(told, word.place, "name one that bears the kiln, or set it after the last firing")
    if len(evaluator.troubles.errors) > before:
        return None
    named = tuple((item.id, number) for item, (_, number) in zip(items, mix.colours, strict=True))
    return Colourway(str(mix.name), seat.item, seat.many, mix.by, named, items, mix.name.place)


def _apart(item: Item, seat: Item) -> Iterator[tuple[str, str, str]]:
    """In which sizes an item does not lie within what the seat is made for."""
    if not isinstance(item, Stone | Bead):
        return
    for size, name in SIZES.items():
        mine, own = getattr(item, size, None), getattr(seat, size, None)
        if mine is not None and own is not None and not _within(mine, own):
            yield name, _said(mine), _said(own)


def _within(mine: Interval, own: Interval) -> bool:
    return mine.low > own.low - ONE_SIZE and mine.high < own.high + ONE_SIZE


def _said(size: Interval) -> str:
    return f"{size.usual:g} mm" if size.exact else f"{size.low:g}-{size.high:g} mm"


def _fired(item: Item, version: WorkedVersion) -> bool:
    """Whether it is in its seat at a firing."""
    first = next((i for i, step in enumerate(version.steps) if item in step.uses), None)
    return first is not None and any(step.clay is not None for step in version.steps[first:])
