"""Prose with numbers in it: `{{ body.wet_length }}` becomes the figure, and an unknown name a trouble at its column."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import TYPE_CHECKING

from sheetgen.base.dimension import UNITS, ours, spelled
from sheetgen.base.literals import GAUGES
from sheetgen.base.material import Item
from sheetgen.base.spelling import in_a_sentence, plain
from sheetgen.model.worked import Shown
from sheetgen.model.written import LONGEST
from sheetgen.parts.figure import FigureSpec
from sheetgen.work.stopped import Stopped

if TYPE_CHECKING:
    from sheetgen.base.figure import Rounding
    from sheetgen.base.place import Word
    from sheetgen.base.printed import Printed
    from sheetgen.model.worked import Prose
    from sheetgen.work.evaluator import Evaluator, Quantity

MOST_MARKS = 200
DEEPEST = 6  # quotations and lists inside each other: a level of four spaces is one too
LEVELS = re.compile(r"(?:[ \t]*(?:>|(?:[-*+]|\d{1,9}[.)])[ \t]))*+")
RULE = frozenset("-*_ \t")
NAME = re.compile(r"[^\W\d][\w .-]*")
FIGURE = re.compile(r"\{\{(.*?)\}\}", re.DOTALL)
ENTRY = re.compile(r"[-*+]|\d+[.)]")
OPENING, CLOSING = '*_"“‘([', "\"”')"
IN = re.compile(r"(.+)\sin\s+(\S+)", re.DOTALL)
UNSET = (
    (re.compile(r"(?<!\\)!\["), "a picture in a text", "a step's picture is picture: {file: …, caption: …, shows: …}"),
    (
        re.compile(r"^(?=.*\|)(?=.*-)[ \t|:-]+$", re.MULTILINE),
        "a table in a text",
        "make it a list, a line each with -",
    ),
)
"""What Markdown has and a sheet does not print: how it is found, what it is, the mend."""
CARD_STEP = 20  # a thickness in whole cards is a whole number of twentieths of a millimetre


def prose(text: Word | None, evaluator: Evaluator) -> Prose:
    """The text in pieces: words as they stand, and numbers."""
    if text is None:
        return ()
    if len(text) > LONGEST:
        evaluator.troubles.add(f"a text of {len(text)} characters is too long", text.place, f"at most {LONGEST}")
        return ()
    if len(re.findall(r"[*_>`\[]", text)) > MOST_MARKS:
        helped = f"at most {MOST_MARKS} of * _ > ` ["
        evaluator.troubles.add("a text with so many marks cannot be set", text.place, helped)
        return ()
    if (deep := _too_deep(text)) is not None:
        told = "quotations or lists inside each other too deep"
        evaluator.troubles.add(told, text.place_of(*deep), f"at most {DEEPEST} deep")
        return ()
    for sign, what, helped in UNSET:
        if found := sign.search(text):
            start = found.start() + len(found[0]) - len(found[0].lstrip())
            evaluator.troubles.add(f"{what} is not printed", text.place_of(start, found.end() - start), helped)
    pieces: list[str | Shown] = []
    end = 0
    # What opens after the last that closes would be looked for to the end each time.
    for match in FIGURE.finditer(text, 0, text.rfind("}}") + 2):
        pieces.append(str(text[end : match.start()]))
        end = match.end()
        name = _item_named(match[1].strip(), evaluator)
        if name and not _begins(text[: match.start()]):
            name = in_a_sentence(name)
        number = name or _number(text, match, evaluator)
        if number is not None:
            pieces.append(number)
    rest = str(text[end:])
    if "{{" in rest or "{%" in rest or "}}" in rest:
        at = end + min(i for i in (rest.find("{{"), rest.find("{%"), rest.find("}}")) if i >= 0)
        helped = "a figure is written {{ part.figure }}; nothing else stands in braces"
        evaluator.troubles.add("these braces hold no figure", text.place_of(at, 2), helped)
    return (*pieces, rest)


def _begins(before: str) -> bool:
    """Whether what follows these words is the first word of a sentence."""
    before = before.rstrip(OPENING)
    last = before.rstrip()
    gap = before[len(last) :]
    if not last or gap.count("\n") > 1:
        return True
    _, line_end, line = last.rpartition("\n")
    ended = last.rstrip(CLOSING).endswith((".", "!", "?"))
    return bool(gap) and (ended or bool(line_end and ENTRY.fullmatch(line.strip())))


def _too_deep(text: str) -> tuple[int, int] | None:
    """Where a line begins that stands deeper than a sheet can set it, and how many characters say so."""
    at = 0
    for line in text.split("\n"):
        said = found[0] if (found := LEVELS.match(line)) else ""
        levels = (len(line) - len(line.lstrip(" "))) // 4 + len(said.replace(">", " > ").split())
        if levels > DEEPEST and not set(line) <= RULE:
            return at, max(1, len(said))
        at += len(line) + 1
    return None


def without_figures(text: Word, what: str, evaluator: Evaluator) -> str:
    """Text that is the same in every version; a trouble for one with a figure in it."""
    if "{{" in text:
        helped = "a figure may stand in summary, makes, text and expect"
        evaluator.troubles.add(f"{what} holds no figures", text.place_of(text.find("{{"), 2), helped)
    return str(text)


def _number(text: Word, match: re.Match[str], evaluator: Evaluator) -> Shown | None:
    inner = match[1].strip()
    start = match.start(1) + len(match[1]) - len(match[1].lstrip())
    # A name may stand in the text more than once: the braces before it are counted, not the name.
    return shown(text.cut(start, start + len(inner), match.start()), evaluator)


def shown(word: Word, evaluator: Evaluator, label: str = "") -> Shown | None:
    """A number as it is printed, from an expression; None with its trouble noted."""
    try:
        if (figure := _figure_named(plain(word), evaluator)) is not None:
            return replace(figure, label=label or figure.label, labelled=bool(label))
        value = evaluator.worked(word, f"prose {word.place}")
        told = told_in(value, word, evaluator)
    except Stopped:
        return None
    named = IN.fullmatch(word)
    name = (named[1] if named else word).strip()
    return Shown(label or _label(name), told, _part_of(name, evaluator), labelled=bool(label))


def told_in(value: Quantity, word: Word, evaluator: Evaluator) -> Printed:
    """A quantity in print: in the unit that its text asks for, or in its own."""
    named = IN.fullmatch(word)
    if named:
        gauge, asked = GAUGES.get(named[2]), UNITS.get(named[2])
        factor = gauge(1.0) if gauge else asked.factor * ours(asked.unit) if asked else 1.0
        return evaluator.numbers.in_unit(value.interval, named[2], factor / ours(value.unit))
    unit = spelled(value.unit)
    exact = value.interval.exact
    # A thickness in whole cards keeps its hundredths; of any other length no bench shows them.
    cards = abs(value.cases.usual * CARD_STEP - round(value.cases.usual * CARD_STEP)) < 1e-6  # noqa: PLR2004
    rounding: Rounding = "out" if unit == "mm" and exact and not cards else "fine"
    given = bool(re.fullmatch(r"[\d.]+", value.working))
    return evaluator.numbers.printed(value.interval, unit, rounding, given=given)


def told_own(name: str, evaluator: Evaluator) -> Printed:
    """One of the project's own figures in print: as it is cut, where it says so."""
    rounding = evaluator.own[name].rounding(name, evaluator)
    if rounding is None:
        return told_in(evaluator.own_worked(name), evaluator.own[name].word, evaluator)
    return evaluator.numbers.printed(evaluator.own_worked(name).interval, "mm", rounding)


