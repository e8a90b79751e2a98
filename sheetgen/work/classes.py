"""A design made by a class: how it is held, its evenings and what is between, and a warning where it does not fit."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.clock import evening
from sheetgen.base.frozen import Frozen
from sheetgen.base.measure import measure
from sheetgen.facts.times import DAYS_BETWEEN
from sheetgen.model.plan import ClassPlan, Held
from sheetgen.work.class_loads import ClassLoads
from sheetgen.work.remedies import remedies, worded
from sheetgen.work.stations import ClassWork, Room, counted
from sheetgen.work.timetable import between, evenings

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from sheetgen.base.place import Place, Word
    from sheetgen.model.plan import Remedy
    from sheetgen.model.project import Project, Studio
    from sheetgen.model.worked import WorkedStep
    from sheetgen.parts.piece import Piece
    from sheetgen.work.evaluator import Evaluator
    from sheetgen.work.network import Network


def class_plan(
    network: Network, parts: Mapping[str, Piece], steps: Sequence[WorkedStep], evaluator: Evaluator
) -> ClassPlan | None:
    """How a class makes this version; None where nobody says how classes are held. What finds no room is a warning."""
    held = _held(evaluator.project, evaluator.library.studio)
    if held is None or not steps:
        return None
    tools = {t.id: t for step in steps for t in counted(step)}
    kiln = ClassLoads(parts, steps, evaluator)
    of_class = ClassWork(network, steps, kiln)
    room = Room(held, held.people, {name: tool.owned for name, tool in tools.items()})
    tasks, way = of_class.way(room)
    left = of_class.left(way)
    helps = tuple(remedies(of_class, room, tools)) if left else ()
    if left:
        _tell(steps[left[0]], held, helps, evaluator)
    return ClassPlan(
        held,
        evenings(held, steps, tasks, way, {i: of_class.rounds(i, room) for i in range(len(steps))}),
        between(held, steps, tasks, way),
        Frozen({i: found for i in range(len(steps)) if (found := kiln.loads(i, room.makers))}),
        left,
        helps,
    )


def _held(project: Project, studio: Studio) -> Held | None:
    """How classes of a project are held: its own words go before the studio's."""
    found = {name: said(name, project, studio) for name in ("people", "evenings", "days_between", "set_up", "clear_up")}
    if not found["people"] or not found["evenings"]:
        return None
    days = next((int(word) for word in found["days_between"]), int(DAYS_BETWEEN))
    up, clear = (sum(measure(word).value.usual for word in found[name]) for name in ("set_up", "clear_up"))
    spans = tuple(span for word in found["evenings"] if (span := evening(word)) is not None)
    return Held(int(found["people"][0]), spans, days, up, clear)


def said(name: str, project: Project, studio: Studio) -> list[Word]:
    """What a field of a class says: the project's own words go before the studio's."""
    each = (getattr(one.class_, name) for one in (project, studio) if one.class_ is not None)
    found: Word | list[Word] = next((one for one in each if one), [])
    return found if isinstance(found, list) else [found]


def _tell(step: WorkedStep, held: Held, helps: Sequence[Remedy], evaluator: Evaluator) -> None:
    many = len(held.evenings)
    evenings = f"{many} evening{'s' if many > 1 else ''}"
    title = evaluator.project.title  # the place may be the studio's, and that of every project
    told = f"a class of {held.people} does not get through ‘{title}’ in {evenings}: no room for ‘{step.title}’"
    helped = "it would fit with " + ", or with ".join(worded(one, held) for one in helps)
    nothing = "no evening more, tool or pair makes it fit by itself: write a long step as two, or give it more time"
    evaluator.troubles.add(told, _place(evaluator), helped if helps else nothing, "warning")


def _place(evaluator: Evaluator) -> Place | None:
    """Where the class is written: in the project, else in the studio's file."""
    hours = said("evenings", evaluator.project, evaluator.library.studio)
    return hours[0].place if hours else None
