"""What is sure where a condition holds, and so which figures may read what may be left out."""

from __future__ import annotations

from typing import Any

from sheetgen.base.arithmetic import read, read_condition
from sheetgen.base.material import NUMBERS
from sheetgen.base.spelling import plain
from sheetgen.base.tree import CHOOSERS, Node, Wrong
from sheetgen.parts.field import Field
from sheetgen.parts.figure import Aside, FigureSpec, Flag, Inline

EVERYTHING = frozenset({"*"})


class Claims:
    """The conditions of one kind. `either`: of two fields one is given, and not both."""

    def __init__(self, names: dict[str, Any], either: tuple[tuple[str, str], ...]) -> None:
        self.names, self.either = names, either

    def of(self, condition: Node | None) -> frozenset[str]:
        """What holds where a condition does: that a name is given, that a word is chosen, the condition itself."""
        if condition is None:
            return frozenset()
        return frozenset(self._true(condition))

    def unless(self, condition: Node) -> frozenset[str]:
        """What holds where a condition does not."""
        return frozenset(self._true(Node("not", (condition,))))

    def _true(self, node: Node) -> set[str]:
        op = node.op
        if op == "and":
            return set().union(*(self._true(a) for a in node.args))
        if op == "name":
            name = plain(node.it)
            owner = self.names.get(name)
            return {name, *(self._true(read_condition(owner.says)) if isinstance(owner, Flag) else ())}
        if op == "not":
            return self._false(node.args[0])
        if op == "is":
            name, word = plain(node.args[0].it), plain(node.it)
            return {f"{name} is {word}", *(f"not {name} is {w}" for w in self._words(name) if w != word)}
        return {_text(node)}

    def _false(self, node: Node) -> set[str]:
        op = node.op
        if op == "not":
            return self._true(node.args[0])
        if op == "name":
            name = plain(node.it)
            owner = self.names.get(name)
            found = {f"not {name}"}
            if isinstance(owner, Flag):
                found |= self._false(read_condition(owner.says))
            for a, b in self.either:
                found |= {b} if name == a else {a} if name == b else set()
            return found
        if op == "any":
            return set().union(*(self._false(a) for a in node.args))
        if op == "is":
            name, word = plain(node.args[0].it), plain(node.it)
            others = [w for w in self._words(name) if w != word]
            return {f"not {name} is {word}", *({f"{name} is {others[0]}"} if len(others) == 1 else ())}
        return {f"not {_text(node)}"}

    def _words(self, name: str) -> tuple[str, ...]:
        owner = self.names.get(name)
        return (
            tuple(plain(str(w)) for w in owner.sort)
            if isinstance(owner, Field) and isinstance(owner.sort, tuple)
            else ()
        )


def _text(node: Node) -> str:
    told = node.it if node.op in {"name", "cmp", "is"} else getattr(node.it, "usual", "")
    return f"{node.op}{told}({','.join(_text(a) for a in node.args)})"


def unguarded(node: Node, names: dict[str, Any], sure: frozenset[str], claims: Claims) -> None:
    """Wrong where a figure reads what may be left out, and nothing says that it is there. `*` is sure of everything."""
    if "*" in sure:
        return
    op = node.op
    if op == "name":
        _one(node, names, sure, claims)
    elif op == "or":
        first, other = node.args
        if first.op != "name":
            unguarded(first, names, sure, claims)
            unguarded(other, names, sure, claims)
        else:
            unguarded(other, names, sure | claims.unless(first), claims)
    elif op == "if":
        unguarded(node.args[0], names, sure | claims.of(node.args[1]), claims)
        for other in node.args[2:]:
            unguarded(other, names, sure | claims.unless(node.args[1]), claims)
    elif op in CHOOSERS:
        unguarded(node.args[0], names, sure, claims)
    elif op != "is":
        for arg in node.args:
            unguarded(arg, names, sure, claims)


def _one(node: Node, names: dict[str, Any], sure: frozenset[str], claims: Claims) -> None:
    path = plain(node.it)
    head = path.split(".")[0]
    owner = names.get(head)
    helped = f"write ({path} or …), (… if {head}), or when={head!r}"
    if isinstance(owner, Inline):
        unguarded(read(owner.says), names, sure, claims)
    elif isinstance(owner, Field) and owner.optional and head not in sure:
        raise Wrong(f"'{head}' may be left out", node.at, node.width, helped)
    elif isinstance(owner, FigureSpec) and owner.when:
        wanted = claims.of(read_condition(owner.when))
        if not wanted <= sure:
            raise Wrong(f"'{head}' is there only when {owner.when}", node.at, node.width, f"add when={owner.when!r}")
    elif isinstance(owner, Field) and isinstance(owner.sort, type):
        _of_item(node, owner, path, sure)
    elif isinstance(owner, Aside):
        return


def _of_item(node: Node, owner: Field[Any], path: str, sure: frozenset[str]) -> None:
    below = path.split(".")[1] if "." in path else ""
    optional = NUMBERS.get(getattr(owner.sort, "__name__", ""), {}).get(below, ("", False))[1]
    if optional and f"{owner.attribute}.{below}" not in sure:
        raise Wrong(f"stock may not say '{path}'", node.at, node.width, f"write ({path} or …), or when={path!r}")
