"""What a class takes besides its pupils' sets, as project and studio say it or as is common practice."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.facts.classes import SPARE_SET_FOR, TEACHERS_PIECE
from sheetgen.model.class_list import NONE, Besides
from sheetgen.work.classes import said

if TYPE_CHECKING:
    from sheetgen.model.project import Project
    from sheetgen.model.studio import Studio


def besides(project: Project, studio: Studio) -> Besides:
    """The teacher's piece, spare sets and places of the class of a design."""
    piece, spare, people = (said(name, project, studio) for name in ("teachers_piece", "a_spare_set_for", "people"))
    per = [0 if word == NONE else int(word) for word in spare]
    return Besides(
        teacher=int(piece[0] == "yes") if piece else int(TEACHERS_PIECE),
        per=per[0] if per else int(SPARE_SET_FOR),
        places=int(people[0]) if people else 0,
        where=people[0].place if people else None,
        usual=not piece or not per,
    )
