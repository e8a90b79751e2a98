"""WeasyPrint's hot spots mended without changing a byte: for the one version they were measured on, and no other.

Where another version is installed, nothing is mended, and all prints as the library does by itself, more slowly.
"""

from __future__ import annotations

import copy
import functools
import re
import sys
from contextlib import contextmanager
from typing import TYPE_CHECKING, Any

from sheetgen.render.heard import heard

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

WEASYPRINT, PYDYF, TINYHTML5 = "70.0", "0.13.0", "2.1.0"
"""What the mends were made for."""
REMEMBERED = 60_000  # lines; some 40 MB
NOTES = re.compile(r"footnote|\bnote-|:\s*note\b|@import", re.IGNORECASE)
NOTE_RULES = re.compile(r"^::(?:foot)?note-\w+ \{[^{}]*\}$", re.MULTILINE)
LENGTHS = tuple(f"{kind}_{side}" for kind in ("margin", "padding") for side in ("top", "right", "bottom", "left"))
SIZES = ("width", "max_width", "height", "max_height")
LEAST = ("min_width", "min_height")
BORDERS = tuple(f"border_{side}_width" for side in ("top", "right", "bottom", "left"))
OF_A_LINE = (
    "font_family", "font_style", "font_stretch", "font_weight", "font_size", "font_kerning", "font_variant_ligatures",
    "font_variant_position", "font_variant_caps", "font_variant_numeric", "font_variant_alternates",
    "font_variant_east_asian", "font_feature_settings", "font_variation_settings", "font_language_override", "lang",
    "direction", "white_space", "word_spacing", "letter_spacing", "overflow_wrap", "word_break", "hyphens",
    "hyphenate_character", "hyphenate_limit_chars", "hyphenate_limit_zone", "tab_size",
)  # fmt: skip
"""What of a style decides where a line breaks and how wide it is."""
SIMPLE = re.compile(r"@(?!page\b|media\b|(?:top|bottom|left|right)-)|\\")
"""What a style sheet has that does more than add rules; an escape may write it otherwise."""


def quick_html() -> Any:  # noqa: ANN401 - weasyprint is not typed
    """WeasyPrint's HTML, with what makes it quicker where its version is the one that is known."""
    import pydyf  # noqa: PLC0415 - heavy
    import tinyhtml5  # noqa: PLC0415
    import weasyprint  # noqa: PLC0415

    there = (weasyprint.__version__, pydyf.__version__, tinyhtml5.__version__)
    if there != (WEASYPRINT, PYDYF, TINYHTML5):
        return weasyprint.HTML
    _mend()
    return _without_notes()


@functools.cache
def quick_words() -> None:
    """Put the mend of tinyhtml5 into it, once a process: pages are also read where none is printed."""
    import tinyhtml5  # noqa: PLC0415 - as it is done where it is used
    from tinyhtml5 import inputstream  # noqa: PLC0415

    if tinyhtml5.__version__ == TINYHTML5:
        inputstream.characters_until_regex = _Stretches()


@functools.cache
def _mend() -> None:
    """Put the mends into the library, once a process."""
    import pydyf  # noqa: PLC0415 - heavy
    from weasyprint import css  # noqa: PLC0415
    from weasyprint.layout import percent  # noqa: PLC0415
    from weasyprint.text import line_break  # noqa: PLC0415

    quick_words()
    css.CSS = _sheets_remembered(css.CSS)
    css.ComputedStyle.__missing__ = _values_at_hand(css.ComputedStyle.__missing__)
    _put(line_break.split_first_line, _lines_remembered(line_break.split_first_line))
    _put(percent.resolve_percentages, _lengths_kept(percent.resolve_percentages))
    for kind in (pydyf.Stream, pydyf.Dictionary, pydyf.Array):
        kind.data = _once_a_writing(kind.data.fget)
    pydyf.PDF.write = _one_writing(pydyf.PDF.write)


