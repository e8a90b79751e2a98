"""A page of a PDF as a picture of pixels: what a link is shown with cannot be a PDF, and a drawing is no bitmap."""

from __future__ import annotations

import io

import pypdfium2

COLOURS = 256  # of a palette: a drawing has few, and a photograph is told by them at the size of a card


def picture_of(pdf: bytes, width: int) -> bytes:
    """The first page as a PNG, so many pixels wide."""
    document = pypdfium2.PdfDocument(pdf)
    try:
        page = document[0]
        drawn = page.render(scale=width / page.get_width()).to_pil().convert("RGB")
        kept = io.BytesIO()
        drawn.quantize(COLOURS).save(kept, "PNG", optimize=True)
        return kept.getvalue()
    finally:
        document.close()
