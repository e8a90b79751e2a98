"""How words are set, where that decides whether they are read: space between letters, lines along them, small forms."""

from __future__ import annotations

from typing import Any

from sheetgen.render.seen import APART, CLOSED_UP, LINE

SMALL_FORMS = frozenset({"sups", "subs", "sinf", "numr", "dnom", "frac", "afrc", "ordn"})
SMALL_NUMBERS = frozenset({"diagonal-fractions", "stacked-fractions", "ordinal"})


def run_together(style: Any) -> bool:  # noqa: ANN401 - WeasyPrint is not typed
    """Whether letters run together, or words: what is taken off after a letter is taken off after a space as well."""
    letters = _spacing(style)
    return bool(min(letters, 2 * letters + style["word_spacing"]) < CLOSED_UP * style["font_size"])


def stand_apart(style: Any) -> bool:  # noqa: ANN401
    """Whether a word falls to letters."""
    return bool(_spacing(style) > APART * style["font_size"])


def made_small(style: Any) -> bool:  # noqa: ANN401
    """Whether the face is asked for its small forms."""
    features = style["font_feature_settings"]
    numbers = style["font_variant_numeric"]
    return (
        style["font_variant_position"] in {"sub", "super"}
        or (numbers != "normal" and not SMALL_NUMBERS.isdisjoint(numbers))
        or (features != "normal" and any(name in SMALL_FORMS and on for name, on in dict(features).items()))
    )


def lined_over(style: Any) -> bool:  # noqa: ANN401
    """Whether a line along the words is so thick, or lies so high, that it covers them."""
    lines = style["text_decoration_line"]
    if lines == "none" or not {"underline", "overline"} & set(lines):
        return False
    size, thick, offset = style["font_size"], style["text_decoration_thickness"], style["text_underline_offset"]
    lifted = "underline" in lines and offset != "auto" and _length(offset, size) < 0
    return lifted or (thick not in {"auto", "from-font"} and _length(thick, size) > LINE * size)


def _spacing(style: Any) -> float:  # noqa: ANN401
    spacing = style["letter_spacing"]
    return 0 if spacing == "normal" else float(spacing)


def _length(value: Any, size: float) -> float:  # noqa: ANN401
    """A length in px, or of a share of the size."""
    if isinstance(value, int | float):
        return float(value)
    return float(value.value) * (size / 100 if value.unit == "%" else 1)
