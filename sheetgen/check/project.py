"""A worked project looked over: the kinds' own checks, the project's checks, and the order of its steps."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.material import Clay
from sheetgen.base.pen import Extent
from sheetgen.base.trouble import CannotBe, Trouble, Troubles
from sheetgen.check.drilled import drilled
from sheetgen.model.worked import COMPARISONS
from sheetgen.parts.kind import Finding

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.base.place import Place
    from sheetgen.model.worked import Worked, WorkedStep, WorkedVersion
    from sheetgen.parts.kind import Part

LARGEST = 1000.0  # mm: past the arm of a bench, and a dozen pages of one template
SLAT_REACH = 0.03  # mm: less than clay springs back under the roller (common practice)


def check(worked: Worked, troubles: Troubles) -> None:
    """Note what does not fit in any version; what a version shares with the main one is told once."""
    told: set[tuple[str, Place | None]] = set()
    for version in worked.versions.values():
        own = Troubles()
        own.extend(_parts(worked, version))
        own.extend(_needs(version))
        own.extend(_order(version))
        for trouble in own:
            if (trouble.message, trouble.place) in told:
                continue
            told.add((trouble.message, trouble.place))
            message = trouble.message if version is worked.main else f"in version {version.name}: {trouble.message}"
            troubles.extend([Trouble(message, trouble.place, trouble.help, trouble.severity)])
    troubles.extend(_unused(worked))


def _parts(worked: Worked, version: WorkedVersion) -> Iterator[Trouble]:
    written = {str(k).replace(" ", "_"): (k, fields) for k, fields in worked.filed.project.parts.items()}
    for part in version.parts.values():
        name, fields = written[part.name]
        try:
            for finding in (
                *part.check(),
                *_slats(part),
                *_too_large(part, worked, version),
                *drilled(part, worked, version),
            ):
                word = fields.get(name.__class__(finding.field, name.place))
                place = getattr(word, "place", name.place)
                message = f"{part.name.replace('_', ' ')}: {finding.field} {finding.message}"
                yield Trouble(message, place, finding.help, finding.severity)
        except CannotBe as fault:
            yield Trouble(f"{part.name}: {fault.message}", name.place, fault.help)


def _slats(part: Part) -> Iterator[Finding]:
    """Whether the drawer has slats of the thicknesses the clay is rolled to."""
    owned = part.bench.owned("slat")
    for name, size in part.slats():
        if owned and min(abs(size - one) for one in owned) > SLAT_REACH:
            near = [
                *[one for one in sorted(owned) if one < size][-1:],
                *[one for one in sorted(owned) if one > size][:1],
            ]
            helped = "the nearest owned: " + " and ".join(f"{one:g} mm" for one in near)
            yield Finding(name, f"is {size:g} mm, and no slat of it is in the drawer", helped)


def _too_large(part: Part, worked: Worked, version: WorkedVersion) -> Iterator[Finding]:
    """Whether the flat piece is one that pages of templates could hold."""
    if not type(part).flat():
        return
    around = Extent()
    part.template(around, worked.sizes(version, part))
    if (long := max(around.width, around.height)) > LARGEST:
        yield Finding("kind", f"makes a template {long / 1000:.3g} m long", f"pieces of up to {LARGEST:g} mm")


def _needs(version: WorkedVersion) -> Iterator[Trouble]:
    """The project's own comparisons: at the usual values and at both ends."""
    for need in version.needs:
        holds = COMPARISONS[need.sign]
        pairs = [(getattr(need.left, end), getattr(need.right, end)) for end in ("usual", "low", "high")]
        if not all(holds(a, b) for a, b in pairs):
            worst = next((a, b) for a, b in pairs if not holds(a, b))
            found = f"here {worst[0]:.4g} {need.unit} and {worst[1]:.4g} {need.unit}".replace("  ", " ")
            yield Trouble(need.say, need.place, found)


def _order(version: WorkedVersion) -> Iterator[Trouble]:
    """What must not be fired comes after the last firing; what is fired has dried."""
    firings = [i for i, step in enumerate(version.steps) if step.firing]
    last = firings[-1] if firings else -1
    for i, step in enumerate(version.steps):
        for item in step.uses:
            if not item.kiln and i <= last:
                when = "before it" if i < last else "in it"
                helped = f"move it after '{version.steps[last].title}'"
                yield Trouble(f"{item.name} does not survive the kiln and is used {when}", step.place, helped)
    if firings and not _dries(version.steps[: firings[0]]):
        yield Trouble(
            "the clay is fired before any step dries it", version.steps[firings[0]].place, "add a step wait: drying"
        )
    clays = [item for line in version.materials if isinstance(item := line.item, Clay)]
    if clays and not firings:
        message = f"{clays[0].name} is never fired"
        yield Trouble(message, version.steps[-1].place if version.steps else None, "add firing: to a step", "warning")


def _dries(steps: list[WorkedStep]) -> bool:
    return any(step.wait_for == "drying" or "dry" in step.title.lower() for step in steps)


def _unused(worked: Worked) -> Iterator[Trouble]:
    named = {part for step in worked.main.steps for part in step.parts}
    for name in worked.filed.project.parts:
        if str(name).replace(" ", "_") not in named:
            yield Trouble(f"no step makes '{name}'", name.place, "name it under parts: of a step", "warning")
