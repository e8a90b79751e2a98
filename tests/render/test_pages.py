"""Pages: what a worked project shows, and that it shows what is made."""

from __future__ import annotations

import html
import json
import re
from typing import Any

import pytest

from sheetgen.base.trouble import CannotBe
from sheetgen.render.pdf import Printer


def said(text: str) -> str:
    return html.unescape(text).replace("\u202f", " ").replace("\u00a0", " ")


def rows(page: str, heading: str) -> list[list[str]]:
    """The cells of the table that follows a heading."""
    part = page[page.index(f"<h2>{heading}</h2>") :]
    body = part[part.index("<tbody>") : part.index("</tbody>")]
    return [
        [said(re.sub(r"<[^>]*>", "", cell)).strip() for cell in re.findall(r"<td[^>]*>(.*?)</td>", row, re.DOTALL)]
        for row in re.findall(r"<tr[^>]*>(.*?)</tr>", body, re.DOTALL)
    ]


@pytest.fixture(scope="module")
def page(flats: Any) -> str:
    return str((flats.build / "flats" / "index.html").read_text("utf-8"))


def size_row(page: str, label: str, part: str = "") -> list[str]:
    current = ""
    for row in rows(page, "Sizes"):
        current = row[0] or current
        if row[1].startswith(label) and (not part or current.lower().startswith(part)):
            return row
    raise AssertionError(f"no size '{label}' of {part}")


def test_the_fired_range_beside_a_size_is_that_of_the_printed_size(page: str) -> None:
    # the disc is printed as 22.0 and so cut: it fires to 22 × 0.90 = 19.80 to 22 × 0.92 = 20.24, and not to
    # 21.978 × 0.90 to 21.978 × 0.92, which would end at 20.2
    assert size_row(page, "disc", "disc")[2:5] == ["20", "22", "19.8 – 20.3"]


def test_the_bore_is_worked_from_the_former_that_is_owned(page: str) -> None:
    # 9 mm and a sheet of 0.1 mm on each side: 9.2 × 0.90 = 8.28, 9.2 × 0.92 = 8.464
    assert size_row(page, "bore")[2:5] == ["8", "9", "8.2 – 8.5"]


def test_the_ring_is_worked_from_the_mark_on_the_former(page: str) -> None:
    # 18.8 mm and the sheet: 19 × 0.90 = 17.1, 19 × 0.92 = 17.48
    assert size_row(page, "inside", "band")[3:5] == ["18.8", "17.1 – 17.5"]


def test_every_printed_size_holds_its_finished_size_or_comes_within_half_a_step_of_it(page: str) -> None:
    """Rounding to half a millimetre moves the fired size by a quarter at most."""
    seen = 0
    for _, label, finished, _make, fires, _tool in rows(page, "Sizes"):
        if re.fullmatch(r"[\d.]+", finished) and " – " in fires and label != "bore":
            low, high = map(float, fires.split(" – "))
            assert low - 0.25 <= float(finished) <= high + 0.25, label
            seen += 1
    assert seen >= 8


def test_a_step_shows_its_figures_beside_its_words(libraries: Any, tmp_path: Any, quick: None) -> None:  # noqa: ARG001
    library = libraries.make(tmp_path)
    library.publish("pendant")
    page = said((library.build / "pendant" / "index.html").read_text("utf-8"))
    assert re.search(r'Cut a disc of <span class="n">22 mm</span>', page)
    assert "You should see:" in page


def test_a_list_that_says_more_clay_than_the_parts_says_why(library: Any, quick: None) -> None:  # noqa: ARG001
    def clay() -> str:
        library.publish("pendant")
        page = (library.build / "pendant" / "index.html").read_text("utf-8")
        found = re.search(r"Test silver: ((?:with|rounded)[^<]*?)\.", said(page))
        assert found
        return found[1]

    # a disc cut at 22.0, 1 mm thick, weighs 2.66 g: 2.7 g on its line; with 15 % for waste 3.06 g, listed as 3.5 g
    assert clay() == "with 15 % for waste"
    library.change("pendant/project.yaml", "parts:\n", "allowance:\n  clay: 0\nparts:\n")
    assert clay() == "rounded up"  # 3 g: a shop's scale shows halves
    library.change(
        "pendant/project.yaml", "    thickness: 4 cards\n", "    thickness: 4 cards\n    rolled first: 6 cards\n"
    )
    assert clay() == "with what is in the hand to roll it thick first"


