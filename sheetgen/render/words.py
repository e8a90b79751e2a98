"""Prose to clean HTML: Markdown, then washed, then its numbers put in; the one module that knows markdown."""

from __future__ import annotations

import functools
import re
from typing import TYPE_CHECKING, Any

import markdown
import nh3
from markupsafe import Markup, escape

from sheetgen.base.spelling import apostrophes

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.base.printed import Printed
    from sheetgen.model.worked import Prose, Shown
    from sheetgen.render.marks import Marks

TAGS = {"p", "em", "strong", "ul", "ol", "li", "br", "code", "a", "blockquote"}
KEPT, THIN = "\u00a0", "\u202f"
LESS = "\ue002"  # a < is a sign and no beginning of HTML
SLOT = "\ue000{}\ue001"
PRIVATE = range(0xE000, 0xF8FF + 1)  # signs of no alphabet, such as ours
REFERENCE = re.compile(r"&#(?:x0*([0-9a-f]+)|0*([0-9]+));?", re.IGNORECASE)


UNIT = "mm²|mm|cm²|cm|m|g|mL|h|min|s|°C|°C/h|%|AWG|in|days|cards?|ct|EUR"
TOGETHER = (
    (re.compile(r"(?<=\d) (?=\d+/\d)"), KEPT),  # a mixed number
    (re.compile(rf"(?<=\d) (?=(?:{UNIT})(?![\w²]))"), KEPT),
    (re.compile(r"(?<=\b(?:PP|SS|US|UK|JP)) (?=[\dA-Z])|(?<=\bISO) (?=\d)"), KEPT),
    (re.compile(r"(?<=\d) × (?=[\d.,]+[ \u00a0]mm)|^ × $"), f"{KEPT}×{KEPT}"),  # also where it is between two figures
    (re.compile(r"(?<=\d) – (?=\d)"), f"{THIN}–{THIN}"),  # after a dash a line breaks even before a space that is kept
    (re.compile(r"\b([A-Z]-)(?=[a-z])"), "\\1\u2060"),
    (re.compile(r"(?<=°C/)(?=h)"), "\u2060"),
    (re.compile(r"(?<= )(\d{4}-)(\d\d-)(?=\d\d\b)"), "\\1\u2060\\2\u2060"),  # a date in a line of words
    (re.compile(r"(?<=\d)(\u202f?)–(?=[\u202f\u00a0]?\d)"), "\\1–\u2060"),
)


def kept(value: Any) -> Any:  # noqa: ANN401 - whatever a theme prints
    """Text as it is set: no line break parts its numbers from their units and signs, its apostrophes are round.

    Anything else is as it is.
    """
    if not isinstance(value, str) or isinstance(value, Markup):
        return value
    return _set(str(value))


@functools.lru_cache(8192)
def _set(value: str) -> str:
    """The same of plain text; the same words stand on many pages, and those of one design in many places."""
    value = apostrophes(value)
    for loose, tight in TOGETHER:
        value = loose.sub(tight, value)
    return value


def prose(text: Prose, marks: Marks | None = None, *, inline: bool = False) -> Markup:
    """Text with its numbers, as HTML, marked where there are marks. `inline` drops a paragraph round the whole."""
    numbers: list[Shown] = []
    pieces = []
    for piece in text:
        if isinstance(piece, str):
            # A run of brackets makes Markdown quadratic; nobody writes one.
            pieces.append(kept(re.sub(r"\[{4,}", "[[[", re.sub("[\ue000-\uf8ff]", "", piece).replace("<", LESS))))
        else:
            pieces.append(SLOT.format(len(numbers)))
            numbers.append(piece)
    clean = _washed("".join(pieces))
    if inline:
        clean = re.sub(r"^\s*<p>(.*)</p>\s*$", r"\1", clean, flags=re.DOTALL)
    clean = re.sub(r'<a href="[^"]*"', lambda link: _filled(link[0], [escape(n.printed.told) for n in numbers]), clean)
    told = [_number(n.printed) if marks is None else marks.in_text(n.printed, n.label) for n in numbers]
    return Markup(_filled(clean, told))  # noqa: S704 - washed above


@functools.lru_cache(4096)
def _washed(text: str) -> str:
    """Markdown as clean HTML; the same line stands on many sheets of many versions."""
    raw = markdown.markdown(text, extensions=["sane_lists"], output_format="html")
    raw = REFERENCE.sub(_ours_apart, raw.replace(LESS, "&lt;"))
    return nh3.clean(raw, tags=TAGS, attributes={"a": {"href"}}, url_schemes={"http", "https", "mailto"})


def _filled(html: str, numbers: Sequence[Markup]) -> str:
    return re.sub("\ue000(\\d+)\ue001", lambda slot: numbers[int(slot[1])], html)


def _ours_apart(reference: re.Match[str]) -> str:
    """A sign written by its number, as HTML may; none that would pass for a mark of ours."""
    number = int(reference[1][:8], 16) if reference[1] else int(reference[2][:8])
    return "\ufffd" if number in PRIVATE else reference[0]


def _number(printed: Printed) -> Markup:
    """A number in a line of text: never parted from its unit."""
    return Markup('<span class="n">{}</span>').format(printed.told)


def plain(text: Prose) -> str:
    """Text with its numbers, without marks."""
    words = "".join(p if isinstance(p, str) else p.printed.told for p in text)
    return re.sub(r"[*_`]", "", " ".join(words.split()))
