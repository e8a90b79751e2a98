"""The ledgers of a design, as they lie beside it, to printed numbers by revision; each that cannot be used is told."""

from __future__ import annotations

import json
import re
from typing import TYPE_CHECKING, Any

from sheetgen.base.frozen import Frozen
from sheetgen.base.place import Place, Source
from sheetgen.base.spelling import slug
from sheetgen.base.trouble import Troubles
from sheetgen.model.fingerprint import CODE, GROUPS, LISTS, Number, fingerprint
from sheetgen.model.ledger import ALONE, FOLDER, Kept, Ledger, file_name
from sheetgen.model.prices import PRICES
from sheetgen.read.text import read_text

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence
    from pathlib import Path

LARGEST = 10_000_000  # bytes
LONGEST = 1000  # letters of a word in it
LONGEST_NAME = 200  # signs of a folder
NO_WORD = re.compile("[\x00-\x1f\x7f-\x9f\ud800-\udfff]")
DATE = re.compile(r"\d{4}-\d{2}-\d{2}")
AGAIN = "take it back as it was from version control, or out; nothing is known of that revision without it"


class Unusable(ValueError):
    """A ledger that is not as we write them: what is wrong, and the names that lead to it."""

    def __init__(self, message: str, *way: str) -> None:
        super().__init__(message)
        self.message, self.way = message, way


def read_ledgers(project: Path, troubles: Troubles, was: Sequence[str] = (), other_units: str = "") -> list[Ledger]:
    """What is known of a design's revisions, by date and revision. One that cannot be used is a warning, and is not.

    `was` is what the design was called when some of them were written. Those of its pages in other units lie apart.
    """
    below = f"{FOLDER}/{other_units}".rstrip("/")
    folder, name = project / below, f"projects/{project.name}/{below}"
    try:
        here = folder.resolve() == project.resolve() / below
        paths = sorted(folder.glob("*.json")) if here and folder.is_dir() else []
    except OSError as fault:
        message = f"the folder of the ledgers cannot be read: {fault.strerror}"
        troubles.add(message, Place(Source(name)), "may you read it?", "warning")
        return []
    if not here:
        message = "the folder of the ledgers is a link to one elsewhere"
        troubles.add(message, Place(Source(name)), "copy it here", "warning")
        return []
    found = [_read(path, f"{name}/{path.name}", project.name, troubles, was=was) for path in paths]
    return sorted((one for one in found if one is not None), key=lambda one: one.order)


def read_kept(path: Path, name: str, design: str, troubles: Troubles) -> Kept | None:
    """The numbers of one kit that was sent, as they are kept in the private folder; None where they are not."""
    found = _read(path, name, design, troubles, of_a_kit=True) if path.is_file() else None
    return found.versions[0] if found is not None else None


def _read(  # noqa: PLR0913 - what it is read from, and by which names
    path: Path, name: str, design: str, troubles: Troubles, *, of_a_kit: bool = False, was: Sequence[str] = ()
) -> Ledger | None:
    """One ledger; that `of_a_kit` is not called as its revision is."""
    unread = Troubles()
    source = read_text(path, name, unread, LARGEST)
    for one in unread:
        troubles.add(one.message, one.place, AGAIN, "warning")
    if source is None:
        return None
    try:
        return _ledger(json.loads(source.text), design, None if of_a_kit else path.name, was)
    except json.JSONDecodeError as fault:
        message = f"the ledger is not JSON: {fault.msg[:1].lower()}{fault.msg[1:]}"
        troubles.add(message, Place(source, fault.lineno, fault.colno), AGAIN, "warning")
    except Unusable as fault:
        troubles.add(f"this ledger cannot be used: {fault.message}", _place(source, fault.way), AGAIN, "warning")
    except (ValueError, RecursionError):  # a number of thousands of figures, brackets in brackets without end
        troubles.add("the ledger is not one of ours", Place(source), AGAIN, "warning")
    return None


def _place(source: Source, way: tuple[str, ...]) -> Place:
    """Where the last of the names that lead to something stands, each looked for within what the one before has.

    Of one that is not there the place of what lacks it.
    """
    found, end = 0, len(source.text)
    for name in way:
        at = source.text.find(f"{json.dumps(name, ensure_ascii=False)}:", found, end)
        if at < 0:
            break
        found = at
        line_start = source.text.rfind("\n", 0, found) + 1
        indent = source.text[line_start:found]
        shut = re.compile(rf"^{re.escape(indent)}[}}\]]", re.MULTILINE).search(source.text, found, end)
        end = shut.start() if shut else end
    line_start = source.text.rfind("\n", 0, found) + 1
    return Place(source, source.text.count("\n", 0, found) + 1, found - line_start + 1)


