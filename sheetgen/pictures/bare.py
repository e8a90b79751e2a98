"""A PNG or JPEG without whatever is not pixels: its pieces are walked, and only those that draw go on to be decoded."""

from __future__ import annotations

import struct

from sheetgen.base.trouble import CannotBe

PNG, JPEG = b"\x89PNG\r\n\x1a\n", b"\xff\xd8\xff"
DRAWN = frozenset({b"IHDR", b"PLTE", b"tRNS", b"IDAT", b"IEND"})  # PNG 11: palette, what is clear, pixels
NOTES = frozenset(range(0xE0, 0xF0)) - {0xE0, 0xEE} | {0xFE}  # APPn but JFIF and the mark of the inks, comments
SCAN, FILLING, EXIF = 0xDA, 0xFF, b"Exif\0\0"
MOST_PIECES = 20_000  # a PNG of 40 MB in pieces of 8 KB has 5,000
MOST_SEGMENTS = 2000
ORIENTATION, SHORT, FIRST_TURNED, LAST_TURNED = 0x0112, 3, 2, 8
SHORTENED = "is cut short: the end of it is missing", "copy or save it anew"
ANEW = "save it anew as a PNG or JPEG"
NEITHER = "cannot be read as a picture", ANEW


def bare(raw: bytes) -> tuple[bytes, int]:
    """The picture with its pixels alone, and how it was held, by EXIF: 1 is upright. Raises CannotBe."""
    try:
        if raw.startswith(PNG):
            return _png(raw)
        if raw.startswith(JPEG):
            return _jpeg(raw)
    except struct.error:
        raise CannotBe(*SHORTENED) from None
    raise CannotBe(*NEITHER)


def _png(raw: bytes) -> tuple[bytes, int]:
    kept, at, held = [PNG], len(PNG), 1
    for _ in range(MOST_PIECES):
        length, name = struct.unpack_from(">I4s", raw, at)
        end = at + 12 + length
        if end > len(raw):
            raise CannotBe(*SHORTENED)
        if name in DRAWN:
            kept.append(raw[at:end])
        elif name == b"eXIf":
            held = _held(raw[at + 8 : at + 8 + length])
        at = end
        if name == b"IEND":
            return b"".join(kept), held
    raise CannotBe("is a PNG of too many pieces", ANEW)


def _jpeg(raw: bytes) -> tuple[bytes, int]:
    kept, at, held = [raw[:2]], 2, 1
    for _ in range(MOST_SEGMENTS):
        mark, name, length = struct.unpack_from(">BBH", raw, at)
        if mark != FILLING:
            raise CannotBe(*NEITHER)
        if name == FILLING:
            at += 1
            continue
        if name == SCAN:
            return b"".join((*kept, raw[at:])), held
        segment = raw[at : at + 2 + length]
        if len(segment) < 2 + length:
            raise CannotBe(*SHORTENED)
        if name not in NOTES:
            kept.append(segment)
        elif segment[4:10] == EXIF:
            held = _held(segment[10:])
        at += 2 + length
    raise CannotBe("is a JPEG of too many pieces", ANEW)


def _held(exif: bytes) -> int:
    """What the first list of EXIF says of how the camera was held; nothing else of it is read."""
    order = {b"II": "<", b"MM": ">"}.get(exif[:2])
    try:
        if order is None:
            return 1
        (first,) = struct.unpack_from(f"{order}I", exif, 4)
        (many,) = struct.unpack_from(f"{order}H", exif, first)
        for n in range(min(many, MOST_SEGMENTS)):
            tag, kind, _, value = struct.unpack_from(f"{order}HHIH", exif, first + 2 + 12 * n)
            if tag == ORIENTATION and kind == SHORT and FIRST_TURNED <= value <= LAST_TURNED:
                return int(value)
    except struct.error:
        pass
    return 1
