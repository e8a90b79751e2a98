"""HTML to PDF; the one module that knows weasyprint. Nothing is fetched but our own fonts and data in the page."""

from __future__ import annotations

import functools
import io
import os
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path, PurePath
from typing import TYPE_CHECKING, Any, NamedTuple

from sheetgen.base.trouble import CannotBe
from sheetgen.facts.paper import PT_PER_INCH
from sheetgen.facts.units import MM_PER_INCH
from sheetgen.render.bounded import strange_link, too_large
from sheetgen.render.density import alike, chosen
from sheetgen.render.doubts import doubts
from sheetgen.render.faceless import NO_LETTER
from sheetgen.render.heard import heard
from sheetgen.render.job import Doubt, Printout, one_page
from sheetgen.render.laid_out import laid_out
from sheetgen.render.musts import faults
from sheetgen.render.on_paper import beside_it, of_another_size
from sheetgen.render.pictured import allowed, shown
from sheetgen.render.quick import altered, one_writing, quick_html
from sheetgen.render.true_size import drawings_beside, untrue

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.render.job import Job, Must, Paper, Side
    from sheetgen.render.laid import LaidOut

AS_UA = {"pdf_variant": "pdf/ua-1"}
PT_PER_MM = PT_PER_INCH / MM_PER_INCH
FONTS = "https://sheetgen.invalid/fonts/"
FACES = {
    "regular": ("SourceSansPro-Regular.ttf", 400, "normal"),
    "italic": ("SourceSansPro-It.ttf", 400, "italic"),
    "semibold": ("SourceSansPro-Semibold.ttf", 600, "normal"),
    "bold": ("SourceSansPro-Bold.ttf", 700, "normal"),
}
TYPE_FACES = frozenset({b"\0\1\0\0", b"OTTO", b"true", b"typ1", b"ttcf", b"wOFF", b"wOF2"})  # how their files begin
WANTED = "the PDFs need Pango: on Debian, apt-get install libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0"


class NoPango(RuntimeError):
    """WeasyPrint cannot find Pango on this machine."""


def font_files() -> dict[str, Path]:
    """Our type face by file name, from its package."""
    import font_source_sans_pro  # noqa: PLC0415 - only where pages are made

    folder = Path(font_source_sans_pro.__file__).parent / "files"
    return {name: next(folder.rglob(name)) for name, _, _ in FACES.values()}


def font_css(base: str, more: str = "", ends: str = "") -> str:
    """@font-face rules with the files below `base`, what else each is to say, and how the files end where otherwise."""
    rule = "@font-face{{font-family:'Source Sans Pro';src:url('{}{}');font-weight:{};font-style:{}{}}}"
    files = [(PurePath(name).with_suffix(ends) if ends else name, *how) for name, *how in FACES.values()]
    return "".join(rule.format(base, name, weight, style, more) for name, weight, style in files)


