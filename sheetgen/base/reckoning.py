"""A bound tree worked: choices made at the usual case, then reckoned in every case, and printed from the same tree."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Protocol

from sheetgen.base.cases import Cases, apply, together, uncertain
from sheetgen.base.interval import GRAIN, Interval, ceil
from sheetgen.base.spelling import plain
from sheetgen.base.tree import CHOOSERS, DECIDED, FUNCTIONS, SIGNS, Node, Number, number
from sheetgen.base.tree import printed as print_tree
from sheetgen.base.trouble import CannotBe

if TYPE_CHECKING:
    from collections.abc import Sequence

PI = 3.141592653589793
NEAR, NEAR_MM, OVER_MM = 0.1, 0.5, 0.5  # how far from what is wanted a tool may be: a share, mm at least; mm over


class Source(Protocol):
    """The numbers behind the names of one part or project."""

    def cases(self, path: str) -> Cases:
        """The number that a name stands for, as what comes after it must use it: what is cut, as it is printed."""

    def given(self, path: str) -> bool:
        """Whether a name that may be left out stands for something; a list, for anything at all."""

    def true(self, path: str) -> bool:
        """Whether a name by itself holds as a condition: given, and not nothing."""

    def word(self, path: str) -> str:
        """The word or the item's id that a name stands for, as arithmetic writes it."""

    def tree(self, path: str) -> Node | None:
        """The expression that a name only abbreviates."""

    def owned(self, kind: str) -> Sequence[float]:
        """The sizes, mm, of the owned tools of a kind."""

    def series(self, path: str) -> Sequence[Source]:
        """The numbers behind each entry of a list."""

    def told(self, mm: float) -> str:
        """A length in print, with its unit."""

    @property
    def key(self) -> str:
        """What a range written here is called as an uncertain input."""


@dataclass(frozen=True, slots=True)
class Chosen:
    """The tool taken, and the owned sizes that a working shows."""

    size: float
    shown: tuple[float, ...]


ABSENT = Node("absent")


def settle(node: Node, source: Source) -> Node:  # noqa: PLR0911 - one a sort of node
    """Every choice made: what is left is what is reckoned and printed. A term that is not there is left out."""
    op = node.op
    if op in {"number", "π", "absent", "chosen"}:
        return node
    if op == "name":
        inner = source.tree(node.it)
        return settle(inner, source) if inner is not None else Node("name", (), plain(node.it), node.at, node.width)
    if op == "if":
        if holds(node.args[1], source):
            return settle(node.args[0], source)
        return settle(node.args[2], source) if len(node.args) > 2 else ABSENT  # noqa: PLR2004 - there is an else
    if op == "or":
        first = node.args[0]
        there = first.op != "name" or source.given(plain(first.it))
        return settle(first if there else node.args[1], source)
    if op in CHOOSERS:
        return _choose(node, source)
    if op == "each":
        return _series(node, source)
    if op == "in":
        return settle(node.args[0], source)
    args = tuple(settle(a, source) for a in node.args)
    if ABSENT in args:
        if op in "+−":
            left, right = args
            return left if right is ABSENT else Node("neg", (right,)) if op == "−" else right
        return ABSENT
    return Node(op, args, node.it, node.at, node.width)


def _series(node: Node, source: Source) -> Node:
    """A sum over a list, term by term, each term's numbers already in it."""
    terms = []
    for entry in source.series(node.it):
        settled = settle(node.args[0], entry)
        terms.append(_filled(settled, entry))
    whole = terms[0] if terms else Node("number", (), Number(0.0))
    for term in terms[1:]:
        whole = Node("+", (whole, term))
    return whole


def _filled(node: Node, source: Source) -> Node:
    if node.op == "name":
        return Node("value", (), source.cases(node.it))
    return Node(node.op, tuple(_filled(a, source) for a in node.args), node.it) if node.args else node


