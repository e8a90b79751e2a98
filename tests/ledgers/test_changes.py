"""`changes` tells which printed numbers have moved since a revision, by which edit, and what no longer passes."""

from __future__ import annotations

import json
import re
import shutil
from pathlib import Path
from typing import Any

import pytest

from sheetgen.base.program import program_version
from sheetgen.model.ledger import ledger_of
from sheetgen.pipeline import figures_as_data
from sheetgen.publish.ledgers import keep

pytestmark = pytest.mark.usefixtures("quick")
ROOT = Path(__file__).parents[2]
PENDANT = "pendant/project.yaml"


def test_what_moved_is_named_with_was_and_is_and_the_edit(library: Any, run: Any) -> None:
    library.publish()
    library.change("stock/clays.yaml", "shrinkage: 8-10 %", "shrinkage: 9-11 %")
    said = run("changes", "pendant").output
    assert said.startswith("pendant: since revision 1, 2026-01-10\n")
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


DESIGNS = ("lantern-pull", "tideline-band")


def test_a_point_more_shrinkage_is_told_as_two_figures_json_differ_and_who_no_longer_passes(
    libraries: Any, tmp_path: Path, run: Any
) -> None:
    """Two designs of the demonstration are worked three times over: a few seconds."""
    library = libraries.Library(tmp_path / "copy")
    shutil.copytree(ROOT / "projects", library.root / "projects", ignore=shutil.ignore_patterns("ledger"))
    outcome = library.check(*DESIGNS)
    before = printed(outcome, "tideline-band")
    for worked in outcome.worked:
        keep(library.path(worked.name), ledger_of(worked, program_version()))
    text = library.path("stock/clays.yaml").read_text("utf-8")
    own = text[text.index("  silver-low-fire:") : text.index("  silver-standard:")]
    more = re.sub(r"shrinkage: (\d+)-(\d+) %", lambda had: f"shrinkage: {int(had[1]) + 1}-{int(had[2]) + 1} %", own)
    assert len(re.findall(r"shrinkage: \d+-\d+ %", own)) == 2  # of both its programs
    library.write("stock/clays.yaml", text.replace(own, more))
    after = printed(library.check("tideline-band"), "tideline-band")
    differ = {key: (was, after[key]) for key, was in before.items() if after[key] != was}
    assert len(differ) > 50
    said = run("changes", *DESIGNS, "--library", str(library.root)).output
    assert told(said, "tideline-band") == differ
    assert "lantern-pull: no longer passes, and did at revision 2, 2026-11-27" in said
    assert said.count("no longer passes") == 1
    by = {line for line in said.splitlines() if line.startswith("    by ") and "by the same" not in line}
    assert by == {"    by stock silver-low-fire: shrinkage: was 9 to 11 %, usually 10 %, is 10 to 12 %, usually 11 %"}


def printed(outcome: Any, design: str) -> dict[tuple[str, str], str]:
    """Version and figure to words and unit, as figures.json has them."""
    found = {}
    [data] = [one for one in json.loads(json.dumps(figures_as_data(outcome))) if one["project"] == design]
    for version, figures in data["versions"].items():
        for key, figure in figures.items():
            words = f"{figure['printed']['words']} {figure['printed']['unit']}".strip()
            found["US 7" if version == "main" else version, key] = words.replace("\u00a0", " ").replace("\u202f", "")
    return found


def told(said: str, design: str) -> dict[tuple[str, str], tuple[str, str]]:
    """What the command says of a design's figures, by version and figure."""
    version, here, found = "", False, {}
    for line in said.splitlines():
        if not line.startswith(" "):
            here = line.startswith(f"{design}:")
        elif head := re.fullmatch(r"  (\S.*): \w{6} is now \w{6}", line):
            version = head[1]
        elif here and (row := re.fullmatch(r"      .* \(([\w.]+)\): was (.+), is (.+)", line)):
            found[version, row[1]] = (row[2], row[3])
    return found
