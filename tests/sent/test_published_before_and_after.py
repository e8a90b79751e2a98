"""What `changes` names, held against what was published before and after: figures, lists, times and prices.

The comparison reads the published figures.json and pages and the stock's own files, and imports nothing of the program.
Two designs of the demonstration take the clay that is edited, and one does not.
"""

from __future__ import annotations

import html
import json
import re
import shutil
from collections import defaultdict
from pathlib import Path
from typing import Any

import pytest
import yaml
from click.testing import CliRunner

from sheetgen.cli import main
from tests.unfolded import unfolded

ROOT = Path(__file__).parents[2]
DESIGNS = ("limpet-buttons", "tideline-band", "towline-bracelet")
OTHER = "towline-bracelet"
EDITS = (
    ("shrinkage: 9-11 %", "shrinkage: 10-12 %"),
    ("shrinkage: 8-10 %", "shrinkage: 9-11 %"),
    ("drying: 12-24 h", "drying: 14-30 h"),
    ("price: 38 EUR", "price: 41 EUR"),
)
Rows = dict[tuple[str, str, str], tuple[str, str]]
"""By design, version as it is printed, and what a number is called: was and is."""
Printed = dict[tuple[str, str, str], str]


def plain(words: str) -> str:
    """As a terminal has it: no-break spaces, thin ones and joiners of the page left out."""
    words = re.sub(r"<[^>]+>", "", html.unescape(words)).replace("\u2060", "").replace("\u202f", "")
    return " ".join(words.replace("\u00a0", " ").split()).replace(" – ", "–")


def pages(build: Path) -> dict[tuple[str, str], str]:
    """The published page of each version, by design and the version's printed name."""
    found = {}
    for path in (path for design in DESIGNS for path in (build / design).glob("**/index.html")):
        text = path.read_text("utf-8")
        design = path.relative_to(build).parts[0]
        title = re.search(r"<title>(.*?)</title>", text, re.DOTALL)
        assert title
        found[design, plain(title[1]).partition(", ")[2]] = text
    return found


def times(build: Path) -> Printed:
    """How long each step takes or is waited for, the bench and the whole."""
    found = {}
    for (design, version), text in pages(build).items():
        marked = r'<span>([^<]*) <span class="time">(?:<span class="n"[^>]*>)?([^<]*)(?:</span>)+</h4>'
        for name, told in re.findall(marked, text):
            found[design, version, plain(name)] = plain(told)
        for name, told in re.findall(r'<th scope="row">(At the bench|In all)</th><td>([^<]*)</td>', text):
            found[design, version, name] = plain(told).partition(", ")[0]
    return found


def tools(build: Path) -> Printed:
    """The sizes of tools, in mm, by what a tool is called before the first comma."""
    found = {}
    for (design, version), text in pages(build).items():
        for name, told in re.findall(r'<span class="what">([^<]*): ([^<]*mm)</span>', text):
            found[design, version, plain(name)] = plain(told)
    return found


def data(build: Path) -> tuple[Printed, Printed]:
    """The figures, and what is used and what to have of each item for one piece."""
    figures, items = {}, {}
    for design in DESIGNS:
        told = json.loads((build / design / "figures.json").read_text("utf-8"))
        for version, each in told["versions"].items():
            for name, one in each.items():
                figures[design, version, name] = plain(f"{one['printed']['words']} {one['printed']['unit']}")
        for version, each in told["materials"].items():
            for one in each.values():
                names = {"have": one["name"], "used": f"{one['name']}, used"}
                for word in names if one["back"] else ("have",):
                    items[design, version, names[word]] = plain(one["printed"][word])
    return figures, items


def moved(before: Printed, after: Printed) -> Rows:
    assert before.keys() == after.keys()
    return {key: (was, after[key]) for key, was in before.items() if was != after[key]}


def prices(projects: Path) -> dict[str, str]:
    found = {}
    for path in projects.glob("stock/*.yaml"):
        for group in yaml.safe_load(path.read_text("utf-8")).values():
            for item in group.values():
                for pack in item.get("packs", ()):
                    if "price" in pack:
                        found[f"{item['name']}: {pack['holds']}"] = pack["price"]
    return found


def said(lines: list[str]) -> dict[str, Rows]:
    """What the command says, by the head that it stands under."""
    found: dict[str, Rows] = defaultdict(dict)
    design = version = head = ""
    for line in lines:
        if top := re.fullmatch(r"([\w-]+): since revision .*", line):
            design, version = top[1], ""
        elif top := re.fullmatch(r"  (\S.*): \w{6} is now \w{6}", line):
            version, head = top[1], ""
        elif top := re.fullmatch(r" {2,4}([A-Z][a-z ]+(?:, which no sheet prints)?)", line):
            head = top[1]
        elif head and (row := re.fullmatch(r" {4,6}(\S.*): was (.+), is (.+)", line)):
            name = re.sub(r"^.* \(([\w.]+)\)$", r"\1", row[1]) if head == "Figures" else row[1]
            found[head][design, version, name] = (plain(row[2]), plain(row[3]))
    return found


