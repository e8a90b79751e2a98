"""`changes` names the orders that hold another sheet than is printed now, and no other."""

from __future__ import annotations

import csv
import io
import itertools
import json
import re
import stat
from typing import TYPE_CHECKING, Any

import openpyxl
import pytest

from sheetgen.base.trouble import CannotBe
from sheetgen.kits.sent import sent_of
from sheetgen.telling import figures_as_data
from tests.unfolded import unfolded

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

pytestmark = pytest.mark.usefixtures("quick")
PENDANT, DROPS = "pendant/project.yaml", "drops/project.yaml"
CLEAR = "    height: 1.5 mm\n    kiln: no\n    allowance: 5 %\n"
CLASS = 'class: {people: 6, evenings: ["18:30-21:30", "18:30-21:30"]}\n'


@pytest.fixture
def private(tmp_path: Path) -> Path:
    return tmp_path / "private"


@pytest.fixture
def told(run: Any, private: Path) -> Callable[..., list[str]]:
    """What `changes` says with the private folder, line by line, each kit and version by itself."""

    def says(*words: str) -> list[str]:
        return unfolded(run("changes", *words, "--private", str(private)).stdout.splitlines())

    return says


def head(lines: list[str]) -> list[str]:
    """The lines on top: the orders, and the kinds of kit below them."""
    end = next((n for n, line in enumerate(lines) if n and not line.startswith(" ")), len(lines))
    return [line for line in lines[:end] if not line.startswith("    ")]


def own_numbers(lines: list[str], order: str) -> list[str]:
    """The numbers right under the kit of an order, with their heads."""
    at = next(n for n, line in enumerate(lines) if line.startswith("  ") and f": {order} (" in line)
    return list(itertools.takewhile(lambda line: line.startswith("    "), lines[at + 1 :]))


def test_an_order_with_another_sheet_is_named_on_top_and_one_with_the_right_sheet_is_not(
    library: Any, sends: Any, told: Any, line: Any
) -> None:
    library.publish()
    sends(
        line("Q-2601", "link"),
        line("Q-2602", "drops"),
        line("Q-2602", "drops", "Long"),
        line("Q-2603", "drops", "Long"),
    )
    assert told()[0] == "write to nobody: no order of 3 holds another sheet than is printed now"
    library.change(DROPS, "    height: 30 mm", "    height: 28 mm")
    first, second = head(told())
    assert first == "write to: Q-2602, Q-2603"
    assert re.fullmatch(
        r"  drops, Long: Q-2602 \((\w{6}), 2026-12-01\), Q-2603 \(\1, 2026-12-01\): "
        r"is now \w{6}; \d+ numbers differ",
        second,
    )


def test_who_was_sent_the_right_sheet_since_is_not_named_any_more(
    library: Any, sends: Any, told: Any, line: Any
) -> None:
    library.publish()
    sends(line("Q-2601", "pendant"), line("Q-2602", "pendant"))
    library.change(PENDANT, "width: 20 mm", "width: 24 mm")
    library.change(PENDANT, "revision: 1", "revision: 2")
    sends(line("Q-2602", "pendant"), day=4)
    assert told()[0] == "write to: Q-2601"


def test_a_kit_with_choices_of_its_own_is_worked_again_with_them_and_its_numbers_are_told(
    library: Any, sends: Any, told: Any, line: Any, private: Path
) -> None:
    """What differs is asked of figures.json before and after, with the same choices."""
    library.publish()
    sends(line("Q-2601", "pendant", choices={"width": "26 mm"}), line("Q-2602", "pendant"))
    assert "write to nobody" in told()[0]
    before = printed(library.check("pendant", width="26 mm"))
    library.change(PENDANT, "width: 20 mm", "width: 21 mm")  # no matter to who has chosen another
    assert head(told())[0] == "write to: Q-2602"
    library.change("stock/clays.yaml", "shrinkage: 8-10 %", "shrinkage: 9-11 %")
    after = printed(library.check("pendant", width="26 mm"))
    lines = told()
    assert head(lines)[0] == "write to: Q-2601, Q-2602"
    at = next(
        n for n, line in enumerate(lines) if line.startswith("  pendant, width=26 mm (else as As designed): Q-2601 (")
    )
    own = lines[at + 1 :][: next(n for n, line in enumerate(lines[at + 1 :]) if not line.startswith("    "))]
    rows = {m[1]: (m[2], m[3]) for line in own if (m := re.fullmatch(r" +.* \(([\w.]+)\): was (.+), is (.+)", line))}
    differ = {key: (was, after[key]) for key, was in before.items() if was != after[key]}
    for_the_teacher = {"plate.clay_mass", "plate.fired_mass"}  # how much one plate weighs stands in the workings alone
    assert rows == {key: both for key, both in differ.items() if key not in for_the_teacher}
    assert for_the_teacher <= differ.keys()
    assert rows["plate.wet_disc"] == ("28.6 mm", "28.9 mm")  # 26 ÷ 0.91, and 26 ÷ 0.9
    [kept] = (private / "sent").iterdir()
    assert stat.S_IMODE(kept.stat().st_mode) == 0o600


