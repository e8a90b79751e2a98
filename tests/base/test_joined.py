"""A word put together from others: every character keeps the place where it is written."""

from __future__ import annotations

import pickle

from hypothesis import given
from hypothesis import strategies as st

from sheetgen.base.place import Joined, Place, Source, Stretch, Word

LINES = ["abcdefgh", "ijklmnop", "qrstuvwx"]  # no letter twice: a letter alone says where it stands
SOURCE = Source("a.yaml", "\n".join(LINES))
WORDS = [Word(line, Place(SOURCE, number, 1, len(line))) for number, line in enumerate(LINES, 1)]
stretches = st.builds(
    lambda word, ends: Stretch(word, min(ends), max(ends)),
    st.sampled_from(WORDS),
    st.tuples(st.integers(0, 8), st.integers(0, 8)),
)


def where(letter: str) -> tuple[int, int]:
    """Line and column by looking for the letter."""
    line = next(line for line in LINES if letter in line)
    return LINES.index(line) + 1, line.index(letter) + 1


@given(st.lists(stretches, max_size=6), st.integers(0, 48), st.integers(0, 48))
def test_each_character_and_each_stretch_points_at_what_it_was_taken_from(
    parts: list[Stretch], one: int, other: int
) -> None:
    joined = Joined(parts, Place(SOURCE))
    assert joined == "".join(part.word[part.start : part.end] for part in parts)
    for at, letter in enumerate(joined):
        place = joined.place_of(at)
        assert (place.line, place.column) == where(letter)
    start, end = sorted((min(one, len(joined)), min(other, len(joined))))
    piece = joined.cut(start, end)
    assert piece == joined[start:end]
    assert [(piece.place_of(i).line, piece.place_of(i).column) for i in range(len(piece))] == list(map(where, piece))


def test_what_goes_over_a_seam_is_told_in_what_is_used_and_in_what_was_put_in() -> None:
    use = Place(SOURCE, 3, 1)
    shared, put_in = WORDS[0].used(use), WORDS[1]
    joined = Joined([Stretch(put_in, 0, 2), Stretch(shared, 4, 8)], shared.place)
    over, within = joined.place_of(0, 4), joined.place_of(3)
    assert (str(over), [str(one) for one in over.used_at]) == ("a.yaml:1:5", ["a.yaml:2:1"])
    assert (str(within), within.used_at, within.where_used) == ("a.yaml:1:6", (use,), use)


def test_a_joined_word_keeps_its_places_on_its_way() -> None:
    joined = Joined([Stretch(WORDS[0], 2, 4), Stretch(WORDS[2], 1, 3)], WORDS[0].place)
    copied = pickle.loads(pickle.dumps(joined))  # noqa: S301 - our own
    assert (copied, copied.place, copied.place_of(3)) == (joined, joined.place, joined.place_of(3))
