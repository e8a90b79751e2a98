"""A picture made ready for the page: from the bytes of its file to what is printed, or why it cannot be."""

from __future__ import annotations

import base64
import hashlib
from collections import OrderedDict
from dataclasses import dataclass
from pathlib import PurePath

from sheetgen.base.trouble import CannotBe

MOST_BYTES = 40_000_000
MOST_KEPT = 32  # pictures: the sheets of a design share theirs
_KEPT: OrderedDict[tuple[str, bytes], Ready] = OrderedDict()


@dataclass(frozen=True, slots=True)
class Ready:
    """What is printed: its kind (`svg+xml`, `png`, `jpeg`), its bytes, and the title of a drawing that has one.

    Of a bitmap `width` and `height` are its pixels. Nothing of the file is in it that does not show.
    """

    kind: str
    data: bytes
    title: str = ""
    width: int = 0
    height: int = 0

    @property
    def uri(self) -> str:
        """It as a data URI."""
        return f"data:image/{self.kind};base64," + base64.b64encode(self.data).decode()


def small_enough(name: str, size: int) -> None:
    """Raises CannotBe for a file that is not worth reading."""
    if size > MOST_BYTES:
        raise CannotBe(f"the picture '{name}' is {size / 1e6:.0f} MB large", "make it smaller")


def ready(name: str, raw: bytes) -> Ready:
    """The picture in a file of that name. Raises CannotBe for what is none, is cut short, or asks for too much."""
    small_enough(name, len(raw))
    key = PurePath(name).suffix.lower(), hashlib.sha256(raw).digest()
    if key in _KEPT:
        _KEPT.move_to_end(key)
        return _KEPT[key]
    try:
        made = _drawing(raw) if key[0] == ".svg" else _bitmap(raw)
    except CannotBe as fault:
        raise CannotBe(f"'{name}' {fault.message}", fault.help) from None
    _KEPT[key] = made
    if len(_KEPT) > MOST_KEPT:
        _KEPT.popitem(last=False)
    return made


def _drawing(raw: bytes) -> Ready:
    from sheetgen.pictures.drawing import drawing  # noqa: PLC0415 - not where a library has none

    data, title = drawing(raw)
    return Ready("svg+xml", data, title)


def _bitmap(raw: bytes) -> Ready:
    from sheetgen.pictures.bitmap import bitmap  # noqa: PLC0415 - heavy

    made = bitmap(raw)
    return Ready(made.kind, made.data, "", made.width, made.height)
