"""Pages: what a worked project shows, and that it shows what is made."""

from __future__ import annotations

import json
import re
from typing import Any

import pytest

from sheetgen.base.trouble import CannotBe
from sheetgen.render.pdf import Printer


@pytest.fixture(scope="module")
def sizes(flats: Any) -> Any:
    """Every size of the teacher's sheet, each with its part."""
    found, current = [], ""
    for row in flats.teacher("flats").sizes:
        current = row.part or current
        found.append((current.lower(), row))
    return found


def size(sizes: Any, label: str, part: str = "") -> tuple[str, str, str]:
    """Finished, make it, comes out at."""
    [row] = [row for of, row in sizes if row.label.lower().startswith(label) and of.startswith(part)]
    return row.finished, re.sub("<[^>]*>", "", row.make), row.fires.replace("\u00a0", " ").replace("\u2060", "")


def test_the_fired_range_beside_a_size_is_that_of_the_printed_size(sizes: Any) -> None:
    # the disc is printed as 22 and so cut: it fires to 22 × 0.90 = 19.80 to 22 × 0.92 = 20.24, and not to
    # 21.978 × 0.90 to 21.978 × 0.92, which would end at 20.2
    assert size(sizes, "disc", "disc") == ("20", "22", "19.8 – 20.3")


def test_the_bore_is_worked_from_the_former_that_is_owned(sizes: Any) -> None:
    # 9 mm and a sheet of 0.1 mm on each side: 9.2 × 0.90 = 8.28, 9.2 × 0.92 = 8.464
    assert size(sizes, "bore") == ("8", "9", "8.2 – 8.5")


def test_the_ring_is_worked_from_the_mark_on_the_former(sizes: Any) -> None:
    # 18.8 mm and the sheet: 19 × 0.90 = 17.1, 19 × 0.92 = 17.48
    assert size(sizes, "inside", "band")[1:] == ("18.8", "17.1 – 17.5")


def test_every_printed_size_holds_its_finished_size_or_comes_within_half_a_step_of_it(sizes: Any) -> None:
    """Rounding to half a millimetre moves the fired size by a quarter at most."""
    seen = 0
    for part, row in sizes:
        finished, _make, fires = size([(part, row)], row.label.lower())
        if re.fullmatch(r"[\d.]+", finished) and " – " in fires and row.label.lower() != "bore":
            low, high = map(float, fires.split(" – "))
            assert low - 0.25 <= float(finished) <= high + 0.25, row.label
            seen += 1
    assert seen >= 8


def test_a_step_shows_its_figures_beside_its_words(library: Any, libraries: Any, quick: None) -> None:  # noqa: ARG001
    library.publish("pendant")
    page = (library.build / "pendant" / "index.html").read_text("utf-8")
    assert "Cut a disc of 22 mm." in libraries.said(page)
    assert "You should see: It is round." in libraries.said(page)
    [cut] = [row for row in library.handout("pendant").rows if row.title == "Cut"]
    assert [(f.label, libraries.said(f.value), libraries.said(f.unit)) for f in cut.figures] == [
        ("Disc, cut wet", "22", "mm")
    ]


def test_what_to_have_of_a_clay_is_enough_and_what_is_used_stands_under_it_only_where_it_is_less(
    library: Any, libraries: Any
) -> None:
    def clay() -> tuple[str, str]:
        [need] = [need for need in library.handout("pendant").needs if need.name == "Test silver"]
        return libraries.said(need.amount), libraries.said(need.detail)

    # a disc cut at 22, 1 mm thick, is 380 mm³ and weighs 2.66 g; with 15 % for waste 3.06 g
    assert clay() == ("3.5 g", "about 2.7 g is used")
    # a slab of 28 by 28 mm takes 784 mm³, 5.49 g, however little of it is cut out
    library.change("studio.yaml", "units: mm\n", "units: mm\nslab width: 100 mm\nslab length: 150 mm\n")
    assert clay() == ("5.5 g", "about 2.7 g is used")
    library.change("studio.yaml", "slab width: 100 mm\nslab length: 150 mm\n", "")
    # a disc that weighs as much as a shop's scale shows, and nothing for waste
    library.change("pendant/project.yaml", "parts:\n", "allowance:\n  clay: 0\nparts:\n")
    library.change("pendant/project.yaml", "  width: 20 mm\n", "  width: 21.2 mm\n")  # 23.5 mm: 2.984 g
    assert clay() == ("3 g", "")


