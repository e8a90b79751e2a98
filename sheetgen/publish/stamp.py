"""A stamp at the foot of a page: the number of its order, and which sheet or page of it this is; at a head it alone.

It is black, in our type face, in the margin under the theme's own foot and over its head, and an artifact: read by an
eye, not read aloud. A number with letters that the face lacks comes ready drawn, as a page of its own size.
"""

from __future__ import annotations

import io
from typing import TYPE_CHECKING, Any

from pikepdf import Array, ContentStreamInstruction, Dictionary, Name, Pdf, parse_content_stream, unparse_content_stream

from sheetgen.base.trouble import CannotBe
from sheetgen.facts.paper import ORDER_SIZE, PRINTER_EDGE, PT_PER_INCH, STAMP_SIZE
from sheetgen.facts.units import MM_PER_INCH
from sheetgen.publish.letters import EM, lacking, letters

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from pikepdf import Object, Page, Stream

    from sheetgen.publish.letters import Letters

Box = tuple[float, float, float, float]
"""Left, bottom, right and top of a page in pt."""
EDGE = PRINTER_EDGE * PT_PER_INCH / MM_PER_INCH
SIZE, LARGE = float(STAMP_SIZE), float(ORDER_SIZE)
BOLD = 0.04  # of its size a letter is drawn round with so wide a line, and so is bold in the one face that there is
FACE = Name("/OrderStamp")
HEAD = "/Artifact <</Type /Pagination /Subtype /Header>> BDC"
FOOT = "/Artifact <</Type /Pagination /Subtype /Footer>> BDC"
MARKS = {"BMC", "BDC", "EMC", "MP", "DP"}
AT_ONCE = 100  # entries of one block in a table of letters: ISO 32000-1, 9.10.3


class Stamps:
    """The stamps of one PDF, `pdf`: each is a stream of a line, and all share the face.

    `drawn` are the numbers that come ready. Raises CannotBe for one that the face lacks and that does not.
    """

    def __init__(
        self, pdf: Pdf, face: bytes, numbers: Sequence[str], words: Iterable[str], drawn: Mapping[str, bytes]
    ) -> None:
        if bare := [number for number in lacking(face, numbers) if number not in drawn]:
            raise CannotBe(
                f"order {bare[0]}: our type face lacks a letter of this number", "have it drawn, or use Latin letters"
            )
        self.pdf = pdf
        self.letters = letters(face, [*words, *(number for number in numbers if number not in drawn)])
        self.face = _face(pdf, self.letters)
        self.opening = pdf.make_stream(b"q")
        self.forms: dict[str, tuple[Name, Stream, float, float]] = {}
        for at, number in enumerate(number for number in dict.fromkeys(numbers) if number in drawn):
            self.forms[number] = (Name(f"/OrderNumber{at}"), *_form(pdf, drawn[number]))

    def equip(self, resources: Object) -> None:
        """Put the face, and the numbers that are drawn, among what a page is painted with."""
        for kind, named in (
            ("/Font", {FACE: self.face}),
            ("/XObject", {name: form for name, form, *_ in self.forms.values()}),
        ):
            if named and kind not in resources:
                resources[kind] = Dictionary()
            for name, one in named.items():
                resources[kind][name] = one

    def stamp(self, number: str, words: str, box: Box) -> Stream:
        """The stream that stamps a page of such a box, after `opening` and what else the page holds.

        CannotBe where a number is too long for the page: it is never shortened.
        """
        left, bottom, right, _ = box
        name, _, wide, tall = self.forms.get(number, (None, None, 0.0, 0.0))
        text = words if name else number + words
        whole = wide + self.letters.width(text) * SIZE
        if whole > right - left - 2 * EDGE:
            paper = (right - left) * MM_PER_INCH / PT_PER_INCH
            raise CannotBe(
                f"order {number}: its number does not fit on a line of paper {paper:.0f} mm wide",
                "a shorter number, or wider paper",
            )
        x, foot = (left + right - whole) / 2, bottom + EDGE
        base = foot - self.letters.descent / EM * SIZE
        low = foot + ((self.letters.ascent - self.letters.descent) / EM * SIZE - tall) / 2  # on the middle of the line
        put = f"q 1 0 0 1 {x:.2f} {low:.2f} cm {name} Do Q " if name else ""
        line = f"BT {FACE} {SIZE:g} Tf {x + wide:.2f} {base:.2f} Td <{self.letters.coded(text)}> Tj ET"
        return self.pdf.make_stream(f"Q {FOOT} q 0 g {put}{line} Q EMC".encode())

    def head(self, number: str, box: Box) -> Stream:
        """The stream, after the stamp, that puts the number in bold at the upper right, where an order begins."""
        left, _, right, top = box
        name, _, wide, tall = self.forms.get(number, (None, None, 0.0, 0.0))
        whole = wide * LARGE / SIZE if name else self.letters.width(number) * LARGE
        scale = min(1.0, (right - left - 2 * EDGE) / (whole + BOLD * LARGE))
        size = LARGE * scale
        x = right - EDGE - BOLD * size / 2 - whole * scale  # bold goes on beyond the letter
        if name:
            grown = size / SIZE
            put = f"{grown:.4f} 0 0 {grown:.4f} {x:.2f} {top - EDGE - tall * grown:.2f} cm {name} Do"
        else:
            base = top - EDGE - self.letters.ascent / EM * size
            coded = f"<{self.letters.coded(number)}>"
            put = f"BT 2 Tr {BOLD * size:.2f} w {FACE} {size:g} Tf {x:.2f} {base:.2f} Td {coded} Tj ET"
        return self.pdf.make_stream(f"{HEAD} q 0 g 0 G {put} Q EMC".encode())