class Printer:
    """Prints PDFs; fonts are read once for all of them."""

    def __init__(self) -> None:
        os.environ.setdefault("SOURCE_DATE_EPOCH", "0")
        try:
            import weasyprint  # noqa: PLC0415 - heavy, and it needs Pango
            from weasyprint.text.fonts import FontConfiguration  # noqa: PLC0415
            from weasyprint.urls import URLFetcher, URLFetcherResponse  # noqa: PLC0415
        except OSError:
            raise NoPango(WANTED) from None

        files = {name: path.read_bytes() for name, path in font_files().items()}

        class OnlyOurs(URLFetcher):  # type: ignore[misc]  # weasyprint is not typed
            """Fonts from their package, data in the page, and nothing else."""

            def fetch(self, url: str, headers: Any = None) -> Any:  # noqa: ANN401 - weasyprint's own
                if url.startswith("data:"):
                    response = super().fetch(url, headers)
                    data = response.read()
                    if data[:4] in TYPE_FACES:  # one of its own may show another letter than the text says
                        raise ValueError("refused: a type face of the theme's own")
                    return URLFetcherResponse(url, allowed(data), response.headers)
                name = url.removeprefix(FONTS)
                if name in files:
                    return URLFetcherResponse(url, files[name], {"Content-Type": "font/ttf"})
                raise ValueError(f"refused: {url[:100]}")

        self.html = quick_html()
        self.css = weasyprint.CSS
        self.fonts = FontConfiguration()
        self.fetcher = OnlyOurs()
        self.faces = weasyprint.CSS(string=font_css(FONTS), font_config=self.fonts, url_fetcher=self.fetcher)
        files.clear()  # a rule of the theme's own could give our face other features

    def pdf(self, page: str, name: str) -> bytes:
        """The PDF of a page. Raises CannotBe if WeasyPrint complains of it."""
        return self.print(page, name).pdf

    def print(self, page: str, name: str, must: Sequence[Must] = (), may: Sequence[Must] = ()) -> Printout:
        """A page that is laid out in one way. Raises CannotBe if WeasyPrint complains of it."""
        return self.printed(one_page(page, name, must, may))[0]

    def each_in_pieces(self, pages: Sequence[str]) -> list[tuple[bytes, LaidOut, list[str]]]:
        """What `pieces` says of each."""
        return [self.pieces(page) for page in pages]

    def pieces(self, page: str) -> tuple[bytes, LaidOut, list[str]]:
        """A page of pieces that are put onto others: its PDF without tags, how it is laid out, what was murmured."""
        with heard() as said:
            document = self.html(string=page, base_url=FONTS, url_fetcher=self.fetcher).render(
                self.fonts, stylesheets=[self.faces]
            )
            raw: bytes = document.write_pdf()
        return raw, laid_out(document), said

    def printed(self, job: Job) -> list[Printout]:
        """A sheet on each of its papers; how tight it is set is decided once for papers of one content box.

        Raises CannotBe if WeasyPrint complains of it.
        """
        out: list[Printout] = []
        before: LaidOut | None = None
        way = 0
        moved = all(paper.side for paper in job.papers)
        for paper in job.papers[:1] if moved else job.papers:
            lay = functools.cache(functools.partial(self._laid, job, paper))
            if before is None or not alike(before, lay(way).laid):
                ways = (len(job.htmls), job.most_pages, job.first_full, job.gives)
                way = chosen(lambda way, lay=lay: lay(way).laid, *ways)  # type: ignore[misc]
            before = lay(way).laid
            papers = job.papers if moved else (paper,)
            with one_writing():
                out += [replace(one, way=way) for one in self._written(lay(way), job, papers)]
        if job.pixels:
            from sheetgen.pictures.from_pdf import picture_of  # noqa: PLC0415 - for a preview alone

            return [replace(one, pdf=picture_of(one.pdf, job.pixels)) for one in out]
        return out

    def _laid(self, job: Job, paper: Paper, way: int) -> _Laid:
        """One way to set a sheet, laid out on a paper."""
        with heard() as said:
            html = job.htmls[way].replace("</head>", f"<style>{paper.css}</style></head>", 1)
            page = self.html(string=html, base_url=FONTS, url_fetcher=self.fetcher)
            if why := too_large(page.etree_element) or strange_link(page.etree_element):
                raise CannotBe(f"{paper.name} is not laid out: {why}", "mend the template of the theme")
            with _within_reason(paper.name):
                document = page.render(self.fonts, stylesheets=[self.faces], **AS_UA)
        return _Laid(document, laid_out(document), said)

    def _written(self, one: _Laid, job: Job, papers: Sequence[Paper]) -> Iterator[Printout]:
        """What is laid out, painted for the first paper and moved on the others."""
        first, painted = papers[0], _Painted()
        with heard() as said, _within_reason(first.name):
            raw: bytes = one.document.write_pdf(pdf_identifier=_identifier(first), finisher=painted.keep, **AS_UA)
        if one.said or said:
            if letter := next(filter(None, map(NO_LETTER.search, (*one.said, *said))), None):
                lacks = f"{first.name} is not printed: no type face on this machine has the letter U+{letter[1]}"
                raise CannotBe(
                    f"{lacks}, {shown(chr(int(letter[1], 16)))}", "write it otherwise, or install one that has it"
                )
            message = f"{first.name} could not be printed as it should: {shown([*one.said, *said][0])}"
            raise CannotBe(message, "mend the theme or the picture")
        lost = list(map(str, faults(one.laid, job.must, job.may, job.given)))
        lost += map(str, untrue(one.laid, job.drawn))
        if first.side:
            lost += of_another_size(painted.boxes(), first.side)
        jars = doubts(one.laid, job.most_sides)
        for paper in papers:
            beside: list[str] = []
            if paper is not first and first.side and paper.side:
                raw = painted.moved(first.side, paper.side, _identifier(paper))
                beside += beside_it(one.laid, first.side, paper.side)
                beside += drawings_beside(one.laid, job.drawn, first.side, paper.side)
            told = tuple(f"{paper.name}, {fault}" for fault in (*lost, *beside))
            yield Printout(
                raw, len(one.laid.pages), told, tuple(Doubt(paper.name, page, words) for page, words in jars)
            )


def _identifier(paper: Paper) -> bytes:
    return f"{paper.name} {paper.revision}".strip().encode()


class _Painted:
    """A PDF before it is written, so that it can be written again for another paper."""

    def __init__(self) -> None:
        self.pdf: Any = None
        self.objects = 0

    def keep(self, _document: object, pdf: Any) -> None:  # noqa: ANN401 - pydyf is not typed
        """What WeasyPrint calls when all is painted, right before it is written."""
        self.pdf, self.objects = pdf, len(pdf.objects)

    def boxes(self) -> list[list[float]]:
        """The media box of each page, pt."""
        return [list(page["MediaBox"]) for page in self._pages()]

    def _pages(self) -> list[Any]:
        return [one for one in self.pdf.objects if isinstance(one, dict) and one.get("Type") == "/Page"]

    def moved(self, first: Side, side: Side, identifier: bytes) -> bytes:
        """The same pages on another paper, the content where it belongs there."""
        pdf = self.pdf
        del pdf.objects[self.objects :]  # what writing added
        pdf.current_position = 0
        across = (side.left - first.left) * PT_PER_MM
        up = (side.tall - side.top - (first.tall - first.top)) * PT_PER_MM
        for page in self._pages():
            stream = pdf.objects[int(page["Contents"].split()[0])]
            stream.stream.insert(0, f"1 0 0 1 {across:.4f} {up:.4f} cm".encode())
            altered(stream)
            altered(page)
            for box in ("MediaBox", "TrimBox", "BleedBox"):
                page[box][2:] = [side.wide * PT_PER_MM, side.tall * PT_PER_MM]
        output = io.BytesIO()
        pdf.write(output, None, identifier, True)  # noqa: FBT003 - pydyf's own: compressed
        return output.getvalue()


@contextmanager
def _within_reason(name: str) -> Iterator[None]:
    """CannotBe for sizes that no number holds, and for selectors too deep to be read: only styles have such."""
    try:
        yield
    except (ArithmeticError, SyntaxError) as fault:
        told = f"{name} is not laid out: a size or a selector of its styles is beyond what can be printed ({fault})"
        raise CannotBe(told[:300], "mend the theme: its CSS") from fault


class _Laid(NamedTuple):
    """A document that is laid out, what is known of it, and what WeasyPrint said meanwhile."""

    document: Any
    laid: LaidOut
    said: list[str]
