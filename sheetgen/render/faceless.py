"""Letters that no type face on this machine has: found before a page is made, which would not be printed for one."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from markupsafe import escape

from sheetgen.base.trouble import Trouble
from sheetgen.render.shortening import clean

if TYPE_CHECKING:
    from collections.abc import Iterable

    from sheetgen.render.pdf import Printer

NO_LETTER = re.compile(r"\.notdef glyph .*\(U\+([0-9A-F]+)\)")
"""What is warned of a letter that no face has."""
BOX = "☐"
"""What is printed for such a letter."""
STYLE = "font-family: 'Source Sans Pro', sans-serif"


def faceless(printer: Printer, texts: Iterable[str]) -> frozenset[str]:
    """Those letters of some texts, as they are set, that no type face has."""
    strange = sorted({letter for text in texts for letter in clean(text) if not letter.isascii()})
    if not strange:
        return frozenset()
    _, _, said = printer.pieces(f'<html><body style="{STYLE}"><p>{" ".join(map(escape, strange))}</p></body></html>')
    return frozenset(chr(int(found[1], 16)) for line in said if (found := NO_LETTER.search(line)))


def boxed(text: str, bare: frozenset[str]) -> str:
    """A name as a page has it: what moves the words about it left out, a box for each letter that no face has."""
    return "".join(BOX if letter in bare else letter for letter in clean(text))


def without_letter(order: str, what: str) -> Trouble:
    """What is said of an order whose name or note has a letter that cannot be printed."""
    told = f"order {order}: its {what} has a letter that no type face on this machine has, and is not printed"
    return Trouble(told, None, "write it by hand, or install a face that has it (on Debian, fonts-noto)", "warning")
