"""Signs that no word of a file may hold: what moves a terminal, turns a line about, or is seen by nobody."""

from __future__ import annotations

import html
import re
from typing import TYPE_CHECKING

from sheetgen.base.spelling import blank

if TYPE_CHECKING:
    from sheetgen.base.place import Place
    from sheetgen.base.trouble import Troubles

# Of no alphabet: private ones, with some of which the program marks its own pages, and what Unicode says never to be
# a letter.
NEVER = "".join(f"{chr(plane << 16 | 0xFFFE)}{chr(plane << 16 | 0xFFFF)}" for plane in range(17))
PRIVATE = re.compile(f"[\ue000-\uf8ff\ufdd0-\ufdef\U000f0000-\U0010ffff{NEVER}]")
# Commands to a terminal; marks of direction, which letters of Hebrew or Arabic do not need; half letters; tags.
NO_LETTER = re.compile(
    "[\x00-\x08\x0b-\x1f\x7f-\x9f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff\ufff9-\ufffc\ud800-\udfff"
    "\U000e0000-\U000e007f]"
)
REFUSED = ((PRIVATE, "belongs to no alphabet"), (NO_LETTER, "moves or hides what stands beside it"))

REFERENCE = re.compile(r"&(?:#[0-9]{1,9}|#[xX][0-9a-fA-F]{1,8}|[A-Za-z]{2,32});?")  # a sign as HTML writes it


def printable_words(text: str, place: Place, troubles: Troubles) -> str:
    """A word as it can be printed; of what it cannot hold the first sign is told, and so is what nobody would see."""
    for signs, what in REFUSED:
        if strange := signs.search(text):
            troubles.add(f"the sign U+{ord(strange[0]):04X} {what}", place, "it cannot be printed; take it out")
            text = signs.sub("\ufffd", text)
    for written in REFERENCE.findall(text):  # of the private ones the page takes care
        if strange := NO_LETTER.search(html.unescape(written)):
            told = f"the sign U+{ord(strange[0]):04X}, written {written}, moves or hides what stands beside it"
            troubles.add(told, place, "it cannot be printed; take it out")
            text = text.replace(written, "\ufffd")
            break
    if text and blank(text):
        troubles.add("this has nothing in it", place, "fill it in or take it out")
    return text
