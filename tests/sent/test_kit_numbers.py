"""A kit's fingerprint, and who is written to: for what its handout, bench card, templates, card and label print."""

from __future__ import annotations

import json
import re
from collections import Counter
from typing import TYPE_CHECKING, Any

import pytest

from sheetgen.draw.templates import draw
from sheetgen.kits.coded import kept_of_kit
from sheetgen.kits.contents import contents
from sheetgen.kits.packed import packed
from sheetgen.kits.run import taken
from sheetgen.kits.taken import Kits
from sheetgen.model.fingerprint import LISTS
from sheetgen.model.printed import for_the_maker
from sheetgen.render.handout import Sheets
from sheetgen.render.kit_sheets import out_of_class
from sheetgen.render.marks import Marks
from tests.unfolded import unfolded

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

pytestmark = pytest.mark.usefixtures("quick")
PENDANT, DROPS, CLAYS, OTHERS = "pendant/project.yaml", "drops/project.yaml", "stock/clays.yaml", "stock/others.yaml"
SMOKE = "    name: Glass stone, 2 mm, smoke\n"
PACKS = "packs: [{holds: 25 g, price: 38 EUR}, {holds: 50 g, price: 70 EUR}]\n    given out: sealed\n"
PLAIN = str.maketrans({"\u00a0": " ", "\u202f": "", "\u2060": ""})


@pytest.fixture
def told(run: Any, tmp_path: Path) -> Callable[[], list[str]]:
    """What `changes` says, line by line."""

    def says() -> list[str]:
        return unfolded(run("changes", "--private", str(tmp_path / "private")).stdout.splitlines())

    return says


@pytest.fixture
def first(told: Callable[[], list[str]]) -> Callable[[], str]:
    """The first line of it: the orders to write to."""
    return lambda: told()[0]


def test_one_more_to_spare_of_a_colour_is_told_to_who_has_that_colour(
    library: Any, sends: Any, told: Any, line: Any
) -> None:
    """2 × 10 stones in Long, half of them smoke: 10 and 1 by the allowance, 10 and 2 by 1 per 5."""
    library.publish()
    sends(line("Q-2601", "drops", "Long", colourway="grey sea"), line("Q-2602", "drops", "Long"))
    assert told()[0].startswith("write to nobody")
    library.change(OTHERS, SMOKE, f"{SMOKE}    spares: 1 per 5\n")
    lines = told()
    assert lines[0] == "write to: Q-2601"
    assert "      Glass stone, 2 mm, smoke: was 10+1, is 10+2" in lines


def test_a_sealed_pack_of_another_size_is_told_and_one_at_another_price_is_not(
    library: Any, sends: Any, first: Any, line: Any
) -> None:
    library.change(CLAYS, "    wet density: 7 g/cm³", f"    {PACKS}    wet density: 7 g/cm³")
    library.publish()
    sends(line("Q-2601", "pendant"), line("Q-2602", "link"))
    assert first().startswith("write to nobody")
    library.change(CLAYS, "price: 38 EUR", "price: 44 EUR")
    assert first().startswith("write to nobody")
    library.change(CLAYS, "holds: 25 g", "holds: 30 g")
    assert first() == "write to: Q-2601"


def test_a_kit_that_a_run_gave_another_size_of_pack_is_right_as_long_as_there_is_one(
    library: Any, sends: Any, first: Any, line: Any
) -> None:
    """By itself Long takes 25 g; where a run must take ten of those, all its kits are given 50 g."""
    library.change(CLAYS, "    wet density: 7 g/cm³", f"    {PACKS}    wet density: 7 g/cm³")
    library.change(CLAYS, "price: 38 EUR}", "price: 38 EUR, at least: 3}")
    library.publish()
    sends(line("Q-2601", "drops", "Long"))
    sends(line("Q-2602", "drops", "Long", many=4), day=2)
    assert first().startswith("write to nobody: no order of 2")
    library.change(CLAYS, "holds: 50 g", "holds: 60 g")
    assert first() == "write to: Q-2601"


def test_who_does_without_a_part_is_held_against_what_those_sheets_say(
    library: Any, sends: Any, first: Any, line: Any, tmp_path: Path
) -> None:
    library.publish()
    sends(line("Q-2601", "pendant", leave_out=frozenset({"silver"})), line("Q-2602", "pendant"))
    assert ",silver,,1," in (tmp_path / "private/sent.csv").read_text("utf-8")
    assert first().startswith("write to nobody")
    library.change(CLAYS, "allowance: 15 %", "allowance: 60 %")
    assert first() == "write to: Q-2601, Q-2602"


