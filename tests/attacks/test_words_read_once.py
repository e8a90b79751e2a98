"""Words of a hundred thousand letters are read once from end to end, and not tried every way."""

from __future__ import annotations

import os
import resource
from typing import TYPE_CHECKING

import pytest

from sheetgen.base.bend import read_bends
from sheetgen.base.place import Place, Source, Word
from sheetgen.base.tree import Wrong
from sheetgen.base.trouble import Trouble, Troubles, cut
from sheetgen.read.measured import cooled, shrunk
from sheetgen.read.measures import Measures
from tests.hanging import SECONDS

if TYPE_CHECKING:
    from collections.abc import Callable

MANY = 100_000


def strips(text: str) -> None:
    shrunk([Word(text, Place(Source("a", text)))], Measures("EUR", Troubles()))


def cooling(text: str) -> None:
    cooled(Word(text, Place(Source("a", text))), Measures("EUR", Troubles()))


def bends(text: str) -> None:
    with pytest.raises(Wrong):
        read_bends(text)


@pytest.mark.parametrize(
    ("read", "text"),
    [
        (strips, f"wet 5{' ' * MANY}!"),
        (strips, f"wet 5{' ,' * MANY}!"),
        (strips, f"wet {'5 , ' * MANY}fire"),
        (strips, f"{' ' * MANY}wet"),
        (cooling, f"from 5{' to ' * MANY}!"),
        (cooling, f"from 5{' ' * MANY}to 6{' in' * MANY}"),
        (bends, f"arc 5{' ' * MANY}x"),
        (bends, f"arc {'5 ' * MANY}x"),
        (bends, f"arc {'5 180 left ' * MANY}right"),
    ],
    ids=lambda one: one.__name__ if callable(one) else one[:12],
)
def test_a_long_word_takes_as_long_as_it_is(read: Callable[[str], None], text: str) -> None:
    child = os.fork()
    if not child:
        resource.setrlimit(resource.RLIMIT_CPU, (SECONDS, SECONDS + 1))
        code = 1
        try:
            read(text)
            code = 0
        finally:
            os._exit(code)
    _, status = os.waitpid(child, 0)
    assert status == 0, f"past {SECONDS} s, or a fault"


def test_of_nine_thousand_faults_of_a_file_a_hundred_are_told_and_how_many_more() -> None:
    place = Place(Source("a", "x\n" * 9000))
    told = list(cut(Trouble(f"fault {n}", Place(place.source, n + 1)) for n in range(9000)))
    assert [one.message for one in told[:2]] == ["fault 0", "fault 1"]
    assert len(told) == 101
    assert str(told[-1]).startswith("a:101:1: error: 8900 more troubles from here on")
