"""A page that asks for more in a few letters than any sheet holds is told before it is laid out."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any
from unittest import mock

import pytest

from sheetgen.base.trouble import CannotBe
from sheetgen.render.pdf import Printer

HERE = Path(__file__).parent / "themes" / "heavy"


@pytest.fixture(scope="module")
def printer() -> Any:
    return Printer()


@pytest.mark.parametrize("path", sorted((HERE / "wrong").glob("*.html")), ids=lambda path: path.stem)
def test_a_page_without_end_is_told_and_never_laid_out(path: Path, printer: Any) -> None:
    page = path.read_text("utf-8")
    lost = re.search("<!-- lost: (.*) -->", page)
    assert lost
    with (
        mock.patch.object(printer.html, "render", side_effect=AssertionError("laid out")),
        pytest.raises(CannotBe, match=lost[1]),
    ):
        printer.print(page, "card")


@pytest.mark.parametrize("path", sorted((HERE / "honest").glob("*.html")), ids=lambda path: path.stem)
def test_a_page_that_only_looks_heavy_is_printed(path: Path, printer: Any) -> None:
    assert printer.print(path.read_text("utf-8"), "card").pages == 1
