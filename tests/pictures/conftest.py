"""What the tests of pictures share: the attacks by name, a printer, and the page picture of a picture."""

from __future__ import annotations

import importlib.util
import io
import sys
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pypdfium2
import pytest

from sheetgen.render.pdf import Printer

if TYPE_CHECKING:
    from collections.abc import Callable

    from PIL import Image

TESTS = Path(__file__).parents[1]
PAGE = "<html lang=en><head><title>x</title></head><body><img alt=x style='width:160mm' src='{}'></body></html>"


@pytest.fixture(scope="session")
def attacks() -> Any:
    """The module tests/attacks/pictures/made.py."""
    spec = importlib.util.spec_from_file_location("tests_attacks_made", TESTS / "attacks" / "pictures" / "made.py")
    assert spec
    assert spec.loader
    module = importlib.util.module_from_spec(spec)
    sys.modules["tests_attacks_made"] = module
    spec.loader.exec_module(module)
    return module


@pytest.fixture(scope="session")
def printer() -> Printer:
    return Printer()


@pytest.fixture(scope="session")
def page_picture(printer: Printer) -> Callable[[str], Image.Image]:
    """How a page looks on which a data URI is the picture."""

    def look(uri: str) -> Image.Image:
        document = pypdfium2.PdfDocument(io.BytesIO(printer.pdf(PAGE.format(uri), "x")))
        picture: Image.Image = document[0].render(scale=2).to_pil().convert("RGB")
        document.close()
        return picture

    return look
