"""The picture that is shown of a link: what the design looks like, what it is called, whose it is; and the card's."""

from __future__ import annotations

import io
from dataclasses import replace
from typing import Any

import pytest
from PIL import Image, ImageOps

from sheetgen.model.drawing import Drawing
from sheetgen.model.view import Html, Picture
from sheetgen.render.card_picture import card_picture
from sheetgen.render.pdf import Printer
from sheetgen.render.preview import preview_job
from sheetgen.render.web_pictures import File, WebPicture

ADDRESS = "currency: EUR\naddress: https://testbench.example/sheets/\n"


@pytest.fixture(scope="module")
def printer() -> Any:
    return Printer()


def shown(printer: Printer, worked: Any, picture: Any) -> Image.Image:
    [made] = printer.printed(preview_job(worked, picture))
    assert not made.faults
    return Image.open(io.BytesIO(made.pdf)).convert("L")


def inked(picture: Image.Image, left: int, right: int) -> tuple[int, int, int, int] | None:
    """The box of all that is printed between two sides, px."""
    return ImageOps.invert(picture.crop((left, 0, right, picture.height))).point(lambda x: 255 * (x > 100)).getbbox()


@pytest.fixture
def drops(library: Any) -> tuple[Any, Any]:
    """The drops and their picture as paper has it."""
    sheets = library._sheets("drops", "main")
    return sheets.worked, sheets.picture()


def test_it_is_1200_by_630_with_the_picture_on_the_left_and_the_words_on_the_right(printer: Any, drops: Any) -> None:
    made = shown(printer, *drops)
    assert made.size == (1200, 630)
    left, right = inked(made, 0, 620), inked(made, 620, 1200)
    assert left
    assert right
    # two tubes in a picture of 60 by 30 stand in its left third: 540 px wide, from 50
    assert 50 <= left[0] < left[2] <= 50 + 540
    assert right[0] >= 15
    assert right[2] <= 1200 - 620 - 40


@pytest.mark.parametrize("title", ["x" * 200, "word " * 40, "A", "שם ארוך"])
def test_no_title_runs_off_it(title: str, printer: Any, drops: Any) -> None:
    worked, picture = drops
    made = shown(printer, replace(worked, title=title), picture)
    box = inked(made, 620, 1200)
    assert box
    assert box[2] <= 1200 - 620 - 40
    assert box[3] <= 630 - 40


def test_a_design_without_a_picture_shows_its_title(printer: Any, drops: Any) -> None:
    made = shown(printer, drops[0], None)
    box = inked(made, 0, 1200)
    assert box
    assert box[0] >= 90


def test_the_same_design_gives_the_same_bytes(printer: Any, drops: Any) -> None:
    first, again = (printer.printed(preview_job(*drops))[0].pdf for _ in range(2))
    assert first == again


def test_it_is_published_only_where_the_site_has_an_address(library: Any, quick: None) -> None:  # noqa: ARG001
    library.publish("drops")
    assert not (library.build / "drops" / "preview.png").exists()
    library.change("studio.yaml", "currency: EUR\n", ADDRESS)
    library.publish("drops")
    assert (library.build / "drops" / "preview.png").is_file()
    for page in ("drops/index.html", "drops/long/index.html"):
        text = (library.build / page).read_text("utf-8")
        assert 'property="og:image" content="https://testbench.example/sheets/drops/preview.png"' in text
        assert 'property="og:image:alt" content="Two tubes"' in text


def test_a_card_has_the_narrowest_file_of_the_picture_and_else_the_view_as_it_is_drawn(drops: Any) -> None:
    worked, picture = drops
    files = (File("drops/pictures/a-480.jpg", "jpeg", 480, 240), File("drops/pictures/a-480.webp", "webp", 480, 240),
             File("drops/pictures/a-960.jpg", "jpeg", 960, 480))  # fmt: skip
    card, more = card_picture(worked, picture, None, {picture.source: WebPicture(files)})
    assert card
    assert (card.path, card.webp) == ("drops/pictures/a-480.jpg", "drops/pictures/a-480.webp")
    assert (card.width, card.height, card.alternative, more) == (480, 240, "Two tubes", [])
    view = Drawing('<svg xmlns="http://www.w3.org/2000/svg"/>', 80, 46, "A ring", true=False, shrunk=0.5)
    card, [page] = card_picture(worked, Picture("", Html(view.svg), view.says, ""), view, {})
    assert card
    assert card.drawn
    assert (card.path, card.width, card.height, card.alternative) == ("drops/view.svg", 160, 92, "A ring")
    assert page.content.decode() == view.svg
    assert card_picture(worked, None, None, {}) == (None, [])
