"""Brings project files into the newest format: what is otherwise in each is shown, and each is kept as it was."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.paths import COPIED, OUTSIDE, leads_out
from sheetgen.base.place import Place, Source
from sheetgen.base.spelling import counted, suggest
from sheetgen.base.trouble import Troubles
from sheetgen.pipeline import Outcome, projects_of
from sheetgen.publish.folder import beside
from sheetgen.publish.inputs import PROJECT
from sheetgen.read.formats import as_now, newest, numbered
from sheetgen.read.text import read_text
from sheetgen.read.yaml_words import words

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence
    from pathlib import Path

    from sheetgen.read.yaml_words import Mapping, Words

COPY = f"{PROJECT}.before"


def upgrade(root: Path, only: Sequence[str], *, write: bool) -> tuple[Outcome, list[str]]:
    """All projects of a library, or those named; and in lines what is otherwise in each, and where its copy is.

    A file in trouble stays as it is, and the others are upgraded. OSError where nothing can be written.
    """
    outcome, told, known = Outcome(), list[str](), projects_of(root)
    for name in only or known:
        if name not in known:
            outcome.troubles.add(f"there is no project '{name}'", None, suggest(name, known))
            continue
        own = Troubles()
        folder = root / "projects" / name
        if leads_out(folder, root):
            own.add(f"the folder {OUTSIDE}", Place(Source(f"projects/{name}")), COPIED)
        else:
            told += _upgraded(folder / PROJECT, f"projects/{name}/{PROJECT}", own, outcome, write=write)
        outcome.troubles.extend(own)
    asked = counted(len(only or known), "file")
    done = f"{len(outcome.changed)} of {asked} {'brought' if write else 'would be brought'}"
    return outcome, [*told, f"{done} into format {newest()}"]


def _upgraded(path: Path, name: str, troubles: Troubles, outcome: Outcome, *, write: bool) -> list[str]:
    """What is otherwise in a file, in lines; none where it is as it should be, or in trouble."""
    source = read_text(path, name, troubles)
    now = as_now(source, troubles) if source else None
    before = words(now, troubles) if now else None
    if source is None or now is None or before is None or troubles.errors:
        return []
    text = numbered(now.text)
    if text == source.text:
        return []
    if _said(words(Source(name, text), Troubles())) != _said(before):
        helped = f"write format: {newest()} into it by hand, as its first line"
        troubles.add("its number cannot be written into the file without changing what it says", Place(source), helped)
        return []
    outcome.changed.append(name)
    raw = path.read_bytes()
    told = list(_differences(name, source.text.split("\n"), text.split("\n")))
    if write:
        kept = _kept(path, raw)
        _put(path, _encoded(text, raw), path.stat().st_mode & 0o777)
        told.append(f"{name} is kept as it was in {kept.name}")
    return told


def _differences(name: str, old: Sequence[str], new: Sequence[str]) -> Iterator[str]:
    """Each line that is otherwise, at its number in the old file: a step keeps lines, and one may have been put in."""
    at = new.index(f"format: {newest()}") if len(new) > len(old) else len(new)
    kept = [*new[:at], *new[at + 1 :]]
    for number, (before, after) in enumerate(zip(old, kept, strict=True)):
        if number == at or before != after:
            yield f"{name}:{number + 1}"
        if number == at:
            yield f"+{new[at]}"
        if before != after:
            yield from (f"-{before}", f"+{after}")


def _said(found: Mapping | None) -> dict[str, Words] | None:
    """What a file says besides its number."""
    return None if found is None else {str(key): value for key, value in found.items() if key != "format"}


def _kept(path: Path, raw: bytes) -> Path:
    """A copy beside it, under a name that nothing has yet."""
    copy, number = path.with_name(COPY), 1
    while copy.exists() or copy.is_symlink():
        number += 1
        copy = path.with_name(f"{COPY}-{number}")
    _put(copy, raw, path.stat().st_mode & 0o777)
    return copy


def _put(path: Path, content: bytes, mode: int) -> None:
    laid = beside(path, content, mode)
    try:
        laid.replace(path)
    finally:
        laid.unlink(missing_ok=True)


def _encoded(text: str, raw: bytes) -> bytes:
    """With the mark and the ends of lines that the file has."""
    mark = b"\xef\xbb\xbf" if raw.startswith(b"\xef\xbb\xbf") else b""
    ends = "\r\n" if b"\r\n" in raw else "\n" if b"\n" in raw else "\r"
    return mark + text.replace("\n", ends).encode()