@pytest.fixture(scope="module")
def both(tmp_path_factory: pytest.TempPathFactory, libraries: Any) -> dict[str, Any]:
    library = libraries.Library(tmp_path_factory.mktemp("both"))
    shutil.copytree(ROOT / "projects", library.root / "projects")
    stock = library.path("stock/clays.yaml")
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("sheetgen.render.pdf_pool.PdfPool", libraries.QuickPool)
        library.publish(*DESIGNS)
        shutil.copytree(library.root, library.root / "before")
        first, end, rest = stock.read_text("utf-8").partition("  silver-standard:")
        for old, new in EDITS:
            assert first.count(old) == 1
            first = first.replace(old, new)
        stock.write_text(first + end + rest, "utf-8")
        library.publish(*DESIGNS)
    done = CliRunner().invoke(main, ["changes", *DESIGNS, "--library", str(library.root)])
    return {"before": library.root / "before", "after": library.root, "lines": unfolded(done.stdout.splitlines())}


def by_title(rows: Rows, both: dict[str, Any]) -> Rows:
    """Versions of figures.json by their printed names: the main one has another there than on its page."""
    mains = {design: titles(both)[design][0] for design in DESIGNS}
    return {(d, mains[d] if v == "main" else v, name): ends for (d, v, name), ends in rows.items()}


def titles(both: dict[str, Any]) -> dict[str, list[str]]:
    """The printed names of the versions of each design; that of the page on top first."""
    found: dict[str, list[str]] = defaultdict(list)
    for design, version in pages(both["after"] / "build"):
        found[design].append(version)
    return found


def test_the_figures_and_amounts_that_are_published_otherwise_are_named_and_no_others(both: dict[str, Any]) -> None:
    (figures, items), (figures_now, items_now) = (data(both[word] / "build") for word in ("before", "after"))
    told = said(both["lines"])
    expected = by_title(moved(figures, figures_now), both)
    assert len(expected) > 100
    assert told["Figures"] == expected
    amounts = {key: ends for key, ends in told["Lists"].items() if re.fullmatch(r"[\d.]+ (g|mL)", ends[0])}
    amounts = {key: ends for key, ends in amounts.items() if ", for " not in key[2]}  # figures.json has no class
    assert len(amounts) > 5
    assert amounts == by_title(moved(items, items_now), both)


def test_the_tools_that_are_listed_in_another_size_are_named_and_no_others(both: dict[str, Any]) -> None:
    expected = moved(tools(both["before"] / "build"), tools(both["after"] / "build"))
    assert len(expected) > 5
    short = {(d, v, name.partition(",")[0]): ends for (d, v, name), ends in said(both["lines"])["Lists"].items()}
    assert {key: short.get(key) for key in expected} == expected


def test_the_times_that_are_published_otherwise_are_named_and_no_others(both: dict[str, Any]) -> None:
    """Between sessions and on the evenings of a class they are on paper alone."""
    expected = moved(times(both["before"] / "build"), times(both["after"] / "build"))
    assert len(expected) > 10
    told = {
        (design, version, re.sub(r", (time|wait)$", "", name)): ends
        for (design, version, name), ends in said(both["lines"])["Times"].items()
        if not name.startswith(("After session ", "Evening "))
    }
    assert told == expected


def test_the_price_that_was_edited_is_named_once_in_each_design_that_uses_the_clay(both: dict[str, Any]) -> None:
    before, after = (prices(both[word] / "projects") for word in ("before", "after"))
    [(pack, was)] = [(key, was) for key, was in before.items() if was != after[key]]
    told = said(both["lines"])["Prices of its stock, which no sheet prints"]
    assert {(design, name): ends for (design, _, name), ends in told.items()} == {
        (design, pack): (was, after[pack]) for design in DESIGNS if design != OTHER
    }


def test_the_edits_are_named_as_a_maker_writes_them(both: dict[str, Any]) -> None:
    by = {line.strip() for line in both["lines"] if line.startswith("    by stock ")}
    hours = "by stock silver-low-fire: drying: was 12 to 24, usually 18 h, is 14 to 30, usually 22 h"
    shrinkage = "by stock silver-low-fire: shrinkage: was 9 to 11 %, usually 10 %, is 10 to 12 %, usually 11 %"
    assert by == {hours, shrinkage}


def test_the_design_that_does_not_take_the_clay_is_named_as_unchanged(both: dict[str, Any]) -> None:
    assert f"unchanged: {OTHER} (revision 2)" in both["lines"]
