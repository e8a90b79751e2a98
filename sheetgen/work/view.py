"""The view of the finished piece: which parts stand where, as the project says."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.spelling import plain, suggest
from sheetgen.base.spot import Spot
from sheetgen.model.worked import TURNED, Stood
from sheetgen.work.fields import spot
from sheetgen.work.stopped import Stopped

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.model.project import Standing
    from sheetgen.work.evaluator import Evaluator


def view(evaluator: Evaluator) -> tuple[Stood, ...]:
    """Every part of the view in its order; what cannot stand is told and left out."""
    return tuple(_stood(evaluator))


def _stood(evaluator: Evaluator) -> Iterator[Stood]:
    standing: list[str] = []
    for one in evaluator.project.view:
        if plain(one.part) not in evaluator.parts:
            evaluator.troubles.add(f"there is no part '{one.part}'", one.part.place, suggest(one.part, evaluator.parts))
            continue
        if str(one.turned) not in TURNED:
            evaluator.troubles.add(f"turned cannot be '{one.turned}'", one.turned.place, f"one of {', '.join(TURNED)}")
        above = one.hangs_from
        if above is not None and plain(above) not in standing:
            known = suggest(above, standing) if standing else "at: 0 mm, 0 mm"
            evaluator.troubles.add(f"'{above}' does not stand in this view before it", above.place, known)
            continue
        at = _spot(one, evaluator)
        standing.append(plain(one.part))
        yield Stood(plain(one.part), at.x, at.y, plain(above) if above is not None else "", str(one.turned))


def _spot(one: Standing, evaluator: Evaluator) -> Spot:
    try:
        return spot(evaluator, one.at) if one.at is not None else Spot(0.0, 0.0)
    except Stopped:
        return Spot(0.0, 0.0)
