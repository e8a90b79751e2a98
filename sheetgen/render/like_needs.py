"""Things of a list that are called alike but for a size: one line, each size with what to have of it."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from sheetgen.model.view import Html, Need, Sized

if TYPE_CHECKING:
    from collections.abc import Iterable

SIZE = re.compile(r" (\d{1,4}(?:\.\d{1,4})?)[ \u00a0]mm\b")
LEAST = 3  # own judgement: two lines are found as fast as one with two sizes


def gathered(needs: Iterable[Need]) -> tuple[Need, ...]:
    """The same things; three or more that are called alike but for a size stand where the first did, smallest first.

    It goes by what is printed and not by what things are: the line says of each size what its own line said.
    """
    listed = list(needs)
    alike: dict[tuple[str, str], list[Need]] = {}
    for need in listed:
        if need.amount and len(SIZE.findall(need.name)) == 1:
            alike.setdefault(_but_size(need), []).append(need)
    out: list[Need] = []
    for need in listed:
        same = alike.get(_but_size(need), [])
        if need not in same or len(same) < LEAST:
            out.append(need)
        elif need is same[0]:
            out.append(_line(same))
    return tuple(out)


def _but_size(need: Need) -> tuple[str, str]:
    return SIZE.sub("", need.name), need.detail


def _line(same: list[Need]) -> Need:
    sizes = sorted(
        (float(size), f"{size}\u00a0mm", one.amount, one.own) for one in same for size in SIZE.findall(one.name)
    )
    name, detail = _but_size(same[0])
    return Need(name, detail, Html(""), tuple(Sized(size, amount, own) for _, size, amount, own in sizes))
