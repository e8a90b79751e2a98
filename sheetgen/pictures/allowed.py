"""What a drawing may be made of: its elements, what each may have, and who reads the value."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.trouble import CannotBe
from sheetgen.pictures import outline, values

if TYPE_CHECKING:
    from collections.abc import Callable

    Reader = Callable[[str], object]

SHAPES = frozenset({"path", "rect", "circle", "ellipse", "line", "polyline", "polygon"})
GRADIENTS = frozenset({"linearGradient", "radialGradient"})
UNSEEN = frozenset({"defs", "symbol", "clipPath", "mask", "marker", "pattern"}) | GRADIENTS  # where they are written
TEXTS = frozenset({"text", "tspan"})
ALONE = SHAPES | {"use", "image", "stop"}  # nothing is drawn in them
COPIED = SHAPES | {"g", "symbol", "use", "text", "image"}
POINTS_AT = {
    "fill": GRADIENTS | {"pattern"},
    "stroke": GRADIENTS | {"pattern"},
    "clip-path": frozenset({"clipPath"}),
    "mask": frozenset({"mask"}),
    **dict.fromkeys(("marker", "marker-start", "marker-mid", "marker-end"), frozenset({"marker"})),
}
# Told by what they would do, not by their names alone.
REFUSED = {
    "script": "a script",
    "foreignObject": "a web page",
    "svg": "a drawing in the drawing",
    "a": "a link",
    **dict.fromkeys(("animate", "animateTransform", "animateMotion", "animateColor", "set"), "what moves"),
}
# Nothing of these is seen on paper.
LEFT_OUT = frozenset(
    {"metadata", "title", "desc", "filter", "font", "font-face", "cursor", "view", "color-profile", "style"}
)


def _word(*known: str) -> Reader:
    def read(text: str) -> None:
        if text.strip() not in known:
            raise CannotBe("")

    return read


def _any_word(text: str) -> None:
    if not text.strip().replace("-", "").isalpha() or len(text) > values.LONGEST:
        raise CannotBe("")


def _share(text: str) -> None:
    values.number(text.strip().removesuffix("%"))


def _above_nothing(text: str) -> None:
    if values.length(text).number < 0:
        raise CannotBe("")


def _some(text: str) -> None:
    if values.length(text).number <= 0:
        raise CannotBe("")


def _places(text: str) -> None:
    for one in values.parts(text):
        values.length(one)


def _turns(text: str) -> None:
    for one in values.parts(text):
        values.number(one)


def _dashes(text: str) -> None:
    if text.strip() != "none":
        for one in values.parts(text, most=50):
            _above_nothing(one)


def _view(text: str) -> None:
    *_, width, height = values.numbers(text, (4,))
    if width <= 0 or height <= 0:
        raise CannotBe("")


def _aspect(text: str) -> None:
    _any_word(text.replace(" ", ""))


def _faces(text: str) -> None:
    if len(text) > values.LONGEST or not all(c.isalnum() or c in " ,'\"-_." for c in text):
        raise CannotBe("")


def _weight(text: str) -> None:
    if not text.strip().isdecimal() or len(text) > len("1000"):
        _any_word(text)


def _turned(text: str) -> None:
    if text.strip() not in {"auto", "auto-start-reverse"}:
        values.number(text)


def _flattens_nothing(text: str) -> None:
    a, b, c, d, *_ = values.moves(text)
    if abs(a * d - b * c) < 1e-12:  # noqa: PLR2004 - the printer divides by it
        raise CannotBe("")


UNITS = _word("userSpaceOnUse", "objectBoundingBox")
# By attribute or by style, of any element.
PROPERTIES: dict[str, Reader] = {
    **dict.fromkeys(("fill", "stroke"), values.paint),
    "color": values.plain_colour,
    "stop-color": values.colour,
    **dict.fromkeys(("fill-opacity", "stroke-opacity", "stop-opacity", "opacity"), _share),
    **dict.fromkeys(("fill-rule", "clip-rule", "stroke-linecap", "stroke-linejoin"), _any_word),
    **dict.fromkeys(("display", "visibility", "overflow"), _any_word),
    "font-style": _word("normal", "italic", "oblique"),
    "text-anchor": _word("start", "middle", "end"),
    "direction": _word("ltr", "rtl"),
    **dict.fromkeys(("clip-path", "mask", "marker", "marker-start", "marker-mid", "marker-end"), values.reference),
    "stroke-width": _above_nothing,
    "stroke-miterlimit": values.number,
    "stroke-dasharray": _dashes,
    "stroke-dashoffset": values.length,
    "font-family": _faces,
    "font-size": _some,
    "font-weight": _weight,
    "letter-spacing": lambda text: text.strip() == "normal" or values.length(text),
    "transform": values.moves,
}
_BOX = dict.fromkeys(("x", "y", "width", "height"), values.length)
_SEEN = {"viewBox": _view, "preserveAspectRatio": _aspect}
_SPREAD = {
    "gradientUnits": UNITS,
    "gradientTransform": _flattens_nothing,
    "spreadMethod": _word("pad", "reflect", "repeat"),
}
_LETTERS: dict[str, Reader] = {
    **dict.fromkeys(("x", "y", "dx", "dy"), _places), "rotate": _turns,
}  # fmt: skip
ELEMENTS: dict[str, dict[str, Reader]] = {
    "g": {},
    "defs": {},
    "symbol": {**_SEEN, **_BOX},
    "use": dict(_BOX),
    "path": {"d": outline.of_path},
    "rect": {**_BOX, "rx": values.length, "ry": values.length},
    "circle": dict.fromkeys(("cx", "cy", "r"), values.length),
    "ellipse": dict.fromkeys(("cx", "cy", "rx", "ry"), values.length),
    "line": dict.fromkeys(("x1", "y1", "x2", "y2"), values.length),
    "polyline": {"points": outline.of_points},
    "polygon": {"points": outline.of_points},
    "text": _LETTERS,
    "tspan": _LETTERS,
    "image": {**_BOX, "preserveAspectRatio": _aspect},
    "linearGradient": {**dict.fromkeys(("x1", "y1", "x2", "y2"), values.length), **_SPREAD},
    "radialGradient": {**dict.fromkeys(("cx", "cy", "r", "fx", "fy", "fr"), values.length), **_SPREAD},
    "stop": {"offset": _share},
    "pattern": {
        **_BOX, **_SEEN, "patternUnits": UNITS, "patternContentUnits": UNITS, "patternTransform": _flattens_nothing,
    },
    "clipPath": {"clipPathUnits": UNITS},
    "mask": {**_BOX, "maskUnits": UNITS, "maskContentUnits": UNITS},
    "marker": {
        **_SEEN,
        **dict.fromkeys(("refX", "refY"), values.length),
        **dict.fromkeys(("markerWidth", "markerHeight"), _some),
        "orient": _turned,
        "markerUnits": _word("strokeWidth", "userSpaceOnUse"),
    },
}  # fmt: skip
ROOT: dict[str, Reader] = {"width": values.length, "height": values.length, **_SEEN}
