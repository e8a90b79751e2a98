"""One arithmetic for every number that a person writes: measures, ranges, names, functions.

Read with `read`, worked with `Expression.work`. Nothing of Python runs underneath, and both length and depth
are bounded, so a hostile file gets a message and not a hang.
"""

from __future__ import annotations

import functools
import re
from dataclasses import dataclass
from typing import TYPE_CHECKING, Protocol

import lark

from sheetgen.base.dimension import COUNT, UNITS, Dimension, Unit
from sheetgen.base.spelling import suggest
from sheetgen.base.spread import Spread, between, ceil, floor, spread

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

LONGEST = 400
DEEPEST = 25

_GRAMMAR = r"""
?start: sum
?sum: product
    | sum "+" product      -> add
    | sum _MINUS product   -> subtract
?product: unary
    | product _TIMES unary -> multiply
    | product _OVER unary  -> divide
?unary: atom
    | _MINUS unary         -> negate
?atom: number
    | SCALE                -> scale
    | NAME                 -> name
    | NAME "(" sum (_COMMA sum)* ")" -> call
    | "(" sum ")"
number: (RANGE | MIXED | NUMBER) UNIT?

_MINUS: "-" | "−"
_TIMES: "*" | "×" | "·"
_OVER: "/" | "÷"
_COMMA: ","
SCALE.9: /(US|UK|ISO|JP|PP|SS)[ ]*[0-9A-Z]+(\.[0-9]+|[ ]?1\/2|½)?(?![\w.])/
RANGE.8: /[0-9.,]+( *– *|-| to | *± *)[0-9.,]+(\/[0-9]+)?/
MIXED.7: /[0-9]+ +[0-9]+\/[0-9]+|[0-9]+\/[0-9]+|[0-9]* ?[½¼¾⅓⅔⅛⅜⅝⅞]/
NUMBER.6: /[0-9.,]*[0-9][0-9.]*/
UNIT.5: /[°ºµμ]?[A-Za-z]+[²³23]?(\/(h|cm³|cm3|mL|ml))?|%|"|″/
NAME: /[^\W\d]\w*(\.[^\W\d]\w*)*/
%ignore /[ \t\r\n\u00a0\u202f]+/
"""
_VULGAR = {"½": 1 / 2, "¼": 1 / 4, "¾": 3 / 4, "⅓": 1 / 3, "⅔": 2 / 3, "⅛": 1 / 8, "⅜": 3 / 8, "⅝": 5 / 8, "⅞": 7 / 8}
SCALES = ("US", "UK", "ISO", "JP", "PP", "SS")
FUNCTIONS = ("min", "max", "round", "up", "down", "usual")


class Wrong(ValueError):
    """A fault in an expression: what, at which character, and what would help."""

    def __init__(self, message: str, at: int = 0, width: int = 1, help: str = "") -> None:  # noqa: A002
        super().__init__(message)
        self.message, self.at, self.width, self.help = message, at, width, help


@dataclass(frozen=True, slots=True)
class Quantity:
    """A worked number, in millimetres, grams, minutes, °C or money, with what it measures."""

    value: Spread
    dimension: Dimension = COUNT


class Names(Protocol):
    """What an expression may ask of its surroundings."""

    def name(self, name: str) -> Quantity:
        """The value of a name; raises Wrong for one that is not known."""

    def scale(self, scale: str, text: str) -> Quantity:
        """A trade size as a length: scale `US`, text `7`; raises Wrong for one that is not known."""

    @property
    def units(self) -> Mapping[str, Callable[[Spread], Quantity]]:
        """Units beyond the plain ones: gauges, cards, the studio's currency."""


@functools.cache
def _parser() -> lark.Lark:
    return lark.Lark(_GRAMMAR, parser="lalr", lexer="contextual", propagate_positions=True, maybe_placeholders=False)


@dataclass(frozen=True, slots=True)
class Expression:
    """An expression that has been read and not yet worked."""

    text: str
    tree: lark.Tree[lark.Token]

    def work(self, names: Names) -> Quantity:
        """The quantity it comes to. Raises Wrong with the character to blame."""
        return _work(self.tree, names)

    def names(self) -> list[tuple[str, int]]:
        """Every name asked for and where it stands."""
        trees = self.tree.find_pred(lambda t: t.data == "name")
        tokens = [token for tree in trees for token in tree.children if isinstance(token, lark.Token)]
        return sorted(((str(token), token.start_pos or 0) for token in tokens), key=lambda pair: pair[1])


