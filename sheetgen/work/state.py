"""What a step has in its hands: clay that is still to be fired, wet or dry, or metal; and what comes off small."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.base.interval import Interval
from sheetgen.base.material import Clay, Metal, Sheet, Wire
from sheetgen.facts.fit import SWALLOWED

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from sheetgen.model.worked import WorkedStep
    from sheetgen.parts.piece import Piece


JOINS = ("join", "close", "solder")
ACROSS = ("adds", "ring inside", "covers")  # roles that measure a part which has no finished size of its own


@dataclass(frozen=True, slots=True)
class State:
    """The steps of one version in their order, and its parts. Of a step that names no part, all parts are asked."""

    steps: Sequence[WorkedStep]
    pieces: Mapping[str, Piece]

    def raw(self, number: int) -> bool:
        """Whether something in the hands is clay that no step has fired yet."""
        pieces = [piece for piece in self._in_hand(number) if piece.clay is not None]
        if not self.pieces:  # a technique's sheet
            ahead = any(step.clay is not None for step in self.steps[number + 1 :])
            return ahead or any(isinstance(item, Clay) for item in self.steps[number].uses)
        return any(not self._fired(piece, number) for piece in pieces)

    def metal(self, number: int) -> bool:
        """Whether something in the hands is metal: fired clay, wire, sheet or a casting."""
        return not self.pieces or any(
            piece.clay is not None or any(isinstance(take.item, Wire | Sheet | Metal) for take in piece.takes)
            for piece in self._in_hand(number)
        )

    def dried(self, number: int) -> bool:
        """Whether what is in the hands has dried by then, so that it gives dust and no longer crumbs."""
        named = set(self.steps[number].parts)
        hosts = {self._host(self.pieces[name]) for name in named}
        return any(
            "dry" in step.does and (not step.parts or not named or (named | hosts).intersection(step.parts))
            for step in self.steps[:number]
        )

    @property
    def last(self) -> int:
        """The last step at the bench, at which the piece is finished."""
        return max((i for i, step in enumerate(self.steps) if step.minutes is not None), default=len(self.steps) - 1)

    def swallowed(self) -> Iterator[int]:
        """Where something of the piece that goes through the small-parts cylinder comes to hand.

        What is of clay or joined does so when it is finished; a ring or a link of wire, and sheet, as it is made.
        """
        for names in self._joined():
            widest = [across for name in names if (across := _across(self.pieces[name])) is not None]
            if not widest or max(widest) >= SWALLOWED:
                continue
            whole = len(names) > 1 or any(self.pieces[name].clay is not None for name in names)
            made = next((i for i, step in enumerate(self.steps) if names.intersection(step.parts)), self.last)
            yield self.last if whole else made

    def _joined(self) -> list[set[str]]:
        """The parts, those that become one together."""
        groups = [{name} for name in self.pieces]
        for step in self.steps:
            if any(word in step.does for word in JOINS):
                met = [group for group in groups if group.intersection(step.parts)]
                groups = [group for group in groups if group not in met]
                groups += [set().union(*met)] if met else []
        return groups

    def _in_hand(self, number: int) -> Iterator[Piece]:
        named = self.steps[number].parts
        for name in named or self.pieces:
            yield self.pieces[name]
            if (host := self._host(self.pieces[name])) != name and host in self.pieces:
                yield self.pieces[host]

    @staticmethod
    def _host(piece: Piece) -> str:
        """The part that it is drilled in, which it is fired with."""
        return next(iter(piece.roles.get("drilled in", ())), piece.name)

    def _fired(self, piece: Piece, number: int) -> bool:
        """Whether an earlier step has fired it: one that names it, or where none does, one that fires its clay."""
        names = {piece.name, self._host(piece)}
        firings = [
            (i, step)
            for i, step in enumerate(self.steps)
            if step.clay is not None and piece.clay is not None and step.clay.id == piece.clay.id
        ]
        own = [(i, step) for i, step in firings if names.intersection(step.parts)]
        return any(i < number for i, _ in own or firings)


def _across(piece: Piece) -> float | None:
    """How wide a part of metal is at its widest, mm; None where nothing says so, or where it is a hole or a seat."""
    if not piece.roles.get("metal mass"):
        return None
    said = [size.finished.high for size in piece.sizes if size.finished is not None]
    said += [one.high for role in ACROSS for one in piece.roles.get(role, ()) if isinstance(one, Interval)]
    return max(said, default=None)
