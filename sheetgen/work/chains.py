"""What the parts of a chain must agree on: the clasp that closes it is counted in, its rings and links are enough."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

from sheetgen.base.arithmetic import read
from sheetgen.base.dimension import LENGTH
from sheetgen.base.interval import GRAIN
from sheetgen.base.spelling import plain
from sheetgen.base.tree import Wrong, named
from sheetgen.parts.field import Field
from sheetgen.parts.figure import FigureSpec

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from sheetgen.base.place import Word
    from sheetgen.parts.piece import Piece
    from sheetgen.work.evaluator import Evaluator
    from sheetgen.work.part import PartSource

MADE_OF = {"ring of": "rings wanted", "link of": "links wanted"}
"""A chain's field that names the part its rings are, and the chain's figure of how many of them it takes."""


def chains(evaluator: Evaluator, pieces: Mapping[str, Piece]) -> None:
    """Every chain and strand of a version, with the clasps, rings and links that its project makes."""
    _closed(evaluator)
    _enough(evaluator, pieces)


def _closed(evaluator: Evaluator) -> None:
    """A clasp that no chain counts in, while there is a chain that says nothing of how it closes."""
    closed = {name: part for name, part in evaluator.parts.items() if _playing(part, "closed by")}
    counted = set().union(*(_counted_in(part) for part in closed.values()))
    open_ = [part for part in closed.values() if not any(_word(part, f) for f in _playing(part, "closed by"))]
    for clasp in evaluator.parts.values():
        if not clasp.kind.closes or clasp.name in counted or not open_:
            continue
        adds = clasp.kind.with_role("adds")
        near = f"{clasp.name}.{adds.name if isinstance(adds, FigureSpec) else '…'}"
        evaluator.troubles.add(
            f"{open_[0].title}: the {clasp.kind.kind} ({clasp.title}) is not counted in, and so it comes out longer",
            open_[0].place(),
            f"closing: {near}, or where it does not close with it, closing: 0 mm",
        )


def _counted_in(part: PartSource) -> set[str]:
    """The parts that any length of a chain is worked with."""
    lengths = [o for o in part.kind.names.values() if isinstance(o, Field) and o.sort == LENGTH]
    return set().union(*(_reached(part, one) for one in lengths))


@dataclass
class _Wanted:
    """How many of a part are wanted by chains, how that is written, and whether all of them could be worked."""

    pieces: int = 0
    worked: list[str] = field(default_factory=list)
    chains: list[str] = field(default_factory=list)
    known: bool = True


def _enough(evaluator: Evaluator, pieces: Mapping[str, Piece]) -> None:
    """Too few is wrong. Too many may have another use, unless they were worked from the chain and so are meant."""
    found: dict[str, _Wanted] = {}
    for part in evaluator.parts.values():
        for role, figure in MADE_OF.items():
            for name, worked, count in _takes(part, pieces[part.name], role, figure):
                wanted = found.setdefault(name, _Wanted())
                wanted.known = wanted.known and count is not None
                wanted.pieces += count or 0
                wanted.worked.append(worked)
                wanted.chains.append(part.title)
    for name, wanted in found.items():
        part = evaluator.parts[name]
        there = pieces[name].numbers.get("count")
        if there is None or not wanted.known or abs(there.usual - wanted.pieces) < GRAIN:
            continue
        few, meant = there.usual < wanted.pieces, _reached(part, part.kind.count)
        if not few and meant.intersection(plain(chain) for chain in wanted.chains):
            continue
        told = " and ".join(dict.fromkeys(wanted.chains))
        takes = "take" if " and " in told else "takes"
        evaluator.troubles.add(
            f"{part.title}: there are {there.usual:g}, and {told} {takes} {wanted.pieces}",
            part.place("count"),
            f"count: {' + '.join(wanted.worked)}" + ("" if few else ", and how many more if there is a use for them"),
            "error" if few else "warning",
        )


def _takes(part: PartSource, piece: Piece, role: str, figure: str) -> Iterator[tuple[str, str, int | None]]:
    """The one part that a chain's rings or links are, how many it takes of it as a text, and the number if known."""
    spec = part.kind.with_role(figure)
    for owner in _playing(part, role):
        names = _reached(part, owner)
        if not isinstance(spec, FigureSpec) or len(names) != 1:
            continue  # two sorts of ring by turns: how many of each, it does not say
        count = piece.numbers.get("count")
        each = piece.figures[spec.name].value.usual if spec.name in piece.figures else None
        whole = round(count.usual * each) if count is not None and each is not None else None
        yield names.pop(), f"{part.name}.count * {part.name}.{spec.name}", whole


def _playing(part: PartSource, role: str) -> list[Field[Any]]:
    return [o for o in part.kind.names.values() if isinstance(o, Field) and o.role == role]


def _word(part: PartSource, owner: Field[Any]) -> Word | None:
    return part.words.get(plain(owner.name))


def _reached(part: PartSource, owner: Field[Any]) -> set[str]:
    """The parts that a field's expression names, itself or by way of choices and the project's own figures."""
    found: set[str] = set()
    waiting, seen = [_word(part, owner)], set()
    while waiting:
        word = waiting.pop()
        for name in _names(word):
            head = name.split(".")[0]
            if name in seen:
                continue
            seen.add(name)
            if head in part.evaluator.choices:
                waiting.append(part.evaluator.choices[head])
            elif name in part.evaluator.own:
                waiting.append(part.evaluator.own[name].word)
            elif head in part.evaluator.parts:
                found.add(head)
    return found


def _names(word: Word | None) -> set[str]:
    """The names in an expression; one with hyphens may be several, taken from each other."""
    if word is None:
        return set()
    try:
        found = named(read(word))
    except Wrong:
        return set()
    return {plain(name) for whole in found for name in (whole, *whole.split("-"))}