@pytest.mark.parametrize("where", ["nowhere", "card", "text", "show"])
def test_a_figure_that_stands_in_the_workings_alone_names_nobody_and_one_on_a_sheet_does(
    library: Any, sends: Any, told: Any, line: Any, where: str
) -> None:
    printed = {
        "card": "    on the card: [margin]\n",
        "text": "    expect: '{{ margin }} is left.'\n",
        "show": "    show: [margin]\n",
    }
    library.change(DROPS, "  class clay: 12 * body.clay_mass", "  class clay: 12 * body.clay_mass\n  margin: 7.7 mm")
    old = "  - title: Open the seats\n"
    library.change(DROPS, old, old + printed.get(where, ""))
    library.publish()
    sends(line("Q-2601", "drops"))
    library.change(DROPS, "  margin: 7.7 mm", "  margin: 7.9 mm")
    lines = told()
    nobody = "write to nobody: no order of 1 holds another sheet than is printed now"
    assert lines[0] == (nobody if where == "nowhere" else "write to: Q-2601")
    assert "      Margin (margin): was 7.7 mm, is 7.9 mm" in lines  # it has moved all the same


def test_a_size_that_only_the_template_tells_is_for_who_cuts_by_it(library: Any) -> None:
    library.change(PENDANT, "Cut a disc of {{ plate.wet_disc }}.", "Cut it by its template.")
    worked = library.worked("pendant")
    keys = {one.key for one in for_the_maker(worked, worked.main)}
    assert "plate.wet_disc" in keys
    assert not {"plate.clay_mass", "plate.fired_mass"} & keys


def test_a_ledger_that_does_not_know_what_a_pupil_reads_names_all_and_says_so(
    library: Any, sends: Any, run: Any, line: Any, tmp_path: Path
) -> None:
    library.publish("drops")
    sends(line("Q-2601", "drops"))
    path = library.path("drops/ledger/revision-1.json")
    told = json.loads(path.read_text("utf-8"))
    for version in told["versions"].values():
        for key in ("the teacher's alone", "kit", "kits"):
            del version[key]
    path.write_text(json.dumps(told), "utf-8")
    code, private = told["versions"]["main"]["fingerprint"], tmp_path / "private"
    sent = private / "sent.csv"
    sent.write_text(re.sub(r",\w{6},1(?=\r?$)", f",{code},1", sent.read_text("utf-8"), flags=re.MULTILINE), "utf-8")
    assert "write to nobody" in run("changes", "--private", str(private)).stdout
    library.change(DROPS, "12 * body.clay_mass", "11 * body.clay_mass")
    lines = unfolded(run("changes", "--private", str(private)).stdout.splitlines())
    assert lines[0] == "write to: Q-2601"
    assert "1 number differs; which of them its sheets print, its ledger does not tell" in lines[1]


@pytest.fixture(scope="module")
def kinds(demo: Any) -> list[Kits]:
    """A kit of every version of the demonstration, in each of its colours."""
    each = [(worked, version) for worked in demo.check().worked for version in worked.versions.values()]
    return [
        Kits(worked, version, 3, (), way, posted=True)
        for worked, version in each
        for way in (None, *version.colourways)
    ]


def plain(words: str) -> str:
    return " ".join(re.sub(r"<[^>]*>", "", words).translate(PLAIN).split())


def test_the_lists_that_a_fingerprint_counts_are_what_the_handout_prints(kinds: list[Kits]) -> None:
    for kits in kinds:
        held = contents(kits, taken([kits]))
        drawn = draw(kits.worked, kits.version, ())
        handout = Sheets(kits.worked, out_of_class(kits.version), drawn, packed(kits, held)).handout(Marks(), ())
        rows = [one for bag in handout.bags for one in bag.things] + list(handout.needs)
        printed = Counter(plain(one.amount) for row in rows for one in row.sizes or (row,) if one.amount)
        printed += Counter(m[1] for one in rows if (m := re.search(r"about (.*) is used", plain(one.detail))))
        tools = {tool.item.id for tool in kits.version.tools if tool.sizes}
        counted = Counter(
            one.told
            for one in kept_of_kit(kits, "", held).numbers
            if one.group == LISTS and one.key not in tools and one.told != "as needed"
        )
        assert counted == printed, kits.named


def test_every_number_that_a_sheet_of_the_demonstration_marks_is_counted_for_who_makes_it(kinds: list[Kits]) -> None:
    for kits in (one for one in kinds if one.colourway is None):
        marks = Marks()
        sheets = Sheets(kits.worked, kits.version, draw(kits.worked, kits.version, ()))
        sheets.handout(marks, ())
        sheets.card(marks)
        steps = (one for one in (*marks.must, *marks.may) if one.step and one.id.startswith("n"))
        printed = {close(one.words) for one in steps if not one.what.startswith("the unit of ")}
        numbers = for_the_maker(kits.worked, kits.version)
        known = {close(part) for one in numbers for part in (one.told, one.told.rpartition(" ")[0])}
        assert printed <= known, kits.named


def close(words: str) -> str:
    """A range without the spaces round its dash, and what is counted without those round its plus."""
    return re.sub(r"\s*([–+])\s*", r"\1", plain(words))
