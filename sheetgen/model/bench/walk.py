"""The steps walked one deed after another, and what each works on. A rule sees the bench before the deed."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.material import Adhesive, Clay
from sheetgen.facts.bench import HEATS
from sheetgen.facts.kiln import COLD_AFTER
from sheetgen.model.bench.bodies import Bench
from sheetgen.model.bench.deeds import ATTACHES, attach, do, wet
from sheetgen.model.bench.moment import Moment

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from sheetgen.model.worked import WorkedStep
    from sheetgen.parts.piece import Piece


def walk(parts: Mapping[str, Piece], steps: Sequence[WorkedStep], worn_at: str = "") -> Iterator[Moment]:
    """Every moment of a version in order; each is left to its reader before it is done."""
    bench = Bench.of(parts, steps, worn_at)
    for index, step in enumerate(steps):
        yield from _step(bench, index, step)
    if steps:
        last = len(steps) - 1
        yield Moment(bench, last, steps[last], "finish", (), frozenset(bench.bodies))


def _step(bench: Bench, index: int, step: WorkedStep) -> Iterator[Moment]:
    named = bench.named(step)
    begin = _moment(bench, index, step, "begin", named)
    for name in named:
        bench.bodies[name].there = True
    yield begin
    _hosted(bench, named)
    if shaped := _shaped(bench, index, step, named):
        yield _moment(bench, index, step, "shape", shaped)
        for name in shaped:
            wet(bench.bodies[name], index, "shaped")
    waiting = [deed for deed in step.does if deed in ATTACHES]
    if not waiting and (not {"try", "take off"}.intersection(step.does) or set(HEATS).intersection(step.does)):
        attach(bench, index, step, named)
    for deed in step.does:
        moment = _moment(bench, index, step, deed, _worked_on(bench, step, deed, named))
        if deed in {
            "close",
            "solder",
        }:  # it is shut when it is closed, and a join that is soldered is heated as it shuts
            bench.join(moment.whole)
        yield _moment(bench, index, step, deed, moment.named)
        do(moment)
    yield _moment(bench, index, step, "end", named)
    _pass(bench, index, step, named)


def _moment(bench: Bench, index: int, step: WorkedStep, deed: str, named: list[str] | tuple[str, ...]) -> Moment:
    return Moment(bench, index, step, deed, tuple(named), frozenset(bench.group(named)) if named else frozenset())


def _hosted(bench: Bench, named: list[str]) -> None:
    """A hole or seat that says of no part that it is in it is in the one part of its clay that the step names."""
    for name in named:
        body = bench.bodies[name]
        if not body.feature or len(bench.joined[name]) > 1:
            continue
        hosts = [n for n in named if bench.bodies[n].clay is not None and bench.bodies[n].clay == body.piece.clay]
        if len(hosts) == 1:
            bench.join({name, hosts[0]})


def _shaped(bench: Bench, index: int, step: WorkedStep, named: list[str]) -> list[str]:
    """The clay parts that a step shapes from raw clay: it makes them, or uses their clay."""
    used = {item.id for item in step.uses if isinstance(item, Clay)}
    of_clay = [name for name in named if bench.bodies[name].clay is not None]
    new = [name for name in of_clay if bench.bodies[name].made == index]
    if new:
        return new
    return [name for name in of_clay if (clay := bench.bodies[name].clay) is not None and clay.id in used]


def _worked_on(bench: Bench, step: WorkedStep, deed: str, named: list[str]) -> list[str]:
    """What a deed works on, where the step does not name it: the load of the kiln, whatever dries, what was in hand."""
    bodies = bench.bodies
    if deed == "fire":
        load = named or [n for n, b in bodies.items() if b.there and b.clay and b.clay == step.clay and b.fired is None]
        load = load or [n for n, b in bodies.items() if b.there and b.clay and b.fired is None]
        loose = [n for n, b in bodies.items() if b.feature and len(bench.joined[n]) == 1 and b.piece.clay == step.clay]
        return [*load, *(n for n in loose if bodies[n].there and n not in load)]
    if named and not (deed == "cure" and all(any(bodies[name].glues()) for name in named)):
        return named
    if deed == "open":
        latest = max((b.fired for b in bodies.values() if b.fired is not None), default=-1)
        return [n for n, b in bodies.items() if b.fired is not None and b.fired == latest]
    if deed in {"dry", "test", "fill"}:
        return [n for n, b in bodies.items() if b.there and b.fired is None and b.clay is not None]
    if deed == "cure":
        return [n for n, b in bodies.items() if b.there]
    return sorted(bench.last_named)


def _pass(bench: Bench, index: int, step: WorkedStep, named: list[str]) -> None:
    """After a step: what no step hangs hangs from its last one; hot things cool while others are worked on."""
    long = step.minutes is not None and step.minutes.low >= COLD_AFTER
    if step.wait is not None and not {"dry", "cure", "fire"}.intersection(step.does):
        for one in bench.attached:  # time is time: a wait as long as the cure cures
            if isinstance(one.item, Adhesive) and step.wait.low >= one.item.cure.low:
                one.cured = True
    for name, body in bench.bodies.items():
        if body.hot and ((long and body.heated != index) or (step.wait is not None and step.wait.low >= COLD_AFTER)):
            body.hot = False
        last = bench.last.get(name, -1)
        host = next((h for h in body.piece.roles.get("hangs from", ()) if h in bench.bodies), None)
        if host and body.made < index == last and name not in bench.hung and bench.bodies[host].there:
            bench.join({name, host})
    if named:
        bench.last_named = frozenset(named)
