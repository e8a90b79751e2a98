"""People: what a wheel catches, what a small child wears or swallows, and what an ear carries."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.interval import Interval
from sheetgen.base.material import Bead, Fibre, Finding, Stone
from sheetgen.check.bench.survival import there
from sheetgen.check.bench.told import told
from sheetgen.facts.fit import EAR, SWALLOWED

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.base.trouble import Trouble
    from sheetgen.model.bench.moment import Moment
    from sheetgen.model.worked import Worked, WorkedVersion


def caught(moment: Moment) -> Iterator[Trouble]:
    """Gloves, cloth and loose strands at a wheel."""
    wheel = next((item for item in moment.step.uses if item.acts("wheel")), None)
    if wheel is None or moment.deed != "polish":
        return
    near = [item for item in moment.step.uses if item.acts("gloves", "cloth") or isinstance(item, Fibre)]
    near += [one.item for one in there(moment) if isinstance(one.item, Fibre)]
    chain = next((body for body in moment.bodies if body.piece.roles.get("link of")), None)
    if chain is not None:
        message = (
            f"'{chain.title}' is a loose chain, and {wheel.name} turns at {moment.number}: it catches "
            "and pulls the hand in"
        )
        yield told("caught", message, moment.place(wheel.id, "uses"), "polish it before it is joined, or in a tumbler")
    for item in dict.fromkeys(near):
        message = (
            f"{item.name} and {wheel.name} come together at {moment.number}: the wheel catches it and pulls the hand in"
        )
        yield told(
            "caught",
            message,
            moment.place(item.id, wheel.id, "uses"),
            "take it off before the wheel turns, in a step of its own",
        )


def children(worked: Worked, version: WorkedVersion) -> Iterator[Trouble]:
    """What a small child may not wear, and what it may not have at all."""
    if worked.worn_by != "small child":
        return
    if not worked.worn_at:
        message = "a small child wears this, and nothing says where"
        yield told(
            "child-neck",
            message,
            worked.worn_places.get("worn by", worked.place),
            "worn at: wrist, clothes … or nowhere",
        )
    if worked.worn_at == "neck":
        message = "this hangs round a small child's neck, and can strangle it"
        yield told(
            "child-neck",
            message,
            worked.worn_places.get("worn at", worked.place),
            "worn at: another place, or worn by: adult",
        )
    small = _small(version)
    if small:
        message = f"a small child wears this, and {small} is small enough to choke on"
        yield told(
            "child-swallows",
            message,
            worked.worn_places.get("worn by", worked.place),
            "nothing that fits into a small mouth, or worn by: adult",
        )


def _small(version: WorkedVersion) -> str:
    """Something of the piece that goes into a small mouth whole; empty for nothing."""
    items = [item for step in version.steps for item in step.uses] + [line.item for line in version.materials]
    items += [
        one
        for part in version.parts.values()
        for plays in part.roles.values()
        for one in plays
        if isinstance(one, Bead | Stone | Finding)
    ]
    named = next((item.name for item in items if isinstance(item, Bead | Stone) and item.size.usual < SWALLOWED), "")
    named = named or next((item.name for item in items if isinstance(item, Finding)), "")
    if named:
        return named
    for part in version.parts.values():
        widest = [one.finished.high for one in part.sizes if one.finished is not None]
        if part.roles.get("metal mass") and max(widest, default=0.0) < SWALLOWED:
            return f"'{part.title.lower()}'"
    return ""


def ears(worked: Worked, version: WorkedVersion) -> Iterator[Trouble]:
    """What one ear carries."""
    if worked.worn_at != "ear":
        return
    masses = [
        (part, mass)
        for part in version.parts.values()
        for mass in part.roles.get("metal mass", ())
        if isinstance(mass, Interval)
    ]
    pairs = all(part.count % 2 == 0 for part, _ in masses)
    side = sum(mass.usual * part.count for part, mass in masses) / (2 if pairs else 1)
    if masses and side > EAR:
        heaviest = max(masses, key=lambda pair: pair[1].usual * pair[0].count)[0]
        message = f"an earring weighs {side:.3g} g of metal, and {EAR:g} g is the most that an ear bears well"
        place = heaviest.places.get("thickness", heaviest.places.get(""))
        yield told("heavy-earring", message, place, "thinner, smaller, or hollow")
