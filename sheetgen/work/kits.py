"""What a project says of its kits, worked in every version; what no version uses or fits is told at the end."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sheetgen.base.material import Tool
from sheetgen.base.place import Word
from sheetgen.base.trouble import Trouble
from sheetgen.model.kit import Colourway, Kit, KitBag
from sheetgen.work.colourways import colours, colourway, misfits, seated
from sheetgen.work.mixes import OF, mixes
from sheetgen.work.stopped import Stopped

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from sheetgen.base.material import Item
    from sheetgen.base.trouble import Troubles
    from sheetgen.model.project import Project
    from sheetgen.model.worked import WorkedVersion
    from sheetgen.work.evaluator import Evaluator

EXAMPLE = "of: stone"


class Kits:
    """The kit and the colourways of a project, for one version after another."""

    def __init__(self, project: Project, troubles: Troubles) -> None:
        self.written = project.kit
        self.mixes = mixes(project.colourways, troubles)
        of = next((word for name, word in project.colourways.items() if name == OF), None)
        self.of: Word | None = of if not isinstance(of, dict) else None
        if project.colourways and self.of is None:
            where = next(iter(project.colourways)).place
            troubles.add("these colourways do not say of what they are", where, f"add {EXAMPLE}, whose seats they fill")
        self.idle: dict[str, Trouble] | None = None  # of what no version has used so far
        self.unfit: dict[str, list[Trouble]] | None = None  # of mixes that have fitted no version so far

    def added(self, version: WorkedVersion, evaluator: Evaluator) -> WorkedVersion:
        """A version with its kit and its colourways."""
        return replace(version, kit=self._kit(version, evaluator), colourways=tuple(self._ways(version, evaluator)))

    def nowhere(self) -> Iterator[Trouble]:
        """What is told when all versions are worked: what none of them uses, and mixes that fit none."""
        yield from (self.idle or {}).values()
        for found in (self.unfit or {}).values():
            yield from found

    def _ways(self, version: WorkedVersion, evaluator: Evaluator) -> Iterator[Colourway]:
        found = [of for mix in self.mixes if (of := colours(mix, evaluator)) is not None]
        seat = seated(self.of, version, evaluator) if self.of is not None else None
        if seat is None:
            return
        unfit: dict[str, list[Trouble]] = {}
        for of in found:
            if amiss := misfits(of, seat.item):
                unfit[str(of.mix.name)] = amiss
            elif way := colourway(of, seat, version, evaluator):
                yield way
        self.unfit = unfit if self.unfit is None else {name: one for name, one in self.unfit.items() if name in unfit}

    def _kit(self, version: WorkedVersion, evaluator: Evaluator) -> Kit | None:
        if self.written is None:
            return None
        idle: dict[str, Trouble] = {}
        placed: dict[str, tuple[int, Word]] = {}  # each item with the bag, and the word that has put it there
        words = (*self.written.bags.items(), ("", self.written.leave_out))
        used = {line.item.id: line for line in version.materials}
        bags = []
        for bag, (name, listed) in enumerate(words):
            items = []
            for word, item in _stocked(listed, evaluator):
                if isinstance(item, Tool):
                    told = f"{item.name} is a tool, and no bag holds it"
                    evaluator.troubles.add(told, word.place, f"in the box: [{word}], or take it out")
                elif item.id in placed:
                    other, first = placed[item.id]
                    if (other, first) == (bag, str(word)) or other != bag:  # two choices in one bag may be one item
                        told = f"{item.name} is in the kit twice"
                        evaluator.troubles.add(told, word.place, f"keep one; the other is at {first.place}")
                elif item.id not in used:
                    idle[str(word)] = _not_used(item, word)
                else:
                    items.append(item)
                placed.setdefault(item.id, (bag, word))
            if not listed and isinstance(name, Word):
                evaluator.troubles.add(
                    f"the bag '{name}' holds nothing", name.place, "take it out, or say what it holds"
                )
            bags.append(KitBag(str(name), tuple(items)))
        *bags, left = bags
        tools = self._tools(version, evaluator, idle)
        if not evaluator.troubles.errors:
            self._forgotten(version, placed, evaluator)
            self.idle = idle if self.idle is None else {word: one for word, one in self.idle.items() if word in idle}
        return Kit(tuple(bag for bag in bags if bag.items), left.items, tools)

    def _tools(self, version: WorkedVersion, evaluator: Evaluator, idle: dict[str, Trouble]) -> tuple[Item, ...]:
        """The tools that lie in the box."""
        found = []
        for word, item in _stocked(self.written.in_the_box if self.written else (), evaluator):
            if not isinstance(item, Tool):
                told = f"{item.name} is no tool: it goes into a bag"
                evaluator.troubles.add(told, word.place, f"bags: {{A: [{word}]}}")
            elif all(line.item.id != item.id for line in version.tools):
                idle[str(word)] = _not_used(item, word)
            else:
                found.append(item)
                if len(item.sizes) > 1:
                    told = (
                        f"{item.name} is in the box in {len(item.sizes)} sizes, and a kit gets one: which is not said"
                    )
                    helped = "an item of stock for each size, and a choice that decides: bur: {by: stone, …: …}"
                    evaluator.troubles.add(told, word.place, helped, "warning")
        return tuple(found)

    def _forgotten(self, version: WorkedVersion, placed: Iterable[str], evaluator: Evaluator) -> None:
        """What is used up in an amount that is told lies in a bag, or is left out by name."""
        bags = self.written.bags if self.written else {}
        where = next(iter(bags)).place if bags else None
        for line in version.materials:
            if where is not None and line.net is not None and line.item.id not in placed:
                told = f"{line.item.name} is in no bag of the kit, and is not left out"
                helped = f"put {line.item.id} into a bag, or leave it out: leave out: [{line.item.id}]"
                evaluator.troubles.add(told, where, helped, "warning")


def _stocked(words: Sequence[Word], evaluator: Evaluator) -> Iterator[tuple[Word, Item]]:
    """Each word with its item; what names none is noted."""
    for word in words:
        try:
            yield word, evaluator.item(word)
        except Stopped:
            continue


def _not_used(item: Item, word: Word) -> Trouble:
    told = f"{item.name} is in the kit, and no version takes it"
    return Trouble(told, word.place, "take it out, or use it in a part, a material or a step")
