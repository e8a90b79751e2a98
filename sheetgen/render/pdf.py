"""HTML to PDF; the one module that knows weasyprint. Nothing is fetched but our own fonts and data in the page."""

from __future__ import annotations

import functools
import logging
import os
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple

from sheetgen.base.trouble import CannotBe
from sheetgen.render.density import alike, chosen
from sheetgen.render.doubts import doubts
from sheetgen.render.job import Doubt, Printout, one_page
from sheetgen.render.laid_out import laid_out
from sheetgen.render.musts import faults

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.render.job import Job, Must, Paper
    from sheetgen.render.laid import LaidOut

AS_UA = {"pdf_variant": "pdf/ua-1"}
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


def font_css(base: str) -> str:
    """@font-face rules with the files below `base`."""
    rule = "@font-face{{font-family:'Source Sans Pro';src:url('{}{}');font-weight:{};font-style:{}}}"
    return "".join(rule.format(base, name, weight, style) for name, weight, style in FACES.values())


class _Warnings(logging.Handler):
    """Collects what WeasyPrint only logs: a refusal inside a drawing must not pass unseen."""

    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.said: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        self.said.append(record.getMessage())


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
                    return URLFetcherResponse(url, data, response.headers)
                name = url.removeprefix(FONTS)
                if name in files:
                    return URLFetcherResponse(url, files[name], {"Content-Type": "font/ttf"})
                raise ValueError(f"refused: {url[:100]}")

        self.html = weasyprint.HTML
        self.css = weasyprint.CSS
        self.fonts = FontConfiguration()
        self.fetcher = OnlyOurs()
        self.faces = weasyprint.CSS(string=font_css(FONTS), font_config=self.fonts, url_fetcher=self.fetcher)

    def pdf(self, page: str, name: str) -> bytes:
        """The PDF of a page. Raises CannotBe if WeasyPrint complains of it."""
        return self.print(page, name).pdf

    def print(self, page: str, name: str, must: Sequence[Must] = (), may: Sequence[Must] = ()) -> Printout:
        """A page that is laid out in one way. Raises CannotBe if WeasyPrint complains of it."""
        return self.printed(one_page(page, name, must, may))[0]

    def printed(self, job: Job) -> list[Printout]:
        """A sheet on each of its papers; how tight it is set is decided once for papers of one content box.

        Raises CannotBe if WeasyPrint complains of it.
        """
        out: list[Printout] = []
        before: LaidOut | None = None
        way = 0
        for paper in job.papers:
            lay = functools.cache(functools.partial(self._laid, job, paper))
            if before is None or not alike(before, lay(way).laid):
                way = chosen(lambda way, lay=lay: lay(way).laid, len(job.htmls), job.most_pages)  # type: ignore[misc]
            before = lay(way).laid
            out.append(replace(self._written(lay(way), job, paper), way=way))
        return out

    def _laid(self, job: Job, paper: Paper, way: int) -> _Laid:
        """One way to set a sheet, laid out on a paper."""
        with _heard() as said:
            html = job.htmls[way].replace("</head>", f"<style>{paper.css}</style></head>", 1)
            page = self.html(string=html, base_url=FONTS, url_fetcher=self.fetcher)
            document = page.render(self.fonts, stylesheets=[self.faces], **AS_UA)
        return _Laid(document, laid_out(document), said)

    def _written(self, one: _Laid, job: Job, paper: Paper) -> Printout:
        with _heard() as said:
            raw: bytes = one.document.write_pdf(
                pdf_identifier=f"{paper.name} {paper.revision}".strip().encode(), **AS_UA
            )
        if one.said or said:
            message = f"{paper.name} could not be printed as it should: {[*one.said, *said][0][:200]}"
            raise CannotBe(message, "mend the theme or the picture")
        lost = tuple(f"{paper.name}, {fault}" for fault in faults(one.laid, job.must, job.may))
        warnings = tuple(Doubt(paper.name, page, words) for page, words in doubts(one.laid, job.most_sides))
        return Printout(raw, len(one.laid.pages), lost, warnings)


class _Laid(NamedTuple):
    """A document that is laid out, what is known of it, and what WeasyPrint said meanwhile."""

    document: Any
    laid: LaidOut
    said: list[str]


@contextmanager
def _heard() -> Iterator[list[str]]:
    """What WeasyPrint murmurs meanwhile."""
    heard = _Warnings()
    logging.getLogger("weasyprint").handlers = [heard]
    yield heard.said
