"""What is used up and what is to hand: summed from the parts, the project's own materials and the steps."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.dimension import AREA, COUNT, LENGTH, MASS, VOLUME
from sheetgen.base.material import Item, Tool
from sheetgen.base.spread import Spread, spread
from sheetgen.base.trouble import CannotBe
from sheetgen.model.worked import MaterialLine, ToolLine, WorkedStep
from sheetgen.parts.kind import working_number
from sheetgen.work.bench import Stopped, Workbench

if TYPE_CHECKING:
    from collections.abc import Iterable

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
                one = take.amount / part.count
                worked = working_number(take.amount)
                if part.count.usual > 1 and take.figure:
                    worked = f"{working_number(part.count)} × {working_number(one)}"
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
        add(item, value, working_number(value), str(written.for_ or ""))
    allowances = _allowances(bench)
    lines = []
    for item, net, workings, uses in totals.values():
        share = allowances.get(item.id, item.allowance)
        working = " + ".join(workings)
        if share:
            working = f"({working}) × {1 + share:g}" if len(workings) > 1 else f"{working} × {1 + share:g}"
        lines.append(MaterialLine(item, net, share, working, ", ".join(u for u in uses if u)))
    used = {item.id: item for step in steps for item in step.uses if not isinstance(item, Tool)}
    lines += [MaterialLine(item, None) for item in used.values() if item.id not in totals]
    return lines


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
    found = {item.id: item for step in steps for item in step.uses if isinstance(item, Tool)}
    lines = [ToolLine(item, tuple(sorted(needed.get(item.kind, ())))) for item in found.values()]
    covered = {item.kind for item in found.values()}
    for kind, sizes in needed.items():
        item = next((t for t in bench.library.stock.items.values() if isinstance(t, Tool) and t.kind == kind), None)
        if kind not in covered and item is not None:
            lines.append(ToolLine(item, tuple(sorted(sizes))))
    return lines
