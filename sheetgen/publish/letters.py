"""The letters of the stamps: our type face cut down to those that are used; with read/paths.py what knows fontTools."""

from __future__ import annotations

import io
import unicodedata
from dataclasses import dataclass
from typing import TYPE_CHECKING

from fontTools.subset import Options, Subsetter
from fontTools.ttLib import TTFont

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

EM = 1000  # a PDF measures type in thousandths of its size
POSTSCRIPT = 6  # the number of that name in a type face
TAG = "STAMPS"  # six capitals say that a face is a part of one: ISO 32000-1, 9.6.4


@dataclass(frozen=True)
class Letters:
    """A TrueType program, the glyph of each letter, widths by glyph; all measures in thousandths of the size."""

    program: bytes
    name: str
    glyphs: Mapping[str, int]
    widths: tuple[int, ...]
    box: tuple[int, ...]
    ascent: int
    descent: int
    capitals: int

    def width(self, words: str) -> float:
        """How wide words are, in sizes of the type."""
        return sum(self.widths[self.glyphs[letter]] for letter in words) / EM

    def coded(self, words: str) -> str:
        """Words as the glyphs of this face, in hexadecimal."""
        return "".join(f"{self.glyphs[letter]:04x}" for letter in words)


def lacking(face: bytes, numbers: Iterable[str]) -> list[str]:
    """Those of some order numbers that a type face cannot set letter by letter: it lacks one, or one joins another."""
    known = TTFont(io.BytesIO(face), lazy=True).getBestCmap()
    return [number for number in numbers if not all(ord(letter) in known and _stands(letter) for letter in number)]


def _stands(letter: str) -> bool:
    """Whether a letter stands by itself, as an accent that is put on another does not."""
    return unicodedata.category(letter)[0] not in "MC"


def letters(face: bytes, texts: Iterable[str]) -> Letters:
    """A type face with the letters of some texts alone. KeyError for one that it lacks."""
    wanted = sorted(set().union(*texts))
    font = TTFont(io.BytesIO(face), recalcTimestamp=False)
    name = font["name"].getDebugName(POSTSCRIPT)
    options = Options()
    options.hinting = False
    options.layout_features = []
    options.notdef_outline = True
    options.drop_tables += ["GPOS", "GSUB", "GDEF", "BASE", "DSIG", "gasp"]
    subsetter = Subsetter(options)
    subsetter.populate(unicodes=map(ord, wanted))
    subsetter.subset(font)
    written = io.BytesIO()
    font.save(written)
    cmap, scale = font.getBestCmap(), EM / font["head"].unitsPerEm
    head, lines = font["head"], font["hhea"]
    sizes = (head.xMin, head.yMin, head.xMax, head.yMax, lines.ascent, lines.descent, font["OS/2"].sCapHeight)
    *box, ascent, descent, capitals = (round(size * scale) for size in sizes)
    return Letters(
        written.getvalue(),
        f"{TAG}+{name}",
        {letter: font.getGlyphID(cmap[ord(letter)]) for letter in wanted},
        tuple(round(font["hmtx"][glyph][0] * scale) for glyph in font.getGlyphOrder()),
        tuple(box),
        ascent,
        descent,
        capitals,
    )
