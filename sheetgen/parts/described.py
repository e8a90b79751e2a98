"""What a kind of part says of itself: fields with units and defaults, figures with what they are worked by."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from sheetgen.base.bend import Bend
from sheetgen.base.dimension import COUNT, EXAMPLES, Dimension
from sheetgen.base.figure import ROUNDINGS
from sheetgen.base.material import NUMBERS, TOOL_KINDS, Item
from sheetgen.base.outline import Outline
from sheetgen.base.tree import FUNCTIONS
from sheetgen.facts.bench import ACTS, DOES
from sheetgen.facts.metals import named
from sheetgen.facts.rules import RULES
from sheetgen.formulas.formula import ALL
from sheetgen.formulas.known import FORMULAS
from sheetgen.parts.reading import ROLES

if TYPE_CHECKING:
    from sheetgen.facts.rules import Rule
    from sheetgen.parts.field import Field
    from sheetgen.parts.kind import Part


CALLS = {
    "min(a, b …), max(a, b …)": "the least, the most",
    "up(x), down(x), round(x)": "to a whole number; with a step, as round(x, 0.5 mm), to that",
    "usual(x)": "a range at its usual value; also x.low, x.usual, x.high of a name",
    "a or b": "the first that is given",
    "a if condition else b": "without else, nothing where the condition does not hold",
    "nearest(x, drawer.rod)": "the owned size nearest to x, which may be a tenth off, or a share given third",
    "atleast(x, drawer.drill)": "the least owned size that is no less than x, and little over it",
    "sum(form: size)": "over the straights and arcs of a bent wire",
    "√(x), x², sin(x), cos(x), asin(x), acos(x), atan(x), ln(x), π": "angles are in radians",
}
"""What arithmetic calls beside the formulas."""


@dataclass(frozen=True, slots=True)
class Line:
    """One field or figure in words."""

    name: str
    takes: str
    default: str
    about: str


def summary(kind: type[Part]) -> str:
    """The first sentence of the kind's file, or what a kind without one says of itself."""
    import sys  # noqa: PLC0415 - only to find the file's own words

    module = sys.modules.get(kind.__module__)
    text = kind.about or ((module and module.__doc__) or "").strip().split("\n\n")[0]
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
    return [Line(name, f.unit or "number", f.label, f.about) for name, f in kind.figures().items()]


def takes(field: Field[Any]) -> str:
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
    if issubclass(sort, Item):
        return f"{sort.__name__.lower()} of stock"
    return sort.__name__.lower()


def told(name: str, kind: type[Part]) -> str:
    """A kind in plain lines: what it is, its fields, its figures."""
    lines = [name, f"  {summary(kind)}", f"  {model(kind)}".rstrip(), "  fields"]
    lines += [f"    {f.name}: {f.about} ({f.takes}) [{f.default or 'must be given'}]" for f in fields(kind)]
    lines.append("  figures")
    lines += [f"    {line.name}: {line.default}, {line.takes}" for line in figures(kind)]
    return "\n".join(filter(str.strip, lines)) + "\n"


def words_told() -> str:
    """What arithmetic may call, what it may ask of stock and drawer, how a kind may round, and the rules."""
    known = [f for f in sorted(ALL, key=lambda f: f.name) if f.name in FORMULAS or f.name in FUNCTIONS]
    lines = ["functions of arithmetic", *(f"  {call}: {said}" for call, said in CALLS.items()), "", "formulas"]
    for formula in known:
        lines += [f"  {formula.call}: {formula.about}", f"    {' '.join(formula.says.split())}"]
    lines += ["", "what stock says of an item (also .low, .usual and .high of it)"]
    for item, numbers in NUMBERS.items():
        if numbers:
            lines.append(
                f"  {item.lower()}: "
                + ", ".join(n.replace("_", " ") + (f" ({u})" if u else "") for n, (u, _) in numbers.items())
            )
    lines += ["", "tools of the drawer, as nearest(wanted, drawer.former)", "  " + ", ".join(TOOL_KINDS)]
    lines += ["", "how a figure is rounded", *(f"  {word}: {said}" for word, said in ROUNDINGS.items())]
    lines += [
        "",
        "roles: what a field or figure does in its part",
        *(f"  {word}: {said}" for word, said in ROLES.items()),
    ]
    lines += ["", "what a step does", *(f"  {word}: {said}" for word, said in DOES.items())]
    lines += ["", "what an item of stock acts as", *(f"  {word}: {said}" for word, said in ACTS.items())]
    lines += ["", "metals that an item of stock may be of", f"  {named()}"]
    lines += ["", "rules of the bench", *(f"  {name}: {_ruled(rule)}" for name, rule in RULES.items())]
    return "\n".join(lines) + "\n"


def _ruled(rule: Rule) -> str:
    """A rule in a line: how it is told, who may waive it, and why it is one."""
    return f"({rule.severity}{'' if rule.waivable else ', never waived'}) {rule.reason}"
