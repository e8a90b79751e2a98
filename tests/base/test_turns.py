"""Works that wait for others' hands: while the first waits the next are begun, and they end in their order."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from sheetgen.base.turns import in_turn, through

if TYPE_CHECKING:
    from collections.abc import Generator


def work(name: int, told: list[str], waits: int = 2) -> Generator[None, None, None]:
    told.append(f"begin {name}")
    for n in range(waits):
        yield
        told.append(f"wait {name}.{n}")
    told.append(f"end {name}")


@pytest.mark.parametrize("most", [2, 3, 8])
@pytest.mark.parametrize("many", [0, 1, 2, 7, 30])
def test_all_are_done_in_their_order_and_no_more_than_so_many_are_under_way(many: int, most: int) -> None:
    told: list[str] = []
    in_turn((work(n, told) for n in range(many)), most)
    assert [one for one in told if "end" in one] == [f"end {n}" for n in range(many)]
    under_way = [told[: i + 1].count(f"end {n}") == 0 for i in range(len(told)) for n in range(many)]
    assert len(under_way) == len(told) * many
    for i in range(len(told)):
        begun = sum("begin" in one for one in told[: i + 1])
        ended = sum("end" in one for one in told[: i + 1])
        assert begun - ended <= most + 1


def test_while_one_waits_others_have_been_begun() -> None:
    told: list[str] = []
    in_turn((work(n, told) for n in range(20)), 8)
    for n in range(12):
        assert told.index(f"wait {n}.0") > told.index(f"begin {n + 3}"), "its first sheets are printed meanwhile"
        assert told.index(f"wait {n}.1") > told.index(f"wait {n + 3}.0"), "and its others"


def test_the_last_ones_hand_out_all_they_have_before_the_first_of_them_is_waited_for() -> None:
    told: list[str] = []
    in_turn((work(n, told) for n in range(4)), 8)
    assert told.index("wait 3.0") < told.index("wait 0.1")


def test_one_that_ends_early_stops_no_other_and_one_that_fails_stops_all() -> None:
    told: list[str] = []
    in_turn((work(n, told, waits=n % 3) for n in range(9)), 4)
    assert sum("end" in one for one in told) == 9

    def fails() -> Generator[None, None, None]:
        yield
        raise OSError("the disk is full")

    with pytest.raises(OSError, match="full"):
        in_turn(iter([fails(), work(1, told)]), 4)


def test_a_work_that_is_done_alone_gives_what_it_comes_to() -> None:
    def counts() -> Generator[None, None, int]:
        yield
        yield
        return 3

    assert through(counts()) == 3
