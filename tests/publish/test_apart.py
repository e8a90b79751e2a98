"""The PDF of one order: it can be read aloud as its sheets can, by a validator that knows nothing of us."""

from __future__ import annotations

import io
from collections import Counter
from typing import TYPE_CHECKING, Any

import page as validator
import pdfplumber
import pikepdf
import pytest

from sheetgen.base.trouble import CannotBe
from sheetgen.model.stack import Stacked
from sheetgen.publish.apart import apart
from sheetgen.render.number import number_drawn

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from sheetgen.model.stack import Document
    from sheetgen.render.pdf import Printer

PAPERS = ("a4", "letter")
BODY = (
    "<h1>{name}</h1><p><a href='#end'>to the end of {name}</a> and <a href='https://x.invalid/{name}'>a page</a></p>"
    "<table><thead><tr><th scope='col'>Part</th><th scope='col'>Size</th></tr></thead><tbody>"
    "<tr><td>Rod</td><td>8.5 mm</td></tr></tbody></table><h2 id='end' class='next'>End of {name}</h2>"
)


@pytest.fixture(scope="module")
def alike(printed: Callable[..., Document]) -> list[Document]:
    """Two documents whose places and cells bear the same names, in two languages."""
    return [
        printed("rod", BODY.format(name="rod")),
        printed("Ring", BODY.format(name="Ring"), one_sided=True, language="de"),
    ]


def of(documents: list[Document], number: str = "Q-2602") -> Stacked:
    return Stacked(number, tuple((one.key, 1) for one in documents))


def failures(pdf: bytes) -> list[str]:
    report = validator.validate_pdf_bytes(pdf, profile="ua1")
    found = [f"{one.rule_id}: {one.message}" for one in report.failures]
    assert report.is_compliant == (not found)
    assert report.rules.total > 100
    return found


def several(one: Any) -> list[Any]:
    """What a PDF may write as one or as several."""
    if one is None:
        return []
    return list(one) if isinstance(one, pikepdf.Array) else [one]


def elements(book: pikepdf.Pdf) -> Iterator[pikepdf.Object]:
    waiting = [book.Root.StructTreeRoot]
    while waiting:
        one = waiting.pop()
        if "/S" in one:
            yield one
        waiting += [kid for kid in several(one.get("/K")) if isinstance(kid, pikepdf.Dictionary)]


@pytest.mark.parametrize("paper", PAPERS)
def test_an_order_of_two_designs_can_be_read_aloud(paper: str, sheets: Any, face: bytes) -> None:
    assert failures(apart(sheets[paper], of(sheets[paper]), face)) == []


def test_documents_with_the_same_names_and_links_can_be_read_aloud(alike: list[Document], face: bytes) -> None:
    assert [failures(one.pdf) for one in alike] == [[], []]
    assert failures(apart(alike, of(alike), face)) == []


def test_a_number_that_is_drawn_is_not_read_aloud(alike: list[Document], printer: Printer, face: bytes) -> None:
    number = "מס-2602"
    assert failures(apart(alike, of(alike, number), face, {number: number_drawn(printer, number)})) == []


def test_documents_follow_one_another_once_and_without_blank_backs(sheets: Any, face: bytes) -> None:
    wanted = []
    for one in sheets["letter"]:
        with pdfplumber.open(io.BytesIO(one.pdf)) as book:
            wanted += [page.extract_text() for page in book.pages]
    order = Stacked("Q-2602", tuple((one.key, 3) for one in sheets["letter"]))
    with pdfplumber.open(io.BytesIO(apart(sheets["letter"], order, face))) as book:
        found = [page.extract_text() for page in book.pages]
    assert found == [f"{text}\nQ-2602, page {at} of {len(wanted)}" for at, text in enumerate(wanted, 1)]


def marked(pdf: bytes) -> list[tuple[int, int, str, bool]]:
    """Each piece that is marked on a page: page, number, what it is, and whether the reading order comes by it."""
    with pikepdf.open(io.BytesIO(pdf)) as book:
        places = dict(pikepdf.NumberTree(book.Root.StructTreeRoot.ParentTree).items())
        assert len({int(page.obj.StructParents) for page in book.pages}) == len(book.pages)
        reached = {one.objgen for one in elements(book)}
        found = []
        for at, page in enumerate(book.pages):
            said = places[int(page.obj.StructParents)]
            for one in pikepdf.parse_content_stream(page):
                if str(one.operator) == "BDC" and "/MCID" in one.operands[1]:
                    number = int(one.operands[1].MCID)
                    element = said[number]
                    assert element.Pg.objgen == page.obj.objgen
                    assert number in [kid for kid in several(element.K) if isinstance(kid, int)]
                    found.append((at, number, str(element.S), element.objgen in reached))
        return found


