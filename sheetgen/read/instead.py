"""What a retired design leads on to: another one, which everybody may see and which is not retired itself."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sheetgen.base.spelling import suggest
from sheetgen.base.trouble import Trouble
from sheetgen.model.status import PUBLIC, RETIRED
from sheetgen.read.said import titles_of, words_under

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence
    from pathlib import Path

    from sheetgen.base.place import Place
    from sheetgen.base.trouble import Troubles
    from sheetgen.model.project import Filed, Library


def lead_on(library: Library, folders: Sequence[Path], troubles: Troubles) -> None:
    """Tell each design that leads on what that is called, or hold it back where there is nothing to lead on to."""
    there = {folder.name: folder for folder in folders}
    for n, filed in enumerate(library.projects):
        to = filed.project.instead
        if to is not None and not (told := list(_amiss(filed, there))):
            title = next(iter(titles_of(there[to])), to)
            library.projects[n] = replace(filed, instead=str(title))
        elif to is not None:
            troubles.extend(Trouble(*one) for one in told)
            library.failed.append(filed.name)
    library.projects = [filed for filed in library.projects if filed.name not in library.failed]


def _amiss(filed: Filed, there: Mapping[str, Path]) -> Iterator[tuple[str, Place, str]]:
    to = filed.project.instead
    if to is None:
        return
    if filed.project.status != RETIRED:
        yield "only a retired design leads on to another", to.place, f"add status: {RETIRED}, or take this out"
    elif to == filed.name:
        yield "a design cannot lead on to itself", to.place, "name another one, or take this out"
    elif to not in there:
        others = [name for name in there if name != filed.name]
        yield f"there is no design '{to}'", to.place, suggest(to, others) or "the name of its folder"
    elif (status := next(iter(words_under("status", there[to])), PUBLIC)) != PUBLIC:
        yield f"'{to}' is {_called(status)}, and nobody is led there", to.place, "name one that everybody may see"


def _called(status: str) -> str:
    return {"draft": "a draft", "retired": "retired itself"}.get(status, f"for a {status.partition(' ')[0]} alone")
