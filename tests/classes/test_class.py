"""A class made up from its list: every number counted a second time, and nobody named but on the tables."""

from __future__ import annotations

import re
import stat
from collections import Counter, defaultdict
from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from typing import TYPE_CHECKING, Any
from unittest.mock import patch

import pytest
from click.testing import CliRunner

from sheetgen.cli import main

if TYPE_CHECKING:
    from collections.abc import Callable

    from tests.classes.conftest import Bench, Held, Rows

ROOT = Path(__file__).parents[2]
WELL, TROUBLES, USAGE = 0, 1, 2
EVENING = {
    "Wren Tidewell": ("US 8", "", "1"),
    "Odo Marsh": ("US 7", "", "1"),
    "Ines Sandpiper": ("US 7", "", "1"),
    "Ida Knot": ("US 8", "", "2"),
    "Bo Tern": ("US 7", "size=US 9", "2"),
    "Nell Auk": ("US 7", "", "2"),
}
MADE = {"US 8": 2, "US 7": 3 + 1 + 1, "US 9": 1}  # most make US 7, and so do the teacher's piece and the spare set


def of(found: Rows, item: str) -> Rows:
    return [row for row in found if row["item"] == item]


@pytest.fixture(scope="module")
def rings(bench: Callable[..., Bench]) -> Held:
    """Six who make rings at two tables."""
    lines = (f"{name},tideline-band,{version},{chosen},,{table}" for name, (version, chosen, table) in EVENING.items())
    return bench("tideline-band").held(*lines)


def test_a_class_is_made_up_and_nothing_is_told_against_it(rings: Held) -> None:
    assert rings.code == WELL, rings.said
    assert "6 pupils + 1 teacher’s piece + 1 spare set" in rings.said
    assert "weigh out of the pots what `tables` says" in rings.said
    assert "warning" not in rings.said


def test_what_a_class_takes_can_be_read_by_its_owner_alone(rings: Held) -> None:
    assert stat.S_IMODE(rings.folder.stat().st_mode) == 0o700
    assert {stat.S_IMODE(path.stat().st_mode) for path in rings.folder.iterdir()} == {0o600}


def test_the_clay_of_the_class_is_one_pot_of_all_slabs_summed_and_rounded_once(rings: Held) -> None:
    """The slabs of the handouts, 12 mm wide and 1.5 mm thick, of 7 g/cm³: five of 76 mm, two of 79.5, one of 82 mm.

    5 × 9.576 + 2 × 10.017 + 10.332 = 78.246 g, up to 79; by the pupil it would be 5 × 10 + 3 × 11. The strips weigh
    5 × 4.116 + 2 × 4.3218 + 4.4688 = 33.69 g, up to 34: 45 g come back. 60 g lie there, and one pack of 25 is bought.
    """
    [pick] = of(rings.rows("pick"), "silver-low-fire")
    assert (pick["bags"], pick["of it spare"], pick["together"]) == ("8", "45", "79")
    [buy] = of(rings.rows("buy"), "silver-low-fire")
    assert (buy["needed"], buy["have"], buy["packs"], buy["left"]) == ("79", "60", "1", "6")
    [left] = of(rings.rows("left"), "silver-low-fire")
    assert (left["bought"], left["used"], left["after"]) == ("25", "34", "51")


def test_each_table_has_the_clay_of_its_slabs_and_what_is_over_goes_by_their_share(rings: Held) -> None:
    """29.169, 29.925 and 19.152 g are 29.2, 30.0 and 19.2; of six tenths over 2.24, 2.29 and 1.47: 2, 2 and 2."""
    found = of(rings.rows("tables"), "silver-low-fire")
    tables = [(row["table"], row["amount"]) for row in found if row["lies"] == "on the table"]
    assert tables == [("1", "29.4"), ("2", "30.2"), ("teacher", "19.4")]


def test_each_finger_has_its_plug(rings: Held) -> None:
    plugs = {row["item"]: row["together"] for row in rings.rows("pick") if "plug" in row["item"]}
    assert plugs == {"ring-plug-us-8": "2", "ring-plug-us-7": "5", "ring-plug-us-9": "1"}


def test_what_a_kit_would_leave_out_stands_on_the_tables_of_a_class(rings: Held) -> None:
    """Balm is left out of a kit, since it must be to hand: 8 sets take 8 × 0.5 g, and each table its part of it."""
    assert of(rings.rows("pick"), "release-balm")[0]["together"] == "4"
    tables = [(row["table"], row["amount"]) for row in of(rings.rows("tables"), "release-balm")]
    assert tables == [("1", "1.5"), ("2", "1.5"), ("teacher", "1")]


