"""A file to its words, and a later look at it: what a line in trouble already leads to is not told too."""

from __future__ import annotations

from contextlib import contextmanager
from typing import TYPE_CHECKING

from sheetgen.base.trouble import Troubles
from sheetgen.read.text import read_text
from sheetgen.read.yaml_words import Mapping, words

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from sheetgen.base.place import Place


def file_words(path: Path, name: str, troubles: Troubles) -> Mapping | None:
    """The words of a file; None when it cannot be read, with a trouble."""
    source = read_text(path, name, troubles)
    return words(source, troubles) if source else None


@contextmanager
def once_a_line(troubles: Troubles) -> Iterator[Troubles]:
    """Troubles of a later look at a file: what a line that is in trouble already leads to is not told too."""
    told = {_line(t.place) for t in troubles if t.place}
    more = Troubles()
    yield more
    troubles.extend(t for t in more if t.place is None or _line(t.place) not in told)


def _line(place: Place) -> tuple[object, ...]:
    return place.source.name, place.line, tuple(map(str, place.used_at))
