"""Ring blank: a strip of sheet or a length of wire, bent round and closed edge to edge."""

from __future__ import annotations

from collections.abc import Iterator

from sheetgen.base.flat import Flat, box
from sheetgen.base.material import Sheet, Wire
from sheetgen.facts.rings import FINGER, UK_BASE, UK_FIRST, UK_STEP, US_BASE, WIDE_BAND, WIDE_BAND_EXTRA
from sheetgen.facts.units import MM_PER_INCH
from sheetgen.facts.wires import RING_TIGHT
from sheetgen.parts import field, from_sheet
from sheetgen.parts.closed_strip import ClosedStrip
from sheetgen.parts.figure import aside, figure, flag, need
from sheetgen.parts.figure import size as made
from sheetgen.parts.piece import Piece
from sheetgen.parts.wire_piece import take_wire

US_0 = f"{US_BASE * MM_PER_INCH:.6g} mm"  # inside, the smallest ring that any scale here has a name for
UK_A, UK_Z = (f"{UK_BASE + UK_STEP * (UK_FIRST + letters):g} mm" for letters in (0, 25.5))  # round the finger, A to Z½


def flat(piece: Piece) -> Iterator[Flat]:
    """The strip, or the wire as it lies."""
    wide = piece[RingBlank.strip] if piece.has(RingBlank.strip) else piece.usual(RingBlank.thick)
    yield Flat(box(piece[RingBlank.cut], wide))


# fmt: off
class RingBlank(ClosedStrip):
    """π × (inside + thickness), and 0.5 mm more for a band wider than 4 mm (supplier article, Measuring a ring blank).

    US sizes by 0.458 + 0.032 × size, in inches. Filing, planishing and stretching change a ring, by how much is not
    known here; the middle layer keeps its length only where the metal is thin beside the finger.
    """

    kind = "ring blank"

    sheet = field.maybe_item(Sheet, "the sheet; or give the wire", role="made of")
    wire = field.maybe_item(Wire, "the wire; or give the sheet", role="made of")
    size = field.length("the finger's ring size, as US 7, UK N½, ISO 54 or JP 14, or an inside diameter", above=0)
    width = field.maybe_length("finished width of a band of sheet", above=0)
    worn = field.one_of("where it is worn: of a ring for a finger its sizes are told", "on a finger", "elsewhere")
    wide_band = field.one_of("whether a band wider than 4 mm is given its 0.5 mm more", "lengthened", "as given")
    trim = field.length("length added for sawing and filing the ends square", default="0.5 mm", at_least=0)
    kerf = field.length("sheet lost at each cut; nothing for shears", default="0 mm", at_least=0)

    either = (("sheet", "wire"),)

    thick = aside("mm", "sheet.thickness if sheet else wire.thickness")
    wide = aside("mm", "width if sheet else wire.thickness",
                 needs=(need("width", "wants the finished width of the band", at="sheet", help="width: 4 mm", when="sheet"),))
    finger = flag(f"worn is on_a_finger and size.low ≥ {US_0} and size.high ≤ {FINGER:g} mm")

    extra = figure("Added for a wide band", "mm", f"{WIDE_BAND_EXTRA:g} mm if wide_band is lengthened and wide > {WIDE_BAND:g} mm else 0 mm",
                   about="A wide band wants more room than a narrow one of the same size.")
    meets = figure("Blank, ends meet", "mm", "strip_round(size, thick) + extra", "tenth", about="Along the middle of the thickness, edge to edge.")
    cut = figure("Blank, cut", "mm", "meets + trim", "bench up", about="With what is filed off the ends.")
    outside = figure("Outside, finished", "mm", "size + 2 × thick + extra ÷ π", "out", about="Outside diameter of the closed ring, not stretched.")
    us = figure("US size", "US", "us(size)", when="finger", about="Of the finger.")
    uk = figure("UK size", "UK", "uk(size)", when=f"finger and π × size.low ≥ {UK_A} and π × size.high ≤ {UK_Z}",
                about="Of the finger: letters counted from C.")
    iso = figure("ISO size", "ISO", "iso(size)", when="finger", about="Of the finger: its round in mm.")
    jp = figure("JP size", "JP", "jp(size)", when="finger and jp(size.low) ≥ 1", about="Of the finger.")
    area = from_sheet.share("Share of a sheet for one", "sheet", "cut", "strip", gap="kerf", at="size", when="sheet")
    strip = figure("Strip width", "mm", "wide", "tenth", when="sheet", about="Across the strip.")
    per_spool = figure("Rings from one spool", "", "down(wire.spool ÷ cut)", "whole", when="wire and wire.spool",
                       about="How many one pack of the wire gives.")
    mass = figure("Weight, each", "g",
                  "meets × wide × sheet.thickness × sheet.density ÷ 1000 mm³/cm³ if sheet else wire_grams(wire.thickness, meets, wire.density)",
                  about="The closed ring.", role="metal mass")

    sizes = (
        made("blank, with its trim", "cut", tool="ruler"),
        made("blank, width", "strip", finished="width", tool="dividers", when="sheet"),
    )
    takes = (
        from_sheet.take_sheet("sheet", "area", "cut", "strip", when="sheet"),
        take_wire("wire", "count × cut", each="cut", when="wire"),
    )
    needs = (
        need("not width", "is that of the wire, in a ring of round wire", at="width", help="take it out, or give the sheet", when="wire"),
        need("wire.longest ≥ cut", "holds {wire.longest} a pack, and one ring is {cut}", at="wire", when="wire and wire.longest"),
        need(f"size ≥ {RING_TIGHT:g} × thick", "bends metal of {thick} tighter than twice its thickness", at="size", least=f"{RING_TIGHT:g} × thick", help="or thinner metal"),
    )
    flat = flat
