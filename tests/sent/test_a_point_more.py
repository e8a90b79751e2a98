"""One point more shrinkage of a clay of the demonstration: what `changes` says, and what a comparison finds.

The comparison is of figures.json before and after (tests/compare_figures.py), and knows neither ledgers nor
fingerprints. All designs are worked three times over and nothing is published: a few seconds.
"""

from __future__ import annotations

import csv
import importlib.util
import itertools
import json
import re
import shutil
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner

from sheetgen.cli import main
from sheetgen.render.figures import figures_data
from tests.unfolded import unfolded

ROOT = Path(__file__).parents[2]
CLAY = "silver-low-fire"
FAILS = "lantern-pull"
# Every version of three designs, two with choices of their own, two in colours; of clays, and of none.
CHOSEN = {"rolled": "7 cards"}
# Of the ring what its handout, bench card and templates do not print, and its teacher's workings do.
ALONE = {
    "band.clay_mass", "band.fired_inside", "band.fired_iso", "band.fired_jp", "band.fired_uk", "band.fired_us",
    "band.former_wanted", "band.inside", "band.wet_inside", "band.wide", "seam_face",
}  # fmt: skip
Told = dict[tuple[str, str], dict[str, tuple[str, str]]]
"""By design and version, each number with was and is."""


def comparing() -> Any:
    spec = importlib.util.spec_from_file_location("compare_figures", ROOT / "tests/compare_figures.py")
    assert spec
    assert spec.loader
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def put(outcome: Any, build: Path) -> None:
    """What a publication would write of its figures; nothing is printed."""
    for worked in outcome.worked:
        data = figures_data(worked, {name: version.slabs for name, version in worked.versions.items()})
        path = build / worked.name / "figures.json"
        path.parent.mkdir(parents=True)
        path.write_text(json.dumps(data, ensure_ascii=False), "utf-8")


def plain(words: str) -> str:
    return words.replace("\u00a0", " ").replace("\u202f", "").strip()


def compared(before: Path, after: Path) -> Told:
    """The figures that are printed otherwise, of all designs that were worked both times."""
    compare = comparing()
    old, new = compare.figures(before), compare.figures(after)
    found: Told = {}
    for key, figure in old.items():
        design, version, name = key.split(" / ")
        if key in new:
            was, now = (f"{one['printed']['words']} {one['printed']['unit']}" for one in (figure, new[key]))
            if was != now:
                assert compare.differs(figure, new[key])
                found.setdefault((design, version), {})[name] = (plain(was), plain(now))
    return found


def amounts(before: Path, after: Path) -> Told:
    """What is used and what to have of each item that is otherwise, by its name."""
    found: Told = {}
    for path in before.glob("*/figures.json"):
        if not (after / path.parent.name).exists():
            continue
        old, new = (json.loads(one.read_text("utf-8")) for one in (path, after / path.parent.name / path.name))
        for version, items in old["materials"].items():
            for item, was in items.items():
                now = new["materials"][version][item]
                names = {"have": was["name"], "used": f"{was['name']}, used"}
                for word in names if was["back"] else ("have",):  # where nothing comes back, one stands for both
                    both = (plain(was["printed"][word]), plain(now["printed"][word]))
                    if both[0] != both[1]:
                        found.setdefault((old["project"], version), {})[names[word]] = both
    return found


FIGURE = r"      .* \(([\w.]+)\): was (.+), is (.+)"
AMOUNT = r"      (.*): was ([\d.]+ (?:g|mL)), is ([\d.]+ (?:g|mL))"


def said_by(lines: list[str], titles: dict[tuple[str, str], str], row_of: str = FIGURE) -> Told:
    """The numbers of one sort that the command says, below each design and version."""
    found: Told = {}
    here, design = "", ""
    for line in lines:
        if head := re.fullmatch(r"([\w-]+): since revision .*", line):
            design = head[1]
        elif head := re.fullmatch(r"  (\S.*): \w{6} is now \w{6}", line):
            here = titles.get((design, head[1]), "")
        elif line and not line.startswith("   "):
            here = ""
        elif here and (row := re.fullmatch(row_of, line)):
            found.setdefault((design, here), {})[row[1]] = (plain(row[2]), plain(row[3]))
    return found