def printed(outcome: Any) -> dict[str, str]:
    [data] = json.loads(json.dumps(figures_as_data(outcome)))
    each = data["versions"]["main"].items()
    return {
        key: f"{one['printed']['words']} {one['printed']['unit']}".strip().replace("\u00a0", " ") for key, one in each
    }


def test_a_colourway_with_other_counts_is_told_to_those_who_have_it_and_to_nobody_else(
    library: Any, sends: Any, told: Any, line: Any
) -> None:
    library.publish()
    sends(
        line("Q-2601", "drops", "Long", colourway="grey sea"),
        line("Q-2602", "drops", "Long", colourway="dusk"),
        line("Q-2603", "drops", "Long"),
    )
    assert "write to nobody" in told()[0]
    library.change(DROPS, '"1 glass-2 : 2 glass-2-smoke"', '"2 glass-2 : 1 glass-2-smoke"')
    lines = told()
    assert head(lines)[0] == "write to: Q-2602"
    assert "  drops, Long, dusk: Q-2602 (" in head(lines)[1]
    rows = [line.strip() for line in lines if "Glass stone, 2 mm" in line]
    was, now = (re.findall(r"was (\d+)\+1, is (\d+)\+1", line)[0] for line in rows[:2])
    assert was == now[::-1]  # what the one has less the other has more


def test_numbers_are_below_only_where_just_those_of_the_order_stand_there_under_its_name(
    library: Any, sends: Any, told: Any, line: Any, private: Path
) -> None:
    """Of dusk the two stones move, and a block is called so; with the clay that block does not tell all of its kit."""
    library.publish()
    sends(line("Q-2601", "drops", "Long", colourway="grey sea"), line("Q-2602", "drops", "Long", colourway="dusk"))
    library.change(DROPS, '"1 glass-2 : 2 glass-2-smoke"', '"2 glass-2 : 1 glass-2-smoke"')
    lines = told("drops")
    [_, kit] = head(lines)
    assert kit.endswith("; 2 numbers differ, as below")
    assert not own_numbers(lines, "Q-2602")
    at = next(n for n, line in enumerate(lines) if line.startswith("  Long, dusk: "))
    below = [
        line for line in itertools.takewhile(lambda line: line.startswith("    "), lines[at + 1 :]) if ": was" in line
    ]
    assert len(below) == 2
    [person] = rows(private / "changes/drops/write-to.csv")
    assert person["numbers"] == "; ".join(map(str.strip, below))
    library.change(DROPS, "  clay: 20 %", "  clay: 60 %")
    lines = told("drops")
    for order in ("Q-2601", "Q-2602"):
        kit = next(one for one in head(lines)[1:] if f": {order} (" in one)
        own = [one.strip() for one in own_numbers(lines, order) if ": was" in one]
        assert kit.endswith(f"; {len(own)} number{'s differ' if len(own) > 1 else ' differs'}")
        [person] = [one for one in rows(private / "changes/drops/write-to.csv") if one["order"] == order]
        assert person["numbers"] == "; ".join(own)