def _put(old: Callable[..., Any], new: Callable[..., Any]) -> None:
    """A function in the place of another, in every module of WeasyPrint that has taken it over by its name."""
    for module in [one for name, one in sys.modules.items() if name.startswith("weasyprint")]:
        if getattr(module, old.__name__, None) is old:
            setattr(module, old.__name__, new)


def _without_notes() -> Any:  # noqa: ANN401 - as above
    """HTML whose elements have no styles for footnotes, of which each has five, unless a page speaks of notes."""
    import weasyprint  # noqa: PLC0415

    sheet = _sheet_without_notes()

    class Quick(weasyprint.HTML):  # type: ignore[misc]  # weasyprint is not typed
        """A page."""

        def __init__(self, string: str, **options: Any) -> None:  # noqa: ANN401 - as above
            super().__init__(string=string, **options)
            self.with_notes = bool(NOTES.search(string))

        def _ua_stylesheets(self, forms: bool = False) -> list[Any]:  # noqa: FBT001, FBT002 - weasyprint's own
            return super()._ua_stylesheets(forms) if self.with_notes or forms else [sheet]

    return Quick


@functools.cache
def _sheet_without_notes() -> Any:  # noqa: ANN401 - as above
    """The style sheet that every page begins with, less its rules for notes."""
    from pathlib import Path  # noqa: PLC0415

    import weasyprint  # noqa: PLC0415

    text = (Path(weasyprint.__file__).parent / "css/html5_ua.css").read_text("utf-8")
    return weasyprint.CSS(string=NOTE_RULES.sub("", text))


class _Stretches(dict[tuple[frozenset[str], bool], Any]):
    """What finds the end of a stretch of a page; tinyhtml5 makes it anew at every word, as it keeps it by itself."""

    def __missing__(self, key: tuple[frozenset[str], bool]) -> Any:  # noqa: ANN401 - as above
        signs, of_these = key
        found = "".join(f"\\x{ord(sign):02x}" for sign in signs)
        self[key] = one = re.compile(f"[{'' if of_these else '^'}{found}]+")
        return one


def _sheets_remembered(read: Callable[..., Any]) -> Callable[..., Any]:
    """A style sheet in a page's head is read once, if it does nothing but add rules and nothing is said of it."""
    known: dict[tuple[Any, ...], Any] = {}

    def sheet(**given: Any) -> Any:  # noqa: ANN401 - as above
        text = given.get("string")
        if text is None or SIMPLE.search(text):
            return read(**given)
        key = (text, given["base_url"], given["media_type"])
        if key not in known:
            with heard() as said:
                one = read(**given | {"page_rules": []})
            if said:
                return read(**given)
            known[key] = one
        own = copy.copy(known[key])
        given["page_rules"].extend(own.page_rules)  # those of all sheets of a page are in one list
        own.page_rules, own.layers = given["page_rules"], given["layers"]
        return own

    return sheet


def _lines_remembered(split: Callable[..., Any]) -> Callable[..., Any]:
    """The same words in the same style and room break the same way: what was found is found again."""
    known: dict[tuple[Any, ...], Any] = {}
    styles: dict[tuple[str, int], int] = {}

    def name_of(style: Any) -> int:  # noqa: ANN401 - as above
        name = style.__dict__.get("_of_a_line")
        if name is None:
            told = repr([style[key] for key in OF_A_LINE])
            name = style.__dict__["_of_a_line"] = styles.setdefault((told, id(style.font_config)), len(styles))
        return int(name)

    def first_line(  # noqa: PLR0913, PLR0917 - weasyprint's own
        text: str,
        style: Any,  # noqa: ANN401
        context: Any,  # noqa: ANN401
        max_width: float | None,
        justification_spacing: float,
        is_line_start: bool = True,  # noqa: FBT001, FBT002
        minimum: bool = False,  # noqa: FBT001, FBT002
    ) -> tuple[Any, ...]:
        asked = (text, style, context, max_width, justification_spacing, is_line_start, minimum)
        if style["text_decoration_line"] != "none":  # its line is drawn from what the layout measured
            return tuple(split(*asked))
        key = (text, name_of(style), max_width, justification_spacing, is_line_start, minimum)
        if key not in known:
            if len(known) > REMEMBERED:
                known.clear()
            known[key] = split(*asked)
        layout, *rest = known[key]
        own = layout.__class__.__new__(layout.__class__)
        own.__dict__.update(layout.__dict__)
        return (own, *rest)

    return first_line


