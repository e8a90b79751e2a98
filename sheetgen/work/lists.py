"""What is used up and what is to hand: summed from the parts, the project's own materials and the steps."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from sheetgen.base.dimension import AREA, COUNT, LENGTH, MASS, VOLUME
from sheetgen.base.interval import GRAIN, Interval, interval
from sheetgen.base.material import Consumable, Item, Tool
from sheetgen.base.supply import counted_in
from sheetgen.base.tree import number as working_number
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.buying import length_of_roll
from sheetgen.model.worked import MaterialLine, ToolLine, WorkedStep
from sheetgen.work.loads import carbon
from sheetgen.work.stopped import Stopped

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from sheetgen.base.place import Word
    from sheetgen.parts.piece import Piece
    from sheetgen.work.evaluator import Evaluator

SAME = 0.005  # mm: two sizes nearer than this are one
UNITS = {AREA: "mm²", LENGTH: "mm", MASS: "g", VOLUME: "mL", COUNT: "piece"}


@dataclass(slots=True)
class _Sum:
    """What is taken of one item, and by whom."""

    item: Item
    amount: Interval = field(default_factory=lambda: interval(0))
    spent: Interval = field(default_factory=lambda: interval(0))
    workings: list[str] = field(default_factory=list)
    uses: list[str] = field(default_factory=list)
    blanks: list[tuple[int, float, float]] = field(default_factory=list)
    off_roll: list[tuple[int, float, float]] = field(default_factory=list)
    filling: bool = False

    def add(self, amount: Interval, working: str, use: str, spent: Interval | None = None) -> None:
        """One more part or line of the project; of which so much is used up, if not all."""
        self.amount = self.amount + amount
        self.spent = self.spent + (amount if spent is None else spent)
        self.workings.append(working)
        if use and use not in self.uses:
            self.uses.append(use)


def materials(evaluator: Evaluator, parts: Mapping[str, Piece], steps: Iterable[WorkedStep]) -> list[MaterialLine]:
    """One line an item: what the parts take, what the project adds, then what steps use without an amount."""
    sums: dict[str, _Sum] = {}
    _of_parts(parts, sums)
    _of_project(evaluator, sums)
    steps = list(steps)
    for item, amount, working in carbon(step.loads for step in steps):
        if item.id not in sums:  # the project knows better
            sums.setdefault(item.id, _Sum(item, filling=True)).add(interval(amount), working, "one filling of the box")
    allowances = _allowances(evaluator)
    lines = []
    for taken in sums.values():
        item, share = taken.item, allowances.get(taken.item.id, taken.item.allowance)
        working = " + ".join(taken.workings)
        least, least_worked = _in_hand(item, parts)
        if least > taken.amount.high:
            working = f"max({working}, {least_worked})"
        elif share and len(taken.workings) > 1:
            working = f"({working})"
        if share:
            working = f"{working} × {1 + share:g}"
        use = ", ".join(taken.uses)
        cut = tuple(taken.blanks), tuple(taken.off_roll)
        spent = interval(0) if taken.filling else taken.spent
        lines.append(
            MaterialLine(item, taken.amount, share, working, use, least, *cut, filling=taken.filling, spent=spent)
        )
    used = {item.id: item for step in steps for item in step.uses if not isinstance(item, Tool)}
    lines += [MaterialLine(item, None) for item in used.values() if item.id not in sums]
    return lines


def _of_parts(parts: Mapping[str, Piece], sums: dict[str, _Sum]) -> None:
    """What the parts take."""
    for part in parts.values():
        for take in part.takes:
            # What is bought is enough for the high end, and so is its working.
            worked = working_number(take.amount.high)
            if part.count > 1 and abs(take.each * part.count - take.amount.high) < GRAIN * max(1, take.amount.high):
                worked = f"{part.count} × {working_number(take.each)}"
            taken = sums.setdefault(take.item.id, _Sum(take.item))
            taken.add(take.amount, worked, part.name.replace("_", " "), take.spent)
            if take.blank:
                taken.blanks.append((part.count, *take.blank))


def _of_project(evaluator: Evaluator, sums: dict[str, _Sum]) -> None:
    """What the project adds."""
    for written in evaluator.project.materials:
        try:
            item = evaluator.item(written.item)
            amount = evaluator.worked(
                written.amount, f"materials.{item.id}", wanted=None if item.unit == "piece" else item.unit
            )
        except Stopped:
            continue
        unit = UNITS.get(amount.dimension, "")
        if unit != item.unit or amount.interval.low < 0:
            counted = counted_in(item.unit)
            message = f"'{written.amount}' is no amount of {item.name}, which is counted {counted}"
            evaluator.troubles.add(message, written.amount.place, f"write an amount {counted}")
            continue
        value = amount.interval
        taken = sums.setdefault(item.id, _Sum(item))
        taken.add(value, working_number(value.high), str(written.for_ or ""))
        if written.wide is not None:
            taken.off_roll += _off_roll(written.wide, item, value.high, evaluator)


def _off_roll(word: Word, item: Item, along: float, evaluator: Evaluator) -> list[tuple[int, float, float]]:
    """The piece that a line of the project's materials takes off a roll; none with its trouble noted."""
    roll = item.across if isinstance(item, Consumable) and item.unit == "mm" else None
    if roll is None:
        told = f"'wide' is for what comes off a roll, and stock does not say how wide {item.name} is"
        evaluator.troubles.add(told, word.place, f"add across: 300 mm to {item.id} in stock, or take wide out")
        return []
    try:
        wide = evaluator.worked(word, f"materials.{item.id}.wide", wanted="mm")
        if wide.dimension != LENGTH:
            evaluator.troubles.add(f"'{word}' is no width", word.place, "a length, such as 94 mm")
            return []
        length_of_roll.pure(1, along, wide.interval.high, roll)
    except Stopped:
        return []
    except CannotBe as fault:
        evaluator.troubles.add(fault.message, word.place, fault.help)
        return []
    return [(1, along, wide.interval.high)]


