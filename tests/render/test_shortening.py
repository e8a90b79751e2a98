"""What of a name or note is kept where it does not fit, and from which side it is read."""

from __future__ import annotations

import pytest

from sheetgen.render.shortening import clean, from_the_right, shortened


@pytest.mark.parametrize(
    ("text", "letters", "kept"),
    [
        ("Ottoline Fennimore", 5, "Ottoline Fen…"),  # one more goes, for the sign
        ("Ottoline Fen…", 1, "Ottoline F…"),
        ("Ada, of the creek", 11, "Ada…"),
        ("Ada", 9, "…"),
        ("Rene\u0301e", 1, "Ren…"),  # an accent goes with its letter
        ("a👩\u200d🔧b", 2, "a…"),  # as does what a joiner joins
    ],
)
def test_a_text_ends_in_a_sign_where_it_is_shortened_and_no_letter_is_parted(
    text: str, letters: int, kept: str
) -> None:
    assert shortened(text, letters) == kept


@pytest.mark.parametrize("text", ["", "…"])
def test_nothing_is_taken_of_nothing(text: str) -> None:
    assert shortened(text, 1) is None


@pytest.mark.parametrize(
    ("text", "so"),
    [
        ("מירב Almog", True),
        ("ياسمين", True),
        ("12 – מירב", True),
        ("Ada מירב", False),
        ("Ярослава", False),
        ("12", False),
    ],
)
def test_a_text_is_read_from_the_side_of_its_first_letter(text: str, so: bool) -> None:  # noqa: FBT001 - a case
    assert from_the_right(text) is so


def test_signs_that_no_page_shows_go_and_lines_stay() -> None:
    assert clean("  Dear\tWren,\r\n\u202ewith\x00 love \u2066 \nAda ") == "Dear Wren,\nwith love\nAda"
