"""A kind checked when its class is made: names, texts and their units, circles, roles."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.arithmetic import RESERVED, read
from sheetgen.base.binding import bind
from sheetgen.base.material import TOOL_KINDS, Clay, Item
from sheetgen.base.spelling import suggest
from sheetgen.base.spot import Neighbour
from sheetgen.base.tree import CALLED, Wrong, named
from sheetgen.facts.cautions import CAUTIONS
from sheetgen.parts.field import Field
from sheetgen.parts.figure import Aside, FigureSpec, Flag, Inline
from sheetgen.parts.reading import ROLES, Reader, Slip, Texts, blamed

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.parts.figure import SizeSpec, ToolSpec
    from sheetgen.parts.kind import Part


def read_kind(kind: type[Part], slips: list[Slip] | None = None) -> Texts:
    """Everything that a kind declares. Raises a Slip, with the text and a caret, or adds it to `slips`."""
    reader = Reader(kind, slips)
    with reader.held():
        _names(kind, reader)
    for name, owner in kind.names.items():
        with reader.held():
            if isinstance(owner, FigureSpec):
                reader.condition(owner.when, name)
                reader.number(owner.says, owner.unit, name, owner.when)
            elif isinstance(owner, Aside):
                reader.number(owner.says, owner.unit, name, "*")
            elif isinstance(owner, Inline):
                reader.number(owner.says, None, name, "*")
        for one in getattr(owner, "needs", ()):
            with reader.held():
                reader.need(one, name)
    for one in kind.needs:
        with reader.held():
            reader.need(one, f"a need at {one.at}")
    _lists(kind, reader)
    with reader.held():
        _circles(kind, reader)
    for fault in (*_roles(kind), *_hazards(kind, slips)):
        with reader.held():
            raise fault
    return reader.texts


def _names(kind: type[Part], reader: Reader) -> None:
    """No name has a meaning of its own; flags are read first, since conditions ask for them."""
    for name, owner in kind.names.items():
        # A field may be called down or round: no bracket follows it, as one follows the function.
        taken = RESERVED - CALLED if isinstance(owner, Field) else RESERVED
        if name in taken or (hasattr(kind.__mro__[-2], name) and not isinstance(owner, Field)):
            raise Slip(kind.__name__, f"nothing may be called '{name}': it has a meaning of its own", text=name)
        if isinstance(owner, Flag):
            reader.condition(owner.says, name)


def _lists(kind: type[Part], reader: Reader) -> None:
    """Sizes, takings, tools, room in the kiln, and what drying waits for."""
    for one in kind.sizes:
        with reader.held():
            _size(kind, reader, one)
    for taken in kind.takes:
        with reader.held():
            where = f"what it takes of {taken.item}"
            reader.condition(taken.when, where)
            for text in (taken.amount, taken.grams, taken.each, taken.spent, *(taken.blank or ())):
                if text:
                    reader.number(text, None, where, "*")
    for used in kind.tools:
        with reader.held():
            _tool(kind, reader, used)
    for laid in kind.on_shelf:
        with reader.held():
            where = "its room in the kiln"
            reader.condition(laid.when, where)
            for text in (laid.wide, laid.deep, laid.high):
                reader.number(text, "mm", where, "*")
    if kind.dries:
        with reader.held():
            reader.number(kind.dries, "mm", "what drying waits for", "*")


def _size(kind: type[Part], reader: Reader, one: SizeSpec) -> None:
    where = f"the size '{one.label}'"
    reader.condition(one.when, where)
    if not isinstance(kind.names.get(one.figure), FigureSpec):
        told = f"there is no figure '{one.figure}'"
        raise Slip(f"{kind.__name__}, {where}", told, suggest(one.figure, kind.figures()), one.figure)
    for text in (one.finished, one.fires):
        if text:
            reader.number(text, "mm", where, "*")
    for text in (one.label, one.tool):
        reader.words(text, where, "*")


def _tool(kind: type[Part], reader: Reader, used: ToolSpec) -> None:
    where = f"its {used.kind}"
    reader.condition(used.when, where)
    if used.kind not in TOOL_KINDS:
        told = f"there is no kind of tool '{used.kind}'"
        raise Slip(f"{kind.__name__}, {where}", told, suggest(used.kind, TOOL_KINDS), used.kind)
    if used.each:
        try:
            bind(read(used.size), reader.scope.each(used.each), strict=True)
        except Wrong as wrong:
            raise blamed(kind, where, used.size, wrong) from None
    else:
        reader.number(used.size, "mm", where, "*")
    if used.within:
        reader.number(used.within, "mm", where)


def _circles(kind: type[Part], reader: Reader) -> None:
    """A figure that is worked from itself."""
    way: list[str] = []
    done: set[str] = set()

    def visit(name: str) -> None:
        owner = kind.names.get(name.split(".", maxsplit=1)[0])
        says = getattr(owner, "says", "")
        if name in done or not says:
            return
        if name in way:
            told = " → ".join([*way[way.index(name) :], name])
            raise Slip(f"{kind.__name__}.{name}", f"'{name}' is worked from itself: {told}", text=name)
        way.append(name)
        trees = [reader.texts.numbers.get(says) or reader.texts.conditions.get(says)]
        if when := getattr(owner, "when", ""):
            trees.append(reader.texts.conditions.get(when))
        for tree in trees:
            for inner in sorted(named(tree) if tree is not None else ()):
                visit(inner.split(".")[0])
        way.pop()
        done.add(name)

    for name in kind.names:
        visit(name)


def _roles(kind: type[Part]) -> Iterator[Slip]:
    """Every item and neighbour says what it does in the part; what is of clay says how thick, and how much it takes."""
    of_clay, unknown = "", False
    for name, owner in kind.names.items():
        role, sort = getattr(owner, "role", ""), getattr(owner, "sort", None)
        if role and role not in ROLES:
            unknown = True
            yield Slip(f"{kind.__name__}.{name}", f"there is no role '{role}'", suggest(role, ROLES), role)
        if isinstance(sort, type) and issubclass(sort, Item | Neighbour) and not role:
            unknown = True
            told = f"a role: {', '.join(sorted(ROLES))}"
            yield Slip(f"{kind.__name__}.{name}", f"'{owner.name}' does not say what it does", told, name)
        if role == "made of" and isinstance(sort, type) and issubclass(sort, Clay):
            of_clay = name
    if not of_clay and not unknown and not _may_be_of_clay(kind) and (owner := kind.with_role("clay mass")) is not None:
        told = f"'{owner.name}' has the role 'clay mass', and nothing in it is made of clay"
        yield Slip(kind.__name__, told, "leave the role out", owner.name)
    for role in ("rolled to", "clay mass") if of_clay and not unknown else ():
        if kind.with_role(role) is None:
            told = f"it is made of clay, and nothing in it has the role '{role}'"
            yield Slip(kind.__name__, told, f"give it to {ROLE_OF[role]}", of_clay)


def _may_be_of_clay(kind: type[Part]) -> bool:
    """Whether it is made of an item that may be a clay."""
    sorts = (owner.sort for owner in kind.fields().values() if owner.role in {"made of", "made in"})
    return any(isinstance(sort, type) and issubclass(Clay, sort) for sort in sorts)


def _hazards(kind: type[Part], slips: list[Slip] | None) -> Iterator[Slip]:
    """A caution that nobody wrote would be left off the sheet. A studio's own kinds may name the studio's own cautions."""
    for name in kind.hazards if slips is None else ():
        if name not in CAUTIONS:
            yield Slip(kind.__name__, f"there is no caution '{name}'", suggest(name, CAUTIONS), name)


ROLE_OF = {
    "rolled to": "the field that says how thick the clay is rolled",
    "clay mass": "the figure that says how much",
}
