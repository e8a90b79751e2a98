"""Photographs and other bitmaps: they print as they look, and nothing else of them is printed."""

from __future__ import annotations

import io
import struct
from typing import Any

import pytest
from PIL import Image, ImageChops, ImageFile

from sheetgen.base.trouble import CannotBe
from sheetgen.pictures.ready import ready


def looked_at(name: str, raw: bytes) -> Image.Image:
    """What is printed, opened again."""
    return Image.open(io.BytesIO(ready(name, raw).data))


def middle(name: str, raw: bytes) -> Any:
    picture = looked_at(name, raw)
    return picture.getpixel((picture.width // 2, picture.height // 2))


def near(colour: Any, wanted: tuple[int, ...], by: int = 3) -> bool:
    return all(abs(a - b) <= by for a, b in zip(colour, wanted, strict=True))


@pytest.mark.parametrize(("grey", "wanted"), [(0, 0), (20_000, 78), (40_000, 156), (52_428, 204), (65_535, 255)])
def test_a_grey_of_sixteen_bits_prints_as_that_grey(grey: int, wanted: int, attacks: Any) -> None:
    # 65,535 is white: 40,000 / 65,535 of it is 156 of 255
    raw = attacks.png(32, 32, 16, 0, rows=(b"\0" + struct.pack(">H", grey) * 32) * 32)
    assert near(middle("a.png", raw), (wanted,) * 3, by=1)


INKS = {
    (0, 0, 0, 0): (255, 255, 255),
    (0, 255, 255, 0): (255, 0, 0),
    (255, 0, 0, 0): (0, 255, 255),
    (0, 0, 0, 255): (0, 0, 0),
}


@pytest.mark.parametrize(("inks", "wanted"), INKS.items())
@pytest.mark.parametrize("marked", [True, False])
def test_a_photograph_in_four_inks_prints_in_their_colours(inks: Any, wanted: Any, marked: Any) -> None:
    kept = io.BytesIO()
    picture = Image.new("CMYK", (32, 32), inks)
    (picture if marked else ImageChops.invert(picture)).save(kept, "JPEG", quality=95)
    raw = kept.getvalue()
    if not marked:  # the segment that says whose way round they are, taken out: then no ink is 0
        at = raw.index(b"\xff\xee")
        raw = raw[:at] + raw[at + 2 + struct.unpack(">H", raw[at + 2 : at + 4])[0] :]
    assert near(middle("a.jpg", raw), wanted)


def test_what_is_clear_stays_clear(attacks: Any) -> None:
    palette = attacks.chunk(b"PLTE", bytes((255, 0, 0, 0, 0, 255))) + attacks.chunk(b"tRNS", b"\0\xff")
    raw = attacks.png(8, 8, 8, 3, rows=(b"\0" + b"\0" * 4 + b"\1" * 4) * 8, before=palette)
    picture = looked_at("a.png", raw)
    assert [picture.getpixel((x, 4)) for x in (0, 7)] == [(255, 0, 0, 0), (0, 0, 255, 255)]
    grey = attacks.png(8, 8, 8, 0, rows=(b"\0" + b"\5" * 8) * 8, before=attacks.chunk(b"tRNS", b"\0\5"))
    assert middle("b.png", grey)[3] == 0


def test_a_photograph_taken_upright_prints_upright() -> None:
    exif = Image.Exif()
    exif[0x0112] = 6  # turned to the right
    kept = io.BytesIO()
    picture = Image.new("RGB", (60, 30), "blue")
    picture.paste("red", (0, 0, 30, 30))
    picture.save(kept, "JPEG", exif=exif)
    printed = looked_at("a.jpg", kept.getvalue())
    assert printed.size == (30, 60)
    assert near(printed.getpixel((15, 10)), (254, 0, 0))


def test_a_large_picture_is_made_no_larger_than_print_needs(attacks: Any) -> None:
    for name, raw in {
        "a.jpg": attacks.saved("JPEG", "RGB", (4000, 3000)),
        "b.png": attacks.saved("PNG", "RGBA", (4000, 3000)),
    }.items():
        assert looked_at(name, raw).size == (1600, 1200)


def test_of_a_photograph_only_what_shows_is_printed(attacks: Any) -> None:
    raw = ready("a.jpg", attacks.told_where()).data
    assert {name: raw.count(b"\xff" + bytes([name])) for name in (0xE1, 0xE2, 0xED, 0xFE)} == dict.fromkeys(
        (0xE1, 0xE2, 0xED, 0xFE), 0
    )
    assert b"PRIVATE" not in raw
    picture = Image.open(io.BytesIO(ready("b.png", attacks.commented()).data))
    assert not {"exif", "icc_profile", "comment", "Author", "Comment", "photoshop"} & picture.info.keys()


@pytest.mark.parametrize("name", ["half-a-photograph.jpg", "half-a-picture.png", "a-picture-without-its-end.png"])
def test_what_is_cut_short_is_refused_though_the_printer_would_print_it(
    name: str, attacks: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(ImageFile, "LOAD_TRUNCATED_IMAGES", True)  # as WeasyPrint sets it
    with pytest.raises(CannotBe, match="is cut short"):
        ready(name, attacks.REFUSED[name]())
    assert ImageFile.LOAD_TRUNCATED_IMAGES


def test_a_picture_of_a_page_scanned_finely_is_printed(attacks: Any) -> None:
    # a sheet of A4 at 600 to the inch
    raw = attacks.png(4960, 7016, 8, 0, rows=(b"\0" + b"\xf0" * 4960) * 7016)
    assert near(middle("a.png", raw), (240,) * 3)
