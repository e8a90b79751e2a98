"""What the tests of a stack share: sheets of two designs, small invented documents, and the face of the stamps."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest

from sheetgen import publishing
from sheetgen.model.stack import Document
from sheetgen.render.pdf import Printer, font_files

if TYPE_CHECKING:
    from collections.abc import Callable

ROOT = Path(__file__).parents[2]
DESIGNS = ("limpet-buttons", "sedge-bookmark")
SHEETS = ("handout", "bench-card", "templates")
PAGE = (
    "<!doctype html><html lang='{language}'><head><meta charset='utf-8'><title>{title}</title><style>"
    "@page {{ size: 100mm 80mm; margin: 12mm }} html {{ font: 10pt 'Source Sans Pro' }} .next {{ break-before: page }}"
    "</style></head><body>{body}</body></html>"
)


@pytest.fixture(scope="session")
def face() -> bytes:
    return font_files()["SourceSansPro-Regular.ttf"].read_bytes()


@pytest.fixture(scope="session")
def printer() -> Printer:
    return Printer()


@pytest.fixture(scope="session")
def printed(printer: Printer) -> Callable[..., Document]:
    """A small document with a body of its own."""

    def made(key: str, body: str, *, one_sided: bool = False, language: str = "en") -> Document:
        html = PAGE.format(language=language, title=f"The {key}", body=body)
        return Document(key, printer.pdf(html, key), one_sided)

    return made


@pytest.fixture(scope="session")
def sheets(tmp_path_factory: pytest.TempPathFactory) -> Any:
    """The sheets of two designs of the demonstration, by paper."""
    build = tmp_path_factory.mktemp("two-designs")
    publishing.publish(ROOT, build, list(DESIGNS))
    return {
        paper: [
            Document(f"{design} {sheet}", (build / design / f"{sheet}-{paper}.pdf").read_bytes(), sheet == "templates")
            for design in DESIGNS
            for sheet in SHEETS
        ]
        for paper in ("a4", "letter")
    }