def _ledger(told: Any, design: str, file: str | None, was: Sequence[str] = ()) -> Ledger:  # noqa: ANN401 - whatever a file held
    top = _mapping(told, "the ledger")
    revision, date = (_word(top.get(key), f"its {key}", key) for key in ("revision", "date"))
    if top.get("design") not in {design, *was}:
        raise Unusable(f"it is of another design than {design}", "design")
    if file not in {None, file_name(revision)}:
        raise Unusable(f"revision '{revision[:40]}' would lie in {file_name(revision)}", "revision")
    if not DATE.fullmatch(date):
        raise Unusable("its date is not year-month-day", "date")
    shared = dict(_inputs(top.get("inputs"), "inputs"))
    each = _mapping(top.get("versions"), "its versions", "versions")
    versions = tuple(_version(name, one, shared) for name, one in each.items())
    if not versions:
        raise Unusable("it has no version", "versions")
    prices = tuple(_rows(PRICES, top["prices"], "prices")) if "prices" in top else None
    return Ledger(design, revision, date, versions, prices)


def _version(name: str, told: Any, shared: dict[str, str]) -> Kept:  # noqa: ANN401
    way = ("versions", _word(name, "the name of a version", "versions"))
    if len(slug(name)) > LONGEST_NAME:
        raise Unusable(f"the name of version '{name[:40]}…' is too long for a folder", *way)
    one = _mapping(told, f"version '{name}'", *way)
    title, code = (_word(one.get(key), f"its {key}", *way, key) for key in ("title", "fingerprint"))
    numbers = tuple(_numbers(one.get("numbers"), *way, "numbers"))
    if not CODE.fullmatch(code) or code != fingerprint(numbers):
        raise Unusable(f"the numbers of version '{name}' are not those of its fingerprint", *way, "fingerprint")
    own = _mapping(one.get("inputs"), f"'inputs' of version '{name}'", *way, "inputs")
    gone = {key for key, value in own.items() if value is None}
    changed = dict(_inputs({key: value for key, value in own.items() if value is not None}, *way, "inputs"))
    kept = {key: value for key, value in shared.items() if key not in gone}
    kits = dict(_kits(one, *way)) if "kits" in one else {}
    teachers = frozenset(_keys(one[ALONE], *way, ALONE)) if ALONE in one else None
    return Kept(name, title, code, numbers, Frozen(kept | changed), teachers, Frozen(kits))


def _kits(version: dict[str, Any], *way: str) -> Iterator[tuple[str, tuple[tuple[Number, ...], ...]]]:
    """The lists of the kits of a version by their colourways: of each what is otherwise than in its plain kit."""
    base = {one.key: one for one in _rows(LISTS, version.get("kit"), *way, "kit")}
    for name, each in _mapping(version["kits"], "the kits of a version", *way, "kits").items():
        named = _word(name, "the name of a colourway", *way, "kits")
        if not isinstance(each, list):
            raise Unusable("the kits of a colourway are a list", *way, "kits", name)
        found = []
        for told in each:
            own = _mapping(told, "a kit", *way, "kits", name)
            rows = {key: row for key, row in own.items() if row is not None}
            beside = {one.key: one for one in _rows(LISTS, rows, *way, "kits", name)}
            gone = own.keys() - rows.keys()
            found.append(tuple(one for key, one in (base | beside).items() if key not in gone))
        yield named, tuple(found)


def _keys(told: Any, *way: str) -> Iterator[tuple[str, str]]:  # noqa: ANN401
    """Group and key of numbers that stand on the teacher's sheet alone."""
    for group, keys in _mapping(told, "what the teacher's sheet alone prints", *way).items():
        if not isinstance(keys, list):
            raise Unusable("the numbers of the teacher's sheet are a list of their names", *way, group)
        yield from ((group, _word(key, "a number's name", *way, group)) for key in keys)


def _numbers(told: Any, *way: str) -> Iterator[Number]:  # noqa: ANN401
    for group, rows in _mapping(told, "its 'numbers'", *way).items():
        if group not in GROUPS:
            raise Unusable(f"'{group[:40]}' is no group of numbers", *way, group)
        yield from _rows(group, rows, *way, group)


def _rows(group: str, told: Any, *way: str) -> Iterator[Number]:  # noqa: ANN401
    for key, row in _mapping(told, f"'{way[-1]}'", *way).items():
        if not isinstance(row, list) or len(row) != 2:  # noqa: PLR2004 - what it is called, what it is
            raise Unusable("a number is two words: what it is called, and what it is", *way, key)
        label, words = (_word(word, "a number's word", *way, key) for word in row)
        yield Number(group, _word(key, "a number's name", *way, key), label, words)


def _inputs(told: Any, *way: str) -> Iterator[tuple[str, str]]:  # noqa: ANN401
    for key, value in _mapping(told, "its inputs", *way).items():
        yield _word(key, "an input's name", *way, key), _word(value, "an input", *way, key)


def _mapping(told: Any, what: str, *way: str) -> dict[str, Any]:  # noqa: ANN401
    if not isinstance(told, dict):
        raise Unusable(f"{what[:80]} must be names with what belongs to them, in braces", *way)
    return told


def _word(told: Any, what: str, *way: str) -> str:  # noqa: ANN401
    if not isinstance(told, str) or len(told) > LONGEST or NO_WORD.search(told):
        raise Unusable(f"{what} must be text on one line, of at most {LONGEST} letters", *way)
    return told
