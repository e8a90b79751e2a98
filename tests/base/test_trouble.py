"""Troubles: where, what was found, what would help; and the places they point at."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sheetgen.base.place import Place, Source, Word, place_of
from sheetgen.base.spelling import nearest, suggest
from sheetgen.base.trouble import Trouble, Troubles
from sheetgen.read.yaml_words import words

TEXT = "\n" * 13 + "    inside: bore\n"
SOURCE = Source("projects/buoy-drops/project.yaml", TEXT)


def test_a_trouble_prints_file_line_and_column_then_the_line_then_carets_then_help() -> None:
    # design, section 7: the layout to the letter
    trouble = Trouble("bore is wider than the cap (12 mm)", Place(SOURCE, 14, 13, 4), "11 mm or less, or a wider cap")
    assert str(trouble) == (
        "projects/buoy-drops/project.yaml:14:13: error: bore is wider than the cap (12 mm)\n"
        "   14 |     inside: bore\n"
        "      |             ^^^^\n"
        "   help: 11 mm or less, or a wider cap"
    )


def test_a_doubt_is_called_a_warning() -> None:
    assert str(Trouble("odd", Place(SOURCE, 14, 13, 4), "", "warning")).startswith(
        "projects/buoy-drops/project.yaml:14:13: warning: odd\n"
    )


def test_a_trouble_of_no_place_has_neither_line_nor_carets() -> None:
    assert str(Trouble("no project", None, "known here: x")) == "error: no project\n   help: known here: x"


def test_the_carets_of_a_long_line_still_stand_under_the_word() -> None:
    line = "x" * 500 + "WORD" + "y" * 500
    shown = str(Trouble("long", Place(Source("a.yaml", line), 1, 501, 4))).split("\n")
    under = shown[2].index("^")
    assert shown[1][under : under + 4] == "WORD"
    assert shown[2].count("^") == 4
    assert len(shown[1]) < 120


def test_signs_that_would_steer_a_terminal_are_not_passed_on() -> None:
    shown = str(Trouble("odd", Place(Source("a.yaml", "a: \x1b[31mred\x07"), 1, 4)))
    assert "\x1b" not in shown
    assert "\x07" not in shown


def test_troubles_are_told_once_and_in_the_order_of_the_files() -> None:
    troubles = Troubles()
    for name, line in (("b.yaml", 2), ("a.yaml", 9), ("b.yaml", 1), ("a.yaml", 9)):
        troubles.add("x", Place(Source(name), line))
    assert [str(t.place) for t in troubles] == ["a.yaml:9:1", "b.yaml:1:1", "b.yaml:2:1"]
    assert len(troubles) == 3


def test_only_errors_stop_a_project() -> None:
    troubles = Troubles()
    troubles.add("doubtful", None, "", "warning")
    assert troubles.errors == []
    troubles.add("wrong")
    assert [t.message for t in troubles.errors] == ["wrong"]


# A text, and where its word WORD stands: counted by hand. `‸` stands before it.
PROSE = [
    ("plain", "text: see ‸WORD here\n"),
    ("quoted", 'text: "see ‸WORD here"\n'),
    ("single quotes", "text: 'it''s ‸WORD here'\n"),
    ("escapes before it", 'text: "a \\"b\\" \\u00e9 ‸WORD"\n'),
    ("a block", "text: |\n  one\n  two ‸WORD three\n"),
    ("a block with a blank line", "text: |\n  one\n\n  two\n\n  and ‸WORD\n"),
    ("a folded block", "text: >\n  one two\n  three ‸WORD four\n"),
    ("a folded block, the word first on its line", "text: >\n  one two\n  ‸WORD four\n"),
    ("a stripped block", "text: |-\n  ‸WORD\n"),
    ("a plain text of two lines", "text: one\n  two ‸WORD\n"),
    ("quotes over two lines", 'text: "one\n  two ‸WORD"\n'),
    ("deeper in", "a:\n  b:\n    - text: |\n        one\n        é × ‸WORD\n"),
]


@pytest.mark.parametrize(("rule", "marked"), PROSE, ids=[p[0] for p in PROSE])
def test_a_place_inside_a_text_is_found_in_its_file(rule: str, marked: str) -> None:
    text = marked.replace("‸", "")
    before = marked[: marked.index("‸")]
    troubles = Troubles()
    found = words(Source("x.yaml", text), troubles)
    assert found is not None, rule
    while not isinstance(found, Word):
        found = next(iter(found.values())) if isinstance(found, dict) else found[0]
    place = found.place_of(found.index("WORD"), 4)
    assert (place.line, place.column) == (before.count("\n") + 1, len(before) - before.rfind("\n"))
    assert place.source.line(place.line)[place.column - 1 :].startswith("WORD")


@given(st.lists(st.text("abc ", min_size=1, max_size=8), min_size=1, max_size=4), st.integers(0, 3))
def test_the_second_of_two_like_words_is_found_and_not_the_first(lines: list[str], at: int) -> None:
    body = [f"w {line.strip()} w" for line in lines]
    found = words(Source("x.yaml", "text: |\n" + "\n".join(f"  {line}" for line in body) + "\n"), Troubles())
    assert found is not None
    [word] = found.values()
    at = min(at, len(body) - 1)
    offset = sum(len(line) + 1 for line in body[:at]) + len(body[at]) - 1
    place = word.place_of(offset, 1)
    assert (place.line, place.column) == (at + 2, len(body[at]) + 2)


def test_a_word_is_equal_to_its_plain_text_and_knows_its_place() -> None:
    word = Word("bore", Place(SOURCE, 14, 13, 4))
    assert word == "bore"
    found: dict[str, int] = {word: 1}
    assert found["bore"] == 1
    assert place_of(word) == word.place
    assert place_of("bore") is None


@pytest.mark.parametrize(
    ("typed", "known", "meant"),
    [
        ("thicknes", ["thickness", "length"], "thickness"),
        ("Rolled_First", ["rolled first", "length"], "rolled first"),
        ("tubbe", ["tube", "dome", "ring band"], "tube"),
        ("silver low fire", ["silver-low-fire", "copper"], "silver-low-fire"),
        ("zzz", ["tube", "dome"], ""),
        ("x" * 100_000, ["tube"], ""),
    ],
)
def test_the_nearest_spelling_is_offered(typed: str, known: list[str], meant: str) -> None:
    assert nearest(typed, known) == meant
    assert suggest(typed, known) == (f"did you mean '{meant}'?" if meant else "known here: " + ", ".join(sorted(known)))


def test_where_nothing_is_near_the_first_few_that_are_known_are_named() -> None:
    assert suggest("zzz", [f"item {i:02d}" for i in range(20)], most=3) == "known here: item 00, item 01, item 02, …"
    assert suggest("zzz", []) == "there is none to name here"


def test_a_list_of_what_is_known_is_not_cut_short() -> None:
    known = [f"item {i:02d}" for i in range(40)]
    assert suggest("zzz", known) == "known here: " + ", ".join(known)


def test_a_known_name_that_has_a_comma_is_read_as_one() -> None:
    """Silver, short is one version and not two."""
    assert suggest("zzz", ["US 7", "Silver, short"]) == "known here: 'Silver, short', US 7"
