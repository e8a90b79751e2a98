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


@pytest.mark.parametrize(
    ("name", "greys"), [("screen.css", {"#e8e8e8", "#2b2b2b"}), ("paper.css", {"#e8e8e8"})], ids=["screen", "paper"]
)
def test_there_is_black_white_and_one_grey_on_each(name: str, greys: set[str]) -> None:
    css = (PLAIN / name).read_text("utf-8").lower()
    assert {f"#{found}" for found in re.findall(COLOUR, css)} == {"#000", "#fff", *greys}
    assert not re.search(
        r"rgb|hsl|opacity|currentcolor|(?<![-\w])(?:color|background): *(?!inherit|none|url|var)[a-z]", css
    )


@pytest.mark.parametrize("scheme", ["paper", "light", "dark"])
def test_all_ink_stands_out_on_every_ground_by_the_wcag_formula(scheme: str) -> None:
    css = (PLAIN / ("paper.css" if scheme == "paper" else "screen.css")).read_text("utf-8")
    ink_of_page, ground_of_page = "#000", "#fff"
    if scheme != "paper":
        given = [dict(re.findall(r"(--\w+): (#\w+)", one)) for one in re.findall(r":root \{([^}]*--[^}]*)\}", css)]
        assert len(given) == 2
        colours = given[scheme == "dark"]
        assert len(set(colours)) == 3
        ink_of_page, ground_of_page = colours["--ink"], colours["--paper"]
        css = re.sub(r"var\((--\w+)\)", lambda found: colours[found[1]], css)
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
    pairs += itertools.product(inks | {ink_of_page}, grounds | {ground_of_page})
    assert len({ground for _, ground in pairs}) >= 3 if scheme != "paper" else ("#000", "#e8e8e8") in pairs
    assert not [pair for pair in pairs if contrast(*pair) < ENOUGH]