@pytest.mark.parametrize(("rate", "printed"), [("300-500 °C/h", "300 – 500 °C/h"), ("300 °C/h", "300 °C/h")])
def test_a_range_of_heating_rates_is_printed_as_a_range(
    rate: str,
    printed: str,
    library: Any,
    libraries: Any,
    quick: None,  # noqa: ARG001
) -> None:
    library.change("stock/clays.yaml", "        hold: 30 min\n", f"        hold: 30 min\n        rate: {rate}\n")
    library.publish("pendant")
    page = re.sub(r"<[^>]*>", " ", (library.build / "pendant" / "index.html").read_text("utf-8"))
    assert f"Heat up at {printed}" in libraries.said(page)


def test_the_json_is_of_the_form_that_is_documented(library: Any, quick: None) -> None:  # noqa: ARG001
    # design, section 6
    library.publish("drops")
    told = json.loads((library.build / "drops" / "figures.json").read_text("utf-8"))
    assert told.keys() == {"project", "revision", "versions", "materials"}
    assert (told["project"], told["revision"]) == ("drops", "1")
    assert list(told["versions"]) == ["main", "Long"]
    figures = told["versions"]["main"]
    assert "body.wet_length" in figures
    assert "class_clay" in figures
    for figure in figures.values():
        assert figure.keys() == {"label", "value", "low", "high", "unit", "working", "printed"}
        assert figure["printed"].keys() == {"value", "words", "unit"}
        assert figure["low"] <= figure["value"] <= figure["high"]
    assert figures["body.wet_length"]["value"] == pytest.approx(22 / 0.91, rel=1e-12)  # unrounded
    assert figures["body.wet_length"]["unit"] == "mm"
    assert figures["body.wet_length"]["printed"] == {"value": 24.0, "words": "24", "unit": "mm"}
    assert list(told["materials"]) == list(told["versions"])
    # two tubes of 35.5 × 24 × 0.75 × 7 ÷ 1000 = 4.473 g, and a fifth more for waste; adhesive is taken as needed
    assert told["materials"]["main"].keys() == {"silver", "glass-2", "ear-wire"}
    assert told["materials"]["main"]["silver"] == {
        "name": "Test silver", "unit": "g", "used": 9.0, "have": 11.0, "back": 2.0,
        "printed": {"used": "9 g", "have": "11 g", "back": "2 g"},
    }  # fmt: skip


@pytest.mark.usefixtures("quick")
def test_the_slab_counts_in_every_place_that_says_what_to_have_of_a_clay(library: Any, libraries: Any) -> None:
    library.change("studio.yaml", "units: mm\n", "units: mm\nslab width: 100 mm\nslab length: 150 mm\n")
    large = 'versions:\n  - {name: Large, width: 30 mm}\nclass: {people: 4, evenings: ["18:00-21:00", "18:00-21:00"]}\n'
    library.change("pendant/project.yaml", "steps:\n", f"{large}steps:\n")
    outcome = library.publish("pendant")
    assert not outcome.troubles.errors, list(map(str, outcome.troubles))
    told = json.loads((library.build / "pendant" / "figures.json").read_text("utf-8"))["materials"]
    # discs of 22 and 33 mm, 3 mm free all round, 1 mm thick: 28² × 7 ÷ 1000 = 5.49 g, 39² × 7 ÷ 1000 = 10.65 g
    assert [told[name]["silver"]["printed"]["have"] for name in ("main", "Large")] == ["5.5 g", "11 g"]
    sheet = library.teacher("pendant")
    [row] = [cells for table in sheet.versions for label, cells in table.rows if label == "Have: test silver"]
    assert [libraries.said(cell) for cell in row] == ["5.5 g", "11 g"]
    # four roll at the same time: 4 × 5.488 = 21.95
    assert [libraries.said(one.amount) for one in sheet.quantities if one.name == "Test silver"] == ["22 g"]
    [have] = [group for group in sheet.workings if group.part == "To have, with its allowance"]
    assert [(row.working, libraries.said(row.comes_to)) for row in have.rows] == [
        ("max(2.66093 × 1.15, 5.488)", "5.5 g")
    ]
    assert "largest slab" in sheet.signs


def test_a_version_has_its_own_folder_and_the_files_link_to_each_other(library: Any, quick: None) -> None:  # noqa: ARG001
    library.publish()
    for path in library.build.rglob("*.html"):
        text = path.read_text("utf-8")
        for link in re.findall(r'href="([^"#]+)"', text):
            if not link.startswith(("http", "mailto", "data:")):
                assert (path.parent / link).resolve().is_file(), f"{path}: {link}"
        for font in re.findall(r"url\('([^')]+)'\)", text):
            assert (path.parent / font).resolve().is_file(), f"{path}: {font}"
    assert (library.build / "drops" / "long" / "index.html").is_file()


