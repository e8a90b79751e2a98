"""YAML to mappings, lists and words; the one module that knows yaml.

No tags, no aliases, no values guessed from their look: `no` is the word no, `12:30` is text, a date is text.
"""

from __future__ import annotations

import re
from contextlib import suppress
from dataclasses import replace
from typing import TYPE_CHECKING, Any

import yaml

from sheetgen.base.place import Place, Source, Word, lines
from sheetgen.read.signs import printable_words

if TYPE_CHECKING:
    from sheetgen.base.trouble import Troubles

DEEPEST = 12
MOST_NODES = 20_000
BRACES = "text that begins with a figure wants quotes"
BRACES_HELP = 'such as "{{ body.length }} long"'
UNREAD = re.compile("[^\t\n\x20-\x7e\xa0-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
"""Signs that YAML does not take, by its specification 1.1, section 5.1."""
COMMA = "inside braces a comma begins the next field: put text with a comma in quotes, or fill this in"
Loader: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
Words = Any
"""A Word, or a list or a mapping of them; mappings have Words for keys."""


class Mapping(dict[Word, Words]):
    """A mapping that knows where it begins."""

    place: Place


class Sequence(list[Words]):
    """A list that knows where it begins."""

    place: Place


def words(source: Source, troubles: Troubles, bare: str = "") -> Mapping | None:
    """The file's mapping; None with a trouble when it cannot be read as one.

    The fields of a mapping called `bare` may have nothing after them: that is the empty word.

    What can be read in spite of a trouble (a field written twice, one with nothing after it) is read, so that the
    file's other faults are told in the same run.
    """
    if unread := UNREAD.search(source.text):
        source = _without_unread(source, unread, troubles)
    tab = re.search(r"^[ ]*\t", source.text, re.MULTILINE)
    try:
        if not _bounded(source, troubles):
            return None
        node = yaml.compose(source.text, Loader=Loader)
    except yaml.MarkedYAMLError as fault:
        place = _at(source, fault.problem_mark or fault.context_mark)
        if tab and place.line >= source.text[: tab.start()].count("\n") + 1:
            line = source.text[: tab.end()].count("\n") + 1
            column = tab.end() - source.text.rfind("\n", 0, tab.end()) - 1
            troubles.add("a tab stands in the indentation", Place(source, line, column), "use spaces, two a level")
            return None
        troubles.add(*_said(source, fault, place))
        return None
    except yaml.YAMLError as fault:
        troubles.add(f"the file cannot be read as YAML: {str(fault).splitlines()[0]}", Place(source))
        return None
    return _mapping(source, node, troubles, bare)


def _without_unread(source: Source, unread: re.Match[str], troubles: Troubles) -> Source:
    """The text without signs that YAML does not take; the first is told where it stands."""
    before = source.text[: unread.start()]
    place = Place(source, before.count("\n") + 1, len(before) - before.rfind("\n"))
    helped = "it cannot be seen: write the line anew"
    troubles.add(f"the sign U+{ord(unread[0]):04X} cannot stand in a file", place, helped)
    return replace(source, text=UNREAD.sub("\ufffd", source.text))


def _mapping(source: Source, node: Any, troubles: Troubles, bare: str) -> Mapping | None:  # noqa: ANN401
    if node is None:
        troubles.add("the file is empty", Place(source), "it wants its fields, such as title: …")
        return None
    if not isinstance(node, yaml.MappingNode):
        troubles.add("the file is not a list of fields", _node_place(source, node), "write name: value lines")
        return None
    found: Mapping = _words(source, node, troubles, bare)
    return found


def _bounded(source: Source, troubles: Troubles) -> bool:
    """Whether depth and number of nodes are what a person writes; no aliases. Raises what yaml raises."""
    deep = 0
    for count, event in enumerate(yaml.parse(source.text, Loader=Loader)):
        place = _at(source, event.start_mark)
        if isinstance(event, yaml.AliasEvent) or getattr(event, "anchor", None):
            message = "an anchor or alias (& or *) is not taken here"
            troubles.add(message, place, "write the words out, or put the text in quotes")
            return False
        if tag := getattr(event, "tag", None):
            troubles.add(f"the tag {tag} is not taken here", place, "take it out")
            return False
        deep += isinstance(event, yaml.CollectionStartEvent)
        deep -= isinstance(event, yaml.CollectionEndEvent)
        if deep > DEEPEST:
            troubles.add("brackets or levels inside each other too deep", place, f"at most {DEEPEST} deep")
            return False
        if count > MOST_NODES:
            troubles.add("the file has too many parts", place, f"at most {MOST_NODES}")
            return False
    return True


BACKSLASH = "a backslash between double quotes begins no sign that is known"
BACKSLASH_HELP = "write it twice, or put the text in single quotes"
# What yaml says, in its problem or its context; what we say; the likely slip. `True`: where it was opened, not where
# it went wrong.
SAID = (
    ("maximum nesting depth", "brackets or levels inside each other too deep", f"at most {DEEPEST} deep", False),
    ("escape", BACKSLASH, BACKSLASH_HELP, False),
    ("hexdecimal", BACKSLASH, BACKSLASH_HELP, False),
    ("quoted scalar", "a quotation mark is opened and not closed", "close it on the same line, or take it out", True),
    ("mapping values are not allowed", "a colon stands where none can", "put text with a colon in quotes; indent fields alike", False),
    ("flow", "a bracket is opened and not closed", "close it, with commas between", True),
    ("expected ',' or", "a bracket is opened and not closed", "close it, with commas between", True),
    ("block sequence entries are not allowed", "a dash stands where none can", "begin a list on a line of its own, or put the text in quotes", False),
    ("could not find expected ':'", "a field has no colon", "write name: value, with a space after the colon", True),
    ("node content", "this character cannot begin a word", "put it in quotes", False),
    ("cannot start any token", "this character cannot begin a word", "put the text in quotes", False),
    ("expected a single document", "a second document begins here", "one file, one document; take out the ---", False),
    ("expected <block end>", "the indentation does not match the lines above", "fields of one level begin in one column", False),
    ("did not find expected key", "the indentation does not match the lines above", "fields of one level begin in one column", False),
    ("expected '-'", "the indentation does not match the lines above", "fields of one level begin in one column", False),
)  # fmt: skip


def _said(source: Source, fault: yaml.MarkedYAMLError, place: Place) -> tuple[str, Place, str]:
    """The fault in our words, with the likely slip."""
    told = f"{fault.context or ''} {fault.problem or fault}"
    line = source.line(place.line)
    if "maximum nesting" not in told and (braces := re.search(r"(?:^|[:,\[]|- )\s*(\{\{)", line)):
        return BRACES, Place(source, place.line, braces.start(1) + 1, 2), BRACES_HELP
    if "quoted scalar" not in told and line[: place.column - 1].rstrip().endswith(("'", '"')):
        if opened := _opened_above(source, place.line):
            over = f"a quotation mark is opened here, and closed on line {place.line}, where text goes on after it"
            return over, opened, "close it on its own line, or take it out"
        return (
            "text goes on after its closing quotation mark",
            place,
            "put all of it in one pair of the other quotation marks",
        )
    if "mapping values" in told and (bare := _without_colon(source, place.line - 1)):
        return "a field has no colon", bare, "write name: value, with a space after the colon; a list's - name: value"
    for words_of_yaml, message, helped, at_opening in SAID:
        if words_of_yaml in told:
            return message, _at(source, fault.context_mark) if at_opening else place, helped
    return f"the file cannot be read as YAML here: {fault.problem}", place, "compare with the lines above"


def _opened_above(source: Source, line: int) -> Place | None:
    """Where quoted text begins that ends on a line, if that is on a line above: it was not meant to be so long."""
    found = Place(source, line)
    with suppress(yaml.YAMLError):
        for event in yaml.parse(source.text, Loader=Loader):
            ends = _at(source, event.end_mark)
            if isinstance(event, yaml.ScalarEvent) and event.style in {"'", '"'} and ends.line == line:
                found = _at(source, event.start_mark)
    return found if found.line < line else None


def _without_colon(source: Source, line: int) -> Place | None:
    """The line of text above, if it is no field: it is read on into the next, and the colon there seems wrong."""
    while line and (not source.line(line).strip() or source.line(line).lstrip().startswith("#")):
        line -= 1
    text = source.line(line).rstrip()
    if not line or re.search(r":(\s|$)", text):
        return None
    start = len(text) - len(text.lstrip())
    return Place(source, line, start + 1, len(text) - start)


def _at(source: Source, mark: Any) -> Place:  # noqa: ANN401 - yaml's marks have no public type
    if mark is None:
        return Place(source)
    return Place(source, mark.line + 1, mark.column + 1)


def _node_place(source: Source, node: Any) -> Place:  # noqa: ANN401
    start, end = node.start_mark, node.end_mark
    width = end.column - start.column if end.line == start.line else 1
    return Place(source, start.line + 1, start.column + 1, max(1, width))


def _words(source: Source, node: Any, troubles: Troubles, bare: str, holder: str = "") -> Words:  # noqa: ANN401
    place = _node_place(source, node)
    if isinstance(node, yaml.ScalarNode):
        return _word(source, node, place, troubles)
    if isinstance(node, yaml.SequenceNode):
        found = Sequence(_words(source, child, troubles, bare) for child in node.value)
        found.place = place
        return found
    mapping = Mapping()
    mapping.place = Place(source, place.line, place.column)
    first: dict[str, Word] = {}
    for key_node, value_node in node.value:
        if not isinstance(key_node, yaml.ScalarNode):
            where = _node_place(source, key_node)
            if source.line(where.line)[where.column - 2 :].startswith("{{"):
                troubles.add(BRACES, where.shifted(-1, 2), BRACES_HELP)
            else:
                troubles.add("a field's name must be plain words", where, "write name: value")
            continue
        key = _word(source, key_node, _node_place(source, key_node), troubles)
        if key in first:
            message = f"'{key}' is written twice; first on line {first[key].place.line}"
            troubles.add(message, key.place, "keep one of the two")
            continue
        first[key] = key
        empty = isinstance(value_node, yaml.ScalarNode) and not value_node.value and not value_node.style
        if empty and not (bare and holder == bare):
            helped = COMMA if node.flow_style else "fill it in or take it out"
            troubles.add(f"'{key}' has nothing after it", key.place, helped)
        mapping[key] = _words(source, value_node, troubles, bare, str(key))
    return mapping


def _word(source: Source, node: Any, place: Place, troubles: Troubles) -> Word:  # noqa: ANN401
    """A scalar with its place; for quoted, block and folded text its raw source is kept to find a column in it."""
    raw = ""
    if node.style in {"|", ">", "'", '"'} or node.start_mark.line != node.end_mark.line:
        raw = _raw(source, node.start_mark, node.end_mark)
    return Word(printable_words(node.value, place, troubles), place, raw)


def _raw(source: Source, start: Any, end: Any) -> str:  # noqa: ANN401
    whole = lines(source.text)
    if start.line == end.line:
        one: str = whole[start.line][start.column : end.column]
        return one
    found = [whole[start.line][start.column :], *whole[start.line + 1 : end.line]]
    if end.line < len(whole):
        found.append(whole[end.line][: end.column])
    return "\n".join(found)
