"""What a kind of part says of itself, made from its code: fields with units and defaults, figures."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.base.bend import Bend
from sheetgen.base.dimension import COUNT, EXAMPLES, Dimension
from sheetgen.base.material import Item
from sheetgen.base.outline import Outline

if TYPE_CHECKING:
    from typing import Any

    from sheetgen.parts.given import Given
    from sheetgen.parts.kind import Part


@dataclass(frozen=True, slots=True)
class Line:
    """One field or figure in words."""

    name: str
    takes: str
    default: str
    about: str


def summary(kind: type[Part]) -> str:
    """The first sentence of the kind's file."""
    import sys  # noqa: PLC0415 - only to find the file's own words

    text = (sys.modules[kind.__module__].__doc__ or "").strip().split("\n\n")[0]
    return " ".join(text.split())


def model(kind: type[Part]) -> str:
    """What the kind says of its model: source, and what it does not know."""
    return " ".join((kind.__doc__ or "").split())


def fields(kind: type[Part]) -> list[Line]:
    """Every field: what it takes, its default, what it is."""
    return [
        Line(f.name, takes(f), f.default if f.default is not None else "" if f.required else "may be left out", f.about)
        for f in kind.fields().values()
    ]


def figures(kind: type[Part]) -> list[Line]:
    """Every figure: name for arithmetic, unit, label, what it is."""
    return [Line(w.name, w.unit or "number", w.label, w.about) for w in kind.workers().values()]


def takes(field: Given[Any]) -> str:
    """What a field takes, with its bounds."""
    sort = field.sort
    if isinstance(sort, Dimension):
        said = "whole number" if field.whole else str(sort).removeprefix("a ")
        if sort != COUNT:
            said += f", as {EXAMPLES.get(sort, '')}"
        bounds = ((field.above, "over"), (field.at_least, "at least"), (field.at_most, "at most"))
        return said + "".join(f", {word} {value:g}" for value, word in bounds if value is not None)
    if isinstance(sort, tuple):
        return " | ".join(map(str, sort))
    if sort is Outline:
        return "SVG path"
    if sort is Bend:
        return "straights and arcs"
    if isinstance(sort, type) and issubclass(sort, Item):
        return f"{sort.__name__.lower()} of stock"
    return sort.__name__.lower()


def told(name: str, kind: type[Part]) -> str:
    """A kind in plain lines: what it is, its fields, its figures."""
    lines = [name, f"  {summary(kind)}", f"  {model(kind)}", "  fields"]
    lines += [f"    {f.name}: {f.about} ({f.takes}) [{f.default or 'must be given'}]" for f in fields(kind)]
    lines.append("  figures")
    lines += [f"    {line.name}: {line.default}, {line.takes}" for line in figures(kind)]
    return "\n".join(lines) + "\n"
