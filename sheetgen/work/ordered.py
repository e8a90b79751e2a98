"""One version of a project by itself, with what an order chooses otherwise."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sheetgen.base.frozen import Frozen
from sheetgen.base.place import Word
from sheetgen.base.spelling import bare, plain, suggest
from sheetgen.base.trouble import CannotBe
from sheetgen.work.project import MAIN, main_title, work

if TYPE_CHECKING:
    from collections.abc import Mapping

    from sheetgen.base.trouble import Troubles
    from sheetgen.model.project import Filed, Library
    from sheetgen.model.worked import Worked


def work_version(filed: Filed, library: Library, called: str, choices: Mapping[str, str], troubles: Troubles) -> Worked:
    """The project with that one version only: what its other versions come to with these choices stops nobody.

    CannotBe for a version that there is not.
    """
    if not choices:
        worked = work(filed, library, troubles)
        version = worked.version(called)
        return replace(worked, versions=Frozen({version.name: version}))
    project = filed.project
    changed: dict[str, dict[str, str]] = {main_title(project): {}}
    for written in project.versions:
        each = {str(key): str(value) for key, value in written.items()}
        changed[each.pop("name", "")] = each
    title = next((one for one in changed if bare(one) == bare(called)), None)
    if title is None:
        raise CannotBe(f"there is no version '{called}' of {filed.name}", suggest(called, changed))
    given = {plain(name): value for name, value in (*changed[title].items(), *choices.items())}
    alone = project.model_copy(update={"versions": [], "main_version": Word(title, project.title.place)})
    worked = work(replace(filed, project=alone), library, troubles, given)
    name = MAIN if title == main_title(project) else title
    return replace(worked, versions=Frozen({name: replace(worked.main, name=name)}))