@pytest.fixture(scope="module")
def tried(tmp_path_factory: pytest.TempPathFactory, libraries: Any, send: Any, line: Any) -> dict[str, Any]:
    """The orders of an invented season sent, the clay changed, and what the command says."""
    library = libraries.Library(tmp_path_factory.mktemp("point"))
    shutil.copytree(ROOT / "projects", library.root / "projects")
    private = library.root / "private"
    outcome = library.check()
    put(outcome, library.root / "before")
    designs = {one.name: one for one in outcome.worked}
    orders = {}
    for nth, (worked, version) in enumerate((w, v) for w in outcome.worked for v in w.versions.values()):
        orders[f"Q-{2601 + nth}"] = line(f"Q-{2601 + nth}", worked.name, version.title)
    orders["R-1"] = line("R-1", "tideline-band", "US 8", CHOSEN)
    orders["R-2"] = line("R-2", "buoy-drops", "Long", colourway="grey sea")
    orders["R-3"] = line("R-3", "buoy-drops", "Copper clay", colourway="grey sea")
    send(library.root, private, *orders.values())
    chosen = library.check("tideline-band", **CHOSEN)
    text = library.path("stock/clays.yaml").read_text("utf-8")
    own = text[text.index(f"  {CLAY}:") : text.index("  silver-standard:")]
    more = re.sub(r"shrinkage: (\d+)-(\d+) %", lambda had: f"shrinkage: {int(had[1]) + 1}-{int(had[2]) + 1} %", own)
    assert len(re.findall(r"shrinkage: \d+-\d+ %", own)) == 2  # of both its programs
    library.write("stock/clays.yaml", text.replace(own, more))
    after = library.check()
    put(after, library.root / "after")
    words = ["changes", "--library", str(library.root), "--private", str(private)]
    said = CliRunner().invoke(main, words).stdout.splitlines()
    lines = unfolded(said)
    names = {(one.name, version.title): version.name for one in designs.values() for version in one.versions.values()}
    return {
        "library": library, "said": said, "lines": lines, "orders": orders, "names": names, "designs": designs,
        "failed": sorted(set(after.failed)), "compared": compared(library.root / "before", library.root / "after"),
        "amounts": amounts(library.root / "before", library.root / "after"),
        "chosen": (chosen, library.check("tideline-band", **CHOSEN)),
    }  # fmt: skip


def test_exactly_the_numbers_that_a_comparison_finds_are_named(tried: dict[str, Any]) -> None:
    found = tried["compared"]
    assert len(found) > 5
    assert sum(map(len, found.values())) > 200
    assert said_by(tried["lines"], tried["names"]) == found


def test_the_amounts_that_a_comparison_finds_are_named(tried: dict[str, Any]) -> None:
    """Of one piece; for a class, figures.json has none."""
    said = said_by(below(tried["lines"], "    Lists"), tried["names"], AMOUNT)
    said = {key: {name: both for name, both in rows.items() if ", for " not in name} for key, rows in said.items()}
    assert sum(map(len, tried["amounts"].values())) > 10
    assert {key: rows for key, rows in said.items() if rows} == tried["amounts"]


def below(lines: list[str], head: str) -> list[str]:
    """The lines without the numbers that stand below another head."""
    found, inside = [], True
    for line in lines:
        if not line.startswith("      "):
            inside = line == head
        if inside or not line.startswith("      "):
            found.append(line)
    return found


def test_the_design_that_no_longer_passes_is_named_and_no_other(tried: dict[str, Any]) -> None:
    assert tried["failed"] == [FAILS]
    assert [line for line in tried["lines"] if "no longer passes, and did" in line] == [
        f"{FAILS}: no longer passes, and did at revision 2, 2026-11-27; what moved is known when it does"
    ]


def test_what_does_not_take_the_clay_is_named_as_unchanged(tried: dict[str, Any]) -> None:
    moved = {design for design, _ in tried["compared"]} | {FAILS}
    [unchanged] = [line for line in tried["lines"] if line.startswith("unchanged: ")]
    assert set(re.findall(r"([\w-]+) \(", unchanged)) == tried["designs"].keys() - moved


def test_the_one_edit_is_named_and_no_other(tried: dict[str, Any]) -> None:
    by = {line for line in tried["lines"] if line.startswith("    by ") and "by the same" not in line}
    shrinkage = re.compile(rf"    by stock {CLAY}: shrinkage: was .*, is .*")
    assert by
    assert [line for line in by if not shrinkage.fullmatch(line)] == []


def test_what_would_help_the_design_that_no_longer_passes_is_told_with_its_place_before_what_moved(
    tried: dict[str, Any],
) -> None:
    """Its check says what to do: 0.1 mm nearer to the edge, and it passes again."""
    at = next(n for n, line in enumerate(tried["said"]) if line.startswith(f"{FAILS}: "))
    place, helped = tried["said"][at + 1 : at + 3]
    assert re.match(rf"  projects/{FAILS}/project\.yaml:\d+: .* Set them 0\.1 mm nearer to the edge", place)
    assert helped.startswith("    help: here ")
    assert not [line for line in tried["said"][:at] if re.fullmatch(r"([\w-]+): since revision .*", line)]
    library = tried["library"]
    library.change(f"{FAILS}/project.yaml", "edge: 3.8 mm, drilled in: cap", "edge: 3.7 mm, drilled in: cap")
    assert library.check(FAILS).failed == []
    library.change(f"{FAILS}/project.yaml", "edge: 3.7 mm, drilled in: cap", "edge: 3.8 mm, drilled in: cap")


