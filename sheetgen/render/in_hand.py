"""What a step wants in hand: the items that it is written with under `uses`, and nothing that its words may hint at."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

from sheetgen.base.spelling import in_a_sentence

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.base.material import Item


def in_hand(uses: Sequence[Item]) -> str:
    """The items in a few words each, in the order in which they come to hand; nothing where the step names none.

    Items that are called alike are told apart by what follows: copper wire 16 AWG, copper wire 20 AWG.
    """
    names = [item.name.split(", ") for item in dict.fromkeys(uses)]
    alike = Counter(first for first, *_ in names)
    return ", ".join(in_a_sentence(" ".join(name[:2] if alike[name[0]] > 1 else name[:1])) for name in names)
