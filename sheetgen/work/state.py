"""What a step has in its hands: clay that is still to be fired, wet or dry, or metal."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.base.material import Clay, Metal, Sheet, Wire

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from sheetgen.model.worked import WorkedStep
    from sheetgen.parts.piece import Piece


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