@pytest.mark.parametrize("paper", PAPERS)
def test_whatever_is_marked_on_a_page_leads_to_what_is_said_of_that_page(paper: str, sheets: Any, face: bytes) -> None:
    wanted, pages = [], 0
    for one in sheets[paper]:
        wanted += [(at + pages, *rest) for at, *rest in marked(one.pdf)]
        with pikepdf.open(io.BytesIO(one.pdf)) as book:
            pages += len(book.pages)
    assert len(wanted) > 500
    assert marked(apart(sheets[paper], of(sheets[paper]), face)) == wanted


def test_nothing_that_is_read_aloud_is_lost_or_said_twice(alike: list[Document], face: bytes) -> None:
    before: Counter[str] = Counter()
    for one in alike:
        with pikepdf.open(io.BytesIO(one.pdf)) as book:
            before += Counter(str(element.S) for element in elements(book))
    with pikepdf.open(io.BytesIO(apart(alike, of(alike), face))) as book:
        after = Counter(str(element.S) for element in elements(book))
        [whole] = book.Root.StructTreeRoot.K
        assert [str(part.S) for part in whole.K] == ["/Part", "/Part"]
        assert [str(part.Lang) for part in whole.K] == ["en", "de"]
    assert before.pop("/Document") == 2
    assert after - before == Counter({"/Document": 1, "/Part": 2})
    assert not before - after


def test_a_link_leads_to_the_end_of_its_own_document(alike: list[Document], face: bytes) -> None:
    with pikepdf.open(io.BytesIO(apart(alike, of(alike), face))) as book:
        pages = {page.obj.objgen: at for at, page in enumerate(book.pages, 1)}
        within, out = [], []
        for at, page in enumerate(book.pages, 1):
            for link in page.obj.get("/Annots", []):
                if "/A" in link and "/URI" in link.A:
                    out.append((at, str(link.A.URI)))
                else:
                    [to, *_] = link.Dest if "/Dest" in link else link.A.D
                    within.append((at, pages[to.objgen]))
        assert within == [(1, 2), (3, 4)]
        assert out == [(1, "https://x.invalid/rod"), (3, "https://x.invalid/Ring")]
        assert len(pages) == 4


def test_each_cell_has_the_heads_of_its_own_table(alike: list[Document], face: bytes) -> None:
    with pikepdf.open(io.BytesIO(apart(alike, of(alike), face))) as book:
        names = dict(pikepdf.NameTree(book.Root.StructTreeRoot.IDTree).items())
        parts = list(book.Root.StructTreeRoot.K[0].K)
        headed = 0
        for one in elements(book):
            for attribute in several(one.get("/A")):
                for head in several(attribute.get("/Headers")):
                    assert part_of(names[str(head)], parts) == part_of(one, parts)
                    headed += 1
        assert headed == 4


def part_of(element: pikepdf.Object, parts: list[pikepdf.Object]) -> int:
    [found] = [at for at, part in enumerate(parts) if any(part.objgen == one.objgen for one in above(element))]
    return found


def above(element: pikepdf.Object) -> Iterator[pikepdf.Object]:
    while "/P" in element:
        yield element
        element = element.P


def test_the_title_is_the_number_and_what_it_holds(alike: list[Document], face: bytes) -> None:
    with pikepdf.open(io.BytesIO(apart(alike, of(alike, "Q&A <7>"), face))) as book:
        assert dict(book.docinfo) == {"/Title": "Q&A <7>: The rod; The Ring"}
        with book.open_metadata() as told:
            assert told["dc:title"] == "Q&A <7>: The rod; The Ring"
            assert told["pdfuaid:part"] == "1"
            assert sorted(told) == sorted({one for one in told if one.endswith(("}title", "}part"))})
        with book.open_outline() as outline:
            assert [one.title for one in outline.root] == ["The rod", "The Ring"]


def test_the_same_order_gives_the_same_bytes(sheets: Any, face: bytes) -> None:
    documents = sheets["a4"]
    assert apart(documents, of(documents), face) == apart(documents, of(documents), face)


def test_a_number_that_cannot_be_set_is_told(alike: list[Document], face: bytes) -> None:
    with pytest.raises(CannotBe, match="order 𒀀-4"):
        apart(alike, of(alike, "𒀀-4"), face)


def test_an_order_without_a_sheet_has_no_pdf(alike: list[Document], face: bytes) -> None:
    with pytest.raises(ValueError, match="without a document"):
        apart(alike, Stacked("Q-1", ()), face)