def test_what_moved_of_a_stone_that_lies_in_no_bag_of_a_colour_is_told_to_nobody_who_has_that_colour(
    library: Any, sends: Any, told: Any, line: Any, private: Path
) -> None:
    """The spares, the pack and the price of the clear stone, of which the smoke kit has none."""
    library.change(DROPS, "  dusk:", "  night: {glass-2-smoke: 100 %}\n  dusk:")
    library.publish()
    sends(line("Q-2601", "drops", "Long", colourway="night"), line("Q-2602", "drops", "Long"))
    library.change("stock/others.yaml", CLEAR, f"{CLEAR}    spares: 1 per 2\n    pack: 10\n    price: 3 EUR\n")
    assert [line for line in told("drops") if "Glass stone, 2 mm:" in line]
    assert told("drops")[0] == "write to: Q-2602"
    library.change(DROPS, "  clay: 20 %", "  clay: 60 %")  # this is in both kits
    lines = told("drops")
    assert head(lines)[0] == "write to: Q-2601, Q-2602"
    assert "      Test silver: " in "\n".join(own_numbers(lines, "Q-2601"))
    assert not [one for one in own_numbers(lines, "Q-2601") if "Glass stone, 2 mm:" in one]
    [plain] = [one for one in head(lines) if one.startswith("  drops, Long: Q-2602 (")]
    assert plain.endswith(", as below")
    found = rows(private / "changes/drops/changes.csv")
    assert {row["orders"] for row in found if "Glass stone, 2 mm" in row["figure"]} == {"Q-2602", ""}
    [clay] = [row["orders"] for row in found if row["version"] == "Long" and row["figure"] == "Test silver"]
    assert clay == "Q-2601; Q-2602"  # both beside one line, and the colour has no lines of its own
    assert not [row for row in found if "night" in row["version"]]


def test_the_hours_of_a_class_are_on_no_sheet_of_a_kit(library: Any, sends: Any, told: Any, line: Any) -> None:
    library.write("studio.yaml", library.path("studio.yaml").read_text("utf-8") + CLASS)
    library.publish()
    sends(line("Q-2601", "pendant"), line("Q-2602", "pendant", choices={"width": "26 mm"}), line("Q-2603", "drops"))
    library.change("studio.yaml", 'people: 6, evenings: ["18:30-21:30"', 'people: 8, evenings: ["17:30-20:30"')
    lines = told("pendant")
    assert lines[0] == "write to nobody: no order of 2 holds another sheet than is printed now"
    assert [line for line in lines if "from: was 18:30, is 17:30" in line]
    assert [line for line in lines if ", for 8: new" in line or ", for 8: was" in line]
    library.change(PENDANT, "width: 20 mm", "width: 24 mm")
    lines = told("pendant")
    assert lines[0] == "write to: Q-2601"
    assert own_numbers(lines, "Q-2601")
    assert not [line for line in own_numbers(lines, "Q-2601") if "18:30" in line or ", for 8" in line]


def test_a_code_sent_long_ago_is_held_against_its_own_ledger(library: Any, sends: Any, told: Any, line: Any) -> None:
    """20 mm ÷ 0.91 is 22, 24 mm is 26.4, and 25 mm is 27.5."""
    library.publish("pendant")
    sends(line("Q-2601", "pendant"))
    library.change(PENDANT, "width: 20 mm", "width: 24 mm")
    library.change(PENDANT, "revision: 1", "revision: 2")
    library.publish("pendant")
    sends(line("Q-2602", "pendant"), day=2)
    library.change(PENDANT, "width: 24 mm", "width: 25 mm")
    library.change(PENDANT, "revision: 2", "revision: 3")
    lines = told("pendant")
    for order, was in ("Q-2601", "22 mm"), ("Q-2602", "26.4 mm"):
        disc = f"      Plate: disc, cut wet (plate.wet_disc): was {was}, is 27.5 mm"
        assert [line for line in own_numbers(lines, order) if "wet_disc" in line] == [disc]


def test_a_code_that_no_ledger_has_is_told_as_not_known(
    library: Any, sends: Any, told: Any, line: Any, private: Path
) -> None:
    library.publish("pendant")
    sends(line("Q-2601", "pendant"))
    path = private / "sent.csv"
    path.write_text(re.sub(r"\w{6},1\r?$", "K7M3QX,1", path.read_text("utf-8"), flags=re.MULTILINE), "utf-8")
    assert re.search(r"Q-2601 \(K7M3QX, 2026-12-01\): is now \w{6}; no ledger has the numbers of K7M3QX", told()[1])


