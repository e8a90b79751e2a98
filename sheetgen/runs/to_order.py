"""What a table of orders may say of a design, in a line each: versions, choices, colourways, bags, as it is written."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.kits.apart import bagged
from sheetgen.work.project import main_title

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.model.project import Project
    from sheetgen.model.worked import WorkedVersion


def to_order(project: Project, main: WorkedVersion | None = None) -> Iterator[str]:
    """The lines; none of what a design has not. Of a choice that another decides it says which.

    Of a design that names no bags those are told into which its `main` version, as it is worked, is filled.
    """
    yield f"versions: {'; '.join(printed_names(project))}"
    told = (f"{name}={_value(value)}" for name, value in project.choices.items())
    each = {
        "choices, of the main version": "; ".join(told),
        "colourways": "; ".join(project.colourways and [name for name in project.colourways if name != "of"]),
        "bags": "; ".join(project.kit.bags) if project.kit else "",
    }
    if not each["bags"] and main is not None and (kit := bagged(main).kit) is not None:
        each["bags, of the main version"] = "; ".join(bag.name for bag in kit.bags)
    yield from (f"{name}: {words}" for name, words in each.items() if words)


def printed_names(project: Project) -> list[str]:
    """The names of a design's versions as its sheets print them, the main one first."""
    others = (next((str(v) for k, v in version.items() if k == "name"), "") for version in project.versions)
    return [main_title(project), *filter(None, others)]


def _value(value: object) -> str:
    return f"(by {value['by']})" if isinstance(value, dict) and "by" in value else str(value)
