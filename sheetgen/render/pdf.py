"""HTML to PDF; the one module that knows weasyprint. Nothing is fetched but our own fonts and data in the page."""

from __future__ import annotations

import logging
import os
from pathlib import Path
from typing import Any

from sheetgen.base.trouble import CannotBe

FONTS = "https://sheetgen.invalid/fonts/"
FACES = {
    "regular": ("SourceSansPro-Regular.ttf", 400, "normal"),
    "italic": ("SourceSansPro-It.ttf", 400, "italic"),
    "semibold": ("SourceSansPro-Semibold.ttf", 600, "normal"),
    "bold": ("SourceSansPro-Bold.ttf", 700, "normal"),
}
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
                    return super().fetch(url, headers)
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
        heard = _Warnings()
        logger = logging.getLogger("weasyprint")
        logger.handlers = [heard]
        document = self.html(string=page, base_url=FONTS, url_fetcher=self.fetcher)
        raw: bytes = document.write_pdf(
            stylesheets=[self.faces], font_config=self.fonts, pdf_variant="pdf/ua-1", pdf_identifier=name.encode(),
        )  # fmt: skip
        if heard.said:
            raise CannotBe(
                f"{name} could not be printed as it should: {heard.said[0][:200]}", "mend the theme or the picture"
            )
        return raw
