"""What is called seen is what a raster of the PDF shows: on random heaps of boxes, by another program."""

from __future__ import annotations

import random
from itertools import product
from typing import Any

import pypdfium2
import pytest

from sheetgen.formulas.contrast import contrast
from sheetgen.render.laid_out import ASCENDERS, CAPITALS, laid_out
from sheetgen.render.pdf import AS_UA, FONTS, Printer

DPI = 144
SIZE = 14  # pt
GREYS = ("#000", "#fff", "#777", "#eee", "transparent")
HEAD = (
    "<!doctype html><html lang='en'><head><meta charset='utf-8'><title>x</title><style>@page { size: 80mm 50mm; "
    "margin: 10mm } html { font: 14pt/1 'Source Sans Pro' } div { min-height: 2mm } </style></head><body>"
)


@pytest.fixture(scope="module")
def printer() -> Any:
    return Printer()


def heap(rng: random.Random) -> str:
    """A row of capitals among boxes that may lie over it, under it or beside it."""

    def style() -> str:
        place = rng.choice(["static", "static", "relative", "absolute"])
        said = [f"position: {place}", f"background: {rng.choice(GREYS)}"]
        if place != "static":
            said.append(f"z-index: {rng.choice(['auto', 'auto', '-1', '0', '1'])}")
        if place == "absolute":
            said.append(f"left: {rng.choice([0, 5, 15])}mm; top: {rng.choice([0, 5])}mm; width: 40mm; height: 15mm")
        elif rng.random() < 0.3:
            said.append("margin-top: -4mm")
        if rng.random() < 0.2:
            said.append(f"opacity: {rng.choice([0, 0.3, 0.9])}")
        if rng.random() < 0.2:
            said.append(f"overflow: hidden; height: {rng.choice([1, 3, 9])}mm")
        if rng.random() < 0.15:
            said.append(f"float: {rng.choice(['left', 'right'])}; width: 30mm")
        if rng.random() < 0.15:
            said.append(f"transform: translate({rng.choice([-60, 0, 5])}mm, {rng.choice([0, 3])}mm)")
        return "; ".join(said)

    ink = rng.choice(["#000", "#000", "#fff", "#777"])
    said = f"<p style='margin:0; color:{ink}; {rng.choice(['', style()])}'><span id='w'>HHHHHHHH</span></p>"
    inner = [said, *(f"<div style='{style()}'></div>" for _ in range(rng.randint(0, 2)))]
    rng.shuffle(inner)
    outer = [f"<div style='{style()}'>{''.join(inner)}</div>", *(f"<div style='{style()}'></div>" for _ in range(2))]
    rng.shuffle(outer)
    return HEAD + "".join(outer) + "</body></html>"


def drawn(pdf: bytes) -> Any:
    return pypdfium2.PdfDocument(pdf)[0].render(scale=DPI / 72).to_pil().convert("L")


def stands_out(with_words: bytes, without: bytes, core: tuple[float, float, float, float]) -> list[float]:
    """How much the letters change their page, in each of eight by five parts of their row."""
    one, other = drawn(with_words), drawn(without)
    left, top, right, bottom = (edge / 25.4 * DPI for edge in core)
    wide, high = (right - left) / 8, (bottom - top) / 5
    found = []
    for i, j in product(range(8), range(5)):
        across = range(round(left + wide * i), round(left + wide * (i + 1)))
        down = range(round(top + high * j), round(top + high * (j + 1)))
        inside = [(x, y) for x in across for y in down if 0 <= x < one.width and 0 <= y < one.height]
        greys = {(one.getpixel(at), other.getpixel(at)) for at in inside}
        found.append(max((contrast(f"#{3 * f'{a:02x}'}", f"#{3 * f'{b:02x}'}") for a, b in greys), default=1))
    return found


@pytest.mark.parametrize("seed", range(60))
def test_letters_are_seen_where_a_raster_shows_them(seed: int, printer: Any) -> None:
    html = heap(random.Random(seed))  # noqa: S311 - a heap, not a secret

    def laid(text: str) -> Any:
        page = printer.html(string=text, base_url=FONTS, url_fetcher=printer.fetcher)
        return page.render(printer.fonts, stylesheets=[printer.faces], **AS_UA)

    document = laid(html)
    [word] = [word for word in laid_out(document).words if word.text.strip()]
    without = laid(html.replace("id='w'", "style='visibility: hidden'")).write_pdf(**AS_UA)
    size = SIZE * 25.4 / 72
    base = word.y + ASCENDERS * size
    core = (word.x, base - CAPITALS * size, word.x + word.w, base)
    shown = stands_out(document.write_pdf(**AS_UA), without, core)
    # What lies in between, such as letters of which an edge takes a little, is neither.
    if all(one > 4.6 for one in shown):
        assert not word.unseen
    if sum(one < 2.5 for one in shown) >= 8:
        assert word.unseen
