"""A class as it is made up: who sits where with which kind of set, the teacher's piece, the spare sets."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING, NamedTuple

from sheetgen.base.spelling import counted

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence

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


class Fired(NamedTuple):
    """Pieces of one design that go into the kiln together: their first kind, how many pupils make them, how many more.

    The teacher's piece is fired; a spare set only in place of a piece that is lost.
    """

    kits: Kits
    pupils: int
    teachers: int


@dataclass(frozen=True, slots=True)
class ClassRun:
    """The pupils in the order of the list, what is made up besides, and every kind of set in it once.

    `usual`: some of what is made up besides is common practice, since nobody says.
    """

    pupils: tuple[Pupil, ...]
    extras: tuple[Extra, ...]
    kinds: tuple[Kits, ...]
    usual: bool = False

    @property
    def sets(self) -> int:
        """How many sets there are, whoever's they are."""
        return sum(kits.bags for kits in self.kinds)

    @property
    def designs(self) -> tuple[str, ...]:
        """The folders of the designs that are made, in the order of the list."""
        return tuple(dict.fromkeys(kits.worked.name for kits in self.kinds))

    def fired(self, kits: Kits) -> int:
        """How many pieces of a kind are fired: a spare set only in place of one that is lost."""
        return kits.bags - sum(one.spare for one in self.extras if one.kits is kits)

    def counted(self, kinds: Sequence[Kits] | None = None) -> str:
        """How many sets, by whose they are: 12 pupils + 1 teacher’s piece + 1 spare set; of all, or of these kinds."""
        of = [id(kits) for kits in (self.kinds if kinds is None else kinds)]
        pupils = sum(id(one.kits) in of for one in self.pupils)
        extras = [one for one in self.extras if id(one.kits) in of]
        teacher, spare = sum(one.teacher for one in extras), sum(one.spare for one in extras)
        told = ((pupils, "pupil"), (teacher, "teacher’s piece"), (spare, "spare set"))
        return " + ".join(counted(many, noun) for many, noun in told if many)


def class_run(
    named: Sequence[Named], kinds: Mapping[Key, Kits], besides: Mapping[str, Besides], fired: Callable[[Fired], int]
) -> ClassRun:
    """The class of a list. `kinds` are of no bags yet; `besides` goes by the design's folder.

    The teacher's piece and the spare sets of a design are of the kind that most of its pupils make; of those that as
    many make, the first in the list. `fired` says how often the kiln is fired for what goes in together; it is counted
    with the first of these kinds.
    """
    pupils = Counter(one.key for one in named)
    by_design: dict[str, Counter[Key]] = {}
    alike: dict[Key, list[Key]] = {}
    for key, many in pupils.items():
        by_design.setdefault(kinds[key].worked.name, Counter())[key] += many
        alike.setdefault(fired_alike(kinds[key]), []).append(key)
    extras: dict[Key, tuple[int, int]] = {}
    for design, keys in by_design.items():
        [(usual, _)] = keys.most_common(1)
        extras[usual] = besides[design].teacher, besides[design].spare(keys.total())
    loads = dict.fromkeys(pupils, 0)
    for mates in alike.values():
        teachers = sum(extras.get(key, (0, 0))[0] for key in mates)
        loads[mates[0]] = fired(Fired(kinds[mates[0]], sum(pupils[key] for key in mates), teachers))
    made = {
        key: replace(kinds[key], bags=many + sum(extras.get(key, ())), loads=loads[key]) for key, many in pupils.items()
    }
    more = tuple(Extra(made[key], *many) for key, many in extras.items() if any(many))
    return ClassRun(
        tuple(Pupil(one.name, one.table, made[one.key]) for one in named),
        more,
        tuple(made.values()),
        usual=bool(more) and any(besides[design].usual for design in by_design),
    )


def fired_more(run: ClassRun, loads: Sequence[int]) -> Iterator[str]:
    """Told where the teacher's piece wants a load by itself; `loads` are with 1, 2, … pieces, the teacher's last.

    A plan, and the timetable of the teacher's sheet, have the pupils' pieces alone.
    """
    people = len(run.pupils)
    if loads and loads[-1] > loads[people - 1]:
        yield f"for the teacher’s piece the kiln is fired once more than for the {people} of the timetable"


def fired_alike(kits: Kits) -> Key:
    """What the kinds of a design have in common whose pieces go into the kiln together: schedules and metals."""
    fired = (step for step in kits.version.steps if step.firing)
    return kits.worked.name, *((step.firing, step.clay.metal if step.clay else "") for step in fired)


def tables_of(pupils: Iterable[Pupil]) -> dict[str, list[Pupil]]:
    """Who sits at each table, in the order of the list; those without one last."""
    found: dict[str, list[Pupil]] = {}
    for one in pupils:
        found.setdefault(one.table, []).append(one)
    return dict(sorted(found.items(), key=lambda table: not table[0]))
