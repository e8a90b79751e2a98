"""Hollows: which pieces on the bench shut air in, and where it gets out."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.interval import Interval
from sheetgen.check.bench.told import listed, told
from sheetgen.facts.bench import HEATS
from sheetgen.facts.clay import LID

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.base.trouble import Trouble
    from sheetgen.model.bench.bodies import Body
    from sheetgen.model.bench.moment import Moment


def _wide(body: Body, role: str) -> float:
    return max((one.usual for one in body.piece.roles.get(role, ()) if isinstance(one, Interval)), default=0.0)


def shut(bodies: Sequence[Body]) -> list[Body]:
    """The bodies of one thing that are hollow and shut: said so, or both ends of a tube, or a dome's one, covered."""
    covers = [body for body in bodies if body.piece.roles.get("covers")]
    found = [body for body in bodies if body.closed is not None]
    for body in bodies:
        tube, dome = _wide(body, "open at both ends"), _wide(body, "covers") if body.piece.roles.get("domed") else 0.0
        ends = 2 if tube else 1
        lids = [c for c in covers if c is not body and _wide(c, "covers") >= LID * (tube or dome)]
        if (tube or dome) and sum(lid.piece.count for lid in lids) >= ends * body.piece.count:
            found.append(body)
    return found


def _walls(bodies: Sequence[Body]) -> list[Body]:
    """What shuts a hollow in: tubes, domes, and lids as wide as their ends; of anything else, all of it."""
    round_ = [b for b in bodies if b.piece.roles.get("open at both ends") or b.piece.roles.get("domed")]
    end = max((_wide(b, "open at both ends") or _wide(b, "covers") for b in round_), default=0.0)
    lids = [b for b in bodies if b.piece.roles.get("covers") and _wide(b, "covers") >= LID * end]
    return [b for b in {*round_, *lids} if not _within(b, bodies)] if round_ else list(bodies)


def vents(bodies: Sequence[Body], index: int) -> int:
    """How many openings let air out by now: holes that say so, and those through the walls of the hollow."""
    walls = _walls(bodies)
    names, found = {body.name for body in walls}, 0
    for body in (one for one in bodies if not one.feature or one.made <= index):
        roles = body.piece.roles
        through = bool(roles.get("opens")) and not roles.get("lets through")
        hosts = names.intersection(roles.get("drilled in", ())) if body.feature else names.intersection({body.name})
        if roles.get("vent of") or roles.get("vent") or (through and hosts):
            found += body.piece.count
    return found


def _hollows(hollow: Sequence[Body], bodies: Sequence[Body]) -> int:
    """How many hollows there are: a tube is one, and two domes are one where no flat lid shuts them."""
    tubes = [body.piece.count for body in hollow if body.piece.roles.get("open at both ends")]
    domes = [body.piece.count for body in bodies if body.piece.roles.get("domed")]
    flat = any(body.piece.roles.get("covers") and not body.piece.roles.get("domed") for body in bodies)
    return max(tubes, default=0) or (max(domes, default=1) if flat else max(1, sum(domes) // 2))


def vented(moment: Moment) -> Iterator[Trouble]:
    """A hollow that is shut and heated has a hole, drilled before."""
    if moment.deed not in HEATS:
        return
    for bodies in things(moment):
        hollow = shut(bodies)
        pieces, holes = _hollows(hollow, bodies), vents(bodies, moment.index)
        if not hollow or holes >= pieces:
            continue
        named = listed(list(dict.fromkeys(f"'{body.title}'" for body in hollow[:3])))
        some = f"{holes} of {pieces} have a hole" if holes else "no hole lets the air out"
        message = f"{named}: shut and heated at {moment.number}, and {some}; what is shut in bursts it"
        helped = (
            "a hole of 1 mm or more before it is shut: a part of kind: hole with vent of: and the hollow part's name"
        )
        yield told("vent", message, moment.place("firing", moment.deed, "uses"), helped)


def things(moment: Moment) -> list[list[Body]]:
    """What is worked on, thing by thing."""
    found: dict[frozenset[str], list[Body]] = {}
    for body in moment.bodies:
        whole = frozenset(moment.bench.joined[body.name])
        found.setdefault(whole, []).append(body)
    return list(found.values())


def shut_wet(moment: Moment) -> Iterator[Trouble]:
    """A join that is shut inside before it has dried."""
    if moment.deed not in {"join", "close"}:
        return
    before = {name for body in _shut_before(moment) for name in (body.name,)}
    whole = [moment.bench.bodies[name] for name in moment.bench.group(moment.named) if moment.bench.bodies[name].there]
    closing = moment.deed == "close" or [body for body in shut(whole) if body.name not in before]
    wet = [
        b
        for b in whole
        if b.wet is not None and b.wet < moment.index and b.how in {"joined", "mended"} and _within(b, whole)
    ]
    if closing and wet:
        since = max(body.wet or 0 for body in wet)
        named = listed([f"'{body.title}'" for body in wet if body.wet == since][:3])
        message = (
            f"{named}, joined at {moment.at(since)}, is shut in at {moment.number} and has not "
            "dried: what is shut in cannot dry"
        )
        yield told(
            "inner-join", message, moment.place(moment.deed, "parts"), "dry and test the inner joins before it is shut"
        )


def _within(body: Body, bodies: Sequence[Body]) -> bool:
    """Whether it lies inside a tube: narrower than its bore, while others are wide enough to be its ends."""
    wide = _wide(body, "covers")
    for tube in (one for one in bodies if one.piece.roles.get("open at both ends")):
        bore = _wide(tube, "open at both ends")
        ends = sum(one.piece.count for one in bodies if one is not body and _wide(one, "covers") >= bore)
        if 0 < wide < bore and ends >= 2 * tube.piece.count:
            return True
    return False


def _shut_before(moment: Moment) -> Iterator[Body]:
    for name in moment.named:
        yield from shut(moment.bench.of_group({name}))
