"""The stack of a run: a printer that prints on both sides gives the paper of each order by itself."""

from __future__ import annotations

import io
import random
from typing import TYPE_CHECKING, Any

import pdfplumber
import pikepdf
import pypdfium2
import pytest
from PIL import ImageChops

from sheetgen.base.trouble import CannotBe
from sheetgen.model.stack import Document, Stacked
from sheetgen.publish.letters import lacking
from sheetgen.publish.stack import stack
from sheetgen.render.number import number_drawn

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    from sheetgen.render.pdf import Printer

PAPERS = ("a4", "letter")
QUARTER_INCH = 18.0  # pt: what many printers leave white
DOTS = 2.0  # a point, where pages are compared
INK = ("char", "line", "rect", "curve", "image")


@pytest.fixture(scope="module")
def small(printed: Callable[..., Document]) -> list[Document]:
    """Documents of one to five pages; each page says whose it is."""

    def pages(key: str, many: int) -> str:
        return "".join(f"<p class='{'next' if at else 'first'}'>{key}{at + 1}</p>" for at in range(many))

    return [
        *(printed(f"two{many}", pages(f"two{many}p", many)) for many in range(1, 6)),
        *(printed(f"one{many}", pages(f"one{many}p", many), one_sided=True) for many in range(1, 4)),
    ]


def texts(pdf: bytes) -> list[list[str]]:
    """The lines of each page."""
    with pdfplumber.open(io.BytesIO(pdf)) as book:
        return [page.extract_text().split("\n") for page in book.pages]


def by_hand(orders: Iterable[Stacked]) -> list[list[str]]:
    """What lies in the tray, page by page: paper is turned to its next front for each document and each order."""
    tray: list[list[str]] = []
    for order in orders:
        begin = len(tray)
        for key, copies in order.documents:
            for _ in range(copies):
                tray += [[]] * (len(tray) % 2)
                for at in range(int(key[-1])):
                    tray.append([f"{key}p{at + 1}"])
                    tray += [[]] * key.startswith("one")
        tray += [[]] * (len(tray) % 2)
        of = (len(tray) - begin) // 2
        for at in range(begin, len(tray)):
            first = [order.number] if at == begin else []
            tray[at] = [*first, *tray[at], f"{order.number}, sheet {(at - begin) // 2 + 1} of {of}"]
    return tray


def test_every_order_and_document_begins_on_a_front_and_templates_have_blank_backs(
    small: list[Document], face: bytes
) -> None:
    chance = random.Random(7)  # noqa: S311 - the same orders every time
    orders = [
        Stacked(
            f"Q-{number}",
            tuple((one.key, chance.choice((1, 1, 2))) for one in chance.sample(small, chance.randint(1, 4))),
        )
        for number in range(60)
    ]
    found = texts(stack(small, orders, face))
    assert found == by_hand(orders)
    fronts = [at for at, page in enumerate(found) if "sheet 1 of" in page[-1]][::2]
    assert len(fronts) == len(orders)
    assert all(at % 2 == 0 for at in fronts)


def test_an_order_of_one_page_takes_a_leaf_whose_back_is_blank(small: list[Document], face: bytes) -> None:
    assert texts(stack(small, [Stacked("Q-1", (("two1", 1),))], face)) == [
        ["Q-1", "two1p1", "Q-1, sheet 1 of 1"],
        ["Q-1, sheet 1 of 1"],
    ]


def test_of_an_order_of_several_kits_each_sheet_says_of_which_kit_it_is(small: list[Document], face: bytes) -> None:
    two = Stacked("Q-1", (("two1", 1), ("two3", 1), ("one1", 1)), ("kit 1 of 2", "kit 1 of 2", "kit 2 of 2"))
    assert [page[-1] for page in texts(stack(small, [two], face))][::2] == [
        "Q-1, kit 1 of 2, sheet 1 of 4", "Q-1, kit 1 of 2, sheet 2 of 4", "Q-1, kit 1 of 2, sheet 3 of 4",
        "Q-1, kit 2 of 2, sheet 4 of 4",
    ]  # fmt: skip


