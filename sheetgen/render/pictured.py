"""Pictures that a theme brings along, in an address or in its page: held to what a design's own pictures are."""

from __future__ import annotations

import re
from typing import Any
from xml.etree import ElementTree as ET

from sheetgen.base.trouble import CannotBe
from sheetgen.pictures.ready import ready

# How files begin that WeasyPrint would give to Pillow: of all others that it knows, some are programs (EPS).
BITMAPS = re.compile(rb"\x89PNG\r\n\x1a\n|\xff\xd8\xff|GIF8[79]a|RIFF....WEBP", re.DOTALL)
# Whatever the address says that it is, WeasyPrint tries XML last; in UTF-16 it begins with a mark, or has a nought.
XML = re.compile(rb"(\xef\xbb\xbf)?\s*<|\xff\xfe|\xfe\xff|\0")
NAME = "picture-of-the-theme.svg"
REPEATING = ("pattern", "linearGradient", "radialGradient", "marker", "mask", "clipPath", "image", "filter", "symbol")
"""Elements that may draw much out of little; our own pen writes none of them."""
DECLARED = "{http://www.w3.org/2000/xmlns/}"  # as HTML reads what declares a namespace; it is written anew
LEAST_DASH = 0.05
ADDRESS = re.compile(r"(data:[\w/+.-]*)[^\s'\")]*")
NUMBER = re.compile(r"\d*\.?\d+")


def allowed(data: bytes) -> bytes:
    """What is fetched of a `data:` address. ValueError for what is no picture, or one that asks for too much."""
    if BITMAPS.match(data):
        return data
    if not XML.match(data):
        raise ValueError("refused: data that is no PNG, JPEG, GIF, WebP or SVG")
    try:
        return ready(NAME, data).data
    except CannotBe as fault:
        raise ValueError(f"refused: {fault.message}") from None


def shown(murmur: str) -> str:
    """What WeasyPrint says of an address, without the data in it."""
    return ADDRESS.sub(r"\1…", murmur)[:200]


def too_heavy(svg: Any) -> str:  # noqa: ANN401 - an element, as WeasyPrint reads it
    """Why a drawing that stands in the page is not laid out, in words, or nothing."""
    if not any(map(_may_repeat, svg.iter())):
        return ""
    names = {key: value for key, value in svg.attrib.items() if not key.startswith(DECLARED)}
    alone = ET.Element(svg.tag, names)  # without the words behind it
    alone.extend(svg)
    try:
        ready(NAME, ET.tostring(alone))
    except CannotBe as fault:
        return fault.message.partition(" (line")[0].replace(f"'{NAME}'", "a drawing in it")
    return ""


def _may_repeat(one: Any) -> bool:  # noqa: ANN401
    if not isinstance(one.tag, str):
        return False
    dashes = [float(word) for word in NUMBER.findall(one.get("stroke-dasharray", ""))]
    small = bool(dashes) and sum(dashes) < LEAST_DASH
    return small or "dash" in one.get("style", "") or one.tag.rpartition("}")[2] in REPEATING
