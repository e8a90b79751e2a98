"""What a style hides on a screen: the declarations that do, and the rules of a page with one of them.

A rule counts whether or not another would take it back: which of them wins hangs on the screen. What is for print alone
does not: the sheets are printed from the PDFs.
"""

from __future__ import annotations

import functools
import re
from typing import TYPE_CHECKING, Any, NamedTuple

import cssselect2
import tinycss2
from tinycss2 import color4

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

FAR = {"px": 1000.0, "pt": 750.0, "mm": 250.0, "cm": 25.0, "in": 10.0, "%": 100.0}
FAR_ELSE = 60.0  # of em, rem, ch, vw, vh
NO_LENGTH = frozenset({"deg", "rad", "grad", "turn", "s", "ms"})
SMALLEST = {"px": 8.0, "pt": 6.0, "mm": 2.2, "em": 0.45, "rem": 0.45, "%": 45.0}
NEVER_SEEN = {
    "display": r"none",
    "visibility": r"hidden|collapse",
    "content-visibility": r"hidden",
    "opacity": r"(0?\.[0-4]\d*|0(\.[0-4]\d*)?|[0-4]?\d(\.\d+)?%)",
    "zoom": r"0?\.[0-4]\d*|0|[0-4]?\d%",
    "scale": r"(-|0|\.[0-4]).*",
    "transform": r".*(scale\w*\(\s*(-|0(?!\.[5-9])|\.[0-4])|matrix|rotate[xy3]).*",
    "clip": r"rect.*",
    "clip-path": r"(?!none).*",
    "mask": r"(?!none).*",
    "mask-image": r"(?!none).*",
    "filter": r"(?!none).*",
    "height": r"(0(\.\d+)?|1)px|0\D*",
    "max-height": r"(0(\.\d+)?|1)px|0\D*",
    "width": r"0\D*",
    "max-width": r"0\D*",
    "color": r"transparent",
    "text-decoration": r".*line-through.*",
    "text-decoration-line": r".*line-through.*",
    "direction": r"rtl",
    "font-feature-settings": r""".*['"]a?frac['"](?!\s+(0|off)).*""",
    "font-variant-numeric": r".*fractions.*",
}
ALSO = {"-webkit-text-fill-color": "color", "-webkit-clip-path": "clip-path", "-webkit-mask": "mask",
        "-webkit-mask-image": "mask-image", "-webkit-filter": "filter", "block-size": "height",
        "max-block-size": "max-height", "inline-size": "width", "max-inline-size": "max-width"}  # fmt: skip
MOVES = re.compile(r"(inset|margin)(-\w+)*|left|right|top|bottom|text-indent|translate|transform")
PRINT = re.compile(r"\s*(only\s+)?print\b[^,]*(,\s*(only\s+)?print\b[^,]*)*")
PSEUDO = re.compile(r"::?((?<=::)[\w-]+|before|after|first-line|first-letter)(\([^)]*\))?")
NO_TEXT = frozenset({"before", "after", "marker", "backdrop", "placeholder", "selection", "file-selector-button"})


class Rule(NamedTuple):
    """A selector, none where it cannot be read here, and the rule in words, of which a declaration hides."""

    selector: Any
    words: str


def hides(style: str) -> str:
    """The declaration of a style attribute or a rule's block that hides; empty where none does."""
    return _hiding(tinycss2.parse_blocks_contents(style, skip_comments=True, skip_whitespace=True))


class Styles:
    """The rules of a page's style sheets that hide; `unread`: what may hide all of it, for nobody here reads it."""

    def __init__(self, sheets: Iterable[str], unread: str = "") -> None:
        self.matcher, self.all = cssselect2.Matcher(), unread
        for rule in (rule for css in sheets for rule in _rules_of(css)):
            if rule.selector is None:
                self.all = rule.words
            else:
                self.matcher.add_selector(rule.selector, rule.words)

    def hiding(self, element: Any) -> str:  # noqa: ANN401 - cssselect2 is not typed
        """The rule that hides an element of cssselect2; empty where none does."""
        return self.all or next((words for *_, words in self.matcher.match(element)), "")


