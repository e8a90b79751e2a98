"""What each deed leaves changed on the bench. What is attached to a part goes where it goes."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.material import Adhesive, Item, Sheet, Wire
from sheetgen.facts.bench import HEATS
from sheetgen.facts.kiln import UNLOAD
from sheetgen.facts.times import SHORTEST_DRYING
from sheetgen.model.bench.bodies import Attached, Bench, Body, stays

if TYPE_CHECKING:
    from collections.abc import Callable

    from sheetgen.model.bench.moment import Moment
    from sheetgen.model.worked import WorkedStep

ATTACHES = ("close", "join", "set", "glue", "string", "hang")
COOLS = ("quench", "cool", "pickle", "rinse")


def wet(body: Body, index: int, how: str) -> None:
    """What is of clay is damp from this step on."""
    if body.clay is not None:
        body.wet, body.how, body.tested = index, how, True


def attach(bench: Bench, index: int, step: WorkedStep, named: list[str]) -> None:
    """What a step uses and stays, on each part that it names; what is glued is one thing after it."""
    holders = [name for name in named if not any(bench.bodies[name].glues())]
    shown = [one.part for one in step.show if one.part in bench.bodies]
    mixed = [glue for name in dict.fromkeys([*named, *shown]) for glue in bench.bodies[name].glues()]
    own = {item for name in holders for item in bench.bodies[name].items()}
    built = {"join", "close"}.intersection(step.does)  # then wire and sheet in use are built in
    used = [item for item in step.uses if stays(item) or (built and isinstance(item, Wire | Sheet))]
    items = [item for item in used if item not in own]
    held = [
        one for name in holders for one in bench.bodies[name].piece.roles.get("holds", ())
        if isinstance(one, Item) and {"set", "glue"}.intersection(step.does)
    ]  # fmt: skip
    for item in dict.fromkeys([*items, *mixed, *held]):
        for name in holders:
            old = [one for one in bench.attached if one.item == item and one.part == name]
            if old and not isinstance(item, Adhesive):
                continue
            bench.attached.append(Attached(item, name, index))


DEEDS: dict[str, Callable[[Moment], None]] = {}


def _does(*words: str) -> Callable[[Callable[[Moment], None]], Callable[[Moment], None]]:
    def known(function: Callable[[Moment], None]) -> Callable[[Moment], None]:
        if twice := DEEDS.keys() & set(words):
            raise ValueError(f"done in two ways: {', '.join(sorted(twice))}")
        DEEDS.update(dict.fromkeys(words, function))
        return function

    return known


def do(moment: Moment) -> None:
    """Leave the bench as the deed leaves it."""
    if moment.deed in ATTACHES:
        attach(moment.bench, moment.index, moment.step, list(moment.named))
    if moment.deed in DEEDS:
        DEEDS[moment.deed](moment)


@_does("join", "close")
def _joined(moment: Moment) -> None:
    bench = moment.bench
    bench.join(moment.named)
    for name in moment.named:
        if bench.bodies[name].fired is None and any(bench.bodies[n].clay for n in moment.named):
            wet(bench.bodies[name], moment.index, "joined")
    alone = moment.bodies_named[0] if len(moment.named) == 1 else None
    if moment.deed == "close" or (alone is not None and alone.piece.count > 1 and alone.piece.roles.get("domed")):
        for body in moment.bodies:  # of domes that are joined to nothing else, one is joined to the other
            body.closed = moment.index


@_does("fill")
def _filled(moment: Moment) -> None:
    for name in moment.named:
        body = moment.bench.bodies[name]
        if body.fired is None or moment.step.acts("paste for fired metal"):
            wet(body, moment.index, "mended")


@_does("dry")
def _dried(moment: Moment) -> None:
    wait = moment.step.wait
    for body in moment.bodies if wait is not None and wait.low >= SHORTEST_DRYING else ():
        if body.clay is not None:
            body.dried, body.wet, body.tested = moment.index, None, False


@_does("test")
def _tested(moment: Moment) -> None:
    for body in moment.bodies:
        body.tested = True


@_does(*HEATS)
def _heated(moment: Moment) -> None:
    step = moment.step
    if moment.deed == "solder":
        bench = moment.bench
        bench.join({*moment.named, *(p for n in moment.named for p in _soldered_to(bench, n))})
    warm = moment.deed != "fire" or step.by_torch or (step.opened_at is not None and step.opened_at > UNLOAD)
    for body in moment.bodies:
        body.heated, body.hot, body.cold, body.hardened = moment.index, warm, False, None
        body.kilned = moment.index if moment.deed == "fire" and not step.by_torch else None
        if moment.deed == "fire":
            body.fired, body.wet, body.tested = moment.index, None, True
        if moment.deed == "solder":
            body.solders += [(moment.index, item) for item in step.uses if item.acts("solder")]


def _soldered_to(bench: Bench, name: str) -> list[str]:
    return [str(one) for one in bench.bodies[name].piece.roles.get("goes into", ()) if one in bench.bodies]


@_does(*COOLS)
def _cooled(moment: Moment) -> None:
    for body in moment.bodies:
        body.hot, body.cold = False, True


@_does("open")
def _opened(moment: Moment) -> None:
    at = moment.step.opened_at
    for body in moment.bodies if at is not None and at > UNLOAD else ():
        body.hot, body.heated = True, moment.index


@_does("cure")
def _cured(moment: Moment) -> None:
    for one in moment.attached if moment.step.wait is not None else ():
        one.cured = True


@_does("harden")
def _hardened(moment: Moment) -> None:
    for name in moment.named:
        moment.bench.bodies[name].hardened = moment.index


@_does("hang", "string", "set", "glue")
def _hung(moment: Moment) -> None:
    bench = moment.bench
    things = [name for name in moment.named if not any(bench.bodies[name].glues())]
    if moment.deed == "hang" and len(things) == 1:
        body = bench.bodies[things[0]]
        things += [h for h in body.piece.roles.get("hangs from", ()) if h in bench.bodies and bench.bodies[h].there]
    if things and (moment.deed in {"hang", "string"} or any(isinstance(i, Adhesive) for i in moment.step.uses)):
        bench.join(things)
    if moment.deed == "hang":
        bench.hung.update(things)


@_does("take off")
def _taken(moment: Moment) -> None:
    bench, used = moment.bench, {item.id for item in moment.step.uses}
    off = [one for one in bench.attached if one.item.id in used]
    if not off:  # what is named comes off, and what hung in its holes with it
        off = [one for one in bench.attached if one.part in moment.named and not isinstance(one.item, Adhesive)]
        for name in moment.named:
            if len(bench.joined[name]) > 1 and not bench.bodies[name].feature:
                bench.part(name)
    bench.attached = [one for one in bench.attached if one not in off]
