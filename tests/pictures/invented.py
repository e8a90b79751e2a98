"""Drawings that nobody drew: of elements and values that are allowed, put together by chance."""

from __future__ import annotations

import random
import re
from typing import TYPE_CHECKING

from sheetgen.base.trouble import CannotBe
from sheetgen.pictures.allowed import ELEMENTS, GRADIENTS, PROPERTIES, TEXTS

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from sheetgen.pictures.allowed import Reader

IDS = ("a", "b", "c", "d")
NUMBERS = ("0", "-1", "1", "0.5", "1e-9", "1e6", "-1e6", "100%", "-50%", "0%", "5", "1mm", "2em", "0px", ".5", "1e-30")
REFERENCES = ("none", "inherit", *(f"url(#{name})" for name in IDS))
PAINTS = (*REFERENCES, "red", "url(#a) #abc", "context-stroke", "context-fill", "currentColor", "hsla(10 20% 30% / 5%)")
PATHS = (
    "", "M0 0", "M0 0Z", "M0 0L5 5", "M1 1 2 2 3 3z", "M0 0a5 5 30 105 5", "M0 0A5 5 0 0 0 5 5", "M0 0q1 1 2 2t3 3",
    "M0 0t3 3s1 1 2 2", "M0 0c1 1 2 2 3 3s1 1 2 2", "M0 0h0v0", "m1 1zm2 2zl3 3", "M0 0ZZ", "M0 0 M1 1", "M0,0T1,1",
)  # fmt: skip
MOVES = (
    "scale(0)",
    "scale(-1)",
    "matrix(1 0 0 1 5 5)",
    "matrix(0 0 0 0 0 0)",
    "rotate(45)",
    "skewX(90)",
    "translate(5)",
)
WORDS = {
    "d": PATHS,
    "points": ("", "0 0", "0 0 5 5", "0,0,5,5,10,0", "0 0 0 0", "5-5.5.5 1"),
    "viewBox": ("0 0 10 10", "-5 -5 1 1", "0 0 1e-9 1e6"),
    "preserveAspectRatio": ("none", "xMidYMid meet", "xMaxYMin slice", "meet", "x", "none slice"),
    "spreadMethod": ("pad", "repeat", "reflect"),
    "orient": ("auto", "auto-start-reverse", "45"),
    "display": ("inline", "block", "none"),
    "visibility": ("visible", "hidden"),
    "font-style": ("normal", "italic"),
    "font-family": ("serif", "", "''", ",", "a,b"),
    "font-weight": ("bold", "lighter", "0", "9999"),
    "stroke-dasharray": ("none", "0", "1 2", "0 0", "5%", "1,2,3"),
    **dict.fromkeys(("fill", "stroke"), PAINTS),
    **dict.fromkeys(("clip-path", "mask", "marker", "marker-start", "marker-mid", "marker-end"), REFERENCES),
    **dict.fromkeys(("color", "stop-color"), ("red", "transparent", "currentColor", "#12345678")),
    **dict.fromkeys(("x", "y", "dx", "dy", "rotate"), (*NUMBERS, "1 2", "1 2 3 -4", "")),
    **dict.fromkeys(("transform", "gradientTransform", "patternTransform"), MOVES),
    **dict.fromkeys(
        ("text-anchor", "direction", "overflow", "fill-rule"), ("middle", "end", "rtl", "visible", "evenodd")
    ),
}
UNITS = ("userSpaceOnUse", "objectBoundingBox", "strokeWidth")


def attributes(names: Iterable[str], readers: Mapping[str, Reader], chance: random.Random) -> str:
    """Those of the names for which chance finds a value that is allowed."""
    said = ""
    for name in names:
        value = chance.choice(WORDS.get(name, UNITS if name.endswith("Units") else NUMBERS))
        try:
            readers[name](value)
        except CannotBe:
            continue
        said += f' {name}="{value}"'
    return said


def element(chance: random.Random, deep: int = 0) -> str:
    """An element with whatever may stand in it."""
    tag = chance.choice([name for name in ELEMENTS if name != "image"])
    own, readers = ELEMENTS[tag], {**PROPERTIES, **ELEMENTS[tag]}
    names = {*chance.sample(list(own), chance.randint(0, min(len(own), 5))), *chance.sample(list(PROPERTIES), 3)}
    said = attributes(sorted(names), readers, chance)
    if chance.random() < 0.5:
        said += f' id="{chance.choice(IDS)}"'
    if tag in GRADIENTS | {"use", "pattern"} and chance.random() < 0.7:
        said += f' href="#{chance.choice(IDS)}"'
    inner = ""
    if tag in TEXTS:
        inner = chance.choice(("", "w", "word here", " a ", "\n", "é", "a<tspan x='1 2'>b</tspan> c"))
    elif tag in GRADIENTS:
        inner = "".join(f'<stop offset="{n / 2}"/>' for n in range(chance.randint(0, 3)))
    elif deep < 4:
        inner = "".join(element(chance, deep + 1) for _ in range(chance.randint(0, 3)))
    return f"<{tag}{said}>{inner}</{tag}>"


def drawing(seed: int) -> bytes:
    """A drawing of that seed, always the same."""
    chance = random.Random(seed)  # noqa: S311 - for a drawing
    inner = "".join(element(chance) for _ in range(chance.randint(1, 7)))
    return f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 60 30">{inner}</svg>'.encode()


def mutant(raw: bytes, seed: int) -> bytes:
    """A file in which a hand or a disk has changed something, always the same."""
    chance = random.Random(seed)  # noqa: S311 - for a mutant
    for _ in range(chance.choice((1, 1, 2, 4))):
        words = list(re.finditer(rb"[\w.#%-]+", raw)) or list(re.finditer(b"", raw))
        one, other = chance.choice(words), chance.choice(words)
        at = chance.randrange(len(raw) + 1)
        till = min(len(raw), at + chance.randrange(60))
        raw = chance.choice((
            raw[: one.start()] + other[0] + raw[one.end() :],
            raw[: one.start()] + chance.choice(NUMBERS).encode() + raw[one.end() :],
            raw[:at] + bytes([chance.randrange(256)]) + raw[at + 1 :],
            raw[:at] + raw[till:],
            raw[:till] + raw[at:till] + raw[till:],
        ))  # fmt: skip
    return raw
