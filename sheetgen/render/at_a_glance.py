"""What a list of designs says of one besides its words: what it is heated with, and how many evenings a class takes."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from sheetgen.model.worked import WorkedVersion


def heat(version: WorkedVersion) -> list[str]:
    """The kiln where something is fired in it, and the torch where one is used."""
    kiln = any(step.firing for step in version.steps)
    torch = any(item.acts("torch") for step in version.steps for item in step.uses)
    return [name for name, used in (("kiln", kiln), ("torch", torch)) if used]


def evenings(version: WorkedVersion) -> int:
    """Those of its class; 0 where none is planned, or a step finds no room in it."""
    plan = version.plan.class_plan
    return 0 if plan is None or plan.left else len(plan.evenings)
