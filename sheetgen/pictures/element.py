"""An element of a drawing: what it has, what it points at, what is in it; and the drawing written anew."""

from __future__ import annotations

from dataclasses import dataclass, field
from html import escape
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

PAINTS = ("fill", "stroke")
HEAD = '<svg xmlns="http://www.w3.org/2000/svg"'


@dataclass(frozen=True, slots=True)
class Element:
    """`own` are its attributes, `points_at` ids by attribute; beside the id of a paint `own` has what stands for it."""

    tag: str
    line: int
    identity: str = ""
    own: dict[str, str] = field(default_factory=dict)
    points_at: dict[str, str] = field(default_factory=dict)
    inside: list[Element | str] = field(default_factory=list)

    def elements(self) -> Iterator[Element]:
        """Those right inside it."""
        return (one for one in self.inside if isinstance(one, Element))

    def all(self) -> Iterator[Element]:
        """It and whatever is in it."""
        yield self
        for one in self.elements():
            yield from one.all()


def by_id(top: Element) -> dict[str, Element]:
    """Each by its id; of two that share one the first."""
    found: dict[str, Element] = {}
    for one in top.all():
        if one.identity:
            found.setdefault(one.identity, one)
    return found


def written(top: Element, known: Mapping[str, Element]) -> str:
    """The drawing as a file: no ids but numbers, and those only where something points at them."""
    wanted = {name for one in top.all() for name in one.points_at.values()}
    names = {name: f"n{n}" for n, name in enumerate(sorted(wanted & known.keys()))}
    lines: list[str] = []
    _write(top, {id(known[name]): name for name in names}, names, lines)
    return "".join(lines)


def _write(one: Element, holders: Mapping[int, str], names: Mapping[str, str], lines: list[str]) -> None:
    """As WeasyPrint reads it."""
    own = dict(one.own)
    if id(one) in holders:
        own["id"] = names[holders[id(one)]]
    for attribute, name in one.points_at.items():
        if attribute == "href":
            own["href"] = f"#{names[name]}"
        else:
            own[attribute] = f"url(#{names[name]}) {own.get(attribute, '')}".strip()
    said = "".join(f" {name}={_quoted(value)}" for name, value in own.items())
    lines.append(f"{HEAD}{said}" if one.tag == "svg" else f"<{one.tag}{said}")
    if one.inside:
        lines.append(">")
        for inner in one.inside:
            if isinstance(inner, Element):
                _write(inner, holders, names, lines)
            else:
                lines.append(escape(inner, quote=False))
        lines.append(f"</{one.tag}>")
    else:
        lines.append("/>")
    if one.tag not in {"text", "tspan"}:
        lines.append("\n")


def _quoted(value: str) -> str:
    """The value of an attribute, in the quotes that it does not hold itself."""
    said = escape(value, quote=False).translate({ord(one): f"&#{ord(one)};" for one in "\n\r\t"})
    if '"' not in said:
        return f'"{said}"'
    return f"'{said}'" if "'" not in said else '"{}"'.format(said.replace('"', "&quot;"))
