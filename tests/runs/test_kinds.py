"""Orders to what is packed: which kinds of kit there are, what lies in each, and what is wrong with a line."""

from __future__ import annotations

import re
from collections import Counter
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

import pytest

from sheetgen.base.spelling import in_turn
from sheetgen.kits.check_list import bags_of
from sheetgen.kits.contents import contents
from sheetgen.kits.run import taken
from sheetgen.pipeline import Outcome
from sheetgen.runs.orders import packed

if TYPE_CHECKING:
    from sheetgen.kits.ordered import Run
    from sheetgen.kits.taken import Kits

ROOT = Path(__file__).parents[2]
HEAD = "order,name,design,version,count,choices,colourway,leave out,only,gift note,due\n"


class Read(NamedTuple):
    run: Run | None
    told: list[str]
    troubles: list[str]


@pytest.fixture
def table(tmp_path: Path) -> Path:
    return tmp_path / "orders.csv"


def read(table: Path, *lines: str) -> Read:
    table.write_text(HEAD + "".join(f"{line}\n" for line in lines), "utf-8")
    outcome = Outcome()
    run, told = packed(ROOT, table, outcome)
    assert not outcome.faults
    return Read(run, told, [str(one) for one in outcome.troubles])


def the_run(table: Path, *lines: str) -> Run:
    found = read(table, *lines)
    assert not found.troubles
    assert found.run is not None
    return found.run


def bags(run: Run, kits: Kits) -> dict[str, list[tuple[str, int | None]]]:
    found = contents(kits, taken(run.kinds)).bags
    return {
        bag.name: [(one.item.id, None if one.each is None else int(one.each)) for one in bag.contents] for bag in found
    }


def test_of_a_kit_whose_bags_are_empty_the_box_alone_is_checked(table: Path) -> None:
    run = read(table, "Q-1,,buoy-drops,,1,,,A clay; B stones; C metal; D adhesive,,,").run
    assert run is not None
    assert bags_of(run.kinds[0]) == ("in the box",)


def test_two_lines_that_are_alike_are_one_kind_of_kit(table: Path) -> None:
    run = the_run(table, "Q-1,,tideline-band,US 8,2,,,,,,", "Q-2,,Tideline Band,us-8,3,,,,,,")
    assert [(one.version.title, one.bags) for one in run.kinds] == [("US 8", 5)]
    assert [[part.count for part in order.parts] for order in run.orders] == [[2], [3]]


def test_what_is_chosen_as_the_version_has_it_is_not_chosen_otherwise(table: Path) -> None:
    run = the_run(table, "Q-1,,tideline-band,US 8,1,size=US 8,,,,,", "Q-2,,tideline-band,US 8,1,,,,,,")
    assert [one.bags for one in run.kinds] == [2]


def test_another_choice_is_another_kit_and_brings_what_it_decides(table: Path) -> None:
    """The plug goes by the size."""
    run = the_run(table, "Q-1,,tideline-band,,1,size=US 9; width=4 mm,,,,,")
    [kits] = run.kinds
    assert kits.choices == (("size", "US 9"), ("width", "4 mm"))
    assert bags(run, kits)["B plug"] == [("ring-plug-us-9", 1)]


def test_what_is_chosen_as_another_version_has_it_is_that_version(table: Path) -> None:
    """Else one label says two sizes, and the same kit lies on the table under two names."""
    run = the_run(table, "Q-1,,tideline-band,,1,size=US 9,,,,,", "Q-2,,tideline-band,US 9,1,,,,,,")
    assert [(one.version.title, one.choices, one.bags) for one in run.kinds] == [("US 9", (), 2)]


def test_a_colourway_goes_into_each_bag_by_itself_with_its_spares_by_colour(table: Path) -> None:
    """Twelve seats as 7 : 5; stock spares 5 % of each colour, begun: one of each."""
    run = the_run(table, "Q-1,,buoy-drops,,3,,grey sea,,,,")
    [kits] = run.kinds
    assert bags(run, kits)["B stones"] == [("foiled-pp18", 8), ("foiled-pp18-smoke", 6)]
    together = Counter({one.item.id: int(one.need) for one in taken(run.kinds)})
    assert (together["foiled-pp18"], together["foiled-pp18-smoke"]) == (24, 18)