def box_of(page: Page) -> Box:
    """The box that a page is cut to."""
    left, bottom, right, top = (float(at) for at in page.trimbox)
    return left, bottom, right, top


def _form(pdf: Pdf, drawn: bytes) -> tuple[Stream, float, float]:
    """A number that is ready drawn, its width and height in pt: without the marks of a text that is read aloud."""
    with Pdf.open(io.BytesIO(drawn)) as source:
        page = source.pages[0]
        kept = [
            one
            for one in parse_content_stream(page)
            if not isinstance(one, ContentStreamInstruction) or str(one.operator) not in MARKS
        ]
        page.Contents = source.make_stream(unparse_content_stream(kept))
        left, bottom, right, top = box_of(page)
        form: Any = pdf.copy_foreign(page.as_form_xobject())
        return form, right - left, top - bottom


def _face(pdf: Pdf, face: Letters) -> Object:
    """A type face within a PDF, its letters by their glyphs: ISO 32000-1, 9.7."""
    described = Dictionary(
        Type=Name.FontDescriptor, FontName=Name(f"/{face.name}"), Flags=4, FontBBox=Array(face.box), ItalicAngle=0,
        Ascent=face.ascent, Descent=face.descent, CapHeight=face.capitals, StemV=80,
        FontFile2=pdf.make_stream(face.program, Length1=len(face.program)),
    )  # fmt: skip
    letters_of = Dictionary(
        Type=Name.Font, Subtype=Name.CIDFontType2, BaseFont=Name(f"/{face.name}"),
        CIDSystemInfo=Dictionary(Registry="Adobe", Ordering="Identity", Supplement=0),
        FontDescriptor=pdf.make_indirect(described), CIDToGIDMap=Name.Identity, W=Array([0, Array(face.widths)]),
    )  # fmt: skip
    return pdf.make_indirect(
        Dictionary(
            Type=Name.Font, Subtype=Name.Type0, BaseFont=Name(f"/{face.name}"), Encoding=Name("/Identity-H"),
            DescendantFonts=Array([pdf.make_indirect(letters_of)]), ToUnicode=pdf.make_stream(_copied_as(face)),
        )
    )  # fmt: skip


def _copied_as(face: Letters) -> bytes:
    """Which letter each glyph is, so that a stamp can be copied and searched."""
    told = {glyph: letter for letter, glyph in reversed(list(face.glyphs.items()))}
    rows = [f"<{glyph:04x}> <{letter.encode('utf-16-be').hex()}>" for glyph, letter in sorted(told.items())]
    blocks = [rows[at : at + AT_ONCE] for at in range(0, len(rows), AT_ONCE)]
    return "\n".join(
        [
            "/CIDInit /ProcSet findresource begin 12 dict begin begincmap",
            "/CIDSystemInfo <</Registry (Adobe) /Ordering (UCS) /Supplement 0>> def",
            "/CMapName /Adobe-Identity-UCS def /CMapType 2 def",
            "1 begincodespacerange <0000> <ffff> endcodespacerange",
            *("\n".join([f"{len(block)} beginbfchar", *block, "endbfchar"]) for block in blocks),
            "endcmap CMapName currentdict /CMap defineresource pop end end",
        ]
    ).encode()