def test_a_teachers_sheet_has_its_own_version_first_among_the_versions_and_only_rows_that_differ(library: Any) -> None:
    [table] = library.teacher("drops", "Long").versions
    assert table.names == ("Long", "As designed")
    cells = dict(table.rows)
    # 30 and 22 mm ÷ 0.91: 32.97 and 24.18
    assert cells["Body: length"] == ("33", "24")
    assert "Body: how many" not in cells
    assert all(len(set(row)) > 1 for row in cells.values())


def test_many_versions_are_compared_in_several_tables_each_with_the_rows_that_differ_in_it(library: Any) -> None:
    more = "".join(f"  - name: V{i}\n    bore: {6 + i} mm\n" for i in range(3))
    library.change("drops/project.yaml", "versions:\n", f"versions:\n{more}")
    tables = library.teacher("drops").versions
    assert [table.names[0] for table in tables] == ["As designed"] * 2
    assert sorted(name for table in tables for name in table.names[1:]) == ["Long", "V0", "V1", "V2"]
    for table in tables:
        assert table.rows
        assert all(len(set(cells)) > 1 for _, cells in table.rows)


def test_what_the_adhesive_wants_on_the_hands_is_on_the_list_of_tools(library: Any) -> None:
    # gloves against heat do not count
    library.change("stock/others.yaml", "  roller:\n", "  mitts:\n    name: Heat-proof gloves, dry\n  roller:\n")
    library.change(
        "drops/project.yaml", "    uses: [stone, epoxy, ear-wire]", "    uses: [stone, epoxy, ear-wire, mitts]"
    )
    [safety] = [tools.names for tools in library.handout("drops").tools if tools.place == "safety"]
    assert "Nitrile gloves, or those that the adhesive's maker names" in safety


def test_words_of_a_file_cannot_become_code_of_the_page(library: Any, quick: None) -> None:  # noqa: ARG001
    evil = "<script>alert(1)</script>"
    library.change("pendant/project.yaml", "title: Round pendant", f'title: "{evil}"')
    library.change("pendant/project.yaml", "makes: 1 pendant", f'makes: "{evil}"')
    library.change("pendant/project.yaml", "    expect: It is round.", f'    expect: "{evil} {{{{ plate.wet_disc }}}}"')
    library.change("pendant/project.yaml", "  - title: Cut", f'  - title: "{evil}"')
    library.change("studio.yaml", "name: Test Bench", f'name: "{evil}"')
    library.publish()
    for name in ("index.html", "pendant/index.html"):
        assert "<script>alert" not in (library.build / name).read_text("utf-8")


def test_a_sheet_in_inches_prints_sixty_fourths(library: Any) -> None:
    library.change("studio.yaml", "units: mm", "units: in")
    library.change("pendant/project.yaml", "  width: 20 mm", "  width: 1 in")
    sheet = library.teacher("pendant")
    # 1 in ÷ 0.91 = 1.0989 in, of which 0.0989 is 6.3 sixty-fourths
    assert size([("", row) for row in sheet.sizes], "disc")[1] == "1 3/32"
    assert sheet.unit == "in"
    assert "Strip wet, in" in sheet.results


def test_a_sheet_with_decimal_commas_has_no_decimal_points(library: Any) -> None:
    library.change("studio.yaml", "currency: EUR", 'currency: EUR\ndecimal sign: ","')
    rows = library.teacher("drops").sizes
    assert any("," in row.fires for row in rows)
    for row in rows:
        assert not any(re.search(r"\d\.\d", cell) for cell in (row.finished, row.make, row.fires)), row


@pytest.fixture(scope="module")
def printer() -> Any:
    return Printer()


@pytest.mark.parametrize(
    "link",
    ["https://example.invalid/a.png", "file:///etc/hostname", "/etc/hostname", "../../secret.png", "ftp://x.invalid/y"],
)
def test_the_printer_fetches_nothing_from_outside(link: str, printer: Any) -> None:
    page = f'<!doctype html><html lang="en"><head><title>x</title></head><body><img src="{link}" alt="x"></body></html>'
    with pytest.raises(CannotBe, match="could not be printed"):
        printer.pdf(page, "x")


def test_what_the_printer_only_murmurs_is_a_trouble(printer: Any) -> None:
    head = "<head><title>x</title><style>p { colour: red }</style></head>"
    page = f'<!doctype html><html lang="en">{head}<body><p>x</p></body></html>'
    with pytest.raises(CannotBe):
        printer.pdf(page, "x")


def test_what_is_used_up_by_a_bare_number_stands_in_the_list_alone(library: Any) -> None:
    [used] = [group for group in library.teacher("drops").workings if group.part.startswith("To have")]
    workings = [row.working for row in used.rows]
    assert any("×" in working for working in workings)
    assert [working for working in workings if re.fullmatch(r"[\d.]+", working)] == []
