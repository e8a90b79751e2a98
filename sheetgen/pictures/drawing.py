"""An SVG made anew: read by a parser that fetches nothing, what is known of it kept, its cost held against a bound."""

from __future__ import annotations

import re
from itertools import islice
from typing import Any

from lxml import etree

from sheetgen.base.trouble import CannotBe
from sheetgen.pictures.element import by_id, written
from sheetgen.pictures.keeping import Keeper
from sheetgen.pictures.pruning import prune
from sheetgen.pictures.style import Sheet
from sheetgen.pictures.weight import weigh

NS = "{http://www.w3.org/2000/svg}"
MOST_BYTES = 2_000_000  # a drawing of more is slow to print for no gain
MOST_ELEMENTS = 20_000
LONGEST_TITLE = 1000
DECLARED = re.compile(r"\s*<\?xml[^?>]{0,100}encoding\s*=\s*[\"']([\w-]{1,20})[\"']")
DOCTYPE = re.compile(r"<!DOCTYPE[^\[<>]{0,500}>")
TABLES = re.compile(r"<!(DOCTYPE|ENTITY|ATTLIST|ELEMENT|NOTATION)\b")
SIMPLER = "simplify it, or save it as a PNG"
PLAIN = "save it as a plain SVG from a drawing program"


def drawing(raw: bytes) -> tuple[bytes, str]:
    """The drawing as it is printed, and its title or nothing. Raises CannotBe; the message follows the file's name."""
    if len(raw) > MOST_BYTES:
        raise CannotBe(f"is an SVG of {len(raw) / 1e6:.1f} MB, too much to print", SIMPLER)
    root = _parsed(_text(raw))
    if root.tag != f"{NS}svg":
        helped = 'add xmlns="http://www.w3.org/2000/svg" to its svg' if root.tag == "svg" else PLAIN
        raise CannotBe("is not an SVG picture", helped)
    if sum(1 for _ in islice(root.iter(), MOST_ELEMENTS + 1)) > MOST_ELEMENTS:
        raise CannotBe(f"has more than {MOST_ELEMENTS} elements", SIMPLER)
    top = Keeper(Sheet("".join(one.itertext()) for one in root.iter(f"{NS}style"))).whole(root)
    known = by_id(top)
    prune(top, known)
    weigh(top, known)
    return written(top, known).encode(), _title(root)


def _text(raw: bytes) -> str:
    """UTF-8 and nothing else, for what is in another code may be read in two ways."""
    try:
        text = raw.removeprefix(b"\xef\xbb\xbf").decode("utf-8")
        strange = text.find("\0")
        before = text[: max(strange, 0)].count("\n")
    except UnicodeDecodeError as fault:
        text, strange, before = "", fault.start, raw[: fault.start].count(b"\n")
    if strange >= 0:
        raise CannotBe(f"is not written in UTF-8 (line {before + 1})", PLAIN)
    said = DECLARED.match(text)
    if said and said[1].lower() not in {"utf-8", "utf8", "us-ascii", "ascii"}:
        raise CannotBe("is not written in UTF-8", PLAIN)
    text = DOCTYPE.sub(lambda found: "\n" * found[0].count("\n"), text, count=1)  # it names a table that nobody fetches
    if TABLES.search(text):
        raise CannotBe("declares entities of its own", PLAIN)
    return text


def _parsed(text: str) -> Any:  # noqa: ANN401 - lxml is not typed
    """The root of it: no entity is put in, nothing is fetched."""
    parser = etree.XMLParser(
        encoding="utf-8", resolve_entities=False, no_network=True, load_dtd=False, dtd_validation=False,
        attribute_defaults=False, huge_tree=False, recover=False, remove_comments=True, collect_ids=False,
    )  # fmt: skip
    try:
        root = etree.fromstring(text.encode(), parser)
    except etree.XMLSyntaxError as fault:
        where = f" (line {fault.lineno})" if text.lstrip()[:1] == "<" else ""
        raise CannotBe(f"is not an SVG picture, or is cut short{where}", PLAIN) from None
    for one in root.itersiblings(preceding=True):
        if one.tag is etree.PI and one.target == "xml-stylesheet":
            raise CannotBe("fetches a style sheet", PLAIN)
    return root


def _title(root: Any) -> str:  # noqa: ANN401 - lxml is not typed
    """Its own words; nothing where it has none."""
    found = root.find(f"{NS}title")
    title = " ".join("".join(found.itertext()).split()) if found is not None else ""
    if len(title) > LONGEST_TITLE:
        raise CannotBe(f"has a title of {len(title)} characters", f"at most {LONGEST_TITLE}")
    return title
