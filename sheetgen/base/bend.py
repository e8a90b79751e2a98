"""A form of bent wire as a person writes it: "straight 12 mm, arc 5 mm 180 left, straight 20 mm"."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.base.tree import Wrong

if TYPE_CHECKING:
    from sheetgen.base.cases import Cases

MOST = 40
MOST_DEGREES = 720
TURN, BARE = re.compile(r"\d+(?:[.,]\d+)?"), re.compile(r"[\d.,]+")
_EXAMPLE = "write straight 12 mm, or arc 5 mm 180 left"


@dataclass(frozen=True, slots=True)
class Bend:
    """One piece of the form: a straight of a length, or an arc of an inside diameter (mm) and degrees turned."""

    size: Cases
    degrees: float = 0
    left: bool = False


@dataclass(frozen=True, slots=True)
class WrittenBend:
    """One piece with its measure not yet worked: the text of the measure and where it stands."""

    size: str
    at: int
    degrees: float = 0
    left: bool = False


def read_bends(text: str) -> list[WrittenBend]:
    """The pieces of a form in their order. Raises Wrong with the character to blame."""
    found = [_piece(piece, at) for piece, at in _pieces(text)]
    if len(found) > MOST:
        raise Wrong(f"a form of {len(found)} pieces is too long", 0, 1, f"at most {MOST}")
    return found


def _pieces(text: str) -> list[tuple[str, int]]:
    """The text between commas that are followed by a space, semicolons or line ends, brackets kept whole."""
    found, start, deep = [], 0, 0
    for at, c in enumerate(f"{text};"):
        deep += (c == "(") - (c == ")")
        after = text[at + 1 : at + 2]
        if at == len(text) or (deep <= 0 and (c in ";\n" or (c == "," and (not after or not after.isdigit())))):
            piece = text[start:at]
            if piece.strip():
                found.append((piece.strip(), start + len(piece) - len(piece.lstrip())))
            elif c != "\n" and (at < len(text) or not found):
                raise Wrong("a piece is missing here", min(at, max(0, len(text) - 1)), 1, _EXAMPLE)
            start = at + 1
    return found


def _piece(piece: str, at: int) -> WrittenBend:
    word, _, rest = piece.partition(" ")
    if word == "straight" and rest.strip():
        return WrittenBend(rest.strip(), at + piece.index(rest.strip(), len(word)))
    if word != "arc":
        raise Wrong(f"'{piece}' is no straight and no arc", at, len(piece), _EXAMPLE)
    said, _, side = piece.rpartition(" ")
    if side not in {"left", "right"}:
        said, side = piece, ""
    *wide, far = said.rstrip().removesuffix("°").rsplit(maxsplit=1)
    size = wide[0].removeprefix("arc").strip() if wide else ""
    if not size or not TURN.fullmatch(far) or BARE.fullmatch(size):
        helped = "its inside diameter, then its degrees: arc 5 mm 180"
        raise Wrong(f"'{piece}' does not say how wide and how far it bends", at, len(piece), helped)
    degrees = float(far.replace(",", "."))
    if not 0 < degrees <= MOST_DEGREES:
        helped = f"more than 0 and at most {MOST_DEGREES} degrees"
        raise Wrong(f"a bend cannot be {far} degrees", at + piece.rindex(far), len(far), helped)
    return WrittenBend(size, at + piece.index(size, len("arc")), degrees, side == "left")
