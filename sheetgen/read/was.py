"""What designs and versions were called before: an address that leads on must be free, and of one design alone."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from sheetgen.base.paths import DEVICES, LONGEST_NAME, OF_THE_OUTPUT, leads_out
from sheetgen.base.place import Place, Source
from sheetgen.base.trouble import Trouble, Troubles
from sheetgen.read.text import read_text

if TYPE_CHECKING:
    from collections.abc import Collection, Iterable, Mapping, Sequence
    from pathlib import Path

    from sheetgen.base.place import Word
    from sheetgen.model.project import Filed, Library

NAME = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")
_SAID = re.compile(r"^was:[ \t]*\[?([^\]\n#]*)|^was:[ \t]*\n((?:[ \t]*-[^\n]*\n)+)", re.MULTILINE)


def misnamed(name: str) -> str:
    """What a project's folder must be called, where it is not; else nothing."""
    if not NAME.fullmatch(name) or len(name) > LONGEST_NAME:
        return f"small letters and digits, with hyphens, {LONGEST_NAME} at most: it becomes part of a web address"
    if name in DEVICES:
        return "some machines take that for a device, and no folder"
    return "the pages of the library have that name" if name in OF_THE_OUTPUT else ""


def were_called(folder: Path) -> set[str]:
    """What the file of a design that is not read says that it was called: plain names, as far as they are seen."""
    if leads_out(folder, folder.parents[1]):
        return set()
    source = read_text(folder / "project.yaml", f"projects/{folder.name}/project.yaml", Troubles())
    found = _SAID.search(source.text) if source and "\nwas:" in source.text else None
    return set(re.findall(r"[a-z0-9-]+", f"{found[1] or ''} {found[2] or ''}")) - {"-"} if found else set()


def one_address_each(
    library: Library, folders: Sequence[Path], others: Mapping[str, Collection[str]], troubles: Troubles
) -> None:
    """Hold a design back that leads on from an address which is another's, or that has the address of one that does.

    `others` are designs that are not read, with what they were called.
    """
    there = {folder.name for folder in folders}
    claimed = {name: design for design, names in others.items() for name in names}
    amiss = set[str]()
    for filed in library.projects:
        for word in filed.project.was:
            if told := _amiss(word, filed.name, there, claimed):
                troubles.extend([Trouble(*told)])
                amiss.add(filed.name)
            claimed.setdefault(str(word), filed.name)
    amiss |= set(_taken(library.projects, claimed, troubles))
    library.failed += sorted(amiss)
    library.projects = [filed for filed in library.projects if filed.name not in amiss]


def _amiss(
    word: Word, design: str, there: Collection[str], claimed: Mapping[str, str]
) -> tuple[str, Place, str] | None:
    if helped := misnamed(word):
        return f"no design was ever called '{word}'", word.place, helped
    if word == design:
        return f"'{word}' is what it is called now", word.place, "name what it was called before, or take this out"
    if word in there:
        return f"'{word}' is another design, and has its own page", word.place, "take this out, or rename that design"
    if claimed.get(word, design) != design:
        message = f"{claimed[word]} was called '{word}' too, and an address leads to one page"
        return message, word.place, "take it out of one of them"
    return None


def _taken(projects: Iterable[Filed], claimed: Mapping[str, str], troubles: Troubles) -> Iterable[str]:
    """Designs at whose address another one leads on, where that one's own file is not read now."""
    for filed in projects:
        by = claimed.get(filed.name)
        if by is not None and all(one.name != by for one in projects):
            told = f"the folder has the name that {by} was called, and a page there leads on to it"
            troubles.add(told, Place(Source(f"projects/{filed.name}")), f"rename it, or take 'was' out of {by}")
            yield filed.name
