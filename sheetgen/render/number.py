"""An order's number that our type face lacks letters of, drawn with whatever face of the machine has them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from markupsafe import escape

from sheetgen.base.trouble import CannotBe
from sheetgen.facts.paper import STAMP_SIZE
from sheetgen.render.laid_out import laid_out
from sheetgen.render.pdf import FONTS

if TYPE_CHECKING:
    from sheetgen.render.pdf import Printer

WIDE = 1000.0  # mm: wider than forty letters of any script
TALL = 5.2  # mm: of the line, which lies between the printer's edge and the foot of the sheet
HTML = (
    "<!doctype html><html lang='en'><head><meta charset='utf-8'><title>{number}</title><style>"
    "@page {{ size: {wide:.3f}mm {tall}mm; margin: 0 }}"
    " html {{ font: {size:g}pt/{tall}mm 'Source Sans Pro', sans-serif }}"
    " body, h1 {{ margin: 0 }} h1 {{ font: inherit; white-space: pre }}</style></head>"
    "<body><h1>{number}</h1></body></html>"
)


def number_drawn(printer: Printer, number: str) -> bytes:
    """A number on a page of its own size, to be stamped. CannotBe where no face of this machine has a letter of it."""
    document = printer.html(string=_html(number, WIDE), base_url=FONTS, url_fetcher=printer.fetcher)
    laid = laid_out(document.render(printer.fonts, stylesheets=[printer.faces]))
    try:
        return printer.pdf(_html(number, max(word.x + word.w for word in laid.words)), "the number")
    except CannotBe:
        told = f"order {number}: no type face of this machine has every letter of this number"
        raise CannotBe(
            told, "install a face that has them, such as one of the Noto fonts, or write the number otherwise"
        ) from None


def _html(number: str, wide: float) -> str:
    return HTML.format(number=escape(number), wide=wide, tall=TALL, size=float(STAMP_SIZE))