def _in_hand(item: Item, parts: Mapping[str, Piece]) -> tuple[float, str]:
    """The most clay that one piece wants in the hand: its mass at the thickness it is rolled to first, and how worked.

    Rolled thicker for the texture, a piece takes more than it keeps; the rest goes back into the wrap.
    """
    found = (0.0, "")
    for part in parts.values():
        playing = [next(iter(part.roles.get(role, ())), None) for role in ("clay mass", "rolled first", "rolled to")]
        mass, first, last = playing
        if item not in part.roles.get("made of", ()) or mass is None or first is None or last is None:
            continue
        least = mass.high * first.usual / last.usual
        if least > found[0]:
            numbers = (working_number(mass.high), working_number(first.usual), working_number(last.usual))
            found = (least, "{} × {} ÷ {}".format(*numbers))
    return found


def _allowances(evaluator: Evaluator) -> dict[str, float]:
    """What the project allows for waste, by item, instead of what stock says."""
    found: dict[str, float] = {}
    for key, word in evaluator.project.allowance.items():
        try:
            item, share = evaluator.item(key), evaluator.worked(word, f"allowance.{key}")
        except Stopped:
            continue
        if share.dimension != COUNT or not 0 <= share.cases.usual <= 1:
            evaluator.troubles.add(f"an allowance cannot be {word}", word.place, "a share such as 15 %")
            continue
        found[item.id] = share.cases.usual
    return found


def tools(evaluator: Evaluator, parts: Mapping[str, Piece], steps: Iterable[WorkedStep]) -> list[ToolLine]:
    """Tools in the order they are first wanted, each with the sizes that the parts made with it need."""
    needed: dict[str, set[float]] = {}
    for part in parts.values():
        rolled = [one.usual for role in ("rolled first", "rolled to") for one in part.roles.get(role, ())]
        for kind, size in (*part.tools, *(("slat", size) for size in rolled)):
            needed.setdefault(kind, set()).add(round(size, 4))
    named = {item.id: item for step in steps for item in step.uses if isinstance(item, Tool)}
    drawer = [t for t in evaluator.library.stock.items.values() if isinstance(t, Tool)]
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