def test_all_that_lies_and_stands_on_the_tables_is_what_was_picked(rings: Held) -> None:
    picked: defaultdict[str, Decimal] = defaultdict(Decimal)
    for row in rings.rows("pick"):
        if row["station"] != "paper":
            picked[row["item"]] += Decimal(row["together"])
    laid: defaultdict[str, Decimal] = defaultdict(Decimal)
    for row in rings.rows("tables"):
        if row["item"] in picked and row["lies"] != "of what is on the table":
            laid[row["item"]] += Decimal(row["amount"])
    assert laid == picked


def test_everybody_has_a_place_at_his_table_with_his_size(rings: Held) -> None:
    places = {(row["who"], row["table"], row["version"], row["choices"]) for row in rings.rows("tables") if row["who"]}
    """Whoever chooses the size of a version makes that version, and it is called so."""
    wanted = {
        (who, table, chosen.removeprefix("size=") or version or "US 7", "")
        for who, (version, chosen, table) in EVENING.items()
    }
    assert places == wanted | {(who, "teacher", "US 7", "") for who in ("the teacher’s piece", "a spare set")}


def test_what_the_cautions_tell_to_wear_stands_on_every_table(rings: Held) -> None:
    """A ring of clay is sanded, fired and hammered round."""
    for page in rings.pages("tables"):
        assert "wears or has" in page
        for wear in ("Dust mask", "Eye protection", "Heat-proof gloves", "Ear protection"):
            assert wear.lower() in page.lower(), (wear, page)


def test_each_table_has_a_page_and_the_teacher_one(rings: Held) -> None:
    first, second, teacher = rings.pages("tables")
    assert [name for name in EVENING if name in first] == ["Wren Tidewell", "Odo Marsh", "Ines Sandpiper"]
    assert [name for name in EVENING if name in second] == ["Ida Knot", "Bo Tern", "Nell Auk"]
    assert "US 9: 1 place" in second
    assert "A spare set: US 7" in teacher
    assert "Kiln: 1" in teacher


def test_the_teachers_sheet_of_each_version_has_the_numbers_of_this_class(rings: Held) -> None:
    sheets = sorted(path.name for path in rings.folder.glob("teacher-*"))
    assert sheets == [
        "teacher-tideline-band-us-7-a4.pdf", "teacher-tideline-band-us-8-a4.pdf", "teacher-tideline-band-us-9-a4.pdf",
    ]  # fmt: skip
    words = " ".join(rings.pages("teacher-tideline-band-us-7"))
    assert "class of 6" in words
    assert "3 of 6 pupils make this version." in words
    assert "For 3 pupils + 1 teacher’s piece + 1 spare set" in words


def test_nobody_is_named_but_on_the_tables(rings: Held) -> None:
    names = [word for name in EVENING for word in name.split() if len(word) > 2]  # Bo is part of other words
    said = [rings.said]
    for path in rings.folder.iterdir():
        if path.suffix == ".pdf" and not path.name.startswith("tables"):
            said += rings.pages(path.name.removesuffix("-a4.pdf"))
        elif path.suffix == ".csv" and path.stem != "tables":
            said.append(path.read_text("utf-8"))
    assert len(said) > len(EVENING)
    assert not [name for name in names for words in said if name in words]


# What is made up besides


@pytest.mark.parametrize(
    ("said", "pupils", "sets", "told"),
    [
        ("", 2, 4, "2 pupils + 1 teacher’s piece + 1 spare set; a teacher’s piece and spare sets are common practice"),
        (
            "  teacher's piece: no\n",
            2,
            3,
            "2 pupils + 1 spare set; a teacher’s piece and spare sets are common practice",
        ),
        ("  teacher's piece: no\n  a spare set for: none\n", 2, 2, "2 pupils\n"),
        ("  teacher's piece: yes\n  a spare set for: 2\n", 3, 6, "3 pupils + 1 teacher’s piece + 2 spare sets\n"),
    ],
)
def test_a_class_says_what_is_made_up_besides_else_it_is_common_practice(
    said: str, pupils: int, sets: int, told: str, bench: Callable[..., Bench]
) -> None:
    made = bench("tideline-band", changes={"studio.yaml": ("  people: 12\n", f"  people: 12\n{said}")})
    held = made.held(*(f"Pupil {i},tideline-band,US 8,,,1" for i in range(pupils)), printed=False)
    assert held.code == WELL, held.said
    assert told in held.said
    assert [row["bags"] for row in of(held.rows("pick"), "silver-low-fire")] == [str(sets)]


