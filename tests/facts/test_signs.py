"""Signal words and safety signs: the ladder of ANSI Z535, the numbers of ISO 7010, and that all of them are drawn."""

from __future__ import annotations

import xml.etree.ElementTree as ET

import pytest

from sheetgen.draw.signs import MARKS, sign
from sheetgen.facts.cautions import CAUTIONS, LADDER
from sheetgen.facts.signs import SIGNS

# The list generated from the free pictures of the signs, as seen; and what a wrong list says of two of them.
LISTED = {
    "W001": "general", "W016": "toxic", "W017": "hot surface", "W021": "flammable", "W022": "sharp",
    "W023": "corrosive", "W024": "crushing of hands", "W041": "asphyxiating",
    "M003": "ear", "M004": "eye", "M009": "gloves", "M016": "mask",
}  # fmt: skip
WRONG = {"W021": "slippery", "M018": "gloves"}


def test_every_sign_is_called_as_the_list_calls_its_number() -> None:
    assert SIGNS.keys() == LISTED.keys()
    for number, says in LISTED.items():
        assert says in SIGNS[number]
    for number, says in WRONG.items():
        assert says not in SIGNS.get(number, "")


@pytest.mark.parametrize("number", SIGNS)
def test_every_sign_is_drawn_black_on_white_and_says_what_it_is(number: str) -> None:
    assert MARKS.keys() == SIGNS.keys()
    drawn = ET.fromstring(sign(number).svg)  # noqa: S314 - our own drawing
    assert number in (drawn[0].text or "")
    inks = {part.get(name) for part in drawn.iter() for name in ("fill", "stroke")} - {None}
    assert inks <= {"#000", "#fff", "none"}


def test_a_caution_names_signs_that_there_are_the_hazards_own_first() -> None:
    for name, told in CAUTIONS.items():
        assert set(told.signs) <= SIGNS.keys(), name
        if told.word != "NOTICE":
            assert told.signs[0].startswith("W"), name


def test_what_hurts_nobody_is_a_notice_and_has_no_sign() -> None:
    notices = [name for name, told in CAUTIONS.items() if told.word == "NOTICE"]
    assert notices == ["metals apart"]
    assert CAUTIONS["metals apart"].signs == ()
    assert LADDER == ("DANGER", "WARNING", "CAUTION", "NOTICE")


def test_no_caution_repeats_who_is_heard_first() -> None:
    for name, told in CAUTIONS.items():
        assert "come first" not in told.avoid, name
        assert "safety sheet" not in told.avoid, name
