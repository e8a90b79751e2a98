"""What may be written in a drawing, value by value: numbers, lengths, colours, moves. What is none of it is refused."""

from __future__ import annotations

import functools
import math
import re
from typing import NamedTuple

from tinycss2.color5 import parse_color

from sheetgen.base.trouble import CannotBe

LARGEST = 1e6
MOST_LISTED = 400  # places of letters, dashes
MOST_MOVES = 20
LONGEST = 200
NUMBER = re.compile(r"[+-]?(?:\d{1,20}(?!\d)(?:\.\d{0,20}(?!\d))?|\.\d{1,20}(?!\d))(?:[eE][+-]?\d{1,2}(?!\d))?")
PX = {"": 1.0, "px": 1.0, "pt": 4 / 3, "pc": 16.0, "mm": 96 / 25.4, "cm": 96 / 2.54, "in": 96.0}
OF_TYPE = {"em", "ex", "rem"}
SEPARATOR = re.compile(r"[ \t\r\n]*,?[ \t\r\n]*")
COLOUR = re.compile(r"#[0-9a-fA-F]{3,8}|[a-zA-Z]{1,30}|(?:rgb|hsl)a?\([0-9.,%/ \t\r\n+degturna-]{1,80}\)")
REFERENCE = re.compile(r"""url\([ \t]*(?:"#([^"]+)"|'#([^']+)'|#([^"')]+))[ \t]*\)[ \t]*""")
URL = re.compile(r"[uU\\][^(]{0,30}\(")  # or what an escape may make of it
MOVE = re.compile(
    r"(matrix|translate[XY]?|scale[XY]?|rotate|skew[XY])[ \t\r\n]*\(([^()]{1,300})\)[ \t\r\n]*,?[ \t\r\n]*"
)
HOW_MANY = {"matrix": (6,), "translate": (1, 2), "scale": (1, 2), "rotate": (1, 3)}  # others take one
Matrix = tuple[float, float, float, float, float, float]


class Length(NamedTuple):
    """A number and its unit; `px` is it in the drawing's own unit, of a percentage and a letter's size not known."""

    number: float
    unit: str

    def px(self, of: float) -> float:
        """It in the drawing's unit, where 100 % are `of`."""
        return self.number * of / 100 if self.unit == "%" else self.number * PX.get(self.unit, 16.0)

    def of_letters(self, around: float) -> float:
        """It as a size of letters, in those of `around`."""
        scale = {"%": 0.01, "em": 1.0, "rem": 1.0, "ex": 0.5}.get(self.unit)  # rem as WeasyPrint has it
        return self.number * PX[self.unit] if scale is None else self.number * scale * around


def number(text: str) -> float:
    """A number alone. Raises CannotBe."""
    found = NUMBER.fullmatch(text.strip())
    if not found or abs(value := float(found[0])) > LARGEST:
        raise CannotBe("")
    return math.copysign(value, float(found[0]))


def length(text: str) -> Length:
    """A number with a unit, or without. Raises CannotBe."""
    text = text.strip()
    found = NUMBER.match(text)
    unit = text[found.end() :] if found else "?"
    if not found or unit not in PX.keys() | OF_TYPE | {"%"} or abs(float(found[0])) > LARGEST:
        raise CannotBe("")
    return Length(float(found[0]), unit)


def parts(text: str, most: int = MOST_LISTED) -> list[str]:
    """What is parted by spaces and commas. Raises CannotBe for too many."""
    found = text.replace(",", " ").split(None, most)
    if len(found) > most:
        raise CannotBe("")
    return found


def numbers(text: str, counts: tuple[int, ...]) -> list[float]:
    """As many numbers as one of `counts` says. Raises CannotBe."""
    found: list[float] = []
    at, text = 0, text.strip()
    while at < len(text):
        one = NUMBER.match(text, at)
        if not one or len(found) == max(counts):
            raise CannotBe("")
        found.append(number(one[0]))
        at = SEPARATOR.match(text, one.end()).end()  # type: ignore[union-attr]  # it matches nothing too
    if len(found) not in counts:
        raise CannotBe("")
    return found