def test_only_sends_a_missing_part_by_its_bag_its_letter_its_name_or_its_place(table: Path) -> None:
    words = ("stones", "B", "B stones", "foiled-pp18", "stone")
    run = the_run(table, *(f"Q-{i},,buoy-drops,,1,,,,{word},," for i, word in enumerate(words)))
    [kits] = run.kinds
    assert kits.bags == len(words)
    assert bags(run, kits) == {"B stones": [("foiled-pp18", 13)]}
    assert contents(kits, taken(run.kinds)).in_the_box == ()


def test_on_every_list_kits_of_a_design_stand_together_whole_ones_first(table: Path) -> None:
    """Sizes as one counts them, as their plugs lie in the drawer, whatever the order in which they were asked for."""
    asked = (
        "tideline-band,US 8,1,,,,", "buoy-drops,Long,1,,,,B", "tideline-band,US 5,1,,,,",
        "buoy-drops,,1,,grey sea,,", "tideline-band,,1,,,,", "buoy-drops,,1,,,,",
    )  # fmt: skip
    run = the_run(table, *(f"Q-{i},,{line},," for i, line in enumerate(asked)))
    assert [one.told.partition(", ")[2] for one in run.kinds] == [
        "Silver, short", "Silver, short, grey sea", "Long, only bag B stones", "US 5", "US 7", "US 8",
    ]  # fmt: skip


def test_lists_name_what_is_sent_or_left_out_as_a_person_calls_it(table: Path) -> None:
    """By its bag where that is all of it, else by its printed name: never by its name in stock."""
    lines = ("1,,,,A", "1,,,,release-sheet", "1,,,C; setting-bur-pp18,,")
    asked = ("only bag A clay", "only release sheet", "without bag C metal and setting bur PP 18")
    run = the_run(table, *(f"Q-{i},,buoy-drops,Long,{line},," for i, line in enumerate(lines)))
    assert sorted(one.told for one in run.kinds) == [f"Buoy drops, Long, {told}" for told in asked]


def test_a_bag_of_a_mix_is_told_as_the_bag_and_a_colour_by_its_own_name(table: Path) -> None:
    """Glass is no colour: both are glass."""
    asked = ("only bag B stones", "only foiled stone PP 18 clear", "without foiled stone PP 18 smoke")
    lines = (",B stones", ",foiled stone pp 18 clear", "Foiled stone PP 18 smoke,")
    run = the_run(table, *(f"Q-{n},,buoy-drops,,1,,grey sea,{words},," for n, words in enumerate(lines, 1)))
    assert {one.told for one in run.kinds} == {f"Buoy drops, Silver, short, grey sea, {said}" for said in asked}


@pytest.mark.parametrize(
    ("word", "helped"),
    [
        ("setting", "did you mean 'setting bur PP 18'?"),
        ("D glue", (
            "known here: A clay, B stones, C metal, D adhesive, clay, copper wire, ear wires, embedding eye, findings, "
            "fine-silver clay, foiled stone PP 18, release sheet, setting bur PP 18, stones, two-part stone adhesive, "
            "wire"
        )),
    ],
)  # fmt: skip
def test_what_may_be_left_out_is_listed_by_printed_names_each_of_which_may_be_written(
    table: Path, word: str, helped: str
) -> None:
    [trouble] = read(table, f"Q-1,,buoy-drops,,1,,,{word},,,").troubles
    assert trouble.endswith(f"   help: {helped}")
    for name in re.findall(r"[\w'][\w -]+", helped.partition(": ")[2]):
        assert not read(table, f"Q-1,,buoy-drops,,1,,,,{name},,").troubles, name


def test_an_item_that_is_chosen_is_told_by_its_printed_name(table: Path) -> None:
    run = the_run(table, "Q-1,,buoy-drops,,1,ring wire=sterling-20awg,,,,,")
    assert run.kinds[0].chosen == "ring wire: sterling-silver wire (20 AWG, soft)"


def test_what_an_order_leaves_out_is_lacking_and_on_no_list(table: Path) -> None:
    run = the_run(table, "Q-1,,buoy-drops,,1,,,D; bur,,,")
    [kits] = run.kinds
    found = contents(kits, taken(run.kinds))
    assert "stone-adhesive" in {item.id for item in found.lacking}
    assert found.in_the_box == ()
    assert not {"stone-adhesive", "setting-bur-pp18"} & {one.item.id for one in taken(run.kinds)}


def test_what_is_posted_is_in_its_bags_and_nothing_is_bought_beside_them(table: Path) -> None:
    """Tape and pads are used as needed and are in no bag."""
    run = the_run(table, "Q-1,,tideline-band,US 8,1,,,,,,")
    assert {one.item.id for one in taken(run.kinds)} == {"silver-low-fire", "release-sheet", "ring-plug-us-8"}


