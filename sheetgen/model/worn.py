"""What the cautions of a version tell to wear or to have, besides what is in its lists."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from sheetgen.model.worked import WorkedVersion


def worn(version: WorkedVersion) -> tuple[str, ...]:
    """In the order in which its steps tell it; nothing that a tool or a material of its lists is already."""
    items = [*(line.item for line in version.tools), *(line.item for line in version.materials)]
    had = [item.name.lower() for item in items]
    told = dict.fromkeys(wear for step in version.steps for caution in step.cautions for wear in caution.wear)
    return tuple(wear for wear in told if not any(wear.split(",")[0].lower() in name for name in had))
