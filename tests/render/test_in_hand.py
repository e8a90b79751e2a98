"""What a step wants in hand stands at it on a screen: what it names, and nothing where it names nothing."""

from __future__ import annotations

import re
from typing import Any


def test_a_step_has_in_hand_what_it_is_written_to_use_in_that_order(library: Any) -> None:
    rows = {row.title: row.hand for row in library.handout("drops").rows}
    assert rows["Roll"] == "test silver, roller, formers"
    assert rows["Fire"] == "firing box, carbon"
    assert rows["Set"] == "glass stone, test epoxy, ear wire"
    assert rows["Dry"] == ""


def test_two_wires_called_alike_are_told_apart_by_their_gauge(demo: Any) -> None:
    rows = {row.title: row.hand for row in demo.handout("eddy-earrings").rows}
    assert rows["Cut the ear wires and sleeves"].startswith("sterling-silver wire 20 AWG, sterling-silver wire 24 AWG,")


def test_a_step_that_names_nothing_says_nothing_of_it_on_its_page(good: Any) -> None:
    page = (good.build / "drops/index.html").read_text("utf-8")
    sections = re.findall(r'<section .*?data-name="(\w+).*?</section>', page, re.DOTALL)
    held = [said for said in re.findall(r"<section .*?</section>", page, re.DOTALL) if "In hand:" in said]
    assert (len(sections), len(held)) == (6, 4)  # but for the waits