def test_adhesive_in_a_posted_kit_is_asked_about(table: Path) -> None:
    run = the_run(table, "Q-1,,buoy-drops,,1,,,,,,")
    assert [item.id for item in contents(run.kinds[0], taken(run.kinds)).ask] == ["stone-adhesive"]


def test_orders_are_packed_by_due_date_and_then_by_number(table: Path) -> None:
    dues = {"Q-10": "2026-12-01", "Q-9": "2026-12-01", "Q-3": "", "Q-2": "2026-11-30"}
    run = the_run(table, *(f"{number},,tideline-band,,1,,,,,,{due}" for number, due in dues.items()))
    assert [order.number for order in run.orders] == ["Q-2", "Q-9", "Q-10", "Q-3"]


def test_an_order_with_a_line_in_trouble_is_held_back_whole_and_the_others_are_packed(table: Path) -> None:
    found = read(
        table, "Q-1,,tideline-band,,1,,,,,,", "Q-1,,tideline-band,US 55,1,,,,,,", "Q-2,,tideline-band,,1,,,,,,"
    )
    assert found.run is not None
    assert [order.number for order in found.run.orders] == ["Q-2"]
    assert found.run.kinds[0].bags == 1
    assert found.told == ["held back, since something of it is in trouble: Q-1"]


@pytest.mark.parametrize(
    ("line", "place", "says", "helps"),
    [
        ("tideline-band,,1,size=US 10,,,,,", "1,size=US 10", "no row for the size 'US 10'", "US 9"),
        ("tideline-band,,1,sise=US 8,,,,,", "1,sise", "'sise' is not a choice", "did you mean 'size'"),
        ("tideline-band,,1,width=0 mm,,,,,", "width=0 mm", "", ""),
        ("buoy-drops,,1,,gray sea,,,,", "gray sea", "there is no colourway 'gray sea'", "did you mean 'grey sea'"),
        ("towline-bracelet,,1,,grey sea,,,,", "grey sea", "there is no colourway", "comes in one colour"),
        ("buoy-drops,,1,,,stoned,,,", "stoned", "there is no 'stoned' in it", "stone"),
    ],
)
def test_a_line_that_cannot_be_made_is_told_with_its_order_and_the_mend(
    table: Path, line: str, place: str, says: str, helps: str
) -> None:
    found = read(table, f"Q-7,Marrow Tidewell,{line}")
    assert found.run is None
    [told] = found.troubles
    assert told.startswith("orders.csv:2:")
    assert place in told
    assert says in told
    assert helps in told
    assert "Marrow" not in told


def test_numbers_of_orders_are_put_in_turn_as_a_person_would() -> None:
    numbers = ["Q-10", "Q-9", "P-11", "Q-9a", "100", "20"]
    assert sorted(numbers, key=in_turn) == ["20", "100", "P-11", "Q-9", "Q-9a", "Q-10"]


@pytest.mark.parametrize(
    ("way", "leave_out", "only", "sent"),
    [
        ("grey sea", "foiled-pp18", "", {"foiled-pp18-smoke": 6}),
        ("grey sea", "foiled-pp18-smoke", "", {"foiled-pp18": 8}),
        ("grey sea", "stones", "", {}),
        ("grey sea", "stone", "", {}),
        ("grey sea", "", "foiled-pp18", {"foiled-pp18": 8}),
        ("grey sea", "", "B", {"foiled-pp18": 8, "foiled-pp18-smoke": 6}),
        ("deep water", "foiled-pp18", "", {}),
        ("deep water", "", "stone", {"foiled-pp18-blue": 8, "foiled-pp18-smoke": 6}),
    ],
)
def test_a_colour_is_left_out_or_sent_by_itself_also_where_it_is_the_design_s_own_stone(
    table: Path, way: str, leave_out: str, only: str, sent: dict[str, int]
) -> None:
    """Twelve seats are 7 and 5, or 60 % and 40 %, each with 5 % to spare; the words name what is sent."""
    run = the_run(table, f"Q-1,,buoy-drops,,1,,{way},{leave_out},{only},,")
    found = [one for each in bags(run, run.kinds[0]).values() for one in each if one[0].startswith("foiled")]
    assert dict(found) == sent
    colours = {"foiled-pp18", "foiled-pp18-smoke"} if way == "grey sea" else {"foiled-pp18-blue", "foiled-pp18-smoke"}
    kits = run.kinds[0]
    assert (kits.only if only else colours - kits.leave_out) == set(sent)