@functools.lru_cache(1024)
def colour(text: str) -> str:
    """A colour by name or numbers. Raises CannotBe."""
    text = text.strip()
    if not COLOUR.fullmatch(text) or parse_color(text) is None:
        raise CannotBe("")
    return "currentColor" if text.lower() == "currentcolor" else text  # as WeasyPrint knows it


def plain_colour(text: str) -> str:
    """A colour that says itself what it is. Raises CannotBe."""
    if (found := colour(text)) == "currentColor":
        raise CannotBe("")
    return found


def paint(text: str) -> tuple[str, str]:
    """The colour, `none` or nothing, and the id of what it is painted with, if it names one. Raises CannotBe."""
    text = text.strip()
    named = REFERENCE.match(text)
    if not named and URL.search(text):
        reference(text)
    rest = text[named.end() :] if named else text
    if rest not in {"none", "context-fill", "context-stroke"} and not (named and not rest):
        rest = plain_colour(rest) if named else colour(rest)
    return rest, reference(text[: named.end()]) if named else ""


def reference(text: str) -> str:
    """The id that `url(#id)` names; nothing of `none`. Raises CannotBe for what lies elsewhere."""
    text = text.strip()
    found = REFERENCE.fullmatch(text)
    if text == "none":
        return ""
    if not found and URL.search(text):
        raise CannotBe("points at another file", "save it as a plain SVG, with nothing linked")
    if not found:
        raise CannotBe("")
    return found[1] or found[2] or found[3].strip()


@functools.lru_cache(1024)
def moves(text: str) -> Matrix:
    """What `transform` comes to. Raises CannotBe."""
    made: Matrix = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0)
    at, text = 0, text.strip()
    for _ in range(MOST_MOVES + 1):
        if at == len(text) or text == "none":
            return made
        found = MOVE.match(text, at)
        if not found:
            break
        made = _times(made, _move(found[1], found[2]))
        at = found.end()
    raise CannotBe("")


def _move(kind: str, said: str) -> Matrix:
    plain = re.sub(r"(?<=[\d.])(px|deg)\b", "", said)
    given = numbers(plain, HOW_MANY.get(kind, (1,)))
    first, last = given[0], given[-1]
    if kind == "matrix":
        return given[0], given[1], given[2], given[3], given[4], given[5]
    if kind.startswith("translate"):
        x = 0.0 if kind.endswith("Y") else first
        y = first if kind.endswith("Y") else last if len(given) > 1 else 0.0
        return 1.0, 0.0, 0.0, 1.0, x, y
    if kind.startswith("scale"):
        return 1.0 if kind.endswith("Y") else first, 0.0, 0.0, 1.0 if kind.endswith("X") else last, 0.0, 0.0
    turned = math.radians(first)
    if kind == "rotate":
        c, s = math.cos(turned), math.sin(turned)
        x, y = given[1:] if len(given) > 1 else (0.0, 0.0)
        return c, s, -s, c, x - c * x + s * y, y - s * x - c * y
    lean = math.tan(turned)
    return (1.0, 0.0, lean, 1.0, 0.0, 0.0) if kind == "skewX" else (1.0, lean, 0.0, 1.0, 0.0, 0.0)


def _times(a: Matrix, b: Matrix) -> Matrix:
    """First b, then a."""
    return (
        a[0] * b[0] + a[2] * b[1], a[1] * b[0] + a[3] * b[1],
        a[0] * b[2] + a[2] * b[3], a[1] * b[2] + a[3] * b[3],
        a[0] * b[4] + a[2] * b[5] + a[4], a[1] * b[4] + a[3] * b[5] + a[5],
    )  # fmt: skip