@functools.lru_cache(16)
def _rules_of(css: str) -> tuple[Rule, ...]:
    return tuple(_rules(tinycss2.parse_stylesheet(css, skip_comments=True, skip_whitespace=True)))


def _rules(nodes: Iterable[Any], within: str = "") -> Iterator[Rule]:
    """The rules that hide, but for those of print; those of blocks and within others too."""
    for node in nodes:
        if node.type == "qualified-rule":
            selector = tinycss2.serialize(node.prelude)
            if within:
                nested = selector.replace("&", f":is({within})")
                selector = nested if "&" in selector else f":is({within}) {selector}"
            inner = tinycss2.parse_blocks_contents(node.content, skip_comments=True, skip_whitespace=True)
            if words := _hiding(inner):
                yield from _selected(selector, words)
            yield from _rules([one for one in inner if one.type != "declaration"], selector)
        elif node.type == "at-rule" and node.lower_at_keyword == "import":
            yield Rule(None, "@import of a style that nobody here reads")
        elif node.type == "at-rule" and node.content is not None and not _of_print(node):
            inner = tinycss2.parse_blocks_contents(node.content, skip_comments=True, skip_whitespace=True)
            if within and (words := _hiding(inner)):
                yield from _selected(within, words)
            yield from _rules([one for one in inner if one.type != "declaration"], within)


def _of_print(node: Any) -> bool:  # noqa: ANN401
    """Whether a block holds no rule for a screen."""
    if node.lower_at_keyword == "media":
        return PRINT.fullmatch(tinycss2.serialize(node.prelude).lower().rstrip()) is not None
    return node.lower_at_keyword not in {"supports", "layer", "container", "scope"}


def _selected(selector: str, words: str) -> Iterator[Rule]:
    told = f"{selector.strip()} {{ {words} }}"
    try:
        for one in cssselect2.compile_selector_list(PSEUDO.sub(_of_text, selector)):
            yield Rule(one, told)
    except cssselect2.SelectorError:
        yield Rule(None, told)


def _of_text(pseudo: re.Match[str]) -> str:
    """In place of a part of an element: the element, where the part has text of it, such as its first line; or none."""
    return ":not(*)" if pseudo[1].startswith("-") or pseudo[1] in NO_TEXT else ""


def _hiding(nodes: Iterable[Any]) -> str:
    for node in nodes:
        if node.type == "declaration":
            value = tinycss2.serialize(node.value).strip().lower()
            if _is_hiding(ALSO.get(node.lower_name, node.lower_name), value, node.value):
                return f"{node.lower_name}: {value}"
    return ""


def _is_hiding(name: str, value: str, tokens: Iterable[Any]) -> bool:
    known = name in NEVER_SEEN or name in {"font", "font-size"} or MOVES.fullmatch(name)
    if not known:
        return False
    if "var(" in value:
        return name in NEVER_SEEN and name != "color"  # it may come to anything
    if name in NEVER_SEEN and re.fullmatch(NEVER_SEEN[name], value, re.DOTALL):
        return True
    if name in {"font", "font-size"}:
        size = next((one for one in _lengths(tokens)), None)
        return size is not None and size[0] < SMALLEST.get(size[1], 0.45)
    if name == "color":
        colour = color4.parse_color(value)
        return colour is not None and colour != "currentcolor" and colour.alpha < 0.5  # noqa: PLR2004 - as for opacity
    return MOVES.fullmatch(name) is not None and any(_far(name, *one) for one in _lengths(tokens))


def _far(name: str, by: float, unit: str) -> bool:
    """Whether a move takes words off the screen; of what it lies in a share moves only by less than all of it."""
    return (by < 0 or unit != "%" or "trans" in name) and abs(by) >= FAR.get(unit, FAR_ELSE)


def _lengths(tokens: Iterable[Any]) -> Iterator[tuple[float, str]]:
    for one in tokens:
        if one.type == "dimension" and one.lower_unit not in NO_LENGTH:
            yield one.value, one.lower_unit
        elif one.type == "percentage":
            yield one.value, "%"
        elif one.type == "number":
            yield one.value, "px" if one.value == 0 else "number"
        elif one.type == "function":
            yield from _lengths(one.arguments)
