"""What a person means who writes what is left out of a kit, or all that is sent: stones, B, ear wires."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from sheetgen.base.spelling import bare, in_a_sentence, suggest, told_apart
from sheetgen.base.trouble import CannotBe
from sheetgen.kits.kit_lines import lines_of, sent_for
from sheetgen.kits.lists import station

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from sheetgen.base.material import Item
    from sheetgen.kits.taken import Kits


def called(kits: Kits, word: str) -> frozenset[str]:
    """The items of a kit that a word names, by their names in stock, and of a mix in the colours that are sent.

    One item or colour, by its name in stock, its printed name, so much of that as tells it apart, or the choice that it
    is; a bag, by its name or the letter that it begins with; or all that is picked at a station. CannotBe where it
    names nothing.
    """
    wanted, way = bare(word), kits.colourway
    colours = {item.id for item in way.items} if way else set()
    if colour := frozenset(item.id for name, item in _named(kits) if item.id in colours and bare(name) == wanted):
        return colour
    for names in (_items(kits), _bags(kits), _stations(kits)):
        found = frozenset(item.id for name, item in names if bare(name) == wanted)
        if found:
            return frozenset(sent for item in found for sent in sent_for(kits, item))
    raise CannotBe(f"there is no '{word}' in it", help=_helped(kits, word), field="only")


def _helped(kits: Kits, word: str) -> str:
    """The name that has the word in it, or all that may be written: bags, stations, and what lies in the kit.

    Items are named as they are printed, by so many words as tell them apart: a comma would part them in the cell.
    """
    sent = {item.id: item for item in (line.item for line in lines_of(kits, (kits,)))}
    bags = [bag.name for bag in kits.version.kit.bags] if kits.version.kit else []
    stations = [name for name, item in _stations(kits) if item.id in sent]
    known = list(dict.fromkeys((*bags, *stations, *map(in_a_sentence, _told(sent.values())))))
    having = [name for name in known if word.casefold() in re.findall(r"\w+", name.casefold())]
    return f"did you mean '{having[0]}'?" if len(having) == 1 else suggest(word, known)


def _told(items: Iterable[Item]) -> list[str]:
    return told_apart([item.name for item in items])


def _named(kits: Kits) -> Iterator[tuple[str, Item]]:
    """Every item of a kit by its own names."""
    version, way = kits.version, kits.colourway
    box = version.kit.in_the_box if version.kit else ()
    each = {one.id: one for one in (*(line.item for line in version.materials), *(way.items if way else ()), *box)}
    for item, told in zip(each.values(), _told(each.values()), strict=True):
        yield from ((name, item) for name in (item.id, item.name, told))


def _items(kits: Kits) -> Iterator[tuple[str, Item]]:
    """The same, and what a choice is, by the choice."""
    for name, item in _named(kits):
        yield name, item
        yield from ((choice, item) for choice, value in kits.version.choices.items() if value == item.id)


def _bags(kits: Kits) -> Iterator[tuple[str, Item]]:
    for bag in kits.version.kit.bags if kits.version.kit else ():
        letter, _, rest = bag.name.partition(" ")
        for name in (bag.name, *((letter, rest) if len(letter) == 1 and rest else ())):
            yield from ((name, item) for item in bag.items)


def _stations(kits: Kits) -> Iterator[tuple[str, Item]]:
    yield from ((station(line.item), line.item) for line in kits.version.materials if line.net is not None)
