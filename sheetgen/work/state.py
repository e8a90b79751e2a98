"""What a step has in its hands: clay that is still to be fired, wet or dry, or metal; and what comes off small."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from sheetgen.base.interval import Interval
from sheetgen.base.material import Clay, Metal, Sheet, Wire
from sheetgen.facts.fit import SWALLOWED
from sheetgen.model.bench.walk import walk

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from sheetgen.model.bench.bodies import Bench, Body
    from sheetgen.model.bench.moment import Moment
    from sheetgen.model.worked import WorkedStep
    from sheetgen.parts.piece import Piece


SEVERAL = 2  # parts that a step names and still makes
JOINS = ("join", "close", "solder")
ACROSS = ("adds", "ring inside", "covers")  # roles that measure a part which has no finished size of its own


class Hand(NamedTuple):
    """What a step has in its hands as it begins: raw clay, clay that has dried and is still raw, metal."""

    raw: bool
    dried: bool
    metal: bool


class State:
    """The steps of one version in their order, and its parts. Of a step that names no part, all parts are asked."""

    def __init__(self, steps: Sequence[WorkedStep], pieces: Mapping[str, Piece]) -> None:
        """Walk the bench once."""
        self.steps, self.pieces = steps, pieces
        self._hands: dict[int, Hand] = {}
        for moment in walk(pieces, steps):
            if moment.deed == "begin":
                self._hands[moment.index] = _hand(moment)

    def raw(self, number: int) -> bool:
        """Whether something in the hands is clay that no step has fired yet."""
        if not self.pieces:  # a technique's sheet
            ahead = any(step.clay is not None for step in self.steps[number + 1 :])
            return ahead or any(isinstance(item, Clay) for item in self.steps[number].uses)
        return self._hands[number].raw

    def metal(self, number: int) -> bool:
        """Whether something in the hands is metal: fired clay, wire, sheet or a casting."""
        return not self.pieces or self._hands[number].metal

    def dried(self, number: int) -> bool:
        """Whether what is in the hands has dried by then, so that it gives dust and no longer crumbs."""
        if not self.pieces:
            return any("dry" in step.does for step in self.steps[:number])
        return self._hands[number].dried

    @property
    def last(self) -> int:
        """The last step at the bench, at which the piece is finished."""
        return max((i for i, step in enumerate(self.steps) if step.minutes is not None), default=len(self.steps) - 1)

    def swallowed(self) -> Iterator[int]:
        """Where something of the piece that goes through the small-parts cylinder comes to hand.

        What is of clay does so from its firing on; a ring or a link of wire, and sheet, from its making on; a piece of
        chain however long it hangs, for it goes in gathered.
        """
        for names in self._joined():
            limp = any(self.pieces[name].roles.get("limp") for name in names)
            widest = [across for name in names if (across := _across(self.pieces[name])) is not None]
            if not limp and (not widest or max(widest) >= SWALLOWED):
                continue
            named = [i for i, step in enumerate(self.steps) if names.intersection(step.parts)]
            if any(self.pieces[name].clay is not None for name in names):
                fired = next((i for i, step in enumerate(self.steps) if step.clay is not None), self.last)
                named = [i for i in named if i > fired]
            elif len(named) > 1 and len(self.steps[named[0]].parts) > SEVERAL:
                del named[0]  # there the wire of all parts is only cut to length
            yield from named or [self.last]

    def _joined(self) -> list[set[str]]:
        """The parts, those that become one for good together: what only hangs may come off."""
        groups = [{name} for name in self.pieces]
        for step in self.steps:
            if any(word in step.does for word in JOINS):
                met = [group for group in groups if group.intersection(step.parts)]
                groups = [group for group in groups if group not in met]
                groups += [set().union(*met)] if met else []
        return groups


def _hand(moment: Moment) -> Hand:
    """The bodies that a step names, and of a hole or a seat the part that it is in."""
    bench = moment.bench
    named = [bench.bodies[name] for name in moment.named or bench.bodies]
    held = [one for body in named for one in (_around(bench, body) if body.feature else [body])]
    raw = [body for body in held if body.clay is not None and body.fired is None]
    metal = any(
        body.fired is not None or any(isinstance(item, Wire | Sheet | Metal) for item in body.items()) for body in held
    )
    return Hand(bool(raw), any(body.dried is not None for body in raw), metal)


def _around(bench: Bench, feature: Body) -> list[Body]:
    """What a hole or a seat is in; where nothing says so, whatever is of its clay."""
    group = bench.of_group({feature.name})
    if any(body.clay is not None for body in group):
        return group
    return [body for body in bench.bodies.values() if body.clay is not None and body.clay == feature.piece.clay]


def _across(piece: Piece) -> float | None:
    """How wide a part of metal is at its widest, mm; None where nothing says so, or where it is a hole or a seat."""
    if not piece.roles.get("metal mass"):
        return None
    said = [size.finished.high for size in piece.sizes if size.finished is not None]
    said += [one.high for role in ACROSS for one in piece.roles.get(role, ()) if isinstance(one, Interval)]
    return max(said, default=None)