def _choose(node: Node, source: Source) -> Node:
    """The owned tool nearest to a size, or the smallest that is large enough. CannotBe where none is near."""
    wanted_tree = settle(node.args[0], source)
    wanted = reckon(wanted_tree, source).usual
    kind = node.args[1].it.removeprefix("drawer.").replace("_", " ")
    sizes = sorted(source.owned(kind))
    reach = reckon(settle(node.args[2], source), source).usual if len(node.args) > 2 else None  # noqa: PLR2004
    if node.op == "nearest":
        size = min(sizes, key=lambda s: abs(s - wanted)) if sizes else wanted
        far = bool(sizes) and abs(size - wanted) > max(NEAR_MM, (reach or NEAR) * wanted) + GRAIN
        shown = sorted(sorted(sizes, key=lambda s: abs(s - wanted))[:3]) or [wanted]
    else:
        enough = [s for s in sizes if s >= wanted - GRAIN] if sizes else [ceil(wanted * 10) / 10]
        size = enough[0] if enough else wanted
        far = not enough or size > wanted + (reach if reach is not None else OVER_MM) + GRAIN
        shown = sorted(sorted(enough, key=lambda s: abs(s - wanted))[:2])
    if far:
        near = " and ".join(source.told(s) for s in beside(sizes, wanted))
        off = "or near it" if node.op == "nearest" else "or a little more"
        message = f"no {kind} of {source.told(wanted)} {off} is in the drawer"
        raise CannotBe(message, f"the nearest owned: {near}; change the size, or add the tool to stock")
    return Node(node.op, (wanted_tree,), Chosen(size, tuple(shown)))


def beside(sizes: Sequence[float], wanted: float) -> list[float]:
    """The owned size just under a wanted one and the one just over it, where there are such."""
    ordered = sorted(sizes)
    return [*[s for s in ordered if s < wanted][-1:], *[s for s in ordered if s > wanted][:1]]


def reckon(node: Node, source: Source) -> Cases:  # noqa: PLR0911 - one a sort of node
    """A settled tree in every case. ArithmeticError or ValueError where it cannot be worked."""
    op = node.op
    if op == "number":
        found = node.it
        if found.low is None:
            return Cases(found.usual)
        return uncertain(f"{source.key}: {found.within}@{node.at}", Interval(found.usual, found.low, found.high))
    if op == "π":
        return Cases(PI)
    if op == "name":
        return source.cases(node.it)
    if op == "value":
        value: Cases = node.it
        return value
    if op == "absent":
        return Cases(0.0)
    if op in CHOOSERS:
        return Cases(node.it.size)
    args = [reckon(a, source) for a in node.args]
    if op == "usual":
        return Cases(args[0].usual)
    if op in DECIDED and len(args) == 1:
        return Cases(SIGNS[op](*(a.usual for a in args)))
    if op in FUNCTIONS:
        return apply(FUNCTIONS[op].pure, *args)
    return apply(SIGNS[op], *args)


def holds(node: Node, source: Source) -> bool:
    """Whether a condition holds at the usual case."""
    op = node.op
    if op == "not":
        return not holds(node.args[0], source)
    if op == "and":
        return all(holds(a, source) for a in node.args)
    if op == "any":
        return any(holds(a, source) for a in node.args)
    if op == "is":
        return source.word(plain(node.args[0].it)) == plain(node.it)
    if op == "cmp":
        a, b = (reckon(settle(side, source), source).usual for side in node.args)
        return compare(node.it, a, b)
    return source.true(plain(node.it))


def always(node: Node, source: Source) -> tuple[float, float] | None:
    """None where a comparison holds in every case; else the two sides of a case where it does not."""
    sides = [reckon(settle(side, source), source) for side in node.args]
    (a, b), keys = together(sides)
    pairs = [(a.usual, b.usual), *zip(a.over(keys), b.over(keys), strict=True)]
    return next(((x, y) for x, y in pairs if not compare(node.it, x, y)), None)


def compare(sign: str, a: float, b: float) -> bool:
    """A comparison, a hair's rounding forgiven."""
    return {
        "≤": a <= b + GRAIN, "≥": a >= b - GRAIN, "<": a < b - GRAIN, ">": a > b + GRAIN, "=": abs(a - b) <= GRAIN,
    }[sign]  # fmt: skip


def printed(node: Node, source: Source) -> str:
    """A settled tree with the numbers in it that it was reckoned with."""
    return print_tree(node, lambda name: number(source.cases(name).usual))
