"""Labels on paper, measured and read back: where they lie, what their code says, whose name is whole."""

from __future__ import annotations

import io
import re
import shutil
from collections import Counter
from dataclasses import replace
from itertools import pairwise
from pathlib import Path
from typing import Any

import pdfplumber
import pypdfium2
import pytest
import zxingcpp

from sheetgen.base.trouble import CannotBe
from sheetgen.model.cards import BagLabel
from sheetgen.model.kit_cards_view import Label, OrderHead, Warned
from sheetgen.model.labels import LabelGrid
from sheetgen.render.labels import labels_pdf
from sheetgen.render.pdf import Printer
from sheetgen.render.theme import Theme

ROOT = Path(__file__).parents[2]
MM = 25.4 / 72
NEAR = 0.2  # mm
A4 = LabelGrid(3, 8, 64, 34, 6.5, 12, 2.5, 0, "A4")
LETTER = LabelGrid(2, 5, 101.6, 50.8, 4.76, 12.7, 3.18, 0, "Letter")
LOW = LabelGrid(5, 13, 38, 21, 8, 10, 1, 0, "A4")
GRIDS = [pytest.param(A4, id="A4"), pytest.param(LETTER, id="Letter")]
URL = "https://quillmarsh.example/buoy-drops/long/k7m3qx.html"
LONG = "Bartholomew Featherstonehaugh-Cholmondeley of the Upper Saltmarsh and Lower Reed"
JOINED = "Ananthapadmanabhasubramaniamvenkatanarasimharajuvaripetagarudamanickamsubbalaksh"
ARABIC = "ياسمين بنت عبد الرحمن بن محمد الخطيب الدمشقي من الحي القديم قرب البحيرة الكبيرة "
GREEK = "Παπακωνσταντίνου " * 5
BAG = Label(slip=False, bag="A clay, 1 of 4", which="", title="Buoy drops", version="Long", colourway="", items=())
LAST = replace(BAG, bag="D adhesive, 4 of 4", which="kit 2 of 3", items=("release balm", "alcohol", "cling film") * 3)


@pytest.fixture(scope="module")
def printer() -> Printer:
    return Printer()


THEME = Theme("plain", [])


def label(order: str, name: str = "Wren", url: str = URL, of: Label = BAG) -> BagLabel:
    return BagLabel(OrderHead(order, name), of, url)


def printed(printer: Printer, labels: list[BagLabel], grid: LabelGrid, skip: int = 0) -> Any:
    made = labels_pdf(labels, grid, THEME, printer, skip=skip)
    return pdfplumber.open(io.BytesIO(made.pdf)), made


def words_of(page: Any, grid: LabelGrid, nth: int) -> list[dict[str, Any]]:
    """The letters on a label, by where they begin."""
    x, y = grid.spot(nth)
    return [c for c in page.chars if x <= c["x0"] * MM < x + grid.wide and y <= c["top"] * MM < y + grid.tall]


def text_of(page: Any, grid: LabelGrid, nth: int) -> str:
    return "".join(c["text"] for c in words_of(page, grid, nth))


def read_back(pdf: bytes, page: int = 0) -> list[Any]:
    image = pypdfium2.PdfDocument(pdf)[page].render(scale=300 / 72).to_pil()
    return list(zxingcpp.read_barcodes(image))


