"""Attacks that are too large to keep, or are no text: each is made when it is tried."""

from __future__ import annotations

import gzip
import io
import struct
import zlib
from typing import TYPE_CHECKING

from PIL import Image, PngImagePlugin

if TYPE_CHECKING:
    from collections.abc import Callable

NS = 'xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"'
R = '<rect x="5" y="5" width="10" height="20"/>'
STOPS = '<stop stop-color="red"/><stop offset="1" stop-color="blue"/>'
SQUARE = '<rect width="9" height="9"/>'
K = 1000
TEXT_LENGTH = 1_900_000


def svg(body: str) -> bytes:
    return f'<svg {NS} viewBox="0 0 60 30">{body}</svg>'.encode()


def levels(shapes: int, deep: int, wide: int, tag: str = "g") -> str:
    copies = (f'<{tag} id="a{n}">' + f'<use href="#a{n - 1}"/>' * wide + f"</{tag}>" for n in range(1, deep + 1))
    return f'<{tag} id="a0">{R * shapes}</{tag}>' + "".join(copies) + f'<use href="#a{deep}"/>'


def chunk(name: bytes, data: bytes) -> bytes:
    return struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))


def png(
    width: int, height: int, deep: int, colour: int, *, rows: bytes, before: bytes = b"", interlaced: int = 0
) -> bytes:
    head = chunk(b"IHDR", struct.pack(">IIBBBBB", width, height, deep, colour, 0, 0, interlaced))
    packed = zlib.compress(rows, 9)
    return b"\x89PNG\r\n\x1a\n" + head + before + chunk(b"IDAT", packed) + chunk(b"IEND", b"")


def saved(kind: str, mode: str = "RGB", size: tuple[int, int] = (300, 200), **how: object) -> bytes:
    kept = io.BytesIO()
    gradient = Image.linear_gradient("L").resize(size)
    gradient.convert(mode).save(kept, kind, **how)
    return kept.getvalue()


def scans() -> bytes:
    """A progressive JPEG, one of its scans told thousands of times."""
    whole = saved("JPEG", "L", (6000, 6000), progressive=True, quality=1)
    last = whole.rindex(b"\xff\xda")
    return whole[:last] + whole[last:-2] * 4000 + b"\xff\xd9"


def without_a_chunk(raw: bytes, name: bytes) -> bytes:
    at = raw.index(name) - 4
    return raw[:at] + raw[at + 12 + struct.unpack(">I", raw[at : at + 4])[0] :]


def broken(raw: bytes, at: int) -> bytes:
    return raw[:at] + bytes([raw[at] ^ 0xFF]) + raw[at + 1 :]


PNG, JPEG = saved("PNG"), saved("JPEG", quality=95)

