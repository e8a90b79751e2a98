"""The steps walked one deed after another: what each works on, and what it leaves changed.

What is attached to a part goes where it goes. A rule sees the bench as it stands before the deed.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.base.material import Adhesive, Clay, Item, Sheet, Wire
from sheetgen.facts.bench import HEATS
from sheetgen.facts.kiln import COLD_AFTER, UNLOAD
from sheetgen.facts.times import SHORTEST_DRYING
from sheetgen.model.bench.bodies import Attached, Bench, Body, stays

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Mapping, Sequence

    from sheetgen.base.place import Place
    from sheetgen.model.worked import WorkedStep
    from sheetgen.parts.piece import Piece

ATTACHES = ("close", "join", "set", "glue", "string", "hang")
COOLS = ("quench", "cool", "pickle", "rinse")


@dataclass(frozen=True, slots=True)
class Moment:
    """One deed of a step: `named` are the parts it works on, `whole` those with all that they are joined to.

    `deed` is a word of facts/bench.py, or `shape` for raw clay worked, `begin` and `end` of a step, `finish` of all.
    """

    bench: Bench
    index: int
    step: WorkedStep
    deed: str
    named: tuple[str, ...]
    whole: frozenset[str]

    @property
    def bodies(self) -> list[Body]:
        """What is worked on, with all that it is joined to."""
        return [self.bench.bodies[name] for name in sorted(self.whole) if self.bench.bodies[name].there]

    @property
    def bodies_named(self) -> list[Body]:
        """What the step names, without what it is joined to."""
        return [self.bench.bodies[name] for name in self.named]

    @property
    def attached(self) -> list[Attached]:
        """What is attached to it."""
        return [one for one in self.bench.attached if one.part in self.whole]

    def place(self, *fields: str) -> Place | None:
        """The first of some fields of the step, or items that it uses, that the file has; else its title.

        Of a house step it is where the project uses it: what comes in which order is the project's to mend.
        """
        found = next((self.step.places[name] for name in fields if name in self.step.places), self.step.place)
        return found.where_used if found else None

    def at(self, index: int) -> str:
        """Another step as a trouble tells it."""
        return "this step" if index == self.index else f"step {index + 1}"

    @property
    def number(self) -> str:
        """This step as a trouble tells it."""
        return f"step {self.index + 1}"


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
            _wet(bench.bodies[name], index, "shaped")
    waiting = [deed for deed in step.does if deed in ATTACHES]
    if not waiting and (not {"try", "take off"}.intersection(step.does) or set(HEATS).intersection(step.does)):
        _attach(bench, index, step, named)
    for deed in step.does:
        moment = _moment(bench, index, step, deed, _worked_on(bench, step, deed, named))
        if deed in {
            "close",
            "solder",
        }:  # it is shut when it is closed, and a join that is soldered is heated as it shuts
            bench.join(moment.whole)
        yield _moment(bench, index, step, deed, moment.named)
        _do(moment)
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


def _wet(body: Body, index: int, how: str) -> None:
    if body.clay is not None:
        body.wet, body.how, body.tested = index, how, True


def _attach(bench: Bench, index: int, step: WorkedStep, named: list[str]) -> None:
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


def _do(moment: Moment) -> None:
    """Leave the bench as the deed leaves it."""
    if moment.deed in ATTACHES:
        _attach(moment.bench, moment.index, moment.step, list(moment.named))
    if moment.deed in DEEDS:
        DEEDS[moment.deed](moment)


@_does("join", "close")
def _joined(moment: Moment) -> None:
    bench = moment.bench
    bench.join(moment.named)
    for name in moment.named:
        if bench.bodies[name].fired is None and any(bench.bodies[n].clay for n in moment.named):
            _wet(bench.bodies[name], moment.index, "joined")
    alone = moment.bodies_named[0] if len(moment.named) == 1 else None
    if moment.deed == "close" or (alone is not None and alone.piece.count > 1 and alone.piece.roles.get("domed")):
        for body in moment.bodies:  # of domes that are joined to nothing else, one is joined to the other
            body.closed = moment.index


@_does("fill")
def _filled(moment: Moment) -> None:
    for name in moment.named:
        body = moment.bench.bodies[name]
        if body.fired is None or moment.step.acts("paste for fired metal"):
            _wet(body, moment.index, "mended")


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