@pytest.mark.parametrize("paper", PAPERS)
def test_where_an_order_begins_its_number_stands_bold_at_the_head_on_nothing_else(
    paper: str, sheets: Any, face: bytes
) -> None:
    every = tuple((one.key, 1) for one in sheets[paper])
    with pdfplumber.open(
        io.BytesIO(stack(sheets[paper], [Stacked("Q-7", every), Stacked("Q-8", every)], face))
    ) as book:
        heads = {}
        for at, page in enumerate(book.pages):
            head = [one for one in page.chars if one["fontname"].startswith("STAMPS+") and one["top"] < page.height / 2]
            if head:
                heads[at] = "".join(one["text"] for one in head)
                assert {round(one["size"]) for one in head} == {14}
                low, left = max(one["bottom"] for one in head), min(one["x0"] for one in head)
                assert min(one["top"] for one in head) >= QUARTER_INCH - 0.1
                others = [one for one in ink(page) if one not in head]
                assert [one for one in others if one["top"] < low + 2 and one["x1"] > left - 2] == []
        assert heads == {0: "Q-7", len(book.pages) // 2: "Q-8"}


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("number", ["Q-7", "WHOLESALE-2026-QUILLMARSH-000000017"])
def test_no_ink_lies_within_a_quarter_inch_of_an_edge(paper: str, number: str, sheets: Any, face: bytes) -> None:
    book = pypdfium2.PdfDocument(stack(sheets[paper], [Stacked(number, ((sheets[paper][0].key, 1),))], face))
    for page in book:
        found = page.render(scale=DOTS, grayscale=True).to_pil()
        left, top, right, bottom = found.point(lambda shade: 255 * (shade < 128)).getbbox()
        assert min(left, top, found.width - right, found.height - bottom) >= (QUARTER_INCH - 0.5) * DOTS


def test_an_order_without_a_sheet_takes_no_paper(small: list[Document], face: bytes) -> None:
    orders = [Stacked("Q-1", ()), Stacked("Q-2", (("two2", 1),))]
    assert [page[-1] for page in texts(stack(small, orders, face))] == ["Q-2, sheet 1 of 1"] * 2


def ink(page: Any) -> list[dict[str, Any]]:
    return [one for kind in INK for one in page.objects.get(kind, [])]


@pytest.mark.parametrize("paper", PAPERS)
def test_the_stamp_is_black_readable_and_on_nothing_else_on_every_page_of_two_designs(
    paper: str, sheets: Any, face: bytes
) -> None:
    order = Stacked("Q-2602", tuple((one.key, 1) for one in sheets[paper]))
    stamped = 0
    with pdfplumber.open(io.BytesIO(stack(sheets[paper], [order], face))) as book:
        of = len(book.pages) // 2
        for at, page in enumerate(book.pages):
            marks = [one for one in page.chars if one["fontname"].startswith("STAMPS+")]
            stamp = [one for one in marks if one["top"] > page.height / 2]
            assert "".join(one["text"] for one in stamp) == f"Q-2602, sheet {at // 2 + 1} of {of}"
            assert {one["non_stroking_color"] for one in stamp} == {(0,)}
            assert all(one["size"] >= 8.5 for one in stamp)
            left, right = min(one["x0"] for one in stamp), max(one["x1"] for one in stamp)
            top, bottom = min(one["top"] for one in stamp), max(one["bottom"] for one in stamp)
            assert page.height - bottom >= QUARTER_INCH - 0.1
            others = [one for one in ink(page) if one not in stamp]
            across = [one for one in others if one["x0"] < right + 2 and one["x1"] > left - 2]
            assert [one for one in across if one["top"] < bottom + 2 and one["bottom"] > top - 2] == []
            stamped += 1
    assert stamped > 12


@pytest.mark.parametrize("paper", PAPERS)
def test_a_sheet_looks_as_it_was_laid_out_apart_from_its_stamp(paper: str, sheets: Any, face: bytes) -> None:
    for one in sheets[paper]:
        two_sided = Document(one.key, one.pdf)
        before = pypdfium2.PdfDocument(one.pdf)
        after = pypdfium2.PdfDocument(stack([two_sided], [Stacked("Q-2602", ((one.key, 1),))], face))
        for at, source in enumerate(before):
            was, now = (page.render(scale=DOTS).to_pil() for page in (source, after[at]))
            assert was.size == now.size
            if at == 0:  # the head of the order's first sheet, in the corner above all else
                was, now = (whole.crop((0, int(35 * DOTS), *whole.size)) for whole in (was, now))
            left, top, right, bottom = ImageChops.difference(was, now).getbbox() or (0, 0, 0, 0)
            middle, tall = was.width / 2, was.height
            assert middle - 80 * DOTS < left < right < middle + 80 * DOTS
            assert tall - 30 * DOTS < top < bottom < tall - 12 * DOTS


def streams(pdf: bytes) -> list[bytes]:
    """What a file holds: of each stream its bytes; stamps, and what the file lists itself in, left out."""
    with pikepdf.open(io.BytesIO(pdf)) as book:
        held = [one for one in book.objects if isinstance(one, pikepdf.Stream)]
        painting = [one.read_bytes() for one in held if one.get("/Type") not in {"/ObjStm", "/XRef"}]
    return sorted(one for one in painting if b"/Pagination /Subtype" not in one)


def test_the_file_holds_each_document_once_however_many_orders_have_it(sheets: Any, face: bytes) -> None:
    documents = sheets["a4"]
    every = tuple((one.key, 2) for one in documents)
    once = streams(stack(documents, [Stacked("Q-10", every)], face))
    often = streams(stack(documents, [Stacked(f"Q-{at}", every) for at in range(10, 30)], face))
    assert len(once) > 30
    # the faces of a stamp differ by the figures that are used, and nothing else does
    assert len(often) == len(once)
    assert len([one for one in often if one not in once]) <= 2


def test_each_page_says_what_its_sheet_says(sheets: Any, face: bytes) -> None:
    one = sheets["letter"][0]
    for was, now in zip(texts(one.pdf), texts(stack([one], [Stacked("Q-2602", ((one.key, 1),))], face)), strict=False):
        assert [line for line in now[:-1] if line != "Q-2602"] == was


def test_the_same_orders_give_the_same_bytes(small: list[Document], face: bytes) -> None:
    orders = [Stacked("Q-1", (("two3", 1),)), Stacked("Ж-2", (("one2", 2),))]
    assert stack(small, orders, face) == stack(small, orders, face)


@pytest.mark.parametrize("number", ["Q-2602", "Ж-14, žluť", "Ω 7/3", "W" * 40, "(a) \\ <b>"])
def test_a_number_in_letters_of_our_face_is_on_the_page_whole_and_can_be_copied(
    number: str, sheets: Any, face: bytes
) -> None:
    one = sheets["a4"][2]
    assert lacking(face, [number]) == []
    pdf = pypdfium2.PdfDocument(stack([one], [Stacked(number, ((one.key, 1),))], face))
    assert f"{number}, sheet 1 of 1" in pdf[1].get_textpage().get_text_range()


@pytest.mark.parametrize("number", ["מס-2602", "e\u0301-77", "طلب ٢٦٠٢"])
def test_a_number_that_our_face_cannot_set_is_drawn_with_one_that_can(
    number: str, printer: Printer, sheets: Any, face: bytes
) -> None:
    one = sheets["a4"][2]
    assert lacking(face, ["Q-1", number]) == [number]
    orders = [Stacked("Q-1", ((one.key, 1),)), Stacked(number, ((one.key, 1),))]
    raw = stack([one], orders, face, {number: number_drawn(printer, number)})
    assert pypdfium2.PdfDocument(raw)[1].get_textpage().get_text_range() == "Q-1, sheet 1 of 1"
    with pdfplumber.open(io.BytesIO(raw)) as book:
        letters = [one for one in book.pages[3].chars if one["text"].strip()]
    [comma] = [at for at, one in enumerate(letters) if one["text"] == ","]
    of_number = letters[:comma]
    assert sorted("".join(one["text"] for one in of_number)) == sorted(number.replace(" ", ""))
    assert {round(one["size"], 1) for one in of_number} == {9.0}
    assert max(one["x1"] for one in of_number) == pytest.approx(letters[comma]["x0"], abs=0.3)
    assert {round(one["matrix"][5], 1) for one in letters} == {round(letters[comma]["matrix"][5], 1)}  # one line


def test_a_number_that_cannot_be_set_is_told_and_not_left_out(
    small: list[Document], printer: Printer, face: bytes
) -> None:
    with pytest.raises(CannotBe, match="order 𒀀-4: our type face lacks"):
        stack(small, [Stacked("Q-1", (("two1", 1),)), Stacked("𒀀-4", (("two1", 1),))], face)
    with pytest.raises(CannotBe, match="order 𒀀-4: no type face of this machine"):
        number_drawn(printer, "𒀀-4")


def test_a_number_that_is_too_long_for_the_paper_is_told_and_not_shortened(small: list[Document], face: bytes) -> None:
    with pytest.raises(CannotBe, match=f"order {'W' * 40}: .* 100 mm wide"):
        stack(small, [Stacked("W" * 40, (("two1", 1),))], face)


def test_a_document_that_there_is_not_is_a_fault_of_the_program(small: list[Document], face: bytes) -> None:
    with pytest.raises(KeyError):
        stack(small, [Stacked("Q-1", (("nine", 1),))], face)
