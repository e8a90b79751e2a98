"""What a studio says of copying: told where it cannot stand, and printed where there is room."""

from __future__ import annotations

from typing import Any

import pytest


def stated(library: Any, words: str) -> list[str]:
    library.change("studio.yaml", "units: mm\n", f"units: mm\nlicence: {words}\n")
    return [str(one) for one in library.check().troubles.errors]


@pytest.mark.parametrize(
    ("words", "told"),
    [
        ("{text: ' '}", "this has nothing in it"),
        (f"{{text: {'word ' * 20}}}", "stands in one line of a sheet"),
        (f"{{pictures: {'word ' * 20}}}", "at most 60"),
        ("{link: quillmarsh.example}", "not the address of a page"),
        ("{link: 'javascript:alert(1)'}", "not the address of a page"),
        ("{link: 'https://a.example/\"><b>'}", "not the address of a page"),
        ("{words: free}", "words"),
    ],
)
def test_what_cannot_stand_is_told_at_its_word(library: Any, words: str, told: str) -> None:
    [trouble] = stated(library, words)
    assert told in trouble
    assert "projects/studio.yaml:5" in trouble


@pytest.mark.parametrize(
    "words", ["{text: copies for your bench}", "{pictures: ask first}", "{link: https://a.example/b?c=d}", "{}"]
)
def test_each_of_its_words_may_be_left_out(library: Any, words: str) -> None:
    assert not stated(library, words)


def test_it_stands_in_the_foot_of_a_sheet_where_there_is_room_and_else_is_left_to_the_page(library: Any) -> None:
    assert not stated(library, "{text: copies for your bench}")
    assert library.handout("pendant").head.foot.endswith("Test Bench · Handout · copies for your bench")
    library.change("pendant/project.yaml", "title: Round pendant", f"title: {'Round pendant ' * 5}")
    head = library.handout("pendant").head
    assert head.foot.endswith("Test Bench · Handout")
    assert head.studio.licence == "copies for your bench"


def test_an_empty_credit_is_told_and_one_that_is_given_stands_under_the_picture(library: Any) -> None:
    library.change("drops/project.yaml", "[finished.svg]", "[{file: finished.svg, credit: ' '}]")
    [trouble] = library.check("drops").troubles.errors
    assert "nothing in it" in str(trouble)
    library.change("drops/project.yaml", "credit: ' '", "credit: Wren Tidewell")
    assert library.handout("drops").picture.caption == "Picture: Wren Tidewell"
