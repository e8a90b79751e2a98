"""The record of what was published: by which project, from what, which files, and what was told; plain JSON.

Only the standard library and the base are imported here: where nothing has changed, nothing else is needed.
"""

from __future__ import annotations

import errno
import functools
import hashlib
import json
import os
import stat
from typing import TYPE_CHECKING, Any, NamedTuple

from sheetgen.base.place import Place, Source
from sheetgen.base.trouble import CannotBe, Trouble
from sheetgen.publish.plain_file import held_in

if TYPE_CHECKING:
    from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
    from pathlib import Path

RECORD = ".published.json"
LAID = ".laid-"
"""How the name of a file begins that is being laid beside its place."""
OF_RECORD = ("projects", "index", "in trouble", "sheets", "ours")
LISTS = (
    "tags", "versions", "sheets", "techniques", "clays", "tools", "materials", "parts", "needs", "chips", "made_of",
)  # fmt: skip
LARGEST = 256_000_000
"""Bytes of a record at most; that of a thousand designs has some twenty million."""
LARGEST_PAGE = 500_000_000
"""Bytes of what is published at most, as it is looked at again."""
Stamp = list[Any]
"""Of a file its size, its moment in ns, and a digest of its bytes; empty where that is not known."""


class Told(NamedTuple):
    """What was told of a project: all, what of it before anything was printed, what is to be known, its old names."""

    whole: Sequence[Trouble]
    checked: Sequence[Trouble]
    said: tuple[Sequence[str], Sequence[str]]
    was: Sequence[str] = ()


class OfStock(NamedTuple):
    """What a project was published from of the stock: the key of all its files, items by id, and the key of those."""

    files: str
    asked: Collection[str]
    key: str


def read_record(root: Path) -> dict[str, Any]:
    """The record of a build folder; of one that a hand has changed what is still whole, of a foreign file nothing."""
    try:
        told = json.loads((held_in(root / RECORD, LARGEST) or b"{}").decode())
        ours = {*told} <= {*OF_RECORD}
        projects = {name: one for name, one in told["projects"].items() if ours and _is_record(one)}
    except (OSError, ValueError, KeyError, TypeError, AttributeError, RecursionError):
        return {"projects": {}, "index": {}, "in trouble": {}, "sheets": {}, "ours": {}}
    for one in projects.values():
        one["files"] = dict(one["files"]) if isinstance(one["files"], dict) else {path: [] for path in one["files"]}
        one["ours"] = _files(one.get("ours"))
    trouble = told.get("in trouble")
    return {
        "projects": projects,
        "index": _files(told.get("index")),
        "ours": _files(told.get("ours")),
        "in trouble": trouble if isinstance(trouble, dict) else {},
        "sheets": _own_sheets(told.get("sheets")),
    }


def _files(told: Any) -> dict[str, Any]:  # noqa: ANN401 - whatever a file held
    """Files with what is remembered of each; none where a hand has changed that."""
    return told if isinstance(told, dict) and all(map(_is_below, told)) else {}


def moment_of(root: Path) -> tuple[int, int] | None:
    """When the record of a build folder was written, ns, and its size; None where there is none."""
    try:
        told = (root / RECORD).stat()
    except OSError:
        return None
    return told.st_mtime_ns, told.st_size


def refuse_foreign(root: Path) -> None:
    """CannotBe where another program keeps a file of the record's name: what it says is not ours to write over.

    One of ours that a hand has spoilt is begun anew.
    """
    path = root / RECORD
    if path.is_file() and not os.access(path, os.R_OK):
        raise PermissionError(errno.EACCES, os.strerror(errno.EACCES), str(path))
    if os.path.lexists(path) and ((content := held_in(path, LARGEST)) is None or not _may_be_ours(content)):
        told = f"{path} is not a record of what was published here, and stays as it is, with all that is there"
        raise CannotBe(told, "publish into another folder, or move that file away")


def _may_be_ours(content: bytes) -> bool:
    text = content.strip()
    try:
        told = json.loads(text)
    except (ValueError, RecursionError):
        return text[:1] in {b"", b"{"}  # cut off, or mistyped
    return not told or (isinstance(told, dict) and "projects" in told and {*told} <= {*OF_RECORD})


def record_text(record: Mapping[str, Any]) -> bytes:
    """A record as it is written, a project a line: indented to the last value, that of a thousand takes seconds."""
    lines = (f"{_json(name)}: {_json(one)}" for name, one in sorted(record["projects"].items()))
    more = (f"{_json(name)}: {_json(record[name])}" for name in sorted(record) if name != "projects")
    return "\n".join(["{" + ",\n".join([*more, '"projects": {']), ",\n".join(lines), "}}", ""]).encode()


