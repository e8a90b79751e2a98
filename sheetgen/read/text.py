"""A file to its text: bytes that are not UTF-8, not text, or too many are troubles."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from sheetgen.base.place import Place, Source

if TYPE_CHECKING:
    from pathlib import Path

    from sheetgen.base.trouble import Troubles

LARGEST = 1_000_000
STRAY = 8
"""Bytes of nothing in a text that a bad disk or a slip may have left: they are told where they stand."""


def read_text(path: Path, name: str, troubles: Troubles, most: int = LARGEST) -> Source | None:
    """The text of a file of so many bytes at most under the name shown to people; None, with a trouble, if unread."""
    try:
        size = path.stat().st_size
        if not path.is_file() or not path.resolve().is_relative_to(path.parent.resolve()):
            outside = path.is_file()  # its lines would be shown
            message = "the file is a link to one outside its folder" if outside else "is not a file"
            troubles.add(message, Place(Source(name)), "copy it here" if outside else "a file is wanted here")
            return None
        if size > most:
            message = f"the file is {size / 1e6:.1f} MB long"
            troubles.add(message, Place(Source(name)), "a project is some kilobytes; is this the right file?")
            return None
        raw = path.read_bytes()
    except OSError as fault:
        troubles.add(
            f"the file cannot be read: {fault.strerror}", Place(Source(name)), "is it there, and may you read it?"
        )
        return None
    if raw[:8192].count(0) > STRAY or raw[:4] in {b"%PDF", b"PK\x03\x04", b"\x89PNG"}:
        troubles.add("the file is not text", Place(Source(name)), "write it anew in a plain text editor")
        return None
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError as fault:
        head = raw[: fault.start]
        start = head.rfind(b"\n") + 1
        source = Source(name, raw.decode("utf-8", "replace"))
        place = Place(source, head.count(b"\n") + 1, len(head[start:].decode("utf-8", "replace")) + 1)
        troubles.add("the file is not in UTF-8", place, "open it in a text editor and save it with the encoding UTF-8")
        return None
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    # YAML takes these for ends of lines and no editor shows them so; they come in with pasted text.
    text = re.sub("[\x85\u2028\u2029]", " ", text)
    return Source(name, text)