@pytest.mark.parametrize(
    "change",
    [
        (
            DROPS,
            "- name: Long\n    height: 30 mm",
            "- name: Short\n    height: 18 mm",
            "this version is no longer made",
        ),
        (DROPS, "grey sea:", "grey water:", "this colourway is no longer made"),
        (DROPS, "bore: 8 mm", "bore: 14 mm", "the design no longer passes"),
        (DROPS, "body.inside < 12 mm", "body.inside < 8.5 mm", "no longer passes with these choices: The cap takes"),
        (DROPS, "  bore: 8 mm\n", "  hole: 8 mm\n", "the design no longer passes"),
    ],
)
def test_an_order_for_what_is_no_longer_made_or_does_not_pass_is_named_with_the_reason(
    library: Any, sends: Any, told: Any, line: Any, change: tuple[str, str, str, str]
) -> None:
    library.publish()
    sends(line("Q-2601", "drops", "Long", {"bore": "9 mm"}, "grey sea"), line("Q-2602", "link"))
    library.change(*change[:3])
    first, second = head(told())
    assert first == "write to: Q-2601"
    assert change[3] in second


def test_a_design_that_is_gone_is_told(library: Any, sends: Any, told: Any, line: Any) -> None:
    sends(line("Q-2601", "link"))
    library.path("link/project.yaml").unlink()
    library.path("link").rmdir()
    assert head(told())[1].endswith("there is no design 'link' any more")


def test_a_version_that_is_called_anew_with_the_same_numbers_is_written_to_nobody(
    library: Any, sends: Any, told: Any, line: Any
) -> None:
    library.publish("drops")
    sends(line("Q-2601", "drops", "Long"), line("Q-2602", "drops", "Long", {"bore": "9 mm"}))
    library.change(DROPS, "- name: Long", "- name: Tall")
    assert told("drops")[0].startswith("write to nobody: no order of 2 ")


def test_without_the_list_it_says_what_it_cannot_know(library: Any, run: Any, told: Any, private: Path) -> None:
    library.publish("pendant")
    library.change(PENDANT, "width: 20 mm", "width: 24 mm")
    cannot = "which orders hold another sheet than is printed now cannot be known: there is no list of what was sent"
    assert f"{cannot} ({private / 'sent.csv'})" in told()
    assert cannot in run("changes").output  # of the folder private/ in the library


def test_a_line_that_cannot_be_read_is_told_and_the_others_are_named(
    library: Any, sends: Any, run: Any, line: Any, private: Path
) -> None:
    library.publish("pendant")
    sends(line("Q-2601", "pendant"), line("Q-2602", "pendant"))
    path = private / "sent.csv"
    path.write_text(path.read_text("utf-8").replace("Q-2602,2026-12-01", "Q-2602,12/1/2026"), "utf-8")
    library.change(PENDANT, "width: 20 mm", "width: 24 mm")
    done = run("changes", "pendant", "--private", str(private))
    assert "sent.csv:3:8: error: order Q-2602: '12/1/2026' may be two days" in done.output
    assert "write to: Q-2601\n" in done.output
    assert done.exit_code == 1


def test_the_same_orders_made_again_add_nothing_that_day_and_a_line_the_next(
    sends: Any, line: Any, private: Path
) -> None:
    orders = (line("Q-2601", "pendant"), line("Q-2601", "drops", "Long", colourway="dusk"), line("Q-2602", "link"))
    assert sends(*orders) == 3
    before = (private / "sent.csv").read_bytes()
    assert sends(*orders) == 0
    assert (private / "sent.csv").read_bytes() == before
    assert sends(*orders, day=2) == 3
    assert (private / "sent.csv").read_bytes().startswith(before)


def test_two_lines_of_one_kind_in_an_order_are_one_line_and_a_part_alone_has_no_fingerprint(
    sends: Any, line: Any, private: Path
) -> None:
    sends(line("Q-2601", "link", many=2), line("Q-2601", "link"), line("Q-2602", "drops", only=frozenset({"glass-2"})))
    whole, part = rows(private / "sent.csv")
    assert (whole["order"], whole["design"], whole["count"], whole["only"]) == ("Q-2601", "link", "3", "")
    assert (part["order"], part["only"], part["fingerprint"]) == ("Q-2602", "glass-2", "")


def test_a_part_that_was_sent_alone_is_never_written_to_for_a_sheet(
    library: Any, sends: Any, run: Any, line: Any, private: Path
) -> None:
    library.publish("drops", "pendant")
    sends(line("Q-2601", "pendant"), line("Q-2602", "pendant", only=frozenset({"silver"})))
    library.change(PENDANT, "width: 20 mm", "width: 24 mm")
    assert "write to: Q-2601\n" in run("changes", "pendant", "--private", str(private)).output


