"""A class as it is made up: who sits where with which kind of set, the teacher's piece, the spare sets."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING, NamedTuple

from sheetgen.base.spelling import counted

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from sheetgen.kits.taken import Kits
    from sheetgen.model.class_list import Besides


Key = tuple[object, ...]


class Named(NamedTuple):
    """A pupil of a list: name, table, and the key of the kind of set that he makes."""

    name: str
    table: str
    key: Key


@dataclass(frozen=True, slots=True)
class Pupil:
    """A pupil at his table, with the kind of set that he makes. `kits.bags` is the whole class's number of it."""

    name: str = field(repr=False)
    table: str = field(repr=False)
    kits: Kits


@dataclass(frozen=True, slots=True)
class Extra:
    """Sets of one kind that no pupil has: pieces that the teacher makes, and spare ones."""

    kits: Kits
    teacher: int
    spare: int


@dataclass(frozen=True, slots=True)
class ClassRun:
    """The pupils in the order of the list, what is made up besides, and every kind of set in it once."""

    pupils: tuple[Pupil, ...]
    extras: tuple[Extra, ...]
    kinds: tuple[Kits, ...]

    def counted(self, kinds: Sequence[Kits] | None = None) -> str:
        """How many sets, by whose they are: 12 pupils + 1 teacher’s piece + 1 spare set; of all, or of these kinds."""
        of = [id(kits) for kits in (self.kinds if kinds is None else kinds)]
        pupils = sum(id(one.kits) in of for one in self.pupils)
        extras = [one for one in self.extras if id(one.kits) in of]
        teacher, spare = sum(one.teacher for one in extras), sum(one.spare for one in extras)
        told = ((pupils, "pupil"), (teacher, "teacher’s piece"), (spare, "spare set"))
        return " + ".join(counted(many, noun) for many, noun in told if many)


def class_run(named: Sequence[Named], kinds: Mapping[Key, Kits], besides: Mapping[str, Besides]) -> ClassRun:
    """The class of a list. `kinds` are of no bags yet; `besides` goes by the design's folder.

    The teacher's piece and the spare sets of a design are of the kind that most of its pupils make; of those that as
    many make, the first in the list.
    """
    pupils = Counter(one.key for one in named)
    by_design: dict[str, Counter[Key]] = {}
    for one in named:
        by_design.setdefault(kinds[one.key].worked.name, Counter())[one.key] += 1
    extras: dict[Key, tuple[int, int]] = {}
    for design, keys in by_design.items():
        [(usual, _)] = keys.most_common(1)
        extras[usual] = besides[design].teacher, besides[design].spare(keys.total())
    first = {next(iter(keys)) for keys in by_design.values()}  # the kiln is fired once for all kinds of a design
    made = {
        key: replace(kinds[key], bags=many + sum(extras.get(key, ())), loads=_loads(kinds[key]) if key in first else 0)
        for key, many in pupils.items()
    }
    return ClassRun(
        tuple(Pupil(one.name, one.table, made[one.key]) for one in named),
        tuple(Extra(made[key], *many) for key, many in extras.items() if any(many)),
        tuple(made.values()),
    )


def _loads(kits: Kits) -> int:
    """How often the kiln is fired for all of a design; once for each firing where no class is planned.

    What goes in with a design before it in the list is counted there.
    """
    plan, steps = kits.version.plan.class_plan, kits.version.steps
    own = [i for i, step in enumerate(steps) if step.firing and not (plan and i in plan.elsewhere)]
    fired = (plan.loads.get(i, ()) if plan else () for i in own)
    return sum(max((load.loads for load in loads), default=1) for loads in fired)


def tables_of(pupils: Iterable[Pupil]) -> dict[str, list[Pupil]]:
    """Who sits at each table, in the order of the list; those without one last."""
    found: dict[str, list[Pupil]] = {}
    for one in pupils:
        found.setdefault(one.table, []).append(one)
    return dict(sorted(found.items(), key=lambda table: not table[0]))