def test_it_is_told_once_by_which_edit_and_how_many_numbers_and_like_ones_share_a_line(tried: dict[str, Any]) -> None:
    """As much of it as can be read: half as many lines as numbers, or few more."""
    said, numbers = tried["said"], [line for line in tried["lines"] if re.match(r"      .*: (was|new,) ", line)]
    edit = "stock silver-low-fire: shrinkage: "
    assert [line[:8] for line in said if edit in line] == ["edit 1: ", "edit 2: "]
    designs = said[next(n for n, line in enumerate(said) if " printed numbers of " in line) :]
    summed = re.match(r"(\d+) printed numbers of (\d+) designs moved; 1 design no longer passes", designs[0])
    assert summed
    many, designs_moved = map(int, summed.groups())
    assert designs_moved == len({design for design, _ in tried["compared"]})
    told = sum(int(n) for line in designs for n in re.findall(r" is now \w{6}; (\d+) numbers?$", line))
    assert many == told
    rows = [line for line in designs if line.startswith("      ")]
    assert len(rows) < 0.7 * many
    assert len(numbers) >= many
    assert max(map(len, rows)) < 130


def test_the_orders_to_write_to_are_those_whose_kit_moved_or_whose_design_no_longer_passes(
    tried: dict[str, Any],
) -> None:
    moved = {(design, version) for design, version in tried["compared"]}
    wrong = [
        number
        for number, one in tried["orders"].items()
        if one.design == FAILS or (one.design, tried["names"][one.design, one.version]) in moved
    ]
    assert {"R-1", "R-2"} <= set(wrong)
    assert "R-3" not in wrong
    assert 0 < len(wrong) < len(tried["orders"])
    assert tried["lines"][0] == f"write to: {', '.join(wrong)}"


def test_of_a_ring_that_was_ordered_thicker_its_own_numbers_are_told(tried: dict[str, Any]) -> None:
    before: dict[str, str] = {}
    after: dict[str, str] = {}
    for into, outcome in zip((before, after), tried["chosen"], strict=True):
        [worked] = outcome.worked
        data = figures_data(worked, {name: version.slabs for name, version in worked.versions.items()})
        for key, one in data["versions"]["US 8"].items():
            into[key] = plain(f"{one['printed']['words']} {one['printed']['unit']}")
    lines = tried["lines"]
    at = next(
        n for n, line in enumerate(lines) if line.startswith("  tideline-band, rolled=7 cards (else as US 8): R-1 (")
    )
    own = lines[at + 1 :][: next(n for n, line in enumerate(lines[at + 1 :]) if not line.startswith("    "))]
    rows = {m[1]: (m[2], m[3]) for line in own if (m := re.fullmatch(r" +.* \(([\w.]+)\): was (.+), is (.+)", line))}
    assert len(rows) > 5
    differ = {key: (was, after[key]) for key, was in before.items() if was != after[key]}
    assert rows == {key: both for key, both in differ.items() if key not in ALONE}


def test_each_order_has_just_its_own_numbers_under_its_name_and_in_the_list(tried: dict[str, Any]) -> None:
    """As many as are said to differ: right under the kit, or where it says so in the block that is called as it is."""
    lines, private = tried["lines"], tried["library"].root / "private"
    with (private / "changes/write-to.csv").open(encoding="utf-8-sig", newline="") as file:
        listed = {one["order"]: one["numbers"] for one in csv.DictReader(file)}
    seen = set()
    for at, line in enumerate(lines):
        if kit := re.fullmatch(r"  ([\w-]+), (.*): (\S+) \(.*; (\d+) numbers? differs?(, as below)?", line):
            design, name, order, many, below = kit.groups()
            if below:
                since = next(n for n, one in enumerate(lines) if one.startswith(f"{design}: since "))
                at = next(n for n in range(since, len(lines)) if re.match(f"  {re.escape(name)}[:,] ", lines[n]))  # noqa: PLW2901
            block = itertools.takewhile(lambda one: one.startswith("    "), lines[at + 1 :])
            own = [one.strip() for one in block if one.startswith("      ")]
            assert len(own) == int(many)
            assert sorted(listed[order].split("; ")) == sorted(own)
            seen.add(order)
    assert {"R-1", "R-2"} < seen


def test_it_is_told_which_files_to_mail_to_each_order_that_is_to_be_written_to(tried: dict[str, Any]) -> None:
    """Of a version its published sheets for each paper, which here are none yet; of a kit of its own, a run’s."""
    said, build = tried["said"], tried["library"].root / "build"
    todo = said[said.index("next:") :]
    number = next(n for n, one in tried["orders"].items() if (one.design, one.version) == ("buoy-drops", "Long"))
    at = todo.index(f"    {number}: buoy-drops, Long, once it is published, in {build}/buoy-drops/long:")
    assert todo[at + 1 : at + 3] == [
        "      handout-a4.pdf, bench-card-a4.pdf, templates-a4.pdf",
        "      handout-letter.pdf, bench-card-letter.pdf, templates-letter.pdf",
    ]
    assert any(line.startswith("    R-1, R-2: what is its own, as `sheetgen orders --apart`") for line in todo)
    none = next(n for n, one in tried["orders"].items() if one.design == FAILS)
    assert any(re.match(rf"    {none}\b.*: nothing yet", line) for line in todo)
    mailed = {n for line in todo if line.startswith("    ") for n in re.findall(r"\b[QR]-\d+", line)}
    assert mailed == set(said[0].removeprefix("write to: ").split(", "))