REFUSED: dict[str, Callable[[], bytes]] = {
    "utf-16.svg": lambda: svg(f'<script>fetch("http://CANARY/16")</script>{R}').decode().encode("utf-16"),
    "utf-16-without-a-mark.svg": lambda: svg(levels(20, 5, 20)).decode().encode("utf-16-le"),
    "utf-32.svg": lambda: svg(R).decode().encode("utf-32"),
    "packed.svg": lambda: gzip.compress(svg(R)),
    "a-nul.svg": lambda: svg(R).replace(b"<rect", b"\0<rect"),
    "five-levels-of-twenty-copies.svg": lambda: svg(levels(20_000, 5, 20)),
    "a-thousand-levels-of-one-copy.svg": lambda: svg(levels(1, 1000, 1)),
    "twenty-levels-of-two-copies.svg": lambda: svg(levels(1, 20, 2)),
    "symbols-of-two-copies.svg": lambda: svg(levels(1, 16, 2, "symbol")),
    "a-heavy-marker-on-many-corners.svg": lambda: svg(
        f'<marker id="a">{R * 500}</marker><path marker-mid="url(#a)" d="M0 0{" L1 1 2 2" * 10_000}"/>'
    ),
    "a-heavy-mask-on-many-shapes.svg": lambda: svg(
        f'<mask id="a">{R * 500}</mask>' + '<rect width="9" height="9" mask="url(#a)"/>' * 2000
    ),
    "a-heavy-clip-on-many-shapes.svg": lambda: svg(
        f'<clipPath id="a">{R * 500}</clipPath>' + '<rect width="9" height="9" clip-path="url(#a)"/>' * 2000
    ),
    "a-heavy-pattern-on-many-shapes.svg": lambda: svg(
        f'<pattern id="a" width="1" height="1">{R * 500}</pattern><g fill="url(#a)">' + SQUARE * 2000 + "</g>"
    ),
    "many-stops-on-many-shapes.svg": lambda: svg(
        f'<linearGradient id="a">{STOPS * 2000}</linearGradient><g fill="url(#a)">' + SQUARE * 5000 + "</g>"
    ),
    "a-gradient-a-shape.svg": lambda: svg(
        "".join(f'<linearGradient id="g{n}">{STOPS}</linearGradient><rect fill="url(#g{n})"/>' for n in range(9000))
    ),
    "much-text.svg": lambda: svg(f'<text x="1" y="9">{"word " * (TEXT_LENGTH // 5)}</text>'),
    "one-long-word.svg": lambda: svg(f'<text x="1" y="9">{"w" * TEXT_LENGTH}</text>'),
    "much-text-in-pieces.svg": lambda: svg(f'<text y="9">{"<tspan>5 mm</tspan> to " * 76_000}</text>'),
    "text-with-a-place-a-letter.svg": lambda: svg(f'<text y="9" x="{"1 " * 500_000}">{"w" * 400_000}</text>'),
    "text-copied-often.svg": lambda: svg(f'<text id="a">{"word " * 300}</text>' + '<use href="#a"/>' * 5000),
    "a-long-title.svg": lambda: svg(f"<title>{'word ' * (TEXT_LENGTH // 5)}</title>{R}"),
    "a-hundred-thousand-shapes.svg": lambda: svg('<rect width="1"/>' * 100_000),
    "half-a-million-elements.svg": lambda: svg("<g/>" * 480_000),
    "groups-in-groups.svg": lambda: svg("<g>" * 100_000 + "</g>" * 100_000),
    "two-hundred-groups-in-groups.svg": lambda: svg("<g>" * 200 + R + "</g>" * 200),
    "clear-groups-in-clear-groups.svg": lambda: svg('<g opacity="0.5">' * 40 + R * 15_000 + "</g>" * 40),
    "one-path-of-two-megabytes.svg": lambda: svg(f'<path d="M0 0{"l1 1-1-1" * 230_000}"/>'),
    "a-polygon-of-two-megabytes.svg": lambda: svg(f'<polygon points="{"1 1 " * 450_000}"/>'),
    "a-long-path-copied-often.svg": lambda: svg(
        f'<path id="a" d="M0 0{"l1 1-1-1" * 5000}"/>' + '<use href="#a"/>' * 500
    ),
    "one-number-of-two-megabytes.svg": lambda: svg(f'<rect width="{"1" * TEXT_LENGTH}" height="1"/>'),
    "a-path-of-one-number.svg": lambda: svg(f'<path d="M0 {"1" * TEXT_LENGTH}"/>'),
    "a-long-transform.svg": lambda: svg(f'<g transform="{"rotate(1) " * 190_000}">{R}</g>'),
    "a-transform-of-open-brackets.svg": lambda: svg(f'<g transform="{"a(" * 900_000}">{R}</g>'),
    "a-long-dash.svg": lambda: svg(f'<path stroke="#000" stroke-dasharray="{"1 " * 900_000}" d="M0 0H9"/>'),
    "a-long-list-of-classes.svg": lambda: svg(f'<style>.a{{fill:red}}</style><g class="{"a " * 900_000}"/>'),
    "many-rules-on-many-shapes.svg": lambda: svg(
        f"<style>{'.a{fill:red;stroke:blue}' * 3000}</style>" + '<rect class="a"/>' * 15_000
    ),
    "a-style-sheet-of-two-megabytes.svg": lambda: svg(f"<style>{'g g g{fill:red}' * 120_000}</style>{R}"),
    "a-style-of-two-megabytes.svg": lambda: svg(f'<rect style="{"fill:red;" * 200_000}" width="1" height="1"/>'),
    "a-style-of-open-brackets.svg": lambda: svg(f'<rect style="fill:{"(" * TEXT_LENGTH}" width="1" height="1"/>'),
    "many-attributes.svg": lambda: svg("<g " + " ".join(f'a{n}=""' for n in range(170_000)) + "/>"),
    "three-megabytes.svg": lambda: svg(f"<!-- {'x' * 3_000_000} -->{R}"),
    "a-png.svg": lambda: PNG,
    "a-drawing.png": lambda: svg(R),
    "a-drawing.jpg": lambda: svg(f'<image href="http://CANARY/a.png"/>{R}'),
    "a-bitmap.png": lambda: saved("BMP"),
    "a-gif.png": lambda: saved("GIF"),
    "a-tiff.jpg": lambda: saved("TIFF"),
    "a-postscript.jpg": lambda: b"%!PS-Adobe-3.0 EPSF-3.0\n%%BoundingBox: 0 0 9 9\n(/etc/hostname) (r) file\n",
    "a-web-page.png": lambda: b"<html><script>alert(1)</script></html>",
    "half-a-photograph.jpg": lambda: JPEG[: len(JPEG) // 2],
    "a-photograph-without-its-last-bytes.jpg": lambda: JPEG[:-40],
    "the-head-of-a-photograph.jpg": lambda: JPEG[:300],
    "half-a-picture.png": lambda: PNG[: len(PNG) // 2],
    "a-picture-without-its-end.png": lambda: PNG[:-12],
    "a-picture-without-its-last-bytes.png": lambda: PNG[:-20],
    "the-head-of-a-picture.png": lambda: PNG[:33],
    "a-picture-with-a-hole.png": lambda: PNG[:120] + PNG[160:],
    "a-picture-that-was-changed.png": lambda: broken(PNG, 200),
    "a-picture-without-rows.png": lambda: png(300, 300, 8, 0, rows=b"\0" * 100),
    "a-picture-of-no-width.png": lambda: png(0, 300, 8, 0, rows=b"\0" * 300),
    "a-bomb.png": lambda: png(60_000, 60_000, 1, 0, rows=b"\0" * (7501 * 60_000 // 100)),
    "a-long-bomb.png": lambda: png(2_000_000_000, 1, 8, 2, rows=b"\0" * 1000),
    "a-bomb-of-sixteen-bits.png": lambda: png(9000, 9000, 16, 6, rows=b"\0" * 100_000),
    "a-photograph-in-thousands-of-scans.jpg": scans,
    "a-picture-in-millions-of-pieces.png": lambda: PNG[:33] + chunk(b"abCd", b"") * 3_000_000 + PNG[33:],
    "pixels-in-millions-of-pieces.png": lambda: PNG[:33] + chunk(b"IDAT", b"") * 3_000_000 + PNG[33:],
    "a-photograph-in-millions-of-pieces.jpg": lambda: JPEG[:2] + b"\xff\xfe\0\2" * 9_000_000 + JPEG[2:],
    "a-photograph-after-millions-of-fillings.jpg": lambda: JPEG[:2] + b"\xff" * 30_000_000 + JPEG[2:],
    "letters-of-many-sizes.svg": lambda: svg("".join(f'<text font-size="{n}.5">w</text>' for n in range(3 * K))),
    "letters-of-many-faces.svg": lambda: svg("".join(f'<text font-family="f{n}">w</text>' for n in range(3 * K))),
}  # fmt: skip


def told_where() -> bytes:
    exif = Image.Exif()
    exif[0x010E], exif[0x013B] = "PRIVATE", "PRIVATE"
    exif.get_ifd(0x8825)[1] = "N"
    exif.get_ifd(0x8825)[2] = (50.0, 3.0, 59.0)
    raw = saved("JPEG", exif=exif, comment=b"PRIVATE", icc_profile=b"PRIVATE" * 30)
    iptc = b"Photoshop 3.0\x008BIM\x04\x04\x00\x00\x00\x00\x00\x0c\x1c\x02\x05\x00\x07PRIVATE"
    xmp = b"http://ns.adobe.com/xap/1.0/\x00<x:xmpmeta>PRIVATE</x:xmpmeta>"
    more = b"".join(b"\xff" + bytes([n]) + struct.pack(">H", len(d) + 2) + d for n, d in ((0xED, iptc), (0xE1, xmp)))
    return raw[:2] + more + raw[2:]


def commented() -> bytes:
    told = PngImagePlugin.PngInfo()
    told.add_text("Author", "PRIVATE")
    told.add_text("Comment", "PRIVATE", zip=False)
    told.add_itxt("XML:com.adobe.xmp", "PRIVATE")
    exif = Image.Exif()
    exif[0x013B] = "PRIVATE"
    return saved("PNG", pnginfo=told, exif=exif, icc_profile=b"PRIVATE" * 30, dpi=(300, 300))


def moving() -> bytes:
    frames = [Image.new("RGB", (60, 60), (n, 0, 0)) for n in range(200)]
    kept = io.BytesIO()
    frames[0].save(kept, "PNG", save_all=True, append_images=frames[1:])
    return kept.getvalue()


def exif(entries: int, size: int) -> bytes:
    """A list of notes, each of which is all of the rest."""
    told = b"".join(struct.pack("<HHII", 300 + n, 7, size, 8) for n in range(entries))
    return b"II*\0\x08\0\0\0" + struct.pack("<H", entries) + told + b"\0" * 4 + b"x" * size


HARMLESS: dict[str, Callable[[], bytes]] = {
    "a-photograph-that-tells-where.jpg": told_where,
    "a-photograph-with-a-page-behind-it.jpg": lambda: JPEG + b"<html><script>PRIVATE</script></html>",
    "a-picture-with-a-page-behind-it.png": lambda: PNG + b"<html><script>PRIVATE</script></html>",
    "a-picture-with-comments.png": commented,
    "a-picture-that-moves.png": moving,
    "a-bomb-of-comments.png": lambda: png(
        30, 30, 8, 0, rows=(b"\0" * 31) * 30, before=chunk(b"zTXt", b"a\0\0" + zlib.compress(b"x" * 60_000_000)) * 30
    ),
    "a-profile-that-unpacks-without-end.png": lambda: png(
        30, 30, 8, 2, rows=(b"\0" * 91) * 30, before=chunk(b"iCCP", b"PRIVATE\0\0" + zlib.compress(b"x" * 60_000_000))
    ),
    "notes-that-are-all-of-the-notes.png": lambda: PNG[:33] + chunk(b"eXIf", exif(65_000, 20_000_000)) + PNG[33:],
    "a-palette-without-colours.png": lambda: png(30, 30, 8, 3, rows=(b"\0" + b"\x05" * 30) * 30),
    "many-namespaces.svg": lambda: svg("<g " + " ".join(f'xmlns:a{n}="u{n}"' for n in range(90_000)) + "/>"),
}
