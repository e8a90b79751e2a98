"""The lists as they are printed: held against the CSV, page by page, measured, and tried with texts too long."""

from __future__ import annotations

import csv
import io
import re
from collections import Counter, defaultdict
from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner

from sheetgen.cli import main
from sheetgen.render.pdf_pool import PdfPool
from sheetgen.render.theme import Theme
from sheetgen.runs.paper import on_paper

ROOT = Path(__file__).parents[2]
WORDS = (
    "buoy-drops=8", "tideline-band:US 8=3", "towline-bracelet=7", "sounding-bracelet=4", "eddy-earrings=5",
    "limpet-buttons=3",
)  # fmt: skip
Rows = list[dict[str, str]]


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Thirty mixed kits of six designs."""
    into = tmp_path_factory.mktemp("private")
    result = CliRunner().invoke(main, ["shop", *WORDS, "--library", str(ROOT), "--private", str(into)])
    assert result.exit_code == 0, result.output
    assert "warning" not in result.output
    return into / "shop"


def rows(folder: Path, name: str) -> Rows:
    return list(csv.DictReader(io.StringIO((folder / f"{name}.csv").read_text("utf-8-sig"))))


def joined(text: str) -> str:
    return re.sub(r"\s+", "", text)


def pages(paper: Any, path: Path) -> list[str]:
    with paper.Sheet(path) as sheet:
        return [joined(text) for text in sheet.texts]


def test_every_list_is_printed_on_each_paper_of_the_studio(folder: Path, paper: Any) -> None:
    for name in ("pick", "cut", "buy", "left"):
        counts = []
        for size, wide, tall in (("a4", 210, 297), ("letter", 215.9, 279.4)):
            with paper.Sheet(folder / f"{name}-{size}.pdf") as sheet:
                counts.append(len(sheet.pages))
                for page in sheet.pages:
                    assert float(page.width) * paper.MM == pytest.approx(wide, abs=0.05)
                    assert float(page.height) * paper.MM == pytest.approx(tall, abs=0.05)
        assert counts[0] == counts[1]


def test_no_page_of_the_pick_list_is_of_two_stations(folder: Path, paper: Any) -> None:
    """Every page bears its station on top and the number of its pages there, and items of no other."""
    found = pages(paper, folder / "pick-a4.pdf")
    names: defaultdict[str, set[str]] = defaultdict(set)
    for row in rows(folder, "pick"):
        names[row["station"]].add(joined(row["name"]))
    seen: Counter[str] = Counter()
    for text in found:
        [station] = {name for name in names if f"Pick:{name}" in text}
        seen[station] += 1
        number, of = re.findall(r"page(\d+)of(\d+)", text)[0]
        assert int(number) == seen[station]
        assert int(of) == sum(f"Pick:{station}" in other for other in found)
        others = {name for other, each in names.items() if other != station for name in each} - names[station]
        assert not {name for name in others if name in text}
    assert list(seen) == ["clay", "wire", "stones", "findings", "paper"]


def test_what_is_picked_on_paper_is_what_the_csv_says(folder: Path, paper: Any) -> None:
    """Row by row: bags and what goes into each, and the total of each item."""
    text = "".join(pages(paper, folder / "pick-a4.pdf"))
    for row in rows(folder, "pick"):
        if not row["design"]:
            continue
        unit = "" if row["unit"] == "piece" else row["unit"]
        noun = "kits" if row["station"] == "paper" else "bags"
        if row["item"] == "stone-adhesive":
            assert "8bags×1packof" in text
            assert "8packs" in text  # of 4 mL, which are the 32 mL of the CSV
            assert (row["together"], row["in one bag"]) == ("32", "4")
        elif " of " in unit:
            sides = joined(unit.partition(" of ")[2])
            assert re.search(rf"{row['bags']}{noun}×{row['in one bag']}of.*?{sides}", text), row
        else:
            assert f"{row['bags']}{noun}×{row['in one bag']}{unit}" in text, row


def test_every_piece_that_is_picked_is_cut_and_has_its_tag(folder: Path, paper: Any) -> None:
    text = "".join(pages(paper, folder / "cut-a4.pdf"))
    boxes: int = text.count("☐")
    cut = 0
    for row in rows(folder, "cut"):
        for many, long, tag, whose in re.findall(r"(\d+) × ([\d. ×]+) mm, tag (\w+), (.+?)(?: · |$)", row["pieces"]):
            cut += int(many) * int(row["times"])
            assert joined(whose)[:30] in text
            assert f"{joined(long)}{tag}" in text
    assert boxes == cut  # a box a piece


def test_what_is_bought_on_paper_is_what_the_csv_says(folder: Path, paper: Any) -> None:
    text = "".join(pages(paper, folder / "buy-a4.pdf"))
    total = Decimal(0)
    costs: defaultdict[str, Decimal] = defaultdict(
        Decimal
    )  # of two sizes of pack an item has two rows, and on paper one cost
    for row in rows(folder, "buy"):
        if row["item"] and row["cost"] not in {"", "unknown"}:
            costs[row["item"]] += Decimal(row["cost"])
        if not row["item"]:  # what is said under the rows of a shop, and the total
            assert joined(row["name"]) + (f"{Decimal(row['cost']):.2f}" if row["cost"] else "") in text, row
        if row["item"] and row["cost"] == "unknown":
            assert f"{joined(row['name'])[:12]}" in text
        elif row["item"] and row["packs"] != "0":
            pack = row["pack"].removesuffix(" piece")
            if not pack.endswith(("mm", "mm²")):  # those are told in m and cm²
                assert f"{row['packs']}×{joined(pack)}" in text, row
        if row["cost"] != "unknown" and (row["item"] or row["name"].startswith("Delivery")):
            total += Decimal(row["cost"] or 0)
    assert [item for item, cost in costs.items() if cost and f"{cost:.2f}" not in text] == []
    last = rows(folder, "buy")[-1]
    assert f"{joined(last['name'])}{total:.2f}" in text


def test_the_drawer_is_left_on_paper_as_in_the_csv(folder: Path, paper: Any) -> None:
    """Lengths from a metre on are told in metres, sheet in square centimetres."""
    text = "".join(pages(paper, folder / "left-a4.pdf"))
    for row in rows(folder, "left"):
        told = []
        for name in ("before", "bought", "used", "after"):
            if row[name]:
                amount = Decimal(row[name])
                unit = "" if row["unit"] == "piece" or not amount else row["unit"]
                if unit == "mm" and amount >= 1000:
                    amount, unit = amount / 1000, "m"
                elif unit == "mm²":
                    amount, unit = amount / 100, "cm²"
                told.append(f"{amount.normalize():f}{unit}")
        told.append("" if row["after"] else "countit")
        assert "".join(told).replace("²", "2") in text.replace("²", "2"), row


def test_boxes_to_tick_are_six_millimetres_and_a_stone_has_its_tray(folder: Path, paper: Any) -> None:
    with paper.Sheet(folder / "pick-a4.pdf") as sheet:
        page = next(p for p, text in zip(sheet.pages, sheet.texts, strict=True) if "Pick: stones" in text)
        drawn = paper.marks(page)
    six, twenty = ({tuple(map(round, m.middle)) for m in drawn if m.is_about(wide, wide, 0.3)} for wide in (6.0, 20.2))
    stones = [row for row in rows(folder, "pick") if row["station"] == "stones"]
    assert len(six) == 4 * len(stones)  # an item, its row, and two counts
    assert len(twenty) == len(stones)


# What is too long


@pytest.fixture(scope="module")
def pool() -> Any:
    return PdfPool(cores=1)


def printed(pool: PdfPool, found: Any) -> Any:
    return on_paper(found, found.studio.paper, Theme("plain", []), pool)()


def test_sixty_items_with_names_of_sixty_letters_are_printed_whole(
    made: Any, pool: PdfPool, paper: Any, tmp_path: Path
) -> None:
    """Names of one word and of many, a version and a bag as long: every name is there, and nothing jars."""
    long = [f"{n:02}{'Wherrystone' * 6}"[:60] for n in range(30)]
    worded = [f"Stone {n:02} of the long shore, faceted, foiled, grey and rose, x"[:60] for n in range(30)]
    stones = [made.stone(name) for name in (*long, *worded)]
    wires = [made.wire(f"Wire {name}"[:60]) for name in long[:9]]
    bag = made.bagged(("B everything that is small and round and shines in the sun", tuple(stones)))
    lines = [*(made.line(one, 12, 0.05) for one in stones), *(made.line(one, 465) for one in wires)]
    title = "Silver, long, with the widest of all bands and both clasps"
    out = printed(pool, made.lists(made.kits(*lines, bags=120, title=title, kit=bag)))
    assert [str(doubt) for doubt in out.doubts] == []
    for name, end in (("pick", 123), ("buy", 76), ("left", 80)):  # mm, where the column of the names ends
        path = tmp_path / name
        path.write_bytes(out.files[f"{name}-a4.pdf"])
        with paper.Sheet(path) as sheet:
            columns = [page.crop((23.5 / paper.MM, 0, end / paper.MM, page.height)) for page in sheet.pages]
            text = re.sub("[-‐]", "", joined("".join(column.extract_text() for column in columns)))
        assert not [one.name for one in stones if joined(one.name) not in text], name


def test_a_wide_run_of_twenty_kinds_of_kit_jars_nowhere(made: Any, pool: PdfPool) -> None:
    seed, w = made.stone(), made.wire(saw_cut=Fraction(1, 2))
    run = [made.kits(made.line(seed, 9 + n), made.line(w, 40 + 21 * n), bags=99, title=f"Size {n}") for n in range(20)]
    assert [str(doubt) for doubt in printed(pool, made.lists(*run)).doubts] == []


def test_a_page_that_goes_on_with_an_item_says_so_and_fetches_nothing_twice(
    made: Any, pool: PdfPool, paper: Any, tmp_path: Path
) -> None:
    """Of every page: it begins with an item of its own, or says on top which one goes on; a total is there once."""
    seeds, w = [made.stone(name) for name in ("Seed", "Sprig")], made.wire(saw_cut=Fraction(1, 2))
    run = [
        made.kits(
            *(made.line(one, 9 + n) for one in seeds), made.line(w, 40 + 21 * n), bags=97, title=f"Size {n}",
        )
        for n in range(20)
    ]  # fmt: skip
    out = printed(pool, made.lists(*run))
    for size, above in (("a4", 25), ("letter", 16.2)):  # mm above the content box, which is 247 mm high
        for name, items in (("pick", ["Seed", "Sprig", "Wire", "Handout", "Bench card"]), ("cut", ["Wire"])):
            path = tmp_path / f"{name}.pdf"
            path.write_bytes(out.files[f"{name}-{size}.pdf"])
            with paper.Sheet(path) as sheet:
                tops = [page.crop((0, 0, page.width, above / paper.MM)).extract_text() or "" for page in sheet.pages]
                bodies = [page.crop((0, above / paper.MM, page.width, page.height)) for page in sheet.pages]
                texts = [body.extract_text().splitlines() for body in bodies]
            for top, text in zip(tops, texts, strict=True):
                begins = next(line for line in text if not line.startswith(("Lay one", "twice", "out Count")))
                own = begins.startswith(("Pick", "Cut", "Tick")) or any(begins.startswith(item) for item in items)
                assert ("continued" in top) is not own, (name, top, text[:3])
                if not own:
                    assert any(f"· {item}, continued" in top for item in items), (name, top, text[:3])
            assert any("continued" in top for top in tops), name
            if name == "pick":
                whole = str(sum(9 + n for n in range(20)) * 97)
                assert sum(line.split()[-1] == whole for text in texts for line in text) == 2  # of either stone once


def test_however_long_a_name_is_the_line_on_top_of_a_page_keeps_clear_of_the_papers_edge(
    made: Any, pool: PdfPool, paper: Any, tmp_path: Path
) -> None:
    """Many printers leave a quarter of an inch white."""
    seed = made.stone("Stone of the long shore at low water, faceted, foiled, rose" + "x")
    run = [made.kits(made.line(seed, 9 + n), bags=97, title=f"Size {n}") for n in range(20)]
    path = tmp_path / "pick.pdf"
    path.write_bytes(printed(pool, made.lists(*run)).files["pick-letter.pdf"])
    with paper.Sheet(path) as sheet:
        tops = [min(char["top"] for char in page.chars) * paper.MM for page in sheet.pages]
        assert any("continued" in joined(text) for text in sheet.texts)
    assert min(tops) >= 6.35


@pytest.mark.parametrize("kinds", range(16, 23))
def test_no_row_of_the_pick_list_stands_alone_on_a_page(
    kinds: int, made: Any, pool: PdfPool, paper: Any, tmp_path: Path
) -> None:
    """Of one clay in so many kinds of bag: about nineteen rows have room on a page."""
    seed = made.stone("Seed")
    run = [made.kits(made.line(seed, 9 + n), bags=97, title=f"Size {n}") for n in range(kinds)]
    path = tmp_path / "pick.pdf"
    path.write_bytes(printed(pool, made.lists(*run)).files["pick-letter.pdf"])
    on_each = [text.count("97bags×") + text.count("97kits×") for text in pages(paper, path)]
    assert sum(on_each) >= kinds
    assert 1 not in on_each


def test_tag_amounts_and_ends_of_the_cutting_list_are_not_parted_by_a_line(
    made: Any, pool: PdfPool, paper: Any, tmp_path: Path
) -> None:
    w, bag = made.wire(), "C metal"
    run = [
        made.kits(made.line(w, 40 + n), bags=99, title=f"Size {n}{'o' * 2 * n}", kit=made.bagged((bag, (w,))))
        for n in range(9)
    ]
    path = tmp_path / "cut.pdf"
    path.write_bytes(printed(pool, made.lists(*run)).files["cut-letter.pdf"])
    with paper.Sheet(path) as sheet:
        lines = [line.strip() for text in sheet.texts for line in text.replace("\u00a0", " ").splitlines()]
    assert sum("bag C metal" in line for line in lines) == len(run)
    assert not [line for line in lines if line.endswith((" ×", "bag", "bag C")) or line == "keep"]