# Pots, colours, several designs


@pytest.fixture(scope="module")
def mixed(bench: Callable[..., Bench]) -> Held:
    """Seven who make drops in a mix by shares, and one who makes a ring; nothing besides."""
    made = bench("buoy-drops", "tideline-band")
    made.change("studio.yaml", "  people: 12\n", "  people: 12\n  teacher's piece: no\n  a spare set for: none\n")
    colours = "foiled-pp18: 60 %, foiled-pp18-smoke: 40 %"
    made.change("buoy-drops/project.yaml", "  grey sea:", f"  mist: {{{colours}}}\n  grey sea:")
    drops = (f"Pupil {i},buoy-drops,,,mist,{'Door' if i < 3 else 'Window'}" for i in range(7))
    return made.held(*drops, "Pupil 7,tideline-band,US 8,,,Window")


def test_the_pot_of_a_class_is_allotted_once(mixed: Held) -> None:
    """7 × 12 seats: 60 % of 84 are 50.4, and 34 the rest; bag by bag it would be 7 × 7 = 49. 5 % are to spare."""
    assert mixed.code == WELL, mixed.said
    pots = {row["item"]: row["together"] for row in mixed.rows("pick") if row["station"] == "stones"}
    assert {name: pots[name] for name in ("foiled-pp18", "foiled-pp18-smoke")} == {
        "foiled-pp18": str(-(-50 * 105 // 100)),
        "foiled-pp18-smoke": str(-(-34 * 105 // 100)),
    }


def test_every_seat_of_a_table_is_filled_from_what_stands_on_it(mixed: Held) -> None:
    stones: Counter[str] = Counter()
    for row in mixed.rows("tables"):
        if row["item"].startswith("foiled-pp18") and row["lies"] == "on the table":
            stones[row["table"]] += int(row["amount"])
    assert stones.total() == 53 + 36
    assert stones["Door"] >= 3 * 12
    assert stones["Window"] >= 4 * 12


def test_everybody_is_told_how_many_of_each_colour_are_his_and_together_they_are_the_pot(mixed: Held) -> None:
    """Of 84 seats 50 are clear and 34 smoke (60 % are 50.4): each has his 12, some 8 and 4, the others 7 and 5."""
    said = " ".join(" ".join(page.split()) for page in mixed.pages("tables"))
    each = [tuple(map(int, found)) for found in re.findall(r"mist: clear (\d+), smoke (\d+)", said)]
    assert len(each) == 7
    assert all(sum(one) == 12 for one in each)
    assert (sum(clear for clear, _ in each), sum(smoke for _, smoke in each)) == (50, 34)
    assert {clear for clear, _ in each} <= {7, 8}


def test_everybody_is_told_what_he_weighs_out_of_the_clay_on_his_table_and_together_it_is_all_of_it(
    mixed: Held,
) -> None:
    """No less than his slab takes at once, as a maker's own sheet has it: a handout rounds that up for one alone."""
    his: dict[str, list[Fraction]] = {}
    for row in of(mixed.rows("tables"), "silver-low-fire"):
        his.setdefault(row["table"], []).append(Fraction(row["amount"]))
        if row["lies"] == "of what is on the table":
            assert row["who"]
    for each in his.values():  # the last row is the table's own
        assert sum(each[:-1]) == each[-1]
    drops = [row["amount"] for row in of(mixed.rows("tables"), "silver-low-fire") if row["design"] == "Buoy drops"]
    assert len(drops) == 7
    assert all(14 < Fraction(one) <= 16 for one in drops)  # 16 g on the handout, rounded up
    said = " ".join(mixed.pages("tables")[0].split("On the table")[0].split())
    assert all(f"{one} g" in said for one in drops[:3])


def test_several_designs_in_one_class_are_each_planned_by_themselves_and_told_so(mixed: Held) -> None:
    assert "the evenings of each design are planned by themselves; they share: kiln\n" in mixed.said
    assert "class of 7" in mixed.pages("teacher-buoy-drops-silver-short")[0]


def test_the_tables_of_several_designs_name_the_design_and_the_colours(mixed: Held) -> None:
    window = mixed.pages("tables")[1]
    assert "Buoy drops, Silver, short, mist: each of 4 places" in window
    assert "Tideline band, US 8: 1 place" in window
    assert "Handout, bench card, templates" in window
    assert "continued" not in window


@pytest.fixture(scope="module")
def letter(bench: Callable[..., Bench]) -> Held:
    """Three who make the same drops in other colours and one who makes longer ones, after an evening on A4."""
    made = bench("buoy-drops")
    made.held("Wren Tidewell,buoy-drops,,,,1", printed=False)
    ways = "Wren Tidewell,buoy-drops,,,,1", "Odo Marsh,buoy-drops,,,grey sea,1", "Bo Tern,buoy-drops,,,deep water,1"
    return made.held(*ways, "Ida Knot,buoy-drops,Long,,grey sea,1", options=["--paper", "letter"])


def test_what_lies_at_places_of_other_colours_alike_is_said_once(letter: Held) -> None:
    """The release sheet is as wide as the strip, and once round the former: of the short ones 27 × 94, 27 × 110."""
    assert letter.code == WELL, letter.said
    [page, _] = letter.pages("tables")
    assert "Silver, short: each of 3 places Item How much Release sheet 1 piece of 27 × 94 mm" in page
    assert "Long, grey sea: 1 place Item How much Release sheet 1 piece of 27 × 110 mm" in page
    assert "Silver, short, grey sea: 1 place" not in page


def test_the_teacher_has_what_is_taken_as_needed_too_and_the_fibre_lies_where_it_is_fired(letter: Held) -> None:
    """Whoever makes a piece tapes its joint; the bed of the box is cut and laid by who fires."""
    table, teacher = letter.pages("tables")
    assert "Masking tape as needed" in table
    assert "Masking tape as needed" in teacher.partition("By kiln and torch")[0]
    assert "Kiln fibre blanket as needed" in teacher.partition("By kiln and torch")[2]
    assert "Kiln fibre" not in table


def test_what_everybody_wears_is_told_once_and_counted_once(mixed: Held) -> None:
    """Drops are drilled and rings are filed: eye protection is a tool of the ones and a caution of the other."""
    window = mixed.pages("tables")[1]
    assert window.count("Eye protection") == 1
    rows = [row for row in mixed.rows("tables") if row["name"] == "Eye protection"]
    assert [row["table"] for row in rows].count("Window") == 5  # four with drops and one with a ring


def test_an_adhesive_of_two_parts_is_dealt_out_unmixed(letter: Held) -> None:
    assert "Two-part stone adhesive, its parts A and B together, unmixed" in letter.pages("tables")[0]
    assert "Scale that shows 0.1 g" in letter.pages("tables")[0], "the clay is weighed out there"
    [found] = [page for page in letter.pages("pick") if "Two-part stone adhesive" in page]
    assert "It is of both parts together, A and B 1 : 1: leave them unmixed, each in its own." in found


def test_on_one_paper_nothing_is_left_on_another(letter: Held) -> None:
    on = {path.stem.rpartition("-")[2] for path in letter.folder.glob("*.pdf")}
    assert on == {"letter"}
    assert {path.stem for path in letter.folder.glob("*.pdf")} >= {"pick-letter", "cut-letter", "tables-letter"}


def test_the_sheets_that_lie_at_the_places_are_those_that_were_picked(mixed: Held) -> None:
    picked = Counter[str]()
    for row in mixed.rows("pick"):
        if row["station"] == "paper":
            picked[row["item"]] += int(row["together"])
    assert picked["handout"]
    assert Counter(row["item"] for row in mixed.rows("tables") if row["item"] in picked) == picked


def test_sheets_are_picked_as_they_are_printed_and_at_a_table_that_is_in_no_colours(mixed: Held) -> None:
    paper = [row for row in mixed.rows("pick") if row["name"] == "Handout"]
    assert [(row["design"], row["version"], row["choices"], row["together"]) for row in paper] == [
        ("Buoy drops", "Silver, short", "", "7"), ("Tideline band", "US 8", "", "1"),
    ]  # fmt: skip


def test_a_pot_that_other_versions_share_is_told_as_theirs_too_however_few_sets_it_is_for(
    bench: Callable[..., Bench],
) -> None:
    """Blue is for one of the three short ones and for the long one; smoke is for these and the first."""
    made = bench("buoy-drops")
    made.change("studio.yaml", "  people: 12\n", "  people: 12\n  teacher's piece: no\n  a spare set for: none\n")
    ways = (("", "grey sea"), ("", ""), ("", "deep water"), ("Long", "deep water"))
    held = made.held(*(f"Pupil {n},buoy-drops,{version},,{way},1" for n, (version, way) in enumerate(ways)))
    said = " ".join(held.pages("teacher-buoy-drops-silver-short"))
    assert re.search(r"Foiled stone PP 18, blue, glass, pointed back, one pot for 2 sets", said), said
    assert re.search(r"Foiled stone PP 18, smoke, glass, pointed back, one pot for 3 sets", said)
    assert not re.search(r"Foiled stone PP 18, clear, glass, pointed back, one pot", said)  # the short ones' own
    seats = held.pages("tables")[0].split("On the table")[0]
    assert re.findall(r"(?:grey sea: |deep water: )?(?:clear|blue) \d+(?:, smoke \d+)?", seats) == [
        "grey sea: clear 7, smoke 5", "clear 12", "deep water: blue 7, smoke 5",
        "deep water: blue 10, smoke 6",  # of 12 and of 16 seats 60 % are 7.2 and 9.6
    ]  # fmt: skip


# Bad lines, and classes that do not fit


@pytest.fixture(scope="module")
def band(bench: Callable[..., Bench]) -> Bench:
    return bench("tideline-band")


def test_a_bad_line_is_told_without_a_name_and_the_rest_is_made(band: Bench) -> None:
    good = ("Ines Sandpiper,tideline-band,US 8,,,1", "Bo Tern,tideline-band,US 7,,,1")
    bad = ("Odo Marsh,tideline-band,,size=US 10,,1", "Ida Knot,tideline-bend,,,,1", "Wren,tideline-band,,,grey sea,1")
    held = band.held(*good, *bad)
    assert held.code == TROUBLES
    assert "evening.csv:4:31: error: plug has no row for the size 'US 10'" in held.said
    assert "evening.csv:5:10: error: there is no design 'tideline-bend'" in held.said
    assert "evening.csv:6:22: error: there is no colourway 'grey sea' of US 7" in held.said
    assert not [name for name in ("Odo", "Marsh", "Ida", "Knot", "Wren") if name in held.said]
    assert "2 pupils + 1 teacher’s piece + 1 spare set" in held.said
    assert "class of 2" in held.pages("teacher-tideline-band-us-8")[0]


def test_the_lists_of_a_second_class_leave_those_of_the_first_alone(bench: Callable[..., Bench]) -> None:
    made = bench("tideline-band")
    first = made.held("Bo Tern,tideline-band,US 8,,,1", printed=False, name="Monday evening")
    assert first.code == WELL, first.said
    folder = made.root / "private" / "class" / "monday-evening"
    before = {path.name: path.read_bytes() for path in folder.iterdir()}
    second = made.held("Ida Knot,tideline-band,US 7,,,1", printed=False, name="tuesday")
    assert f"into {second.folder}" in second.said
    assert {path.name: path.read_bytes() for path in folder.iterdir()} == before
    assert of(second.rows("pick"), "ring-plug-us-7")
    assert stat.S_IMODE(folder.parent.stat().st_mode) == 0o700


def test_where_nobodys_set_can_be_made_nothing_is_written(bench: Callable[..., Bench]) -> None:
    held = bench("tideline-band").held("Odo Marsh,tideline-band,,size=US 10,,1")
    assert held.code == TROUBLES
    assert not held.folder.exists()


def test_teachers_sheets_of_another_evening_go(band: Bench) -> None:
    held = band.held("Bo Tern,tideline-band,US 5,,,1")
    (held.folder / "teacher-tideline-band-us-6-a4.pdf").write_text("of last week", "utf-8")
    (held.folder / "mine.txt").write_text("a note", "utf-8")
    band.held("Bo Tern,tideline-band,US 5,,,1", printed=False)
    assert not list(held.folder.glob("teacher-*"))
    assert (held.folder / "mine.txt").exists()


def test_more_pupils_than_places_are_told_at_the_word_and_the_class_is_made_up(band: Bench) -> None:
    held = band.held(*(f"Pupil {i},tideline-band,US 8,,,1" for i in range(13)), printed=False)
    assert held.code == WELL
    line = (ROOT / "projects/studio.yaml").read_text("utf-8").split("\n").index("  people: 12") + 1
    told = f"projects/studio.yaml:{line}:11: warning: 13 pupils make tideline-band, and its class has 12 places"
    assert told in held.said
    assert "people: 13, if there is room for them; or take 1 off the list" in held.said
    assert "13 pupils + 1 teacher’s piece + 2 spare sets" in held.said


def test_a_class_that_does_not_get_through_its_evenings_is_told_as_its_plan_tells_it(
    bench: Callable[..., Bench],
) -> None:
    four = ", ".join(['"18:30-21:30"'] * 4)
    short = (f"evenings: [{four}]", 'evenings: ["18:30-19:00"]')
    made = bench("tideline-band", changes={"tideline-band/project.yaml": short})
    held = made.held("Bo Tern,tideline-band,US 8,,,1", "Odo Marsh,tideline-band,US 8,,,1")
    assert held.code == WELL
    assert "a class of 2 does not get through ‘Tideline band’ in 1 evening: no room for" in held.said
    assert "Does not fit" in held.pages("teacher-tideline-band-us-8")[0]


def test_a_name_that_would_be_worked_as_a_formula_stays_text(band: Bench) -> None:
    held = band.held("=1+1,tideline-band,US 8,,,@2")
    assert {(row["table"], row["who"]) for row in held.rows("tables") if row["who"] and row["table"] != "teacher"} == {
        ("'@2", "'=1+1")
    }
    assert "=1+1" in held.pages("tables")[0]


def test_a_name_with_a_letter_that_no_face_has_is_printed_with_a_box_and_never_told(band: Bench) -> None:
    """And a sign that turns the words beside it round is left out."""
    found = band.held("Ida 𒀀 Knot,tideline-band,,,,1", "Bo\u202enreT,tideline-band,,,,1")
    assert found.code == WELL, found.said
    assert "evening.csv:2:" in found.said
    assert "a box stands for it" in found.said
    assert not [word for word in ("𒀀", "Ida", "Knot") if word in found.said]
    table = found.pages("tables")[0]
    assert "Ida ☐ Knot" in table
    assert "BonreT" in table
    assert "Ida 𒀀 Knot" in {row["who"] for row in found.rows("tables")}


def test_a_theme_that_cuts_off_a_name_is_told_without_it(bench: Callable[..., Bench]) -> None:
    made = bench("tideline-band")
    plain = (Path(__file__).parents[2] / "themes" / "plain" / "tables.html.j2").read_text("utf-8")
    (made.root / "themes" / "plain").mkdir(parents=True)
    narrow = '<b style="white-space:nowrap;position:relative;left:120mm">{{ s.name }}</b>'
    (made.root / "themes" / "plain" / "tables.html.j2").write_text(
        plain.replace("<b>{{ s.name }}</b>", narrow), "utf-8"
    )
    found = made.held("Wren O'Tidewell of the Long Saltings,tideline-band,,,,1")
    assert "beyond the margin" in found.said
    assert not [word for word in ("Wren", "Tidewell", "Saltings") if word in found.said]


@pytest.mark.parametrize(
    ("tables", "hammers", "stand"),
    [
        ((5, 3), 2, {("A", "1"), ("B", "1")}),
        ((5, 3), 6, {("A", "4"), ("B", "2")}),  # one for each table, and of four more 2.5 and 1.5
        ((5, 3, 1), 2, {("", "2")}),  # they do not go round: they stand by themselves
        ((2,), 2, {("A", "1"), ("A", "1")}),  # everybody has one
    ],
)
def test_few_tools_are_given_to_the_tables_or_stand_by_themselves(
    tables: tuple[int, ...], hammers: int, stand: set[tuple[str, str]], bench: Callable[..., Bench]
) -> None:
    brass = "    name: Brass hammer, heavy\n    group: wire\n    owned: "
    made = bench("sounding-bracelet", changes={"stock/tools.yaml": (f"{brass}2", f"{brass}{hammers}")})
    made.change("studio.yaml", "  people: 12\n", "  people: 12\n  teacher's piece: no\n")
    seats = (table for table, many in zip("ABC", tables, strict=False) for _ in range(many))
    held = made.held(*(f"{i},sounding-bracelet,,,,{table}" for i, table in enumerate(seats)), printed=False)
    rows = [row for row in of(held.rows("tables"), "brass-hammer") if row["table"] != "teacher"]
    assert {(row["table"], row["amount"]) for row in rows} == stand
    assert sum(int(row["amount"]) for row in rows) == hammers


def test_a_public_folder_is_refused(bench: Callable[..., Bench]) -> None:
    from click.testing import CliRunner  # noqa: PLC0415

    from sheetgen.cli import main  # noqa: PLC0415

    made = bench("tideline-band")
    args: list[Any] = ["class", str(made.root / "none.csv"), "--library", str(made.root), "--private"]
    result = CliRunner().invoke(main, [*args, str(made.root / "projects" / "in")])
    assert result.exit_code == USAGE
    assert "a folder beside build and projects" in result.output


def test_the_kiln_is_fired_for_all_at_once(rings: Held) -> None:
    """A pack of six pieces of fibre blanket does 60 firings: one for the class, and not one for each of its 8 sets."""
    [row] = of(rings.rows("buy"), "fibre-blanket")
    assert row["needed"] == "0.1"


@pytest.mark.parametrize(("pupils", "firings"), [(7, "1"), (8, "2")])
def test_the_teachers_piece_is_fired_and_a_spare_set_is_not(
    pupils: int, firings: str, bench: Callable[..., Bench]
) -> None:
    """Eight rings lie in a box of carbon: seven pupils' and the teacher's are one load, with one pupil more two."""
    made = bench("tideline-band")
    film = "    price: 2.40 EUR\n    shop: Dulsebank Supplies\n    a pack does: "
    made.change("stock/consumables.yaml", f"{film}60 kits", f"{film}1 firings")
    held = made.held(*(f'{i},tideline-band,"Sterling clay, US 7",,,1' for i in range(pupils)), printed=False)
    assert held.code == WELL, held.said
    [row] = of(held.rows("buy"), "cling-film")
    assert row["packs"] == firings
    more = f"for the teacher’s piece the kiln is fired once more than for the {pupils} of the timetable\n"
    assert (more in held.said) == (firings == "2")


# Handouts of what is chosen


CHOSEN = "tideline-band,US 7,size=US 7½;plug=ring-plug-us-7-half,,1"


@pytest.fixture(scope="module")
def chosen(bench: Callable[..., Bench]) -> Held:
    """Two whose finger has no version, one who chooses what is another version, one who makes the band as it is."""
    lines = (f"Bo Tern,{CHOSEN}", f"Nell Auk,{CHOSEN}", "Ida Knot,tideline-band,US 7,size=US 9,,1")
    return bench("tideline-band").held(*lines, "Odo Marsh,tideline-band,US 8,,,1")


HALF = "tideline-band-plug-firing-plug-us-7-half-size-us-7-half"


def test_a_choice_that_no_version_has_is_printed_once_for_whoever_makes_it(chosen: Held) -> None:
    """Of a size that is another version there is none, nor of a version as it is: those are published."""
    assert chosen.code == WELL, chosen.said
    begin = ("handout", "bench-card", "templates")
    found = sorted(path.name for path in chosen.folder.iterdir() if path.name.startswith(begin))
    assert found == sorted(f"{sheet}-{HALF}-a4.pdf" for sheet in begin)


def test_the_handout_of_a_choice_says_what_was_chosen_and_nothing_of_bags_or_a_kit(chosen: Held) -> None:
    """The plug of the finger's size stands in its list, by its own name."""
    pages = " ".join(chosen.pages(f"handout-{HALF}"))
    assert "Tideline band plug: firing plug US 7½, size US 7½" in pages
    assert "US 7 " not in pages.replace("\N{NO-BREAK SPACE}", " "), "the size of the version, which it is not"
    assert "Firing plug US 7½" in pages
    assert "From your bench" not in pages
    assert "kit," not in pages
    assert "the bag" not in pages.lower()
    assert not [name for name in ("Bo", "Tern", "Nell") if f" {name} " in pages]


def test_the_handout_of_a_choice_tells_a_class_who_fires(bench: Callable[..., Bench]) -> None:
    """A bookmark of silver is a first piece: its teacher fires it. Whoever works alone with a kit is told otherwise."""
    held = bench("sedge-bookmark").held("Bo Tern,sedge-bookmark,,drop=45 mm,,1")
    [handout] = held.folder.glob("handout-*")
    assert "In a class the teacher does this" in " ".join(held.pages(handout.name.removesuffix("-a4.pdf")))


def test_the_handout_of_a_choice_has_the_colours_that_were_chosen(bench: Callable[..., Bench]) -> None:
    """Grey sea is 7 clear to 5 smoke: of ten seats 5.83 and 4.17, so 6 and 4, and one of each to spare."""
    held = bench("buoy-drops").held("Bo Tern,buoy-drops,,height=20 mm,grey sea,1")
    [handout] = held.folder.glob("handout-*")
    words = " ".join(held.pages(handout.name.removesuffix("-a4.pdf")))
    assert "height 20 mm (else as Silver, short), grey sea." in words
    assert "6 + 1 4 + 1" in words
    assert "Foiled stone PP 18, smoke" in words


def test_the_copies_that_are_told_are_those_that_the_pick_list_counts(chosen: Held) -> None:
    """Two pupils, the teacher's piece and the spare set make US 7½: four of each sheet."""
    assert "print 4 × each of handout, bench card and templates of Tideline band, plug: firing plug " in chosen.said
    assert f"…-{HALF}-….pdf" in chosen.said
    sheets = "each of handout, bench card and templates of Tideline band"
    for size in ("US 8", "US 9"):
        folder = chosen.folder.parents[2] / "build" / "tideline-band" / size.lower().replace(" ", "-")
        assert f"print 1 × {sheets}, {size}: in {folder}, revision 2\n" in chosen.said
    paper = {(row["name"], row["choices"]): row["together"] for row in chosen.rows("pick") if row["station"] == "paper"}
    half = "plug: firing plug US 7½, size US 7½"
    assert {name: paper[name, half] for name in ("Handout", "Bench card", "Templates")} == dict.fromkeys(
        ("Handout", "Bench card", "Templates"), "4"
    )


def test_it_is_told_to_publish_first_unless_the_sheets_stand_as_the_design_is_now(bench: Callable[..., Bench]) -> None:
    """Never published; published; a word edited since; published, but one sheet is gone."""
    here = bench("tideline-band")

    def told() -> list[str]:
        held = here.held("Odo Marsh,tideline-band,US 8,,,1", printed=False)
        return [line for line in held.said.splitlines() if "sheetgen publish" in line]

    def publish() -> None:
        result = CliRunner().invoke(main, ["publish", "--library", str(here.root)])
        assert result.exit_code == WELL, result.output

    assert told() == ["first `sheetgen publish tideline-band`: none of it is published"]
    publish()
    assert told() == []
    here.change("tideline-band/project.yaml", "Measure the fingers", "Measure all fingers")
    other = ["first `sheetgen publish tideline-band`: what is published is not as its files are now"]
    assert told() == other
    publish()
    assert told() == []
    (here.root / "build" / "tideline-band" / "us-8" / "handout-a4.pdf").unlink()
    assert told() == other


def test_a_second_list_of_the_same_name_does_not_take_the_folder_of_the_first(bench: Callable[..., Bench]) -> None:
    """Two classes on tuesdays, each list in a folder of its own; once the first is gone its folder is free."""
    here = bench("tideline-band")
    lines = {"north": "Odo Marsh,tideline-band,US 8,,,1\n", "south": "Ida Knot,tideline-band,US 7,,,1\n"}
    tables = [here.root / where / "tuesday.csv" for where in lines]
    for table, line in zip(tables, lines.values(), strict=True):
        table.parent.mkdir()
        table.write_text("name,design,version,choices,colourway,table\n" + line, "utf-8")

    def made(table: Path) -> Any:
        with patch("sheetgen.runs.class_list.printed", return_value=[]):
            return CliRunner().invoke(main, ["class", str(table), "--library", str(here.root)])

    folder = here.root / "private" / "class" / "tuesday"
    assert made(tables[0]).exit_code == made(tables[0]).exit_code == WELL
    before = {path.name: path.read_bytes() for path in folder.iterdir()}
    second = made(tables[1])
    assert second.exit_code == TROUBLES
    assert f"{folder} holds the class of another list of this name, {tables[0]}" in second.stderr
    assert "call one of the two lists otherwise" in second.stderr
    assert {path.name: path.read_bytes() for path in folder.iterdir()} == before
    tables[0].unlink()
    assert made(tables[1]).exit_code == WELL


def test_handouts_of_what_another_evening_chose_go(chosen: Held) -> None:
    from tests.classes.conftest import Bench  # noqa: PLC0415

    assert list(chosen.folder.glob("handout-*"))
    Bench(chosen.folder.parents[2]).held("Odo Marsh,tideline-band,US 8,,,1", printed=False)
    assert not [path for begin in ("handout", "bench-card", "templates") for path in chosen.folder.glob(f"{begin}-*")]


def test_a_fault_of_the_stock_is_told_once_at_its_own_line_and_not_for_each_who_makes_it(
    bench: Callable[..., Bench],
) -> None:
    here = bench("tideline-band", "buoy-drops")
    here.change("stock/clays.yaml", "    wet density: ", "    wet density: [3] # ")
    found = here.held("Wren,tideline-band,US 8,,,", "Odo,tideline-band,US 7,,,", "Ida,buoy-drops,,,,", printed=False)
    assert found.code == TROUBLES
    assert [line.partition(": error: ")[2] for line in found.said.splitlines() if ": error: " in line] == [
        "'wet density' wants plain words or a number"
    ]
