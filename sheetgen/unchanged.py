"""Which designs stand although something beside them has changed: asked once what they share has been read."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from sheetgen.publish.inputs import design_folders
from sheetgen.publish.stocked import Stocked
from sheetgen.read.said import one_title, titles_of

if TYPE_CHECKING:
    from collections.abc import Mapping
    from pathlib import Path

    from sheetgen.base.trouble import Troubles
    from sheetgen.model.project import Stock
    from sheetgen.publish.standing import Standing


def settle(found: Standing, stock: Stock, troubles: Troubles) -> list[str]:
    """Let the designs stand whose items of stock are as they were, and name them; a doubt in the shared lets none."""
    stocked = Stocked(stock)
    same = [name for name, one in found.unsure.items() if not troubles.found and stocked.key(one.asked) == one.key]
    for name in same:
        found.stand(name, found.unsure[name].told, found.unsure[name].sheets)
    found.unsure.clear()
    return same


def part_alike(found: Standing, record: Mapping[str, Any], root: Path) -> None:
    """Look again at designs that stand where another one is now called alike, or where what they lead on to changed.

    Of two that are called alike both are held back.
    """
    folders = design_folders(root)
    changed = [name for name in found.own if name not in found.well]
    now = {one_title(said) for name in changed for said in titles_of(folders[name])}
    titles = {name: told["entry"]["title"] for name, told in record["projects"].items()}
    leads = {name: told["entry"].get("instead") for name, told in record["projects"].items()}
    for name in [name for name in found.well if one_title(titles[name]) in now or leads[name] in changed]:
        del found.well[name]