def _figure_named(name: str, evaluator: Evaluator) -> Shown | None:
    """The figure behind a plain name, if it is one: of a part, or of the project's own."""
    head, _, rest = name.partition(".")
    part = evaluator.parts.get(head)
    if part is not None and isinstance(spec := part.kind.names.get(rest), FigureSpec) and part.has(spec):
        figure = part.figure(spec)[0]
        return Shown(figure.label, figure.printed, head, figure=f"{head}.{spec.name}")
    if name in evaluator.own:
        return Shown(evaluator.own[name].label, told_own(name, evaluator), figure=name)
    return None


def _part_of(name: str, evaluator: Evaluator) -> str:
    head = plain(name).partition(".")[0]
    return head if head in evaluator.parts else ""


def _label(name: str) -> str:
    """What a given size is called beside a step: its field, or for a count the part that is counted."""
    if not NAME.fullmatch(name):
        return name
    head, _, rest = name.partition(".")
    said = head if not rest or rest == "count" else rest
    return said.replace("_", " ").replace("-", " ").replace(".", ", ").capitalize()


def _item_named(name: str, evaluator: Evaluator) -> str:
    """The name of the item of stock that a choice stands for, if it stands for one."""
    if plain(name) not in evaluator.choices:
        return ""
    try:
        chosen = evaluator.choice(plain(name))
    except Stopped:
        return ""
    return chosen.name if isinstance(chosen, Item) else ""