def read(text: str) -> Expression:
    """Read an expression. Raises Wrong with the character to blame."""
    if len(text) > LONGEST:
        raise Wrong(f"an expression of {len(text)} characters is too long", 0, 1, f"at most {LONGEST}; name the parts")
    deep = 0
    for at, c in enumerate(text):
        deep += (c == "(") - (c == ")")
        if deep > DEEPEST:
            raise Wrong("brackets inside brackets too deep", at, 1, f"at most {DEEPEST} deep")
    if re.search(r"[-−]{3}|([-−]\s*){9}", text):
        raise Wrong("a row of minus signs", 0, len(text), "one is enough")
    if not text.strip():
        raise Wrong("a number is missing", 0, 1, "write a measure such as 38 mm")
    try:
        tree = _parser().parse(text)
    except lark.exceptions.UnexpectedInput as fault:
        raise _said(text, fault) from None
    return Expression(text, tree)


def _said(text: str, fault: lark.exceptions.UnexpectedInput) -> Wrong:
    """What was found, where, and the likely slip."""
    if isinstance(fault, lark.exceptions.UnexpectedEOF) or "$END" in str(getattr(fault, "token", "")):
        return Wrong("the expression ends too soon", max(0, len(text) - 1), 1, "something is missing after this")
    at = fault.pos_in_stream if fault.pos_in_stream is not None else len(text) - 1
    found = str(getattr(fault, "token", "") or text[at : at + 1])
    if isinstance(fault, lark.exceptions.UnexpectedToken) and fault.token.type == "$END":
        return Wrong("the expression ends too soon", max(0, len(text) - 1), 1, "something is missing after this")
    if text[max(0, at - 1) : at + 1] == "**" or text[at : at + 2] == "**":
        return Wrong("'**' is not known here", at, 1, "there are no powers; write a product")
    helped = "arithmetic is + - * / ( ), min, max, round, up, down, names and measures such as 38 mm"
    if re.search(r"[a-z_] +$", text[:at]) and found[:1].isalpha():
        helped = "a name of several words is written with underscores here, such as wet_length"
    if text[at : at + 1] in "'\"" or found in {"'", '"'}:
        helped = 'an inch is written in, 1 1/2 in or 1½"'
    return Wrong(f"'{found}' cannot stand here", at, len(found), helped)


def _decimal(text: str, token: lark.Token) -> float:
    """A plain decimal with point or comma; what two people would read two ways is refused."""
    at = token.start_pos or 0

    def wrong(message: str, helped: str) -> Wrong:
        return Wrong(message, at, len(token), helped)

    if re.fullmatch(r"[1-9]\d{0,2},\d{3}", text):
        plain = text.replace(",", "")
        raise wrong(f"'{text}' can be read two ways", f"write {plain}, or {text.replace(',', '.')}")
    if re.match(r"0\d", text):
        raise wrong(f"'{text}' begins with a zero", f"write {text.lstrip('0') or '0'}")
    if not re.fullmatch(r"\d+([.,]\d+)?|\.\d+", text):
        raise wrong(f"'{text}' is not a number", "write 2.5 or 2,5; put a space after a comma that parts two numbers")
    return float(text.replace(",", "."))


def _number(token: lark.Token) -> Spread:
    """The value of a number, a mixed number or a range."""
    text = str(token)
    if token.type == "NUMBER":
        return spread(_decimal(text, token))
    if token.type == "MIXED":
        return spread(_mixed(text, token))
    low_text, sign, high_text = re.split(r"( *– *|-| to | *± *)", text, maxsplit=1)
    if "/" in high_text:
        raise Wrong(f"'{text}' can be read three ways", token.start_pos or 0, len(text), "write 1 1/2, or 1 - 1/2")
    first, second = _decimal(low_text, token), _decimal(high_text, token)
    if "±" in sign:
        return Spread(first, first - second, first + second)
    if first > second:
        helped = f"write {high_text}-{low_text} for a range, or {low_text} - {high_text} to subtract"
        raise Wrong(f"the range '{text}' is upside down", token.start_pos or 0, len(text), helped)
    return between(first, second)


def _mixed(text: str, token: lark.Token) -> float:
    """A whole number and a fraction: 1 1/2, 3/4, 1½."""
    if text[-1] in _VULGAR:
        whole = text[:-1].strip()
        return (_decimal(whole, token) if whole else 0) + _VULGAR[text[-1]]
    *whole_part, fraction = text.split()
    top, bottom = fraction.split("/")
    if not float(bottom):
        raise Wrong("a fraction over zero", token.start_pos or 0, len(text), "write the part over 2, 4, 8 …")
    return (_decimal(whole_part[0], token) if whole_part else 0) + float(top) / float(bottom)


