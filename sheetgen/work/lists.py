"""What is used up and what is to hand: summed from the parts, the project's own materials and the steps."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.dimension import AREA, COUNT, LENGTH, MASS, VOLUME
from sheetgen.base.material import Item, Tool
from sheetgen.base.spread import Spread, spread
from sheetgen.base.trouble import CannotBe
from sheetgen.model.worked import MaterialLine, ToolLine, WorkedStep
from sheetgen.parts.kind import working_number
from sheetgen.work.stopped import Stopped

if TYPE_CHECKING:
    from collections.abc import Iterable

    from sheetgen.work.bench import Workbench

SAME = 0.005  # mm: two sizes nearer than this are one
UNITS = {AREA: "mm²", LENGTH: "mm", MASS: "g", VOLUME: "mL", COUNT: "piece"}


def materials(bench: Workbench, steps: Iterable[WorkedStep]) -> list[MaterialLine]:
    """One line an item: what the parts take, what the project adds, then what steps use without an amount."""
    totals: dict[str, tuple[Item, Spread, list[str], list[str]]] = {}

    def add(item: Item, amount: Spread, worked: str, use: str) -> None:
        _, total, workings, uses = totals.get(item.id, (item, spread(0), [], []))
        totals[item.id] = (item, total + amount, [*workings, worked], uses if use in uses else [*uses, use])

    for name, part in bench.parts.items():
        try:
            for take in part.takes():
                # What is bought is enough for the high end, and so is its working.
                worked = working_number(take.amount.high)
                if part.count.usual > 1 and take.figure:
                    worked = f"{working_number(part.count)} × {working_number(take.amount.high / part.count.usual)}"
                add(take.item, take.amount, worked, name.replace("_", " "))
        except Stopped:
            continue
        except CannotBe as fault:
            bench.troubles.add(f"{name}: {fault.message}", bench.place(name, fault.field), fault.help)
    for written in bench.project.materials:
        try:
            item = bench.item(written.item)
            amount = bench.worked(written.amount)
        except Stopped:
            continue
        unit = UNITS.get(amount.dimension, "")
        if unit != item.unit or amount.value.low < 0:
            message = f"'{written.amount}' is no amount of {item.name}, which is counted in {item.unit}"
            bench.troubles.add(message, written.amount.place, f"write an amount in {item.unit}")
            continue
        value = amount.value / (1000 if unit == "mL" else 1)
        add(item, value, working_number(value.high), str(written.for_ or ""))
    allowances = _allowances(bench)
    lines = []
    for item, net, workings, uses in totals.values():
        share = allowances.get(item.id, item.allowance)
        working = " + ".join(workings)
        least, least_worked = _in_hand(item, bench)
        if least > net.high:
            working = f"max({working}, {least_worked})"
        elif share and len(workings) > 1:
            working = f"({working})"
        if share:
            working = f"{working} × {1 + share:g}"
        lines.append(MaterialLine(item, net, share, working, ", ".join(u for u in uses if u), least))
    used = {item.id: item for step in steps for item in step.uses if not isinstance(item, Tool)}
    lines += [MaterialLine(item, None) for item in used.values() if item.id not in totals]
    return lines


def _in_hand(item: Item, bench: Workbench) -> tuple[float, str]:
    """The most clay that one piece wants in the hand: its mass at the thickness it is rolled to first, and how worked.

    Rolled thicker for the texture, a piece takes more than it keeps; the rest goes back into the wrap.
    """
    found = (0.0, "")
    for part in bench.parts.values():
        fields, workers = type(part).fields(), type(part).workers()
        if "rolled first" not in fields or "clay_mass" not in workers:
            continue
        try:
            first, last = bench.given(part, fields["rolled first"]), bench.given(part, fields["thickness"])
            if bench.given(part, fields["clay"]) is not item or not (
                isinstance(first, Spread) and isinstance(last, Spread)
            ):
                continue
            mass: Spread = getattr(part, "clay_mass")  # noqa: B009 - only kinds of clay have it
        except (Stopped, CannotBe):
            continue
        least = mass.high * first.usual / last.usual
        if least > found[0]:
            numbers = (working_number(mass.high), working_number(first), working_number(last))
            found = (least, "{} × {} ÷ {}".format(*numbers))
    return found


def _allowances(bench: Workbench) -> dict[str, float]:
    """What the project allows for waste, by item, instead of what stock says."""
    found: dict[str, float] = {}
    for key, word in bench.project.allowance.items():
        try:
            item, share = bench.item(key), bench.worked(word)
        except Stopped:
            continue
        if share.dimension != COUNT or not 0 <= share.value.usual <= 1:
            bench.troubles.add(f"an allowance cannot be {word}", word.place, "a share such as 15 %")
            continue
        found[item.id] = share.value.usual
    return found


def tools(bench: Workbench, steps: Iterable[WorkedStep]) -> list[ToolLine]:
    """Tools in the order they are first wanted, each with the sizes that the parts made with it need."""
    needed: dict[str, set[float]] = {}
    for part in bench.parts.values():
        try:
            for kind, size in part.tools():
                needed.setdefault(kind, set()).add(round(size, 4))
            for _, size in part.slats():
                needed.setdefault("slat", set()).add(round(size, 4))
        except (Stopped, CannotBe):  # told where the figures were worked
            continue
    named = {item.id: item for step in steps for item in step.uses if isinstance(item, Tool)}
    drawer = [t for t in bench.library.stock.items.values() if isinstance(t, Tool)]
    sizes_of: dict[str, set[float]] = {}
    for kind, sizes in needed.items():
        sets = [t for t in drawer if t.kind == kind]
        for size in sizes:
            holds = [t for t in sets if any(abs(size - one) < SAME for one in t.sizes)] or [
                t for t in sets if not t.sizes
            ]
            # A tool that a step names is taken before one that none does; a size in no set is told by the checks.
            best = next((t for t in holds if t.id in named), holds[0] if holds else None)
            if best is not None:
                named.setdefault(best.id, best)
                sizes_of.setdefault(best.id, set()).add(size)
    return [ToolLine(item, tuple(sorted(sizes_of.get(item.id, ())))) for item in named.values()]
