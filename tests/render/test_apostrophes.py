"""However an apostrophe was typed, on a sheet it is one and the same."""

from __future__ import annotations

import re
from typing import Any

import pdfplumber
import pytest

from sheetgen.base.spelling import apostrophes

STRAIGHT = re.compile(r"[^\W\d_]['´`](?=[^\W\d_]|\s[^\W\d_])")

# each where a maker may write one, and each in another field
TYPED = (
    ("title: Round pendant", "title: Diver's pendant"),
    ("summary: A disc", "summary: Anna's disc, the divers' favourite,"),
    ("makes: 1 pendant", "makes: 1 diver's pendant"),
    ("- title: Cut", "- title: Cut the diver's disc"),
    ("      Cut a disc of {{ plate.wet_disc }}.", "      Cut it; don't pull the clay's edge or the knives' points."),
    ("expect: It is round.", "expect: It's round.\n    caution: [hammering, blade]"),
)


def test_no_page_of_a_sheet_holds_a_straight_one(library: Any) -> None:
    for old, new in TYPED:
        library.change("pendant/project.yaml", old, new)
    library.change("stock/clays.yaml", "Test silver", "Potter's silver")
    library.change("stock/others.yaml", "name: Roller", "name: Potter's roller")
    outcome = library.publish("pendant")
    assert not outcome.troubles.errors, "\n".join(map(str, outcome.troubles))
    read = {}
    for path in (library.build / "pendant").rglob("*-a4.pdf"):
        with pdfplumber.open(path) as pdf:
            read[path.name] = " ".join(page.extract_text() for page in pdf.pages)
    assert set(read) == {"handout-a4.pdf", "bench-card-a4.pdf", "teacher-a4.pdf", "templates-a4.pdf"}
    for name, text in read.items():
        assert not STRAIGHT.findall(text), name
        assert "Diver’s pendant" in text
    assert "don’t pull the clay’s edge or the knives’ points" in read["handout-a4.pdf"].replace("\n", " ")
    assert "otter’s" in read["templates-a4.pdf"]  # in a drawing
    page = (library.build / "pendant" / "index.html").read_text("utf-8")
    assert not re.findall(r"[^\W\d_](?:'|&#39;)[^\W\d_]", re.sub("<style.*?</style>", "", page, flags=re.DOTALL))


@pytest.mark.parametrize(
    ("typed", "printed"),
    [
        ("the ring's wire", "the ring’s wire"),
        ("Makers' directions", "Makers’ directions"),
        ("say 'links' and 'Anna's rings' so", "say 'links' and 'Anna’s rings' so"),  # quotes are quotes
        ("5' 10", "5' 10"),
        ("l’anneau d'or", "l’anneau d’or"),
    ],
)
def test_it_is_told_from_a_quote_and_from_a_foot(typed: str, printed: str) -> None:
    assert apostrophes(typed) == printed
