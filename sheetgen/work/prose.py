"""Prose with figures in it: `{{ body.wet_length }}` becomes the figure, and an unknown name a trouble at its column."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from sheetgen.base.arithmetic import Wrong
from sheetgen.base.material import Item
from sheetgen.base.place import Word
from sheetgen.work.stopped import Stopped

if TYPE_CHECKING:
    from sheetgen.base.figure import Figure
    from sheetgen.model.worked import Prose
    from sheetgen.work.bench import Workbench

LONGEST = 6000
MOST_MARKS = 200


def prose(text: Word | None, bench: Workbench) -> Prose:
    """The text in pieces: words as they stand, and figures."""
    if text is None:
        return ()
    if len(text) > LONGEST:
        bench.troubles.add(f"a text of {len(text)} characters is too long", text.place, f"at most {LONGEST}")
        return ()
    if len(re.findall(r"[*_>`\[]", text)) > MOST_MARKS:
        bench.troubles.add("a text with so many marks cannot be set", text.place, f"at most {MOST_MARKS} of * _ > ` [")
        return ()
    pieces: list[str | Figure] = []
    end = 0
    for match in re.finditer(r"\{\{(.*?)\}\}", text, re.DOTALL):
        pieces.append(str(text[end : match.start()]))
        end = match.end()
        item = _item_named(match[1].strip(), bench)
        found = item or _figure(text, match, bench)
        if found is not None:
            pieces.append(found)
    rest = str(text[end:])
    if "{{" in rest or "{%" in rest or "}}" in rest:
        at = end + min(i for i in (rest.find("{{"), rest.find("{%"), rest.find("}}")) if i >= 0)
        bench.troubles.add(
            "these braces hold no figure",
            text.place_of(at, 2),
            "a figure is written {{ part.figure }}; nothing else stands in braces",
        )
    return (*pieces, rest)


def without_figures(text: Word, what: str, bench: Workbench) -> str:
    """Text that is the same in every version; a trouble for one with a figure in it."""
    if "{{" in text:
        helped = "a figure may stand in summary, makes, text and expect"
        bench.troubles.add(f"{what} holds no figures", text.place_of(text.find("{{"), 2), helped)
    return str(text)


def _figure(text: Word, match: re.Match[str], bench: Workbench) -> Figure | None:
    inner = match[1].strip()
    start = match.start(1) + len(match[1]) - len(match[1].lstrip())
    place = text.place_of(start, max(1, len(inner)))
    # A name may stand in the text more than once: the braces before it are counted, not the name.
    opening = text.place_of(match.start(), 2)
    if text.block:
        place = opening.shifted(start - match.start(), max(1, len(inner)))
    word = Word(inner, place)
    try:
        if figure := bench.figure_named(inner):
            return figure
        value = bench.worked(word)
        label = _label(inner)
        return bench.as_figure(inner, label, value, inner)
    except (Stopped, Wrong):
        return None


def _label(name: str) -> str:
    """What a given size is called beside a step: its field, or for a count the part that is counted."""
    head, _, rest = name.partition(".")
    said = head if not rest or rest == "count" else rest
    return said.replace("_", " ").replace(".", ", ").capitalize()


def _item_named(name: str, bench: Workbench) -> str:
    """The name of the item of stock that a choice stands for, if it stands for one."""
    if name not in bench.choices:
        return ""
    try:
        chosen = bench.choice(name)
    except Stopped:
        return ""
    return chosen.name if isinstance(chosen, Item) else ""
