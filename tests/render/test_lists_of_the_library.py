"""The lists of a library by technique, material and tool."""

from __future__ import annotations

import re

from sheetgen.model.page import Entry
from sheetgen.model.worked import Publisher
from sheetgen.render.library import Had, library
from sheetgen.render.theme import Theme


def test_materials_alike_stand_in_the_order_of_their_sizes() -> None:
    sizes = ["Bead 10 mm", "Bead 6 mm", "Bead 0.6 mm", "bead 12 mm", "Bead 0.38 mm", "Awl", "Bead"]
    one = Entry("strand", "Strand", "", "first piece", "1 h", "1", "2026-01-01", materials=sizes)
    [page] = [
        one.content.decode()
        for one in library(Publisher("Test Bench"), [one], Theme("plain", []), Had({}, {}))
        if one.path == "library/index.html"
    ]
    told = re.findall(r'<a href="material-[^"]*">([^<]*?) <span', page)
    assert [name.replace("\N{NO-BREAK SPACE}", " ") for name in told] == [
        "Awl",
        "Bead",
        "Bead 0.38 mm",
        "Bead 0.6 mm",
        "Bead 6 mm",
        "Bead 10 mm",
        "bead 12 mm",
    ]