def test_no_name_and_no_note_is_in_the_list_or_beside_it(sends: Any, line: Any, private: Path) -> None:
    sends(line("Q-2601", "pendant", choices={"width": "26 mm"}), line("Q-2602", "drops", colourway="dusk"))
    files = [path for path in private.rglob("*") if path.is_file()]
    assert len(files) == 3
    assert not [path for path in files if re.search(rb"Ida|Invented|love", path.read_bytes())]
    assert stat.S_IMODE(private.stat().st_mode) == 0o700


def rows(path: Path) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(path.read_text("utf-8-sig"))))


def test_the_lists_hold_each_number_with_its_edit_and_the_orders_that_have_it_otherwise(
    library: Any, sends: Any, told: Any, line: Any, private: Path
) -> None:
    library.publish()
    sends(line("Q-2601", "pendant"), line("Q-2602", "pendant", choices={"width": "26 mm"}), line("Q-2603", "link"))
    library.change("stock/clays.yaml", "shrinkage: 8-10 %", "shrinkage: 9-11 %")
    told()
    into = private / "changes"
    assert sorted(path.name for path in into.iterdir()) == ["changes.csv", "changes.xlsx", "write-to.csv"]
    assert {stat.S_IMODE(path.stat().st_mode) for path in into.iterdir()} == {0o600}
    found = rows(into / "changes.csv")
    assert list(found[0]) == ["design", "version", "part", "figure", "was", "is", "cause", "orders"]
    discs = [tuple(row.values()) for row in found if "wet_disc" in row["figure"]]
    cause = "stock silver: shrinkage: was 8 to 10 %, usually 9 %, is 9 to 11 %, usually 10 %"
    row = ("Plate", "disc, cut wet (plate.wet_disc)")
    assert discs == [
        ("pendant", "As designed", *row, "22 mm", "22.2 mm", cause, "Q-2601"),
        ("pendant", "width=26 mm (else as As designed)", *row, "28.6 mm", "28.9 mm", cause, "Q-2602"),
    ]
    people = rows(into / "write-to.csv")
    assert [(one["order"], one["design"], one["choices"]) for one in people] == [
        ("Q-2601", "pendant", ""),
        ("Q-2602", "pendant", "width=26 mm"),
    ]
    book = openpyxl.load_workbook(into / "changes.xlsx")
    assert [len(list(page.rows)) - 1 for page in book.worksheets] == [len(people), len(found)]


def test_lists_of_one_design_lie_in_its_own_folder_and_those_of_all_keep_every_order(
    library: Any, sends: Any, told: Any, line: Any, private: Path
) -> None:
    library.publish()
    sends(line("Q-2602", "drops", "Long"), line("Q-2601", "pendant"), line("Q-2603", "link"))
    library.change("stock/clays.yaml", "shrinkage: 8-10 %", "shrinkage: 9-11 %")
    told()
    into = private / "changes"
    whole = {path.name: path.read_bytes() for path in into.iterdir()}
    assert [one["order"] for one in rows(into / "write-to.csv")] == ["Q-2601", "Q-2602"]
    said = told("pendant", "link")
    assert said[-2:] == [
        f"wrote write-to.csv, changes.csv, changes.xlsx into {into / design}" for design in ("link", "pendant")
    ]
    assert {path.name: path.read_bytes() for path in into.iterdir() if path.is_file()} == whole
    assert [one["order"] for one in rows(into / "pendant/write-to.csv")] == ["Q-2601"]
    assert {one["design"] for one in rows(into / "pendant/changes.csv")} == {"pendant"}
    assert rows(into / "link/write-to.csv") == rows(into / "link/changes.csv") == []
    assert stat.S_IMODE((into / "pendant").stat().st_mode) == 0o700


def test_a_design_that_the_list_has_in_capitals_is_the_same_design(
    library: Any, sends: Any, told: Any, line: Any, private: Path
) -> None:
    """As a spreadsheet program may write it: in the list the numbers still stand once, with the order beside them."""
    library.publish("pendant")
    sends(line("Q-2601", "pendant"))
    path = private / "sent.csv"
    path.write_text(path.read_text("utf-8").replace("pendant,As designed", "Pendant,as designed"), "utf-8")
    library.change(PENDANT, "width: 20 mm", "width: 24 mm")
    assert head(told("pendant"))[0] == "write to: Q-2601"
    [disc] = [one for one in rows(private / "changes/pendant/changes.csv") if "wet_disc" in one["figure"]]
    assert disc["orders"] == "Q-2601"