@pytest.mark.parametrize(("rate", "printed"), [("300-500 °C/h", "300 – 500 °C/h"), ("300 °C/h", "300 °C/h")])
def test_a_range_of_heating_rates_is_printed_as_a_range(
    rate: str,
    printed: str,
    library: Any,
    quick: None,  # noqa: ARG001
) -> None:
    library.change("stock/clays.yaml", "        hold: 30 min\n", f"        hold: 30 min\n        rate: {rate}\n")
    library.publish("pendant")
    page = said(re.sub(r"<[^>]*>", " ", (library.build / "pendant" / "index.html").read_text("utf-8")))
    assert f"Heat up at {printed}" in " ".join(page.replace("\u2060", "").split())


def test_the_json_is_of_the_form_that_is_documented(library: Any, quick: None) -> None:  # noqa: ARG001
    # design, section 6
    library.publish("drops")
    told = json.loads((library.build / "drops" / "figures.json").read_text("utf-8"))
    assert told.keys() == {"project", "revision", "versions"}
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


def test_a_sheet_has_its_own_version_first_among_the_versions(library: Any, quick: None) -> None:  # noqa: ARG001
    library.publish("drops")
    long = said((library.build / "drops" / "long" / "index.html").read_text("utf-8"))
    heads = re.findall(r"<th[^>]*>([^<]*)</th>", long[long.index("The versions side by side") :])
    assert heads[1:3] == ["Long, this sheet", "As designed"]


def test_what_the_adhesive_wants_on_the_hands_is_on_the_list_of_tools(library: Any, quick: None) -> None:  # noqa: ARG001
    # gloves against heat do not count
    library.change("stock/others.yaml", "  roller:\n", "  mitts:\n    name: Heat-proof gloves, dry\n  roller:\n")
    library.change(
        "drops/project.yaml", "    uses: [stone, epoxy, ear-wire]", "    uses: [stone, epoxy, ear-wire, mitts]"
    )
    library.publish("drops")
    page = said((library.build / "drops" / "index.html").read_text("utf-8"))
    tools = page[page.index("Tools to hand") : page.index("<h2>Sizes")]
    assert "Nitrile gloves, or those that the adhesive's maker names" in tools


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


def test_a_sheet_in_inches_prints_sixty_fourths(library: Any, quick: None) -> None:  # noqa: ARG001
    library.change("studio.yaml", "units: mm", "units: in")
    library.change("pendant/project.yaml", "  width: 20 mm", "  width: 1 in")
    library.publish("pendant")
    page = (library.build / "pendant" / "index.html").read_text("utf-8")
    # 1 in ÷ 0.91 = 1.0989 in, of which 0.0989 is 6.3 sixty-fourths
    assert size_row(page, "disc")[3] == "1 3/32"


def test_a_sheet_with_decimal_commas_has_no_decimal_points(library: Any, quick: None) -> None:  # noqa: ARG001
    library.change("studio.yaml", "currency: EUR", 'currency: EUR\ndecimal sign: ","')
    library.publish("drops")
    page = (library.build / "drops" / "index.html").read_text("utf-8")
    for row in rows(page, "Sizes"):
        assert not any(re.search(r"\d\.\d", cell) for cell in row), row


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


def test_what_is_used_up_by_a_bare_number_stands_in_the_list_alone(library: Any, quick: None) -> None:  # noqa: ARG001
    library.publish("drops")
    page = (library.build / "drops" / "index.html").read_text("utf-8")
    used = page[page.index("Used up, with its allowance") :]
    workings = re.findall(r"<tr><td>[^<]*</td><td>([^<]*)</td>", used)
    assert any("×" in working for working in workings)
    assert [working for working in workings if re.fullmatch(r"[\d.]+", working)] == []
