"""A page that asks for more in a few letters than any sheet holds is told before it is laid out."""

from __future__ import annotations

import re
import time
from pathlib import Path
from typing import Any
from unittest import mock

import pytest

from sheetgen.base.trouble import CannotBe
from sheetgen.render.pdf import Printer
from tests.hostile import often

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


@pytest.mark.parametrize("path", sorted((HERE / "pictures").glob("*.html")), ids=lambda path: path.stem)
def test_a_picture_in_an_address_that_asks_for_too_much_is_refused_within_a_second(path: Path, printer: Any) -> None:
    page = path.read_text("utf-8")
    lost = re.search("<!-- lost: (.*) -->", page)
    assert lost
    began = time.process_time()
    with pytest.raises(CannotBe, match=lost[1]) as caught:
        printer.print(page, "card")
    assert time.process_time() - began < 1
    assert "base64" not in str(caught.value), "what an address holds is not shown"


@pytest.mark.parametrize("path", sorted((HERE / "styles").glob("*.html")), ids=lambda path: path.stem)
def test_what_the_printer_cannot_set_is_told_with_its_mend_and_is_no_fault_of_the_program(
    path: Path, printer: Any
) -> None:
    page = often(path.read_text("utf-8"))
    lost = re.search("<!-- lost: (.*) -->", page)
    assert lost
    with pytest.raises(CannotBe) as caught:
        printer.print(page, "card")
    assert lost[1] in caught.value.help


@pytest.mark.parametrize("path", sorted((HERE / "honest").glob("*.html")), ids=lambda path: path.stem)
def test_a_page_that_only_looks_heavy_is_printed(path: Path, printer: Any) -> None:
    assert printer.print(path.read_text("utf-8"), "card").pages == 1