def _lengths_kept(resolve: Callable[..., None]) -> Callable[..., None]:
    """Lengths without a percentage are the same for every box of a style: reckoned once for all of them."""

    def lengths(style: Any) -> dict[str, Any] | None:  # noqa: ANN401 - as above
        """The used lengths of a style; None where one hangs on what is round the box."""
        if style["box_sizing"] != "content-box":
            return None
        found: dict[str, Any] = {}
        for name in (*LENGTHS, *SIZES, *LEAST):
            value = style[name]
            if value is None or value == "auto":
                found[name] = 0 if value and name in LEAST else value
            elif getattr(value, "unit", "%") == "%":
                return None
            else:
                found[name] = value.value
        return found

    def resolved(box: Any, containing_block: Any) -> None:  # noqa: ANN401 - as above
        style = box.style
        own = style.__dict__
        if "_lengths" not in own:
            own["_lengths"] = lengths(style)
        kept = own["_lengths"]
        if kept is None:
            resolve(box, containing_block)
            return
        box.__dict__.update(kept)
        joined = style["border_collapse"] == "collapse"
        for name in BORDERS:
            if not (joined and hasattr(box, name)):
                setattr(box, name, style[name])

    return resolved


def _values_at_hand(reckoned: Callable[[Any, str], Any]) -> Callable[[Any, str], Any]:
    """What a rule says nothing of is its parent's value or the one that all begin with: no more to be asked there."""
    from weasyprint import css  # noqa: PLC0415 - heavy

    sides = css.PHYSICAL_FUNCTIONS
    logical = {of(block="ttb", inline=way) for of in sides.values() for way in ("ltr", "rtl")}
    special = {"page", "position", "float", "display", *css.INITIAL_NOT_COMPUTED}
    own = {key for key in css.INITIAL_VALUES if key not in special and not key.startswith("text_decoration_")}
    first = {key: css.INITIAL_VALUES[key] for key in own - css.INHERITED}
    first = {key: value for key, value in first.items() if not css.check_math(value)}
    handed_on = own & css.INHERITED

    def value(style: Any, key: str) -> Any:  # noqa: ANN401 - as above
        if key in style.cascaded or (key in sides and not logical.isdisjoint(style.cascaded)):
            return reckoned(style, key)
        if key in first:
            style[key] = found = first[key]
            return found
        if key in handed_on and style.parent_style is not None and not css.check_math(found := style.parent_style[key]):
            style[key] = found
            return found
        return reckoned(style, key)

    return value


_written: list[dict[int, tuple[Any, bytes]]] = []
"""Each object, and what was made of it, during the writing that is on; or the writings, where several are one."""


def _once_a_writing(data: Callable[[Any], bytes]) -> property:
    """An object's bytes, which a file with an identifier takes twice, made and compressed once."""

    def kept(one: Any) -> bytes:  # noqa: ANN401 - pydyf is not typed
        if not _written or one.number is None:
            return data(one)
        found = _written[-1]
        if id(one) not in found:
            found[id(one)] = one, data(one)
        return found[id(one)][1]

    return property(kept)


def _one_writing(write: Callable[..., None]) -> Callable[..., None]:
    def writing(pdf: Any, *given: Any, **named: Any) -> None:  # noqa: ANN401 - as above
        if _written:
            write(pdf, *given, **named)
            return
        with one_writing():
            write(pdf, *given, **named)

    return writing


@contextmanager
def one_writing() -> Iterator[None]:
    """Within, an object's bytes are made once for all files that it is written into, until it is `altered`."""
    _written.append({})
    try:
        yield
    finally:
        _written.pop()


def altered(one: Any) -> None:  # noqa: ANN401 - as above
    """What is written of an object from now on is made anew."""
    for found in _written:
        found.pop(id(one), None)
