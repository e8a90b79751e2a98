"""Numbers in prose, beside steps and in labels: arithmetic wherever a number may stand, in the unit that is wanted."""

from __future__ import annotations

import re
from typing import Any

import pytest

NBSP = "\u00a0"


def told(library: Any, braces: str) -> str:
    """What a number in a step's text is printed as."""
    library.change("pendant/project.yaml", "Cut a disc of {{ plate.wet_disc }}.", f"Cut {braces} here.")
    pieces = [p for p in library.main("pendant").steps[0].text if not isinstance(p, str)]
    return str(pieces[0].printed.told)


@pytest.mark.parametrize(
    ("braces", "says"),
    [
        ("{{ plate.thickness in cards }}", f"4{NBSP}cards"),  # the pendant is rolled to 4 cards
        ("{{ 1 card in cards }}", f"1{NBSP}card"),
        ("{{ plate.count + 1 }}", "2"),
        ("{{ 2 * width }}", f"40{NBSP}mm"),
        ("{{ width in in }}", f"0.79{NBSP}in"),
        ("{{ width in cm }}", f"2{NBSP}cm"),
        ("{{ plate.clay_mass ÷ (1000 mm³) in g }}", None),
        ("{{ 7 g/cm³ }}", f"7{NBSP}g/cm³"),
        ("{{ clay.density }}", f"7{NBSP}g/cm³"),
        ("{{ 12 EUR ÷ 25 g }}", f"0.48{NBSP}EUR/g"),
        ("{{ 3 EUR }}", f"3.00{NBSP}EUR"),
        ("{{ 2 * 1.5 ct }}", f"3{NBSP}ct"),
        ("{{ 5 mL × 1.2 g/mL }}", f"6{NBSP}g"),
        ("{{ width × width }}", f"400{NBSP}mm²"),
        ("{{ 500 EUR/ct × 0.2 g }}", f"500.00{NBSP}EUR"),  # 0.2 g are 1 ct
        ("{{ 30 EUR ÷ 3 g }}", f"10.00{NBSP}EUR/g"),
        ("{{ 7 g/cm³ × 10 mm³ }}", f"0.07{NBSP}g"),  # 10 mm³ are a hundredth of a cm³
        ("{{ 2 ct in g }}", f"0.4{NBSP}g"),  # a carat is 0.2 g
        ("{{ 0.4 g in ct }}", f"2{NBSP}ct"),
        ("{{ 30° }}", "30°"),  # its sign beside it
        ("{{ 20-30° }}", "20\u202f–\u202f30°"),
    ],
)
def test_a_number_is_printed_in_its_unit_or_in_the_one_that_is_asked_for(
    library: Any, braces: str, says: str | None
) -> None:
    if says is None:
        library.change("pendant/project.yaml", "Cut a disc of {{ plate.wet_disc }}.", f"Cut {braces} here.")
        troubles = [t.message for t in library.check("pendant").troubles.errors]
        assert any("cannot be told in g" in t for t in troubles), troubles
    else:
        assert told(library, braces) == says


@pytest.mark.parametrize(
    ("written", "read"),
    [
        ("Take no wire but {{ wire }}.", "Take no wire but copper wire, 16 AWG."),
        ("Cut it. {{ wire }} is soft.", "Cut it. Copper wire, 16 AWG is soft."),
        ("{{ wire }} is soft.", "Copper wire, 16 AWG is soft."),
        ("Cut the wire ({{ wire }}).", "Cut the wire (copper wire, 16 AWG)."),
        ("Take:\n\n      - {{ wire }}", "Take: Copper wire, 16 AWG"),
    ],
)
def test_stock_is_named_with_a_capital_only_where_a_sentence_begins(library: Any, written: str, read: str) -> None:
    library.change("pendant/project.yaml", "choices:\n", "choices:\n  wire: copper-16awg\n")
    library.change("pendant/project.yaml", "Cut a disc of {{ plate.wet_disc }}.", written)
    rows = library.handout("pendant").rows
    assert read in [" ".join(re.sub(r"<[^>]+>|&nbsp;", " ", row.text).split()) for row in rows]


def test_what_is_cut_is_reckoned_on_from_as_it_is_printed(library: Any) -> None:
    # 20 mm ÷ 0.91 = 21.978, cut at 22.0 mm; three of them side by side are 66 mm and not 65.9
    assert told(library, "{{ 3 * plate.wet_disc }}") == f"66{NBSP}mm"


