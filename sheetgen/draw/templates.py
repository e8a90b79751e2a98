"""Templates at true size, alone, on pages, on the slab and for a cutter; the stage's front door."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sheetgen.draw.cutter import for_cutter
from sheetgen.draw.diagrams import diagrams
from sheetgen.draw.finished import finished
from sheetgen.draw.pages import pages, room
from sheetgen.draw.piece import alone, templates
from sheetgen.draw.program import programs
from sheetgen.draw.signs import signs
from sheetgen.draw.timetable import timetable
from sheetgen.model.drawing import Drawings

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.model.worked import Worked, WorkedVersion


def draw(worked: Worked, version: WorkedVersion, papers: Sequence[str]) -> Drawings:
    """Every drawing of a version, its template pages for each paper."""
    flat, rounder = templates(version), worked.rounder
    rooms = {paper: room(paper) for paper in papers}
    laid = (
        {one: pages(tuple(flat), one, inches=rounder.inches) for one in dict.fromkeys(rooms.values())} if flat else {}
    )
    return Drawings(
        templates={one.piece.name: alone(one) for one in flat},
        pages={paper: tuple(replace(page, paper=paper) for page in laid[one]) for paper, one in rooms.items() if laid},
        diagrams=diagrams(version),
        curves=programs(version, rounder),
        narrow_curves=programs(version, rounder, stacked=True),
        finished=finished(version, rounder),
        slabs=version.slabs,
        cutting={one.piece.name: file for one in flat if (file := for_cutter(one))},
        signs=signs(version),
        timetable=timetable(version),
        labels={one.piece.name: (one.title, one.label) for one in flat},
    )
