"""`changes` tells which printed numbers have moved since a revision, by which edit, and what no longer passes."""

from __future__ import annotations

import re
from typing import Any

import pytest

from tests.unfolded import unfolded

pytestmark = pytest.mark.usefixtures("quick")
PENDANT = "pendant/project.yaml"


def test_what_moved_is_named_with_was_and_is_and_the_edit(library: Any, run: Any) -> None:
    library.publish()
    library.change("stock/clays.yaml", "shrinkage: 8-10 %", "shrinkage: 9-11 %")
    said = run("changes", "pendant").output
    assert said.startswith("pendant: since revision 1, 2026-01-10; 5 numbers\n")
    # 20 ÷ 0.91 is 21.98, and 20 ÷ 0.9 is 22.22
    assert "      Plate: disc, cut wet (plate.wet_disc): was 22 mm, is 22.2 mm\n" in said
    assert "    by stock silver: shrinkage: was 8 to 10 %, usually 9 %, is 9 to 11 %, usually 10 %\n" in said
    assert run("changes", "link").output == "unchanged: link (revision 1)\n"


@pytest.mark.parametrize(
    ("change", "edit"),
    [
        ((PENDANT, "width: 20 mm", "width: 24 mm"), "by choice width: was 20 mm, is 24 mm"),
        ((PENDANT, "thickness: 4 cards", "thickness: 6 cards"), "by part plate: thickness: was 4 cards, is 6 cards"),
        (("studio.yaml", "units: mm", "units: in"), "by studio units: was mm, is in"),
        ((PENDANT, "minutes: 10-15 min", "minutes: 10-25 min"), "by no edit that the ledger knows of"),
    ],
)
def test_the_edit_is_named_where_the_ledger_knows_it(
    library: Any, run: Any, change: tuple[str, str, str], edit: str
) -> None:
    library.publish("pendant")
    library.change(*change)
    said = run("changes", "pendant").output
    assert f"    {edit}" in said
    assert said.count("    by ") == 1


def test_a_step_that_is_put_in_moves_none_of_the_numbers_after_it(library: Any, run: Any) -> None:
    library.publish("pendant")
    library.change(PENDANT, "  - title: Dry\n", "  - title: Sand\n    minutes: 5 min\n  - title: Dry\n")
    said = run("changes", "pendant").output
    assert "      Sand, time: new, " in said
    assert not re.search(r"^ +(Dry|Fire|Cut)\b", said, re.MULTILINE)


def test_the_default_is_the_revision_before_and_of_a_changed_one_that_revision(library: Any, run: Any) -> None:
    library.publish("pendant")
    library.change(PENDANT, "width: 20 mm", "width: 24 mm")
    library.change(PENDANT, "revision: 1", "revision: 2")
    library.publish("pendant")
    assert "since revision 1" in run("changes", "pendant").output
    library.change(PENDANT, "width: 24 mm", "width: 25 mm")
    assert "since revision 2" in run("changes", "pendant").output
    assert "by choice width: was 20 mm, is 25 mm" in run("changes", "pendant", "--since", "1").output


def test_what_a_text_works_and_moves_as_a_figure_does_is_told_once(library: Any, run: Any) -> None:
    library.change(PENDANT, "a disc of {{ plate.wet_disc }}", "a disc of {{ 1 * plate.wet_disc }}")
    library.publish("pendant")
    library.change("stock/clays.yaml", "shrinkage: 8-10 %", "shrinkage: 9-11 %")
    said = run("changes", "pendant").output
    assert "(plate.wet_disc): was 22 mm, is 22.2 mm" in said
    assert "Numbers in texts" not in said


def test_revision_10_comes_after_revision_9_of_the_same_day(library: Any, run: Any) -> None:
    library.publish("pendant")
    library.change(PENDANT, "revision: 1\n", "revision: 9\n")
    library.change(PENDANT, "width: 20 mm", "width: 24 mm")
    library.publish("pendant")
    library.change(PENDANT, "revision: 9\n", "revision: 10\n")
    library.change(PENDANT, "width: 24 mm", "width: 26 mm")
    library.publish("pendant")
    assert "since revision 9," in run("changes", "pendant").output


def test_without_a_ledger_it_says_what_it_cannot_know(run: Any) -> None:
    done = run("changes", "pendant")
    assert done.output == "pendant: no ledger of what was printed before: what moved cannot be known\n"
    assert done.exit_code == 0


def test_a_revision_that_there_is_not_is_wrong_usage(library: Any, run: Any) -> None:
    library.publish("pendant")
    done = run("changes", "--since", "7")
    assert "error: there is no ledger of revision '7'; known here: 1" in done.output
    assert done.exit_code == 2


def test_what_to_do_is_told_last_and_nothing_where_nothing_moved(library: Any, run: Any) -> None:
    library.publish()
    assert "next:" not in run("changes").output
    library.change(PENDANT, "width: 20 mm", "width: 24 mm")
    library.change("drops/project.yaml", "bore: 8 mm", "bore: 14 mm")
    said = run("changes").stdout
    assert said.splitlines()[said.splitlines().index("next:") :][:3] == [
        "next:",
        "  mend, so that it passes again: drops",
        "  write the next revision in project.yaml, then publish: pendant",
    ]
    library.change(PENDANT, "revision: 1", "revision: 2")
    assert "write the next revision" not in run("changes", "pendant").stdout


def test_a_size_is_not_told_again_beside_the_figure_of_its_part_and_one_without_a_figure_is(
    library: Any, run: Any
) -> None:
    """The tube fires to 8.0 mm inside, which is a figure of it; how long it fires to is none."""
    library.publish("drops")
    library.change("stock/clays.yaml", "shrinkage: 8-10 %", "shrinkage: 9-11 %")
    said = "\n".join(unfolded(run("changes", "drops").stdout.splitlines()))
    first = said[: said.index("\n  Long: ")]
    [inside] = re.findall(r"\(body\.fired_inside\): (was .*)", first)
    assert first.count(inside) == 1
    assert re.search(r"Body: length, fires to: was .*, is ", first)