def test_a_step_shows_a_number_with_a_label_of_its_own(library: Any) -> None:
    show = "    show: [plate.thickness in cards, {what: plate.count + 1, label: Discs to cut}]\n"
    library.change("pendant/project.yaml", "    minutes: 10-15 min\n", "    minutes: 10-15 min\n" + show)
    shown = [(one.label, one.printed.told) for one in library.main("pendant").steps[0].show]
    assert shown == [("Thickness", f"4{NBSP}cards"), ("Discs to cut", "2")]


def test_a_unit_that_there_is_not_is_told_with_those_that_there_are(library: Any) -> None:
    library.change("pendant/project.yaml", "{{ plate.wet_disc }}", "{{ plate.wet_disc in ells }}")
    [trouble] = library.check("pendant").troubles.errors
    assert "ells" in trouble.message
    assert "cards" in trouble.help


@pytest.mark.parametrize("written", ["my plate", "my-plate", "my_plate"])
@pytest.mark.parametrize("named", ["my plate.wet_disc", "my-plate.wet-disc", "my_plate.wet_disc", "my plate.wet disc"])
def test_a_name_is_one_however_its_words_are_parted(library: Any, written: str, named: str) -> None:
    library.change("pendant/project.yaml", "  plate:\n", f"  {written}:\n")
    library.change("pendant/project.yaml", "parts: [plate]", "parts: [my-plate]")
    library.change("pendant/project.yaml", "{{ plate.across }}", "{{ my plate.across }}")
    library.change("pendant/project.yaml", "{{ plate.wet_disc }}", f"{{{{ {named} }}}}")
    outcome = library.check("pendant")
    assert not list(outcome.troubles), list(map(str, outcome.troubles))
    assert library.main("pendant").steps[0].show[0].printed.told == f"22{NBSP}mm"


def test_x_less_x_is_nothing_however_uncertain_x_is(library: Any) -> None:
    library.change("pendant/project.yaml", "parts:\n", "figures:\n  none: clay.shrinkage - clay.shrinkage\nparts:\n")
    value = library.main("pendant").figures["none"].value
    assert (value.low, value.usual, value.high) == (0, 0, 0)


def test_a_field_given_as_a_range_varies_as_one_wherever_it_turns_up(library: Any) -> None:
    library.change("pendant/project.yaml", "  width: 20 mm\n", "  width: 19-21 mm\n")
    library.change("pendant/project.yaml", "parts:\n", "figures:\n  all: width + (30 mm - width)\nparts:\n")
    value = library.main("pendant").figures["all"].value
    assert (value.low, value.high) == (30, 30)
    assert library.main("pendant").figures["plate.wet_disc"].value.low == pytest.approx(19 / 0.92)


RING_AND_PLUG = """\
title: Ring and plug
revision: 1
date: 2026-01-10
summary: A ring and the plug that closes it.
makes: 1
level: experienced
parts:
  ring: {kind: washer, clay: silver, outside: 30 mm, opening: 20 mm, thickness: 1 mm}
  plug: {kind: washer, clay: silver, outside: 19.8 mm, opening: 4 mm, thickness: 1 mm}
figures:
  play: ring.fired_opening - plug.fired_outside
  both: ring.fired_outside + plug.fired_outside
  the ring again: both - plug.fired_outside
steps:
  - title: Cut
    parts: [ring, plug]
  - title: Dry
    wait: drying
    does: [test]
  - title: Fire
    firing: silver
"""


def test_a_ring_and_its_plug_shrink_as_one(library: Any) -> None:
    # 20 ÷ 0.91 is cut at 22.0 and 19.8 ÷ 0.91 at 21.8; the 0.2 mm between them shrink by 8 to 10 % like the rest
    library.write("plug/project.yaml", RING_AND_PLUG)
    play = library.main("plug").figures["play"].value
    assert (play.low, play.usual, play.high) == pytest.approx((0.2 * 0.90, 0.2 * 0.91, 0.2 * 0.92))


def test_a_total_is_the_sum_of_its_parts_whatever_the_clay_does(library: Any) -> None:
    # 30 ÷ 0.91 is cut at 33.0: the total less its one part is the other, no wider
    library.write("plug/project.yaml", RING_AND_PLUG)
    figures = library.main("plug").figures
    both, ring = figures["both"].value, figures["the_ring_again"].value
    assert (both.low, both.high) == pytest.approx((54.8 * 0.90, 54.8 * 0.92))
    assert (ring.low, ring.high) == pytest.approx((33 * 0.90, 33 * 0.92))


