"""The colours of the style sheets and of drawings: whatever is read stands out on whatever it can lie on."""

from __future__ import annotations

import itertools
import re
from pathlib import Path

import pytest

from sheetgen.formulas.contrast import contrast

PLAIN = Path(__file__).parents[2] / "themes" / "plain"
ENOUGH = 7  # WCAG 2.2, 1.4.6, contrast (enhanced)
COLOUR = r"(?:#|%23)([0-9a-f]{6}|[0-9a-f]{3})\b"
RULE = re.compile(r"[^{}]*\{([^{}]*)\}")


@pytest.mark.parametrize("name", ["screen.css", "paper.css"])
def test_there_is_black_white_and_one_grey(name: str) -> None:
    css = (PLAIN / name).read_text("utf-8").lower()
    assert {f"#{found}" for found in re.findall(COLOUR, css)} == {"#000", "#fff", "#e8e8e8"}
    assert not re.search(
        r"rgb|hsl|opacity|currentcolor|(?<![-\w])(?:color|background): *(?!inherit|none|url)[a-z]", css
    )


@pytest.mark.parametrize("name", ["screen.css", "paper.css"])
def test_all_ink_stands_out_on_every_ground_by_the_wcag_formula(name: str) -> None:
    css = (PLAIN / name).read_text("utf-8")
    inks: set[str] = set()
    grounds: set[str] = set()
    pairs: list[tuple[str, str]] = []
    for rule in RULE.findall(css):
        ink = re.findall(r"(?:^|[;\s])color: (#\w+)", rule)
        ground = re.findall(r"background: (#\w+)", rule)
        if ink and ground:
            pairs += itertools.product(ink, ground)
        else:
            inks |= set(ink)
            grounds |= set(ground)
    pairs += itertools.product(inks | {"#000"}, grounds | {"#fff"})
    assert ("#000", "#e8e8e8") in pairs
    assert not [pair for pair in pairs if contrast(*pair) < ENOUGH]
