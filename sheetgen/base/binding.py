"""A tree held against the names it may use: each is known, and every unit comes out.

Between the numbers of one kind of part units must fit as they stand, so that its workings can be followed by pencil
(`strict`); in a project's file a millimetre meets an inch or a millilitre, and the conversion is put into the tree.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Protocol

from sheetgen.base.dimension import ANY, BARE, DEGREES, UNITS, cancelled, dimension_of, ours, said, spelled, times, unit
from sheetgen.base.spelling import plain, suggest
from sheetgen.base.tree import CHOOSERS, DECIDED, FUNCTIONS, Node, Number, Wrong

if TYPE_CHECKING:
    from collections.abc import Iterable

    from sheetgen.base.dimension import Unit

_TURNED = frozenset({"sin", "cos"})  # of an angle
_TURNS = frozenset({*_TURNED, "asin", "acos", "atan", "ln"})
HIGHEST = 9  # power of a unit: higher than anything that is measured


@dataclass(frozen=True, slots=True)
class Named:
    """What stands behind a name: a number in a unit; one of a few words; an item of stock; a list of numbers.

    `optional` may be left out; `tree` is an expression that the name only abbreviates.
    """

    unit: Unit | None = None
    what: str = "number"
    words: tuple[str, ...] = ()
    optional: bool = False
    tree: Node | None = None


class Scope(Protocol):
    """The names that an expression may use."""

    def named(self, path: str) -> Named:
        """What a name stands for. Wrong, at −1, for one that is not known."""

    def same(self, path: str, word: str) -> None:
        """Wrong, at −1, where what a name stands for can never be that word."""

    def each(self, path: str) -> Scope:
        """The names inside a sum over a list."""

    def tools(self) -> Iterable[str]:
        """The kinds of tool that a drawer may hold."""


def bind(node: Node, scope: Scope, *, strict: bool = False) -> tuple[Node, Unit]:
    """The tree with its conversions, and the unit it comes to. Wrong at the character."""
    try:
        return _Binder(scope, strict=strict).bind(node)
    except Wrong as wrong:
        if wrong.at < 0:
            raise Wrong(wrong.message, node.at, node.width, wrong.help) from None
        raise


def bind_condition(node: Node, scope: Scope, *, strict: bool = False) -> Node:
    """A condition's tree with its conversions. Wrong at the character."""
    try:
        return _Binder(scope, strict=strict).condition(node)
    except Wrong as wrong:
        if wrong.at < 0:
            raise Wrong(wrong.message, node.at, node.width, wrong.help) from None
        raise


def become(node: Node, have: Unit, want: Unit, *, strict: bool = False) -> Node:
    """The tree in another unit. Wrong, at the whole of it, where that cannot be."""
    if ANY in {have, want} or have == want:
        return node
    if dimension_of(have) != dimension_of(want):
        helped = "a number wants its unit, such as 38 mm" if have == BARE and want == unit("mm") else ""
        raise Wrong(f"comes to {said(have)}, and {said(want)} is wanted", node.at, node.width, helped)
    ratio = ours(have) / ours(want)
    if strict and ratio != 1:
        conversion = spelled(times(have, want, -1) if ratio < 1 else times(want, have, -1))
        told = f"÷ {1 / ratio:g} {conversion}" if ratio < 1 else f"× {ratio:g} {conversion}"
        message = f"comes to {spelled(have)}, and the figure is in {spelled(want) or 'no unit'}"
        raise Wrong(message, node.at, node.width, f"{told} is missing")
    if ratio == 1:
        return node
    if ratio < 1:
        return Node("÷", (node, Node("number", (), Number(round(1 / ratio, 9)))), None, node.at, node.width)
    return Node("×", (node, Node("number", (), Number(round(ratio, 9)))), None, node.at, node.width)