CUT = "      Cut a disc of {{ plate.wet_disc }}.\n"


@pytest.mark.parametrize(
    ("written", "line", "column", "says", "helps"),
    [
        ("Look at ![the seam](seam.jpg).", 0, 15, "a picture in a text is not printed", "picture: {file: "),
        ("Look at ![the seam][1].", 0, 15, "a picture in a text is not printed", "picture: {file: "),
        ("| Clay | Roll |\n      |---|:--:|\n      | silver | 4 |", 1, 7, "a table in a text is not printed", "a list"),
        ("Clay | Roll\n      --|--\n      silver | 4", 1, 7, "a table in a text is not printed", "a list"),
    ],
    ids=["picture", "picture by a reference", "table", "table without edges"],
)
def test_a_picture_or_a_table_that_markdown_would_lose_is_a_trouble_at_its_place(  # noqa: PLR0917
    written: str, line: int, column: int, says: str, helps: str, library: Any
) -> None:
    text = library.path("pendant/project.yaml").read_text("utf-8")
    begins = text[: text.index(CUT)].count("\n") + 1
    library.change("pendant/project.yaml", CUT, f"      {written}\n{CUT}")
    [trouble] = library.check("pendant").troubles.errors
    assert trouble.message == says
    assert helps in trouble.help
    assert (trouble.place.line, trouble.place.column) == (begins + line, column)


@pytest.mark.parametrize(
    "written", ["Oh! [Here](http://x.invalid) | there.", "Not \\![this].", "- one\n      - two", "---"]
)
def test_what_only_looks_like_a_picture_or_a_table_is_well(written: str, library: Any) -> None:
    library.change("pendant/project.yaml", CUT, f"      {written}\n{CUT}")
    assert not library.check("pendant").troubles.errors


def with_own(library: Any, value: str, rounding: str) -> None:
    own = f'figures:\n  cord: {{label: "Cord, cut", value: "{value}", round: {rounding}}}\n  both: 2 * cord\n'
    library.change("pendant/project.yaml", "steps:", f"{own}steps:")


@pytest.mark.parametrize(
    ("units", "value", "rounding", "cut", "both"),
    [
        # 3.95 × 25.4 = 100.33; a ruler's next 1/64 in is 3 61/64 (3.953); twice 3 61/64 is 7 58/64
        ("mm", "100.33 mm", "bench up", f"101{NBSP}mm", f"202{NBSP}mm"),
        ("in", "100.33 mm", "bench up", f"3 61/64{NBSP}in", f"7 29/32{NBSP}in"),
        ("mm", "100.33 mm", "tenth", f"100.3{NBSP}mm", f"200.6{NBSP}mm"),
        ("mm", "57.3 mm", "millimetre up", f"58{NBSP}mm", f"116{NBSP}mm"),
        ("in", "57.3 mm", "millimetre up", f"2 9/32{NBSP}in", f"4 9/16{NBSP}in"),  # 2.256: the next 1/32 is 2.28125
    ],
)
def test_a_figure_of_the_projects_own_that_is_cut_is_worked_on_with_as_it_is_cut(  # noqa: PLR0917
    library: Any, units: str, value: str, rounding: str, cut: str, both: str
) -> None:
    library.change("studio.yaml", "units: mm", f"units: {units}")
    with_own(library, value, rounding)
    assert told(library, "{{ cord }} {{ both }}") == cut
    figures = library.main("pendant").figures
    assert (figures["cord"].printed.told, figures["both"].printed.told) == (cut, both)


@pytest.mark.parametrize(
    ("value", "rounding", "said"),
    [
        ("20 mm", "bnch up", "nothing is cut 'bnch up'"),
        ("20 mm", "mass up", "nothing is cut 'mass up'"),  # that is for what is weighed
        ("2 g", "bench up", "'2 g' is no length, and is not cut"),
    ],
)
def test_what_no_hand_cuts_so_is_told_where_it_says_how(library: Any, value: str, rounding: str, said: str) -> None:
    with_own(library, value, rounding)
    [fault] = library.check("pendant").troubles.errors
    assert fault.message == said
    assert fault.place.column > 1