def _json(told: Any) -> str:  # noqa: ANN401 - whatever is recorded
    return json.dumps(told, ensure_ascii=False, sort_keys=True)


def _is_record(one: Any) -> bool:  # noqa: ANN401 - whatever a file held
    """Whether a record of a project is as it was written, and not changed by a hand."""
    files, entry = one["files"], one["entry"]
    words = [*files, *(entry[key] for key in ("name", "title"))]
    plain = all(isinstance(word, str) and word and word.isprintable() for word in words)
    below = plain and all(map(_is_below, files))
    return isinstance(files, list | dict) and below and all(isinstance(entry.get(key, []), list) for key in LISTS)


def _own_sheets(sheets: Any) -> dict[str, Any]:  # noqa: ANN401 - whatever a file held
    """What is known of the library's own sheets; nothing where any of it is not as it was written."""
    try:
        each = [*sheet_files(sheets), *(path for one in sheets.values() for path in one.get("made", ()))]
        whole = all(map(_is_below, each)) and all(isinstance(one["key"], str) for one in sheets.values())
        jars_of(sheets)
    except (KeyError, TypeError, ValueError, AttributeError):
        return {}
    return dict(sheets) if whole else {}


def sheet_files(sheets: Mapping[str, Any]) -> list[str]:
    """The files of the library's own sheets."""
    return [path for one in sheets.values() for path in one.get("files", ())]


def jars_of(sheets: Mapping[str, Any]) -> list[tuple[str, int, str]]:
    """What jars in their layout: file, page, words; of the first paper, for all have one content box."""
    each = [next(iter(one["files"].values()))["warnings"] for one in sheets.values() if one.get("files")]
    return [(str(name), int(page), str(words)) for warnings in each for name, page, words in warnings]


def _is_below(path: str) -> bool:
    """Whether a path of a record is one within the folder."""
    return not path.startswith("/") and ".." not in path.split("/")


def digest_of(content: bytes) -> str:
    """What tells one content from another."""
    return hashlib.sha256(content).hexdigest()


def stamp_of(path: Path, content: bytes) -> Stamp:
    """What is remembered of a file that holds this content."""
    told = path.stat()
    return [told.st_size, told.st_mtime_ns, digest_of(content)]


def stands(path: str, stamp: Stamp) -> bool:
    """Whether a file is still as it was written; one that was only touched is."""
    try:
        told = os.lstat(path)
        size, moment, digest = stamp
        if told.st_size != size or not stat.S_ISREG(told.st_mode):
            return False
        return bool(told.st_mtime_ns == moment) or digest_of(held_in(path, LARGEST_PAGE) or b"") == digest
    except (OSError, ValueError, TypeError):
        return False


def as_told(troubles: Iterable[Trouble]) -> list[dict[str, Any]]:
    """Troubles as plain values, without the lines of files that they show: the record is published too."""
    return [
        {
            "message": one.message,
            "help": one.help,
            "severity": one.severity,
            "rule": one.rule,
            "place": _place(one.place) if one.place else None,
        }
        for one in troubles
    ]


def told_again(told: Sequence[Mapping[str, Any]], root: Path) -> list[Trouble]:
    """What `as_told` has written down, with the lines of the library's files.

    ValueError, KeyError, TypeError or AttributeError for what it has not written.
    """
    if not told:
        return []
    inside = root.resolve()
    lines = functools.cache(lambda name: _text(inside, name))
    return [
        Trouble(
            str(one["message"]),
            _placed(one["place"], lines) if one["place"] else None,
            str(one["help"]),
            "error" if one["severity"] == "error" else "warning",
            str(one["rule"]),
        )
        for one in told
    ]


def _place(place: Place) -> dict[str, Any]:
    used = [_place(use) for use in place.used_at]
    return {"file": place.source.name, "at": [place.line, place.column, place.width], "used": used}


def _placed(told: Mapping[str, Any], lines: Callable[[str], str]) -> Place:
    name = str(told["file"])
    line, column, width = map(int, told["at"])
    return Place(Source(name, lines(name)), line, column, width, tuple(_placed(use, lines) for use in told["used"]))


def _text(root: Path, name: str) -> str:
    """What stands in a file of the library, or nothing of one that is none."""
    path = (root / name).resolve()
    content = held_in(path, LARGEST) if path.is_relative_to(root) else None
    return (content or b"").decode("utf-8-sig", "replace").replace("\r\n", "\n").replace("\r", "\n")
