"""What a run of orders does not make: lines that are wrong, folders that are public, and nothing half."""

from __future__ import annotations

import re
from collections import Counter
from pathlib import Path
from typing import Any

import pytest

WELL, TROUBLES, USAGE = 0, 1, 2
CHAIN = "Q-1,,towline-bracelet,,1,,,,,,\n"
WRITTEN = sorted((Path(__file__).parents[1] / "orders" / "wrong").iterdir())
WARNED = {"many-kits", "twice", "spelt-two-ways", "unknown-columns"}  # right by themselves, and hardly meant
TOLD = re.compile(r"^(\S+):(\d+):(\d+): (error|warning): (.*)$", re.MULTILINE)
pytestmark = pytest.mark.usefixtures("no_paper")


def snapshot(folder: Path) -> dict[str, bytes]:
    return {str(path.relative_to(folder)): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def test_an_order_with_a_bad_line_is_held_back_whole_and_the_others_are_made(bench: Any) -> None:
    told = bench.orders(f"{CHAIN}Q-2,,towline-bracelet,,1,,,,,,\nQ-2,,tideline-band,US 10,1,,,,,,\n")
    assert told.code == TROUBLES
    assert "season.csv:4:20: error: order Q-2: tideline-band has no version 'US 10'; known: US 7, US 5" in told.said
    assert "held back, since something of it is in trouble: Q-2\n" in told.said
    for name in ("check", "kit-cards", "labels"):
        assert {row["order"] for row in bench.rows(name)} == {"Q-1"}
    assert [row["together"] for row in bench.rows("pick") if row["station"] == "wire"] == ["490"]
    assert [row["order"] for row in bench.sent] == ["Q-1"]


def test_a_choice_that_breaks_a_check_is_told_at_its_word_in_the_table(bench: Any) -> None:
    """US 14 is 23 mm inside."""
    told = bench.orders("Q-1,,tideline-band,,1,size=US 14,,,,,\n", "--lists-alone")
    assert told.code == TROUBLES
    [(name, line, column, _, said)] = [one for one in TOLD.findall(told.said) if one[3] == "error"]
    assert (name, line, column) == ("season.csv", "2", "28")
    assert said == "order Q-1: with size US 14 it does not pass: No mandrel of ours is so thick."
    assert not bench.private.exists() or not snapshot(bench.private)


def test_a_version_whose_numbers_moved_under_one_revision_is_not_sent(bench: Any, quick: None) -> None:
    """Nobody could say afterwards which sheet a customer holds. A wider band is told at the word; the wire is made."""
    assert quick is None
    assert not bench.library.publish("tideline-band", "towline-bracelet").troubles.errors
    bench.library.change("tideline-band/project.yaml", "width: 5 mm", "width: 6 mm")
    table = f"{CHAIN}Q-2,,tideline-band,US 8,1,,,,,,\n"
    told = bench.orders(table, "--lists-alone")
    assert told.code == TROUBLES
    assert (
        "season.csv:3:20: error: order Q-2: Tideline band, US 8: its numbers are no longer those of revision 1"
        in told.said
    )
    assert "write its next revision, and publish; sheetgen changes tideline-band" in told.said
    assert {row["order"] for row in bench.rows("labels")} == {"Q-1"}
    bench.library.change("tideline-band/project.yaml", "revision: 1", "revision: 2")
    assert bench.orders(table, "--lists-alone").code == WELL
    assert {row["order"] for row in bench.rows("labels")} == {"Q-1", "Q-2"}


def test_a_kit_of_which_only_the_colours_or_the_sealed_packs_moved_is_not_sent(bench: Any, quick: None) -> None:
    """Its card prints both. The version itself prints no other number, and its sheets stay those of the revision."""
    assert quick is None
    library = bench.library
    library.change("stock/clays.yaml", "    pack: 25 g\n", "    pack: 25 g\n    given out: sealed\n")
    assert not library.publish("buoy-drops").troubles.errors
    table = "".join(f"Q-{n},,buoy-drops,,1,,{way},,,,\n" for n, way in enumerate(("", "Grey  Sea"), 1))
    assert bench.orders(table, "--lists-alone").code == WELL
    library.change("buoy-drops/project.yaml", "3 glass-2 : 1 glass-2-smoke", "1 glass-2 : 1 glass-2-smoke")
    told = bench.orders(table, "--lists-alone")
    assert told.code == TROUBLES
    errors = [one[1:] for one in TOLD.findall(told.said) if one[3] == "error"]
    moved = "its numbers are no longer those of revision 1"
    assert errors == [("3", "21", "error", f"order Q-2: Buoy drops, Long, grey sea: {moved}")]
    assert {row["order"] for row in bench.rows("labels")} == {"Q-1"}
    [outcome] = [library.publish("buoy-drops")]
    [warned] = [one for one in outcome.troubles if "was published with other numbers" in one.message]
    assert "in Long, grey sea: Glass stone, 2 mm" in warned.message
    assert "revision 1, changed" not in warned.help
    library.change("stock/clays.yaml", "    pack: 25 g\n", "    pack: 20 g\n")
    told = bench.orders(table, "--lists-alone")
    assert {one[4] for one in TOLD.findall(told.said) if one[3] == "error"} == {
        f"order Q-1: Buoy drops, Long, in a kit: {moved}", f"order Q-2: Buoy drops, Long, grey sea: {moved}",
    }  # fmt: skip
    library.change("buoy-drops/project.yaml", "revision: 1", "revision: 2")
    assert bench.orders(table, "--lists-alone").code == WELL


@pytest.mark.parametrize("words", [(), ("--lists-alone",)])
def test_a_run_that_would_fill_a_room_is_told_at_once_and_nothing_is_made(
    bench: Any, words: tuple[str, ...], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Ten orders of ten thousand are 800,000 pages in 110 MB, and print; more is a slip of the hand, or two tables."""
    monkeypatch.setattr("sheetgen.runs.orders._made", lambda *_: pytest.fail("something is made"))
    lines = (f"Q-{n},,towline-bracelet,,{10_000 - n},,,,,,\n" for n in range(11))
    told = bench.orders("".join(lines), *words)
    assert told.code == TROUBLES
    assert "error: 109945 kits and parts in one table, of which order Q-0 has 10000\n" in told.said
    assert "a run is of up to 100000: mend the count, or part the table and run each part" in told.said
    assert not bench.private.exists() or not [name for name in snapshot(bench.private) if "orders" in name]


def test_what_lies_in_no_bag_and_is_left_out_is_warned_of_for_another_thing_may_be_meant(bench: Any) -> None:
    told = bench.orders("Q-1,,buoy-drops,,1,,,carbon,,,\nQ-2,,buoy-drops,,1,,,B stones,,,\n", "--lists-alone")
    assert told.code == WELL, told.said
    assert (
        "season.csv:2:22: warning: order Q-1: 'carbon' lies in no bag of this kit: it is not sent anyway" in told.said
    )
    assert told.said.count("not sent anyway") == 1


def test_a_line_twice_is_warned_of_and_both_are_made(bench: Any) -> None:
    told = bench.orders(CHAIN * 2, "--lists-alone")
    assert told.code == WELL
    assert "season.csv:3:1: warning: order Q-1: the line is the same as line 2; both are made" in told.said
    assert [row["bags"] for row in bench.rows("pick") if row["item"] == "handout"] == ["2"]
    assert len(bench.rows("labels")) == 2


@pytest.mark.parametrize("public", [".", "projects", "projects/private", "build", "build/private"])
def test_a_folder_that_is_handed_on_or_published_is_refused(bench: Any, public: str) -> None:
    before = snapshot(bench.library.root)
    told = bench.into(bench.library.root / public).orders(CHAIN)
    assert told.code == USAGE
    assert "a folder beside build and projects, such as --private private" in told.said
    assert snapshot(bench.library.root).keys() - before.keys() == {"season.csv"}


def test_a_private_folder_that_others_may_read_is_closed_to_them(bench: Any) -> None:
    bench.private.mkdir(mode=0o755)
    assert bench.orders(CHAIN, "--lists-alone").code == WELL
    assert bench.private.stat().st_mode & 0o077 == 0


@pytest.mark.parametrize(
    ("file", "old", "new", "says"),
    [
        ("stock/others.yaml", "pack: 1 m\n", "pack: 40 cm\n", "490 mm"),
        ("studio.yaml", "size: 64 × 34 mm", "size: 164 × 34 mm", "A4 is 210 mm wide"),
    ],
)
def test_where_something_cannot_be_made_nothing_is_written_and_what_was_there_stays(
    bench: Any, file: str, old: str, new: str, says: str
) -> None:
    """A piece that comes out of no spool; labels that do not lie on the paper."""
    assert bench.orders(CHAIN).code == WELL
    before = snapshot(bench.private)
    bench.library.change(file, old, new)
    told = bench.orders(f"{CHAIN}Q-2,,towline-bracelet,,1,,,,,,\n")
    assert told.code == TROUBLES
    assert says in told.said
    assert snapshot(bench.private) == before


@pytest.mark.parametrize("template", ["label.html.j2", "kit-card-head.html.j2", "handout.html.j2"])
def test_a_theme_that_cannot_be_used_is_told_at_its_file_and_nothing_is_written(bench: Any, template: str) -> None:
    theme = bench.library.root / "themes" / "plain"
    theme.mkdir(parents=True)
    (theme / template).write_text("{{ nothing_of_this_name.at_all }}", "utf-8")
    told = bench.orders("Q-1,Ida Invented,towline-bracelet,,1,,,,,,\n")
    assert told.code == TROUBLES
    assert template in told.said
    assert "Ida" not in told.said
    assert not bench.private.exists() or not snapshot(bench.private)


@pytest.fixture(scope="module")
def studio(tmp_path_factory: pytest.TempPathFactory, makes_bench: Any) -> Any:
    return makes_bench(tmp_path_factory.mktemp("as-written"))


@pytest.mark.parametrize("path", WRITTEN, ids=lambda path: path.stem)
def test_a_wrong_table_is_told_line_by_line_once_and_no_part_of_an_order_in_trouble_is_made(
    studio: Any, path: Path
) -> None:
    told = studio.orders(path, "--lists-alone")
    troubles = TOLD.findall(told.said)
    assert troubles
    errors = [(name, line, column, said) for name, line, column, severe, said in troubles if severe == "error"]
    assert told.code == (WELL if path.stem in WARNED else TROUBLES) == (TROUBLES if errors else WELL)
    assert all(name == path.name for name, *_ in errors)
    assert max(Counter(errors).values(), default=1) == 1
    in_trouble = {number for *_, said in errors for number in re.findall(r"^order (\S+):", said)}
    lists = studio.folder(path.stem)
    held = set(re.findall(r"^held back, .*: (.*)$", told.said, re.MULTILINE))
    assert in_trouble <= set(", ".join(held).split(", ")), "an order in trouble is named as held back"
    if (lists / "labels.csv").exists():
        for name in ("kit-cards", "labels"):
            assert not in_trouble & {row["order"] for row in studio.rows(name, path.stem)}
        of_clay = [row for row in studio.rows("kit-cards", path.stem) if row["item"] == "silver"]
        picked = [row for row in studio.rows("pick", path.stem) if row["item"] == "silver"]
        assert sum(float(row["amount"]) for row in of_clay) == sum(float(row["together"]) for row in picked)
    else:
        assert not lists.exists()
    assert not studio.sent