@pytest.mark.parametrize("grid", GRIDS)
def test_every_label_lies_where_its_sheet_has_it(printer: Printer, grid: LabelGrid) -> None:
    """The number begins 1.5 mm from the left; the code ends, with four modules of 33, at the lower right corner."""
    pdf, _ = printed(printer, [label(f"Q-{n}") for n in range(grid.many)], grid)
    [page] = pdf.pages
    quiet = 4 * 20 / 33
    codes = sorted((r for r in page.curves + page.rects if r["fill"]), key=lambda r: (r["top"], r["x0"]))
    for nth in range(grid.many):
        x = grid.left + (grid.wide + grid.gap_across) * (nth % grid.across)
        y = grid.top + (grid.tall + grid.gap_down) * (nth // grid.across)
        first = words_of(page, grid, nth)[0]
        assert first["text"] == "Q"
        assert first["x0"] * MM == pytest.approx(x + 1.5, abs=NEAR)
        own = [c for c in codes if x < c["x0"] * MM < x + grid.wide and y < c["top"] * MM < y + grid.tall]
        edges = [min(c[edge] for c in own) for edge in ("x0", "top")]
        edges += [max(c[edge] for c in own) for edge in ("x1", "bottom")]
        right, bottom = x + grid.wide - quiet, y + grid.tall - quiet
        wanted = [right - 20, bottom - 20, right, bottom]
        assert [edge * MM for edge in edges] == pytest.approx(wanted, abs=NEAR)


@pytest.mark.parametrize("grid", GRIDS)
def test_every_code_can_be_read_back_from_the_page(printer: Printer, grid: LabelGrid) -> None:
    urls = [f"https://quillmarsh.example/ring/{n:06}.html" for n in range(grid.many)]
    _, made = printed(printer, [label(f"Q-{n}", url=url) for n, url in enumerate(urls)], grid)
    assert sorted(one.text for one in read_back(made.pdf)) == urls


def test_nothing_is_printed_within_four_modules_of_a_code(printer: Printer) -> None:
    long = label("2026-11-WHOLESALE-QUILLMARSH-00000000017", LONG, of=LAST)
    pdf, _ = printed(printer, [long] * A4.many, A4)
    quiet = 4 * 20 / 33
    for nth in range(A4.many):
        x, y = A4.spot(nth)
        left, top = x + A4.wide - 20 - 2 * quiet, y + A4.tall - 20 - 2 * quiet
        for c in words_of(pdf.pages[0], A4, nth):
            assert c["x1"] * MM <= left or c["bottom"] * MM <= top + 0.9, c["text"]  # the foot of a line is blank


def test_of_a_sheet_that_is_begun_the_first_labels_stay_empty(printer: Printer) -> None:
    pdf, _ = printed(printer, [label(f"Q-{n}") for n in range(25)], A4, skip=5)
    first, second = pdf.pages
    assert [text_of(first, A4, nth) for nth in range(5)] == [""] * 5
    assert text_of(first, A4, 5).startswith("Q-0")
    assert text_of(first, A4, 23).startswith("Q-18")
    assert text_of(second, A4, 0).startswith("Q-19")
    assert text_of(second, A4, 6) == ""


@pytest.mark.parametrize("skip", [-1, 24, 100])
def test_more_labels_cannot_be_gone_than_a_sheet_has(printer: Printer, skip: int) -> None:
    with pytest.raises(CannotBe, match="cannot be gone") as told:
        labels_pdf([label("Q-1")], A4, THEME, printer, skip=skip)
    assert told.value.help == "0 to 23: a sheet has 24 labels"


@pytest.mark.parametrize("grid", [*GRIDS, pytest.param(LOW, id="low")])
@pytest.mark.parametrize("name", [LONG, JOINED, ARABIC, GREEK], ids=["Latin", "one word", "Arabic", "Greek"])
def test_a_name_of_80_letters_fits_its_label_or_is_visibly_shortened(
    printer: Printer, grid: LabelGrid, name: str
) -> None:
    pdf, _ = printed(printer, [label("Q-2602", name, of=LAST)] * 2, grid)
    [page] = pdf.pages
    assert len(page.chars) == len(words_of(page, grid, 0)) + len(words_of(page, grid, 1))
    x, y = grid.spot(0)
    for c in words_of(page, grid, 0):
        assert c["x1"] * MM <= x + grid.wide
        assert c["bottom"] * MM <= y + grid.tall
    text = text_of(page, grid, 0)
    assert "Q-2602" in text
    assert "…" in text or not Counter(name.replace(" ", "")) - Counter(text)


@pytest.mark.parametrize("url", [URL, ""], ids=["code", "no code"])
@pytest.mark.parametrize("name", [LONG, JOINED, ARABIC, GREEK], ids=["Latin", "one word", "Arabic", "Greek"])
def test_a_name_on_two_lines_lies_on_nothing_else(printer: Printer, name: str, url: str) -> None:
    pdf, _ = printed(printer, [label("Q-2602", name, url)], A4)
    letters = [c for c in words_of(pdf.pages[0], A4, 0) if c["text"].strip()]
    rows = sorted({round(c["matrix"][5], 1) for c in letters}, reverse=True)
    assert len(rows) >= 4
    assert all(upper - lower > 8 for upper, lower in pairwise(rows))


@pytest.mark.parametrize("grid", [*GRIDS, pytest.param(LOW, id="low")])
def test_the_number_of_an_order_is_never_shortened(printer: Printer, grid: LabelGrid) -> None:
    number = "WWWW-2026-WHOLESALE-QUILLMARSH-000000017"
    pdf, _ = printed(printer, [label(number, LONG, of=LAST), label("Q-1", of=LAST)], grid)
    assert number in text_of(pdf.pages[0], grid, 0).replace("\u00ad", "")
    sizes = [max(c["size"] for c in words_of(pdf.pages[0], grid, nth)) for nth in (0, 1)]
    assert sizes[0] < sizes[1]


def test_a_name_that_is_read_from_the_right_begins_there(printer: Printer) -> None:
    pdf, _ = printed(printer, [label("Q-1", "מירב אלמוג")], A4)
    letters = {c["text"]: c["x0"] for c in words_of(pdf.pages[0], A4, 0) if "א" <= c["text"] <= "ת"}
    assert letters["ר"] > letters["א"] > letters["ל"] > letters["ו"] > letters["ג"]


def test_a_shortened_name_from_the_right_has_its_sign_at_the_left(printer: Printer) -> None:
    pdf, _ = printed(printer, [label("Q-1", ARABIC)], A4)
    letters = words_of(pdf.pages[0], A4, 0)
    [sign] = [c for c in letters if c["text"] == "…"]
    line = [c for c in letters if abs(c["bottom"] - sign["bottom"]) < 3]
    assert sign["x0"] == min(c["x0"] for c in line)


def test_a_letter_that_no_type_face_has_is_told_by_the_orders_number_alone(printer: Printer) -> None:
    """Letters of Unicode's private part, and of a script that hardly any machine has a face for."""
    names = {"Q-1": "Wren", "Q-2": "\U00016f00\U00016f01", "Q-3": "Żółć", "Q-4": "Ada \U00016f00", "Q-5": "מירב"}
    made = labels_pdf([label(order, name) for order, name in names.items()], A4, THEME, printer)
    told = [str(trouble) for trouble in made.troubles]
    assert [order for order in names if any(f"order {order}:" in one for one in told)] == ["Q-2", "Q-4"]
    assert not any(word in one for one in told for word in ("Ada", "\U00016f00", "16F00", "Wren"))
    [page] = pdfplumber.open(io.BytesIO(made.pdf)).pages
    text = [text_of(page, A4, nth) for nth in range(5)]
    assert ["name: see the order" in one for one in text] == [False, True, False, True, False]
    assert "Ada" not in text[3]


def test_a_label_too_low_for_a_code_has_none_and_that_is_said_once(printer: Printer) -> None:
    pdf, made = printed(printer, [label(f"Q-{n}", of=LAST) for n in range(9)], LOW)
    assert not read_back(made.pdf)
    [told] = made.troubles
    assert "no code is printed" in told.message
    assert "38 × 21 mm" in told.message
    assert told.severity == "warning"
    assert "kit 2 of 3" in text_of(pdf.pages[0], LOW, 0).replace("\u00a0", " ")


def test_without_an_address_no_code_is_printed_and_nothing_said(printer: Printer) -> None:
    _, made = printed(printer, [label("Q-1", url="")], A4)
    assert not read_back(made.pdf)
    assert not made.troubles


def test_an_address_too_long_for_a_phone_to_read_is_told(printer: Printer) -> None:
    """20 mm in modules of 0.4 mm are 50 a side; 300 letters want 69."""
    _, made = printed(printer, [label("Q-1", url=f"https://a.example/{'x' * 300}")], A4)
    assert not read_back(made.pdf)
    assert "too long for a code" in made.troubles[0].message


def test_a_number_that_leaves_no_room_for_the_name_is_told_without_the_name(printer: Printer) -> None:
    number, low = "WWWW-2026-WHOLESALE-QUILLMARSH-000000017", LabelGrid(4, 10, 45, 20, 8, 10, 1, 0, "A4")
    pdf, made = printed(printer, [label(number, LONG)], low)
    assert number in text_of(pdf.pages[0], low, 0)
    assert [number in one.message and "Barth" not in str(one) for one in made.troubles if "name" in one.message] == [
        True
    ]


def test_what_there_is_no_room_to_name_is_counted(printer: Printer) -> None:
    items = tuple(f"{word} cloth" for word in ("blue", "green", "amber", "coral", "slate", "moss", "sand", "rust"))
    items += tuple(f"{word} felt" for word in ("blue", "green", "amber", "coral"))
    pdf, _ = printed(printer, [label("Q-1", of=replace(LAST, items=items))], A4)
    text = text_of(pdf.pages[0], A4, 0).replace(" ", "")
    named = sum(item.replace(" ", "") in text for item in items)
    assert 0 < named < len(items)
    assert f"and{len(items) - named}more" in text


def test_which_bag_it_is_is_read_from_arms_length_and_what_is_in_it_is_told_before_what_is_not(
    printer: Printer,
) -> None:
    """12 pt for the bag and for which kit, however much is to be said; the card names what must be to hand."""
    inside = ("Two-part stone adhesive: 4 mL", "Copper wire: 16 AWG 465 mm, 18 AWG 225 mm")
    of = replace(LAST, inside=inside, version="Silver, short", colourway="deep water")
    pdf, _ = printed(printer, [label("Q-1", of=of)], A4)
    letters, text = words_of(pdf.pages[0], A4, 0), text_of(pdf.pages[0], A4, 0)
    assert "4\u00a0mL" in text
    assert "release balm" not in text
    for words in ("D adhesive", "kit 2 of 3"):
        at = text.index(words)
        assert round(letters[at]["size"]) == 12


def test_a_label_has_room_for_design_version_colourway_and_all_that_lies_in_its_bag(printer: Printer) -> None:
    """All colours, all metal; what is not in the kit gives."""
    stones = ("Foiled stone PP 18: clear 7 + 1, smoke 5 + 1",)
    metal = ("Copper wire: 84 mm", "Embedding eye: 2", "Ear wires: 2 + 1")
    adhesive = ("Two-part stone adhesive: 4 mL",)
    wires = ("Sterling-silver wire: 20 AWG 365 mm, 22 AWG 320 mm, 24 AWG 110 mm",)
    for inside in (stones, metal, adhesive, wires):
        of = replace(LAST, inside=inside, version="Silver, short", colourway="grey sea")
        pdf, _ = printed(printer, [label("Q-1", "Thessaly Fennmoor", of=of)], A4)
        text = text_of(pdf.pages[0], A4, 0).replace("\u00a0", " ").replace(" ", "")
        for words in ("Buoy drops · Silver, short · grey sea", *inside):
            assert words.replace(" ", "") in text
        assert ("Notinthekit:seethecard" in text) == (inside in {stones, adhesive})


@pytest.mark.parametrize("grid", GRIDS)
def test_a_crowded_label_says_its_version_and_colourway_whole(printer: Printer, grid: LabelGrid) -> None:
    """What lies in the bag gives down to its first, and then the name of the design."""
    inside = tuple(f"Glass bead {colour}: 12 + 1" for colour in ("amber", "moss", "coral", "slate", "rust", "sand"))
    long = replace(LAST, inside=inside * 3, title="Buoy drops of the upper saltmarsh", version="Silver, short")
    pdf, _ = printed(printer, [label("Q-1", LONG, of=replace(long, colourway="grey sea"))], grid)
    text = re.sub(r"\s", "", text_of(pdf.pages[0], grid, 0))
    assert "Silver,short·greysea" in text
    assert "Dadhesive,4of4" in text
    named = text.count("12+1")
    assert named
    assert f"and{18 - named}more" in text or named == 18


SMALL = LabelGrid(5, 13, 36, 20, 8, 10, 1, 0, "A4")
ADHESIVE = Warned(
    "WARNING",
    "Uncured adhesive. Irritates skin and eyes, and can make you allergic for good. Open and use it as the sheet says.",
    "Adhesive: gloves",
)


@pytest.mark.parametrize(
    ("grid", "words"),
    [
        pytest.param(LETTER, f"WARNING {ADHESIVE.text}", id="Letter"),
        pytest.param(A4, f"WARNING {ADHESIVE.short}", id="A4"),
        pytest.param(SMALL, ADHESIVE.short, id="least"),
    ],
)
def test_a_caution_stays_on_every_label_in_few_words_where_there_is_no_room_for_more(
    printer: Printer, grid: LabelGrid, words: str
) -> None:
    inside = ("Two-part stone adhesive: 4 mL",)
    of = replace(LAST, inside=inside, version="Silver, short", colourway="grey sea", warned=(ADHESIVE,), which="")
    pdf, _ = printed(printer, [label("Q-1", "Thessaly Fennmoor", of=of)], grid)
    text = re.sub(r"\s", "", text_of(pdf.pages[0], grid, 0))
    assert words.replace(" ", "") in text
    assert ("Buoydrops·Silver,short·greysea" in text) == (grid is not SMALL)


@pytest.mark.parametrize("short", ["Adhesive: gloves", "Vapour: air, no flame"])
def test_a_bag_with_a_caution_says_how_much_is_in_it_whatever_else_gives(printer: Printer, short: str) -> None:
    warned = replace(ADHESIVE, short=short)
    inside, bag = ("Two-part stone adhesive: 4\u00a0mL",), "B two-part stone adhesive, 2\u00a0of\u00a04"
    of = replace(BAG, bag=bag, inside=inside, version="Bronze clay", warned=(warned,), colourway="", which="")
    pdf, _ = printed(printer, [label("Q-2703", "Linnet Fairlead", of=of)], A4)
    text = re.sub(r"\s", "", text_of(pdf.pages[0], A4, 0))
    assert f"{short}; 4 mL".replace(" ", "") in text
    assert "Bronzeclay" in text


def test_of_more_than_a_label_holds_the_first_are_named_and_the_others_counted(printer: Printer) -> None:
    wires = ("Sterling-silver wire: " + ", ".join(f"{n} AWG {n}65 mm" for n in range(12, 28)),)
    pdf, _ = printed(printer, [label("Q-1", of=replace(BAG, inside=wires))], A4)
    text = text_of(pdf.pages[0], A4, 0).replace("\u00a0", " ").replace("\n", " ")
    named = re.findall(r"(\d+) ?AWG", text)
    assert named == [str(n) for n in range(12, 12 + len(named))]
    assert len(named) >= 3, text
    assert f"and {16 - len(named)} more" in text


def test_the_same_labels_are_the_same_bytes(printer: Printer) -> None:
    each = [label(f"Q-{n}", LONG) for n in range(4)]
    assert labels_pdf(each, A4, THEME, printer).pdf == labels_pdf(each, A4, THEME, printer).pdf


def test_a_name_cannot_turn_the_line_or_be_markup(printer: Printer) -> None:
    pdf, _ = printed(printer, [label("Q-1", "\u202eWren <b>&amp; Co\x07\u2028.")], A4)
    assert "Wren <b>&amp; Co" in text_of(pdf.pages[0], A4, 0).replace("  ", " ")


@pytest.mark.parametrize("hides", ["overflow: hidden; height: 3mm", "visibility: hidden", "color: #fff"])
def test_a_theme_that_hides_the_number_is_refused(printer: Printer, tmp_path: Path, hides: str) -> None:
    folder = tmp_path / "plain"
    shutil.copytree(ROOT / "themes" / "plain", folder)
    with (folder / "pieces.css").open("a") as style:
        style.write(f".number {{ {hides} }}")
    with pytest.raises(CannotBe, match="label-head") as told:
        labels_pdf([label("Q-1", LONG)], A4, Theme("plain", [tmp_path]), printer)
    assert "Bartholomew" not in str(told.value)
