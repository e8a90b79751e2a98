"""A photograph or other bitmap: upright, no larger than print needs, its pixels and nothing else."""

from __future__ import annotations

import io
import warnings
from contextlib import contextmanager
from typing import TYPE_CHECKING, NamedTuple

from PIL import Image, ImageChops, ImageFile

from sheetgen.base.trouble import CannotBe
from sheetgen.pictures.bare import ANEW, NEITHER, SHORTENED, bare

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

LARGEST = 1600  # pixels: 180 mm at 225 to the inch
QUALITY = 85
MOST_PIXELS = 60_000_000  # of a JPEG
MOST_OF_PNG = 40_000_000  # a page scanned at 600 to the inch has 35; what may be clear takes twice the memory
MOST_DECODED = 1_000_000_000  # pixels, over all passes that a JPEG makes; a camera's makes one, a web page's ten
PASS = b"\xff\xda"
# by EXIF's number for how the camera was held
TURNED = {
    2: Image.Transpose.FLIP_LEFT_RIGHT, 3: Image.Transpose.ROTATE_180, 4: Image.Transpose.FLIP_TOP_BOTTOM,
    5: Image.Transpose.TRANSPOSE, 6: Image.Transpose.ROTATE_270, 7: Image.Transpose.TRANSVERSE,
    8: Image.Transpose.ROTATE_90,
}  # fmt: skip


class Bitmap(NamedTuple):
    """A file of pixels: `png`, `jpeg` or `webp`, its bytes, and how many there are."""

    kind: str
    data: bytes
    width: int
    height: int


def bitmap(raw: bytes, most: int = MOST_PIXELS) -> Bitmap:
    """A new file of it, `png` or `jpeg`. Raises CannotBe; the message follows the file's name.

    It may have `most` pixels, and never more than print needs.
    """
    pixels, held = bare(raw)
    try:
        with _strictly(), Image.open(io.BytesIO(pixels), formats=("PNG", "JPEG")) as opened:
            _bounded(opened, pixels, most)
            return _made_anew(opened, held)
    except CannotBe:
        raise
    except Image.DecompressionBombError:
        raise CannotBe("has too many pixels", "make it smaller") from None
    except Exception as fault:  # noqa: BLE001 - the reader raises whatever a file brings it to
        if "truncated" in str(fault):
            raise CannotBe(*SHORTENED) from None
        raise CannotBe(*NEITHER) from None


@contextmanager
def _strictly() -> Iterator[None]:
    """What is cut short is refused, whatever the printer has set for all; what is too large is told by us."""
    before, ImageFile.LOAD_TRUNCATED_IMAGES = ImageFile.LOAD_TRUNCATED_IMAGES, False
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            yield
    finally:
        ImageFile.LOAD_TRUNCATED_IMAGES = before


def _bounded(opened: Image.Image, raw: bytes, most: int) -> None:
    pixels = opened.width * opened.height
    if opened.format == "PNG":
        most = min(most, MOST_OF_PNG // (2 if _clear(opened) else 1))
    if pixels > most:
        raise CannotBe(f"has {opened.width} × {opened.height} pixels", "make it smaller")
    if opened.format != "PNG" and pixels * raw.count(PASS) > MOST_DECODED:
        raise CannotBe("is a JPEG of too many passes", ANEW)


def _clear(picture: Image.Image) -> bool:
    """Whether something may be seen through it."""
    return picture.mode in {"RGBA", "LA", "PA", "P"} or "transparency" in picture.info


def narrower(made: bytes, widths: Sequence[int]) -> list[Bitmap]:
    """One that `bitmap` has made, at each of these widths as far as it has them, and as WebP beside it.

    The narrowest first; the last is as it is. What is clear stays so.
    """
    found = []
    with Image.open(io.BytesIO(made), formats=("PNG", "JPEG")) as whole:
        for width in [*(one for one in sorted(widths) if one < whole.width), whole.width]:
            size = (width, max(1, round(whole.height * width / whole.width)))
            one = whole.resize(size, Image.Resampling.LANCZOS) if width < whole.width else whole
            kind = "png" if _clear(whole) else "jpeg"
            own = made if one is whole else _written(one, kind)
            found += [Bitmap(kind, own, *size), Bitmap("webp", _written(one, "webp"), *size)]
    return found


def _written(picture: Image.Image, kind: str) -> bytes:
    kept = io.BytesIO()
    picture.save(kept, kind.upper(), quality=QUALITY, optimize=True)
    return kept.getvalue()


def _made_anew(opened: Image.Image, held: int) -> Bitmap:
    """Turned by what the camera says of it, then its pixels alone: no place, name, comment or profile."""
    picture = _in_plain_colours(opened)
    picture.thumbnail((LARGEST, LARGEST))
    clear = _clear(picture)
    if held in TURNED:
        picture = picture.transpose(TURNED[held])
    if (
        picture.mode == "CMYK" and "adobe" not in opened.info
    ):  # whoever marks theirs writes the inks the other way round
        picture = ImageChops.invert(picture)
    picture = picture.convert("RGBA" if clear else "RGB")
    bare = Image.frombytes(picture.mode, picture.size, picture.tobytes())
    kept = io.BytesIO()
    kind = "png" if clear else "jpeg"
    bare.save(kept, kind.upper(), quality=QUALITY)
    return Bitmap(kind, kept.getvalue(), *bare.size)


def _in_plain_colours(opened: Image.Image) -> Image.Image:
    """A grey of sixteen bits in eight, a palette in full colours: only such can be made smaller without loss."""
    if opened.mode.startswith("I;16"):
        return Image.frombytes("L", opened.size, opened.tobytes(), "raw", "L;16")  # the upper eight bits
    if opened.mode not in {"RGBA", "LA"} and _clear(opened):
        return opened.convert("RGBA")
    return opened.convert("L") if opened.mode == "1" else opened
