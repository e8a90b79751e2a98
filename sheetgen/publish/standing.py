"""Which designs stand as they were published: nothing that they are made of has changed, and no file of theirs.

Only the standard library and the base are imported here: where all of them stand, nothing else is needed.
"""

from __future__ import annotations

import json
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

from sheetgen.base.paths import ours_of
from sheetgen.publish.inputs import (
    STOCK,
    design_folders,
    joined,
    ledger_key,
    own_key,
    printer_key,
    shared_key,
    stock_key,
)
from sheetgen.publish.record import jars_of, read_record, stands, told_again

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence
    from pathlib import Path

    from sheetgen.base.trouble import Trouble

IN_STOCK = f"projects/{STOCK}/"


@dataclass(slots=True)
class Unsure:
    """A design that stands but for its stock: the items that it hangs on, their key, what was told, how many sheets."""

    asked: list[str]
    key: str
    told: list[Trouble]
    sheets: int


@dataclass(slots=True)
class Standing:
    """What a library is made of now, and what of it stands as it was published.

    `well` and `failed`: designs that stand, and that are in the trouble that they were in, each with what was told of
    it. `unsure`: designs that stand if the items of stock that they hang on are as they were. `checked`: of both what a
    check told, and what is to be known of them; `was`: what they were called. `index`: whether the library's own pages
    stand, and no design has come or gone; `jars` is what then jars in its sheets: file, page, words. `record`: that of
    the folder, as it was read for this.
    """

    printer: str
    shared: str
    stock: str
    own: dict[str, str]
    well: dict[str, list[Trouble]] = field(default_factory=dict)
    failed: dict[str, list[Trouble]] = field(default_factory=dict)
    unsure: dict[str, Unsure] = field(default_factory=dict)
    checked: dict[str, tuple[list[Trouble], tuple[list[str], list[str]]]] = field(default_factory=dict)
    was: dict[str, list[str]] = field(default_factory=dict)
    files: int = 0
    index: bool = False
    jars: list[tuple[str, int, str]] = field(default_factory=list)
    record: dict[str, Any] = field(default_factory=dict)

    def key(self, name: str, root: Path) -> str:
        """What a design is made of besides stock; its ledgers as they are now, the rest as it was read."""
        return joined(self.printer, self.shared, self.own[name], ledger_key(root / "projects" / name))

    def whole_key(self, name: str, root: Path) -> str:
        """The same with all files of the stock."""
        return joined(self.key(name, root), self.stock)

    def old_names(self) -> dict[str, list[str]]:
        """Of each design that stands what it was called."""
        return {name: self.was[name] for name in self.well}

    def stand(self, name: str, told: list[Trouble], sheets: int) -> None:
        """Note a design that stands, with so many sheets."""
        self.well[name] = told
        self.files += sheets


def standing(root: Path, build: Path, only: Sequence[str] = ()) -> Standing:
    """Look whether a library, or designs of it, stands in a build folder. What is in doubt does not stand."""
    folders = design_folders(root)
    asked = {name: folder for name, folder in folders.items() if not only or name in only}
    own = {name: own_key(folder) for name, folder in asked.items()}
    found = Standing(printer_key(), shared_key(root), stock_key(root), own)
    record = found.record = read_record(build)
    for name in asked:
        _look(found, name, root, build, record)
    _look_where_they_lead(found, folders, record)
    pages, found.jars = record["index"], jars_of(record["sheets"])
    same = set(record["projects"]) | set(record["in trouble"]) == set(folders)
    well = all(stands(f"{build}/{path}", pages[path]) for path in pages)
    ours = all(stands(f"{ours_of(build)}/{path}", stamp) for path, stamp in record["ours"].items())
    found.index = bool(pages) and (same or bool(only)) and well and ours
    return found


def _look_where_they_lead(found: Standing, folders: Mapping[str, Path], record: Mapping[str, Any]) -> None:
    """A retired design does not stand where the one that it leads on to has gone."""
    for name in [*found.well, *found.unsure]:
        to = record["projects"][name]["entry"].get("instead")
        if to and to not in folders:
            found.well.pop(name, None)
            found.unsure.pop(name, None)


def _look(found: Standing, name: str, root: Path, build: Path, record: Mapping[str, Any]) -> None:
    """Note a design where it stands."""
    well, trouble = record["projects"].get(name, {}), record["in trouble"].get(name)
    try:
        if trouble is not None:
            if trouble["key"] == found.whole_key(name, root):
                found.failed[name] = told_again(trouble["told"], root)
            return
        files, ours = well.get("files", {}), well.get("ours", {})
        if well.get("key") != found.key(name, root) or not (files or ours):
            return
        home, beside = f"{build}/", f"{ours_of(build)}/"
        if not all(stands(home + path, files[path]) for path in files):
            return
        if not all(stands(beside + path, ours[path]) for path in ours):
            return
        told, stock = told_again(well["told"], root), well["stock"]
        waived, notes = well["said"]
        found.was[name] = list(map(str, well["was"]))
        same = well["checked"] == well["told"]
        found.checked[name] = (
            told if same else told_again(well["checked"], root),
            (list(map(str, waived)), list(map(str, notes))),
        )
        sheets = sum(path.endswith(".pdf") for path in (*files, *ours))
        if stock["files"] == found.stock:
            found.stand(name, told, sheets)
        elif IN_STOCK not in json.dumps(well["told"]):  # its lines may have moved
            found.unsure[name] = Unsure(list(map(str, stock["asked"])), str(stock["key"]), told, sheets)
    except (KeyError, TypeError, ValueError, AttributeError):
        return