def _measure(children: list[lark.Token], names: Names) -> Quantity:
    value = _number(children[0])
    if len(children) == 1:
        return Quantity(value)
    token = children[1]
    text = str(token)
    if unit := UNITS.get(text):
        return _in_unit(value, unit)
    special = names.units.get(text) or names.units.get(text.lower())
    if special is None:
        known = [*UNITS, *names.units]
        raise Wrong(f"the unit '{text}' is not known", token.start_pos or 0, len(text), suggest(text, known, 12))
    try:
        return special(value)
    except ValueError as fault:
        raise Wrong(str(fault), token.start_pos or 0, len(text), getattr(fault, "help", "")) from None


def _in_unit(value: Spread, unit: Unit) -> Quantity:
    return Quantity((value + unit.zero) * unit.factor, unit.dimension)


def _span(tree: lark.Tree[lark.Token]) -> tuple[int, int]:
    at = getattr(tree.meta, "start_pos", 0)
    return at, getattr(tree.meta, "end_pos", at + 1) - at


def _work(tree: lark.Tree[lark.Token], names: Names) -> Quantity:
    """Work a tree from the leaves up."""
    rule = str(tree.data)
    at, width = _span(tree)
    head = tree.children[0]
    try:
        if rule == "number":
            return _measure([c for c in tree.children if isinstance(c, lark.Token)], names)
        if isinstance(head, lark.Token):
            if rule == "scale":
                scale = next(s for s in SCALES if head.startswith(s))
                return names.scale(scale, head[len(scale) :].strip())
            if rule == "name":
                return names.name(str(head))
            worked = [_work(c, names) for c in tree.children[1:] if isinstance(c, lark.Tree)]
            return _call(str(head), worked)
        worked = [_work(c, names) for c in tree.children if isinstance(c, lark.Tree)]
        return _operate(rule, worked)
    except Wrong as wrong:
        if wrong.at < 0:  # raised without a place: the whole of this tree is to blame
            raise Wrong(wrong.message, at, width, wrong.help) from None
        raise
    except ZeroDivisionError:
        raise Wrong("a division by zero", at, width, "the divisor may not reach zero") from None
    except (OverflowError, ValueError) as fault:
        raise Wrong(str(fault), at, width, getattr(fault, "help", "")) from None


def _operate(rule: str, sides: list[Quantity]) -> Quantity:
    a = sides[0]
    if rule == "negate":
        return Quantity(-a.value, a.dimension)
    b = sides[1]
    if rule == "multiply":
        return Quantity(a.value * b.value, a.dimension.times(b.dimension))
    if rule == "divide":
        return Quantity(a.value / b.value, a.dimension.times(b.dimension, -1))
    _same("added to" if rule == "add" else "taken from", a, b)
    return Quantity(a.value + b.value if rule == "add" else a.value - b.value, a.dimension)


def _same(what: str, a: Quantity, b: Quantity) -> None:
    if a.dimension != b.dimension:
        raise Wrong(f"{b.dimension} cannot be {what} {a.dimension}", -1, 1, "give both sides the same kind of unit")


def _call(name: str, args: list[Quantity]) -> Quantity:
    """min, max; round, up and down to a whole number or to a step; usual, a range at its usual value."""
    if name not in FUNCTIONS:
        raise Wrong(f"the function '{name}' is not known", -1, 1, suggest(name, FUNCTIONS))
    for other in args[1:]:
        _same("compared with", args[0], other)
    values = [a.value for a in args]
    if name in {"min", "max"}:
        if len(args) < 2:  # noqa: PLR2004 - a choice wants two
            raise Wrong(f"{name} wants two numbers or more", -1, 1, "put a comma and a space between them")
        pick = min if name == "min" else max
        return Quantity(
            Spread(pick(v.usual for v in values), pick(v.low for v in values), pick(v.high for v in values)),
            args[0].dimension,
        )
    if name == "usual" and len(args) == 1:
        return Quantity(Spread(values[0].usual, values[0].usual, values[0].usual), args[0].dimension)
    if len(args) > 2 or (len(args) == 1 and args[0].dimension != COUNT):  # noqa: PLR2004 - the number and its step
        raise Wrong(f"{name} wants a number and a step", -1, 1, f"write {name}(body.length, 0.5 mm)")
    step = values[1].usual if len(values) > 1 else 1.0
    if step <= 0:
        raise Wrong("a step must be more than nothing", -1, 1, "write a step such as 0.5 mm")
    turn = {"round": lambda x: floor(x + 0.5), "up": ceil, "down": floor}[name]
    v = values[0]
    return Quantity(
        Spread(turn(v.usual / step) * step, turn(v.low / step) * step, turn(v.high / step) * step), args[0].dimension
    )
