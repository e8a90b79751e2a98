"""How words are set, where that decides whether they are read: space between letters, lines along them, small forms."""

from __future__ import annotations

from typing import Any

from sheetgen.base.interval import GRAIN
from sheetgen.facts.paper import CONTRAST_LARGE, CONTRAST_TEXT, LARGE_BOLD, LARGE_TYPE
from sheetgen.render.seen import APART, CLOSED_UP, LINE

SMALL_FORMS = frozenset({"sups", "subs", "sinf", "numr", "dnom", "ordn"})
SAME_LETTERS = frozenset(
    {"kern", "liga", "clig", "calt", "ccmp", "locl", "mark", "mkmk", "lnum", "onum", "tnum", "pnum", "zero", "smcp",
     "c2sc", "case"}
)  # fmt: skip
FRACTIONS = frozenset({"diagonal-fractions", "stacked-fractions"})
BOLD = 700  # WCAG says bold and no number; CSS calls 700 bold


def run_together(style: Any) -> bool:  # noqa: ANN401 - WeasyPrint is not typed
    """Whether letters run together, or words: what is taken off after a letter is taken off after a space as well."""
    letters = _spacing(style)
    return bool(min(letters, 2 * letters + style["word_spacing"]) < CLOSED_UP * style["font_size"])


def stand_apart(style: Any) -> bool:  # noqa: ANN401
    """Whether a word falls to letters."""
    return bool(_spacing(style) > APART * style["font_size"])


def made_small(style: Any) -> bool:  # noqa: ANN401
    """Whether the face is asked for its small forms."""
    return (
        style["font_variant_position"] in {"sub", "super"}
        or "ordinal" in style["font_variant_numeric"]
        or not SMALL_FORMS.isdisjoint(_features(style))
    )


def formed(style: Any) -> bool:  # noqa: ANN401
    """Whether the face is asked for forms by which letters may read as others: 1/2 as one sign, an alternative 1."""
    return not FRACTIONS.isdisjoint(style["font_variant_numeric"]) or bool(
        set(_features(style)) - SMALL_FORMS - SAME_LETTERS
    )


def contrast_wanted(style: Any, size: float) -> float:  # noqa: ANN401
    """The least contrast of ink to its ground by WCAG 1.4.3; `size` in pt as printed. A large letter wants less."""
    large = LARGE_BOLD if style["font_weight"] >= BOLD else LARGE_TYPE
    return float(CONTRAST_LARGE if size >= large - GRAIN else CONTRAST_TEXT)


def lined_over(style: Any) -> bool:  # noqa: ANN401
    """Whether a line along the words is so thick, or lies so high, that it covers them."""
    lines = style["text_decoration_line"]
    if lines == "none" or not {"underline", "overline"} & set(lines):
        return False
    size, thick, offset = style["font_size"], style["text_decoration_thickness"], style["text_underline_offset"]
    lifted = "underline" in lines and offset != "auto" and _length(offset, size) < 0
    return lifted or (thick not in {"auto", "from-font"} and _length(thick, size) > LINE * size)


def _features(style: Any) -> list[str]:  # noqa: ANN401
    """The features of the face that are switched on by name."""
    features = style["font_feature_settings"]
    return [] if features == "normal" else [name for name, on in dict(features).items() if on]


def _spacing(style: Any) -> float:  # noqa: ANN401
    spacing = style["letter_spacing"]
    return 0 if spacing == "normal" else float(spacing)


def _length(value: Any, size: float) -> float:  # noqa: ANN401
    """A length in px, or of a share of the size."""
    if isinstance(value, int | float):
        return float(value)
    return float(value.value) * (size / 100 if value.unit == "%" else 1)
