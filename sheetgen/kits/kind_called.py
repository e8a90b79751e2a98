"""What a kind of kit is called: what was chosen first, then what of its version still holds; and what its parts are."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from sheetgen.base.spelling import in_a_sentence, told_apart

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from sheetgen.kits.taken import Kits

BAG = "bag "
PART = ", "
"""What parts the words of a version's name."""


def choice(name: str, value: str, item: str) -> str:
    """A choice in words: size US 8; ring wire: copper wire (20 AWG, soft)."""
    first, _, rest = item.partition(PART)
    return f"{name}: {in_a_sentence(first)}{f' ({rest})' if rest else ''}" if item else f"{name} {value}"


def still_holds(title: str, own: Iterable[tuple[str, str]]) -> str:
    """A version's name without the parts that what was chosen makes untrue; it may be empty.

    `own` is what the version has by itself of each choice. Copper, wrist 160 mm: of another wrist Copper; US 7: of
    another size nothing. Whoever packs reads a size once, and the true one.
    """
    said = filter(None, (_spaced(words) for pair in own for words in pair))
    untrue = [re.compile(rf"(?<![\w.,]){words}(?![.,]?\w)", re.IGNORECASE) for words in said]
    return PART.join(part for part in title.split(PART) if not any(one.search(part) for one in untrue))


def _spaced(words: str) -> str:
    """Words as an expression that finds them, however they are spaced: `ring size`, `160 mm`, `160mm`."""
    return r"[\s_-]*".join(map(re.escape, re.findall(r"\d+(?:[.,]\d+)?|[^\W\d]+|[^\w\s-]", words)))


def parts_told(kits: Kits, ids: frozenset[str]) -> Iterator[str]:
    """Items as a person calls them: a bag where they are all that is in it, else by their printed names.

    Of a name as much as tells it from the others in the kit.
    """
    kit, way, rest = kits.version.kit, kits.colourway, set(ids)
    for bag in kit.bags if kit else ():
        inside = {item.id for item in bag.items}
        if way and way.of.id in inside:
            inside = inside - {way.of.id} | {item.id for item in way.items}
        if inside and inside <= rest:
            rest -= inside
            yield f"{BAG}{bag.name}"
    box = kit.in_the_box if kit else ()
    items = (*(line.item for line in kits.version.materials), *(way.items if way else ()), *box)
    known = {item.id: item.name for item in items}
    yield from (
        in_a_sentence(told) for id_, told in zip(known, told_apart(list(known.values())), strict=True) if id_ in rest
    )
