"""What no sheet needs and a page could ask for in a few letters: cells without end, drawings that repeat themselves."""

from __future__ import annotations

import re
from typing import Any

from sheetgen.render.pictured import too_heavy

MOST_SPANNED = 1000  # columns, as HTML itself bounds colspan; also columns × rows of a cell
MOST_CELLS = 20_000  # that all spans of a sheet come to
MOST_DRAWN = 100_000  # shapes of all drawings of a sheet, each as often as it is used
DEEPEST = 50  # of drawings in drawings
LEADS = frozenset({"http", "https", "mailto", "tel"})
BY, BLANK = re.compile(r"([A-Za-z][A-Za-z0-9+.-]*):"), re.compile(r"[\x00-\x20]")
HREFS = ("href", "{http://www.w3.org/1999/xlink}href")


def too_large(root: Any) -> str:  # noqa: ANN401 - an element, as WeasyPrint reads it
    """Why a page is not laid out, in words, or nothing."""
    cells = drawn = 0
    for element in root.iter():
        if not isinstance(element.tag, str):  # a comment
            continue
        spanned = 1
        for name in ("span", "colspan", "rowspan"):
            spanned *= max(1, _whole(element.get(name, "")))
        if spanned > MOST_SPANNED:
            return f"a cell or column spans {spanned}, of {MOST_SPANNED} at most"
        cells += spanned - 1
        if element.tag.endswith("}svg"):
            drawn += _Uses(element).drawn(element, 0)
            if drawn <= MOST_DRAWN and (why := too_heavy(element)):
                return why
    if cells > MOST_CELLS:
        return f"its cells span {cells} others, of {MOST_CELLS} at most"
    return f"its drawings have more than {MOST_DRAWN} shapes" if drawn > MOST_DRAWN else ""


def strange_link(root: Any) -> str:  # noqa: ANN401 - an element, as WeasyPrint reads it
    """The first link of a page that leads to no page, in words, or nothing: what it is worked by is the reader's."""
    for element in root.iter():
        if isinstance(element.tag, str) and element.tag.rpartition("}")[2] in {"a", "area"}:
            for address in filter(None, map(element.get, HREFS)):
                by = BY.match(BLANK.sub("", address))
                if by and by[1].lower() not in LEADS:
                    return f"a link in it leads by '{by[1][:20]}:', and not to a page"
    return ""


def _whole(text: str) -> int:
    digits = text.strip().lstrip("+")[:9]
    return int(digits) if digits.isdecimal() else 1


class _Uses:
    """How much a drawing draws, each of its shapes counted as often as it is used."""

    def __init__(self, svg: Any) -> None:  # noqa: ANN401
        self.named = {one.get("id"): one for one in svg.iter() if one.get("id")}
        self.known: dict[int, int] = {}

    def drawn(self, element: Any, depth: int) -> int:  # noqa: ANN401
        """The count, and more than may be for a drawing that uses itself or lies too deep."""
        if depth > DEEPEST:
            return MOST_DRAWN + 1
        if (found := self.known.get(id(element))) is None:
            found = 1 + sum(self.drawn(child, depth + 1) for child in element)
            href = next((element.get(name) for name in HREFS if element.get(name)), "")
            used = self.named.get(href.strip().removeprefix("#"))
            if isinstance(element.tag, str) and element.tag.endswith("}use") and used is not None:
                found += self.drawn(used, depth + 1)
            self.known[id(element)] = found
        return found
