"""What is kept of an SVG: element by element, value by value, only what is allowed; the rest is left out or refused."""

from __future__ import annotations

import base64
import binascii
import re
from typing import TYPE_CHECKING, Any

from sheetgen.base.trouble import CannotBe
from sheetgen.pictures import outline
from sheetgen.pictures.allowed import (
    ALONE,
    ELEMENTS,
    GRADIENTS,
    LEFT_OUT,
    POINTS_AT,
    PROPERTIES,
    REFUSED,
    ROOT,
    TEXTS,
    UNSEEN,
)
from sheetgen.pictures.element import PAINTS, Element

if TYPE_CHECKING:
    from sheetgen.pictures.style import Sheet

NS = "{http://www.w3.org/2000/svg}"
SPACE = "{http://www.w3.org/XML/1998/namespace}space"
LINKS = ("href", "{http://www.w3.org/1999/xlink}href")
DEEPEST = 50  # elements in elements; each is a call of the printer's
MOST_BITMAPS = 4
MOST_PIXELS = 16_000_000  # of each
MOST_ATTRIBUTES = 100  # the parser takes the longer for each the more there are
BITMAP = re.compile(r"data:image/(png|jpe?g);base64,", re.IGNORECASE)
ELSEWHERE = re.compile(r"url\s*\(\s*['\"]?\s*(?!#)", re.IGNORECASE)
OWN_WAY = frozenset({"inherit", "initial", "unset"})
PLAIN = "take it out, or save it as a plain SVG"


class Keeper:
    """Reads the elements of one drawing."""

    def __init__(self, sheet: Sheet) -> None:
        self.sheet = sheet
        self.bitmaps = 0

    def whole(self, root: Any) -> Element:  # noqa: ANN401 - lxml is not typed
        """The drawing. Raises CannotBe with the line of what is refused."""
        return self._element(root, 0)

    def _element(self, one: Any, deep: int) -> Element:  # noqa: ANN401
        try:
            kept = self._kept(one, one.tag.removeprefix(NS), deep)
        except CannotBe as fault:
            if "(line" in fault.message:
                raise
            raise CannotBe(f"{fault.message} (line {one.sourceline})", fault.help or PLAIN) from None
        return kept

    def _kept(self, one: Any, tag: str, deep: int) -> Element:  # noqa: ANN401
        if deep > DEEPEST:
            raise CannotBe(f"has groups in groups, more than {DEEPEST} deep", "ungroup some of them")
        if tag not in ELEMENTS and (deep or tag != "svg"):
            what = REFUSED.get(tag, f"a '{tag[:40]}', which cannot be printed")
            raise CannotBe(f"holds {what}")
        if len(one.attrib) > MOST_ATTRIBUTES:
            raise CannotBe("has an element of too many attributes")
        kept = Element(tag, one.sourceline, one.get("id", ""))
        self._attributes(one, kept, ELEMENTS.get(tag, ROOT))
        said = self.sheet.of(tag, kept.identity, one.get("class", ""), one.get("style", ""))
        for name, value in said.items():
            _property(kept, name, value)
        self._inside(one, kept, deep)
        if (tag == "image" and "href" not in kept.own) or _is_nothing(kept):
            return Element("g", kept.line, kept.identity)
        if kept.own.get("display", "").strip() == "none" and tag not in UNSEEN:
            return Element("defs", kept.line, inside=[] if tag in TEXTS else kept.inside)
        return kept

    def _attributes(self, one: Any, kept: Element, allowed: Any) -> None:  # noqa: ANN401
        for name, value in one.attrib.items():
            if name in allowed:
                _checked(name, value, allowed[name])
                kept.own[name] = value
            elif name in PROPERTIES:
                _property(kept, name, value)
            elif name in LINKS:
                self._link(kept, value.strip())
            elif name == SPACE and value in {"preserve", "default"}:
                kept.own["xml:space"] = value

    def _link(self, kept: Element, link: str) -> None:
        if kept.tag == "image":
            kept.own["href"] = self._bitmap(link)
        elif kept.tag == "use" or kept.tag in GRADIENTS | {"pattern"}:
            if not link.startswith("#"):
                raise CannotBe("points at another file", "save it as a plain SVG, with nothing linked")
            kept.points_at["href"] = link[1:]

    def _bitmap(self, link: str) -> str:
        """A photograph in the drawing, made anew as one beside it would be."""
        from sheetgen.pictures.bitmap import bitmap  # noqa: PLC0415 - heavy, and few drawings hold one

        head = BITMAP.match(link)
        self.bitmaps += 1
        if not head or self.bitmaps > MOST_BITMAPS:
            what = (
                "more than " + str(MOST_BITMAPS) + " pictures" if head else "a picture that is not in it as PNG or JPEG"
            )
            raise CannotBe(f"holds {what}", "put it in as a PNG or JPEG, or save the whole as one")
        try:
            kind, data, *_ = bitmap(base64.b64decode("".join(link[head.end() :].split()), validate=True), MOST_PIXELS)
        except binascii.Error:
            raise CannotBe("holds a picture that cannot be read") from None
        except CannotBe as fault:
            raise CannotBe(f"holds a picture that {fault.message}", fault.help) from None
        return f"data:image/{kind};base64," + base64.b64encode(data).decode()

    def _inside(self, one: Any, kept: Element, deep: int) -> None:  # noqa: ANN401
        in_text = kept.tag in TEXTS
        if in_text and one.text:
            kept.inside.append(one.text)
        for inner in one:
            tag = inner.tag.removeprefix(NS) if isinstance(inner.tag, str) and inner.tag.startswith(NS) else "title"
            if tag not in LEFT_OUT:
                made = self._element(inner, deep + 1)
                fits = (tag == "tspan") == in_text and (tag == "stop") == (kept.tag in GRADIENTS)
                if fits and kept.tag not in ALONE:
                    kept.inside.append(made)
            if in_text and inner.tail:
                kept.inside.append(inner.tail)


def _is_nothing(kept: Element) -> bool:
    """Whether a line goes nowhere: the printer asks it for its direction all the same."""
    if kept.tag == "path":
        return not outline.of_path(kept.own.get("d", "")).points
    return kept.tag in {"polyline", "polygon"} and not outline.of_points(kept.own.get("points", "")).points


def _checked(name: str, value: str, reader: Any) -> Any:  # noqa: ANN401
    try:
        return reader(value)
    except CannotBe as fault:
        if fault.message:
            raise
        raise CannotBe(f'has {name}="{value[:40]}", which cannot be printed') from None


def _property(kept: Element, name: str, value: str) -> None:
    """A property, whether an attribute or a style says it; one that is not known is not seen on paper."""
    if name == "font":
        raise CannotBe("names a type face in short", "write font-family and font-size")
    if name not in PROPERTIES:
        if ELSEWHERE.search(value):
            raise CannotBe("points at another file", "save it as a plain SVG, with nothing linked")
        return
    kept.points_at.pop(name, None)
    kept.own.pop(name, None)
    if value.strip() in OWN_WAY:
        if value.strip() == "inherit":
            kept.own[name] = "inherit"
        return
    if name in POINTS_AT:
        found = _checked(name, value, PROPERTIES[name])
        rest, target = found if name in PAINTS else ("", found)
        if target:
            kept.points_at[name] = target
        if rest or not target:
            kept.own[name] = rest or "none"
        return
    found = _checked(name, value, PROPERTIES[name])
    kept.own[name] = found if isinstance(found, str) else value
