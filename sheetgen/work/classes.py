"""A design made by a class: how it is held, its evenings and what is between, and a warning where it does not fit."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from sheetgen.base.clock import evening
from sheetgen.base.frozen import Frozen
from sheetgen.base.measure import measure
from sheetgen.base.trouble import Trouble
from sheetgen.facts.times import DAYS_BETWEEN
from sheetgen.model.plan import ClassPlan, Held
from sheetgen.work.class_loads import ClassLoads
from sheetgen.work.remedies import remedies, worded
from sheetgen.work.stations import ClassWork, Room, counted
from sheetgen.work.timetable import between, evenings, fired

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from sheetgen.base.place import Word
    from sheetgen.model.project import Project
    from sheetgen.model.studio import Studio
    from sheetgen.model.worked import WorkedStep
    from sheetgen.parts.piece import Piece
    from sheetgen.work.evaluator import Evaluator
    from sheetgen.work.evenings import Span
    from sheetgen.work.loads import Laid
    from sheetgen.work.network import Network


@dataclass(frozen=True, slots=True)
class Shared:
    """What those who make a design share with `others` of their class, as ClassPlan has it.

    `tools`: how many others use a tool in the same evening. `pieces`: what is fired with those of a step. `taken`: when
    the kiln is fired for other designs.
    """

    others: int = 0
    tools: Mapping[str, int] = field(default_factory=Frozen)
    pieces: Mapping[int, Laid] = field(default_factory=Frozen)
    taken: tuple[Span, ...] = ()
    elsewhere: tuple[int, ...] = ()


ALONE = Shared()


def class_plan(
    network: Network,
    parts: Mapping[str, Piece],
    steps: Sequence[WorkedStep],
    evaluator: Evaluator,
    shared: Shared = ALONE,
) -> ClassPlan | None:
    """How a class makes this version; None where nobody says how classes are held. What finds no room is a warning."""
    held = _held(evaluator.project, evaluator.library.studio)
    if held is None or not steps:
        return None
    tools = {t.id: t for step in steps for t in counted(step)}
    kiln = ClassLoads(parts, steps, evaluator, shared.pieces)
    of_class = ClassWork(network, steps, kiln, shared.taken)
    room = Room(held, held.people, {name: tool.owned for name, tool in tools.items()}, shared.tools)
    tasks, way = of_class.way(room)
    left = of_class.left(way)
    helps = tuple(remedies(of_class, room, tools)) if left else ()
    found = ClassPlan(
        held,
        evenings(held, steps, tasks, way, {i: of_class.rounds(i, room) for i in range(len(steps))}),
        between(held, steps, tasks, way),
        Frozen({i: found for i in range(len(steps)) if (found := kiln.loads(i, room.makers))}),
        left,
        helps,
        fired(held, steps, tasks, way),
        shared.others,
        Frozen(shared.tools),
        tuple(sorted(shared.pieces)),
        shared.elsewhere,
    )
    evaluator.troubles.extend(not_through(found, steps, evaluator.project, evaluator.library.studio))
    return found


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


def not_through(plan: ClassPlan, steps: Sequence[WorkedStep], project: Project, studio: Studio) -> list[Trouble]:
    """The warning of a plan in which something finds no room, where the class is written."""
    if not plan.left:
        return []
    held = plan.held
    many = len(held.evenings)
    evenings = f"{many} evening{'s' if many > 1 else ''}"
    title = project.title  # the place may be the studio's, and that of every project
    who, shared = f"a class of {held.people} does", ""
    if plan.others:
        who = f"{held.people} of a class of {held.people + plan.others} do{'es' if held.people == 1 else ''}"
        shared = ", with what they share with the others"
    told = f"{who} not get through ‘{title}’ in {evenings}{shared}: no room for ‘{steps[plan.left[0]].title}’"
    helped = "it would fit with " + ", or with ".join(worded(one, held) for one in plan.remedies)
    nothing = "no evening more, tool or pair makes it fit by itself: write a long step as two, or give it more time"
    hours = said("evenings", project, studio)
    return [Trouble(told, hours[0].place if hours else None, helped if plan.remedies else nothing, "warning")]
