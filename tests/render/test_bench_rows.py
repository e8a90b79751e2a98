"""How rows of the bench break on paper: a verb of two lines on the card, a time in the narrow margin."""

from __future__ import annotations

import io
import itertools
import re
from typing import Any

import pdfplumber
import pytest
import weasyprint

from sheetgen.render.theme import Theme

TYPE, LINE = 17, 17.5  # pt: letters, and lines of them that do not touch


@pytest.mark.parametrize("density", ["", "close", "closer", "close closer"])
def test_the_lines_of_a_long_verb_stand_clear_of_each_other_however_tight_the_card_is(
    density: str, library: Any
) -> None:
    verb = "Measure everything twice, write everything down, and only then cut"
    library.change(
        "link/project.yaml", "steps:\n", f"steps:\n  - {{title: Measure, short: '{verb}', show: [links.gap]}}\n"
    )
    page = Theme("plain", []).page("card.html.j2", sheet=library.card("link"), density=density)
    with pdfplumber.open(io.BytesIO(weasyprint.HTML(string=page).write_pdf())) as pdf:
        words = pdf.pages[0].extract_words(extra_attrs=["size"])
    first = next(i for i, word in enumerate(words) if word["text"] == "Measure")
    tops = sorted(
        {round(w["bottom"], 1) for w in words[first:] if round(w["size"]) == TYPE and w["text"] in verb.split()}
    )
    assert len(tops) > 1
    assert min(b - a for a, b in itertools.pairwise(tops)) >= LINE - 0.1


def test_a_time_in_the_margin_never_breaks_after_its_dash(demo: Any) -> None:
    # 10 – 15 min, and 1 h 55 – 2 h 55, which is wider than the margin: its dash begins the second line
    for name in ("slackwater-strand", "tideline-band"):
        page = Theme("plain", []).page("handout.html.j2", sheet=demo.handout(name), density="")
        times = re.findall(r'<div class="no">\d+<span class="small">(.*?)</span></div>', page)
        assert any("–" in time for time in times)
        for time in times:
            broken = re.split(r'<span class="n">.*?</span>', time)
            assert not any("–" in part for part in broken), time
            assert all(not whole.rstrip().endswith("–") for whole in re.findall(r'<span class="n">(.*?)</span>', time))
    slack = Theme("plain", []).page("handout.html.j2", sheet=demo.handout("slackwater-strand"), density="")
    assert re.search(r'<span class="n">\d\u00a0h\u00a0\d\d</span> <span class="n">–\u202f\d\u00a0h', slack)
