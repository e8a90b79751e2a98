"""Pictures made ready for the page: upright, no larger than print needs, stripped of place and camera."""

from __future__ import annotations

import base64
import io
import re
from pathlib import Path

from PIL import Image, ImageOps, UnidentifiedImageError

from sheetgen.base.trouble import CannotBe
from sheetgen.model.view import Html, Picture

LARGEST = 1600
TITLE_WITHIN = 4000  # a title stands at the beginning
MOST_BYTES = 40_000_000
MOST_SVG = 2_000_000  # a drawing of more is slow to print for no gain
MOST_USES = 20  # copies of copies grow without end
MOST_PIXELS = 60_000_000


UNREADABLE = (
    UnidentifiedImageError, Image.DecompressionBombError, Image.DecompressionBombWarning,
    MemoryError, OSError, SyntaxError, ValueError,
)  # fmt: skip


def _bounded(name: str, size: tuple[int, int]) -> None:
    if size[0] * size[1] > MOST_PIXELS:
        raise CannotBe(f"'{name}' has {size[0]} × {size[1]} pixels", "make it smaller")


def data_uri(path: Path) -> str:
    """The picture as a data URI. Raises CannotBe for what is no picture."""
    if path.stat().st_size > MOST_BYTES:
        raise CannotBe(f"the picture '{path.name}' is {path.stat().st_size / 1e6:.0f} MB large", "make it smaller")
    if path.suffix.lower() == ".svg":
        raw = path.read_bytes()
        if len(raw) > MOST_SVG or len(re.findall(rb"<(?:\w+:)?use\b", raw)) > MOST_USES:
            raise CannotBe(f"'{path.name}' is too large or too intricate to print", "simplify it, or save it as a PNG")
        if b"<svg" not in raw[:4000]:
            raise CannotBe(f"'{path.name}' is not an SVG picture", "save it anew from a drawing program")
        if re.search(rb"<script|<foreignObject|<!ENTITY|\bhref\s*=\s*[\"'](?!#|data:)", raw, re.IGNORECASE):
            raise CannotBe(f"'{path.name}' holds a script or points at other files", "save it as a plain SVG")
        return "data:image/svg+xml;base64," + base64.b64encode(raw).decode()
    try:
        with Image.open(path, formats=("PNG", "JPEG")) as opened:
            _bounded(path.name, opened.size)
            picture = ImageOps.exif_transpose(opened)
            picture.thumbnail((LARGEST, LARGEST))
            kept = io.BytesIO()
            alpha = picture.mode in {"RGBA", "LA", "P"}
            picture.convert("RGBA" if alpha else "RGB").save(kept, "PNG" if alpha else "JPEG", quality=85)
    except CannotBe:
        raise
    except UNREADABLE as fault:
        raise CannotBe(f"'{path.name}' cannot be read as a picture", f"save it anew ({fault})"[:120]) from None
    kind = "png" if alpha else "jpeg"
    return f"data:image/{kind};base64," + base64.b64encode(kept.getvalue()).decode()


def of_file(folder: str, name: str, shows: str, caption: str = "") -> Picture:
    """A picture of a project's folder; an SVG's own title goes before what it is said to show."""
    path = Path(folder) / name
    return Picture(data_uri(path), Html(""), alternative(path, shows), caption)


def alternative(path: Path, otherwise: str) -> str:
    """The picture's own words, if it is an SVG with a title."""
    if path.suffix.lower() == ".svg":
        found = re.search(r"<title[^<>]*>([^<]*)</title>", path.read_text("utf-8", "replace")[:TITLE_WITHIN])
        if found:
            return " ".join(found[1].split())
    return otherwise
