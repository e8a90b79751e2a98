"""How rows of the bench break on paper: a verb of two lines on the card, a time in the narrow margin."""

from __future__ import annotations

import io
import itertools
import re
from typing import Any

import pdfplumber
import pytest
import weasyprint

from sheetgen.render.ordered import HOW
from sheetgen.render.theme import Theme

TYPE, LINE = 17, 17.5  # pt: letters, and lines of them that do not touch
NUMERAL, MM = 24, 72 / 25.4  # pt


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


def test_a_card_of_few_rows_stands_open(library: Any) -> None:
    def apart(density: str) -> float:
        page = Theme("plain", []).page("card.html.j2", sheet=library.card("drops"), density=density)
        with pdfplumber.open(io.BytesIO(weasyprint.HTML(string=page).write_pdf())) as pdf:
            words = pdf.pages[0].extract_words(extra_attrs=["size"])
        numerals = [word["top"] for word in words if round(word["size"]) == NUMERAL and word["text"].isdecimal()]
        return float(numerals[1] - numerals[0])

    assert apart("open") - apart("") >= 2.5 * MM
    assert HOW["bench card"].ways[0] == "open"


def test_the_name_of_a_figure_has_the_room_that_a_range_would_take(demo: Any) -> None:
    def names(title: str) -> str:
        return str(re.findall(r'<col style="width:(.*?)">', page.partition(title)[2])[0])

    page = Theme("plain", []).page("handout.html.j2", sheet=demo.handout("sedge-bookmark"), density="")
    assert names("Slit the leather") == "31mm"
    assert names("Fire the tags") == "19mm"  # held for 30 to 45 min


def test_what_is_done_meanwhile_is_a_sentence(demo: Any, libraries: Any) -> None:
    said = [
        libraries.said(row.meanwhile)
        for name in ("buoy-drops", "lantern-pull", "sedge-bookmark", "tideline-band")
        for row in demo.handout(name).rows
        if row.meanwhile
    ]
    assert any(re.fullmatch(r"steps? \d+.*", one) for one in said)
    assert [one for one in said if not one.endswith(".")] == []