class _Binder:
    def __init__(self, scope: Scope, *, strict: bool) -> None:
        self.scope, self.strict = scope, strict

    def bind(self, node: Node) -> tuple[Node, Unit]:  # noqa: PLR0911, PLR0912 - one a sort of node
        op = node.op
        if op == "number":
            found = node.it
            return node, ANY if found.usual == 0 and found.unit == BARE and found.low is None else found.unit
        if op == "π":
            return node, BARE
        if op == "name":
            return self.name(node)
        if op in {"not", "and", "any", "is", "cmp"}:
            return self.condition(node), BARE
        if op == "if":
            condition = self.condition(node.args[1])
            (one, *other), u = self.alike((node.args[0], *node.args[2:]), "set beside")
            return self.again(node, (one, condition, *other)), u
        if op in {"or", "min", "max"}:
            if op != "or" and len(node.args) == 1:
                raise Wrong(
                    f"{op} wants two numbers or more", node.at, node.width, "put a comma and a space between them"
                )
            args, u = self.alike(node.args, "compared with")
            return self.again(node, args), u
        if op in "+−":
            args, u = self.alike(node.args, "added to" if op == "+" else "taken from")
            return self.again(node, args), u
        if op in CHOOSERS:
            return self.chooser(node)
        if op == "each":
            inner, u = _Binder(self.scope.each(node.it), strict=self.strict).bind(node.args[0])
            return self.again(node, (inner,)), u
        if op in FUNCTIONS:
            return self.function(node)
        if op in DECIDED:
            return self.stepped(node)
        bound = [self.bind(a) for a in node.args]
        if op in _TURNED and [u for _, u in bound] == [DEGREES] and not self.strict:
            bound = [(_in_radians(bound[0][0]), BARE)]
        comes = self.simple(node, [u for _, u in bound])
        if any(abs(power) > HIGHEST for _, power in comes):
            raise Wrong("this multiplies units beyond anything that is measured", node.at, node.width, "look at its ²")
        whole = self.again(node, tuple(n for n, _ in bound))
        if self.strict or comes == ANY:
            return whole, comes
        return become(whole, comes, cancelled(comes)), cancelled(comes)

    def again(self, node: Node, args: tuple[Node, ...]) -> Node:
        same = all(a is b for a, b in zip(args, node.args, strict=True))
        return node if same else Node(node.op, args, node.it, node.at, node.width)

    def simple(self, node: Node, units: list[Unit]) -> Unit:  # noqa: PLR0911 - one a sign
        """The unit of a sign or function that takes its arguments as they are."""
        op, first = node.op, units[0]
        if op in "×÷":
            if ANY in units:
                return units[1] if first == ANY and op == "×" else first
            return times(first, units[1], 1 if op == "×" else -1)
        if op == "²":
            return times(first, first)
        if op == "√" and len(units) == 1:
            if first != ANY and any(power % 2 for _, power in first):
                raise Wrong(f"there is no root of {said(first)}", node.at, node.width)
            return first if first == ANY else tuple((mark, power // 2) for mark, power in first)
        if len(units) > 1:
            raise Wrong(f"{op} wants one number", node.at, node.width, f"{op}(body.length)")
        if op in _TURNS:
            if first not in {BARE, ANY}:
                arg = node.args[0]
                raise Wrong(f"{op} wants a bare number, not {said(first)}", arg.at, arg.width)
            return BARE
        if op == "in":
            return self.told_in(node, first)
        return first  # neg, usual

    def stepped(self, node: Node) -> tuple[Node, Unit]:
        """A number to the step given; a bare one to whole ones."""
        args, units = zip(*map(self.bind, node.args), strict=True)
        if len(args) > 2 or (len(args) == 1 and units[0] not in {BARE, ANY}):  # noqa: PLR2004 - the number, its step
            helped = f"write {node.op}(body.length, 0.5 mm)"
            raise Wrong(f"{node.op} wants a number and a step", node.at, node.width, helped)
        for step, unit_ in zip(args[1:], units[1:], strict=True):
            if ANY not in units and dimension_of(unit_) != dimension_of(units[0]):
                raise Wrong(f"{said(unit_)} cannot be a step of {said(units[0])}", node.at, node.width, _BOTH)
            if step.op == "number" and step.it.usual <= 0:
                raise Wrong("a step must be more than nothing", step.at, step.width, "write a step such as 0.5 mm")
            args = (args[0], become(step, unit_, units[0], strict=self.strict))
        return self.again(node, args), units[0]

    def told_in(self, node: Node, have: Unit) -> Unit:
        want = UNITS[node.it].unit if node.it in UNITS else unit("mm")
        if have != ANY and dimension_of(have) != dimension_of(want):
            raise Wrong(f"{said(have)} cannot be told in {node.it}", node.at, node.width, "name a unit of that kind")
        return have

    def name(self, node: Node) -> tuple[Node, Unit]:
        found = self.lookup(node)
        if isinstance(found, Node):
            return self.bind(found)
        if found.tree is not None:
            return _plainly(node), self.bind(found.tree)[1]
        if found.unit is None:
            raise Wrong(f"'{node.it}' is no number", node.at, node.width, "name a figure or a measure")
        return _plainly(node), found.unit

    def lookup(self, node: Node) -> Named | Node:
        """What a name stands for; a name with a hyphen may be a subtraction that was written tight."""
        try:
            return self.scope.named(plain(node.it))
        except Wrong as wrong:
            if "-" in node.it:
                pieces = node.it.split("-")
                at = [node.at + len("-".join(pieces[:i])) + bool(i) for i in range(len(pieces))]
                leaves = [Node("name", (), piece, a, len(piece)) for piece, a in zip(pieces, at, strict=True)]
                if all(self.known(leaf) for leaf in leaves):
                    whole = leaves[0]
                    for leaf in leaves[1:]:
                        whole = Node("−", (whole, leaf), None, node.at, leaf.at + leaf.width - node.at)
                    return whole
            at_ = node.at if wrong.at < 0 else node.at + wrong.at
            width = node.width if wrong.at < 0 else wrong.width
            raise Wrong(wrong.message, at_, width, wrong.help) from None

    def known(self, leaf: Node) -> bool:
        try:
            return self.scope.named(plain(leaf.it)).unit is not None
        except Wrong:
            return False

    def alike(self, args: tuple[Node, ...], verb: str) -> tuple[tuple[Node, ...], Unit]:
        """Arguments of one unit, which is that of the first that has one."""
        bound = [self.bind(a) for a in args]
        wanted = next((u for _, u in bound if u != ANY), ANY)
        found = []
        for node, have in bound:
            if have not in {ANY, wanted}:
                if dimension_of(have) != dimension_of(wanted):
                    raise Wrong(f"{said(have)} cannot be {verb} {said(wanted)}", node.at, node.width, _BOTH)
                found.append(become(node, have, wanted, strict=self.strict))
            else:
                found.append(node)
        return tuple(found), wanted

    def chooser(self, node: Node) -> tuple[Node, Unit]:
        """`nearest` or `atleast`: a size, a tool of the drawer, and how far off it may be (a share, or a length)."""
        bound = [self.bind(a) if a.op != "name" or not a.it.startswith("drawer.") else (a, BARE) for a in node.args]
        tool = node.args[1] if len(node.args) in {2, 3} else None
        if tool is None or tool.op != "name" or not tool.it.startswith("drawer."):
            raise Wrong(f"{node.op} wants a size and a tool", node.at, node.width, f"{node.op}(size, drawer.drill)")
        kind = tool.it.removeprefix("drawer.").replace("_", " ")
        if kind not in self.scope.tools():
            raise Wrong(f"a drawer holds no '{kind}'", tool.at, tool.width, suggest(kind, self.scope.tools()))
        if bound[0][1] not in {ANY, unit("mm")}:
            raise Wrong(f"a tool is chosen by a length, not {said(bound[0][1])}", node.args[0].at, node.args[0].width)
        return self.again(node, tuple(n for n, _ in bound)), unit("mm")

    def function(self, node: Node) -> tuple[Node, Unit]:
        known = FUNCTIONS[node.op]
        if len(node.args) != len(known.takes):
            raise Wrong(f"{node.op} wants {len(known.takes)} numbers", node.at, node.width, known.says)
        args = []
        for arg, want in zip(node.args, known.takes, strict=True):
            bound, have = self.bind(arg)
            args.append(become(bound, have, want, strict=self.strict))
        return self.again(node, tuple(args)), known.gives

    def condition(self, node: Node) -> Node:
        if node.op in {"not", "and", "any"}:
            return self.again(node, tuple(self.condition(a) for a in node.args))
        if node.op == "cmp":
            return self.again(node, self.alike(node.args, "compared with")[0])
        if node.op == "is":
            name = node.args[0]
            if name.op != "name":
                raise Wrong("a name is wanted before 'is'", name.at, name.width)
            found = self.lookup(name)
            if isinstance(found, Node) or found.what not in {"words", "item"}:
                raise Wrong(
                    f"'{name.it}' is no choice between words or items", name.at, name.width, "write = for a number"
                )
            try:
                self.scope.same(plain(name.it), plain(node.it))
            except Wrong as wrong:
                raise Wrong(wrong.message, node.at, node.width, wrong.help) from None
            return Node("is", (_plainly(name),), plain(node.it), node.at, node.width)
        if node.op == "name":
            if not node.it.startswith("drawer."):
                self.lookup(node)
            return _plainly(node)
        raise Wrong("this is no comparison", node.at, node.width, "write body.inside < 12 mm")


def _plainly(node: Node) -> Node:
    """A name as it is kept, however its words are parted."""
    return node if node.it == plain(node.it) else Node("name", (), plain(node.it), node.at, node.width)


def _in_radians(angle: Node) -> Node:
    """An angle in degrees as the arithmetic turns it: × π ÷ 180."""
    at, width = angle.at, angle.width
    turned = Node("×", (angle, Node("π", (), None, at, width)), None, at, width)
    return Node("÷", (turned, Node("number", (), Number(180))), None, at, width)


_BOTH = "give both sides the same kind of unit"
