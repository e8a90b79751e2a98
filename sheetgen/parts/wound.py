"""What a strip of clay wound round a former shares, tube or ring: its release sheet, its length and its clay.

Figures stand here and are named in each kind where its own order wants them.
"""

from __future__ import annotations

from typing import ClassVar

from sheetgen.parts import field
from sheetgen.parts.clay_piece import CLAY_AS_CUT, bears
from sheetgen.parts.figure import Need, aside, figure, need
from sheetgen.parts.kind import Part


# fmt: off
class Wound(Part):
    """A kind says what it is wound on, as `wet_inside`, and how wide its strip is."""

    thickness = field.length("thickness the clay is rolled to at last", above=0, role="rolled to")
    rolled_first = field.maybe_length("thickness it is rolled to before the texture", above=0, role="rolled first")
    release_sheet = field.length("thickness of the release sheet round the former", default="0 mm", at_least=0)
    turns = field.count("turns of release sheet", default="1", at_least=0, at_most=10)
    grain = field.one_of("the way the texture's grain runs, as the template lies", "none", "along", "across", role="grain")
    texture = bears()
    overlap = field.length("overlap to cut through, wet", default="4 mm", at_least=0)

    sheeted = aside("mm", "2 × turns × release_sheet")
    takes = (CLAY_AS_CUT,)
    needs: ClassVar[tuple[Need, ...]] = (
        need("overlap > 0 mm", "is nothing: ends that are cut to meet leave a gap as they dry", at="overlap", help="{3 mm} to {6 mm}, cut through both layers at once",
             doubt=True, rule="no-overlap"),
    )


strip_meets = figure("Strip, ends meet", "mm", "strip_round(wet_inside, thickness)", "tenth", about="Round the former, where the two ends meet.")
strip_cut = figure("Strip, cut", "mm", "strip_meets + overlap", "bench up", about="Round the former, with the overlap.")
