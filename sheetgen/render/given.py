"""The numbers that a step may print: those of the words it was given. A theme adds words to a step, but no number."""

from __future__ import annotations

import dataclasses
import re
from typing import TYPE_CHECKING, Any

from markupsafe import Markup

from sheetgen.model.view import Figure
from sheetgen.render.marked_html import APART
from sheetgen.render.words import UNIT

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.model.view import Row

NUMBER = re.compile(rf"(\d[\d.,/]*\d|\d)(?:[\s{APART}]*({UNIT})(?![\w²]))?")
NO_WIDTH = dict.fromkeys(map(ord, "\u00ad\u200b\u200c\u200d\u2060\ufeff"))


def numbers(text: str) -> set[str]:
    """The numbers of a text, each by itself or with the unit after it."""
    return {f"{found[1]} {found[2]}" if found[2] else found[1] for found in NUMBER.finditer(text.translate(NO_WIDTH))}


def is_unit(text: str) -> bool:
    """Whether words are a unit by itself, which a number may touch."""
    return re.fullmatch(UNIT, text.strip()) is not None


def given(row: Row) -> frozenset[str]:
    """The numbers of a row, with their units and without; of a list in order the numbers of its items too."""
    found = set().union(*map(numbers, _texts(dataclasses.replace(row, id=""))))
    items = row.text.count("<li>") if "<ol>" in row.text else 0
    return frozenset(found | {one.partition(" ")[0] for one in found} | {str(n + 1) for n in range(items)})


def _texts(value: Any) -> Iterator[str]:  # noqa: ANN401 - whatever a row has
    """Every text of it as it is read, but for what a drawing says itself."""
    if isinstance(value, int | str):
        text = str(value)
        if not text.startswith(("<svg", "data:")):
            yield Markup(text).striptags()  # noqa: S704 - only to be read
    elif isinstance(value, tuple):
        for one in value:
            yield from _texts(one)
    elif dataclasses.is_dataclass(value):
        fields = [getattr(value, field.name) for field in dataclasses.fields(value)]
        yield from _texts(tuple(fields))
        if isinstance(value, Figure):
            yield from _texts(f"{value.value} {value.unit}")