def test_the_lists_are_refused_where_they_would_be_published(library: Any, run: Any) -> None:
    for folder in (library.root / "projects/lists", library.build / "lists"):
        done = run("changes", "--private", str(folder))
        assert done.exit_code == 2
        assert "cannot be written into" in done.output
        assert not folder.exists()


def test_a_price_of_stock_that_moved_is_told_and_changes_no_fingerprint(library: Any, run: Any) -> None:
    library.change(
        "stock/others.yaml", "    thickness: 16 awg\n", "    thickness: 16 awg\n    pack: 10 m\n    price: 12.4 EUR\n"
    )
    library.publish()
    library.change("stock/others.yaml", "price: 12.4 EUR", "price: 13 EUR")
    said = run("changes").output
    assert said.startswith("link: since revision 1, 2026-01-10\n  Prices of its stock, which no sheet prints\n")
    assert "    Copper wire, 16 AWG: 10 m: was 12.40 EUR, is 13 EUR\n" in said
    assert " is now " not in said
    assert "unchanged: drops (revision 1), pendant (revision 1)" in said
    assert library.publish().troubles.found == []


def test_a_ledger_from_before_prices_were_kept_is_read_and_says_that_they_are_not_known(library: Any, run: Any) -> None:
    library.change(
        "stock/others.yaml", "    thickness: 16 awg\n", "    thickness: 16 awg\n    pack: 10 m\n    price: 9 EUR\n"
    )
    library.publish("link")
    path = library.path("link/ledger/revision-1.json")
    told = json.loads(path.read_text("utf-8"))
    assert told.pop("prices") == {"copper-16awg, 10 m": ["Copper wire, 16 AWG: 10 m", "9 EUR"]}
    path.write_text(json.dumps(told), "utf-8")
    said = run("changes", "link").output
    assert said == (
        "unchanged: link (revision 1)\n"
        "the ledger holds no prices, and what moved of them cannot be known: link (revision 1)\n"
    )


def test_a_list_that_somebody_has_changed_meanwhile_is_not_written_over(
    sends: Any, line: Any, private: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    sends(line("Q-2601", "pendant"))
    path = private / "sent.csv"

    def meanwhile(run: Any, took: Any, day: Any) -> Any:
        path.write_text(path.read_text("utf-8") + "Q-2602,2026-12-01,link,As designed,,,1,K7M3QX,1\n", "utf-8")
        return sent_of(run, took, day)

    monkeypatch.setattr("sheetgen.runs.sent.sent_of", meanwhile)
    with pytest.raises(CannotBe, match="was changed while"):
        sends(line("Q-2603", "drops"))
    assert path.read_text("utf-8").endswith("K7M3QX,1\n")


def test_the_list_of_the_private_folder_in_the_library_is_read_unasked_and_nothing_is_written(
    library: Any, run: Any, line: Any, send: Any
) -> None:
    library.publish("pendant")
    send(library.root, library.root / "private", line("Q-2601", "pendant"))
    library.change(PENDANT, "width: 20 mm", "width: 24 mm")
    assert run("changes", "pendant").stdout.startswith("write to: Q-2601\n")
    assert not (library.root / "private/changes").exists()


def test_what_an_order_chooses_goes_before_what_the_version_says(
    library: Any, sends: Any, told: Any, line: Any
) -> None:
    library.publish("drops")
    sends(line("Q-2601", "drops", "Long", {"height": "22 mm"}), line("Q-2602", "drops", "Long", {"bore": "9 mm"}))
    library.change(DROPS, "    height: 30 mm", "    height: 28 mm")
    assert told("drops")[0] == "write to: Q-2602"


def test_of_designs_that_are_not_asked_for_no_order_is_named(library: Any, sends: Any, told: Any, line: Any) -> None:
    library.publish()
    sends(line("Q-2601", "drops"), line("Q-2602", "pendant"))
    library.change("stock/clays.yaml", "shrinkage: 8-10 %", "shrinkage: 9-11 %")
    assert told("pendant")[0] == "write to: Q-2602"
    assert told("link")[0] == "unchanged: link (revision 1)"
