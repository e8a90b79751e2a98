"""Which designs stand as they were published: nothing that they are made of has changed, and no file of theirs.

Only the standard library and the base are imported here: where all of them stand, nothing else is needed.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

from sheetgen.publish.inputs import design_folders, joined, ledger_key, own_key, printer_key, shared_key
from sheetgen.publish.record import read_record, stands, told_again

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence
    from pathlib import Path

    from sheetgen.base.trouble import Trouble


@dataclass(slots=True)
class Standing:
    """What a library is made of now, and what of it stands as it was published.

    `well` and `failed`: designs that stand, and that are in the trouble that they were in, each with what was told of
    it. `index`: whether the library's own pages stand, and no design has come or gone.
    """

    printer: str
    shared: str
    own: dict[str, str]
    well: dict[str, list[Trouble]] = field(default_factory=dict)
    failed: dict[str, list[Trouble]] = field(default_factory=dict)
    files: int = 0
    index: bool = False

    def key(self, name: str, root: Path) -> str:
        """What a design is made of; its ledgers as they are now, the rest as it was read."""
        return joined(self.printer, self.shared, self.own[name], ledger_key(root / "projects" / name))


def standing(root: Path, build: Path, only: Sequence[str] = ()) -> Standing:
    """Look whether a library, or designs of it, stands in a build folder. What is in doubt does not stand."""
    folders = design_folders(root)
    asked = {name: folder for name, folder in folders.items() if not only or name in only}
    found = Standing(printer_key(), shared_key(root), {name: own_key(folder) for name, folder in asked.items()})
    record = read_record(build)
    for name in asked:
        _look(found, name, root, build, record)
    pages = record["index"]
    same = set(record["projects"]) | set(record["in trouble"]) == set(folders)
    found.index = bool(pages) and (same or bool(only)) and all(stands(build / path, pages[path]) for path in pages)
    return found


def _look(found: Standing, name: str, root: Path, build: Path, record: Mapping[str, Any]) -> None:
    """Note a design where it stands."""
    key = found.key(name, root)
    well, trouble = record["projects"].get(name, {}), record["in trouble"].get(name)
    try:
        if trouble is not None:
            if trouble["key"] == key:
                found.failed[name] = told_again(trouble["told"], root)
            return
        files = well.get("files", {})
        if well.get("key") == key and files and all(stands(build / path, files[path]) for path in files):
            found.well[name] = told_again(well["told"], root)
            found.files += sum(path.endswith(".pdf") for path in files)
    except (KeyError, TypeError, ValueError, AttributeError):
        return
