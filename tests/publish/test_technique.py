"""A design without parts: the sheet of a technique, of steps and stock alone."""

from __future__ import annotations

import html
import re
from typing import Any

import pytest

SHEET = """\
title: Gluing a stone in
revision: 1
date: 2026-01-10
summary: How a stone is glued into its seat.
makes: 1 trial
level: first piece
choices:
  people: 12
materials:
  - {item: epoxy, amount: people × 0.1 mL, for: all seats}
steps:
  - title: Mix
    uses: [epoxy, knife]
    minutes: 5 min
    text: Mix {{ people × 0.1 mL }}.
  - title: Cure
    wait: curing
"""


@pytest.mark.usefixtures("quick")
def test_a_design_without_parts_is_published_with_its_steps_and_its_stock(library: Any) -> None:
    library.write("gluing/project.yaml", SHEET)
    told = library.publish("gluing")
    assert not list(told.troubles)
    assert told.published == ["gluing"]
    page = (library.build / "gluing" / "index.html").read_text("utf-8")
    words = " ".join(html.unescape(re.sub(r"<[^>]*>", " ", page)).split())
    # twelve times a tenth of a millilitre
    assert "Mix 1.2 mL ." in words
    assert "Test epoxy" in words
    assert "Craft knife" in words
    assert {path.name for path in (library.build / "gluing").glob("handout-*.pdf")} == {
        "handout-a4.pdf", "handout-letter.pdf"
    }  # fmt: skip
