"""Templates at true size, alone, on pages, on the slab and for a cutter; the stage's front door."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.draw.cutter import for_cutter
from sheetgen.draw.diagrams import diagrams, kiln_curves
from sheetgen.draw.finished import finished
from sheetgen.draw.pages import pages
from sheetgen.draw.piece import alone, templates
from sheetgen.draw.signs import signs
from sheetgen.draw.slab import slabs
from sheetgen.draw.timetable import timetable
from sheetgen.model.drawing import Drawings

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.model.worked import Worked, WorkedVersion


def draw(worked: Worked, version: WorkedVersion, papers: Sequence[str]) -> Drawings:
    """Every drawing of a version, its template pages for each paper."""
    flat, rounder = templates(worked, version), worked.rounder
    return Drawings(
        templates={one.piece.name: alone(one) for one in flat},
        pages={paper: pages(flat, paper) for paper in papers} if flat else {},
        diagrams=diagrams(version),
        curves=kiln_curves(version, rounder),
        finished=finished(version, rounder),
        slabs=slabs(version.parts.values(), worked.slab, rounder) if worked.slab else (),
        cutting={one.piece.name: file for one in flat if (file := for_cutter(one))},
        signs=signs(version),
        timetable=timetable(version),
    )
