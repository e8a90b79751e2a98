"""What a person means who writes what is left out of a kit, or all that is sent: stones, B, ear wires."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.spelling import bare, suggest
from sheetgen.base.trouble import CannotBe
from sheetgen.kits.kit_lines import sent_for
from sheetgen.kits.lists import station

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.base.material import Item
    from sheetgen.kits.taken import Kits


def called(kits: Kits, word: str) -> frozenset[str]:
    """The items of a kit that a word names, by their names in stock, and of a mix in the colours that are sent.

    One item or colour, by its name in stock, its printed name or the choice that it is; a bag, by its name or the
    letter that it begins with; or all that is picked at a station. CannotBe where it names nothing.
    """
    wanted, way = bare(word), kits.colourway
    if way and (colour := frozenset(item.id for item in way.items if wanted in {bare(item.id), bare(item.name)})):
        return colour
    for names in (_items(kits), _bags(kits), _stations(kits)):
        found = frozenset(item.id for name, item in names if bare(name) == wanted)
        if found:
            return frozenset(sent for item in found for sent in sent_for(kits, item))
    known = dict.fromkeys(name for names in (_bags(kits), _stations(kits), _items(kits)) for name, _ in names)
    raise CannotBe(f"there is no '{word}' in it", help=suggest(word, known), field="only")


def _items(kits: Kits) -> Iterator[tuple[str, Item]]:
    version, way = kits.version, kits.colourway
    box = version.kit.in_the_box if version.kit else ()
    for item in (*(line.item for line in version.materials), *(way.items if way else ()), *box):
        yield from ((name, item) for name in (item.id, item.name))
        yield from ((name, item) for name, value in version.choices.items() if value == item.id)


def _bags(kits: Kits) -> Iterator[tuple[str, Item]]:
    for bag in kits.version.kit.bags if kits.version.kit else ():
        letter, _, rest = bag.name.partition(" ")
        for name in (bag.name, *((letter, rest) if len(letter) == 1 and rest else ())):
            yield from ((name, item) for item in bag.items)


def _stations(kits: Kits) -> Iterator[tuple[str, Item]]:
    yield from ((station(line.item), line.item) for line in kits.version.materials if line.net is not None)
