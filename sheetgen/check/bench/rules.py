"""All rules of the bench, asked at every moment of a version."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.check.bench import chemistry, fire, fit, hanging, hollows, order, people, survival
from sheetgen.model.bench.walk import walk

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.base.trouble import Trouble
    from sheetgen.model.worked import Worked, WorkedVersion

MOMENTS = (
    survival.survives, survival.solder_melts, survival.temper,
    order.dry, order.raw_on_fired, order.never_fired, order.not_there, order.seat_fired, order.cured,
    fire.program, fire.metals_meet, fire.torch, fire.carbon, fire.opened, fire.raw_flame,
    hollows.vented, hollows.shut_wet,
    chemistry.vapour, chemistry.hot_pickle, chemistry.never_meet, chemistry.coating, chemistry.soft_solder,
    chemistry.iron, chemistry.aluminium,
    hanging.hung, fit.joined, fit.fired, fit.grips, fit.strong, fit.drilled, fit.solders,
    people.caught,
)  # fmt: skip
VERSIONS = (people.children, people.ears)


def bench(worked: Worked, version: WorkedVersion) -> Iterator[Trouble]:
    """What would ruin a piece or hurt a person, in one version."""
    for moment in walk(version.parts, version.steps, worked.worn_at):
        for rule in MOMENTS:
            yield from rule(moment)
    for whole in VERSIONS:
        yield from whole(worked, version)
