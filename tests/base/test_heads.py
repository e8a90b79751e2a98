"""Which words of a text of arithmetic are names that something may be put in place of."""

from __future__ import annotations

import pytest

from sheetgen.base.heads import heads, is_name, stands_alone

# Each name that may be replaced stands in angle brackets; counted by hand.
TEXTS = [
    "<piece>.thickness in cards",
    "2 × <size> − up(<a> + <b>)",
    "<clay> is not <copper-16awg>",
    "<top hole>.wet middle + <leg>",
    "12 mm + <x> if <clay> is <a> and <size> > 3",
    "min(<a>, 2 h) × <my count>",
    "usual(<x>.low)",
    "<half-strip>",
    "US 7",
    "<wet_leg>-3 mm",
]


@pytest.mark.parametrize("marked", TEXTS)
def test_the_names_of_a_text_are_found_and_functions_units_and_words_are_not(marked: str) -> None:
    text = marked.replace("<", "").replace(">", "") if "> 3" not in marked else marked.replace("> 3", "§").translate(
        {ord("<"): None, ord(">"): None}
    ).replace("§", "> 3")  # fmt: skip
    again, at = "", 0
    for head in heads(text):
        again += f"{text[at : head.at]}<{text[head.at : head.end]}>"
        at = head.end
    assert again + text[at:] == marked


@pytest.mark.parametrize(
    ("text", "alone", "name"),
    [
        ("plate", True, True),
        ("top hole.wet middle", True, True),
        ("3 mm", True, False),
        ("2-3 min", True, False),
        ("width - 2 mm", False, False),
        ("width * 2", False, False),
        ("a or b", False, False),
        ("clay is silver", True, False),
        ("a > b", True, False),
        ("1 mm if clay is silver", False, False),
        ("", False, False),
    ],
)
def test_what_would_fall_apart_in_an_expression_wants_brackets(text: str, alone: bool, name: bool) -> None:  # noqa: FBT001
    assert stands_alone(text) == alone
    assert is_name(text) == name
