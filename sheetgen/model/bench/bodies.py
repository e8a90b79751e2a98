"""What is on the bench: each part as a body with its state, what it is made of, and what is attached to it."""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from sheetgen.base.interval import Interval
from sheetgen.base.material import Adhesive, Bead, Clay, Consumable, Fibre, Finding, Item, Sheet, Stone, Wire

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping, Sequence

    from sheetgen.base.place import Place
    from sheetgen.model.worked import WorkedStep
    from sheetgen.parts.piece import Piece

CONSISTS = ("made of", "strung", "strung on", "bound with", "goes into", "closed by")
"""Roles of the items that a part is, from when it is made; what it holds or is glued with comes later."""


@dataclass(slots=True)
class Attached:
    """An item on a part since a step: `cured` says whether an adhesive is."""

    item: Item
    part: str
    step: int
    cured: bool = False


@dataclass(slots=True, eq=False)
class Body:
    """One part's state. Steps are their numbers in the list; None where it has not happened."""

    piece: Piece
    made: int
    there: bool = False
    wet: int | None = None
    how: str = ""
    dried: int | None = None
    tested: bool = True
    fired: int | None = None
    heated: int | None = None
    hot: bool = False
    cold: bool = True
    kilned: int | None = None
    hardened: int | None = None
    closed: int | None = None
    solders: list[tuple[int, Item]] = field(default_factory=list)

    @property
    def name(self) -> str:
        """The part's name."""
        return self.piece.name

    @property
    def title(self) -> str:
        """The part as a trouble tells it."""
        return self.piece.title.lower()

    @property
    def clay(self) -> Clay | None:
        """The clay that it is made of: what takes no clay of its own is in another part."""
        return self.piece.playing("made of", Clay) if self.piece.roles.get("clay mass") else None

    @property
    def feature(self) -> bool:
        """Whether it is a hole or a seat in another part, and no thing of its own."""
        return not any(True for _ in self.items()) and not any(True for _ in self.glues())

    @property
    def metals(self) -> tuple[str, ...]:
        """What metals it is."""
        return tuple(dict.fromkeys(item.metal for item in self.items() if item.metal))

    def number(self, role: str) -> Interval | None:
        """The first number that plays a role in it."""
        return next((one for one in self.piece.roles.get(role, ()) if isinstance(one, Interval)), None)

    def place(self, *fields: str) -> Place | None:
        """Where the first of some fields is written; else the part itself."""
        places = self.piece.places
        return next((places[name] for name in fields if name in places), places.get(""))

    def items(self) -> Iterator[Item]:
        """What it consists of."""
        for role in CONSISTS:
            for one in self.piece.roles.get(role, ()):
                if isinstance(one, Item) and (not isinstance(one, Clay) or self.clay is not None):
                    yield one

    def glues(self) -> Iterator[Adhesive]:
        """The adhesive that it mixes."""
        yield from (one for one in self.piece.roles.get("bonds", ()) if isinstance(one, Adhesive))


def stays(item: Item) -> bool:
    """Whether an item that a step uses stays in the piece; clay, wire and sheet do so as parts."""
    return isinstance(item, Stone | Bead | Fibre | Finding | Adhesive) or item.acts("wax")


def flows(item: Item) -> float:
    """Where a solder flows, °C; whatever is no solder does not flow."""
    return item.flows_at if isinstance(item, Consumable) and item.flows_at is not None else math.inf


def thickness(piece: Piece) -> float | None:
    """How thick the wire of a part is, mm."""
    wire = piece.playing("made of", Wire)
    return wire.thickness if wire else None


def metal_of(item: Item) -> bool:
    """Whether an item is worked as metal: it bears heat by what it is."""
    return isinstance(item, Wire | Sheet | Clay) or (bool(item.metal) and not stays(item))


@dataclass(slots=True)
class Bench:
    """All bodies of a version, which of them are joined, and what is attached."""

    steps: Sequence[WorkedStep]
    worn_at: str
    bodies: dict[str, Body]
    joined: dict[str, set[str]]
    attached: list[Attached] = field(default_factory=list)
    last_named: frozenset[str] = frozenset()
    hung: set[str] = field(default_factory=set)
    last: dict[str, int] = field(default_factory=dict)

    @classmethod
    def of(cls, parts: Mapping[str, Piece], steps: Sequence[WorkedStep], worn_at: str = "") -> Bench:
        """The bench before the first step: nothing made; holes and seats belong to the part they are in."""
        bodies = {name: Body(piece, _made(piece, steps)) for name, piece in parts.items()}
        bench = cls(steps, worn_at, bodies, {name: {name} for name in bodies})
        bench.last.update((name, i) for i, step in enumerate(steps) for name in step.parts)
        for name, body in bodies.items():
            for role in ("drilled in", "vent of"):
                for other in body.piece.roles.get(role, ()):
                    if other in bodies and body.feature:
                        bench.join({name, other})
        return bench

    def join(self, names: Iterable[str]) -> None:
        """Make these, with all that they are joined to, one thing."""
        whole = self.group(names)
        for name in whole:
            self.joined[name] = whole

    def group(self, names: Iterable[str]) -> set[str]:
        """These with all that they are joined to."""
        return set().union(*(self.joined[name] for name in names))

    def part(self, name: str) -> None:
        """Take one off what it is joined to; its own holes and seats stay with it."""
        own = {name} | {
            other for other, body in self.bodies.items()
            if body.feature and name in (*body.piece.roles.get("drilled in", ()), *body.piece.roles.get("vent of", ()))
        }  # fmt: skip
        rest = self.joined[name] - own
        for one in own:
            self.joined[one] = own
        for one in rest:
            self.joined[one] = rest

    def of_group(self, names: Iterable[str]) -> list[Body]:
        """The bodies that are made of a group."""
        return [self.bodies[name] for name in sorted(self.group(names)) if self.bodies[name].there]

    def on(self, names: Iterable[str]) -> list[Attached]:
        """What is attached to a group."""
        whole = self.group(names)
        return [one for one in self.attached if one.part in whole]

    def named(self, step: WorkedStep) -> list[str]:
        """The parts that a step works on: those it names, else those it draws, else those whose numbers it shows."""
        shown = [one.part for one in step.show if one.part in self.bodies]
        return list(dict.fromkeys(step.parts or step.pictured or shown))


def _made(piece: Piece, steps: Sequence[WorkedStep]) -> int:
    """The step that makes a part: the first that names it and uses what it is made of, or drills it; else the first."""
    naming = [i for i, step in enumerate(steps) if piece.name in (*step.parts, *step.pictured)]
    naming = naming or [i for i, s in enumerate(steps) if any(one.part == piece.name for one in s.show)]
    own = {one.id for one in piece.roles.get("made of", ()) if isinstance(one, Item)}
    if not piece.roles.get("clay mass") and any(isinstance(one, Clay) for one in piece.roles.get("made of", ())):
        own = set()  # it takes no clay of its own: a seat in another part
    using = [i for i in naming if own.intersection(item.id for item in steps[i].uses)]
    if not own:
        using = [i for i in naming if "drill" in steps[i].does]
    return next(iter(using or naming), len(steps))
