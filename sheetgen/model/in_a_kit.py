"""Which of the printed numbers of a version the sheets of one kit print: handout, bench card and templates."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from sheetgen.model.fingerprint import CLASS, EVENING, LISTS, SAID, TEACHER, TIMES, USED

if TYPE_CHECKING:
    from collections.abc import Iterable

    from sheetgen.model.fingerprint import Number

NTH = re.compile(r" \d+$")  # behind a name that is there already


def in_a_kit(numbers: Iterable[Number]) -> list[Number]:
    """Those that the sheets of a kit print: none of a class or for its teacher.

    Of a stone whose seats the colours of the kit fill only the colours are printed, and not the stone's own amount.
    """
    numbers = list(numbers)
    parted = {one: NTH.sub("", one.key).partition(", ") for one in numbers}
    filled = {
        item for one, (item, _, colour) in parted.items() if one.group == LISTS and colour not in {"", USED, CLASS}
    }

    def elsewhere(one: Number) -> bool:
        first, _, then = parted[one]
        if one.group == LISTS:
            return then == CLASS or (first in filled and then in {"", USED})
        return (one.group == TIMES and first.startswith(EVENING)) or (one.group == SAID and first == TEACHER)

    return [one for one in numbers if not elsewhere(one)]
